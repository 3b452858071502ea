"""Problem codes of the floor expressions."""

CODES: dict[str, tuple[str, str]] = {}
