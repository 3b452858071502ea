"""What a new version of a pack changes on records, finding by finding, each with its cause."""

from garboard.authoring.effect.causes import Cause, causes_of
from garboard.authoring.effect.effect import Effect, Moved, effect_on
from garboard.authoring.effect.text import effect_data, effect_text

__all__ = ["Cause", "Effect", "Moved", "causes_of", "effect_data", "effect_on", "effect_text"]
