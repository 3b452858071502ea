"""What looks wrong with rules that are valid: such as cannot fail, cannot pass, never apply, or say
what another says or the contrary of it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from garboard.authoring.proofreading.possible import Formula, possible, shared
from garboard.authoring.proofreading.scope import Scope
from garboard.errors import Problem, in_order
from garboard.expressions import RuleSource, Vocabulary
from garboard.packs import SEVERITIES, CheckedPack, Rule
from garboard.packs.cases import CaseBook

#: The rule a warning is about and its code, and the warning.
_Warning = tuple[tuple[str, str], Problem]


@dataclass(frozen=True, slots=True)
class Proofread:
    """What the proofreader has to say.

    ``explained`` are warnings that the author calls meant, each with the reason; ``not_tried`` the
    rules, or pairs of rules, with too many combinations to be tried.
    """

    warnings: tuple[Problem, ...]
    explained: tuple[tuple[Problem, str], ...]
    not_tried: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Looked:
    rule: Rule
    formula: Formula


def proofread(checked: CheckedPack, book: CaseBook, vocabulary: Vocabulary) -> Proofread:
    """Look at every rule of a pack, and at every two about one subject.

    The warnings of loading come first. An explanation of a warning that does not come is a warning
    itself.
    """
    reader = _Reader(checked, vocabulary)
    found = reader.problems()
    why = {key: text for key, (text, _) in book.explained.items()}
    idle = [Problem("explained-in-vain", spot.place(), found=f"{rule}: {code}", level="warning")
            for (rule, code), (_, spot) in book.explained.items()
            if (rule, code) not in {key for key, _ in found}]
    return Proofread(
        in_order([*checked.warnings, *(each for key, each in found if key not in why), *idle]),
        tuple((each, why[key]) for key, each in found if key in why), tuple(reader.not_tried))


class _Reader:
    def __init__(self, checked: CheckedPack, vocabulary: Vocabulary) -> None:
        self.pack = checked.pack
        self.rules = [_Looked(rule, _formula(source, vocabulary)) for rule, source
                      in zip(checked.pack.rules, checked.program.sources, strict=True)]
        self.not_tried: list[str] = []

    def problems(self) -> list[_Warning]:
        """Every warning, with the rule it is about and its code."""
        problems: list[_Warning] = []
        sound: list[_Looked] = []
        for each in self.rules:
            found = self._outcomes(each)
            wrong = () if found is None else tuple(self._alone(each.rule, found))
            problems += wrong
            if found is not None and not wrong:
                sound.append(each)
        for one, other in combinations(sound, 2):
            if one.rule.about == other.rule.about and shared(one.formula, other.formula):
                problems += self._together(one, other)
        return problems

    def _outcomes(self, *rules: _Looked) -> set[tuple[bool | None, ...]] | None:
        found = possible([each.formula for each in rules])
        if found is None:
            self.not_tried.append(" and ".join(each.rule.id for each in rules))
        return found

    def _alone(self, rule: Rule, found: set[tuple[bool | None, ...]]) -> Iterator[_Warning]:
        outcomes = {each for (each,) in found}
        if outcomes <= {None}:
            yield self._warning("rule-never-applies", rule, "applies_when", rule.applies_when)
        elif True not in outcomes:
            yield self._warning("rule-cannot-pass", rule, "must_hold", rule.must_hold)
        elif False not in outcomes:
            yield self._warning("rule-cannot-fail", rule, "must_hold", rule.must_hold)

    def _together(self, one: _Looked, other: _Looked) -> Iterator[_Warning]:
        found = self._outcomes(one, other)
        if found is None:
            return
        both = {pair for pair in found if None not in pair}
        if both and (True, True) not in both:
            yield self._warning("rule-contrary", other.rule, "must_hold", other.rule.must_hold,
                                one.rule)
            return
        for place, (upper, lower) in enumerate(((one, other), (other, one))):
            fails = {pair[place] for pair in found if pair[1 - place] is False}
            if fails == {False} and _as_grave(upper.rule, lower.rule):
                yield self._warning("rule-covered", lower.rule, "must_hold",
                                    lower.rule.must_hold, upper.rule)
                return

    def _warning(self, code: str, rule: Rule, part: str, text: str | None,
                 other: Rule | None = None) -> _Warning:
        spot = self.pack.spot("rules", rule.id)
        hint = "" if other is None else f"the other is {other.id}, at " \
            f"{self.pack.spot('rules', other.id).at('must_hold').place()}"
        return (rule.id, code), Problem(code, spot.at(part).place(),
                                        found=f"{rule.id}: {text or ''}", hint=hint,
                                        level="warning")


def _formula(source: RuleSource, vocabulary: Vocabulary) -> Formula:
    condition = None if source.applies_when is None else source.applies_when.root
    return Formula(Scope(vocabulary, source.about, source.limits), condition,
                   source.must_hold.root)


def _as_grave(upper: Rule, lower: Rule) -> bool:
    """Whether whoever sees one rule fail loses nothing by not seeing the other fail too."""
    grave: Sequence[str] = SEVERITIES
    return grave.index(upper.severity) <= grave.index(lower.severity)
