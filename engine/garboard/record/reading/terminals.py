"""Where runs end: each end is a terminal that exists, or a bus, and not both ends the same."""

from __future__ import annotations

from collections.abc import Sequence

from garboard.errors import did_you_mean
from garboard.record.fact import Fact
from garboard.record.leaves.reference import HAS_TERMINALS, TERMINALS
from garboard.record.reading.draft import Draft
from garboard.record.reading.mentions import check_mention
from garboard.record.thing import Thing

ENDS = ("from", "to")


def check_terminals(draft: Draft) -> None:
    """Write the ends of all runs in full (``pack-1.positive``); refuse those that lead nowhere."""
    for run in draft.lists.get("run", []):
        ends = [_in_full(draft, run, end) for end in ENDS]
        for end, terminal in zip(ENDS, ends, strict=True):
            if terminal is not None:
                run.facts[end] = Fact(terminal, run.facts[end].written)
        if ends[0] is not None and ends[0] == ends[1]:
            draft.notes.refuse("run-to-itself", (*run.path, "to"), repr(ends[1]),
                               "another end than the one it comes from")
        returned = run.facts.get("return.run")
        if returned is not None and returned.value == run.id:
            draft.notes.refuse("run-to-itself", (*run.path, "return", "run"), repr(run.id),
                               "another run than this one")
        _check_conductors(draft, run, ends)


def _check_conductors(draft: Draft, run: Thing, ends: Sequence[str | None]) -> None:
    """Warn where a cable must have been left out: nothing is there to check, and nothing fails."""
    parts = run.groups.get("through", ())
    away = [draft.things[end.partition(".")[0]].subject for end in ends if end is not None]
    if parts and {"load", "source"}.intersection(away) and not any(
            part.subject == "conductor" for part in parts):
        draft.notes.warn("run-without-conductor", (*run.path, "through"),
                         ", ".join(part.id for part in parts), "the conductor as well",
                         "what is not on record is not checked, and counts as no resistance")


def _in_full(draft: Draft, run: Thing, end: str) -> str | None:
    """One end of a run in full, or ``None`` after noting what is wrong with it."""
    fact = run.facts.get(end)
    if fact is None:
        return None
    path = (*run.path, end)
    identity, dot, terminal = str(fact.value).partition(".")
    if not check_mention(draft, identity, (*HAS_TERMINALS, "bus"), path):
        return None
    subject = draft.things[identity].subject
    if subject == "bus":
        if dot:
            draft.notes.refuse("terminal-unknown", path, repr(fact.value), f"{identity}",
                               "a bus has no terminals", offset=len(identity))
            return None
        return identity
    if dot and terminal not in TERMINALS:
        draft.notes.refuse("terminal-unknown", path, repr(fact.value),
                           " or ".join(f"{identity}.{each}" for each in TERMINALS),
                           _guess(terminal), offset=len(identity) + 1)
        return None
    return f"{identity}.{terminal or 'positive'}"


def _guess(terminal: str) -> str:
    signs = {"+": "positive", "plus": "positive", "pos": "positive", "p": "positive",
             "-": "negative", "minus": "negative", "neg": "negative", "n": "negative"}
    guess = signs.get(terminal.lower())
    return f"did you mean {guess!r}?" if guess else did_you_mean(terminal, TERMINALS)
