"""A data path as people read it: ``runs[0].through[1].fuse.rating``."""

from __future__ import annotations

import re
from collections.abc import Sequence

_SIMPLE = re.compile(r"[^\s.\[\]\"'\\]+\Z")


def path_text(path: Sequence[str | int]) -> str:
    """The path as text; a key with dots, brackets, spaces or quotes stands as ``["a b"]``."""
    text = ""
    for step in path:
        if isinstance(step, int):
            text += f"[{step}]"
        elif _SIMPLE.match(step):
            text += f".{step}" if text else step
        else:
            quoted = step.replace("\\", "\\\\").replace('"', '\\"')
            text += f'["{quoted}"]'
    return text
