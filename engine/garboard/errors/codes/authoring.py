"""Problem codes of the tools for authors: cases, proofreading, starting a pack."""

CODES: dict[str, tuple[str, str]] = {
    "case-twice": (
        "Two cases of one name",
        "A case is known by its name, which is unique in the pack. Give one of them another."),
    "case-rule-unknown": (
        "A case is about a rule that is not there",
        "The rules of a case are rules of its pack, and expected findings are of rules the case "
        "names. Correct the name, or add the rule to the case."),
    "case-rule-missing": (
        "An expected finding does not say of which rule",
        "A case about several rules names the rule of each finding it expects."),
    "case-base-missing": (
        "The record a case starts from is not there",
        "The file is named as seen from the folder 'cases' of the pack, such as "
        "base/launch.yaml."),
    "case-path-unknown": (
        "A change leads nowhere",
        "A change names a thing by its id and a key of it, such as f1.rating, or a key of the "
        "record, such as loads. What is removed must be there."),
    "case-record-refused": (
        "The record of a case is refused",
        "With its changes made, the record of the case breaks the record format; the path says "
        "where in the record."),
    "case-figure-unreadable": (
        "An expected figure cannot be read",
        "A figure is written with its unit and tolerance: 28.67 kA within 0.1 %. Counts, texts, "
        "yes and no are written alone; 'not known' stands for a figure that is not known."),
    "case-figure-unknown": (
        "No such figure",
        "An expected figure is named by the id of a thing and the name of a recorded value or a "
        "quantity, such as f0.prospective_current."),
    "case-no-acceptance": (
        "The pack states no acceptance",
        "A case can expect accepted, referred or declined only of a pack that says under "
        "'acceptance' on what it accepts."),
    "case-acceptance-differs": (
        "The acceptance differs from what the case expects",
        "Either the conditions of the acceptance do not do what their author meant, or the case "
        "expects the wrong thing. 'garboard assess' names the findings that decide."),
    "case-finding-differs": (
        "A finding differs from what the case expects",
        "Either the rule does not do what its author meant, or the case expects the wrong thing."),
    "case-finding-missing": (
        "An expected finding does not come out",
        "The rule has no finding for that item. Its id may be misspelt, or the thing is not in "
        "the record."),
    "case-finding-more": (
        "A finding comes out that the case does not expect",
        "The case says nothing_else: expect this finding too, or change the record."),
    "case-figure-differs": (
        "A figure differs from what the case expects",
        "It lies further from the expected figure than the tolerance allows."),
    "case-kind-possible": (
        "A case shows what is written down as not possible",
        "Take the kind out of not_possible, for a case shows it."),
    "rule-unknown": (
        "The pack has no such rule",
        "A rule is named by its id."),
    "rule-cannot-fail": (
        "A rule cannot fail",
        "Whatever is aboard, its requirement holds. A limit, a comparison or an 'or' is likely "
        "not what was meant."),
    "rule-cannot-pass": (
        "A rule cannot pass",
        "Nothing that could be aboard meets its requirement where the rule applies. A limit, a "
        "comparison or an 'and' is likely not what was meant."),
    "rule-never-applies": (
        "A rule can never apply",
        "Nothing that could be aboard meets its condition."),
    "rule-covered": (
        "A rule is covered by another",
        "It fails only where the other fails too, and is no graver: it adds nothing. Take it out, "
        "or correct what makes it the weaker one."),
    "rule-contrary": (
        "Two rules are contrary",
        "Where both apply, nothing that could be aboard passes both. One of them is likely "
        "wrong."),
    "explained-in-vain": (
        "A warning is explained that does not come",
        "The proofreader has no such warning about the rule. Take the explanation out."),
    "pack-name-unfit": (
        "Not a name for a pack",
        "A pack is called by lower-case letters, digits and hyphens between them."),
    "pack-exists": (
        "The folder of the new pack is there already",
        "Nothing is written over. Choose another name, or another folder with --in."),
    "pack-not-written": (
        "The folder of the new pack cannot be made",
        "Look at who may write there, and at the space on the disk."),
    "given-unreadable": (
        "What is given cannot be read",
        "A value is given as path=value, the path as it stands in the rule: "
        "'device.rating=200 A'. 'none' stands for a related thing that is not there, 'not known' "
        "for a value that is not known."),
    "given-unknown": (
        "What is given is not a name of the rule",
        "A path starts with what the rule is about, with record, vessel or wiring, or is the name "
        "of a limit."),
    "given-item": (
        "The item is not in the record, or the rule is not about it",
        "Name the id of a thing that the rule is about."),
    "given-twice": (
        "A record and given values together",
        "Give values with --given, or name a record and an item of it."),
}
