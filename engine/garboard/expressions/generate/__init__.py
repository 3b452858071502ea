"""Python source made from checked trees: one function for all rules, one loop per subject.

Every name in it is made here, and every constant (limits, literals, names of fields) is handed in
by reference, so no word an author wrote is ever part of the source.
"""

from garboard.expressions.generate.function import Group, rules_function

__all__ = ["Group", "rules_function"]
