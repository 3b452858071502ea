"""Figures of a record that somebody asks for by name, without any pack."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from garboard.assessment.aboard import COMPARED
from garboard.errors import CommandRefused, Problem, did_you_mean
from garboard.network import build_network
from garboard.quantities import Figures, Item, Quantity, Registry
from garboard.record import Record
from garboard.reports import Asked, Known

#: What a quantity is that only serves others, and has no value to show.
_OPAQUE = "opaque"


def asked_of(record: Record, registry: Registry, names: Sequence[str],
             items: Sequence[str] = ()) -> tuple[Asked, ...]:
    """Those figures of every item they are of, or of those ``items``; unnamed, the main ones.

    CommandRefused for a name that no figure has, or an id that nothing has.
    """
    figures = Figures(record, build_network(record), registry)
    known = {each.full_name: each for each in registry if each.kind != _OPAQUE}
    wanted = names or [f"{subject}.{name}" for subject, of in COMPARED.items() for name in of]
    problems = [_unknown(name, list(known)) for name in wanted if name not in known]
    problems += [Problem("item-unknown", found=each, expected="the id of a thing aboard",
                         hint=did_you_mean(each, list(record.things)))
                 for each in items if each not in record.things]
    if problems:
        raise CommandRefused(problems)
    return tuple(_asked(figures, known[name], items) for name in dict.fromkeys(wanted))


def _unknown(name: str, known: Sequence[str]) -> Problem:
    return Problem("quantity-unknown", found=name,
                   hint=did_you_mean(name, known) or "garboard quantities lists them all")


def _asked(figures: Figures, quantity: Quantity, items: Sequence[str]) -> Asked:
    values = {item.id: Known(quantity.full_name, item[quantity.name], quantity.dimension)
              for item in _items(figures, quantity.subject) if not items or item.id in items}
    return Asked(quantity.full_name, quantity.method, quantity.citation.source,
                 quantity.citation.status, values)


def _items(figures: Figures, subject: str) -> Iterator[Item]:
    items = figures.subjects[subject]
    if isinstance(items, tuple):
        yield from items
    elif isinstance(items, Item):
        yield items
