"""Whether the parts of a trail agree with each other: what a schema cannot say."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, Final, NamedTuple

from garboard.trail.digest import digest_of
from garboard.trail.dispensing import counts_as_failed, in_force
from garboard.trail.findings import finding_id, in_finding_order
from garboard.trail.outcome import outcome_of

Data = Mapping[str, Any]
_NO_TRACE: Final[Data] = {"operands": [], "statements": []}


class Disagreement(NamedTuple):
    """A part of a trail that is not what the other parts say it is."""

    code: str
    path: tuple[str | int, ...]
    found: str
    expected: str


def disagreements(assessment: Data) -> Iterator[Disagreement]:
    """All parts that disagree; none in a trail that this program made.

    Digests of the record and of the packs are computed again, and so is the outcome.
    """
    yield from _digests(assessment)
    known = {(pack["pack"], rule["id"]): pack["traces"].get(rule["id"], _NO_TRACE)
             for pack in assessment["packs"] for rule in pack["resolved"]["rules"]}
    strangers = False
    for number, finding in enumerate(assessment["findings"]):
        trace = known.get((finding["pack"], finding["rule"]))
        strangers = strangers or trace is None
        for key, found, expected in _of_finding(finding, trace):
            yield _inconsistent(("assessment", "findings", number, key), found, expected)
    if not strangers:
        yield from _of_all(assessment)


def _digests(assessment: Data) -> Iterator[Disagreement]:
    parts: list[tuple[tuple[str | int, ...], Data, str]] = [
        (("record",), assessment["record"], "written")]
    parts += [(("packs", number), pack, "resolved")
              for number, pack in enumerate(assessment["packs"])]
    for path, part, what in parts:
        computed = digest_of(part[what])
        if computed != part["digest"]:
            yield Disagreement("trail-digest-wrong", ("assessment", *path, "digest"),
                               part["digest"], f"{computed}, the digest of {what!r}")


def _of_finding(finding: Data, trace: Data | None) -> Iterator[tuple[str, str, str]]:
    identity = finding_id(finding["pack"], finding["rule"], finding["item"])
    if finding["id"] != identity:
        yield "id", finding["id"], identity
    if trace is None:
        yield "rule", finding["rule"], f"a rule of the pack {finding['pack']}"
        return
    count = len(finding["operands"])
    if count > len(trace["operands"]):
        yield "operands", f"{count} operands", f"at most {len(trace['operands'])}, as traced"
    if len(finding["of"]) != count:
        yield "of", f"keys of {len(finding['of'])} operands", f"of {count}"
    there = sum(max(each["left"], each["right"] or 0) < count for each in trace["statements"])
    if len(finding["holds"]) != there:
        yield "holds", f"{len(finding['holds'])} statements", f"{there}, one per statement there"
    if any(each >= there for each in finding["decides"]):
        yield "decides", str(finding["decides"]), f"places below {there}"
    reasoned = finding["outcome"] in ("not assessed", "not applicable")
    if reasoned != (finding["reason"] is not None):
        yield "reason", str(finding["reason"]), f"the reason of {finding['outcome']!r}"


def _of_all(assessment: Data) -> Iterator[Disagreement]:
    findings, packs = assessment["findings"], assessment["packs"]
    if findings != in_finding_order(findings, packs):
        yield _inconsistent(("assessment", "findings"), "another order",
                            "the order of packs, rules and item ids")
    if len({each["id"] for each in findings}) != len(findings):
        yield _inconsistent(("assessment", "findings"), "two findings of one id", "one each")
    yield from _of_dispensations(assessment)
    outcome = outcome_of(findings, packs, assessment["dispensations"])
    if outcome != assessment["outcome"]:
        yield _inconsistent(("assessment", "outcome"), assessment["outcome"]["word"],
                            f"{outcome['word']}, with the counts of the findings")


def _of_dispensations(assessment: Data) -> Iterator[Disagreement]:
    """Every dispensation marks its finding, is in force, and counts as its rule has it."""
    marked = {(each["id"], each["dispensation"]) for each in assessment["findings"]
              if each.get("dispensation") is not None}
    severities = {(pack["pack"], rule["id"]): (rule["severity"], pack["resolved"])
                  for pack in assessment["packs"] for rule in pack["resolved"]["rules"]}
    for number, each in enumerate(assessment["dispensations"]):
        path = ("assessment", "dispensations", number)
        own = (finding_id(each["pack"], each["rule"], each["item"]), each["id"])
        if own not in marked:
            yield _inconsistent((*path, "id"), each["id"], "a finding that is marked with it")
            continue
        marked.discard(own)
        if not in_force(assessment["date"], each["first_day"], each["last_day"]):
            yield _inconsistent((*path, "first_day"), each["first_day"],
                                f"days around {assessment['date']}")
        counts = counts_as_failed(*severities[each["pack"], each["rule"]])
        if each["counts_as_failed"] != counts:
            yield _inconsistent((*path, "counts_as_failed"), str(not counts).lower(),
                                str(counts).lower())
    for identity, name in sorted(marked):
        yield _inconsistent(("assessment", "findings"), f"{identity} marked with {name}",
                            "a dispensation of that name for it")


def _inconsistent(path: tuple[str | int, ...], found: str, expected: str) -> Disagreement:
    return Disagreement("trail-inconsistent", path, found, expected)
