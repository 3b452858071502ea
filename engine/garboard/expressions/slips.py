"""The usual slips: signs and words of other notations, and what to write instead."""

from __future__ import annotations

from typing import Final, NamedTuple

from garboard.values.unit_table import AMBIGUOUS, UNITS


class Slip(NamedTuple):
    """A sign or word that is not ours; ``meant`` is what it is read as, to find more problems."""

    code: str
    meant: str | None
    hint: str


def _instead(code: str, pairs: dict[str, str]) -> dict[str, Slip]:
    return {sign: Slip(code, meant, f"write {meant!r}") for sign, meant in pairs.items()}


_NO_MEANING: Final = "this sign has no meaning here"
_NO_ASSIGNMENT: Final = "nothing can be assigned in an expression"
_LIST: Final = "a list is written (\"a\", \"b\")"
_OPERATORS: Final = {
    "**": "there are no powers; multiply instead",
    "^": "there are no powers; multiply instead",
    "//": "there is no division without remainder; write '/'",
    "%": "there is no remainder; a share in % is a limit",
    "~": "write 'not'", "<<": "shifting bits means nothing here",
    ">>": "shifting bits means nothing here", "@": _NO_MEANING,
    ":=": _NO_ASSIGNMENT, "->": _NO_MEANING,
    "{": _LIST, "}": _LIST, "$": "names stand alone, without a sign before them",
    "`": "a text stands in straight quotes",
    "\\": "an expression may run over several lines as it is",
    ";": "one rule holds one expression", ":": _NO_MEANING,
    "#": "a remark stands outside the expression", "?": "write 'x if condition else y'",
    "...": _NO_MEANING,
    "+=": _NO_ASSIGNMENT, "-=": _NO_ASSIGNMENT,
    "*=": _NO_ASSIGNMENT, "/=": _NO_ASSIGNMENT,
}

#: Signs of other notations.
SIGNS: Final[dict[str, Slip]] = {
    **_instead("expression-sign-for-word",
               {"&&": "and", "||": "or", "&": "and", "|": "or", "!": "not"}),
    **_instead("expression-sign", {
        "≥": ">=", "⩾": ">=", "≤": "<=", "⩽": "<=", "≠": "!=", "×": "*", "·": "*", "∙": "*",
        "÷": "/", "∕": "/", "−": "-", "–": "-", "—": "-", "=>": ">=", "=<": "<=", "<>": "!=",
        "===": "==", "!==": "!=", "＝": "==", "（": "(", "）": ")", "，": ","}),
    **{sign: Slip("expression-operator", None, hint) for sign, hint in _OPERATORS.items()},
    **{sign: Slip("expression-quotes", None, "use straight quotes: \"text\"")
       for sign in "“”„‘’‚«»"},
}

_CASELESS: Final = ("and", "or", "not", "in", "if", "else", "for", "true", "false")
_RESERVED: Final = {
    "is": "write '==', or exists(...) to ask whether there is one",
    **dict.fromkeys(("None", "none", "null", "nil", "undefined"),
                    "there is no such value; exists(...) asks whether there is one"),
    **dict.fromkeys(("as", "assert", "async", "await", "break", "class", "continue", "def", "del",
                     "elif", "except", "finally", "from", "global", "import", "lambda", "nonlocal",
                     "pass", "raise", "return", "try", "while", "with", "yield"), ""),
}

#: Words that mean themselves and nothing else.
WORDS: Final = frozenset(_CASELESS)


def word_slip(word: str) -> Slip | None:
    """The slip a word is, if it is one."""
    if word in _RESERVED:
        return Slip("expression-word", None, _RESERVED[word])
    plain = word.lower()
    if plain in WORDS and word != plain and word not in ("True", "False"):
        return Slip("expression-word-case", plain, f"write {plain!r}")
    return None


#: Units a number may be seen with.
UNIT_WORDS: Final = frozenset(
    spelling for units in (*UNITS.values(), AMBIGUOUS) for spelling in units
) - {"ratio"} | {"AWG", "SAE", "VDC", "VAC", "V/m", "volt", "volts", "amp", "amps", "percent"}
