"""What the digest does not cover: program, machine, places in files, times, warnings."""

from __future__ import annotations

from typing import Any

from pydantic import Field

from garboard.trail.format.part import OpenPart


class PluginPart(OpenPart):
    """A plugin that was loaded."""

    name: str = Field(description="Its name.")
    version: str = Field(description="Its version.")
    digest: str | None = Field(None, description="SHA-256 of its file.")


class SpotPart(OpenPart):
    """Where a fact stands."""

    file: str | None = Field(None, description="The file.")
    line: int | None = Field(None, description="Line, from 1.")
    column: int | None = Field(None, description="Column, from 1.")


class AboutPart(OpenPart):
    """About the making of this trail; may differ between two trails of the same digest."""

    garboard: str = Field(description="Version of the program.")
    plugins: list[PluginPart] = Field([], description="Plugins that were loaded.")
    written_at: str | None = Field(None, description="When the trail was written.")
    python: str | None = Field(None, description="Version of Python.")
    platform: str | None = Field(None, description="The machine.")
    places: dict[str, SpotPart] = Field({}, description="Where each recorded fact stands.")
    timings: dict[str, float] = Field({}, description="Seconds spent, by part of the work.")
    warnings: list[dict[str, Any]] = Field([], description="Warnings about record and packs.")
    failures: list[dict[str, Any]] = Field([], description="Calculations that failed, and how.")
