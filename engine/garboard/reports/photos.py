"""Photographs that a record names as evidence: small, without anything but the picture.

A photograph is drawn only when its digest is that of the record, so that a page shows what the
surveyor took, and always as a picture drawn anew: no place, no camera, no comment goes with it.
"""

from __future__ import annotations

import hashlib
import io
from base64 import b64encode
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any, Final

from garboard.errors import ReadingError
from garboard.reports.files.library import library
from garboard.reports.harmless import harmless, harmless_name
from garboard.trail import Trail

#: The longest side of what is drawn, in pixels, and how finely.
SIDE: Final = 480
_QUALITY: Final = 72
#: More pixels than this are not unpacked.
MOST_PIXELS: Final = 120_000_000
_KINDS: Final = ("JPEG", "PNG")
_PHOTOGRAPH: Final = "photograph"


@dataclass(frozen=True, slots=True)
class Photo:
    """A photograph of the record: its caption, its digest, and the picture or why there is none."""

    id: str
    caption: str
    digest: str
    picture: str
    width: int
    height: int
    why_not: str


def photos_of(trail: Trail, read: Callable[[str], bytes]) -> tuple[Photo, ...]:
    """The photographs that the record names, in its order.

    ``read`` gives the bytes of a file by the name in the record, or ReadingError with why not.
    CommandRefused with ``report-library-missing`` where Pillow is not installed.
    """
    with library("Pillow", "photos"):
        import PIL.Image  # noqa: F401 - drawn with further down

    return tuple(_photo(each, read) for each in _named(trail))


def _named(trail: Trail) -> Iterator[dict[str, Any]]:
    for each in trail.written.get("evidence") or ():
        if _plain(each.get("kind")) == _PHOTOGRAPH:
            yield {key: _plain(value) for key, value in each.items()}


def _plain(value: Any) -> Any:
    return value.get("value") if isinstance(value, dict) else value


def _photo(evidence: dict[str, Any], read: Callable[[str], bytes]) -> Photo:
    said = [str(evidence[key]) for key in ("shows", "taken", "by") if evidence.get(key)]
    stated = str(evidence.get("sha256") or "")
    caption, identity = harmless("; ".join(said)), harmless_name(str(evidence["id"]))
    try:
        data = read(str(evidence.get("file") or ""))
        digest = hashlib.sha256(data).hexdigest()
        if not stated:
            raise ReadingError("photo-differs", found="no digest on record",
                               expected=f"sha256: {digest}")
        if digest != stated.lower():
            raise ReadingError("photo-differs", found=digest, expected=stated)
        picture, width, height = _drawn(data)
    except ReadingError as wrong:
        words = wrong.problem()
        why = f"{words.title}: {words.found}" + (f"; {words.expected}" if words.expected else "")
        return Photo(identity, caption, harmless_name(stated), "", 0, 0, harmless(why))
    return Photo(identity, caption, digest, picture, width, height, "")


def _drawn(data: bytes) -> tuple[str, int, int]:
    """The picture as a data address, its width and its height; ReadingError when it is none."""
    from PIL import Image, ImageOps, UnidentifiedImageError

    try:
        with Image.open(io.BytesIO(data), formats=_KINDS) as opened:
            if opened.width * opened.height > MOST_PIXELS:
                raise ReadingError("photo-unfit", f"{opened.width} by {opened.height} pixels",
                                   f"at most {MOST_PIXELS} pixels")
            opened.draft("RGB", (SIDE * 2, SIDE * 2))
            upright = ImageOps.exif_transpose(opened).convert("RGB")
    except (UnidentifiedImageError, OSError, ValueError, SyntaxError,
            Image.DecompressionBombError) as wrong:
        raise ReadingError("photo-unfit", type(wrong).__name__,
                           "a photograph as JPEG or PNG") from wrong
    upright.thumbnail((SIDE, SIDE))
    bare = Image.new("RGB", upright.size)
    bare.paste(upright)
    target = io.BytesIO()
    bare.save(target, "JPEG", quality=_QUALITY, optimize=False)
    address = f"data:image/jpeg;base64,{b64encode(target.getvalue()).decode()}"
    return address, bare.width, bare.height
