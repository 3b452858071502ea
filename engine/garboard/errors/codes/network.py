"""Codes of the floor network: what does not hang together in the runs of a record.

None of them refuses a record; they are shown beside the findings.
"""

CODES: dict[str, tuple[str, str]] = {
    "not-connected": (
        "Nothing leads to it",
        "The record lists it, but no run begins or ends at it. Trace the runs that lead to it, or "
        "take it out of the list if it is not aboard."),
    "positive-not-traced": (
        "Its positive terminal is in no run",
        "A run leads to its negative terminal only. Trace the run of its positive terminal too."),
    "floating-end": (
        "A run that ends where nothing else is joined",
        "The bus at its end has no other run. Trace the other runs of that bus, or write down what "
        "the run really ends at."),
    "not-fed": (
        "Runs that no battery feeds",
        "No battery is joined to these runs, so no fault current can be worked out there. Trace "
        "the run that joins them to a battery."),
    "series-unclear": (
        "Batteries whose order in series cannot be told",
        "Several batteries meet where some end and others begin. Trace the links between them one "
        "by one, from the positive terminal of one to the negative terminal of the next."),
    "battery-reversed": (
        "A battery the wrong way round",
        "Its negative terminal lies with the positive terminals of others. Check aboard; if it is "
        "right aboard, correct the ends of the runs."),
    "negative-sides-apart": (
        "Negative sides that are not joined",
        "The negative terminals of some batteries are traced, but not to the same point. Trace the "
        "run that joins them, or leave their negative runs out where the return is not examined."),
    "ring": (
        "A ring of conductors without a battery in it",
        "Two ways lead to the same point, and the current divides between them. A device in one "
        "way does not cut off the other."),
    "devices-side-by-side": (
        "Protective devices in ways side by side",
        "Neither device carries the whole current, so neither protects at its rating. Protective "
        "devices are not fitted in parallel."),
    "fed-from-both-ends": (
        "A conductor that batteries feed from both ends",
        "A fault on it draws current from either side. It needs a device at each end."),
    "polarity-contradicts": (
        "A bus of two sides",
        "The record says it is positive and the runs lead to the negative side, or the reverse. "
        "Check the bus, or the ends of its runs."),
    "voltage-contradicts": (
        "A nominal voltage that no string has",
        "The vessel or a charging source is recorded for another nominal voltage than any string "
        "of batteries has. Check the labels."),
    "voltages-joined": (
        "Strings of different voltage in parallel",
        "Their nominal voltages differ by more than batteries of one system do. Check the voltages "
        "and the runs."),
}
