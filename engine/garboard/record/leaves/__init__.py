"""The kinds of leaf a record is made of."""

from garboard.record.leaves.base import NOT_RECORDED, Leaf, LeafKind
from garboard.record.leaves.count import Count
from garboard.record.leaves.day import Day
from garboard.record.leaves.flag import Flag
from garboard.record.leaves.identity import Identity
from garboard.record.leaves.measure import Measure
from garboard.record.leaves.rated_voltage import RatedVoltage
from garboard.record.leaves.reference import Reference, References, Terminal
from garboard.record.leaves.size import Size
from garboard.record.leaves.window import Window
from garboard.record.leaves.word_or_group import WordOrGroup
from garboard.record.leaves.words import Choice, Words

__all__ = ["NOT_RECORDED", "Choice", "Count", "Day", "Flag", "Identity", "Leaf", "LeafKind",
           "Measure", "RatedVoltage", "Reference", "References", "Size", "Terminal", "Window",
           "WordOrGroup", "Words"]
