"""Dotted names followed from the thing they start at, along relations, to a value."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from garboard.errors import did_you_mean, nearest
from garboard.expressions.check.scope import Scope
from garboard.expressions.tree import AnswerName, Expression, LimitName, Path, Read, Word
from garboard.expressions.types import UNCLEAR, Type, type_of
from garboard.expressions.vocabulary import NameInfo

ITEM: Final = "item"
_ORIGIN: Final = "where a fact comes from is spelled 'origin' here"


def resolved(path: Path, scope: Scope) -> Expression:
    """The path as a read, a limit or an answer; left as it is, of unclear type, when it is none."""
    first, *rest = path.words
    if first.text in scope.variables:
        root, subject = scope.variables[first.text]
        return _followed(path, root, subject, scope)
    if first.text == scope.about:
        return _followed(path, ITEM, scope.about, scope)
    if first.text in scope.vocabulary.single:
        return _followed(path, first.text, first.text, scope)
    if first.text == "answer":
        return _answer(path, scope)
    if first.text in scope.limits:
        if rest:
            scope.complain("expression-field", rest[0], rest[0].text,
                           "nothing after a limit's name")
            return _unclear(path)
        scope.limits_used.add(first.text)
        return LimitName(path.offset, path.length, first.text, type_of(scope.limits[first.text]))
    _unknown_name(path, scope)
    return _unclear(path)


def _unclear(path: Path) -> Path:
    return Path(path.offset, path.length, path.words, UNCLEAR)


def _answer(path: Path, scope: Scope) -> Expression:
    question = path.words[1] if len(path.words) > 1 else path.words[0]
    if len(path.words) != 2 or question.text not in scope.answers:
        scope.complain("expression-answer", question, question.text,
                       "answer. and the id of a question of the pack",
                       did_you_mean(question.text, scope.answers))
        return _unclear(path)
    scope.answers_used.add(question.text)
    return AnswerName(path.offset, path.length, question.text,
                      type_of(scope.answers[question.text]))


# from thing to thing -----------------------------------------------------------------------------
def _followed(path: Path, root: str, subject: str, scope: Scope) -> Expression:
    steps: list[str] = []
    words = path.words[1:]
    found = Type("one", target=subject)
    while words:
        texts = tuple(word.text for word in words)
        count = scope.vocabulary.longest(subject, texts)
        if count == 0:
            _unknown_field(words, subject, scope)
            return _unclear(path)
        name = ".".join(texts[:count])
        info = scope.vocabulary.subjects[subject][name]
        scope.reads.add((subject, name))
        steps.append(name)
        taken, words = words[:count], words[count:]
        found = type_of(info)
        if words and not _leads_on(path, taken, words, info, scope):
            return _unclear(path)
        subject = info.target or subject
    return Read(path.offset, path.length, root, tuple(steps), found)


def _leads_on(path: Path, taken: tuple[Word, ...], words: tuple[Word, ...], info: NameInfo,
              scope: Scope) -> bool:
    """Whether something may follow a name; only a relation to one thing leads on."""
    if info.kind == "one":
        return True
    so_far = ".".join(word.text for word in path.words[:path.words.index(taken[-1]) + 1])
    after = ".".join(word.text for word in words)
    if info.kind == "many":
        scope.complain("expression-many", words[0], f"{after} of several things at once",
                       "a collection function",
                       f"such as all(x.{after} ... for x in {so_far})")
    else:
        scope.complain("expression-field", words[0], words[0].text,
                       f"nothing after {so_far}, which is {type_of(info).described()}",
                       _ORIGIN if words[-1].text == "from" else "")
    return False


# unknown names -----------------------------------------------------------------------------------
def _unknown_name(path: Path, scope: Scope) -> None:
    word = path.words[0]
    own = scope.vocabulary.subjects[scope.about]
    if word.text in scope.vocabulary.subjects:
        way = _way_to(word.text, own, scope.about)
        scope.complain("expression-out-of-scope", word, word.text,
                       f"{scope.about} or what it leads to", way)
        return
    whole = ".".join(each.text for each in path.words)
    hint = did_you_mean(word.text, scope.names())
    if word.text in ("yes", "no", "on", "off"):
        hint = f"write {'true' if word.text in ('yes', 'on') else 'false'}"
    elif word.text in own or whole in own:
        hint = f"write {scope.about}.{whole}"
    scope.complain("expression-name", word, word.text,
                   f"{scope.about}, {', '.join(scope.vocabulary.single)}, or the name of a limit",
                   hint)


def _way_to(subject: str, own: Mapping[str, NameInfo], about: str) -> str:
    for name, info in own.items():
        if info.target == subject and info.kind == "one":
            return f"write {about}.{name}"
        if info.target == subject:
            return f"look at each of {about}.{name} with all(...), any(...) and the like"
    return f"the rule is about {about}"


def _unknown_field(words: tuple[Word, ...], subject: str, scope: Scope) -> None:
    names = scope.vocabulary.subjects[subject]
    whole = ".".join(word.text for word in words)
    inside = sorted(name for name in names if name.startswith(f"{words[0].text}."))
    hint = ""
    if words[-1].text == "from":
        hint = _ORIGIN
    elif inside:
        guess = nearest(whole, inside, cutoff=0.6)
        hint = (f"did you mean {guess!r}?" if guess and len(words) > 1
                else f"it has {', '.join(inside[:8])}")
    else:
        hint = did_you_mean(whole, names) or did_you_mean(words[0].text, names)
    scope.complain("expression-field", words[0], words[0].text,
                   f"a recorded field, a relation or a quantity of {subject}", hint)
