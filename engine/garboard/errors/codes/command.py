"""Problem codes of the floor command."""

CODES: dict[str, tuple[str, str]] = {}
