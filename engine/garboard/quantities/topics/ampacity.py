"""Ampacity in a hot or crowded place, and by the metric table: each factor a figure of its own.

Nothing here is folded into ``conductor.ampacity``; a rule that wants a factor names it.
"""

from __future__ import annotations

from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.spans import low_end
from garboard.quantities.table import Table, table
from garboard.values import OUTSIDE_METHOD, Number, Truth, Unknown, any_of, chosen
from garboard.values.conductor_size import ConductorSize

_DEFINITION = cite("definition", "definition")
_NOTE_1 = cite("33 CFR 183.425 Table 5 note 1", "from memory")
_NOTE_2 = cite("33 CFR 183.425 Table 5 note 2", "from memory")
_ISO = cite("ISO 10133 Annex A (superseded by ISO 13297)", "from memory")


@quantity("conductor.lies_in_engine_space", kind="truth", needs={"places": "places.engine_space"},
          method="A place it lies in or crosses is an engine space", citation=_DEFINITION,
          valid="conductors with recorded places")
def lies_in_engine_space(places: tuple[Truth, ...]) -> Truth:
    return any_of(places)


@quantity("conductor.engine_space_factor", dimension="ratio", unknowns="passed",
          needs={"inside": "lies_in_engine_space", "insulation": "insulation"},
          method="The factor for its insulation where it lies in an engine space (50 °C instead of "
                 "30 °C), an insulation between two columns taking the lower; 1 elsewhere",
          citation=_NOTE_1, valid="insulation of 60 °C and more")
def engine_space_factor(inside: Truth, insulation: Number) -> Figure:
    return _engine_space_factor(inside, insulation, "engine-space-factor-33cfr183-425")


@quantity("conductor.bundling_factor", dimension="ratio", needs={"count": "bundled_with"},
          method="The factor for the number of current-carrying conductors in its bundle; 1 for "
                 "fewer than three",
          citation=_NOTE_2,
          valid="conductors that all carry current; the note itself is for 50 V and more")
def bundling_factor(count: int) -> Figure:
    factors = table("bundling-factor-33cfr183-425")
    rows = [row for row in factors.rows if int(row) <= count]
    if not rows:
        return Figure(1.0)
    row = max(rows, key=int)
    return Figure(factors.cell(row, "factor"), (factors.reference(row, "factor"),))


@quantity("conductor.ampacity_in_engine_space", dimension="current",
          needs={"plain": "ampacity", "factor": "engine_space_factor"},
          method="Ampacity times the engine-space factor", citation=_NOTE_1,
          valid="as the ampacity and the factor; not bundled")
def ampacity_in_engine_space(plain: Number, factor: Number) -> Number:
    return plain * factor


@quantity("conductor.ampacity_bundled", dimension="current",
          needs={"plain": "ampacity", "factor": "bundling_factor"},
          method="Ampacity times the bundling factor", citation=_NOTE_2,
          valid="as the ampacity and the factor; not in an engine space")
def ampacity_bundled(plain: Number, factor: Number) -> Number:
    return plain * factor


@quantity("conductor.metric_ampacity", dimension="current",
          needs={"size": "size", "insulation": "insulation"},
          method="Annex A by cross-section and insulation rating; an insulation rating between two "
                 "columns takes the lower column",
          citation=_ISO,
          valid="sizes in mm² from 0.75 to 150, insulation of 60 °C and more, ambient 30 °C; "
                "other systems of sizes are not converted")
def metric_ampacity(size: ConductorSize, insulation: Number) -> Figure:
    allowed = table("ampacity-iso10133")
    if size.system != "mm2" or size.name not in allowed.rows:
        return Figure(Unknown.because(
            OUTSIDE_METHOD, detail=f"{allowed.title}: no row for {size.written}"))
    column = _column(allowed, size.name, insulation)
    if isinstance(column, Unknown):
        return Figure(column)
    return Figure(allowed.cell(size.name, column), (allowed.reference(size.name, column),))


@quantity("conductor.metric_engine_space_factor", dimension="ratio", unknowns="passed",
          needs={"inside": "lies_in_engine_space", "insulation": "insulation"},
          method="The factor for its insulation where it lies in an engine space (60 °C instead of "
                 "30 °C), an insulation between two columns taking the lower; 1 elsewhere",
          citation=_ISO,
          valid="insulation of 70 °C and more, for one of 60 °C is not to be used there; only "
                "where a rule goes by the metric table")
def metric_engine_space_factor(inside: Truth, insulation: Number) -> Figure:
    return _engine_space_factor(inside, insulation, "engine-space-factor-iso10133")


@quantity("conductor.metric_ampacity_in_engine_space", dimension="current",
          needs={"plain": "metric_ampacity", "factor": "metric_engine_space_factor"},
          method="Metric ampacity times its engine-space factor", citation=_ISO,
          valid="as the metric ampacity and its factor; not bundled")
def metric_ampacity_in_engine_space(plain: Number, factor: Number) -> Number:
    return plain * factor


def _engine_space_factor(inside: Truth, insulation: Number, name: str) -> Figure:
    """The factor of the named table where the conductor lies in an engine space, else 1."""
    if inside is False:
        return Figure(1.0)
    factors = table(name)
    column = _column(factors, "engine space", insulation)
    if isinstance(column, Unknown):
        return Figure(column.joined(inside))
    factor = factors.rows["engine space"][column]
    return Figure(chosen(inside, factor, 1.0), (factors.reference("engine space", column),))


def _column(figures: Table, row: str, insulation: Number) -> str | Unknown:
    """The column of an insulation rating, or the next lower one."""
    if isinstance(insulation, Unknown):
        return insulation
    columns = [column for column in figures.rows[row] if float(column) <= low_end(insulation)]
    if not columns:
        return Unknown.because(OUTSIDE_METHOD, detail=f"{figures.title}: no column for insulation "
                                                      f"of {low_end(insulation):g} °C")
    return columns[-1]


QUANTITIES = (lies_in_engine_space, engine_space_factor, bundling_factor,
              ampacity_in_engine_space, ampacity_bundled, metric_ampacity,
              metric_engine_space_factor, metric_ampacity_in_engine_space)
