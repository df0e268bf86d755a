"""Repairs of a day that has no plan: changes that touch the clash, each tried by planning the binder with it."""

from __future__ import annotations

import time
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.day_question import day_question
from binder.figures.plan_clash import demands_of, without
from binder.figures.plan_program import can_be_planned
from binder.figures.repair_ideas import repair_ideas
from binder.kitchen.change import apply

if TYPE_CHECKING:
    from collections.abc import Callable

    from binder.figures.day_clash import DayClash
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change

_SECONDS_EACH = 3.0


@dataclass(frozen=True)
class DayRepair:
    """A change that helps. `enough`: there is a plan with it; else it ends this clash, and another is left."""

    says: str
    change: Change
    enough: bool


def day_repairs(
    binder: Binder,
    shoot_id: str,
    clash: DayClash,
    *,
    seconds: float = 20.0,
    progress: Callable[[float], None] = lambda _share: None,
    going_on: Callable[[], bool] = lambda: True,
) -> tuple[DayRepair, ...]:
    """The repairs that were found to help within `seconds`: those that are enough first, then the least trouble.

    Of several sizes of one repair (call 30 minutes earlier, or 60) only the smallest that is enough is given.
    `progress` is told the share (0 to 1) that has been tried.
    """
    ends_at = time.monotonic() + seconds

    def in_time() -> bool:
        return time.monotonic() < ends_at and going_on()

    trial = _Trial(binder, shoot_id, clash, in_time)
    ideas = list(repair_ideas(binder, shoot_id, clash))
    found: list[DayRepair] = []
    for number, sizes in enumerate(ideas):
        progress(number / len(ideas))
        tried = (trial.of(says, change) for says, change in sizes if in_time())
        helping = [repair for repair in tried if repair is not None]
        found += [next((repair for repair in helping if repair.enough), helping[-1])] if helping else []
    progress(1.0)
    return tuple(sorted(found, key=lambda repair: not repair.enough))


class _Trial:
    """Tries changes on a binder whose day has no plan."""

    def __init__(self, binder: Binder, shoot_id: str, clash: DayClash, going_on: Callable[[], bool]) -> None:
        self.binder, self.shoot_id, self.going_on = binder, shoot_id, going_on
        self.others = [one for one in demands_of(clash.asked.question) if one not in clash.demands]

    def of(self, says: str, change: Change) -> DayRepair | None:
        """The repair, if it helps."""
        asked = day_question(apply(self.binder, change), self.shoot_id)
        if asked is None:
            return None
        if can_be_planned(asked.question, seconds=_SECONDS_EACH, going_on=self.going_on):
            return DayRepair(says, change, enough=True)
        clash_alone = without(asked.question, *self.others)
        if can_be_planned(clash_alone, seconds=_SECONDS_EACH, going_on=self.going_on):
            return DayRepair(says, change, enough=False)
        return None
