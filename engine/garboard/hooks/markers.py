"""The markers a plugin uses: ``hookimpl`` on what it supplies; ``hookspec`` is ours."""

from __future__ import annotations

import pluggy

#: The name under which hooks, markers and entry points are found.
PROJECT = "garboard"
#: What this version of the hooks is called; a plugin's manifest names the one it is written for.
API = 1

hookspec = pluggy.HookspecMarker(PROJECT)
hookimpl = pluggy.HookimplMarker(PROJECT)
