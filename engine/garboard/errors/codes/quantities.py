"""Problem codes of the floor quantities."""

CODES: dict[str, tuple[str, str]] = {
    "quantity-unknown": (
        "No such quantity",
        "A quantity is named by its subject and name, such as device.prospective_current."),
    "item-unknown": (
        "Nothing has this id",
        "Figures were asked for of a thing that the record does not hold."),
}
