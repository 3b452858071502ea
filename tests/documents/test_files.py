"""Files that are not what they should be: missing, too large, not text, not a file at all."""

from __future__ import annotations

import os
from hashlib import sha256
from pathlib import Path

import pytest

from garboard.documents import Limits, read_document
from garboard.errors import CATALOGUE, DocumentRefused, Problem

BYTES = {
    "UTF-16 with a mark": ("a: 1\n".encode("utf-16"), "document-encoding", None),
    "UTF-16, low byte first": ("a: 1\nb: Ω\n".encode("utf-16-le"), "document-encoding", None),
    "UTF-16, high byte first": ("a: 1\nb: Ω\n".encode("utf-16-be"), "document-encoding", None),
    "UTF-32": ("a: 1\n".encode("utf-32"), "document-encoding", None),
    "UTF-32 without a mark": ("a: 1\n".encode("utf-32-le"), "document-encoding", None),
    "Latin-1": ("a: 1\nb: 45 °C\n".encode("latin-1"), "document-not-utf8", (2, 7)),
    "Windows text": ("a: – 5\n".encode("cp1252"), "document-not-utf8", (1, 4)),
    "half of a letter at the end": (b"a: 1\nb: \xc3", "document-not-utf8", (2, 4)),
    "a picture": (b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR", "document-binary", None),
    "a printed page": (b"%PDF-1.7\n%\xe2\xe3", "document-binary", None),
    "a workbook": (b"PK\x03\x04\x14\0\x06\0", "document-binary", None),
    "noise": (bytes(range(255, -1, -1)) * 4, "document-binary", None),
    "one zero byte": (b"a: 1\nb: \0", "document-character", (2, 4)),
    "zero bytes": (bytes(300), "document-character", (1, 1)),
    "an empty file": (b"", "document-empty", None),
    "a byte order mark alone": (b"\xef\xbb\xbf", "document-empty", None),
}


def refused(file: str | Path, limits: Limits | None = None) -> Problem:
    with pytest.raises(DocumentRefused) as caught:
        read_document(file, limits or Limits())
    str(caught.value).encode()  # can be shown, whatever the name
    [problem] = caught.value.problems
    assert problem.place.file
    return problem


@pytest.mark.parametrize(("raw", "code", "spot"), BYTES.values(), ids=BYTES.keys())
@pytest.mark.parametrize("name", ["x.yaml", "x.json"])
def test_bytes(tmp_path: Path, name: str, raw: bytes, code: str,
               spot: tuple[int, int] | None) -> None:
    file = tmp_path / name
    file.write_bytes(raw)
    problem = refused(file)
    assert problem.code == code
    if spot is not None:
        assert (problem.place.line, problem.place.column) == spot


def test_what_a_latin_letter_would_be_is_told(tmp_path: Path) -> None:
    file = tmp_path / "x.yaml"
    file.write_bytes("a: 45 °C".encode("latin-1"))
    assert "°" in refused(file).hint


def test_a_good_file(tmp_path: Path) -> None:
    file = tmp_path / "x.yaml"
    raw = "\ufeffa: 1.2 mΩ\r\nb: 2\r\n".encode()
    file.write_bytes(raw)
    document = read_document(file)
    assert document.data == {"a": "1.2 mΩ", "b": 2}
    assert document.digest == sha256(raw).hexdigest()
    assert (document.file, document.place(["b"]).column) == (str(file), 4)


def test_a_name_that_ends_in_json_is_json(tmp_path: Path) -> None:
    file = tmp_path / "x.JSON"
    file.write_text("a: 1")
    assert refused(file).code == "json-syntax"


def test_missing_files(tmp_path: Path) -> None:
    (tmp_path / "survey.yaml").write_text("a: 1")
    problem = refused(tmp_path / "survye.yaml")
    assert problem.code == "document-missing"
    assert "survey.yaml" in problem.hint
    problem = refused(tmp_path / "nowhere" / "survey.yaml")
    assert problem.code == "document-missing"
    assert "nowhere" in problem.hint


def test_what_is_no_file(tmp_path: Path) -> None:
    assert refused(tmp_path).code == "document-folder"
    assert refused("/dev/null").code == "document-special"
    os.mkfifo(tmp_path / "pipe")
    assert refused(tmp_path / "pipe").code == "document-special"
    (tmp_path / "text").write_text("a: 1")
    assert refused(tmp_path / "text" / "x.yaml").code == "document-unreadable"
    (tmp_path / "round.yaml").symlink_to(tmp_path / "round.yaml")
    assert refused(tmp_path / "round.yaml").code == "document-unreadable"


@pytest.mark.parametrize("name", ["x" * 300, "a\0b"])
def test_names_that_cannot_be(name: str) -> None:
    assert refused(name).code == "document-unreadable"


def test_a_name_in_an_old_encoding_can_be_told(tmp_path: Path) -> None:
    file = os.fsdecode(os.fsencode(tmp_path) + b"/b\xe9.yaml")
    assert refused(file).code == "document-missing"
    Path(file).write_text("a: 1\na: 2")
    assert refused(file).code == "duplicate-key"


def test_a_file_above_the_limit_stays_unread(tmp_path: Path,
                                             monkeypatch: pytest.MonkeyPatch) -> None:
    file = tmp_path / "x.yaml"
    file.write_text("a: 12\n")
    assert read_document(file, Limits(size_bytes=6)).data == {"a": 12}
    monkeypatch.setattr(Path, "open", None)  # reading it would fail
    problem = refused(file, Limits(size_bytes=5))
    assert problem.code == "document-too-large"
    assert "5 bytes" in problem.expected and "size_bytes" in problem.expected
    assert "6 bytes" in problem.found


def test_a_file_that_grows_while_it_is_read(tmp_path: Path) -> None:
    # such files tell no size at all before they are read
    assert refused("/proc/self/maps", Limits(size_bytes=20)).code == "document-too-large"


def test_a_file_that_may_not_be_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def forbidden(self: Path, mode: str) -> None:
        raise PermissionError(13, "Permission denied")

    (tmp_path / "x.yaml").write_text("a: 1")
    monkeypatch.setattr(Path, "open", forbidden)
    problem = refused(tmp_path / "x.yaml")
    assert (problem.code, problem.found) == ("document-unreadable", "Permission denied")


def test_every_code_for_files_exists() -> None:
    assert {code for _, code, _ in BYTES.values()} <= set(CATALOGUE)
