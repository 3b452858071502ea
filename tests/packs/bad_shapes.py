"""Packs whose shape is wrong: a name, the text, and the code, line and column of each problem."""

HEAD = """\
format: rule-pack/1
pack: tried
version: 0.1.0
title: A pack to try things on
"""

RULE = """\
rules:
  - id: one
    title: First
    about: device
    must_hold: device.rating >= least
    severity: warning
    citation: {basis: practice}
    why: Because.
    recommendation: Change it.
"""

LIMITS = """\
limits:
  least: {value: 5 A, citation: {basis: house}}
"""

GOOD = HEAD + RULE + LIMITS


def changed(old: str, new: str, text: str = GOOD) -> str:
    """The text with one spot changed."""
    assert text.count(old) == 1, f"{old!r} occurs {text.count(old)} times"
    return text.replace(old, new)


BAD_SHAPES = [
    # the head
    ("a list at the top", "- format: rule-pack/1\n", [("document-not-a-mapping", 1, 1)]),
    ("no format", changed("format: rule-pack/1\n", ""), [("key-missing", 1, 1)]),
    ("another format", changed("rule-pack/1", "installation-record/1"), [("pack-format", 1, 9)]),
    ("a newer format", changed("rule-pack/1", "rule-pack/2"), [("pack-format", 1, 9)]),
    ("a name in capitals", changed("pack: tried", "pack: Tried"), [("id-malformed", 2, 7)]),
    ("a name that climbs", changed("pack: tried", "pack: ../tried"), [("id-malformed", 2, 7)]),
    ("a bare version", changed("0.1.0", "1.0"), [("pack-version", 3, 10)]),
    ("a whole number as version", changed("0.1.0", "1"), [("pack-version", 3, 10)]),
    ("two numbers as version", changed("0.1.0", "'1.0'"), [("pack-version", 3, 10)]),
    ("a version with a leading zero", changed("0.1.0", "0.01.0"), [("pack-version", 3, 10)]),
    ("an empty title", changed("A pack to try things on", "''"), [("value-empty", 4, 8)]),
    ("no title after the colon", changed("title: A pack to try things on", "title:"),
     [("value-empty", 4, 1)]),
    ("a number as title", changed("A pack to try things on", "12"), [("text-expected", 4, 8)]),
    ("a misspelt key", changed("title: A pack", "titel: A pack"), [("key-unknown", 4, 1)]),
    ("an unknown key", GOOD + "colour: blue\n", [("key-unknown", 16, 1)]),
    ("an unknown decision rule", GOOD + "decision_rule: guarded\n", [("choice-unknown", 16, 16)]),
    ("cautions that are one text", GOOD + "cautions: Mind the gap.\n", [("list-expected", 16, 11)]),
    ("an empty caution", GOOD + "cautions: [Mind it., '']\n", [("value-empty", 16, 22)]),
    ("layers, to no end", GOOD + "builds_on: [{pack: other, from: 1.0.0}]\n",
     [("key-missing", 16, 13)]),
    ("layers on nothing", GOOD + "builds_on: []\n", [("value-empty", 16, 1)]),
    ("an acceptance of nothing", GOOD + "acceptance: {}\n", [("key-missing", 16, 13)]),
    ("dispensations", GOOD + "dispensations: []\n", [("key-unknown", 16, 1)]),
    ("a need without its version", GOOD + "needs: [{plugin: garboard}]\n",
     [("key-missing", 16, 9)]),
    ("a need of version zero", GOOD + "needs: [{plugin: garboard, api: 0}]\n",
     [("count-too-small", 16, 33)]),
    ("a question without an answer", GOOD + "questions: [{id: q, ask: Really?}]\n",
     [("key-missing", 16, 13)]),
    ("an answer that is no schema", GOOD + "questions:\n"
     "  - {id: q, ask: R?, answer: {type: any}}\n",
     [("schema-broken", 17, 30)]),
    ("a question asked twice", GOOD + "questions:\n  - {id: q, ask: A?, answer: {}}\n"
     "  - {id: q, ask: B?, answer: {}}\n",
     [("question-twice", 17, 10), ("question-twice", 18, 10)]),
    # rules
    ("no rules", HEAD + LIMITS, [("pack-empty", 1, 1)]),
    ("an empty list of rules", HEAD + "rules: []\n", [("pack-empty", 1, 1)]),
    ("rules that are a mapping", HEAD + "rules: {id: one}\n",
     [("pack-empty", 1, 1), ("list-expected", 5, 8)]),
    ("a rule that is a text", HEAD + "rules: [one]\n", [("mapping-expected", 5, 9)]),
    ("a rule without an id", changed("  - id: one\n    title", "  - title"),
     [("key-missing", 6, 5)]),
    ("an id with capitals", changed("id: one", "id: One"), [("id-malformed", 6, 9)]),
    ("an id with a dot", changed("id: one", "id: one.two"), [("id-malformed", 6, 9)]),
    ("an id with an underscore", changed("id: one", "id: one_two"), [("id-malformed", 6, 9)]),
    ("an id that ends in a hyphen", changed("id: one", "id: one-"), [("id-malformed", 6, 9)]),
    ("a rule without severity", changed("    severity: warning\n", ""), [("key-missing", 6, 5)]),
    ("a rule without citation", changed("    citation: {basis: practice}\n", ""),
     [("key-missing", 6, 5)]),
    ("a rule without why", changed("    why: Because.\n", ""), [("key-missing", 6, 5)]),
    ("a rule without three keys", changed(
        "    severity: warning\n    citation: {basis: practice}\n    why: Because.\n", ""),
     [("key-missing", 6, 5)] * 3),
    ("a rule without what must hold", changed("    must_hold: device.rating >= least\n", ""),
     [("key-missing", 6, 5)]),
    ("a misspelt severity key", changed("severity:", "severty:"), [("key-unknown", 10, 5)]),
    ("a misspelt severity", changed("severity: warning", "severity: warnign"),
     [("choice-unknown", 10, 15)]),
    ("why without a text", changed("why: Because.", "why:"), [("value-empty", 12, 5)]),
    ("a truth in place of an expression", changed("device.rating >= least", "true"),
     [("text-expected", 9, 16)]),
    ("a number in place of an expression", changed("device.rating >= least", "12"),
     [("text-expected", 9, 16)]),
    ("a part without what is left", changed("    why:", "    covers: part\n    why:"),
     [("key-missing", 6, 5)]),
    ("something left of the whole", changed("    why:", "    left_to_a_person: Much.\n    why:"),
     [("covers-contradicts", 12, 5)]),
    ("an unknown extent", changed("    why:", "    covers: most\n    why:"),
     [("choice-unknown", 12, 13)]),
    ("an id used twice", changed("limits:", RULE.removeprefix("rules:\n") + "limits:"),
     [("rule-twice", 6, 9), ("rule-twice", 14, 9)]),
    # citations
    ("a citation without basis", changed("{basis: practice}", "{source: A book}"),
     [("key-missing", 11, 15)]),
    ("a misspelt basis", changed("{basis: practice}", "{basis: practise}"),
     [("choice-unknown", 11, 23)]),
    ("a regulation without source", changed(
        "{basis: practice}", "{basis: regulation, says: Do., status: read}"),
     [("key-missing", 11, 15)]),
    ("a comparison without what it says", changed(
        "{basis: practice}", "{basis: comparison, source: A law, status: read}"),
     [("key-missing", 11, 15)]),
    ("a standard with an empty source", changed(
        "{basis: practice}", "{basis: standard, source: , says: Do., status: read}"),
     [("key-missing", 11, 15), ("value-empty", 11, 33)]),
    ("an unknown status", changed("{basis: practice}", "{basis: practice, status: sure}"),
     [("choice-unknown", 11, 41)]),
    ("an edition that is a number", changed(
        "{basis: practice}", "{basis: practice, edition: 2023}"),
     [("text-expected", 11, 42)]),
    # limits
    ("limits that are a list", HEAD + RULE + "limits: [5 A]\n", [("mapping-expected", 14, 9)]),
    ("a limit without citation", changed("value: 5 A, citation: {basis: house}", "value: 5 A"),
     [("key-missing", 15, 10)]),
    ("a limit without value", changed("value: 5 A, ", ""), [("key-missing", 15, 10)]),
    ("a limit that is a bare number", changed("value: 5 A", "value: 5.5"),
     [("limit-value", 15, 18)]),
    ("a limit that is a truth", changed("value: 5 A", "value: true"), [("limit-value", 15, 18)]),
    ("a negative count", changed("value: 5 A", "value: -5"), [("limit-value", 15, 18)]),
    ("a list of numbers", changed("value: 5 A", "value: [1, 2]"), [("limit-value", 15, 18)]),
    ("an empty list of texts", changed("value: 5 A", "value: []"), [("limit-value", 15, 18)]),
    ("a limit of an unknown unit", changed("value: 5 A", "value: 5 Amps"),
     [("unit-unknown", 15, 20)]),
    ("a limit with a comma", changed("value: 5 A", "value: '1,5 A'"), [("unit-comma", 15, 20)]),
    ("a name of a limit with capitals", changed("  least:", "  Least:"), [("limit-name", 15, 3)]),
    ("a name of a limit with a hyphen", changed("  least:", "  the-least:"),
     [("limit-name", 15, 3)]),
    # several at once, and how the text is written
    ("five problems at once", changed("0.1.0", "1.0").replace("id: one", "id: One").replace(
        "warning", "grave").replace("5 A", "5").replace("house", "home"),
     [("pack-version", 3, 10), ("id-malformed", 6, 9), ("choice-unknown", 10, 15),
      ("choice-unknown", 15, 39)]),
    ("with line ends of the other kind", changed("id: one", "id: One").replace("\n", "\r\n"),
     [("id-malformed", 6, 9)]),
    ("with a byte order mark", "\ufeff" + changed("id: one", "id: One"), [("id-malformed", 6, 9)]),
]
