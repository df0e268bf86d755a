"""A shoot's day as the command line plans it: the plan, or why there is none and what would help."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import UTC, date, datetime, time
from typing import TYPE_CHECKING

from binder.cli.endings import WrongUsageError
from binder.cli.search import searched
from binder.figures.day_clash import DayClash, day_clash
from binder.figures.day_plan import DayPlan, day_plan
from binder.figures.day_question import day_question
from binder.figures.day_repairs import DayRepair, day_repairs
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.whole_file import read_start
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from pathlib import Path

    from binder.cli.search import Waiting
    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Dish, Shoot

_TIME = re.compile(r"(\d{1,2})[:.](\d{2})")
_DATABASE = b"SQLite format 3\x00"


@dataclass(frozen=True)
class PlannedDay:
    """A plan; or none, with the clash that is why (None where that was not found in time) and repairs that help."""

    binder: Binder
    shoot: Shoot
    plan: DayPlan | None
    clash: DayClash | None = None
    repairs: tuple[DayRepair, ...] = ()

    @property
    def missing(self) -> tuple[str, ...]:
        """Why there is no plan, in sentences; nothing where there is one."""
        from binder.figures.clash_words import clash_sentence

        if self.plan is not None:
            return ()
        if self.shoot.on is None:
            return (_("The shoot has no date: set one, then its day can be planned."),)
        if day_question(self.binder, self.shoot.id) is None:
            return (_("There is nothing to plan: the shoot has no dish with a build, or its date is out of reach."),)
        if self.clash is None:
            return (_("No plan was found in time: give it longer with --seconds."),)
        return (clash_sentence(self.clash),)


def planned_day(binder: Binder, shoot: Shoot, *, seconds: float) -> PlannedDay:
    """Plan a day; where that fails, find out why and what would help, each in as long again.

    Ctrl-C ends it with what has been found by then.
    """
    says = _("Planning the day. Ctrl-C ends it with the best plan so far.")
    return searched(lambda waiting: _planned(binder, shoot, seconds, waiting), says=says)


def _planned(binder: Binder, shoot: Shoot, seconds: float, waiting: Waiting) -> PlannedDay:
    def better(plan: DayPlan) -> bool:
        waiting.tell(_("{plan} Ctrl-C takes it; looking for a better one.").format(plan=plan.says()))
        return True

    plan = day_plan(binder, shoot.id, seconds=seconds, progress=better, going_on=waiting.going_on)
    if plan is not None:
        return PlannedDay(binder, shoot, plan)
    waiting.tell(_("There is no plan yet: finding out why."))
    clash = day_clash(binder, shoot.id, seconds=seconds, going_on=waiting.going_on)
    if clash is None:
        return PlannedDay(binder, shoot, None)
    waiting.tell(_("There is no plan: trying what would help."))
    repairs = day_repairs(binder, shoot.id, clash, seconds=seconds, going_on=waiting.going_on)
    return PlannedDay(binder, shoot, None, clash, repairs)


def beginning(found: PlannedDay, since: str) -> datetime:
    """The moment that `--from` means. Raises WrongUsageError where it means none."""
    asked = day_question(found.binder, found.shoot.id)
    on = found.shoot.on or date.min
    if since.strip().casefold() == "call":
        return datetime.min if asked is None else asked.clock.call  # noqa: DTZ901 - a time on the wall
    clock = _TIME.fullmatch(since.strip())
    if clock is not None and int(clock[1]) <= 23 and int(clock[2]) <= 59:  # noqa: PLR2004
        return datetime.combine(on, time(int(clock[1]), int(clock[2])))
    dish = _dish(found, since.strip())
    filmed = (
        [one.start for one in found.plan.activities if one.activity.key == _first(found, dish)] if found.plan else []
    )
    return min(filmed, default=datetime.combine(on, time(0, 0)))


def _first(found: PlannedDay, dish: Dish) -> str:
    filmed = found.plan.asked.work.filmed if found.plan else {}
    return filmed.get(dish.id, ("", ""))[0]


def _dish(found: PlannedDay, named: str) -> Dish:
    """A dish by its running number or its name."""
    for dish in found.binder.dishes.where("shoot", found.shoot.id):
        if named in {str(dish.position + 1), dish.id} or named.casefold() == dish_name(found.binder, dish).casefold():
            return dish
    says = _("“{text}” is neither “call”, nor a dish by its number or name, nor a time such as 9:30.")
    raise WrongUsageError(says.format(text=named[:60]))


def last_change(found: PlannedDay, file: Path) -> tuple[datetime | date, int]:
    """When the data were last changed, and how many changes there have been.

    A `.binder` file's journal says so; of a document its newest price does, and no changes are counted.
    """
    if read_start(file, len(_DATABASE)) == _DATABASE:
        from binder.storage.binder_file import read_contents_of

        contents = read_contents_of(file)
        if contents.entries:
            return contents.entries[-1].at, contents.sequence
    quoted = [quote.on for quote in found.binder.quotes.values()]
    return max(quoted, default=found.shoot.on or datetime(2000, 1, 1, tzinfo=UTC)), 0
