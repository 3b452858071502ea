"""Hook specifications and markers for plugins."""

from garboard.hooks.markers import API, PROJECT, hookimpl, hookspec

__all__ = ["API", "PROJECT", "hookimpl", "hookspec"]
