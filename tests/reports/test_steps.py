"""How far a figure moved: of nominal figures, else of the ends that count."""

from __future__ import annotations

import pytest

from garboard.reports.comparison.aboard import Aboard, Known
from garboard.reports.comparison.figures import steps
from garboard.values import Bounds


def aboard(quantity: str, value: object) -> Aboard:
    return Aboard({f"b.{quantity.partition('.')[2]}": Known(quantity, value, "current")}, {})


@pytest.mark.parametrize(("quantity", "before", "after", "share", "ends"), [
    ("bus.fault_current", 4000.0, 28000.0, 7.0, ""),
    ("bus.fault_current", Bounds(3.0, 5.0, 4.0), Bounds(0.0, 16.0, 12.0), 3.0, ""),
    ("bus.fault_current", Bounds(737.0, 770.0), Bounds(0.0, 962.5), 1.25, "upper ends"),
    ("bus.fault_current", 5.0, Bounds(0.0, 10.0), 2.0, "upper ends"),
    ("bus.smallest_fault_current", Bounds(2.0, 9.0), Bounds(1.0, 90.0), 0.5, "lower ends"),
    ("bus.smallest_fault_current", Bounds(0.0, 9.0), Bounds(1.0, 90.0), None, ""),
    ("bus.fault_current", Bounds(1.0, float("inf")), Bounds(1.0, 2.0), None, ""),
])
def test_share_of_like_ends(quantity: str, before: object, after: object, share: float | None,
                            ends: str) -> None:
    (step,) = steps(aboard(quantity, before), aboard(quantity, after))
    assert (step.share, step.ends) == (share, ends)
