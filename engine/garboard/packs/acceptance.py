"""On which findings of the whole record an installation is accepted, referred or declined."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Annotated, Literal

from pydantic import Field

from garboard.errors import Problem, did_you_mean
from garboard.packs.model import Id, Model, Text
from garboard.packs.rule import Severity
from garboard.packs.spot import Spot

Rules = Annotated[tuple[Id, ...], Field(strict=False)]


class Condition(Model):
    """A condition that holds when enough findings are of a kind."""

    says: Text = Field(description="The condition in words; every report gives them.")
    outcome: Literal["failed", "dispensed", "not assessed", "passed", "not applicable"] = Field(
        description=(
            "Which findings are counted. 'dispensed' are failures that a dispensation sets aside; "
            "'failed' are all others."))
    severity: Annotated[tuple[Severity, ...], Field(strict=False)] = Field((), description=(
        "Only findings of rules of these severities; left out, of any."))
    rules: Rules = Field((), description="Only findings of these rules; left out, of any.")
    at_least: int = Field(1, ge=1, description="How many there must be for it to hold.")


Conditions = Annotated[tuple[Condition, ...], Field(strict=False)]


class Acceptance(Model):
    """What decides whether an installation is accepted; whatever is left open is referred."""

    must_have_passed: Rules = Field(json_schema_extra={"minItems": 1}, description=(
        "Rules that must have passed for something aboard, and not be failed or open for anything; "
        "otherwise the installation is referred. Nothing is accepted on silence."))
    declined_when: Conditions = Field((), description=(
        "Conditions of which one is enough to decline."))
    referred_when: Conditions = Field((), description=(
        "Conditions of which one is enough to refer to a person, if none declines. A failure, or "
        "something open at danger or warning, that no condition speaks of is referred too."))
    replaces: Annotated[tuple[Id, ...], Field(strict=False)] = Field((), description=(
        "The pack below whose acceptance this one replaces."))
    reason: Text | None = Field(None, description="Why it replaces that.")
    author: Text | None = Field(None, description="Who decided on that.")


def acceptance_problems(acceptance: Acceptance, spot: Spot, rules: Iterable[str],
                        ) -> Iterator[Problem]:
    """Rules are named, and those that are named are in force."""
    known = tuple(rules)
    if not acceptance.must_have_passed:
        yield Problem("value-empty", spot.at("must_have_passed").place(key=True),
                      found="an empty must_have_passed")
    named = [spot.at("must_have_passed")]
    for part in ("declined_when", "referred_when"):
        named += [condition.at("rules") for condition in spot.at(part).items()]
    for each in (rule for rules in named for rule in rules.items()):
        if str(each.data).strip() not in known:
            yield Problem("acceptance-rule", each.place(), found=str(each.data),
                          expected="a rule in force", hint=did_you_mean(str(each.data), known))
