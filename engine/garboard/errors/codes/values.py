"""Problem codes of the floor values: figures, ranges and sizes as text."""

CODES: dict[str, tuple[str, str]] = {
    "text-too-long": (
        "A text is too long for a figure",
        "A figure is one number and one unit. What else there is to say belongs in a note."),
    "number-missing": (
        "No number",
        "A figure starts with its digits. Leave out a figure that is not known, or say "
        "not_determinable and why."),
    "number-not-finite": (
        "Not a finite number",
        "NaN and infinity are not figures. Leave out a figure that is not known; leave an end of a "
        "range out where it is open."),
    "number-out-of-range": (
        "A number too large or too small to calculate with",
        "Check the power of ten and the prefix of the unit."),
    "number-below-least": (
        "A figure below what nature allows",
        "A length, mass or resistance is never negative, a temperature never below -273.15 °C. "
        "Check the sign."),
    "number-grouped": (
        "Digits grouped with a separator",
        "Thousands are not set off: 1000 A, not 1_000 A or 1'000 A."),
    "number-digits": (
        "Digits of another script",
        "Write numbers with the digits 0 to 9."),
    "number-twice": (
        "More than one number",
        "One number is read. A range is written low .. high UNIT, a tolerance as plus_minus."),
    "number-fraction": (
        "A common fraction",
        "Write a fraction of an inch as a decimal number: 0.375 in, not 3/8 in."),
    "number-qualified": (
        "A figure with a qualifying sign or word",
        "At most is written .. 45 °C, at least 45 °C .., and about as a figure with plus_minus."),
    "number-malformed": (
        "A number that does not read",
        "A number has digits, at most one point that stands between digits, and then its unit."),
    "unit-comma": (
        "A comma in a number",
        "The decimal sign is a point; thousands are not set off. 1,5 V might be read as 15 V."),
    "unit-missing": (
        "No unit",
        "A figure is never read without its unit. Write it after the number."),
    "unit-spaces": (
        "More than a space between number and unit",
        "At most one space stands between a number and its unit."),
    "unit-unknown": (
        "An unknown unit",
        "Capital and small letters differ (mA, MA). The units that are read stand in the message."),
    "unit-mismatch": (
        "A unit of something else",
        "The unit belongs to another dimension than the field. Check that the figure stands in the "
        "right field."),
    "unit-ambiguous": (
        "A unit that means two things",
        "Write the figure in a unit with one meaning."),
    "range-unexpected": (
        "A range where one number belongs",
        "This field takes one number."),
    "range-expected": (
        "One number where a range belongs",
        "This field takes a range, low .. high UNIT. An end that is not limited is left out."),
    "range-malformed": (
        "A range that does not read",
        "A range is written low .. high UNIT with two points; one end may be left out."),
    "range-reversed": (
        "A range from high to low",
        "Write the lower end first."),
    "tolerance-negative": (
        "A negative plus_minus",
        "A plus_minus applies both ways; write it without a sign."),
    "tolerance-on-range": (
        "A range with a plus_minus",
        "Give either the two ends or a figure with its plus_minus."),
    "tolerance-percent": (
        "A share of a temperature",
        "What a temperature may be off is written in degrees."),
    "voltage-kind-missing": (
        "A voltage that does not say DC or AC",
        "A device rated for one kind proves nothing for the other. Write 160 V DC or 160 V AC."),
    "size-unreadable": (
        "A conductor size that does not read",
        "A size is written with its system: 2/0 AWG, 4 SAE or 50 mm2."),
    "size-system-missing": (
        "A conductor size without its system",
        "AWG, SAE and metric sizes of one number differ. The system is printed on the jacket."),
    "size-unknown": (
        "A conductor size that is not on its list",
        "Only the sizes of the standard are read. The nearest ones stand in the message."),
}
