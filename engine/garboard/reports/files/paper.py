"""The page of a trail as a PDF: the same content under a style sheet made for paper alone.

Drawn by WeasyPrint, which knows no grids that break over pages and styles no drawing from without:
the style for paper uses blocks and tables, each drawing gets its own style, and the marks of
outcomes are written as signs. Nothing is fetched while drawing.
"""

from __future__ import annotations

import hashlib
import io
import re
from base64 import b64decode
from collections.abc import Sequence
from typing import Any, Final

from garboard.errors import CommandRefused, Problem
from garboard.reports.files.library import library
from garboard.reports.html.environment import environment
from garboard.reports.html.page import drawn_page
from garboard.reports.photos import Photo
from garboard.reports.words import SIGNS
from garboard.trail import Trail

_VARIABLE: Final = re.compile(r"(--[a-z-]+): (#[0-9a-f]+)")
_OF_DRAWINGS: Final = re.compile(r"^svg.*\}$", re.MULTILINE)
_USED: Final = re.compile(r"var\((--[a-z-]+)\)")
_MARK: Final = re.compile(r'<svg class="mark ([a-z-]+)"[^>]*>.*?</svg>')
_DRAWING: Final = re.compile(r'<svg class="(?!mark|store)[^>]*>')
_SIZED: Final = re.compile(r'width="([0-9.]+)" height="([0-9.]+)"')
#: What a sheet of paper holds of a drawing, in pixels of a 96th of an inch.
_WIDEST, _HIGHEST = 690.0, 900.0
_HATCH: Final = re.compile(r"<pattern id=\"hatch\".*?</pattern>")


def pdf_report(trail: Trail, us_units: bool = False, photos: Sequence[Photo] = ()) -> bytes:
    """The PDF of a trail; the same trail, units, fonts and library give the same bytes.

    CommandRefused with ``report-library-missing`` where WeasyPrint, or what it needs of the system,
    is not installed.
    """
    with library("WeasyPrint", "pdf"):
        from weasyprint import HTML

    page = drawn_page(trail, us_units, "paper.css", script=False, photos=photos)
    document = HTML(string=_for_paper(page), url_fetcher=_nothing_fetched)
    target = io.BytesIO()
    document.write_pdf(target, pdf_identifier=hashlib.sha256(trail.digest.encode()).digest()[:16],
                       pdf_tags=True)
    return target.getvalue()


def _for_paper(page: str) -> str:
    """The page with signs for marks, and with the style of the drawings inside each of them."""
    found = _HATCH.search(page)
    pattern = f"<defs>{found[0]}</defs>" if found else ""
    within = f"<style>{_drawing_style()}</style>{pattern}"
    page = _MARK.sub(lambda mark: f'<span class="sign {mark[1]}">'
                                  f'{SIGNS[mark[1].replace("-", " ")]}</span>', page)
    return _DRAWING.sub(lambda drawing: _fitted(drawing[0]) + within, page)


def _fitted(drawing: str) -> str:
    """A diagram's opening tag with a size that fits the width of the paper."""
    sized = _SIZED.search(drawing)
    if sized is None:
        return drawing
    width, height = float(sized[1]), float(sized[2])
    scale = min(1.0, _WIDEST / width, _HIGHEST / height)
    return (f'{drawing[:sized.start()]}width="{width * scale:.1f}" height="{height * scale:.1f}"'
            f"{drawing[sized.end():]}")


def _drawing_style() -> str:
    """The rules of the page's style sheet for drawings, with colours in place of variables."""
    sheet = environment().get_template("page.css").render(
        vessel="", date="", digest="", paper="A4")
    colours = dict(_VARIABLE.findall(sheet))
    rules = "\n".join(_OF_DRAWINGS.findall(sheet))
    return _USED.sub(lambda used: colours[used[1]], rules)


def _nothing_fetched(url: str, *_: Any, **__: Any) -> dict[str, Any]:
    """Refuse every address: a page needs nothing else, and a hostile text may name anything."""
    if url.startswith("data:image/jpeg;base64,"):
        return {"string": b64decode(url.partition(",")[2]), "mime_type": "image/jpeg"}
    raise CommandRefused([Problem("report-fetches", found=url)])
