"""The rules and limits of a pack as tables in Markdown: requirement, source, basis, status."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final, Literal

from garboard.packs.limit import Limit
from garboard.packs.pack import Pack
from garboard.packs.rule import SEVERITIES

START: Final = "<!-- rules and limits: generated -->"
END: Final = "<!-- end -->"


def pack_table(pack: Pack) -> str:
    """The rules by severity, then the limits, each with its source, basis and status.

    Of a pack that builds on others only what it adds or changes, and before that what it and the
    packs below relaxed or retired.
    """
    parts = [_table(
        ("relaxed or retired", "from", "to", "by", "decided by", "reason"),
        ((f"{each.what}, {each.change}", each.before or "", each.after or "", each.by, each.author,
          each.why) for each in pack.relaxations))] if pack.relaxations else []
    rules = sorted((rule for rule in pack.rules if _own(pack, "rule", rule.id)),
                   key=lambda rule: (SEVERITIES.index(rule.severity), rule.id))
    parts += [_table(
        ("rule", "requirement", "severity", "covers", "source", "basis", "status"),
        ((f"`{rule.id}`", rule.title, rule.severity, rule.covers, rule.citation.reference,
          rule.citation.basis, rule.citation.standing) for rule in rules))]
    limits = [limit for limit in pack.limits.values() if _own(pack, "limit", limit.name)]
    if limits:
        parts.append(_table(
            ("limit", "value", "source", "basis", "status"),
            ((f"`{limit.name}`", _value(limit), limit.citation.reference, limit.citation.basis,
              limit.citation.standing) for limit in limits)))
    return "\n\n".join(parts) + "\n"


def _own(pack: Pack, kind: Literal["rule", "limit"], name: str) -> bool:
    """Whether the pack itself added or changed a rule or limit."""
    if pack.layering is None:
        return True
    return any(layer == f"{pack.name} {pack.version}"
               for (of, called, _), layer in pack.layering.set_by.items()
               if (of, called) == (kind, name))


def with_table(readme: str, pack: Pack) -> str:
    """A pack's README with the tables between its two marks made anew; ValueError without marks."""
    before, start, rest = readme.partition(START)
    _, end, after = rest.partition(END)
    if not start or not end:
        raise ValueError(f"no {START!r} and {END!r} in the README")
    return f"{before}{START}\n\n{pack_table(pack)}\n{END}{after}"


def _value(limit: Limit) -> str:
    return ", ".join(limit.written) if isinstance(limit.written, tuple) else str(limit.written)


def _table(head: tuple[str, ...], rows: Iterable[tuple[str, ...]]) -> str:
    lines = [head, ("---",) * len(head), *rows]
    return "\n".join(f"| {' | '.join(_cell(cell) for cell in row)} |" for row in lines)


def _cell(text: str) -> str:
    return " ".join(text.split()).replace("\\", "\\\\").replace("|", "\\|")
