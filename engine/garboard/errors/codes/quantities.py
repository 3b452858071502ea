"""Problem codes of the floor quantities."""

CODES: dict[str, tuple[str, str]] = {
    "quantity-unknown": (
        "No such quantity",
        "A quantity is named by its subject and name, such as device.prospective_current."),
}
