"""Making a trail of the parts of an assessment, and its bytes."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any, Final, Literal

from garboard.trail.canonical import canonical_bytes, canonical_form
from garboard.trail.digest import digest_of, digest_of_bytes
from garboard.trail.findings import Finding, in_finding_order
from garboard.trail.outcome import outcome_of
from garboard.trail.trail import Trail

FORMAT: Final = "trail/1"
Data = Mapping[str, Any]


def record_part(written: Data, read: Data) -> dict[str, Any]:
    """The record part: the data as written with their digest, and the facts as read.

    ``read`` goes by data path; each fact has ``value`` (see ``value_as_data``) and, where there is
    something to say, ``unit``, ``from``, ``method``, ``evidence``, ``note`` and the like.
    """
    return {"format": written["format"], "digest": digest_of(written), "written": written,
            "read": read}


def make_trail(*, date: str, date_from: Literal["survey", "command line"], record: Data,
               packs: Sequence[Data], findings: Iterable[Finding], derivations: Data,
               quantities: Data, about: Data, irregularities: Sequence[Data] = (),
               dispensations: Sequence[Data] = ()) -> Trail:
    """The trail of an assessment; all parts are JSON data of the format ``trail/1``.

    Findings are put in order, the outcome is computed from them, and what the digest covers is
    put into canonical bytes once. ReadingError when a part is no JSON data.
    """
    ordered = in_finding_order(findings, packs)
    assessment = {
        "date": date, "date_from": date_from, "record": record, "packs": list(packs),
        "dispensations": list(dispensations), "findings": ordered, "derivations": derivations,
        "quantities": quantities, "irregularities": list(irregularities),
        "outcome": outcome_of(ordered, packs, dispensations),
    }
    normal, canonical = canonical_form(assessment)
    return Trail({"format": FORMAT, "digest": digest_of_bytes(canonical),
                  "assessment": normal, "about": about}, canonical)


def trail_bytes(trail: Trail) -> bytes:
    """The whole trail document in canonical bytes, with a line feed at its end."""
    return b'{"about":%b,"assessment":%b,"digest":%b,"format":%b}\n' % (
        canonical_bytes(trail.about), trail.canonical,
        canonical_bytes(trail.digest), canonical_bytes(trail.document["format"]))
