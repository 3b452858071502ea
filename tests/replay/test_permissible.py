"""What a pack may permit to be proposed, and what the format has no words for."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from garboard.errors import PackRefused
from garboard.packs import pack_from_data, read_pack_text

MAKING = Path(__file__).parent / "making"
RULES = (MAKING / "kept-rules.yaml").read_text("utf-8")
CITED = "citation: {basis: house}"
BREAKS = "breaks: [{current: 20 kA, voltage: 125 V DC}]"
CLASS = f"{{device_class: T, {BREAKS}}}"
MORE = "{device_class: NH, breaks: [{current: 50 kA, voltage: 80 V DC}]}"
QUOTED = '"20"'
DEVICE, BATTERY, CONDUCTOR = "device", "battery", "conductor"


def pack_text(change: str, about: str) -> str:
    """The rules with one more, about a subject, that lists a change."""
    return RULES + f"""
  - id: more
    title: More
    about: {about}
    must_hold: exists({about}.id)
    severity: notice
    citation: {{basis: house}}
    why: So.
    recommendation: So.
    permissible_changes:
      - {change}
"""


@pytest.mark.parametrize(("change", "about"), [
    (f"{{change: higher class, classes: [{CLASS}], {CITED}}}", DEVICE),
    (f"{{change: higher class, classes: [{CLASS}, {MORE}], {CITED}}}", BATTERY),
    (f"{{change: own device, ratings: [100 A, 200 A], classes: [{CLASS}], {CITED}}}", BATTERY),
    (f"{{change: larger conductor, {CITED}}}", CONDUCTOR),
    (f"{{change: larger conductor, up_to: 4/0 AWG, {CITED}}}", "load")])
def test_accepted_and_kept_in_the_resolved_form(change: str, about: str) -> None:
    pack = read_pack_text(pack_text(change, about))
    assert pack_from_data(pack.as_data()) == pack
    rule: Any = next(each for each in pack.as_data()["rules"]  # type: ignore[attr-defined]
                     if each["id"] == "more")
    assert len(rule["permissible_changes"]) == 1


@pytest.mark.parametrize(("change", "about", "code"), [
    # no words for what must never be proposed
    (f"{{change: longer lead, {CITED}}}", CONDUCTOR, "choice-unknown"),
    (f"{{change: bigger fuse, {CITED}}}", DEVICE, "choice-unknown"),
    (f"{{change: higher rating, ratings: [500 A], {CITED}}}", DEVICE, "choice-unknown"),
    (f"{{change: another measured value, {CITED}}}", BATTERY, "choice-unknown"),
    (f"{{change: larger conductor, length: 0.1 m, {CITED}}}", CONDUCTOR, "key-unknown"),
    (f"{{change: higher class, rating: 500 A, classes: [{CLASS}], {CITED}}}", DEVICE,
     "key-unknown"),
    (f"{{change: higher class, classes: [{{device_class: T, rating: 500 A, {BREAKS}}}], {CITED}}}",
     DEVICE, "key-unknown"),
    (f"{{change: higher class, classes: [{{device_class: T, resistance: 0 mΩ, {BREAKS}}}], "
     f"{CITED}}}", DEVICE, "key-unknown"),
    (f"{{change: higher class, ratings: [500 A], classes: [{CLASS}], {CITED}}}", DEVICE,
     "permissible-misfit"),
    # what does not fit together
    (f"{{change: larger conductor, {CITED}}}", DEVICE, "permissible-misfit"),
    (f"{{change: higher class, classes: [{CLASS}], {CITED}}}", CONDUCTOR, "permissible-misfit"),
    (f"{{change: own device, ratings: [1 A], classes: [{CLASS}], {CITED}}}", DEVICE,
     "permissible-misfit"),
    (f"{{change: higher class, {CITED}}}", DEVICE, "key-missing"),
    (f"{{change: own device, classes: [{CLASS}], {CITED}}}", BATTERY, "key-missing"),
    ("{change: larger conductor}", CONDUCTOR, "key-missing"),
    # steps that cannot be taken
    (f"{{change: higher class, classes: [{MORE}, {CLASS}], {CITED}}}", DEVICE,
     "permissible-steps"),
    (f"{{change: own device, ratings: [200 A, 200 A], classes: [{CLASS}], {CITED}}}", BATTERY,
     "permissible-steps"),
    (f"{{change: higher class, classes: [{CLASS.replace(' DC', ' AC')}], {CITED}}}", DEVICE,
     "permissible-steps"),
    (f"{{change: higher class, classes: [{CLASS.replace(' DC', '')}], {CITED}}}", DEVICE,
     "voltage-kind-missing"),
    (f"{{change: higher class, classes: [{CLASS.replace('20 kA', QUOTED)}], {CITED}}}", DEVICE,
     "unit-missing"),
    (f"{{change: larger conductor, up_to: 51 mm2, {CITED}}}", CONDUCTOR, "size-unknown")])
def test_refused(change: str, about: str, code: str) -> None:
    with pytest.raises(PackRefused) as refused:
        read_pack_text(pack_text(change, about))
    problems = [each for each in refused.value.problems if each.level == "error"]
    assert {each.code for each in problems} == {code}
    assert all(each.place.line for each in problems)
