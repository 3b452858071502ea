"""Problem codes of the floor documents."""

CODES: dict[str, tuple[str, str]] = {}
