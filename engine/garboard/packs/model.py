"""What every model of the pack format has in common: strict, frozen, no unknown keys."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Any, Final

from pydantic import BaseModel, ConfigDict, Field

#: Ids of packs, rules and questions: lower-case letters, digits, hyphens between them.
ID_PATTERN: Final = r"^[a-z0-9]+(-[a-z0-9]+)*$"
#: Names of limits: they stand in expressions, so words joined by underscores.
LIMIT_NAME_PATTERN: Final = r"^[a-z][a-z0-9]*(_[a-z0-9]+)*$"

#: Three numbers and an optional pre-release, after semver.org 2.0.0.
VERSION_PATTERN: Final = (r"^(0|[1-9][0-9]*)\.(0|[1-9][0-9]*)\.(0|[1-9][0-9]*)"
                          r"(-[0-9A-Za-z-]+(\.[0-9A-Za-z-]+)*)?(\+[0-9A-Za-z-]+(\.[0-9A-Za-z-]+)*)?$")

#: A text with something in it; white space around it does not count.
Text = Annotated[str, Field(min_length=1)]
Id = Annotated[str, Field(pattern=ID_PATTERN)]
LimitName = Annotated[str, Field(pattern=LIMIT_NAME_PATTERN)]


class Model(BaseModel):
    """A frozen piece of a pack; texts are stripped, nothing is converted, unknown keys refused."""

    model_config = ConfigDict(strict=True, frozen=True, extra="forbid", allow_inf_nan=False,
                              str_strip_whitespace=True)

    def as_data(self) -> dict[str, Any]:
        """Plain JSON data; a key that was left out and has no default is not there."""
        return {name: _plain(value) for name, value in self if value is not None}


def _plain(value: Any) -> Any:
    if isinstance(value, Model):
        return value.as_data()
    if isinstance(value, Mapping):
        return {key: _plain(each) for key, each in value.items()}
    return [_plain(each) for each in value] if isinstance(value, tuple) else value
