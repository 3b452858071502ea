"""What a pack that came sealed brings along."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from garboard.documents import Signature

FORMAT: Final = "sealed-pack/1"
#: How the name of a sealed pack's file ends.
ENDING: Final = ".sealed.json"


@dataclass(frozen=True, slots=True)
class Seal:
    """The mark of a pack that came sealed, with the signature that was checked, if it has one."""

    signature: Signature | None = None
