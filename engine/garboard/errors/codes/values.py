"""Problem codes of the floor values."""

CODES: dict[str, tuple[str, str]] = {}
