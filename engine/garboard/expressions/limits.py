"""How large an expression may be. Every limit has a name, and the message that refuses names it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True, slots=True)
class Limits:
    """Limits of one expression; all are checked before work that grows with the text is done."""

    #: Characters of the whole text.
    length: int = 4_000
    #: Words, numbers and signs.
    words: int = 800
    #: Brackets, calls, signs and ``if`` inside one another.
    depth: int = 20
    #: Collection functions inside one another (each multiplies the work).
    loops: int = 2
    #: Characters of one number.
    number: int = 24
    #: Size of an exponent (``1e6`` has 6).
    exponent: int = 30
    #: Characters of one quoted text.
    text: int = 200
    #: Characters of one name.
    name: int = 100
    #: Values in one list.
    collection: int = 100


DEFAULT_LIMITS: Final = Limits()
