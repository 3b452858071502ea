"""Putting the program together: plugins, quantities, vocabulary, packs."""

from garboard.assembly.plugins import Plugin, Plugins, load_plugins
from garboard.assembly.vocabulary import vocabulary_of
from garboard.assembly.workshop import Workshop, open_workshop

__all__ = [
    "Plugin", "Plugins", "Workshop", "load_plugins", "open_workshop",
    "vocabulary_of",
]
