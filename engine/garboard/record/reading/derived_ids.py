"""Ids that strings and banks will get from their batteries and buses."""

from __future__ import annotations

from typing import Final

from garboard.record.reading.draft import Draft

#: The prefix of a derived id, and the subjects whose ids may follow it.
DERIVED_IDS: Final = (("string-", ("battery",)), ("bank-", ("battery", "bus")))


def check_derived_ids(draft: Draft) -> None:
    """Refuse ids that a string or a bank of this record would get."""
    for identity, path in draft.named_at.items():
        for prefix, subjects in DERIVED_IDS:
            origin = draft.things.get(identity.removeprefix(prefix))
            if identity.startswith(prefix) and origin is not None and origin.subject in subjects:
                draft.notes.refuse("id-reserved", path, repr(identity), "another id",
                                   f"{prefix}{origin.id} is what the {prefix[:-1]} of "
                                   f"{origin.id} is called")
