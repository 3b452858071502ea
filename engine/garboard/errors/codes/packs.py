"""Problem codes of the floor packs."""

CODES: dict[str, tuple[str, str]] = {
    "about-unknown": (
        "Not something a rule can be about",
        "A rule is about one subject: vessel, battery, device and so on. It then gives one finding "
        "for each item of that subject."),
    "acceptance-rule": (
        "Acceptance names a rule that is not in force",
        "Every rule named under acceptance is a rule of the pack, and not retired."),
    "answer-about-one": (
        "An answer about one thing to a question asked once",
        "The question is asked of the whole boat. Take 'about' out of the answer."),
    "answer-day-missing": (
        "An answer without its day",
        "The question's answers hold for a time only, so each says with 'on' when it was given."),
    "answer-not-asked": (
        "An answer that no pack asks for",
        "No pack in use has such a question, but one has a question of nearly that name."),
    "answer-overrules": (
        "An answer that overrules what is computed",
        "The rule would hold on an answer alone although what is recorded or computed speaks "
        "against it. Ask with a rule of its own, or put what limits the rule into applies_when."),
    "answer-without-evidence": (
        "An answer without the evidence it needs",
        "The question counts an answer only if it names evidence of the record; until then it is "
        "awaited."),
    "base-circular": (
        "Packs that build on each other in a circle",
        "A pack cannot lie below itself. Take one of the entries under builds_on out."),
    "base-differs": (
        "Two versions of one pack below",
        "The packs this one builds on rest on different versions of the same pack. Bring them "
        "to one."),
    "base-missing": (
        "A pack to build on that is not there",
        "Packs that others build on are found by their name: among the shipped ones, beside the"
        " pack that asks, or named by their path with --pack."),
    "base-version": (
        "A pack to build on, in a version that is not accepted",
        "The range under builds_on leaves out every version there is. Check the pack against "
        "the other version, then widen the range."),
    "change-empty": (
        "A change that changes nothing",
        "A change names a rule or a limit, and at least one thing of it that is set anew."),
    "change-field": (
        "Not something that can be changed there",
        "A rule has a severity, a limit a value, and so on. The subject of a rule cannot be "
        "changed: retire it, and add another."),
    "change-kind": (
        "A limit changed to something else",
        "A length stays a length and a count a count; only how much it is can be changed."),
    "change-not-dispensable": (
        "A relaxed rule that cannot be dispensed with",
        "The rule stands on a regulation and is marked not dispensable. It can be tightened, "
        "but neither relaxed nor retired, nor can a limit it uses be relaxed."),
    "change-of-several": (
        "One change for several things",
        "Write a change for each rule or limit; a rule is either changed or retired."),
    "change-target-unknown": (
        "Nothing of this name to change",
        "No pack below has such a rule or limit. What this pack adds itself is not changed but "
        "written as it should be."),
    "change-unexplained": (
        "A relaxation without reason and author",
        "What relaxes or retires a rule, or lowers its severity, needs a reason and an author; "
        "every report shows them first. Whether a limit is relaxed is found from the rules that"
        " use it; a new condition or requirement counts as relaxed unless it only adds to the "
        "old one."),
    "change-without-base": (
        "Changes in a pack that builds on none",
        "'changes' are about packs below, named under builds_on. A pack's own rules and limits "
        "are written as they should be."),
    "language-malformed": (
        "Not a language tag",
        "Languages are named by their tags after BCP 47: two or three small letters, such as de, "
        "with a script, region or variant behind a hyphen where it matters."),
    "translation-of-nothing": (
        "A translation of a text that is not there",
        "A translation stands for a text that the rule or question has in the pack's own language. "
        "Write that first, or take the translation out."),
    "citation-status": (
        "It is not said how sure the cited figure is",
        "A citation of a document should say whether it was read there, reprinted, or written from "
        "memory. The pack works without; its reports say 'not stated'."),
    "covers-contradicts": (
        "A rule that covers the whole leaves something to a person",
        "'left_to_a_person' belongs to a rule with 'covers: part'. Add that, or take it out."),
    "dispensation-days-reversed": (
        "A dispensation that ends before it begins",
        "'until' is the last day of the dispensation; it cannot lie before 'from'."),
    "dispensation-matches-nothing": (
        "A dispensation that matches nothing",
        "No pack in use has such a rule, or the rule has no finding for such an item, or the file "
        "is for another vessel. The dispensation has no effect here."),
    "dispensation-long": (
        "A dispensation for very long",
        "The exception is in force for more than three years. It counts as it stands; check its "
        "last day, and whether the rule should rather be relaxed by a layer, with reason and "
        "author."),
    "dispensation-not-in-force": (
        "A dispensation that is not in force",
        "The date of the assessment lies before its first day or after its last. It has no "
        "effect."),
    "dispensation-overlaps": (
        "Two dispensations for one rule and item at one time",
        "It could not be said which of them is in force. Give them days that do not overlap."),
    "dispensation-refused": (
        "A rule that cannot be dispensed with",
        "The rule stands on a regulation and is marked not dispensable. Take the dispensation "
        "out."),
    "dispensation-rule-unclear": (
        "Several packs have a rule of this id",
        "Write the id of the pack before that of the rule, with a slash between them."),
    "dispensation-twice": (
        "Two dispensations of one name",
        "A dispensation is known by its name, so every name is used once. Rename one of them."),
    "dispensations-format": (
        "Not a file of dispensations of a known format",
        "The file says 'format: dispensations/1' at its top."),
    "holds-for": (
        "Not a time for which an answer holds",
        "Give a number of days, months or years: '30 days', '6 months', '2 years'."),
    "layer-condition": (
        "A layer with a condition of its own",
        "A layer may narrow what the packs below apply to: their condition, if they have one, and "
        "more of it joined by 'and'. It cannot widen it, nor narrow it over rules that cannot be "
        "dispensed with; put such a condition on the rules this pack adds."),
    "layer-conflict": (
        "Two layers set the same thing",
        "Only one can count. Name the pack whose change is replaced under 'replaces', or take "
        "one of them out. A rule or limit of a pack below is not written again but changed "
        "under 'changes'."),
    "layer-heads-differ": (
        "Packs below that do not go together",
        "The packs this one builds on say different things in their heads. Say under 'changes' "
        "which is to count, or build on one of them."),
    "limit-name": (
        "Not a name for a limit",
        "A limit's name stands in expressions: lower-case words joined by underscores."),
    "limit-name-taken": (
        "A limit's name that means something else",
        "In an expression the name already stands for a subject such as 'battery', a function or a "
        "word of the language. Call the limit something else."),
    "limit-twice": (
        "Two limits of one name",
        "A name may stand for one limit only, in whichever file of the pack. Rename one of them."),
    "limit-unused": (
        "No rule uses this limit",
        "A limit that no expression mentions does nothing. Often its name is misspelt in a rule, "
        "or the rule was taken out."),
    "limit-value": (
        "Not a value of a limit",
        "A limit is a number with its unit, a count, or a list of texts. A bare number with a "
        "point has no meaning: give its unit, or write a share as a percentage."),
    "plugin-missing": (
        "A quantity of a plugin that is not installed",
        "The pack declares it with its name and unit, so the pack loads; the rules that use it are "
        "not assessed, plugin unavailable. Install the plugin."),
    "need-unmet": (
        "The pack needs a plugin that is not there as asked",
        "The plugin, its version of the interface, or one of its quantities with that unit is not "
        "available. Install what is named, or use a version of the pack made for this one."),
    "not-dispensable-basis": (
        "Marked not dispensable without a regulation",
        "Only a rule whose citation has the basis 'regulation' can be marked not dispensable."),
    "pack-data-differs": (
        "Not the resolved form of a pack",
        "What a trail keeps of a pack does not agree with itself: an amount is not what its text "
        "says, or a key is not in its place. The trail was changed, or another version wrote it."),
    "pack-empty": (
        "A pack without rules",
        "A pack that holds no rule looks at nothing, and must not read as if all were well."),
    "pack-file-overlooked": (
        "A file of the pack that would be overlooked",
        "Rules are read from files ending in .yaml, beside pack.yaml or directly in its folder "
        "'rules'. Rename or move the file so that its rules count."),
    "pack-format": (
        "Not a rule pack of a known format",
        "The head of a pack says 'format: rule-pack/1'. Another number belongs to another version "
        "of the program."),
    "pack-head-missing": (
        "The folder has no pack.yaml",
        "A pack is a folder with pack.yaml in it, or a single file."),
    "pack-not-found": (
        "No such pack",
        "Name a shipped pack, a folder with pack.yaml in it, or a file that ends in .yaml."),
    "pack-path-climbs": (
        "A file that leads out of the pack",
        "Every file of a pack lies inside its folder; a link to somewhere else is not followed."),
    "pack-unreadable": (
        "The pack's folder cannot be read",
        "The operating system refuses to list the folder. Check its permissions."),
    "pack-version": (
        "Not a version",
        "A pack's version is a text of three numbers, such as 0.1.0. Without quotes YAML reads "
        "1.0 as a number, and 1.10 as 1.1."),
    "permissible-misfit": (
        "A permissible change that does not fit",
        "A larger conductor changes conductors, runs and loads, a higher class a device, an own "
        "device a battery; and each has keys of its own. Nothing makes a lead longer, a fuse "
        "bigger or a declared rating higher."),
    "permissible-steps": (
        "Steps of a permissible change that cannot be taken",
        "The classes and ratings of a change go up, the smallest first, and a class breaks its "
        "current at a direct voltage."),
    "question-twice": (
        "Two questions of one id",
        "An answer is known by its question's id, so every id is used once. Rename one of them."),
    "rule-twice": (
        "Two rules of one id",
        "A finding is known by its rule's id, so every id is used once in a pack, in whichever "
        "file. Rename one of them."),
    # sealed packs, versions, pack lists
    "sealed-format": (
        "Not a sealed pack",
        "A file whose name ends in .sealed.json holds a pack that garboard pack seal wrote, of a "
        "format this version reads."),
    "sealed-digest-wrong": (
        "A sealed pack was changed",
        "The digest in the file is not that of what it holds: it was changed after it was sealed, "
        "or cut. Ask for the file again."),
    "sealed-not-canonical": (
        "A sealed pack was written anew",
        "The data are those that were sealed, but their spelling is not: spaces, line ends, the "
        "order of keys. A sealed pack is opened only as it was written."),
    "seal-ending": (
        "Not the name of a sealed pack",
        "The name of a sealed pack's file ends in .sealed.json, so that it is known by it."),
    "seal-stray-file": (
        "A file that would be left out of the seal",
        "The pack's folder holds a file that is no part of the pack. It might be meant for it: "
        "take it out, or put its content where it counts."),
    "seal-over-input": (
        "The seal would overwrite an input",
        "The file to write is one of the pack, or the sealed version before. Name another file."),
    "seal-unsigned": (
        "A key without signer and day, or the other way round",
        "A signature says who signs and when, as the signer states it: give --key, --signer and "
        "--signed-on together."),
    "pack-of-another-name": (
        "Versions of two different packs",
        "Steps of a version are between packs of one name."),
    "version-rises-too-little": (
        "The version does not rise enough",
        "The first number rises when something that passed may no longer pass, the second when "
        "other findings change, the third when only texts change; while the first is 0, the second "
        "and third stand for them. garboard pack step lists what changed."),
    "pack-list-format": (
        "Not a pack list",
        "A pack list begins with its format, pack-list/1. This version reads no other."),
    "pack-pinned-twice": (
        "A pack is pinned twice",
        "A list pins one version of a pack. Take the other entry out."),
    "pack-not-pinned": (
        "A pack that is not on the list",
        "Only packs on the list are used with it. Add the pack with its version and digest, or "
        "leave it out."),
    "pinned-version-differs": (
        "Another version than the one pinned",
        "Use the version on the list, or pin this one after looking at what changed: garboard pack "
        "step OLD NEW."),
    "pinned-digest-differs": (
        "The pack is not the one that was pinned",
        "Name and version are those on the list, but what the pack holds is not: a rule, a limit "
        "or a file was changed, added or taken away. Use the pack that was pinned."),
}
