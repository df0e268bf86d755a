"""What a print set is made of: every kind of sheet by the word that commands use, its title and its file's name."""

from __future__ import annotations

from enum import StrEnum

from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _, listed


class SheetKind(StrEnum):
    """What a print set is made of, by the words that commands use."""

    CARDS = "cards"
    SHOPPING = "shopping"
    MISE = "mise"
    BASE = "base"
    COSTS = "costs"
    CHECKS = "checks"


FILE_NAMES = {
    SheetKind.CARDS: "station-cards",
    SheetKind.SHOPPING: "shopping-list",
    SheetKind.MISE: "mise-list",
    SheetKind.BASE: "base",
    SheetKind.COSTS: "costs",
    SheetKind.CHECKS: "checks",
}
"""The names of files, without an ending; the same in every language, so that a folder can be read by a program."""


class UnknownSheetError(BinderError):
    """A kind of sheet that is not in the set."""

    def __init__(self, name: str) -> None:
        super().__init__(
            _("No sheet is called “{name}”. Choose {sheets}.").format(
                name=name[:60], sheets=listed(SheetKind, joined_by=_("or"))
            )
        )


def sheet_kind(name: str) -> SheetKind:
    """The kind of sheet of that name, however its letters are cased. Raises UnknownSheetError."""
    folded = name.strip().casefold()
    if folded not in list(SheetKind):
        raise UnknownSheetError(name)
    return SheetKind(folded)


def sheet_title(kind: SheetKind) -> str:
    """What a kind of sheet is called."""
    return {
        SheetKind.CARDS: _("Station cards"),
        SheetKind.SHOPPING: _("Shopping list"),
        SheetKind.MISE: _("Mise list"),
        SheetKind.BASE: _("Base"),
        SheetKind.COSTS: _("Costs"),
        SheetKind.CHECKS: _("Checks"),
    }[kind]
