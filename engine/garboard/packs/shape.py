"""What is wrong with the shape of a piece of a pack: each as a problem, at its place."""

from __future__ import annotations

from collections.abc import Iterator
from types import UnionType
from typing import Any, Final, Literal, Union, get_args, get_origin

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from garboard.errors import Problem, did_you_mean, nearest
from garboard.packs.header import FORMAT
from garboard.packs.spot import Spot, shown

#: The code and what is wanted, by the kind of a validation error.
_WRONG_KIND: Final = {
    "string_type": ("text-expected", "a text"), "tuple_type": ("list-expected", "a list"),
    "model_type": ("mapping-expected", "a mapping"),
    "mapping_type": ("mapping-expected", "a mapping"),
    "dict_type": ("mapping-expected", "a mapping"),
    "int_type": ("count-unreadable", "a whole number"),
    "greater_than_equal": ("count-too-small", "1 or more"),
}


def shape_problems(error: ValidationError, spot: Spot, model: type[BaseModel],
                   also_known: tuple[str, ...] = ()) -> list[Problem]:
    """The problems behind a validation error of ``model`` on the data at ``spot``.

    A missing key is left out where an unknown key beside it is its misspelling. ``also_known`` are
    keys the mapping may have that the model does not know.
    """
    details = error.errors(include_url=False)
    misspelt = {
        (*each["loc"][:-1], nearest(str(each["loc"][-1]), _keys(model, each["loc"][:-1])))
        for each in details if each["type"] == "extra_forbidden"
    }
    return [_problem(each, spot, model, also_known) for each in details
            if each["type"] != "missing" or each["loc"] not in misspelt]


def _problem(detail: ErrorDetails, spot: Spot, model: type[BaseModel],
             also_known: tuple[str, ...]) -> Problem:
    kind, loc = detail["type"], detail["loc"]
    here, name = spot.at(*loc), str(loc[-1]) if loc else ""
    context = detail.get("ctx", {})
    if kind == "missing":
        return missing_key(spot.at(*loc[:-1]), name)
    if kind == "extra_forbidden":
        known = (*_keys(model, loc[:-1]), *(also_known if len(loc) == 1 else ()))
        return unknown_key(here, name, known)
    if name == "[key]":
        return Problem("language-malformed", spot.at(*loc[:-1]).place(key=True),
                       found=str(loc[-2]), expected="a tag such as de, fr or pt-BR")
    if here.data is None:
        return without_value(here, name)
    if loc in (("version",), ("format",)):
        return _HEADER_PROBLEMS[name](here)
    if loc[:1] == ("builds_on",) and name in ("from", "before"):
        return _version(here)
    if name == "holds_for" and kind == "string_pattern_mismatch":
        return Problem("holds-for", here.place(), found=shown(here.data),
                       expected="a number of days, months or years, such as 6 months")
    if kind == "string_pattern_mismatch":
        return Problem("id-malformed", here.place(), found=shown(here.data),
                       expected="lower-case letters, digits and hyphens")
    if kind == "literal_error":
        choices = str(context["expected"]).replace("'", "").replace(" or ", ", ").split(", ")
        return Problem("choice-unknown", here.place(), found=shown(here.data),
                       expected=", ".join(choices), hint=did_you_mean(shown(here.data), choices))
    if kind in ("string_too_short", "too_short"):
        return Problem("value-empty", here.place(), found=f"an empty {name}")
    if kind == "limit-value":
        return limit_value(here)
    code, wanted = _WRONG_KIND.get(kind, ("text-malformed", detail["msg"]))
    quotes = code == "text-expected" and isinstance(here.data, (int, float))
    return Problem(code, here.place(), found=shown(here.data), expected=wanted,
                   hint="put it in quotes if it is meant as a text" if quotes else "")


def wrong_kind(spot: Spot, kind: Literal["mapping", "list"]) -> Problem:
    """Something else stands where a mapping or a list belongs."""
    return Problem(f"{kind}-expected", spot.place(), found=shown(spot.data), expected=f"a {kind}")


def missing_key(mapping: Spot, name: str) -> Problem:
    """A mapping lacks a key; the place is that of the mapping."""
    return Problem("key-missing", mapping.place(), found=f"no {name!r}", expected=name)


def unknown_key(entry: Spot, name: str, known: tuple[str, ...]) -> Problem:
    """A mapping has a key the format does not know."""
    return Problem("key-unknown", entry.place(key=True), found=name,
                   expected=", ".join(sorted(known)), hint=did_you_mean(name, known))


def without_value(entry: Spot, name: str) -> Problem:
    """A key has nothing after its colon."""
    return Problem("value-empty", entry.place(key=True), found=f"{name} without a value")


def empty_keys(spot: Spot) -> Iterator[Problem]:
    """Every key without a value at a spot and below it (a JSON Schema may hold them)."""
    for name, entry in spot.entries():
        if entry.data is None:
            yield without_value(entry, name)
        elif name != "answer":
            yield from empty_keys(entry)
    for item in spot.items():
        yield from empty_keys(item)


def limit_value(value: Spot) -> Problem:
    """A limit's value is neither a number with a unit nor a count nor a list of texts."""
    bare = isinstance(value.data, float)
    return Problem("limit-value", value.place(), found=shown(value.data),
                   expected="a number with its unit, a whole number, or a list of texts",
                   hint=f"give the unit, such as {value.data} V, or write a share in %"
                   if bare else "")


def _version(version: Spot) -> Problem:
    bare = isinstance(version.data, (int, float)) and not isinstance(version.data, bool)
    hint = ("put it in quotes and give all three numbers: a bare 1.10 is read as the number 1.1"
            if bare else "")
    return Problem("pack-version", version.place(), found=shown(version.data),
                   expected="three numbers, such as 0.1.0", hint=hint)


def _format(word: Spot) -> Problem:
    newer = isinstance(word.data, str) and word.data.startswith("rule-pack/")
    return Problem("pack-format", word.place(), found=shown(word.data), expected=FORMAT,
                   hint="this version reads no other version of the format" if newer else "")


_HEADER_PROBLEMS: Final = {"version": _version, "format": _format}


def _keys(model: type[BaseModel], loc: tuple[str | int, ...]) -> tuple[str, ...]:
    """The keys a mapping may have at a place below a model."""
    current: type[BaseModel] | None = model
    for step in loc:
        if isinstance(step, int) or current is None:
            continue
        found = current.model_fields.get(step)
        current = next(_models(found.annotation), None) if found else None
    return tuple(each.alias or name for name, each in current.model_fields.items()) \
        if current else ()


def _models(annotation: Any) -> Iterator[type[BaseModel]]:
    """The models an annotation mentions."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        yield annotation
    elif get_origin(annotation) in (Union, UnionType, tuple):
        for part in get_args(annotation):
            yield from _models(part)
