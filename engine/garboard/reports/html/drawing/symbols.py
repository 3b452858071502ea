"""Symbols of the diagram, after IEC 60617, drawn around the origin on a line from left to right.

Every symbol ends at ``-HALF`` and ``HALF`` on the line, so that whatever is drawn beside it joins.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Final

from garboard.reports.html.drawing.svg import element, line, path, words

#: Half the length of line that a symbol takes.
HALF: Final = 20


def fuse() -> str:
    """A fuse: a box with the line through it."""
    return _box(-14, -6, 28, 12) + line(-HALF, 0, HALF, 0)


def breaker() -> str:
    """A circuit breaker: a contact with a cross."""
    return _contact() + path("M6 -4L14 4M6 4L14 -4")


def isolator() -> str:
    """An isolator: a contact with a bar across its end."""
    return _contact() + line(10, -6, 10, 6)


def contactor() -> str:
    """A contactor: a contact with a half circle."""
    return _contact() + path("M10 -5A5 5 0 0 0 10 5")


def relay() -> str:
    """A relay's contact with its coil beside it."""
    return _contact() + _box(-7, 8, 14, 8) + path("M0 8V-4", "dashed")


def shunt() -> str:
    """A shunt: a resistor with taps on both sides."""
    return _box(-12, -5, 24, 10) + path(f"M{-HALF} 0H-12M12 0H{HALF}M-9 -5V-12M9 -5V-12")


def battery() -> str:
    """Two cells, the positive pole to the right."""
    return (path(f"M{-HALF} 0H-9M-3 0H3M9 0H{HALF}", None) + path("M-3 -14V14M9 -14V14")
            + path("M-9 -7V7M3 -7V7", "thick"))


def machine(letter: str, below: str) -> str:
    """A machine: a circle with a letter, and the kind of current below it."""
    sign = path("M-6 8H6") if below == "=" else path("M-6 9Q-3 4 0 9T6 9")
    return _circle(15) + words(letter, 0, 3, "symbol", "middle") + sign + _ends(15)


def converter(left: str, right: str) -> str:
    """A converter: a square halved by a diagonal, with the kinds of current on both sides."""
    return (_box(-15, -15, 30, 30) + path("M-15 15L15 -15") + _current(left, -7, -7)
            + _current(right, 7, 8) + _ends(15))


def lamp() -> str:
    """A lamp: a circle with a cross."""
    return _circle(13) + path("M-9 -9L9 9M-9 9L9 -9") + _ends(13)


def heater() -> str:
    """A heating element: a box in slices."""
    return _box(-15, -7, 30, 14) + path("M-7.5 -7V7M0 -7V7M7.5 -7V7") + _ends(15)


def consumer() -> str:
    """Any other load: a box with an arrow into it."""
    return _box(-13, -10, 28, 20) + path(f"M{-HALF} 0H0M-5 -5L0 0L-5 5")


def _contact() -> str:
    return path(f"M{-HALF} 0H-10M10 0H{HALF}M-10 0L9 -9")


def _circle(radius: float) -> str:
    return element("circle", cx=0, cy=0, r=radius, class_="body")


def _box(x: float, y: float, width: float, height: float) -> str:
    return element("rect", x=x, y=y, width=width, height=height, class_="body")


def _ends(half: float) -> str:
    return path(f"M{-HALF} 0H{-half:g}M{half:g} 0H{HALF}")


def _current(kind: str, x: float, y: float) -> str:
    if kind == "=":
        return path(f"M{x - 5:g} {y - 2:g}h10M{x - 5:g} {y + 2:g}h3m1 0h2m1 0h3")
    return path(f"M{x - 5:g} {y:g}q2.5 -5 5 0t5 0")


_MOTOR: Final = machine("M", "=")
_DIRECT_GENERATOR: Final = machine("G", "=")
_ALTERNATOR: Final = machine("G", "~")

#: By what the record calls the kind of a thing.
SYMBOLS: Final[Mapping[str, str]] = MappingProxyType({
    "fuse": fuse(), "breaker": breaker(), "isolator": isolator(), "contactor": contactor(),
    "relay": relay(), "shunt": shunt(), "battery": battery(),
    "alternator": _ALTERNATOR, "generator": _ALTERNATOR, "wind": _ALTERNATOR, "hydro": _ALTERNATOR,
    "motor": _MOTOR, "shore charger": converter("~", "="), "DC converter": converter("=", "="),
    "solar regulator": converter("=", "="), "inverter": converter("=", "~"),
    "pump": _MOTOR, "bilge pump": _MOTOR, "blower": _MOTOR, "cranking motor": _MOTOR,
    "windlass": _MOTOR, "thruster": _MOTOR, "winch": _MOTOR, "propulsion": _MOTOR,
    "cooling": _MOTOR, "lighting": lamp(), "navigation lights": lamp(), "heating": heater(),
})
_OTHERWISE: Final[Mapping[str, Callable[[], str]]] = MappingProxyType({
    "switch": isolator, "source": lambda: _DIRECT_GENERATOR, "load": consumer})


def symbol(kind: str, subject: str) -> str:
    """The symbol of a kind of thing; of a kind without one, that of its subject."""
    return SYMBOLS.get(kind) or _OTHERWISE.get(subject, consumer)()
