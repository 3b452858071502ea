"""Problem codes of the floor documents."""

CODES: dict[str, tuple[str, str]] = {
    # files
    "document-missing": (
        "No such file",
        "There is no file of this name. Check the spelling and the folder."),
    "document-folder": (
        "A folder, not a file",
        "The name belongs to a folder. Name the file inside it."),
    "document-special": (
        "Not an ordinary file",
        "The name belongs to a device, a pipe or a socket. Name an ordinary file on a disk."),
    "document-unreadable": (
        "The file cannot be read",
        "The operating system refused to read the file, for the reason given. Check its "
        "permissions and the disk."),
    "document-too-large": (
        "The file is too large",
        "The file is larger than the named limit and was not read at all. Check that it is the "
        "file you mean; split it, or raise the limit, if it is."),
    "document-encoding": (
        "Not UTF-8 text",
        "The file is written in another encoding. Save it as UTF-8, which every editor offers."),
    "document-not-utf8": (
        "A byte that is not UTF-8",
        "A letter or sign is written in an older encoding. Save the file as UTF-8, then check the "
        "signs at the place given, such as degree or ohm."),
    "document-binary": (
        "Not a text file",
        "The file is a picture, a document or an archive. Name the YAML or JSON file instead."),
    "document-character": (
        "A character that cannot be seen",
        "A control character or an invisible mark stands in the file, often from a copy and "
        "paste. Delete it."),
    "document-empty": (
        "Nothing in the file",
        "The file holds no data, only blanks or comments. Check that it was saved."),
    "document-not-a-mapping": (
        "Not a mapping at the top",
        "The file must start with lines of the form key: value. A list or a single value stands "
        "there."),
    # limits
    "document-depth": (
        "Nested too deep",
        "Mappings and lists stand inside one another beyond the named limit, mostly because a "
        "bracket or the indentation went wrong."),
    "document-nodes": (
        "Too many values",
        "The file holds more values than the named limit for YAML. Write it as JSON or split it."),
    "document-problems": (
        "Too many problems",
        "Reading stopped at the named number of problems. Mend those listed and read again."),
    "document-number": (
        "A number that cannot be held",
        "The number is too large, or too near zero, to be kept as it is written. Put it in quotes "
        "if it is a name or a serial number."),
    # mappings
    "duplicate-key": (
        "A key given twice",
        "The same key stands twice in one mapping, so it is not clear which value is meant. Keep "
        "one of them."),
    "key-not-text": (
        "A key that is not a text",
        "A key is a number, a flag, nothing, or a whole mapping. Keys are texts; put the key in "
        "quotes if it looks like a number."),
    # YAML
    "yaml-tab": (
        "A tab where spaces belong",
        "YAML is indented with spaces only, and a tab may stand only inside quotes. Replace it by "
        "spaces."),
    "yaml-tag": (
        "A type mark",
        "Marks such as !!str or !name are not used here. Delete the mark; put a text that starts "
        "with an exclamation mark in quotes."),
    "yaml-alias-unknown": (
        "An alias to nothing",
        "A value starting with * repeats one marked with & earlier in the file, and there is none "
        "of that name. Put a text that starts with * in quotes."),
    "yaml-alias-inside-itself": (
        "An alias inside its own value",
        "The value would contain itself without end. Write it out."),
    "yaml-alias-expansion": (
        "Aliases stand for too much",
        "Written out, the aliases of the file would hold more values than the named limit."),
    "yaml-anchor-twice": (
        "An anchor name given twice",
        "Two values are marked with the same & name, so it is not clear which one an alias means. "
        "Rename one of them."),
    "yaml-merge-key": (
        "A merge key",
        "The key << of older YAML is not used here. Write the fields out."),
    "yaml-several-documents": (
        "Several documents in one file",
        "A line with --- starts a second document. Put each document into a file of its own."),
    "yaml-directive": (
        "A YAML directive",
        "A line starts with %. Directives are not used here; put a text that starts with % in "
        "quotes."),
    "yaml-quote": (
        "A quote that never closes",
        "A text starts with a quote and has none at its end."),
    "yaml-bracket": (
        "A bracket or comma is missing",
        "A list in [ ] or a mapping in { } is not closed, or lacks a comma between two items."),
    "yaml-colon": (
        "A colon inside a text without quotes",
        "A colon followed by a space separates key and value, so a text that holds one needs "
        "quotes."),
    "yaml-missing-colon": (
        "A key without a colon",
        "The line should have the form key: value, with a space behind the colon."),
    "yaml-indentation": (
        "Wrong indentation",
        "The line starts in a column that fits no mapping or list above it. Fields of one mapping "
        "start in the same column."),
    "yaml-dash": (
        "A list that starts behind its key",
        "A list with dashes starts on the line below its key."),
    "yaml-after-value": (
        "Something behind a finished value",
        "A value ends with its closing quote or bracket, and more text follows. Put the whole text "
        "in quotes."),
    "yaml-escape": (
        "An unknown escape in double quotes",
        "A backslash in double quotes starts an escape, and this one is not known. Write two "
        "backslashes, or use single quotes."),
    "yaml-character": (
        "A text that needs quotes",
        "This sign has a meaning of its own at the start of a value. Put the text in quotes."),
    "yaml-block-text": (
        "A block text that is not well formed",
        "Behind | or > stands nothing else on the line, and the text below it is indented evenly."),
    "yaml-syntax": (
        "Not YAML",
        "The line does not fit the rules of YAML. Compare it with the lines of an example."),
    # JSON
    "json-syntax": (
        "Not JSON",
        "The file does not fit the rules of JSON at the place given."),
    "json-not-finite": (
        "NaN or infinity",
        "Only finite numbers are values. Leave out a value that is not known."),
    # schemas
    "schema-required": (
        "A key is missing",
        "The format asks for a key that is not there."),
    "schema-unknown-key": (
        "An unknown key",
        "The format does not know this key, often because of a slip of spelling."),
    "schema-type": (
        "The wrong kind of value",
        "Another kind of value is expected here, such as a list in place of a text."),
    "schema-choice": (
        "Not one of the choices",
        "Only the values listed may stand here."),
    "schema-range": (
        "A number out of range",
        "The number is smaller or larger than the format allows."),
    "schema-size": (
        "Too short or too long",
        "A text, list or mapping holds fewer or more items than the format allows."),
    "schema-pattern": (
        "A text of another form",
        "The text does not have the form that is asked for."),
    "schema-other": (
        "Not as the schema asks",
        "The value breaks the part of the schema that is named."),
    "schema-broken": (
        "A broken schema",
        "The schema itself is not a JSON Schema of draft 2020-12, or refers to something that is "
        "not in it. Nothing was checked against it."),
    # outputs
    "output-folder": (
        "A folder stands under this name",
        "The output would replace a folder. Give the name of a file."),
    "output-special": (
        "Not an ordinary file",
        "The output would replace a device, a pipe or a socket. Give the name of an ordinary "
        "file."),
    "output-no-folder": (
        "No folder to write to",
        "The folder of the output does not exist, or is a file. Create it or name another."),
    "output-forbidden": (
        "Writing is not allowed there",
        "The folder may not be written to. Choose another folder or have its permissions changed."),
    "output-full": (
        "No room on the disk",
        "The output did not fit. Nothing was written under its name, and what stood there before "
        "is untouched."),
    "output-failed": (
        "The output cannot be written",
        "The operating system refused, for the reason given. Nothing was written under the name."),
    "record-exists": (
        "The file is there already",
        "A new record never replaces a file. Give it another name, or move the file away."),
    # shipped data
    "shipped-missing": (
        "Shipped data is missing",
        "A folder that comes with the package is not there. Install the package again."),
    # keys and signatures
    "signing-not-installed": (
        "Signatures need a library that is not installed",
        "Keys and signatures are made and checked by the library cryptography. Install the "
        "program with its extra 'signing'."),
    "key-exists": (
        "A file of that name is there already",
        "A key is never written over another: what was signed with it could not be told from "
        "forgeries any more. Choose another name."),
    "key-unreadable": (
        "Not an Ed25519 key",
        "A key file is text of the form PEM: the secret key begins with BEGIN PRIVATE KEY, the "
        "public one with BEGIN PUBLIC KEY. Keys of other kinds, or with a password, are not read."),
    "key-open-to-others": (
        "Others may read the secret key",
        "Whoever can read a secret key can sign in its owner's name. Take the permissions of "
        "everyone else away, and make a new key if others had access."),
    "signer-unstated": (
        "A signature without signer or day",
        "A signature says who signs and when, as the signer states it."),
    "signature-malformed": (
        "Not a signature",
        "The block of the signature has keys missing or unknown, or its texts are no signature. "
        "The file was changed or cut after it was signed."),
    "signature-wrong": (
        "The signature does not hold",
        "What is signed, the signer or the day was changed after it was signed, or the signature "
        "was made with another key. Ask the signer for the file again."),
    "signature-by-another-key": (
        "Signed with another key",
        "The signature may hold, but it is not that of the key that was asked for."),
    "signature-missing": (
        "Not signed",
        "A signature by the key given was asked for, and there is none."),
}
