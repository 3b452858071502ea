"""An expression cut into words, numbers, texts and signs, with the usual slips named at their spot.

The text is never given to Python's own parser, so nothing in it can reach what Python offers, and
work is bounded by the named limits before it is done.
"""

from garboard.expressions.scan.scanner import tokens_of
from garboard.expressions.scan.token import Token

__all__ = ["Token", "tokens_of"]
