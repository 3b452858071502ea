"""Files that are made from code: schemas, the built-in manifest, tables in the packs' READMEs.

A shipped pack beside which a sealed one of its name lies is sealed anew too, without a signature: a
secret key is nothing to lie in a repository.

``python -m garboard.assembly.generated`` writes them anew in the working tree; tests fail when one
has drifted.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any, Final

from garboard.assembly.table_schema import table_schema
from garboard.assembly.vocabulary import vocabulary_of
from garboard.documents import shipped_folder, write_whole
from garboard.hooks import manifest_of
from garboard.packs import dispensations_schema, pack_list_schema, pack_schema, read_pack
from garboard.packs.cases import case_schema
from garboard.packs.seal import ENDING
from garboard.packs.sealing import sealed_bytes, sealed_pack_schema
from garboard.packs.table import with_table
from garboard.quantities import Registry, builtin
from garboard.record.schema import record_schema
from garboard.trail import trail_schema

_SCHEMAS: Final = {"installation-record-1": record_schema, "rule-pack-1": pack_schema,
                   "trail-1": trail_schema, "dispensations-1": dispensations_schema,
                   "table-1": table_schema, "case-1": case_schema,
                   "sealed-pack-1": sealed_pack_schema, "pack-list-1": pack_list_schema}


def generated_files() -> dict[Path, bytes]:
    """Every generated file with the content it should have."""
    files = {shipped_folder("schemas") / f"{name}.json": _json(schema())
             for name, schema in _SCHEMAS.items()}
    files[builtin.MANIFEST] = _json(manifest_of("garboard", builtin.garboard_quantities()))
    vocabulary = vocabulary_of(Registry(builtin.garboard_quantities()))
    for pack in sorted(shipped_folder("rulepacks").iterdir()):
        if not pack.is_dir():
            continue
        readme = pack / "README.md"
        read = read_pack(pack, vocabulary=vocabulary)
        files[readme] = with_table(readme.read_text("utf-8"), read).encode()
        sealed = pack.with_name(f"{pack.name}{ENDING}")
        if sealed.exists():
            files[sealed] = sealed_bytes(read)
    return files


def _json(data: Mapping[str, Any]) -> bytes:
    return (json.dumps(data, indent=2, ensure_ascii=False) + "\n").encode()


def main() -> None:
    """Write every generated file whose content has drifted."""
    for file, content in generated_files().items():
        if not file.exists() or file.read_bytes() != content:
            write_whole(file, content)
            print(f"written: {file}")


if __name__ == "__main__":
    main()
