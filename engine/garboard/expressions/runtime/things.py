"""Reading from things: values of the right kind, and relations that may lead nowhere."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from typing import Any, Final

from garboard.values import NOT_RECORDED, OUTSIDE_METHOD, Bounds, Truth, Unknown

THERE_IS_NONE: Final = "there is none"


def path_of(owner: object, name: str) -> str:
    """The data path of a name of a thing, as far as the thing can be named."""
    identity = owner.get("id") if isinstance(owner, Mapping) else None
    return f"{identity}.{name}" if isinstance(identity, str) else name


def none_there(owner: object, name: str) -> Unknown:
    """What a relation leads to when there is no such thing."""
    return Unknown.because(OUTSIDE_METHOD, path_of(owner, name), THERE_IS_NONE)


def followed(owner: Any, name: str) -> Any:
    """The thing a relation leads to; unknown when there is none."""
    thing = owner[name]
    return none_there(owner, name) if thing is None else thing


def several(owner: Any, name: str) -> tuple[Any, ...] | Unknown:
    """The things a relation leads to; unknown when it is not known whether there are any."""
    things = owner[name]
    if things is None:
        return none_there(owner, name)
    if isinstance(things, Unknown):
        return things
    if isinstance(things, (tuple, list)):
        return tuple(things)
    raise TypeError(f"{name} does not lead to several things, but to {things!r}")


def exists(owner: Any, names: tuple[str, ...]) -> Truth:
    """Whether a relation, or a chain of them, leads to a thing."""
    for name in names:
        if owner is None:
            return False
        owner = owner[name]
    return owner if isinstance(owner, Unknown) else owner is not None


_CLASSES: Final[Mapping[str, tuple[type, ...]]] = {
    "number": (float, int), "count": (int,), "truth": (bool,), "text": (str,), "texts": (tuple,),
    "date": (date,),
}


def usable(value: object, kind: str, owner: object, name: str, notes: list[object]) -> Any:
    """A value read from a thing, if it is of its kind, bounds or unknown.

    Bounds that rest on an assumption are noted. Nothing at all is not recorded; anything else is a
    failure of whoever gave it.
    """
    if isinstance(value, Unknown):
        return value
    if value is None:
        return Unknown.because(NOT_RECORDED, path_of(owner, name))
    if isinstance(value, Bounds) and kind in ("number", "count"):
        if value.assumed:
            notes.append(value)
        return value
    if isinstance(value, _CLASSES[kind]) and (kind == "truth" or not isinstance(value, bool)):
        return value
    raise TypeError(f"{path_of(owner, name)} is {value!r}, which is not a {kind}")
