"""Elements of an SVG drawing as text: escaped, with short and repeatable numbers."""

from __future__ import annotations

from html import escape

Attribute = str | int | float | None


def element(tag: str, *children: str, **attributes: Attribute) -> str:
    """An element. ``children`` are markup already; ``class_`` is ``class``, ``x_y`` is ``x-y``.

    Attributes that are None are left out.
    """
    written = "".join(f' {name.rstrip("_").replace("_", "-")}="{_value(value)}"'
                      for name, value in attributes.items() if value is not None)
    inside = "".join(children)
    return f"<{tag}{written}>{inside}</{tag}>" if inside else f"<{tag}{written}/>"


def words(text: str, x: float, y: float, class_: str | None = None, anchor: str | None = None,
          ) -> str:
    """A line of text; ``text`` must be harmless already, and is escaped here."""
    return element("text", escape(text, quote=False), x=x, y=y, class_=class_, text_anchor=anchor)


def path(steps: str, class_: str | None = None) -> str:
    """A path from SVG path commands."""
    return element("path", d=steps, class_=class_)


def line(x1: float, y1: float, x2: float, y2: float, class_: str | None = None) -> str:
    """A straight line."""
    return path(f"M{number(x1)} {number(y1)}L{number(x2)} {number(y2)}", class_)


def moved(x: float, y: float, *children: str) -> str:
    """Markup drawn around the origin, moved to a point."""
    return element("g", *children, transform=f"translate({number(x)} {number(y)})")


def number(value: float) -> str:
    """A coordinate to a tenth, without idle noughts."""
    text = f"{value:.1f}"
    return text[:-2] if text.endswith(".0") else text


def _value(value: str | int | float) -> str:
    return escape(value) if isinstance(value, str) else number(value)
