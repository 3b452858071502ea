"""Evidence: photographs, papers and logs that facts rest on."""

from typing import Annotated

from garboard.record.leaves import NOT_RECORDED, Choice, Day, Identity, Leaf, Words
from garboard.record.models.base import Noun

SHA256_PATTERN = "[0-9a-f]{64}"


class Evidence(Noun):
    """One file that shows something; facts name it by its id."""

    subject = "evidence"
    title = "evidence"

    id: Annotated[Leaf, Identity("Unique id in the record: lower-case letters, digits, hyphens")]
    file: Annotated[Leaf, Words("Name of the file")] = NOT_RECORDED
    sha256: Annotated[Leaf, Words("SHA-256 of the file, 64 hexadecimal digits",
                                  pattern=SHA256_PATTERN, example="64 digits of 0-9 and a-f")] = (
        NOT_RECORDED)
    kind: Annotated[Leaf, Choice("What it is", among=(
        "photograph", "document", "log", "measurement", "drawing", "message"))] = NOT_RECORDED
    shows: Annotated[Leaf, Words("What it shows")] = NOT_RECORDED
    taken: Annotated[Leaf, Day("Day it was taken")] = NOT_RECORDED
    by: Annotated[Leaf, Words("Who took it")] = NOT_RECORDED
