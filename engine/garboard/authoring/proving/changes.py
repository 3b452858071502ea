"""The record of a case: its base with things removed, set and added by data path.

A path starts with the id of a thing (``f1.breaks[0].current``), with ``vessel``, ``survey`` or
``wiring``, or with any other key of the record (``loads``).
"""

from __future__ import annotations

import copy
import re
from collections.abc import Mapping
from typing import Any, Final

from garboard.errors import PackRefused, Problem, did_you_mean
from garboard.packs.cases import Case
from garboard.packs.spot import Spot

_STEP: Final = re.compile(r"([^.\[\]]+)((?:\[[0-9]{1,4}\])*)")


def changed(case: Case) -> Mapping[str, Any]:
    """The data of the record of a case, its changes made: removed first, then set, then added.

    PackRefused with every change that leads nowhere, each at its place.
    """
    remove, replace, add = case.changes
    if remove.data is None and replace.data is None and add.data is None:
        return case.base
    record: dict[str, Any] = copy.deepcopy(dict(case.base))
    problems: list[Problem] = []
    for spot in remove.items():
        _made(_remove, record, str(spot.data), None, spot, problems)
    for path, spot in replace.entries():
        _made(_set, record, path, copy.deepcopy(spot.data), spot, problems)
    for path, spot in add.entries():
        _made(_add, record, path, copy.deepcopy(spot.data), spot, problems)
    if problems:
        raise PackRefused(problems)
    return record


def _made(change: Any, record: dict[str, Any], path: str, value: Any, spot: Spot,
          problems: list[Problem]) -> None:
    try:
        change(record, path, value)
    except LookupError as error:
        hint = str(error.args[0]) if error.args else ""
        problems.append(Problem("case-path-unknown", spot.place(key=value is not None),
                                found=path, hint=hint))


def _remove(record: dict[str, Any], path: str, _: Any) -> None:
    holder, last = _holder(record, path, make=False)
    if isinstance(holder, dict) and last not in holder:
        raise LookupError(did_you_mean(str(last), map(str, holder)))
    del holder[last]


def _set(record: dict[str, Any], path: str, value: Any) -> None:
    holder, last = _holder(record, path, make=True)
    holder[last] = value


def _add(record: dict[str, Any], path: str, value: Any) -> None:
    holder, last = _holder(record, path, make=True)
    there = holder.setdefault(last, []) if isinstance(holder, dict) else holder[last]
    if not isinstance(there, list):
        raise LookupError("that is no list")
    there += value


def _holder(record: dict[str, Any], path: str, *, make: bool) -> tuple[Any, Any]:
    """What holds the value at a path, and under which key or number."""
    steps = _steps(path)
    first, rest = steps[0], steps[1:]
    places = dict(_things(record))
    if first in places:
        holder, last, thing = places[str(first)]
        if not rest:
            return holder, last
        at: Any = thing
    else:
        if not rest:
            return record, first
        if first not in record:
            if not make or first not in ("vessel", "survey", "wiring"):
                raise LookupError(did_you_mean(str(first), [*places, *record]))
            record[str(first)] = {}
        at = record[str(first)]
    for step in rest[:-1]:
        at = _down(at, step, make=make)
    last = rest[-1]
    if not isinstance(at, list if isinstance(last, int) else dict):
        raise LookupError("the way there ends before")
    if isinstance(last, int) and last >= len(at):
        raise LookupError(f"there are {len(at)}")
    return at, last


def _steps(path: str) -> list[str | int]:
    steps: list[str | int] = []
    for part in path.split("."):
        match = _STEP.fullmatch(part)
        if match is None:
            raise LookupError("a path reads like f1.breaks[0].current")
        steps.append(match[1])
        steps += [int(number) for number in re.findall(r"[0-9]+", match[2])]
    return steps


def _down(at: Any, step: str | int, *, make: bool) -> Any:
    if isinstance(step, int):
        if not isinstance(at, list) or step >= len(at):
            raise LookupError("there are not so many")
        return at[step]
    if not isinstance(at, dict):
        raise LookupError("the way there ends before")
    if step not in at or not isinstance(at[step], (dict, list)):
        if not make:
            raise LookupError(did_you_mean(step, map(str, at)))
        at[step] = {}
    return at[step]


def _things(node: Any) -> list[tuple[str, tuple[Any, Any, Any]]]:
    """Every mapping with an id, by that id: what holds it, where, and itself."""
    found: list[tuple[str, tuple[Any, Any, Any]]] = []
    for key, each in (node.items() if isinstance(node, dict) else enumerate(node)):
        if isinstance(each, dict):
            name = each.get("id")
            inner = next(iter(each.values())) if len(each) == 1 else None
            if isinstance(name, str):
                found.append((name, (node, key, each)))
            elif isinstance(node, list) and isinstance(inner, dict) \
                    and isinstance(inner.get("id"), str):
                found.append((inner["id"], (node, key, inner)))  # a part of a run
                found += _things(inner)
                continue
        if isinstance(each, (dict, list)):
            found += _things(each)
    return found
