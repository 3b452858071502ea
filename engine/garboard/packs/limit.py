"""A named number with its citation, which rules compare with."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Annotated, Any, Final, Literal

from pydantic import Field, ValidationError, field_validator
from pydantic_core import PydanticCustomError

from garboard.errors import ReadingError
from garboard.packs.citation import Citation
from garboard.packs.model import Model, Text
from garboard.values.units import DIMENSIONS, read_number

Written = str | int | tuple[str, ...]
Kind = Literal["number", "count", "texts"]

#: The largest whole number that a JSON reader is sure to keep exactly.
LARGEST_COUNT: Final = 2**53 - 1


Amount = Text | Annotated[int, Field(ge=0, le=LARGEST_COUNT)] | Annotated[
    tuple[Text, ...], Field(strict=False, min_length=1)]


class WrittenLimit(Model):
    """A limit as its author wrote it."""

    value: Amount = Field(description=(
        "A number with its unit ('7 in', '14.6 V', '100 %'), a count (a whole number), or a "
        "list of texts."))
    citation: Citation = Field(description="Where the figure comes from.")

    @field_validator("value", mode="wrap")
    @classmethod
    def _one_of_three(cls, value: object, validated: Callable[[object], Any]) -> Any:
        try:
            return validated(value)
        except ValidationError as wrong:
            raise PydanticCustomError("limit-value", "not a value of a limit") from wrong


@dataclass(frozen=True, slots=True)
class Limit:
    """A limit as read: ``amount`` is a float in the canonical unit, a count, or texts.

    ``dimension`` is recognised from the unit (``7 in`` is a length); counts and texts have none.
    """

    name: str
    written: Written
    kind: Kind
    amount: float | int | tuple[str, ...]
    dimension: str | None
    citation: Citation

    @property
    def unit(self) -> str | None:
        """The canonical unit of ``amount``."""
        return None if self.dimension is None else DIMENSIONS[self.dimension].unit

    def as_data(self) -> dict[str, object]:
        """Plain JSON data: as written, the amount in the canonical unit, and the citation."""
        data: dict[str, object] = {"written": _plain(self.written), "amount": _plain(self.amount)}
        if self.dimension is not None:
            data |= {"dimension": self.dimension, "unit": self.unit}
        return {**data, "citation": self.citation.as_data()}


def read_limit(name: str, written: WrittenLimit) -> Limit:
    """The limit with its amount; ReadingError when a text is not a number with a known unit."""
    value = written.value
    if isinstance(value, str):
        amount, dimension = read_amount(value)
        return Limit(name, value, "number", amount, dimension, written.citation)
    kind: Kind = "count" if isinstance(value, int) else "texts"
    return Limit(name, value, kind, value, None, written.citation)


def read_amount(text: str) -> tuple[float, str]:
    """A number in its canonical unit and the dimension its unit belongs to.

    A unit of two dimensions belongs to the one it is canonical for: K is a temperature difference,
    °C a temperature. Raises ReadingError.
    """
    read: dict[str, float] = {}
    complaints = []
    for dimension in DIMENSIONS:
        try:
            read[dimension] = read_number(text, dimension)
        except ReadingError as wrong:
            complaints.append(wrong)
    if not read:
        raise _likeliest(complaints)
    canonical = [each for each in read if text.rstrip().endswith(DIMENSIONS[each].unit)]
    dimension = (canonical or list(read))[0]
    return read[dimension], dimension


def _likeliest(complaints: list[ReadingError]) -> ReadingError:
    """Of one complaint per dimension, that of the dimension the author seems to have meant."""
    near = [each for each in complaints if each.code != "unit-mismatch"] or complaints
    best = next((each for each in near if each.hint), near[0])
    hint = "" if best.code == "unit-missing" else best.hint
    return ReadingError(best.code, best.found, "a number with its unit, such as 7 in or 100 %",
                        hint, best.offset)


def _plain(value: object) -> object:
    return list(value) if isinstance(value, tuple) else value
