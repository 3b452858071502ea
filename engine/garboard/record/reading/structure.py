"""What stands where a mapping, a list or a known key belongs."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeGuard

from garboard.record.reading.draft import Draft
from garboard.record.shape import Slot
from garboard.record.thing import DataPath


def is_mapping(data: object, draft: Draft, path: DataPath) -> TypeGuard[dict[str, Any]]:
    """Whether something is a mapping; if not, that is a problem."""
    if isinstance(data, dict):
        return True
    if data is None:
        _refuse_nothing(draft, path, "a mapping of keys and values",
                        "leave the key out if it is not recorded")
    else:
        hint = "is the list meant one level up?" if isinstance(data, list) else ""
        draft.notes.refuse("mapping-expected", path, _shown(data), "a mapping of keys and values",
                           hint)
    return False


def is_list(data: object, draft: Draft, path: DataPath,
            form: str = "a list") -> TypeGuard[list[Any]]:
    """Whether something is a list; if not, that is a problem. ``form``: what belongs there."""
    if isinstance(data, list):
        return True
    if data is None:
        _refuse_nothing(draft, path, form, "write [] if there are none, or leave the key out "
                        "if it is not recorded")
    else:
        hint = "put a dash before each item" if isinstance(data, dict) else ""
        draft.notes.refuse("list-expected", path, _shown(data), form, hint)
    return False


def unknown_key(draft: Draft, known: Mapping[str, Slot], key: str, path: DataPath) -> None:
    """Refuse a key that is not one of those known."""
    draft.notes.refuse("key-unknown", (*path, key), repr(key), f"one of {', '.join(known)}",
                       draft.notes.nearest(str(key), known), key=True)


def _refuse_nothing(draft: Draft, path: DataPath, expected: str, hint: str) -> None:
    draft.notes.refuse("value-empty", path, "nothing", expected, hint, key=True)


def _shown(data: object) -> str:
    if isinstance(data, dict):
        return "a mapping"
    if isinstance(data, list):
        return "a list"
    return repr(data)
