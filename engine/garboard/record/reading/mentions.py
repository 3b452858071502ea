"""References: every id that is mentioned exists, once, and is of the right kind."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from garboard.record.reading.draft import Draft
from garboard.record.subjects import SUBJECTS
from garboard.record.thing import DataPath


def check_mentions(draft: Draft) -> None:
    """Refuse mentions of what does not exist, is of the wrong kind, or is listed twice."""
    for mention in draft.mentions:
        seen: set[str] = set()
        for position, identity in enumerate(mention.ids):
            path = (*mention.path, position) if mention.is_list else mention.path
            if identity in seen:
                draft.notes.refuse("reference-twice", path, repr(identity), "each id once")
            seen.add(identity)
            check_mention(draft, identity, mention.targets, path)


def check_mention(draft: Draft, identity: str, targets: Sequence[str], path: DataPath) -> bool:
    """Whether an id is that of a thing of one of the target subjects; if not, that is a problem.

    Where things of that kind could not be read, the id may be one of theirs: no problem is noted.
    """
    subject = "evidence" if identity in draft.evidence else _subject_of(draft, identity)
    if subject is not None and subject in targets:
        return True
    words = " or ".join(title(target) for target in targets)
    if subject is None:
        if draft.unread.intersection(targets):
            return False
        known = _ids_of(draft, targets)
        hint = draft.notes.nearest(identity, known)
        if not known:
            hint = f"the record lists no {words}"
        draft.notes.refuse("reference-unknown", path, repr(identity), f"the id of a {words}", hint)
    else:
        draft.notes.refuse("reference-kind", path, f"{identity!r}, a {title(subject)}",
                           f"the id of a {words}",
                           draft.notes.nearest(identity, _ids_of(draft, targets)))
    return False


def title(subject: str) -> str:
    """What people call a subject."""
    return "piece of evidence" if subject == "evidence" else SUBJECTS[subject].title


def _subject_of(draft: Draft, identity: str) -> str | None:
    thing = draft.things.get(identity)
    return None if thing is None else thing.subject


def _ids_of(draft: Draft, targets: Iterable[str]) -> list[str]:
    wanted = set(targets)
    ids = [thing.id for thing in draft.things.values() if thing.subject in wanted]
    return ids + (list(draft.evidence) if "evidence" in wanted else [])
