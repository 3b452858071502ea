"""Problem codes of the floor quantities."""

CODES: dict[str, tuple[str, str]] = {}
