"""Where devices stand, nominal voltages, factors at once, ground: on a small boat of two banks."""

from __future__ import annotations

import pytest

from garboard.quantities import Figures
from garboard.values import Bounds, Unknown
from quantities.boats import figure, figures_of

#: A lithium bank of 16 cells with its fuse 0.1 m from the pack, a bus, a feed whose fuse stands
#: 0.3 m from the bus, an alternator with 1.2 m of cable before its fuse, a start battery with its
#: starter.
BOAT = """
format: installation-record/1
vessel: {name: Ruff, kind: ferry, nominal_voltage: 48 V}
wiring: {returns: neglected, grounding_conductor: {fitted: yes, size: 10 mm2}}
places: [{id: engine-space, engine_space: yes}]
batteries:
  - {id: pack, nominal_voltage: 51.2 V, mass: 30 kg}
  - {id: start-a, nominal_voltage: 6 V, mass: 15 kg}
  - {id: start-b, nominal_voltage: 6 V}
buses: [{id: bus}]
charging_sources: [{id: alternator, rated_current: 100 A, rated_temperature: 60 °C}]
loads: [{id: lamp}, {id: starter}, {id: horn}]
runs:
  - id: pack-lead
    from: pack.positive
    to: bus
    through:
      - conductor: {id: w1, size: 50 mm2, length: 0.1 m, sheathed: yes}
      - fuse: {id: f1, rating: 100 A}
      - conductor: {id: w2, size: 50 mm2, length: 0.4 m}
  - id: feed
    from: bus
    to: lamp
    through:
      - conductor:
          {id: w3, size: 12 AWG, length: 0.2 m, insulation: 105 °C, crosses: [engine-space],
           bundled_with: 3, sheathed: yes}
      - conductor: {id: w4, size: 14 SAE, length: 0.1 m, sheathed: yes}
      - fuse: {id: f2, rating: 10 A}
      - conductor: {id: w5, size: 1.5 mm2, length: 3 m}
  - id: charging
    from: alternator.positive
    to: bus
    through:
      - conductor: {id: w6, size: 16 mm2, length: 1.2 m, sheathed: no}
      - fuse: {id: f3, rating: 120 A}
      - conductor: {id: w7, size: 16 mm2, length: 0.5 m, sheathed: no}
  - {id: link, from: start-a.positive, to: start-b.negative, through: []}
  - id: cranking
    from: start-b.positive
    to: starter
    starts_engine: yes
    through:
      - conductor: {id: w8, size: 50 mm2, length: 2 m}
  - id: horn-feed
    from: start-b.positive
    to: horn
    starts_engine: no
    through:
      - conductor: {id: w9, size: 2.5 mm2, length: 0.6 m}
      - fuse: {id: f4, rating: 10 A}
"""


def boat(*changes: tuple[str, str]) -> Figures:
    """The boat with pieces of its text replaced; each piece must occur."""
    text = BOAT
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    return figures_of(text)


def held(mass: str, pull: str) -> tuple[str, str]:
    """The battery of that mass, which moved 1 cm under a pull."""
    return f"mass: {mass}", f"mass: {mass}, restraint: {{movement: 1 cm, test_force: {pull}}}"


