"""How an outcome came about: every part with its value, what decided, and by how much."""

from garboard.expressions.working.model import Compared, Step, Turn, Working
from garboard.expressions.working.show import working

__all__ = ["Compared", "Step", "Turn", "Working", "working"]
