"""The language of rules: read, checked against names and dimensions, compiled, evaluated, shown."""

from garboard.expressions.check import Checked, check, read_expression
from garboard.expressions.decision import GUARDED, SIMPLE, Decision
from garboard.expressions.functions import FUNCTIONS, Function
from garboard.expressions.limits import DEFAULT_LIMITS, Limits
from garboard.expressions.outcome import (
    CONDITION_FALSE,
    FAILED,
    INSIDE_UNCERTAINTY,
    NONE_ABOARD,
    NOT_APPLICABLE,
    NOT_ASSESSED,
    ON_ASSUMPTION,
    OUTCOMES,
    PASSED,
    Row,
    reason_of,
)
from garboard.expressions.parse import parse
from garboard.expressions.problem import ExpressionProblem, ExpressionRefused
from garboard.expressions.program import Program, compile_rules
from garboard.expressions.rule import RuleSource
from garboard.expressions.statements import deciding, holding, resting
from garboard.expressions.trace import Atom, Joined, Operand, RuleTrace, keys_of
from garboard.expressions.tree import Parsed
from garboard.expressions.vocabulary import NameInfo, Vocabulary
from garboard.expressions.working import Compared, Step, Turn, Working, working

__all__ = [
    "CONDITION_FALSE", "DEFAULT_LIMITS", "FAILED", "FUNCTIONS", "GUARDED", "INSIDE_UNCERTAINTY",
    "NONE_ABOARD", "NOT_APPLICABLE", "NOT_ASSESSED", "ON_ASSUMPTION", "OUTCOMES", "PASSED",
    "SIMPLE", "Atom", "Checked", "Compared", "Decision", "ExpressionProblem",
    "ExpressionRefused", "Function", "Joined", "Limits", "NameInfo", "Operand", "Parsed",
    "Program", "Row", "RuleSource", "RuleTrace", "Step", "Turn", "Vocabulary", "Working",
    "check", "compile_rules", "deciding", "holding", "keys_of", "parse", "read_expression",
    "reason_of", "resting", "working",
]
