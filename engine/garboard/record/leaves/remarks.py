"""What the mapping form of a leaf may say besides the value.

    {value, plus_minus | uncertainty, from, method, evidence, note, further keys of the field}
    {not_determinable: why, from, method, evidence, note, further keys of the field}
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType
from typing import Final, Literal

from garboard.record.leaves.base import LeafKind
from garboard.record.leaves.reference import References
from garboard.record.leaves.words import Choice, Words

#: How a fact can have been found out.
ORIGINS: Final = ("measured", "nameplate", "datasheet", "manual", "device readout", "drawing",
                  "owner", "estimated")
#: The keys that every mapping form allows; each takes a scalar.
REMARKS: Final[Mapping[str, LeafKind]] = MappingProxyType({
    "not_determinable": Words("Why it could not be found out"),
    "from": Choice("How it was found out", among=ORIGINS),
    "method": Words("How it was measured or worked out"),
    "evidence": References("Evidence it rests on", to=("evidence",)),
    "note": Words("Anything else worth writing down about it"),
})
#: The keys that spread a figure, and what the bounds then rest on.
SPREADS: Final[Mapping[str, Literal["tolerance", "uncertainty"]]] = MappingProxyType(
    {"plus_minus": "tolerance", "uncertainty": "uncertainty"})


@cache
def mapping_keys(leaf: LeafKind) -> tuple[str, ...]:
    """The keys that the mapping form of a leaf allows."""
    if leaf.mapping_keys is not None:
        return leaf.mapping_keys
    return ("value", *(SPREADS if leaf.spreads else ()), *REMARKS,
            *(key for key in leaf.extras if key not in REMARKS))
