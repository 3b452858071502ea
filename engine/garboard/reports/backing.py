"""What stands behind a finding: remarks of calculations, their methods, the sources of limits."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.names import limits_in
from garboard.reports.words import citation_words, method_source_words, standing_words
from garboard.trail import Finding, Operand, Trail


def remarks_of(trail: Trail, finding: Finding) -> list[str]:
    """What the calculations behind a finding have to say about their results, each once."""
    derivations = (trail.derivation(key) for keys in finding["of"] for key in keys)
    return list(dict.fromkeys(harmless(remark) for derivation in derivations if derivation
                              for remark in derivation["remarks"]))


def backing_of(trail: Trail, operand: Operand, limits: dict[str, Any], of_rule: Any,
               ) -> Iterator[tuple[str, str]]:
    """Where the limits of an operand are from, and by which method its figures were found.

    ``of_rule`` is the citation of the rule, which is not said again.
    """
    for name in limits_in(operand):
        if name in limits:
            yield "Limit", limit_words(name, limits[name], of_rule)
    for key in operand.of:
        method = method_words(trail, key)
        if method:
            yield "Worked out", method


def limit_words(name: str, limit: Any, of_rule: Any = None) -> str:
    """A limit as written and where it is from; not said again where the rule is from there too."""
    citation = limit["citation"]
    written = limit.get("written")
    value = f" {harmless(written)}" if isinstance(written, str) else ""
    words = f"{harmless_name(name).replace('_', ' ')}{value}"
    if of_rule and all(citation.get(key) == of_rule.get(key)
                       for key in ("source", "clause", "basis")):
        return f"{words}, from the same source"
    source = citation_words(citation).removesuffix(".")
    return f"{words}: {f'{source}; ' if source else ''}{standing_words(citation)}"


def method_words(trail: Trail, key: str) -> str:
    """The method by which a figure was found, and its source; empty for a recorded fact."""
    derivation = trail.derivation(key)
    quantity = trail.assessment["quantities"].get(derivation["quantity"]) if derivation else None
    if quantity is None:
        return ""
    name = harmless_name(key.rpartition(".")[2]).replace("_", " ")
    return (f"{name}: {harmless(quantity['method'])} "
            f"({method_source_words(quantity['citation'])})")
