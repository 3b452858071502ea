"""Signatures on trails: what they cover, who is said to have signed, and what is not believed."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from cli.ran import Ran
from garboard.documents import new_key_pair
from garboard.trail import digest_of, read_trail, trail_bytes

KEPT = Path(__file__).parent / "kept" / "trail-1.trail.json"
STATED = ("--signer", "A. Surveyor", "--on", "2026-05-10")


@pytest.fixture
def sign(garboard: Callable[..., Ran]) -> Callable[..., Ran]:
    """Signs ``t.json`` with a key of that name, which is made when it is not there."""
    Path("t.json").write_bytes(KEPT.read_bytes())

    def signed(key: str, *arguments: str) -> Ran:
        if not Path(f"{key}.key").exists():
            new_key_pair(Path(f"{key}.key"), Path(f"{key}.pub"))
        return garboard("trail", "sign", "t.json", "--key", f"{key}.key", *(arguments or STATED))

    return signed


def check(garboard: Callable[..., Ran], code: int, *arguments: str) -> dict[str, Any]:
    ran = garboard("trail", "check", *arguments, "--json")
    assert ran.code == code, ran.err
    result: dict[str, Any] = json.loads(ran.out)
    assert result["sound"] is (code == 0)
    return result


def changed(change: Callable[[dict[str, Any]], None]) -> None:
    document = json.loads(Path("t.json").read_text("utf-8"))
    change(document)
    Path("t.json").write_text(json.dumps(document), "utf-8")


def test_two_people_sign_and_the_digest_stays(garboard: Callable[..., Ran],
                                              sign: Callable[..., Ran]) -> None:
    digest = read_trail(KEPT).digest
    assert sign("a").code == 0
    assert sign("b", "--signer", "B. Owner", "--on", "on the slip").code == 0
    result = check(garboard, 0, "t.json", "--key", "a.pub", "--key", "b.pub")
    assert result["trail"] == digest
    assert [(each["signer"], each["signed_on"]) for each in result["signatures"]] == [
        ("A. Surveyor", "2026-05-10"), ("B. Owner", "on the slip")]
    text = garboard("trail", "check", "t.json").out
    assert "the file was signed, not the installation" in " ".join(text.split())
    trail = read_trail(Path("t.json"))
    assert trail_bytes(trail) == Path("t.json").read_bytes()
    history = json.loads(garboard("trail", "history", "t.json", "--json").out)
    assert [each["sound"] for each in history["assessments"][0]["signatures"]] == [True, True]


def test_unsigned_is_sound_unless_a_key_is_asked_for(garboard: Callable[..., Ran],
                                                     sign: Callable[..., Ran]) -> None:
    new_key_pair(Path("c.key"), Path("c.pub"))
    assert check(garboard, 0, "t.json")["signatures"] == []
    assert len(check(garboard, 1, "t.json", "--key", "c.pub")["missing"]) == 1
    sign("a")
    assert len(check(garboard, 1, "t.json", "--key", "c.pub")["missing"]) == 1


@pytest.mark.parametrize("change", [
    lambda data: data["signatures"][0].update(signer="Somebody Else"),
    lambda data: data["signatures"][0].update(signed_on="2020-01-01"),
    lambda data: data["signatures"][0].update(signature=data["signatures"][0]["signature"][::-1]),
    lambda data: data["signatures"][0].update(signer="two\nlines")])
def test_a_signature_that_was_changed_is_not_sound(
        garboard: Callable[..., Ran], sign: Callable[..., Ran],
        change: Callable[[dict[str, Any]], None]) -> None:
    sign("a")
    changed(change)
    result = check(garboard, 1, "t.json", "--key", "a.pub")
    assert result["signatures"][0]["problem"] is not None
    assert len(result["missing"]) == 1


def test_a_signature_does_not_hold_for_another_assessment(
        garboard: Callable[..., Ran], sign: Callable[..., Ran]) -> None:
    sign("a")

    def other(data: dict[str, Any]) -> None:
        data["assessment"]["date"] = "2026-05-05"
        data["digest"] = digest_of(data["assessment"])

    changed(other)
    assert check(garboard, 1, "t.json")["signatures"][0]["problem"]["code"] == "signature-wrong"


def test_what_is_outside_the_digest_may_change(garboard: Callable[..., Ran],
                                               sign: Callable[..., Ran]) -> None:
    sign("a")
    changed(lambda data: data["about"].update(platform="another machine"))
    check(garboard, 0, "t.json", "--key", "a.pub")


@pytest.mark.parametrize(("arguments", "code"), [
    (("--signer", " ", "--on", "2026-05-10"), "signer-unstated"),
    (("--signer", "A", "--on", "two\nlines"), "signer-unstated")])
def test_signer_and_day_are_stated(sign: Callable[..., Ran], arguments: tuple[str, ...],
                                   code: str) -> None:
    before = Path("t.json").read_bytes()
    ran = sign("a", *arguments)
    assert ran.code == 3
    assert code in ran.err
    assert Path("t.json").read_bytes() == before


def test_a_key_signs_once(sign: Callable[..., Ran]) -> None:
    assert sign("a").code == 0
    ran = sign("a")
    assert ran.code == 3
    assert "signed-already" in ran.err


def test_a_trail_that_was_changed_is_not_signed(sign: Callable[..., Ran]) -> None:
    changed(lambda data: data["assessment"].update(date="2026-05-05"))
    ran = sign("a")
    assert ran.code == 3
    assert "trail-digest-wrong" in ran.err


def test_the_signed_trail_goes_elsewhere_but_never_over_the_key(
        garboard: Callable[..., Ran], sign: Callable[..., Ran]) -> None:
    assert sign("a", *STATED, "--to", "s.json").code == 0
    assert Path("t.json").read_bytes() == KEPT.read_bytes()
    assert "signatures" in json.loads(Path("s.json").read_text("utf-8"))
    ran = sign("a", *STATED, "--to", "a.key")
    assert ran.code == 3
    assert "output-over-input" in ran.err


def test_an_older_trail_is_signed_and_checked_as_it_was_made(
        monkeypatch: pytest.MonkeyPatch, sign: Callable[..., Ran]) -> None:
    """A trail signed as trail/1 is still sound when the newest format is another."""
    from typing import Literal

    from garboard.trail import signatures_on
    from garboard.trail.format import TrailDocument

    class Second(TrailDocument):
        format: Literal["trail/2"]  # type: ignore[assignment]

    sign("a")
    monkeypatch.setattr("garboard.trail.format.TrailDocument", Second)
    trail = read_trail(Path("t.json"), (lambda assessment, about: (assessment, about),))
    assert trail.brought_up_from == "trail/1"
    assert [each.problem for each in signatures_on(trail)] == [None]
