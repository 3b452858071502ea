"""The audit trail of an assessment: one JSON document, its canonical bytes, digest and outcome."""

from garboard.trail.acceptance import ACCEPTANCE_WORDS
from garboard.trail.canonical import canonical_bytes
from garboard.trail.differences import NOTHING, Difference, differences
from garboard.trail.digest import digest_of, digest_of_bytes
from garboard.trail.dispensing import COUNTS_APART, counts_as_failed, in_force
from garboard.trail.encoded import Encoded, encoded, encoded_object
from garboard.trail.findings import (
    CONDITION_FALSE,
    COVERS_PART,
    FAILED,
    FLAGS,
    INSIDE_UNCERTAINTY,
    NO_ITEM,
    NONE_ABOARD,
    NOT_APPLICABLE,
    NOT_ASSESSED,
    ON_ASSUMPTION,
    OUTCOMES,
    PACK_DOES_NOT_APPLY,
    PASSED,
    RETIRED,
    SEVERITIES,
    Finding,
    finding_id,
    in_finding_order,
)
from garboard.trail.making import FORMAT, make_trail, record_part, trail_bytes
from garboard.trail.outcome import (
    DOES_NOT_APPLY,
    DOES_NOT_MEET,
    EXIT_CODES,
    MEETS,
    NOT_KNOWN,
    WORDS,
    outcome_of,
    prevailing,
)
from garboard.trail.reading import TRAIL_LIMITS, read_trail
from garboard.trail.schema import trail_schema
from garboard.trail.signing import (
    CheckedSignature,
    sign_trail,
    signatures_on,
)
from garboard.trail.trail import Operand, Statement, Trail
from garboard.trail.value_data import causes_as_data, value_as_data, value_from_data

__all__ = [
    "ACCEPTANCE_WORDS", "CONDITION_FALSE", "COUNTS_APART", "COVERS_PART", "DOES_NOT_APPLY",
    "DOES_NOT_MEET", "EXIT_CODES", "FAILED", "FLAGS", "FORMAT", "INSIDE_UNCERTAINTY", "MEETS",
    "NONE_ABOARD", "NOTHING", "NOT_APPLICABLE", "NOT_ASSESSED", "NOT_KNOWN", "NO_ITEM",
    "ON_ASSUMPTION", "OUTCOMES", "PACK_DOES_NOT_APPLY", "PASSED", "RETIRED", "SEVERITIES",
    "TRAIL_LIMITS", "WORDS", "CheckedSignature", "Difference", "Encoded", "Finding", "Operand",
    "Statement", "Trail", "canonical_bytes", "causes_as_data", "counts_as_failed",
    "differences", "digest_of", "digest_of_bytes", "encoded", "encoded_object", "finding_id",
    "in_finding_order", "in_force", "make_trail", "outcome_of", "prevailing", "read_trail",
    "record_part", "sign_trail", "signatures_on", "trail_bytes", "trail_schema",
    "value_as_data", "value_from_data",
]
