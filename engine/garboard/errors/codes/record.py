"""Problem codes of the floor record."""

CODES: dict[str, tuple[str, str]] = {}
