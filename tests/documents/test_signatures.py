"""Keys and signatures: what holds, what does not, and what a key file may be."""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import Any

import pytest
from cryptography.hazmat.primitives import serialization as forms
from cryptography.hazmat.primitives.asymmetric.ec import SECP256R1, generate_private_key
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from garboard.documents import (
    SecretKey,
    check_signature,
    new_key_pair,
    read_public_key,
    read_secret_key,
    schema_problems,
    sign,
    signature_schema,
)
from garboard.documents import read_text as read_document_text
from garboard.errors import Refused

WHO = {"signer": "Reed & Søn", "signed_on": "2026-04-18"}
MESSAGE = b'{"pack":"x"}'


def pair(folder: Path, name: str = "firm") -> tuple[Path, Path]:
    files = folder / f"{name}.secret.pem", folder / f"{name}.public.pem"
    new_key_pair(*files)
    return files


def codes(refused: pytest.ExceptionInfo[Refused]) -> list[str]:
    return [each.code for each in refused.value.problems]


def test_a_signature_holds_for_what_was_signed(tmp_path: Path) -> None:
    secret, public = pair(tmp_path)
    key = read_secret_key(secret)
    block = sign("sealed-pack/1", MESSAGE, key, **WHO).as_data()
    held = check_signature("sealed-pack/1", MESSAGE, block, key=read_public_key(public))
    assert (held.signer, held.signed_on) == ("Reed & Søn", "2026-04-18")
    assert held.as_data() == block == sign("sealed-pack/1", MESSAGE, key, **WHO).as_data()
    written = read_document_text(str(block).replace("'", '"'), "block.json")
    assert schema_problems(written, signature_schema()) == []


def test_rfc_8032_section_7_1_test_1() -> None:
    """The published vector: the key signs as the standard says."""
    raw = bytes.fromhex("9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60")
    key = SecretKey(Ed25519PrivateKey.from_private_bytes(raw))
    assert key.public.raw.hex() == (
        "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a")
    assert key.sign(b"").hex() == (
        "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555"
        "fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b")


CHANGES: list[tuple[str, dict[str, Any], str]] = [
    ("signer", {"signer": "Someone Else"}, "signature-wrong"),
    ("day", {"signed_on": "2026-04-19"}, "signature-wrong"),
    ("another signature", {"signature": "A" * 86 + "=="}, "signature-wrong"),
    ("a shorter signature", {"signature": "AAAA"}, "signature-malformed"),
    ("no signature at all", {"signature": ""}, "signature-malformed"),
    ("algorithm", {"algorithm": "none"}, "signature-malformed"),
    ("fingerprint", {"fingerprint": "sha256:" + "0" * 64}, "signature-malformed"),
    ("another key in it", {"public_key": "A" * 43 + "="}, "signature-malformed"),
    ("one key more", {"note": "x"}, "signature-malformed"),
    ("a number", {"signer": 7}, "signature-malformed"),
    ("a line break", {"signer": "a\nb"}, "signature-malformed"),
]


@pytest.mark.parametrize(("change", "code"), [each[1:] for each in CHANGES],
                         ids=[each[0] for each in CHANGES])
def test_a_changed_block_does_not_hold(tmp_path: Path, change: dict[str, Any], code: str) -> None:
    key = read_secret_key(pair(tmp_path)[0])
    block = {**sign("sealed-pack/1", MESSAGE, key, **WHO).as_data(), **change}
    with pytest.raises(Refused) as refused:
        check_signature("sealed-pack/1", MESSAGE, block)
    assert codes(refused) == [code]


