"""Why there is no plan, in words, and what would help: each a change that can be made and undone. Plain Python."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.clash_words import clash_words
from binder.figures.day_clash import day_clash
from binder.figures.day_repairs import DayRepair, day_repairs
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable

    from binder.desktop.day_page.planning_work import Answer, Asked
    from binder.kitchen.change import Change


@dataclass(frozen=True)
class WayOut:
    """A change that would help, and what its button says."""

    title: str
    change: Change


@dataclass(frozen=True)
class Trouble:
    """What clashes, in sentences, and the ways out that were tried and found to help. `looking`: for more of them."""

    says: tuple[str, ...]
    ways: tuple[WayOut, ...] = ()
    looking: bool = False


def trouble_of(
    asked: Asked, answer: Answer, tell: Callable[[Trouble], None], going_on: Callable[[], bool]
) -> Trouble | None:
    """Why there is no plan for a shoot, told as soon as it is known; then what would help. None where it has one."""
    if answer.question is None:
        return None
    tell(Trouble((_("Looking for what clashes."),), looking=True))
    clash = answer.clash or day_clash(asked.binder, asked.shoot, going_on=going_on)
    if clash is None:
        return Trouble((_("No plan was found in time."),))
    head = _("These cannot all be had:") if clash.certain else _("Among these is what cannot be had:")
    says = (head, *(f"–  {words}" for words in clash_words(clash)))
    tell(Trouble(says, looking=True))
    repairs = day_repairs(asked.binder, asked.shoot, clash, going_on=going_on)
    return Trouble(says, tuple(_way_out(repair) for repair in repairs))


def _way_out(repair: DayRepair) -> WayOut:
    title = repair.says.rstrip(".")
    return WayOut(title if repair.enough else _("{repair} (helps, is not enough)").format(repair=title), repair.change)
