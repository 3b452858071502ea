"""Sealing a pack, and the step that its version has to take."""

from garboard.authoring.sealing.seal import Signing, seal_pack, signing_with
from garboard.authoring.sealing.steps import Steps, steps_between

__all__ = ["Signing", "Steps", "seal_pack", "signing_with", "steps_between"]
