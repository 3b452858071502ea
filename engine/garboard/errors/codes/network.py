"""Problem codes of the floor network."""

CODES: dict[str, tuple[str, str]] = {}
