"""Problem codes of the command line."""

CODES: dict[str, tuple[str, str]] = {
    "command-unknown": (
        "No such command",
        "The first word after the program's name is the command; garboard --help lists them."),
    "command-line": (
        "The command line makes no sense",
        "An option is unknown, needs a value, or was given a value it does not take."),
    "date-unreadable": (
        "Not a date",
        "A date is written year-month-day, such as 2026-04-18."),
    "date-missing": (
        "No date for the assessment",
        "The date of the assessment is given with --on, else it is the survey's date in the "
        "record. Nothing is taken from the clock."),
    "finding-unknown": (
        "The trail has no such finding",
        "A finding is named by its rule and the item it is about, as reports and trails name "
        "them."),
    "output-over-input": (
        "An output would overwrite an input",
        "The file to write is one of the files that are read. Name another file."),
    "pack-has-none": (
        "The pack has no such rule or limit",
        "garboard pack show lists the rules and limits of a pack by name."),
    "record-without-pack": (
        "A record, and no pack to assess it with",
        "A record says what is aboard; what it is compared by comes from packs. Name them with "
        "--pack, or give the trail of its assessment."),
    "previous-later": (
        "The previous assessment is of a later day",
        "What is named with --previous was assessed before. Check the two dates, or --on."),
    "previous-other-vessel": (
        "The previous assessment is of another vessel",
        "Only an assessment of the same vessel, by its name in both records, can be the previous "
        "one."),
    "report-ending-unknown": (
        "No report is known by that ending",
        "The ending of the file says what is written. Give the file one of the endings named."),
    "report-library-missing": (
        "A library that writes this kind of file is not installed",
        "The file is written by a library that does not come with the program by itself; the hint "
        "says how to install it. Every other kind of report works without it."),
    "report-over-trail": (
        "The report would overwrite its trail",
        "The file to write is the trail itself, which must not be lost. Name another file."),
    "trail-for-several": (
        "One trail file for several records",
        "Each record gets a trail of its own. Name a folder that exists, or leave --trail out."),
    "trail-over-input": (
        "The trail would overwrite an input",
        "The path of the trail is that of a record or pack. Name another file."),
    "photo-differs": (
        "Not the photograph of the record",
        "A photograph is shown only where its SHA-256 digest is on record and is that of the file. "
        "Record the digest when the picture is taken, or find the file that was meant."),
    "photo-unfit": (
        "No photograph that can be shown",
        "Photographs are JPEG or PNG files of a size that can be unpacked. What the file is does "
        "not matter to the assessment; only the picture is left out."),
    "photo-missing": (
        "No such photograph",
        "The record names a file that is not in the folder of photographs."),
    "photos-nowhere": (
        "This kind of report shows no pictures",
        "Photographs are shown on the page and in the PDF."),
    "report-fetches": (
        "The page asks for something from outside",
        "A report needs nothing but the trail, and nothing is fetched while it is drawn. Report "
        "this as a fault of the program."),
    "language-unknown": (
        "No texts in this language",
        "The packs have no texts in the language that was asked for. Leave --language out, or name "
        "one of those they have."),
    "code-unknown": (
        "No such problem code",
        "A code stands after the place of a problem, in small letters with hyphens."),
}
