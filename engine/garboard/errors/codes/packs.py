"""Problem codes of the floor packs."""

CODES: dict[str, tuple[str, str]] = {}
