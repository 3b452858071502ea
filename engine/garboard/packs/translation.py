"""What a pack says to people in a further language: texts beside the texts they stand for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Annotated, Any, Final, TypeVar

from pydantic import Field

from garboard.errors import Problem
from garboard.packs.model import Model, Text
from garboard.packs.spot import Spot

#: A language tag after BCP 47: a language, then script, region or variant.
LANGUAGE_PATTERN: Final = r"^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$"
Language = Annotated[str, Field(pattern=LANGUAGE_PATTERN)]


class RuleTexts(Model):
    """The texts of a rule in a further language; one that is left out stays as it is written."""

    title: Text | None = Field(None, description="What must hold, in one line.")
    why: Text | None = Field(None, description="What happens otherwise.")
    recommendation: Text | None = Field(None, description="What to do when the rule fails.")
    left_to_a_person: Text | None = Field(None, description="What a person must examine.")


class QuestionTexts(Model):
    """The texts of a question in a further language; the choices of an answer stay as they are."""

    ask: Text | None = Field(None, description="The question.")
    how_to_look: Text | None = Field(None, description="Where to look and how.")
    answered_by: Text | None = Field(None, description="Who can answer.")


RuleTranslations = Annotated[Mapping[Language, RuleTexts], Field(min_length=1)]
QuestionTranslations = Annotated[Mapping[Language, QuestionTexts], Field(min_length=1)]
_Texts = TypeVar("_Texts", RuleTexts, QuestionTexts)


def merged(old: Mapping[str, _Texts] | None, new: Mapping[str, _Texts]) -> dict[str, _Texts]:
    """Translations with others laid over them, text by text."""
    whole = dict(old or {})
    for language, texts in new.items():
        before = whole.get(language)
        whole[language] = texts if before is None else before.model_copy(
            update={name: text for name, text in texts if text is not None})
    return whole


def without(translations: Mapping[str, RuleTexts] | None, name: str,
            ) -> dict[str, RuleTexts] | None:
    """Translations without those of one text, which says something else from here on."""
    left = {language: texts.model_copy(update={name: None})
            for language, texts in (translations or {}).items()}
    return {language: texts for language, texts in left.items()
            if any(text is not None for _, text in texts)} or None


def translation_problems(written: Any, spot: Spot) -> Iterator[Problem]:
    """A translation of a text that ``written`` has not, or of nothing at all."""
    for language, texts in spot.at("translations").entries():
        entries = dict(texts.entries())
        if not entries:
            yield Problem("value-empty", texts.place(key=True), found=f"{language} without a text")
        for name, text in entries.items():
            if getattr(written, name, None) is None:
                yield Problem("translation-of-nothing", text.place(key=True), found=name,
                              expected=f"a {name} beside it in the language of the pack")
