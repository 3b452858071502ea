"""The pack on lithium batteries: rules with their sources, and words an owner can rely on."""

from __future__ import annotations

import re

import pytest

from garboard.documents import shipped_folder
from garboard.packs import (
    SEVERITIES,
    Citation,
    Limit,
    Pack,
    Rule,
    known_packs,
    pack_table,
    read_pack,
)
from garboard.packs.table import with_table

SHIPPED = shipped_folder("rulepacks")
PACK = read_pack(SHIPPED / "small-craft-lithium")
ENDING = "subject to local code and the maker's instructions."


def test_every_shipped_folder_is_a_pack_of_its_name_without_warnings() -> None:
    names = tuple(sorted({each.name.removesuffix(".sealed.json") for each in SHIPPED.iterdir()
                          if each.suffix != ".md"}))
    assert known_packs([SHIPPED]) == names
    for name in names:
        pack = read_pack(SHIPPED / name)
        assert (pack.name, pack.warnings) == (name, ())


def test_the_ten_rules_on_the_bank_as_a_system_are_there() -> None:
    assert {rule.id: rule.severity for rule in PACK.rules}.items() >= {
        "breaking-capacity": "danger", "voltage-rating": "danger",
        "own-device-in-parallel": "danger", "unprotected-length": "warning",
        "device-within-derated-ampacity": "warning", "warning-before-disconnect": "warning",
        "charging-sources-stop": "warning", "stage-under-trip": "caution",
        "charging-current-sum": "warning", "charging-in-the-cold": "warning"}.items()


@pytest.mark.parametrize("rule", PACK.rules, ids=lambda rule: rule.id)
def test_a_rule_says_where_it_comes_from_and_what_to_do(rule: Rule) -> None:
    assert rule.citation.source
    assert rule.citation.says
    assert rule.citation.status
    assert rule.recommendation.endswith(ENDING)
    assert len(rule.why) > 60


@pytest.mark.parametrize("limit", PACK.limits.values(), ids=lambda limit: limit.name)
def test_a_limit_says_where_it_comes_from(limit: Limit) -> None:
    assert limit.citation.says


def test_their_limits_are_these() -> None:
    assert {name: (limit.amount, limit.unit) for name, limit in PACK.limits.items()}.items() >= {
        "unprotected_length_open": (0.1778, "m"), "unprotected_length_sheathed": (1.8288, "m"),
        "derated_share": (1.0, "ratio"), "stage_share_of_trip": (0.99, "ratio"),
        "warning_time_least": (10.0, "s")}.items()


def test_a_regulation_is_cited_for_comparison_only() -> None:
    """33 CFR 183 Subpart I is for gasoline engines, 46 CFR for inspected vessels."""
    bases = {cited.basis for cited in citations(PACK) if "CFR" in (cited.source or "")
             and cited.status == "read"}
    assert bases == {"comparison"}


def citations(pack: Pack) -> list[Citation]:
    return [each.citation for each in (*pack.rules, *pack.limits.values())]


def test_nothing_is_called_safe() -> None:
    texts = [file.read_text() for file in SHIPPED.rglob("*") if file.is_file()]
    assert len(texts) > 4
    assert [text for text in texts if re.search(r"\bsafe(ly)?\b", text, re.I)] == []


def test_the_readme_shows_the_rules_as_they_are() -> None:
    readme = (SHIPPED / "small-craft-lithium" / "README.md").read_text()
    assert readme == with_table(readme, PACK)


def test_the_table_has_a_row_for_what_is_set_in_the_pack_itself_the_gravest_first() -> None:
    assert PACK.layering is not None
    own = {(kind, name) for (kind, name, _), layer in PACK.layering.set_by.items()
           if layer.startswith(PACK.name) and kind != "head"}
    rows = [line.split("|") for line in pack_table(PACK).splitlines() if line.startswith("| `")]
    assert sorted(row[1].strip(" `") for row in rows) == sorted(name for _, name in own)
    assert len(rows) == len(own)
    rules = [row[3].strip() for row in rows[:sum(kind == "rule" for kind, _ in own)]]
    assert rules == sorted(rules, key=SEVERITIES.index)


def test_a_readme_without_marks_is_refused() -> None:
    with pytest.raises(ValueError, match="README"):
        with_table("# A pack\n", PACK)
