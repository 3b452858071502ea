"""``python -m garboard`` is the command line."""

from garboard.cli.main import main

main()
