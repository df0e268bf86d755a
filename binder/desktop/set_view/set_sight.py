"""What is shown on the set at a moment: what is filmed, what must start, the next swap-out, timers. Plain Python."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from binder.desktop.day_page.bars import Bar, Bars, in_order
from binder.desktop.day_page.cautions import cautions_of
from binder.figures.date_text import time_text
from binder.figures.day_words import activity_text, build_text
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.shoot import BuildKind, BuildState
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.figures.day_plan import DayPlan
    from binder.kitchen.binder import Binder
    from binder.kitchen.day import Person
    from binder.kitchen.reference import Caution
    from binder.kitchen.shoot import Build

AHEAD = 20
"""Minutes that are looked ahead for what must start."""

FORGOTTEN = 15
"""Minutes after which what was not ticked is taken to have begun as planned."""

RINGS = 10
"""Minutes that a timer goes on to be shown as rung."""

LONGEST_TIMER = 6 * 60
"""Minutes; a wait that is longer needs no timer. Common practice, no source."""


@dataclass(frozen=True)
class Due:
    """Something to start: when, also as the locale writes it, what of which dish, who.

    `late`: by minutes, less than none while there is time. `cautions` are those for what is done.
    """

    key: str
    at: datetime
    clock: str
    number: str
    what: str
    who: str
    late: float
    cautions: tuple[Caution, ...] = ()

    @property
    def now(self) -> bool:
        """Whether it should have begun."""
        return self.late >= 0


@dataclass(frozen=True)
class OnCamera:
    """What is filmed: the dish, the step, until when; `over` where it should have ended."""

    dish: str
    what: str
    until: datetime
    over: bool
    cautions: tuple[Caution, ...] = ()


@dataclass(frozen=True)
class NextSwapOut:
    """The swap-out the camera wants next: of which dish, when, how far it is, and where it waits."""

    build: str
    dish: str
    at: datetime
    state: BuildState
    says: str


@dataclass(frozen=True)
class Timer:
    """A wait that runs: of what, and when it is over."""

    key: str
    what: str
    ends: datetime

    def left(self, now: datetime) -> timedelta:
        """How long it still runs; nothing or less once it rings."""
        return self.ends - now


@dataclass(frozen=True)
class SetSight:
    """Everything on the screen at `now`; `later` is the first thing after what is looked ahead."""

    now: datetime
    filmed: OnCamera | None
    next_filmed: Due | None
    due: tuple[Due, ...]
    later: Due | None
    swap_out: NextSwapOut | None
    timers: tuple[Timer, ...]
    wraps: datetime


def set_sight(binder: Binder, plan: DayPlan, bars: Bars, now: datetime) -> SetSight:
    """What is shown at a moment, by the clock on the wall."""
    looking = _Looking(binder, plan, bars, now)
    filmed, coming = looking.camera()
    due, later = looking.due()
    wraps = plan.asked.wall(plan.found.end)
    return SetSight(now, filmed, coming, due, later, looking.swap_out(), looking.timers(), wraps)


class _Looking:
    def __init__(self, binder: Binder, plan: DayPlan, bars: Bars, now: datetime) -> None:
        self.binder, self.plan, self.bars, self.now = binder, plan, bars, now
        self.ordered = in_order(bars)
        self.filmed = [bar for bar in self.ordered if bar.filmed]
        self.ticked = any(bar.done for bar in self.filmed)

    def wall(self, minute: float) -> datetime:
        """The clock on the wall at a minute of the plan."""
        return self.plan.asked.wall(minute)

    def late(self, bar: Bar) -> float:
        """Minutes since an activity was to begin."""
        return (self.now - self.wall(bar.start)).total_seconds() / 60

    def begun(self, bar: Bar) -> bool:
        """Whether it has begun: by its tick, or long enough ago that nobody ticks it any more.

        Once anything filmed is ticked, only ticks say what the camera has seen.
        """
        if bar.done or (bar.filmed and self.ticked):
            return bar.done
        return self.late(bar) >= (0 if bar.filmed else FORGOTTEN)

    def camera(self) -> tuple[OnCamera | None, Due | None]:
        """What is filmed now, and what is filmed next."""
        begun = [bar for bar in self.filmed if self.begun(bar)]
        coming = next((bar for bar in self.filmed if not self.begun(bar)), None)
        return self._on_camera(begun, coming), None if coming is None else self._due(coming)

    def _on_camera(self, begun: list[Bar], coming: Bar | None) -> OnCamera | None:
        if not begun:
            return None
        last = begun[-1]
        until = self.wall(last.end)
        over = self.now >= until
        if over and (coming is None or not self.ticked):
            return None
        found = cautions_of(self.binder, last.activity)
        return OnCamera(self._dish(last), last.activity.name, until, over, found)

    def _dish(self, bar: Bar) -> str:
        dish = self.binder.dishes.get(bar.activity.dish or "")
        return f"{dish.position + 1} {dish_name(self.binder, dish)}" if dish is not None else bar.activity.name

    def due(self) -> tuple[tuple[Due, ...], Due | None]:
        """What must start in the time looked ahead, what should have first, and what is the first after that.

        What the camera sees is not among it.
        """
        waiting = [self._due(bar) for bar in self.ordered if not bar.filmed and not self.begun(bar)]
        near = tuple(due for due in waiting if due.late >= -AHEAD)
        return near, next((due for due in waiting if due.late < -AHEAD), None)

    def _clock(self, minute: float) -> str:
        return time_text(self.binder, self.wall(minute).time())

    def _due(self, bar: Bar) -> Due:
        number = str(bar.number) if bar.number is not None else ""
        build = self.binder.builds.get(bar.activity.build or "")
        what = bar.activity.name
        if build is not None and build.kind is not BuildKind.HERO:
            what = _("{step}, {build}").format(step=what, build=build_text(self.binder, build))
        elif bar.activity.dish is None and bar.activity.step is not None:
            what = activity_text(self.binder, bar.activity)
        who = called(self.plan.asked.kitchen.people, bar.people)
        found = cautions_of(self.binder, bar.activity)
        return Due(bar.key, self.wall(bar.start), self._clock(bar.start), number, what, who, self.late(bar), found)

    # The next swap-out

    def swap_out(self) -> NextSwapOut | None:
        """The next build that takes the place of what is filmed."""
        for bar in self.filmed:
            build = self.binder.builds.get(bar.activity.build or "")
            if build is not None and build.kind is BuildKind.SWAP_OUT and self._is_to_come(bar, build):
                says = self._stands(build)
                return NextSwapOut(build.id, self._dish(bar), self.wall(bar.start), build.state, says)
        return None

    def _is_to_come(self, bar: Bar, build: Build) -> bool:
        first = next(one for one in self.filmed if one.activity.build == build.id)
        return bar is first and not self.begun(bar) and build.state not in {BuildState.USED, BuildState.SPOILED}

    def _stands(self, build: Build) -> str:
        """How far a build is, and where it waits."""
        where = build.waits
        if build.state is BuildState.READY:
            return ", ".join(part for part in (_("ready"), where) if part)
        made = [bar for bar in self.ordered if bar.activity.build == build.id and not bar.filmed]
        open_ones = [bar for bar in made if not self.begun(bar)]
        if open_ones:
            step = open_ones[0]
            says = _("at {time} {step}")
            return says.format(step=step.activity.name, time=self._clock(step.start))
        if made and self.wall(made[-1].ready) > self.now:
            says = _("to {time} {step}")
            step = made[-1]
            return says.format(step=step.activity.name, time=self._clock(step.ready))
        return ", ".join(part for part in (_("made"), where) if part)

    # Timers

    def timers(self) -> tuple[Timer, ...]:
        """The waits that run, and those that have just ended, the first to ring first."""
        running = [
            Timer(bar.key, self._timer_name(bar), self.wall(bar.ready))
            for bar in self.ordered
            if 0 < bar.ready - bar.end <= LONGEST_TIMER and self._waits(bar)
        ]
        return tuple(sorted(running, key=lambda timer: (timer.ends, timer.key)))

    def _waits(self, bar: Bar) -> bool:
        rung = self.wall(bar.ready) + timedelta(minutes=RINGS)
        has_begun = bar.done or self.late(bar) >= 0
        return has_begun and self.wall(bar.end) <= self.now < rung

    def _timer_name(self, bar: Bar) -> str:
        return f"{bar.number} {bar.activity.name}" if bar.number is not None else bar.activity.name


def called(people: Sequence[Person], who: Sequence[str]) -> str:
    """People as they are called across the set: by the first of their names, where no other is called so."""
    first = {person.id: (person.name.split() or [""])[0] for person in people}
    times = Counter(first.values())
    names = {person.id: first[person.id] if times[first[person.id]] == 1 else person.name for person in people}
    return listed(names.get(key, key) for key in who)
