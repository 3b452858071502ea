"""Cases of a pack run against its rules: what differs, and which outcomes they show."""

from garboard.authoring.proving.changes import changed
from garboard.authoring.proving.coverage import Coverage, covered
from garboard.authoring.proving.prove import Proof, Proving, prove
from garboard.authoring.proving.seen import Seen, seen_in

__all__ = ["Coverage", "Proof", "Proving", "Seen", "changed", "covered", "prove", "seen_in"]
