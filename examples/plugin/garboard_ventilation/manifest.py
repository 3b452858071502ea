"""``python -m garboard_ventilation.manifest`` writes the manifest anew from the declarations."""

from __future__ import annotations

import json
from pathlib import Path

from garboard.hooks import manifest_of
from garboard_ventilation.ventilation import garboard_manifest, garboard_quantities


def manifest_text() -> str:
    """The manifest as its file should read."""
    data = manifest_of("ventilation", garboard_quantities())
    return json.dumps(data, indent=2, ensure_ascii=False) + "\n"


if __name__ == "__main__":
    Path(garboard_manifest()).write_text(manifest_text(), encoding="utf-8")
