"""Problem codes of the floor trail."""

CODES: dict[str, tuple[str, str]] = {}
