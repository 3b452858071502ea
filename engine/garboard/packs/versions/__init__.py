"""What the versions of a pack mean: which step a change asks for, and whether it was taken."""

from garboard.packs.versions.changes import Reason, reasons
from garboard.packs.versions.step import STEPS, Step, rise_problem, step_of

__all__ = ["STEPS", "Reason", "Step", "reasons", "rise_problem", "step_of"]
