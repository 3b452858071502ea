"""Problem codes of plugins."""

CODES: dict[str, tuple[str, str]] = {
    "plugin-does-not-load": (
        "A plugin does not load",
        "An installed plugin raised an error while it was imported. Rules that need its quantities "
        "are not assessed. Repair or uninstall the plugin."),
    "plugin-hook-unknown": (
        "A plugin implements a hook that does not exist",
        "The plugin was written for another version, or a hook's name or argument is misspelt."),
    "plugin-without-manifest": (
        "A plugin without its manifest",
        "Every plugin ships one manifest that lists its quantities, so that they can be shown "
        "without importing it."),
    "plugin-manifest-unreadable": (
        "A plugin's manifest cannot be read",
        "The manifest file is missing or is not JSON."),
    "plugin-manifest-differs": (
        "A plugin's manifest differs from what it declares",
        "The manifest must list exactly the quantities the plugin declares. Write it anew."),
    "plugin-api-mismatch": (
        "A plugin is written for another plugin interface",
        "Install a version of the plugin that is written for this version of the program."),
    "quantity-subject-unknown": (
        "A quantity of an unknown subject",
        "A quantity belongs to one of the subjects of a record, such as battery or device."),
    "quantity-clash": (
        "A quantity's name is taken",
        "Two quantities, or a quantity and a recorded field, have the same name."),
    "quantity-need-unknown": (
        "A quantity needs something that does not exist",
        "What a quantity needs is a path over recorded fields, relations and other quantities."),
}
