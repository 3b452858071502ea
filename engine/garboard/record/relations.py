"""How things aboard are related, both ways, in one table.

A derived relation follows from the runs and is worked out by the network; the others follow from a
reference that a thing holds, or from where it stands in the record.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final


@dataclass(frozen=True, slots=True)
class Relation:
    """From one thing to another, or to several (``many``), of the subject ``target``."""

    name: str
    target: str
    many: bool
    derived: bool


def _table(rows: str) -> Mapping[str, Mapping[str, Relation]]:
    table: dict[str, dict[str, Relation]] = {}
    for row in rows.strip().splitlines():
        subject, name, how, target, origin = (cell.strip() for cell in row.split("|"))
        relation = Relation(name, target, how == "many", origin == "derived")
        if table.setdefault(subject, {}).setdefault(name, relation) is not relation:
            raise ValueError(f"{subject}.{name} is given twice")
    return MappingProxyType({subject: MappingProxyType(row) for subject, row in table.items()})


RELATIONS: Final = _table("""
    battery           | place              | one  | place             | recorded
    battery           | managed_by         | one  | management_system | recorded
    battery           | string             | one  | string            | derived
    battery           | bank               | one  | bank              | derived
    battery           | own_device         | one  | device            | derived
    battery           | first_device       | one  | device            | derived
    string            | batteries          | many | battery           | derived
    string            | bank               | one  | bank              | derived
    string            | own_device         | one  | device            | derived
    bank              | strings            | many | string            | derived
    bank              | batteries          | many | battery           | derived
    bank              | sources            | many | source            | derived
    bank              | loads              | many | load              | derived
    bank              | devices            | many | device            | derived
    bank              | buses              | many | bus               | derived
    management_system | batteries          | many | battery           | recorded
    management_system | place              | one  | place             | recorded
    management_system | switches           | many | switch            | recorded
    run               | conductors         | many | conductor         | recorded
    run               | devices            | many | device            | recorded
    run               | switches           | many | switch            | recorded
    run               | return_run         | one  | run               | recorded
    conductor         | run                | one  | run               | recorded
    conductor         | places             | many | place             | recorded
    conductor         | protecting_devices | many | device            | derived
    conductor         | banks              | many | bank              | derived
    device            | run                | one  | run               | recorded
    device            | place              | one  | place             | recorded
    device            | banks              | many | bank              | derived
    switch            | run                | one  | run               | recorded
    switch            | place              | one  | place             | recorded
    switch            | worked_by          | one  | management_system | recorded
    switch            | banks              | many | bank              | derived
    bus               | runs               | many | run               | recorded
    bus               | place              | one  | place             | recorded
    bus               | banks              | many | bank              | derived
    source            | run                | one  | run               | recorded
    source            | bank               | one  | bank              | derived
    source            | banks              | many | bank              | derived
    source            | place              | one  | place             | recorded
    source            | stopped_by         | many | management_system | recorded
    load              | run                | one  | run               | recorded
    load              | bank               | one  | bank              | derived
    load              | place              | one  | place             | recorded
    place             | batteries          | many | battery           | recorded
    place             | sources            | many | source            | recorded
    place             | devices            | many | device            | recorded
    vessel            | record             | one  | record            | recorded
    record            | vessel             | one  | vessel            | recorded
    record            | survey             | one  | survey            | recorded
    record            | wiring             | one  | wiring            | recorded
    record            | places             | many | place             | recorded
    record            | batteries          | many | battery           | recorded
    record            | strings            | many | string            | derived
    record            | banks              | many | bank              | derived
    record            | management_systems | many | management_system | recorded
    record            | runs               | many | run               | recorded
    record            | conductors         | many | conductor         | recorded
    record            | devices            | many | device            | recorded
    record            | switches           | many | switch            | recorded
    record            | buses              | many | bus               | recorded
    record            | sources            | many | source            | recorded
    record            | loads              | many | load              | recorded
""")
