"""Trails of older formats brought up to the newest, step by step; the digest is checked before.

When the format changes so that older trails no longer fit its models, a step is added here that
turns a document of the version before into one of the next, and ``FORMAT`` goes up by one. A step
gets ``assessment`` and ``about`` and returns new ones; the digest stays that of the file.
A trail of every format is kept with the tests, and replayed there.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any, Final

Data = Mapping[str, Any]
Step = Callable[[Data, Data], tuple[Data, Data]]

#: ``STEPS[0]`` leads from trail/1 to trail/2, and so on; the newest format is one more than there
#: are steps.
STEPS: Final[Sequence[Step]] = ()


def brought_up(document: Data, version: int, steps: Sequence[Step] = STEPS) -> dict[str, Any]:
    """The document of a version in the newest format; ``document`` itself is left as it is."""
    assessment, about = document["assessment"], document["about"]
    for step in steps[version - 1:]:
        assessment, about = step(assessment, about)
    return {**document, "format": f"trail/{len(steps) + 1}", "assessment": assessment,
            "about": about}
