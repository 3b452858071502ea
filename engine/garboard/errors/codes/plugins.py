"""Problem codes of the floor plugins."""

CODES: dict[str, tuple[str, str]] = {}
