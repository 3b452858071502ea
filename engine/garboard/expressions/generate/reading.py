"""Source for what is read from things and answers: checked for its kind as it is read."""

from __future__ import annotations

from typing import Final

from garboard.expressions.generate.body import Body
from garboard.expressions.tree import AnswerName, Expression, Read
from garboard.expressions.types import Type

#: The class a value of a kind has when it is exact, by its name in the generated source.
CLASS: Final = {"number": "float", "count": "int", "text": "str", "texts": "tuple", "date": "date"}


class Reading:
    """Writes reads into a body; ``loops`` names the variable of every loop around the spot."""

    def __init__(self, body: Body) -> None:
        self.body = body
        self.loops: dict[str, str] = {}

    def kept(self, key: tuple[str, ...], source: str) -> str:
        """The name of a value that is computed once."""
        return self.body.named(key, source)[0]

    def key(self, name: str) -> str:
        """The name of the constant that holds a name."""
        return self.body.constants.name(name)

    def thing(self, root: str, steps: tuple[str, ...]) -> str:
        """The thing that relations lead to; unknown where there is none."""
        thing = self.loops.get(root) or ("item" if root == "item" else
                                         self.kept(("root", root), f"roots[{self.key(root)}]"))
        for step in steps:
            raw, key = self.raw(thing, step), self.key(step)
            thing = self.kept(("thing", raw),
                              f"{raw} if {raw} is not None else none_there({thing}, {key})")
        return thing

    def raw(self, thing: str, name: str) -> str:
        """What a thing holds under a name, as it is."""
        return self.kept(("raw", thing, name), f"{thing}[{self.key(name)}]")

    def read(self, node: Read) -> str:
        """A value of a thing."""
        if not node.steps:
            return self.thing(node.root, ())
        thing, field = self.thing(node.root, node.steps[:-1]), node.steps[-1]
        return self._usable(("raw", thing, field), f"{thing}[{self.key(field)}]", node.type, thing,
                            field)

    def answer(self, node: AnswerName) -> str:
        """The answer to a question."""
        return self._usable(("answer", node.question), f"answers[{self.key(node.question)}]",
                            node.type, "None", f"answer.{node.question}")

    def _usable(self, key: tuple[str, ...], source: str, found: Type | None, owner: str,
                field: str) -> str:
        kind = found.kind if found else "opaque"
        name, new = self.body.named(key, source)
        if new and kind not in ("one", "many"):
            odd = (f"{name} is not True and {name} is not False" if kind == "truth"
                   else f"{name}.__class__ is not {CLASS[kind]}")
            with self.body.block(f"if {odd} and {name}.__class__ is not Unknown:"):
                self.body.line(f"{name} = usable({name}, {self.key(kind)}, {owner}, "
                               f"{self.key(field)}, notes)")
        return name

    def collection(self, node: Expression) -> str:
        """A tuple of things, or an unknown."""
        if not isinstance(node, Read):
            raise TypeError("a collection is a relation")
        thing = self.thing(node.root, node.steps[:-1])
        raw = self.raw(thing, node.steps[-1])
        return self.kept(("several", raw), f"{raw} if {raw}.__class__ is tuple else "
                                           f"several({thing}, {self.key(node.steps[-1])})")

    def exists(self, node: Expression) -> str:
        """Whether a relation leads to a thing."""
        if not isinstance(node, Read):
            raise TypeError("exists takes a relation")
        start = self.thing(node.root, ())
        if len(node.steps) == 1:
            raw = self.raw(start, node.steps[0])
            return self.kept(("exists", raw),
                             f"{raw} is not None if {raw}.__class__ is not Unknown else {raw}")
        steps = self.body.constants.name(node.steps)
        return self.kept(("exists", start, steps), f"exists({start}, {steps})")
