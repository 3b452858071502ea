"""A document against a JSON Schema, with the place of each problem."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING, Any

from garboard.documents.document import Document
from garboard.documents.limits import DEFAULT_LIMITS, Limits
from garboard.errors import Problem, did_you_mean, in_order

if TYPE_CHECKING:
    from jsonschema.exceptions import ValidationError

_RANGES = {"minimum": "at least", "maximum": "at most", "exclusiveMinimum": "more than",
           "exclusiveMaximum": "less than", "multipleOf": "a multiple of"}
_SIZES = {"minItems": "at least {} items", "maxItems": "at most {} items",
          "minLength": "at least {} characters", "maxLength": "at most {} characters",
          "minProperties": "at least {} fields", "maxProperties": "at most {} fields"}


def schema_problems(document: Document, schema: Mapping[str, Any],
                    limits: Limits = DEFAULT_LIMITS) -> list[Problem]:
    """All that the schema (draft 2020-12) finds wrong, in order of place; empty if nothing.

    References are resolved inside the schema only: nothing is fetched. A schema that is broken
    itself gives the problem ``schema-broken``.
    """
    from jsonschema import Draft202012Validator
    from jsonschema.exceptions import SchemaError
    from referencing import Registry
    from referencing.exceptions import Unresolvable

    try:
        Draft202012Validator.check_schema(schema)
        validator = Draft202012Validator(schema, registry=Registry())
        problems: list[Problem] = []
        limit: list[Problem] = []
        for error in validator.iter_errors(document.data):
            problems += _problems(document, error)
            if len(problems) >= limits.problems:
                limit.append(Problem(
                    "document-problems", problems[-1].place, f"{len(problems)} problems so far",
                    limits.expected("problems", "problems"), "mend these first"))
                break
    except SchemaError as error:
        return [_broken(document, error.message)]
    except Unresolvable as error:
        return [_broken(document, f"nothing to be found for {error.ref}")]
    except RecursionError:
        return [_broken(document, "a reference that leads to itself")]
    return [*in_order(problems), *limit]


def _broken(document: Document, found: str) -> Problem:
    return Problem("schema-broken", document.place(), found, "a JSON Schema of draft 2020-12")


def _problems(document: Document, error: ValidationError) -> Iterator[Problem]:
    """One problem for an error, or one for each key that is missing or unknown."""
    from jsonschema.exceptions import best_match

    if error.context and error.validator in ("anyOf", "oneOf"):
        error = best_match([error])
    path = list(error.absolute_path)
    wants: Any = error.validator_value
    keyword = str(error.validator)
    if keyword == "additionalProperties" and isinstance(error.instance, dict):
        yield from _unknown_keys(document, path, error)
        return
    place = document.place(path)
    found = _shown(error.instance)
    if keyword == "required":
        # each missing key comes as an error of its own, named first in the message
        key = next((key for key in wants if error.message.startswith(repr(key))), "")
        yield Problem("schema-required", document.place([*path, key], key=True), "no such key",
                      f"the key {key}")
    elif keyword == "type":
        yield Problem("schema-type", place, found, _kinds(wants))
    elif keyword in ("enum", "const"):
        choices = wants if keyword == "enum" else [wants]
        hint = did_you_mean(error.instance, [c for c in choices if isinstance(c, str)]) \
            if isinstance(error.instance, str) else ""
        yield Problem("schema-choice", place, found, "one of " + _list(choices), hint)
    elif keyword in _RANGES:
        yield Problem("schema-range", place, found, f"{_RANGES[keyword]} {wants}")
    elif keyword in _SIZES:
        yield Problem("schema-size", place, found, _SIZES[keyword].format(wants))
    elif keyword in ("pattern", "format"):
        yield Problem("schema-pattern", place, found, f"a text of the form {wants}")
    else:
        yield Problem("schema-other", place, found, f"what {keyword} asks: {_shown(wants)}")


def _unknown_keys(document: Document, path: Sequence[str | int],
                  error: ValidationError) -> Iterator[Problem]:
    schema: Any = error.schema
    known = list(schema.get("properties", {}))
    patterns = schema.get("patternProperties", {})
    instance: Any = error.instance
    for key in instance:
        if key not in known and not any(re.search(pattern, key) for pattern in patterns):
            hint = did_you_mean(key, known)
            yield Problem("schema-unknown-key", document.place([*path, key], key=True), key,
                          "" if hint else "one of " + _list(known), hint)


def _kinds(wants: object) -> str:
    names = {"object": "a mapping", "array": "a list", "string": "a text", "number": "a number",
             "integer": "a whole number", "boolean": "true or false", "null": "nothing"}
    kinds = wants if isinstance(wants, list) else [wants]
    return " or ".join(names.get(str(kind), str(kind)) for kind in kinds)


def _list(choices: Sequence[object]) -> str:
    shown = [_shown(choice) for choice in choices[:12]]
    return ", ".join(shown) + (", ..." if len(choices) > 12 else "")


def _shown(value: object) -> str:
    """A value as it would be written, cut to a readable length."""
    if isinstance(value, dict):
        return f"a mapping with {len(value)} keys"
    if isinstance(value, list):
        return f"a list of {len(value)}"
    text = {None: "nothing", True: "true", False: "false"}.get(value) \
        if value is None or isinstance(value, bool) else str(value)
    text = str(text)
    return text if len(text) <= 60 else text[:57] + "..."
