"""Safety clocks of a plan: how long food that needs temperature control is out of the cold, build by build."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.date_text import moment_text
from binder.figures.day_words import build_text, dish_title
from binder.figures.duration_text import duration_text
from binder.figures.exposure import threads
from binder.kitchen.reference import TimeLimit, deference, time_limits
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from collections.abc import Iterator
    from datetime import datetime

    from binder.figures.day_plan import DayPlan
    from binder.figures.exposure import Thread
    from binder.kitchen.binder import Binder


@dataclass(frozen=True)
class SafetyClock:
    """Foods that come into one build (or recipe made ahead: `build` None) together, and how long they are out.

    `spans` are the times on the wall that they are neither in the cold nor under heat, each with the minutes out by its
    end since they were last under heat; `minutes` is the most of these, `runs_out` when the limit is reached.
    """

    thread: str
    name: str
    dish: str | None
    build: str | None
    foods: tuple[str, ...]
    spans: tuple[tuple[datetime, datetime, int], ...]
    minutes: int
    limit: TimeLimit
    runs_out: datetime | None

    @property
    def over(self) -> bool:
        """Whether it is longer than the limit."""
        return self.minutes > (self.limit.minutes or 0)

    def minutes_at(self, now: datetime) -> float | None:
        """Minutes out so far at a moment on the wall clock; None where the clock does not run then."""
        for start, end, total in self.spans:
            if start <= now < end:
                return total - (end - now).total_seconds() / 60
        return None


def out_of_cold_limit(binder: Binder, shoot_id: str) -> TimeLimit:
    """The limit of the shoot: two hours, or one where the set is hot."""
    return time_limits()["one_hour_hot_day" if binder.shoots[shoot_id].hot_set else "two_hour"]


def safety_clocks(binder: Binder, shoot_id: str, plan: DayPlan) -> tuple[SafetyClock, ...]:
    """The clocks of every build and recipe made ahead, the longest first."""
    limit = out_of_cold_limit(binder, shoot_id)
    found = [clock for thread in threads(plan) for clock in _clocks(plan, thread, limit)]
    return tuple(sorted(found, key=lambda clock: (-clock.minutes, clock.thread, clock.foods)))


def _clocks(plan: DayPlan, thread: Thread, limit: TimeLimit) -> Iterator[SafetyClock]:
    together: dict[tuple[int, int], list[str]] = {}
    for food, join in thread.joins.items():
        together.setdefault(join, []).append(food)
    wall, most = plan.asked.wall, round(limit.minutes or 0)
    for (joined, _before), foods in together.items():
        out = thread.out_since(foods[0])
        if not out:
            continue
        runs_out = next((one.end - total + most for one, total in out if total > most), None)
        yield SafetyClock(
            thread=thread.key,
            name=thread_text(plan.asked.binder, thread),
            dish=thread.dish,
            build=thread.build,
            foods=tuple(foods),
            spans=tuple((wall(max(one.start, joined)), wall(one.end), total) for one, total in out),
            minutes=max(total for _one, total in out),
            limit=limit,
            runs_out=None if runs_out is None else wall(runs_out),
        )


def thread_text(binder: Binder, thread: Thread) -> str:
    """What a thread is called: `2 Green-Heart Fritters (swap-out)`."""
    if thread.dish is None or thread.build is None:
        return binder.recipes[thread.key].name
    return f"{dish_title(binder, thread.dish)} ({build_text(binder, binder.builds[thread.build])})"


def longest_by_food(clocks: tuple[SafetyClock, ...]) -> dict[str, SafetyClock]:
    """For each food (its id) the clock that runs longest, over all builds."""
    found: dict[str, SafetyClock] = {}
    for clock in clocks:
        for food in clock.foods:
            if food not in found or clock.minutes > found[food].minutes:
                found[food] = clock
    return found


def clock_text(binder: Binder, clock: SafetyClock, shoot_id: str) -> str:
    """A clock that is over its limit, in a sentence with its source; food code's four hours as context."""
    context = time_limits()["time_control"]
    says = _(
        "{name}: {foods} out of the cold for {time}, over {limit} ({source}); the limit is reached at {moment}. "
        "Chill it in between, or throw it away then. Time alone may take the place of temperature for {context} at "
        "most, with a written procedure ({context_source}). {deference}"
    )
    moment = clock.runs_out or clock.spans[-1][1]
    return says.format(
        name=clock.name,
        foods=listed(binder.foods[food].name for food in clock.foods),
        time=duration_text(clock.minutes),
        limit=duration_text(clock.limit.minutes or 0),
        source=clock.limit.source,
        moment=moment_text(binder, moment, binder.shoots[shoot_id].on),
        context=duration_text(context.minutes or 0),
        context_source=context.source,
        deference=deference(),
    )
