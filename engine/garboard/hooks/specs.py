"""What a plugin can supply.

A plugin is a module or object registered under the entry point group ``garboard``. Hooks are called
once, when the program starts; what they return fills a registry that is then frozen.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from garboard.hooks.markers import hookspec

if TYPE_CHECKING:
    from garboard.quantities import Quantity


@hookspec
def garboard_quantities() -> Iterable[Quantity]:
    """The quantities this plugin can compute.

    Each names its subject and unit, what it needs, its method and citation, its version and its
    range of validity (see ``garboard.quantities.quantity``). Outside that range the function
    returns an unknown with the reason *outside method*; it never extrapolates.
    """
    raise NotImplementedError


@hookspec
def garboard_manifest() -> str:
    """The path of this plugin's manifest (``plugin-manifest/1``), a JSON file beside its code.

    The manifest lists what ``garboard_quantities`` returns, so that it can be shown without
    importing the plugin; when the plugin loads, the two are held against each other.
    """
    raise NotImplementedError
