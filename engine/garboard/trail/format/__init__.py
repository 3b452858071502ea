"""The format ``trail/1`` as models: they check a trail that is read and give the JSON Schema."""

from garboard.trail.format.document import TrailDocument

__all__ = ["TrailDocument"]
