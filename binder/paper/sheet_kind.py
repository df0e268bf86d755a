"""What a print set is made of: every kind of sheet by the word that commands use, its title and its file's name."""

from __future__ import annotations

from enum import StrEnum

from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _, listed


class SheetKind(StrEnum):
    """What a print set is made of, by the words that commands use."""

    CARDS = "cards"
    STATIONS = "stations"
    LABELS = "labels"
    SHOPPING = "shopping"
    MISE = "mise"
    MISE_TIMES = "mise-times"
    RUNNING_ORDER = "running-order"
    PEOPLE = "people"
    CALL = "call"
    PREP = "prep"
    EQUIPMENT = "equipment"
    BASE = "base"
    FLOW = "flow"
    COSTS = "costs"
    BUDGET = "budget"
    CLAIMS = "claims"
    ALLERGENS = "allergens"
    CHECKS = "checks"
    RECIPES = "recipes"
    WRAP = "wrap"


FILE_NAMES = {
    SheetKind.CARDS: "station-cards",
    SheetKind.STATIONS: "stations",
    SheetKind.LABELS: "container-labels",
    SheetKind.SHOPPING: "shopping-list",
    SheetKind.MISE: "mise-list",
    SheetKind.MISE_TIMES: "mise-list-by-time",
    SheetKind.RUNNING_ORDER: "running-order",
    SheetKind.PEOPLE: "people",
    SheetKind.CALL: "call-sheet",
    SheetKind.PREP: "prep-calendar",
    SheetKind.EQUIPMENT: "equipment",
    SheetKind.BASE: "base",
    SheetKind.FLOW: "base-flow",
    SheetKind.COSTS: "costs",
    SheetKind.BUDGET: "budget",
    SheetKind.CLAIMS: "claims",
    SheetKind.ALLERGENS: "allergens",
    SheetKind.CHECKS: "checks",
    SheetKind.RECIPES: "recipes",
    SheetKind.WRAP: "wrap-report",
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
        SheetKind.STATIONS: _("Stations"),
        SheetKind.LABELS: _("Container labels"),
        SheetKind.SHOPPING: _("Shopping list"),
        SheetKind.MISE: _("Mise list"),
        SheetKind.MISE_TIMES: _("Mise list by time"),
        SheetKind.RUNNING_ORDER: _("Running order"),
        SheetKind.PEOPLE: _("People"),
        SheetKind.CALL: _("Call sheet"),
        SheetKind.PREP: _("Prep calendar"),
        SheetKind.EQUIPMENT: _("Equipment and containers"),
        SheetKind.BASE: _("Base"),
        SheetKind.FLOW: _("Flow of the base"),
        SheetKind.COSTS: _("Costs"),
        SheetKind.BUDGET: _("Budget"),
        SheetKind.CLAIMS: _("Claims"),
        SheetKind.ALLERGENS: _("Allergens"),
        SheetKind.CHECKS: _("Checks"),
        SheetKind.RECIPES: _("Recipes"),
        SheetKind.WRAP: _("Wrap report"),
    }[kind]
