"""The smallest design change, of those a pack permits, after which a failed finding passes."""

from garboard.assessment.remedies.search import remedy_for

__all__ = ["remedy_for"]
