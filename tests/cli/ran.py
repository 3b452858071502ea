"""What one command gave, and where this folder's data stands."""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path
from typing import Any

HERE = Path(__file__).parent
ROOT = HERE.parent.parent


@dataclass(frozen=True)
class Ran:
    """Exit code, both streams, and the folder with the trails it wrote."""

    code: int
    out: str
    err: str
    folder: Path

    def trail(self, name: str) -> dict[str, Any]:
        document: dict[str, Any] = json.loads((self.folder / name).read_text("utf-8"))
        return document