def test_every_changed_bit_of_the_message_breaks_it(tmp_path: Path) -> None:
    key = read_secret_key(pair(tmp_path)[0])
    block = sign("sealed-pack/1", MESSAGE, key, **WHO).as_data()
    for place in range(8 * len(MESSAGE)):
        changed = bytearray(MESSAGE)
        changed[place // 8] ^= 1 << place % 8
        with pytest.raises(Refused) as refused:
            check_signature("sealed-pack/1", bytes(changed), block)
        assert codes(refused) == ["signature-wrong"]


def test_another_key_another_kind_and_none(tmp_path: Path) -> None:
    key, other = (read_secret_key(pair(tmp_path, name)[0]) for name in ("one", "other"))
    block = sign("sealed-pack/1", MESSAGE, key, **WHO).as_data()
    for kind, given, asked, code in (
            ("sealed-pack/1", block, other.public, "signature-by-another-key"),
            ("trail/1", block, None, "signature-wrong"),
            ("sealed-pack/1", None, key.public, "signature-missing"),
            ("sealed-pack/1", "signed", None, "signature-malformed")):
        with pytest.raises(Refused) as refused:
            check_signature(kind, MESSAGE, given, key=asked)
        assert codes(refused) == [code]


@pytest.mark.parametrize("said", [{"signer": " "}, {"signed_on": ""}, {"signer": "a\nb"},
                                  {"signer": "x" * 201}])
def test_signer_and_day_are_stated(tmp_path: Path, said: dict[str, str]) -> None:
    key = read_secret_key(pair(tmp_path)[0])
    with pytest.raises(Refused) as refused:
        sign("sealed-pack/1", MESSAGE, key, **{**WHO, **said})
    assert codes(refused) == ["signer-unstated"]


@pytest.mark.skipif(os.name != "posix", reason="permissions of files are those of POSIX")
def test_a_secret_key_is_its_owners_alone(tmp_path: Path) -> None:
    secret, _ = pair(tmp_path)
    assert secret.stat().st_mode & 0o777 == 0o600
    secret.chmod(0o640)
    with pytest.raises(Refused) as refused:
        read_secret_key(secret)
    assert codes(refused) == ["key-open-to-others"]


@pytest.mark.parametrize("taken", ["firm.secret.pem", "firm.public.pem"])
def test_no_key_is_written_over(tmp_path: Path, taken: str) -> None:
    (tmp_path / taken).write_text("kept")
    with pytest.raises(Refused) as refused:
        pair(tmp_path)
    assert codes(refused) == ["key-exists"]
    assert [(each.name, each.read_text()) for each in tmp_path.iterdir()] == [(taken, "kept")]


def test_what_is_no_key_is_refused(tmp_path: Path) -> None:
    secret, public = pair(tmp_path)
    other = generate_private_key(SECP256R1())
    locked = read_secret_key(secret)._key.private_bytes(
        forms.Encoding.PEM, forms.PrivateFormat.PKCS8, forms.BestAvailableEncryption(b"word"))
    curve = other.private_bytes(forms.Encoding.PEM, forms.PrivateFormat.PKCS8, forms.NoEncryption())
    for raw in (b"", b"format: rule-pack/1\n", public.read_bytes(), locked, curve):
        file = tmp_path / "key.pem"
        file.write_bytes(raw)
        file.chmod(0o600)
        with pytest.raises(Refused) as refused:
            read_secret_key(file)
        assert codes(refused) == ["key-unreadable"]
        assert "PRIVATE" not in str(refused.value)
    file.write_bytes(secret.read_bytes())
    with pytest.raises(Refused) as refused:
        read_public_key(file)
    assert codes(refused) == ["key-unreadable"]
    with pytest.raises(Refused) as refused:
        read_public_key(tmp_path / "none.pem")
    assert codes(refused) == ["document-missing"]


def test_without_the_library_the_hint_says_what_to_install(
        tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for name in [each for each in sys.modules if each.split(".")[0] == "cryptography"]:
        monkeypatch.setitem(sys.modules, name, None)
    with pytest.raises(Refused) as refused:
        pair(tmp_path)
    assert codes(refused) == ["signing-not-installed"]
    assert "garboard[signing]" in refused.value.problems[0].hint
    assert not list(tmp_path.iterdir())
