"""The names a rule may use: recorded fields, relations and quantities of every subject."""

from __future__ import annotations

from garboard.expressions import NameInfo, Vocabulary
from garboard.expressions.vocabulary import Kind
from garboard.quantities import Registry
from garboard.record import SUBJECTS, Field, Subject


def vocabulary_of(registry: Registry) -> Vocabulary:
    """All names by subject, and the list of the record that each subject stands in."""
    return Vocabulary({name: _names(subject, registry) for name, subject in SUBJECTS.items()},
                      {name: subject.recorded_in for name, subject in SUBJECTS.items()})


def _names(subject: Subject, registry: Registry) -> dict[str, NameInfo]:
    names = {"id": NameInfo("text", None, None, None)}
    for name, field in subject.fields.items():
        info = _of_field(field)
        if info is not None:
            names[name] = info
    for name in subject.groups:
        names[name] = NameInfo("many", None, subject.groups[name], None)
    for name, relation in subject.relations.items():
        names[name] = NameInfo("many" if relation.many else "one", None, relation.target, None)
    for name, quantity in registry.by_subject[subject.name].items():
        names[name] = NameInfo(quantity.kind, quantity.dimension, origin=quantity.origin)
    return names


_KINDS: dict[str, Kind] = {"number": "number", "count": "count", "text": "text", "flag": "truth",
                           "date": "date"}


def _of_field(field: Field) -> NameInfo | None:
    """What an expression may do with a recorded field; references are followed as relations."""
    kind = _KINDS.get(field.kind)
    return None if kind is None else NameInfo(kind, field.dimension, None, field.choices)
