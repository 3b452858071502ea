"""A pack on the bench of its author: checked, with its cases and all that they are run with."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from garboard.assembly import Workshop
from garboard.authoring.proving import Proof, Proving, prove
from garboard.documents import shipped_folder
from garboard.errors import CommandRefused, Problem, did_you_mean
from garboard.packs import CheckedPack, find_pack
from garboard.packs.cases import CaseBook, read_cases
from garboard.packs.files import HEAD
from garboard.packs.seal import ENDING


@dataclass(frozen=True, slots=True)
class Bench:
    """A pack, its cases, and what they are run with."""

    checked: CheckedPack
    book: CaseBook
    proving: Proving
    folder: Path

    @classmethod
    def of(cls, workshop: Workshop, pack: str, rule: str | None = None) -> Bench:
        """The pack of that name, folder or file, with all its cases or those about one rule.

        PackRefused with every problem of pack or cases; CommandRefused for a rule it has not.
        """
        folder = _open_folder(find_pack(pack, (shipped_folder("rulepacks"),)))
        (checked,) = workshop.load_packs([str(folder)])
        book = read_cases(folder, checked.pack)
        if rule is not None:
            known_rule(checked, rule)
            book = book.about(rule)
        proving = Proving(checked, workshop.registry, checked.compiled.vocabulary)
        return cls(checked, book, proving, folder)

    @property
    def rules(self) -> tuple[str, ...]:
        """The rules its cases should show: those written in the pack itself, and those they name.

        What stands in a pack below is shown by the cases there.
        """
        named = {rule for case in self.book.cases for rule in case.rules}
        own = self.folder.resolve()
        return tuple(rule.id for rule in self.checked.pack.rules if rule.id in named or Path(
            self.checked.pack.spot("rules", rule.id).place().file or "").resolve().is_relative_to(
                own))

    def proofs(self) -> Iterator[Proof]:
        """Every case, run when it is asked for."""
        return prove(self.book, self.proving)


def known_rule(checked: CheckedPack, rule: str) -> int:
    """The number of a rule of a pack; CommandRefused when it has none of that name."""
    names = [each.id for each in checked.pack.rules]
    if rule not in names:
        raise CommandRefused([Problem(
            "rule-unknown", found=rule, expected=f"a rule of {checked.pack.name}",
            hint=did_you_mean(rule, names))])
    return names.index(rule)


def _open_folder(pack: Path) -> Path:
    """The folder beside a sealed pack, if it is there: a sealed pack carries no cases."""
    folder = pack.with_name(pack.name.removesuffix(ENDING))
    return folder if (folder / HEAD).is_file() else pack
