"""Starting a pack: a small one, with comments, that proves itself."""

from garboard.authoring.starting.new_pack import new_pack

__all__ = ["new_pack"]
