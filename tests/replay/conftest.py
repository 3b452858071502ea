"""The command line, as the tests of the command line run it."""

from cli.conftest import garboard

__all__ = ["garboard"]
