"""How the plan stands, as it is said at the head of the page. Plain Python."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.desktop.day_page.assumptions import Assumption, assumptions_of
from binder.desktop.sheet.cell import Mark
from binder.figures.missing import Place
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.day_page.planning_work import Answer
    from binder.desktop.day_page.trouble import Trouble, WayOut
    from binder.kitchen.binder import Binder


@dataclass(frozen=True)
class Standing:
    """What is said of the plan: a shape, a sentence, more sentences under it, ways out, what was assumed."""

    mark: Mark
    sentence: str
    more: tuple[str, ...] = ()
    ways: tuple[WayOut, ...] = ()
    assumed: tuple[Assumption, ...] = ()
    searching: bool = False


@dataclass(frozen=True)
class PlanSoFar:
    """What a search has come to; `busy` while it goes on, `searching` once it has turned out to be needed."""

    answer: Answer | None = None
    trouble: Trouble | None = None
    stale: bool = False
    busy: bool = False
    searching: bool = False


def standing_of(binder: Binder, shoot: str, so_far: PlanSoFar) -> Standing:
    """How the plan of a shoot stands."""
    answer, searching = so_far.answer, so_far.searching
    if so_far.trouble is not None:
        return _in_trouble(so_far.trouble)
    if answer is None or answer.plan is None:
        return _without(binder, shoot, so_far)
    plan = answer.plan
    says, mark = plan.says(), Mark.WITHIN
    if so_far.stale:
        says, mark = _("{says}  ·  being planned anew").format(says=says), Mark.UNKNOWN
    elif searching:
        says, mark = _("{says}  ·  looking for a better one").format(says=says), Mark.UNKNOWN
    more = (*(one.says for one in answer.broken), *answer.says)
    return Standing(mark, says, more, assumed=assumptions_of(binder, plan), searching=searching)


def _in_trouble(trouble: Trouble) -> Standing:
    head = _("There is no plan for this day.")
    if trouble.looking:
        head = _("{says}  ·  looking for what would help").format(says=head)
    return Standing(Mark.OVER, head, trouble.says, trouble.ways, searching=trouble.looking)


def _without(binder: Binder, shoot: str, so_far: PlanSoFar) -> Standing:
    if so_far.busy:
        return Standing(Mark.UNKNOWN, _("The day is being planned."), searching=so_far.searching)
    if binder.shoots[shoot].on is None:
        date = Assumption(_("Give the shoot its date"), Place("shoots", shoot))
        return Standing(
            Mark.UNKNOWN, _("A plan runs back from the day of the shoot, which is not set."), assumed=(date,)
        )
    if not binder.dishes.where("shoot", shoot):
        dishes = Assumption(_("Add the first dish"), Place("shoots", shoot))
        return Standing(Mark.NONE, _("The plan begins with the dishes of the shoot."), assumed=(dishes,))
    return Standing(Mark.UNKNOWN, _("No plan was found in time."))
