"""Problem codes of the floor trail."""

CODES: dict[str, tuple[str, str]] = {
    "canonical-number": (
        "A number that cannot be written exactly",
        "Numbers of a trail are finite, and whole numbers stay within 2^53 - 1 of zero. Another "
        "number is a mistake in a calculation or a plugin."),
    "canonical-text": (
        "A text that is not valid Unicode",
        "The text holds half of a character (a lone surrogate). Write that text anew."),
    "canonical-key": (
        "Two keys that are the same text",
        "The two keys look the same and are written with different characters. Rename one."),
    "canonical-type": (
        "Something that is not data",
        "A trail holds numbers, texts, truths, lists and objects with text keys. Something else is "
        "a mistake in the program or a plugin."),
    "signed-already": (
        "The key has signed the trail already",
        "One signature by a key is enough. Another person signs with a key of their own."),
    "trail-format-unknown": (
        "The file is not a trail",
        "A trail says 'trail/1' under its key 'format'. Check that you named the right file."),
    "trail-format-newer": (
        "The trail is of a newer format",
        "It was written by a newer version of the program. Use that version to read it."),
    "trail-damaged": (
        "The trail is damaged",
        "Something is missing or is not what the format asks for, so the file was cut off, edited "
        "or written by another program. Ask its maker for the original."),
    "trail-digest-wrong": (
        "The trail's digest is wrong",
        "The file was changed after it was made, on purpose or by accident; what it says cannot be "
        "relied on. Ask its maker for the original."),
    "trail-inconsistent": (
        "The trail contradicts itself",
        "Its digest is right, but its parts do not agree, so it was not made by this program or by "
        "a faulty version. Assess the record again."),
}
