"""Errors with fields: code, place, found, expected, hint. Text is made only when shown."""

from garboard.errors.codes import CATALOGUE, Code
from garboard.errors.nearest import did_you_mean, nearest
from garboard.errors.place import NOWHERE, Place
from garboard.errors.problem import Problem, in_order, render
from garboard.errors.tree import (
    CalculationError,
    CommandRefused,
    DispensationsRefused,
    DocumentRefused,
    GarboardError,
    OutputRefused,
    PackRefused,
    PluginError,
    ReadingError,
    RecordRefused,
    Refused,
    SignatureRefused,
    TrailRefused,
)

__all__ = [
    "CATALOGUE", "NOWHERE", "CalculationError", "Code", "CommandRefused", "DispensationsRefused",
    "DocumentRefused", "GarboardError", "OutputRefused", "PackRefused", "Place", "PluginError",
    "Problem", "ReadingError", "RecordRefused", "Refused", "SignatureRefused",
    "TrailRefused", "did_you_mean", "in_order", "nearest", "render",
]
