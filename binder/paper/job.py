"""What one sheet is laid out from: the binder, the shoot, the paper, and what whoever prints has chosen."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from binder.paper.card_type import CardType, card_type
from binder.paper.legibility import ARMS_LENGTH, IN_THE_HAND
from binder.paper.list_type import ListType, list_type
from binder.paper.print_choices import PrintChoices

if TYPE_CHECKING:
    from binder.figures.day_plan import DayPlan
    from binder.kitchen.binder import Binder
    from binder.paper.paper_size import PaperSize


@dataclass(frozen=True)
class Job:
    """One sheet of one shoot to be laid out."""

    binder: Binder
    shoot: str
    paper: PaperSize
    choices: PrintChoices = field(default_factory=PrintChoices)

    @property
    def language(self) -> str:
        """The language that long words are parted in."""
        return self.binder.settings.locale

    @property
    def plan(self) -> DayPlan | None:
        """The day plan of the shoot, where there is one."""
        return self.choices.plans.get(self.shoot)

    def card_type(self) -> CardType:
        """The type of what is read standing at the station: from arm's length unless another distance is chosen."""
        return card_type(self.choices.metres or ARMS_LENGTH, self.language, self.choices.look)

    def standing_type(self, usual: float = IN_THE_HAND) -> ListType:
        """The type of a list that is read standing: from the distance chosen, or else from `usual` metres."""
        return list_type(self.choices.metres or usual, self.language)

    def list_type(self, metres: float = IN_THE_HAND) -> ListType:
        """The type of a list that is held in the hand or lies before one, whatever distance cards are read from."""
        return list_type(metres, self.language)
