"""Views of a trail, each a pure function of it."""

from garboard.reports.asked import Asked, asked_json, asked_text
from garboard.reports.checked import Checked, check_json, check_text, checked
from garboard.reports.comparison import (
    Aboard,
    Circuit,
    Comparison,
    Known,
    comparison,
    comparison_json,
    comparison_text,
)
from garboard.reports.history import History, history_json, history_of, history_text
from garboard.reports.language import in_language, languages_of, told_pack
from garboard.reports.machine import json_report
from garboard.reports.pack_text import nearest_piece, pack_text, piece_text
from garboard.reports.replayed import Replayed, replay_json, replay_text, replayed
from garboard.reports.screen import Screen, for_encoding, screen_of
from garboard.reports.terminal import RecordLine, record_line, several_text, terminal_report
from garboard.reports.working import Remedy, Tried, working_json, working_text

__all__ = [
    "Aboard", "Asked", "Checked", "Circuit", "Comparison", "History", "Known", "RecordLine",
    "Remedy", "Replayed", "Screen", "Tried", "asked_json", "asked_text", "check_json",
    "check_text", "checked", "comparison", "comparison_json", "comparison_text", "for_encoding",
    "history_json", "history_of", "history_text", "in_language", "json_report", "languages_of",
    "nearest_piece", "pack_text", "piece_text", "record_line", "replay_json", "replay_text",
    "replayed", "screen_of", "several_text", "terminal_report", "told_pack", "working_json",
    "working_text",
]
