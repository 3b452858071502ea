"""Something only a person can answer on the spot."""

from __future__ import annotations

from calendar import monthrange
from collections.abc import Mapping
from datetime import date, timedelta
from typing import Annotated, Any, Final, Literal

from pydantic import Field

from garboard.packs.model import Id, Model, Text
from garboard.packs.translation import QuestionTranslations

HOLDS_PATTERN: Final = r"^[1-9][0-9]{0,3} (day|month|year)s?$"


class Question(Model):
    """A question of a pack, with the JSON Schema its answer must satisfy."""

    id: Id = Field(description="Unique in the pack: lower-case letters, digits and hyphens.")
    ask: Text = Field(description="The question, put to whoever stands aboard.")
    how_to_look: Text | None = Field(None, description="Where to look and how, aboard.")
    answered_by: Text | None = Field(None, description="Who can answer: the surveyor, the owner.")
    evidence: Literal["required", "not required"] | None = Field(None, description=(
        "'required': an answer counts only if it names evidence in the record. Left out, it is "
        "not required."))
    holds_for: Annotated[str, Field(pattern=HOLDS_PATTERN)] | None = Field(None, description=(
        "How long an answer holds from its day on ('6 months', '2 years'); the day after, it has "
        "expired. Left out, it holds until the day the answer itself names, if any."))
    answer: Mapping[str, Any] = Field(description="A JSON Schema that the answer must satisfy.")
    translations: QuestionTranslations | None = Field(None, description=(
        "The question in further languages, by language tag: 'de: {ask: …}'."))

    def last_day(self, answered: date) -> date | None:
        """The last day on which an answer of a day holds, by ``holds_for``; none: no end."""
        if self.holds_for is None:
            return None
        number, unit = self.holds_for.split()
        if unit.startswith("day"):
            return answered + timedelta(days=int(number))
        months = answered.month - 1 + int(number) * (12 if unit.startswith("year") else 1)
        year, month = answered.year + months // 12, months % 12 + 1
        return date(year, month, min(answered.day, monthrange(year, month)[1]))
