"""Whether an answer could make a rule hold although what is computed speaks against it.

Every statement on recorded facts and figures is taken to go against the rule, and every answer in
its favour. Where the rule then holds, the answer overrules what was computed.
"""

from __future__ import annotations

from collections.abc import Iterator

from garboard.expressions import tree


def overruling_answer(root: tree.Expression) -> tree.AnswerName | None:
    """An answer that overrules what is computed; ``None`` where no answer can."""
    answers = [node for node in _all(root) if isinstance(node, tree.AnswerName)]
    if not answers or not _computes(root) or not _can_be(root, True):
        return None
    return answers[0]


def _can_be(node: tree.Expression, wanted: bool) -> bool:
    """Whether answers alone can make a truth what is wanted."""
    match node:
        case tree.Truth():
            return node.value is wanted
        case tree.AnswerName():
            return True
        case tree.Not():
            return _can_be(node.operand, not wanted)
        case tree.Logic():
            parts = [_can_be(part, wanted) for part in node.parts]
            return all(parts) if (node.word == "and") is wanted else any(parts)
        case tree.Conditional():
            branches = _can_be(node.if_true, wanted), _can_be(node.if_false, wanted)
            return all(branches) if _computes(node.condition) else any(branches)
        case tree.Gathering() if node.function.text in ("all", "any"):
            return _can_be(node.element, wanted)
        case _:
            return not _computes(node)


def _computes(node: tree.Expression) -> bool:
    """Whether a part reads anything that is recorded or computed."""
    return any(isinstance(each, tree.Read) for each in _all(node))


def _all(node: tree.Expression) -> Iterator[tree.Expression]:
    yield node
    for child in tree.children(node):
        yield from _all(child)
