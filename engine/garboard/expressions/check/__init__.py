"""Names, types and dimensions of an expression, before it ever meets a record."""

from garboard.expressions.check.checked import Checked
from garboard.expressions.check.checker import check, read_expression

__all__ = ["Checked", "check", "read_expression"]
