"""Photographs given as evidence: shown by digest, upright, small, with nothing but the picture."""

from __future__ import annotations

import hashlib
import io
import json
import re
from base64 import b64decode
from pathlib import Path

import pytest
from PIL import Image

from authoring.small_pack import workshop
from garboard.cli.main import run
from garboard.trail import trail_bytes

SECRET = b"54.321N 010.123E boatyard camera 4711"


def photograph(kind: str = "JPEG", size: tuple[int, int] = (900, 600)) -> bytes:
    """A picture that is red on its left half, turned by its orientation, with a place in it."""
    picture = Image.new("RGB", size, (20, 20, 200))
    picture.paste((220, 20, 20), (0, 0, size[0] // 2, size[1]))
    exif = Image.Exif()
    exif[0x0112] = 6  # turned by a quarter
    exif[0x010E] = SECRET.decode()
    exif.get_ifd(0x8825)[1] = "N"
    target = io.BytesIO()
    picture.save(target, kind, exif=exif, comment=SECRET)
    return target.getvalue()


def written(folder: Path, evidence: list[dict[str, str]]) -> Path:
    record = folder / "boat.json"
    record.write_text(json.dumps({
        "format": "installation-record/1", "survey": {"date": "2026-04-18"},
        "batteries": [{"id": "pack", "terminal_cover": True}], "evidence": evidence}), "utf-8")
    trail = workshop().assess(record, workshop().load_packs(["teaching-first-steps"])).trail
    (folder / "boat.trail.json").write_bytes(trail_bytes(trail))
    return folder / "boat.trail.json"


def evidence(data: bytes, name: str = "one.jpg", **more: str) -> dict[str, str]:
    return {"id": "photo-1", "kind": "photograph", "file": name,
            "sha256": hashlib.sha256(data).hexdigest(), "shows": "the fuse <b>block</b>", **more}


def page(folder: Path, trail: Path, ending: str = "html") -> str:
    target = folder / f"boat.{ending}"
    assert run(["report", str(trail), "--to", str(target), "--photos", str(folder)]) == 0
    return target.read_text("utf-8")


def pictures(text: str) -> list[bytes]:
    return [b64decode(each) for each in re.findall(r"data:image/jpeg;base64,([A-Za-z0-9+/=]+)",
                                                   text)]


@pytest.mark.parametrize("kind", ["JPEG", "PNG"])
def test_a_picture_is_shown_upright_and_bare(tmp_path: Path, kind: str) -> None:
    data = photograph(kind)
    assert SECRET in data
    (tmp_path / "one.jpg").write_bytes(data)
    text = page(tmp_path, written(tmp_path, [evidence(data)]))
    (shown,) = pictures(text)
    assert SECRET not in shown and b"Exif" not in shown and SECRET.decode() not in text
    with Image.open(io.BytesIO(shown)) as drawn:
        assert drawn.size == (320, 480)
        assert not drawn.getexif()
        top, bottom = drawn.getpixel((160, 20)), drawn.getpixel((160, 460))
    assert top[0] > 150 > top[2] and bottom[2] > 150 > bottom[0]
    assert hashlib.sha256(data).hexdigest() in text
    assert "the fuse &lt;b&gt;block&lt;/b&gt;" in text
    assert "img-src data:" in text


def test_the_same_files_give_the_same_bytes(tmp_path: Path) -> None:
    data = photograph()
    (tmp_path / "one.jpg").write_bytes(data)
    trail = written(tmp_path, [evidence(data)])
    assert page(tmp_path, trail) == page(tmp_path, trail)


def test_another_picture_than_the_records_is_not_shown(tmp_path: Path) -> None:
    data = photograph()
    (tmp_path / "one.jpg").write_bytes(photograph(size=(60, 90)))
    text = page(tmp_path, written(tmp_path, [evidence(data)]))
    assert pictures(text) == []
    assert "Not the photograph of the record" in text


@pytest.mark.parametrize(("name", "content", "says"), [
    ("one.jpg", None, "No such photograph"), ("../boat.json", b"x", "can be shown"),
    ("one.jpg", b"<svg onload='alert(1)'/>", "can be shown"),
    ("one.jpg", photograph()[:400], "can be shown"), ("one.jpg", b"", "can be shown"),
])
def test_what_is_no_photograph_is_named(tmp_path: Path, name: str, content: bytes | None,
                                        says: str) -> None:
    if content is not None and "/" not in name:
        (tmp_path / name).write_bytes(content)
    text = page(tmp_path, written(tmp_path, [evidence(content or b"", name)]))
    assert pictures(text) == []
    assert says in text


def test_a_huge_picture_is_not_unpacked(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from garboard.reports import photos

    monkeypatch.setattr(photos, "MOST_PIXELS", 1_000)
    data = photograph()
    (tmp_path / "one.jpg").write_bytes(data)
    text = page(tmp_path, written(tmp_path, [evidence(data)]))
    assert pictures(text) == []
    assert "900 by 600 pixels" in text


def test_a_digest_is_asked_for(tmp_path: Path) -> None:
    data = photograph()
    (tmp_path / "one.jpg").write_bytes(data)
    without = {key: value for key, value in evidence(data).items() if key != "sha256"}
    text = page(tmp_path, written(tmp_path, [without]))
    assert pictures(text) == []
    assert hashlib.sha256(data).hexdigest() in text


def test_reports_without_pictures_refuse_them(tmp_path: Path,
                                              capsys: pytest.CaptureFixture[str]) -> None:
    trail = written(tmp_path, [])
    assert run(["report", str(trail), "--to", str(tmp_path / "boat.csv"),
                "--photos", str(tmp_path)]) == 3
    assert "photos-nowhere" in capsys.readouterr().err
