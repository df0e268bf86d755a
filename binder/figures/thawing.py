"""When what is frozen goes into the refrigerator to thaw: by its weight, counted back from when it is first used."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime
from typing import TYPE_CHECKING

from binder.figures.clock import shifted
from binder.figures.date_text import date_text, moment_text
from binder.figures.demand import shoot_demand
from binder.figures.duration_text import duration_text
from binder.figures.portion_text import number_style
from binder.figures.thaw_time import thaw_time
from binder.figures.trips import FETCHED_BY, fetched_on
from binder.kitchen.amount_text import grams_text
from binder.kitchen.reference import TimeLimit, deference, time_limits
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator

    from binder.figures.day_plan import DayPlan
    from binder.kitchen.binder import Binder


@dataclass(frozen=True)
class Thaw:
    """A frozen food (its id), grams, and the moment on the wall by which it is in the refrigerator.

    `limit` is the rule that says how long before, `in_water` how many minutes cold water takes instead. `fetched` is
    the day it is bought, where that is known.
    """

    food: str
    grams: float
    by: datetime
    limit: TimeLimit
    in_water: float
    fetched: date | None

    @property
    def too_late(self) -> bool:
        """Whether it is not there yet when it has to begin."""
        return self.fetched is not None and datetime.combine(self.fetched, FETCHED_BY) > self.by


def thaws(binder: Binder, shoot_id: str, plan: DayPlan) -> Iterator[Thaw]:
    """What thaws for a plan: frozen food that needs temperature control; peas go into the pan as they are."""
    fetched = fetched_on(binder, shoot_id)
    for food_id, grams in shoot_demand(binder, shoot_id).grams.items():
        takes = thaw_time(binder.foods[food_id], grams)
        used = [one.start for one in plan.activities if food_id in plan.asked.work.foods.get(one.activity.key, ())]
        if takes is not None and used:
            by = shifted(min(used), -takes.minutes, plan.asked.clock.shoot.zone)
            yield Thaw(food_id, grams, by, takes.limit, takes.in_water, fetched.get(food_id))


def thaw_text(binder: Binder, thaw: Thaw, on: date | None) -> str:
    """By when it goes into the refrigerator, and what else would do, with sources; `on` is the day of the shoot."""
    water = time_limits()["thaw_cold_water"]
    says = _(
        "{food}, {grams}: into the refrigerator by {moment} to thaw ({source}); or in cold water for {time}, in a bag "
        "that does not leak and water changed every 30 min, and cooked at once ({water_source}). {deference}"
    )
    shown = says.format(
        food=binder.foods[thaw.food].name,
        grams=grams_text(thaw.grams, number_style(binder)),
        moment=moment_text(binder, thaw.by, on),
        source=thaw.limit.source,
        time=duration_text(thaw.in_water),
        water_source=water.source,
        deference=deference(),
    )
    if thaw.fetched is None or not thaw.too_late:
        return shown
    late = _("It is fetched on {day}, too late for the refrigerator: fetch it sooner, or thaw it in cold water.")
    return f"{late.format(day=date_text(binder, thaw.fetched))} {shown}"
