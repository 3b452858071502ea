"""A resolved pack as text: what holds, and which layer set it."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Any, Final

from garboard.errors import did_you_mean
from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.sheet import Sheet
from garboard.reports.words import citation_words, standing_words

Data = Mapping[str, Any]
_SPAN: Final = 18
_HIDDEN: Final = ("id", "told_in", "retired", "written", "amount", "dimension", "unit")


def pack_text(resolved: Data, digest: str, width: int = 100, colour: bool = False) -> str:
    """The whole pack: its head, the packs below, what was relaxed, limits and rules."""
    sheet = Sheet(width, colour)
    sheet.title(f"{_name(resolved)}: {harmless(resolved['title'])}")
    sheet.field("Digest", digest)
    for below in resolved.get("layers", ()):
        sheet.field("On top of", f"{_name(below)}  {harmless_name(below['digest'])}")
    for label, of in (("Applies when", "applies_when"), ("Decision rule", "decision_rule"),
                      ("Dispensed danger", "dispensable_danger")):
        if of in resolved:
            sheet.field(label, f"{harmless(resolved[of])}{_by(resolved, 'head', '', of)}", 0, _SPAN)
    relaxed = resolved.get("relaxations", ())
    if relaxed:
        sheet.heading("RELAXED OR RETIRED")
    for each in relaxed:
        sheet.bullet("!", _relaxed(each))
    sheet.heading("LIMITS")
    for name, limit in resolved["limits"].items():
        sheet.row("•", f"{harmless_name(name)}  {_written(limit)}",
                  _setter(resolved, "limit", name, "value"))
    sheet.heading("RULES")
    for rule in resolved["rules"]:
        retired = "retired" if "retired" in rule else harmless_name(rule["severity"])
        sheet.row("–" if "retired" in rule else "•",
                  f"{harmless_name(rule['id'])}  {retired}: {harmless(rule['title'])}",
                  _changed(resolved, rule["id"]))
    return str(sheet)


def piece_text(resolved: Data, name: str, width: int = 100, colour: bool = False) -> str | None:
    """One rule or limit, each field with the layer that set it; ``None`` where there is none."""
    sheet = Sheet(width, colour)
    rule = next((each for each in resolved["rules"] if each["id"] == name), None)
    piece, kind = (rule, "rule") if rule is not None else (resolved["limits"].get(name), "limit")
    if piece is None:
        return None
    sheet.title(f"{kind} {harmless_name(name)} of {_name(resolved)}",
                _setter(resolved, kind, name, "added"))
    for label, text, layer in _fields(resolved, kind, name, piece):
        sheet.field(label, text, 0, _SPAN)
        if layer and "set_by" in resolved:
            sheet.field("", f"set by {layer}", 0, _SPAN, "faint")
    for each in resolved.get("relaxations", ()):
        if each["what"].rpartition(f"{kind} ")[2] == name:
            sheet.bullet("!", _relaxed(each))
    return str(sheet)


def nearest_piece(resolved: Data, name: str) -> str:
    """A hint at the rule or limit that may be meant."""
    return did_you_mean(name, [*(each["id"] for each in resolved["rules"]), *resolved["limits"]])


def _fields(resolved: Data, kind: str, name: str, piece: Data) -> Iterator[tuple[str, str, str]]:
    if kind == "limit":
        yield "value", _written(piece), _setter(resolved, kind, name, "value")
    for of, value in piece.items():
        if of == "citation":
            words = (citation_words(value), standing_words(value))
            text = "; ".join(each.removesuffix(".") for each in words if each)
        elif of in _HIDDEN:
            continue
        elif of in _IN_WORDS:
            text = harmless("; ".join(_IN_WORDS[of](value)))
        else:
            text = "yes" if value is True else harmless(value)
        yield of.replace("_", " "), text, _setter(resolved, kind, name, of)
    if "retired" in piece:
        said = piece["retired"]
        yield "retired", f"{harmless(said['why'])} ({harmless_name(said['author'])})", \
            harmless_name(said["by"])


def _permissible_words(changes: Sequence[Data]) -> Iterator[str]:
    for each in changes:
        said = [*(f"up to {each['up_to']}" for _ in range("up_to" in each)),
                *map(_class_words, each.get("classes", ())),
                *([f"rated {', '.join(each['ratings'])}"] if "ratings" in each else ())]
        yield f"{each['change']}{': ' if said else ''}{', '.join(said)}"


def _class_words(each: Data) -> str:
    breaks = " or ".join(f"{point['current']} at {point['voltage']}" for point in each["breaks"])
    return f"{each['device_class']} ({breaks})"


def _translation_words(translations: Data) -> Iterator[str]:
    for language, texts in translations.items():
        yield f"{language} ({', '.join(name.replace('_', ' ') for name in texts)})"


_IN_WORDS: Final[Mapping[str, Callable[[Any], Iterator[str]]]] = {
    "permissible_changes": _permissible_words, "translations": _translation_words}


def _setter(resolved: Data, kind: str, name: str, of: str) -> str:
    """The layer that set a field; for a pack without layers the pack itself."""
    if "set_by" not in resolved:
        return _name(resolved)
    by = resolved["set_by"][kind]
    by = by if kind == "head" else by.get(name, {})
    return harmless_name(by.get(of) or by.get("added", ""))


def _by(resolved: Data, kind: str, name: str, of: str) -> str:
    return f"  ({_setter(resolved, kind, name, of)})" if "set_by" in resolved else ""


def _changed(resolved: Data, rule: str) -> str:
    """Who added a rule, and who changed what of it."""
    added = _setter(resolved, "rule", rule, "added")
    by = resolved.get("set_by", {}).get("rule", {}).get(rule, {})
    changes = [f"{harmless_name(of.replace('_', ' '))}: {harmless_name(layer)}"
               for of, layer in by.items() if of != "added"]
    return "; ".join([added, *changes])


def _relaxed(each: Data) -> str:
    span = f" from {each['before']} to {each['after']}" if "before" in each else ""
    return harmless(f"{each['what']} {each['change']}{span} by {each['by']} ({each['author']}): "
                    f"{each['why']}")


def _written(limit: Data) -> str:
    written = limit["written"]
    return harmless(", ".join(map(str, written)) if isinstance(written, list) else written)


def _name(named: Data) -> str:
    return f"{harmless_name(named['pack'])} {harmless_name(named['version'])}"


