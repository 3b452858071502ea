"""The place the parser has come to among the tokens of an expression."""

from __future__ import annotations

from typing import NoReturn

from garboard.expressions.limits import Limits
from garboard.expressions.problem import ExpressionProblem, ExpressionRefused
from garboard.expressions.scan import Token, tokens_of


class Cursor:
    """Tokens with a position, the problems met so far, and how deep the parts lie."""

    def __init__(self, text: str, limits: Limits) -> None:
        self.text, self.limits = text, limits
        self.tokens, self.problems = tokens_of(text, limits)
        self.at = 0
        self._depth = 0

    @property
    def next(self) -> Token:
        return self.tokens[self.at]

    def beyond(self, distance: int = 1) -> Token:
        """A token further on; the last one is an ``end``."""
        return self.tokens[min(self.at + distance, len(self.tokens) - 1)]

    def take(self) -> Token:
        token = self.tokens[self.at]
        self.at += 1
        return token

    def sees(self, *texts: str) -> bool:
        """Whether the next token is one of these signs or words."""
        return self.next.kind in ("sign", "word") and self.next.text in texts

    def took(self, text: str) -> bool:
        """Take the next token if it is this sign or word."""
        if not self.sees(text):
            return False
        self.at += 1
        return True

    def since(self, start: int) -> tuple[int, int]:
        """Offset and length of the text from the token number ``start`` to the last one taken."""
        offset = self.tokens[start].offset
        return offset, self.tokens[self.at - 1].end - offset

    def deeper(self) -> None:
        """Enter a part inside another; refused when the limit is passed."""
        self._depth += 1
        if self._depth > self.limits.depth:
            self.refuse("expression-depth", self.tokens[self.at - 1],
                        found=f"more than {self.limits.depth} levels",
                        expected=f"at most {self.limits.depth} (limit 'depth')")

    def back(self) -> None:
        self._depth -= 1

    # problems ------------------------------------------------------------------------------------
    def note(self, code: str, token: Token, *, found: str = "", expected: str = "",
             hint: str = "") -> None:
        """Keep a problem one can read past."""
        self.problems.append(ExpressionProblem(
            code, token.offset, max(token.length, 1), found or token.text, expected, hint))

    def refuse(self, code: str, token: Token, *, found: str = "", expected: str = "",
               hint: str = "") -> NoReturn:
        """Give up at a token, with all problems so far."""
        self.note(code, token, found=found, expected=expected, hint=hint)
        raise ExpressionRefused(self.text, self.problems)
