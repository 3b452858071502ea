"""The template environment: everything that is printed is harmless, then escaped."""

from __future__ import annotations

import re
from base64 import b64encode
from functools import cache
from hashlib import sha256
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from garboard.reports.harmless import harmless

if TYPE_CHECKING:
    from jinja2 import Environment

_TEMPLATES: Final = Path(__file__).parent / "templates"
#: Longer than any text is cut to elsewhere, so that none is cut twice.
_LONGEST: Final = 2_400
_PLAIN: Final = re.compile(r"[^A-Za-z0-9 .,:-]")


@cache
def environment() -> Environment:
    """The environment of the page's templates. Undefined names and attributes are errors."""
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    made = Environment(loader=FileSystemLoader(_TEMPLATES), autoescape=True, trim_blocks=True,
                       lstrip_blocks=True, undefined=StrictUndefined, finalize=shown,
                       auto_reload=False)
    made.filters["css_string"] = css_string
    return made


def shown(value: Any) -> Any:
    """A value as it is printed: text of others without control characters, turns and floods."""
    if type(value) is not str:
        return value
    if value.isascii() and value.isprintable() and len(value) <= _LONGEST and "  " not in value:
        return value
    return harmless(value, _LONGEST)


def css_string(text: str) -> str:
    """A text as a string of a style sheet; what is no letter, figure or plain mark is its code."""
    return f'"{_PLAIN.sub(_css_code, harmless(text))}"'


def source_hash(text: str) -> str:
    """The hash by which a content security policy names a style sheet or script."""
    return f"'sha256-{b64encode(sha256(text.encode()).digest()).decode()}'"


def _css_code(found: re.Match[str]) -> str:
    return f"\\{ord(found[0]):06x}"
