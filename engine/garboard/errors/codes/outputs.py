"""Problem codes of the floor outputs."""

CODES: dict[str, tuple[str, str]] = {}
