"""Problem codes of the floor record."""

CODES: dict[str, tuple[str, str]] = {
    # the format
    "format-missing": (
        "No format",
        "The record does not say its format. Write it as the first line."),
    "format-malformed": (
        "A format that does not read",
        "A format is a name, a slash and a version number, such as installation-record/1."),
    "format-unknown": (
        "Another format",
        "The document says it is something else. Check that it is the file you mean."),
    "format-newer": (
        "Written for a newer program",
        "The format is newer than this program reads. Update the program; nothing else of the "
        "document was looked at."),
    "format-older": (
        "Too old to be brought up",
        "The format is older than the oldest version this program can bring up to date."),
    # structure
    "key-unknown": (
        "An unknown key",
        "Nothing of this name is recorded here, often because of a slip of spelling or a key on "
        "the wrong level. What may stand here is in the message."),
    "key-missing": (
        "A key is missing",
        "This key cannot be left out."),
    "value-empty": (
        "Nothing written",
        "The key is there and nothing behind it. Leave the key out if the fact is not recorded, "
        "write [] for a list of none, or {not_determinable: why}."),
    "mapping-expected": (
        "A mapping belongs here",
        "This key holds fields of its own, each with its name."),
    "list-expected": (
        "A list belongs here",
        "This key holds a list, even of one. Each item starts with a dash, or stands in [ ]."),
    "scalar-expected": (
        "A single value belongs here",
        "This key holds one value and takes no further remarks."),
    "through-one-key": (
        "Not one part",
        "Each item of a run is one conductor, fuse, breaker or switch."),
    # leaves
    "text-expected": (
        "A text belongs here",
        "A number or a flag stands where a text belongs. Put it in quotes so that it stays as it "
        "was written."),
    "text-malformed": (
        "A text of another form",
        "The text does not have the form asked for, of which an example is in the message."),
    "choice-unknown": (
        "Not one of the choices",
        "Only the words listed may stand here, spelled as in the list."),
    "flag-unreadable": (
        "Neither yes nor no",
        "This is a question of yes or no. What is not known is left out, or not determinable."),
    "count-unreadable": (
        "Not a whole number",
        "A count is a whole number without unit, decimals or quotes."),
    "count-too-small": (
        "A count too small",
        "So few make no sense here."),
    "day-unreadable": (
        "A day that does not read",
        "A date is written year-month-day, such as 2026-04-18."),
    "value-not-positive": (
        "Zero or less makes no sense",
        "This figure is more than zero in any installation. Check the sign and the number."),
    "value-negative": (
        "Less than zero makes no sense",
        "This figure is zero or more in any installation. Check the sign."),
    "later-than-survey": (
        "Evidence from after the survey",
        "A picture or paper bears a later day than the survey it belongs to. The record is read as "
        "it stands; check both days."),
    "value-unlikely": (
        "An unlikely figure",
        "The figure is possible but far from what a survey meets. Often the unit has slipped. The "
        "record is read as it stands."),
    "leaf-without-value": (
        "Remarks without a value",
        "A fact needs its value, or not_determinable with the reason. Leave it out where neither "
        "is there."),
    "leaf-two-answers": (
        "A value that is not determinable",
        "A fact has either a value or the reason why there is none."),
    "leaf-two-spreads": (
        "Two spreads for one figure",
        "plus_minus is a tolerance, uncertainty the 95 % expanded uncertainty of a measurement. "
        "Give one."),
    "leaf-spread-unfit": (
        "A spread that belongs to no figure",
        "plus_minus and uncertainty stand beside one measured number, and nowhere else."),
    "spread-through-zero": (
        "A spread that reaches zero",
        "The figure may be anything down to zero. It is read so; check that the spread is meant."),
    "more-warnings": (
        "More warnings than are listed",
        "Only the first of them are listed. Mend or confirm those, then read again."),
    # ids and references
    "id-malformed": (
        "An id of another form",
        "Ids are lower-case letters, digits, and hyphens between them; no dots, no blanks."),
    "id-reserved": (
        "An id with a meaning of its own",
        "The word stands for something else wherever an id can stand. Choose another."),
    "id-twice": (
        "An id used twice",
        "Two things have one id, so it is not clear which one is meant. Rename one of them."),
    "reference-unknown": (
        "Nothing has this id",
        "The id mentioned belongs to nothing in the record. Check its spelling, or add the thing."),
    "reference-kind": (
        "The id of something else",
        "The id belongs to a thing of another kind than can stand here."),
    "reference-twice": (
        "Mentioned twice",
        "The same id stands twice in one list."),
    # the circuit
    "terminal-unknown": (
        "No such terminal",
        "Batteries, charging sources and loads have the terminals positive and negative, buses "
        "have none."),
    "run-to-itself": (
        "A run back to where it began",
        "Both ends of the run are the same. Check where the cable goes."),
    "run-without-conductor": (
        "A run without a conductor",
        "Nothing but devices and switches stands between a load or a charging source and what "
        "feeds it. If a cable was left out, none of the rules on it was checked."),
    "battery-shorted": (
        "A battery shorted by the record",
        "Runs join the two terminals of a battery to each other. Two ends were mixed up."),
    "series-circular": (
        "Batteries in a ring",
        "From plus to minus the runs lead from battery to battery and back to the first: the ring "
        "would be a short circuit. Two ends were mixed up."),
    # answers
    "answer-dates-reversed": (
        "An answer that ends before it begins",
        "The last day of an answer is its first day or later."),
    "answer-twice": (
        "Two answers to one question",
        "The question is answered twice for the same thing and day. Keep one of them."),
}
