"""Where a requirement or a figure comes from, in which capacity it is cited, how sure we are."""

from __future__ import annotations

from typing import Final, Literal

from pydantic import Field

from garboard.packs.model import Model, Text

Basis = Literal["regulation", "standard", "standard as reprinted", "comparison", "practice",
                "house"]
Status = Literal["read", "reprinted", "from memory", "common practice"]

#: Bases that stand on a document, which must then be named together with what it says.
DOCUMENT_BASES: Final = ("regulation", "standard", "standard as reprinted", "comparison")


class Citation(Model):
    """A source, in which capacity it is cited, and what it says in words of our own."""

    basis: Basis = Field(description=(
        "In which capacity the source is cited: 'regulation' (only inside its legal scope), "
        "'standard', 'standard as reprinted' (read in somebody else's reprint), 'comparison' (a "
        "text outside its scope, cited for its figure), 'practice' (common practice of the "
        "trade), 'house' (a choice of whoever keeps this pack)."))
    source: Text | None = Field(None, description=(
        "The document, with the clause as it is usually cited. Required unless the basis is "
        "'practice' or 'house'."))
    edition: Text | None = Field(None, description="Edition or date of the document, in quotes.")
    clause: Text | None = Field(None, description="The clause, where the source does not name it.")
    says: Text | None = Field(None, description=(
        "What the source says, in words of your own. Required unless the basis is 'practice' or "
        "'house'."))
    status: Status | None = Field(None, description=(
        "How sure the figure is: 'read' in the source itself, 'reprinted' (seen in a reprint), "
        "'from memory', or 'common practice'."))

    @property
    def reference(self) -> str:
        """Source, clause and edition on one line."""
        named = " ".join(part for part in (self.source, self.clause) if part) or "none named"
        return f"{named} ({self.edition})" if self.edition else named

    @property
    def standing(self) -> str:
        """The status in words; a document's unstated status is called that."""
        if self.status:
            return self.status
        return {"practice": "common practice", "house": "house rule"}.get(self.basis, "not stated")


def citation_gaps(raw: object) -> tuple[str, ...]:
    """The keys a citation as written still needs because it stands on a document."""
    if not isinstance(raw, dict) or raw.get("basis") not in DOCUMENT_BASES:
        return ()
    return tuple(key for key in ("source", "says") if raw.get(key) is None)


def lacks_status(raw: object) -> bool:
    """Whether a citation as written stands on a document and does not say how sure it is."""
    if not isinstance(raw, dict) or raw.get("basis") not in DOCUMENT_BASES:
        return False
    return raw.get("status") is None
