"""What generated code calls where operators alone do not do.

Everything takes exact values, bounds and unknowns. A calculation error in any part that was looked
at is the result.
"""

from garboard.expressions.runtime.numbers import counted, greatest, least, square_root, summed
from garboard.expressions.runtime.things import (
    exists,
    followed,
    none_there,
    several,
    usable,
)
from garboard.expressions.runtime.truths import absent, compared, settled

__all__ = [
    "absent", "compared", "counted", "exists", "followed", "greatest", "least", "none_there",
    "settled", "several", "square_root", "summed", "usable",
]
