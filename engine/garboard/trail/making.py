"""Making a trail of the parts of an assessment, and its bytes."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any, Final, Literal

from garboard.trail.canonical import canonical_bytes
from garboard.trail.digest import digest_of_bytes
from garboard.trail.encoded import Encoded, encoded, encoded_list, encoded_object
from garboard.trail.findings import Finding, in_finding_order
from garboard.trail.outcome import outcome_of
from garboard.trail.trail import Trail
from garboard.trail.upgrades import STEPS

FORMAT: Final = f"trail/{len(STEPS) + 1}"
Data = Mapping[str, Any]


def record_part(written: Data, read: Data) -> Encoded:
    """The record part: the data as written with their digest, and the facts as read.

    ``read`` goes by data path; each fact has ``value`` (see ``value_as_data``) and, where there is
    something to say, ``unit``, ``from``, ``method``, ``evidence``, ``note`` and the like.
    """
    whole = encoded(written)
    return encoded_object({"format": written["format"], "digest": whole.digest, "written": whole,
                           "read": read})


def make_trail(*, date: str, date_from: Literal["survey", "command line"], record: Data | Encoded,
               packs: Sequence[Data | Encoded], findings: Iterable[Finding],
               derivations: Data | Encoded, quantities: Data | Encoded, about: Data,
               irregularities: Sequence[Data] = (), dispensations: Sequence[Data] = (),
               previous: str | None = None) -> Trail:
    """The trail of an assessment; all parts are JSON data of the format ``trail/1``.

    Findings are put in order, the outcome is computed from them, and what the digest covers is
    put into canonical bytes once; a part that is encoded already is taken as it is. ``previous``
    is the digest of the vessel's previous trail. ReadingError when a part is no JSON data.
    """
    known = encoded_list([encoded(pack) for pack in packs])
    ordered = in_finding_order(findings, known.data)
    named = {} if previous is None else {"previous": previous}
    whole = encoded_object({
        **named, "date": date, "date_from": date_from, "record": record, "packs": known,
        "dispensations": list(dispensations), "findings": ordered, "derivations": derivations,
        "quantities": quantities, "irregularities": list(irregularities),
        "outcome": outcome_of(ordered, known.data, dispensations),
    })
    return Trail({"format": FORMAT, "digest": digest_of_bytes(whole.canonical),
                  "assessment": whole.data, "about": about}, whole.canonical)


def trail_bytes(trail: Trail) -> bytes:
    """The whole trail document in canonical bytes, with a line feed at its end.

    ValueError for one that was brought up from an older format: its digest is that of its file.
    """
    if trail.brought_up_from is not None:
        raise ValueError(f"a trail brought up from {trail.brought_up_from} is not written again")
    signatures = trail.document.get("signatures")
    signed = b"" if not signatures else b',"signatures":%b' % canonical_bytes(signatures)
    return b'{"about":%b,"assessment":%b,"digest":%b,"format":%b%b}\n' % (
        canonical_bytes(trail.about), trail.canonical, canonical_bytes(trail.digest),
        canonical_bytes(trail.document["format"]), signed)
