"""Hook specifications and markers for plugins, and the manifests plugins ship."""

from garboard.hooks.manifests import manifest_of, read_manifests
from garboard.hooks.markers import API, PROJECT, hookimpl, hookspec

__all__ = ["API", "PROJECT", "hookimpl", "hookspec", "manifest_of", "read_manifests"]