KINDS = (("{id: lamp}", "{id: lamp, kind: lighting}"), ("{id: horn}", "{id: horn, kind: alarm}"))
#: what, changes, figure, value; None for unknown, a pair for bounds
ROWS = [
    ("before the fuse of its feed", (), "w3.lies_before_its_device", True),
    ("and the second length too", (), "w4.lies_before_its_device", True),
    ("after the fuse", (), "w5.lies_before_its_device", False),
    ("straight behind a battery", (), "w1.lies_before_its_device", False),
    ("after the fuse of a pack", (), "w2.lies_before_its_device", False),
    ("between the bus and the fuse of a source", (), "w7.lies_before_its_device", True),
    ("between a source and its fuse", (), "w6.lies_before_its_device", False),
    ("no fuse in the run", (("      - fuse: {id: f2, rating: 10 A}\n", ""),),
     "w3.lies_before_its_device", False),
    ("0.2 m and 0.1 m", (), "w4.length_before_its_device", 0.3),
    ("0.5 m from the bus", (), "w7.length_before_its_device", 0.5),
    ("not before a fuse", (), "w5.length_before_its_device", None),
    ("a length is missing", (("size: 14 SAE, length: 0.1 m", "size: 14 SAE"),),
     "w3.length_before_its_device", None),
    ("both sheathed", (), "w3.sheathed_before_its_device", True),
    ("not sheathed", (), "w7.sheathed_before_its_device", False),
    ("one of two is not", (("size: 14 SAE, length: 0.1 m, sheathed: yes",
                            "size: 14 SAE, length: 0.1 m, sheathed: no"),),
     "w3.sheathed_before_its_device", False),
    ("past the fuse of the pack", (), "w3.rating_before_its_device", 100.0),
    ("the alternator's fuse feeds no battery to it", (), "w7.rating_before_its_device", 100.0),
    ("not before a fuse", (), "w5.rating_before_its_device", None),
    ("fed past its fuse", (), "w2.is_fed_from_both_ends", False),
    ("the pack feeds it", (), "w1.is_fed_without_a_device", True),
    ("only past the fuse", (), "w2.is_fed_without_a_device", False),
    ("to the fuse of the horn; the starter does not count", (),
     "start-b.unprotected_length_but_cranking", 0.6),
    ("all of it", (), "start-b.unprotected_length", 2.0),
    ("its cable counts when it feeds something else",
     (("starts_engine: yes", "starts_engine: no"),),
     "start-b.unprotected_length_but_cranking", 2.0),
    ("not recorded", (("    starts_engine: yes\n", ""),),
     "start-b.unprotected_length_but_cranking", (0.6, 2.0)),
    ("as recorded", (), "cranking.cranks_an_engine", True),
    ("loads without a kind", (), "feed.cranks_an_engine", None),
    ("to a lamp", (("id: lamp", "id: lamp, kind: lighting"),), "feed.cranks_an_engine", False),
    ("to a starter", (("    starts_engine: yes\n", ""),
                      ("id: starter", "id: starter, kind: cranking motor")),
     "cranking.cranks_an_engine", True),
    ("from the alternator", (), "charging.cranks_an_engine", False),
    ("to the bus, with a starter aboard", (
        *KINDS, ("{id: starter}", "{id: starter, kind: cranking motor}")),
     "pack-lead.cranks_an_engine", None),
    ("to the bus, with no starter aboard", (
        *KINDS, ("{id: starter}", "{id: starter, kind: winch}")),
     "pack-lead.cranks_an_engine", False),
    ("0.1 m, or nothing if it cranks an engine", (), "pack.unprotected_length_but_cranking",
     (0.0, 0.1)),
    ("1.2 m from the alternator", (), "alternator.unprotected_length", 1.2),
    ("open", (), "alternator.unprotected_zone_sheathed", False),
    ("two of 6 V in series", (), "string-start-a.nominal_voltage", 12.0),
    ("a bank of one string", (), "bank-start-a.nominal_voltage", 12.0),
    ("sixteen cells", (), "w3.nominal_voltage", 51.2),
    ("and at the fuse", (), "f2.nominal_voltage", 51.2),
    ("the horn's fuse is on the other bank", (), "f4.nominal_voltage", 12.0),
    ("one of the two not recorded", (("start-a, nominal_voltage: 6 V", "start-a"),),
     "f4.nominal_voltage", None),
    # 33 CFR 183.425 Table 5, 12 AWG at 105 °C (read), notes 1 and 2 (from memory)
    ("45 A × 0.85 × 0.70", (), "w3.derated_ampacity", 26.775),
    ("a bundle not counted", (("bundled_with: 3, ", ""),), "w3.derated_ampacity", (15.3, 38.25)),
    ("insulation not recorded", (("insulation: 105 °C, ", ""),), "w3.derated_ampacity", None),
    # NBS Handbook 100 for AWG, SAE J1127 as reprinted for SAE
    ("12 AWG", (), "w3.area", 3.309), ("14 SAE, 3702 circular mils", (), "w4.area", 1.876),
    ("1.5 mm²", (), "w5.area", 1.5),
    ("a gauge", (), "w4.is_metric", False), ("a metric size", (), "w5.is_metric", True),
    ("twice the weight of 15 kg", (), "start-a.test_pull", 294.2),
    ("90 pounds are less than twice 30 kg", (), "pack.test_pull", 400.34),
    ("not weighed", (), "start-b.test_pull", None),
    # 33 CFR 183.420(a): one inch under the pull that is asked for, here 294 N for 15 kg
    ("pulled with 300 N", (held("15 kg", "300 N"),),
     "start-a.movement_under_test_pull", (0.0, 0.01)),
    ("pulled with 200 N", (held("15 kg", "200 N"),),
     "start-a.movement_under_test_pull", (0.01, float("inf"))),
    ("pulled with 90 pounds", (held("30 kg", "90 lbf"),),
     "pack.movement_under_test_pull", 0.01),
    ("nobody pulled", (("mass: 30 kg", "mass: 30 kg, restraint: {movement: 1 cm}"),),
     "pack.movement_under_test_pull", None),
    ("rated at 60 °C", (), "alternator.rated_current_at_60", 100.0),
    ("rated cold, less at 60 °C", (("60 °C", "25 °C"),),
     "alternator.rated_current_at_60", (0, 100)),
    ("rated hotter, more at 60 °C", (("rated_temperature: 60 °C", "rated_temperature: 90 °C"),),
     "alternator.rated_current_at_60", (100, float("inf"))),
    ("no temperature", ((", rated_temperature: 60 °C", ""),),
     "alternator.rated_current_at_60", None),
    # IEC 60364-5-54 as reprinted: (115 A√s/mm² × 10 mm²)²
    ("10 mm² to ground", (), "record.grounding_withstand_energy", 1322500.0),
    ("no bonding on record", (), "record.bonding_withstand_energy", None),
    ("no fuse says what it lets through", (), "record.largest_let_through", None),
]


@pytest.mark.parametrize(("changes", "key", "expected"), [row[1:] for row in ROWS],
                         ids=[f"{row[2]}, {row[0]}" for row in ROWS])
def test_figure(changes: tuple[tuple[str, str], ...], key: str, expected: object) -> None:
    found = figure(boat(*changes), key)
    if expected is None:
        assert isinstance(found, Unknown)
    elif isinstance(expected, tuple):
        assert isinstance(found, Bounds)
        assert (found.lo, found.hi) == pytest.approx(expected)
    elif isinstance(expected, float):
        assert found == pytest.approx(expected, rel=5e-4)
    else:
        assert found is expected
