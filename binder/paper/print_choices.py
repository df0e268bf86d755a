"""What whoever prints may choose: how far a card is read, its look, margins, several cards to a sheet, backs."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from typing import TYPE_CHECKING

from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from collections.abc import Mapping

    from binder.figures.day_plan import DayPlan
    from binder.paper.label_grid import LabelGrid

NEAREST_METRES, FURTHEST_METRES = 0.5, 3.0
"""How far cards are read: from the work top to across the set. Common practice, no source."""


class Look(StrEnum):
    """The two looks of a card."""

    PLAIN = "plain"
    ON_CAMERA = "on-camera"


class Backs(StrEnum):
    """Whether sheets are printed on both sides, and about which edge the printer turns them."""

    NONE = "none"
    LONG_EDGE = "long-edge"
    SHORT_EDGE = "short-edge"


class UnfitDistanceError(BinderError):
    """A reading distance that no card is made for."""

    def __init__(self, metres: float) -> None:
        says = _("Cards are made to be read from {nearest} to {furthest} metres, not from {metres:g}.")
        super().__init__(says.format(nearest=NEAREST_METRES, furthest=FURTHEST_METRES, metres=metres))


class UnknownLookError(BinderError):
    """A look that there is not."""

    def __init__(self, name: str) -> None:
        says = _("No style is called “{name}”. Choose {looks}.")
        super().__init__(says.format(name=name[:60], looks=listed(Look, joined_by=_("or"))))


class UnknownBacksError(BinderError):
    """A way to print backs that there is not."""

    def __init__(self, name: str) -> None:
        says = _("Backs are not printed “{name}”. Choose {ways}.")
        super().__init__(says.format(name=name[:60], ways=listed(Backs, joined_by=_("or"))))


def look_called(name: str) -> Look:
    """The look of that name. Raises UnknownLookError."""
    folded = name.strip().casefold()
    if folded not in list(Look):
        raise UnknownLookError(name)
    return Look(folded)


def backs_called(name: str) -> Backs:
    """The way to print backs of that name. Raises UnknownBacksError."""
    folded = name.strip().casefold()
    if folded not in list(Backs):
        raise UnknownBacksError(name)
    return Backs(folded)


@dataclass(frozen=True)
class PrintChoices:
    """All that may be chosen. `metres`: how far cards and what hangs on the wall are read from (None: as is usual).

    `margin` is millimetres of white (None: as is usual for the paper), `sheet` the key of a paper that several cards
    are printed on, to be cut apart. `used_labels` are gone from the first sheet of labels. `together`: all sheets in
    one file. `pattern` names files, as `{date}-{sheet}`. `plans` are the day plans that there are, by shoot.

    Raises UnfitDistanceError.
    """

    metres: float | None = None
    look: Look = Look.PLAIN
    margin: float | None = None
    sheet: str | None = None
    backs: Backs = Backs.NONE
    labels: LabelGrid | None = None
    used_labels: int = 0
    together: bool = False
    pattern: str | None = None
    plans: Mapping[str, DayPlan] = field(default_factory=dict)

    def __post_init__(self) -> None:
        if self.metres is not None and not NEAREST_METRES <= self.metres <= FURTHEST_METRES:
            raise UnfitDistanceError(self.metres)
