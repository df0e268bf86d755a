"""A clash of the day in words a cook says: what is asked of which dish, step and appliance, and by when."""

from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING

from binder.figures.date_text import date_text, moment_text, time_text
from binder.figures.day_activities import HOLD, KEEPS
from binder.figures.day_hours import BY_CALL, BY_TRIP, EVENT, NIGHTS, PERSON, PREHEAT
from binder.figures.day_kitchen import CAMERA
from binder.figures.day_words import activity_text, dish_number, hours_text, resource_text
from binder.figures.duration_text import duration_text
from binder.figures.plan_clash import ABSENCE, EARLIEST, GAP, HORIZON, LATEST, PIN, RESOURCE
from binder.figures.plan_question import RUNNING_ORDER
from binder.figures.plan_windows import windows
from binder.figures.temperature_text import temperature_short
from binder.figures.trips import fetched_on
from binder.kitchen.day import ApplianceKind
from binder.kitchen.edits.day import target_name
from binder.kitchen.wording import _, listed, ngettext

if TYPE_CHECKING:
    from collections.abc import Sequence
    from datetime import datetime

    from binder.figures.day_clash import DayClash
    from binder.figures.plan_question import Task
    from binder.kitchen.day import Appliance

_MOST_NAMED = 4
"""A sentence names no more steps than this; of others it says how many there are."""


def clash_sentence(clash: DayClash) -> str:
    """Why there is no plan, in one sentence."""
    says = _("There is no plan, because these cannot all be had: {demands}.")
    return says.format(demands="; ".join(clash_words(clash)))


def clash_words(clash: DayClash) -> tuple[str, ...]:
    """Each demand of a clash, in words: those on the kitchen first, then times."""
    words = _ClashWords(clash)
    crews = [one for one in clash.demands if one.startswith(f"{RESOURCE}crew ")]
    others = [words.demand(one) for one in clash.demands if one not in crews]
    hands = [words.hands([one.removeprefix(RESOURCE) for one in crews])] if crews else []
    return tuple(dict.fromkeys([*others, *hands]))


class _ClashWords:
    def __init__(self, clash: DayClash) -> None:
        self.clash, self.asked, self.binder = clash, clash.asked, clash.asked.binder
        self.windows = windows(clash.question)

    def demand(self, demand: str) -> str:
        """One demand in words."""
        if demand == LATEST:
            wrap = self.asked.clock.wrap
            return _("wrap at {time}").format(time=self._moment(wrap)) if wrap else _("the wrap")
        if demand == HORIZON:
            return self._horizon()
        tell = {
            GAP: self._gap,
            ABSENCE: self._absence,
            PIN: self._pin,
            RESOURCE: self._resource,
            EARLIEST: self._earliest,
        }
        kind = next(kind for kind in tell if demand.startswith(kind))
        return tell[kind](demand.removeprefix(kind))

    def _earliest(self, because: str) -> str:
        """Call, where something is filmed; or what is fetched on a trip that others wait for."""
        if because == BY_CALL:
            return _("call at {time}").format(time=self._moment(self.asked.clock.call))
        day = date.fromisoformat(because.removeprefix(BY_TRIP))
        fetched = fetched_on(self.binder, self.asked.clock.shoot.id)
        wait = [task.key for task in self.clash.question.tasks if task.because == because]
        foods = dict.fromkeys(one for key in wait for one in self.asked.work.foods.get(key, ()))
        names = [self.binder.foods[food].name for food in foods if fetched.get(food) == day]
        return _("{foods} fetched on {day}").format(foods=_shortened(names), day=date_text(self.binder, day))

    def _horizon(self) -> str:
        waits: dict[str, int] = {}
        for gap in self.clash.question.gaps:
            waits[gap.before] = max(waits.get(gap.before, 0), gap.least)
        takes = {task.key: task.minutes + waits.get(task.key, 0) for task in self.clash.question.tasks}
        longest = max(takes, key=lambda key: takes[key])
        says = _("{what}, which takes {time}; and everything over by {end}")
        return says.format(
            what=activity_text(self.binder, self.asked.work.activities[longest]),
            time=duration_text(takes[longest]),
            end=self._moment(self.asked.wall(self.asked.clock.end)),
        )

    def _moment(self, moment: datetime) -> str:
        return moment_text(self.binder, moment, self.asked.clock.on)

    def _gap(self, key: str) -> str:
        if key == RUNNING_ORDER:
            first, *others = [dish_number(self.binder, dish) for dish in self.clash.dishes] or [_("each dish")]
            says = _("the running order from {first} to {last}") if len(others) > 1 else _("{first} before {last}")
            return says.format(first=first, last=others[-1] if others else first)
        gap = next(one for one in self.asked.question.gaps if one.key == key)
        fit = duration_text((gap.most or 0) - gap.least)
        if key.startswith(KEEPS):
            form = self.binder.foods[key.removeprefix(KEEPS)].name
            return _("{form} fit for no longer than {time}").format(form=form, time=fit)
        step = self.binder.steps[key.removeprefix(HOLD)]
        named = step.title or _("step {number}").format(number=step.position + 1)
        dishes = [dish_number(self.binder, one) for one in self.clash.dishes if self._recipe(one) == step.recipe]
        what = listed(dishes) or self.binder.recipes[step.recipe].name
        return _("what “{step}” gives for {what} stays fit for {time}").format(step=named, what=what, time=fit)

    def _recipe(self, dish: str) -> str:
        return self.binder.dishes[dish].recipe

    def _absence(self, key: str) -> str:
        shoot = self.asked.clock.shoot
        if key == NIGHTS:
            says = _("nobody works before {start} or after {end} on the days before")
            start, end = (time_text(self.binder, at) for at in (shoot.prep_from, shoot.prep_until))
            return says.format(start=start, end=end)
        if key.startswith(EVENT):
            event = self.binder.fixed_events[key.removeprefix(EVENT)]
            moment = self._moment(self.asked.clock.event(event))
            return _("{event} at {time}").format(event=event.name, time=moment)
        if key.startswith(PREHEAT):
            oven = self.asked.kitchen.appliance(key.removeprefix(PREHEAT))
            says = _("the {oven} is hot only {time} after the first of the crew comes")
            return says.format(oven=oven.name if oven else "", time=duration_text(oven.change_minutes if oven else 0))
        person = next(one for one in self.asked.kitchen.people if one.id == key.removeprefix(PERSON))
        return hours_text(self.asked, person)

    def _pin(self, key: str) -> str:
        activity = self.asked.work.activities[key]
        moment = self._moment(self.asked.wall(self.asked.question.pinned[key]))
        what = activity_text(self.binder, activity) if activity.build else target_name(self.binder, activity.target)
        return _("the pin of {what} at {time}").format(what=what, time=moment)

    def hands(self, crews: Sequence[str]) -> str:
        """The pairs of hands that there are of the crews that clash."""
        people = [one for crew in self.asked.kitchen.crews if crew.key in crews for one in crew.people]
        says = ngettext("only {count} pair of hands ({names})", "only {count} pairs of hands ({names})", len(people))
        return says.format(count=len(people), names=listed(person.name for person in people))

    def _resource(self, key: str) -> str:
        if key == CAMERA:
            return _("one camera for {tasks}").format(tasks=self._dishes(self._users(key)))
        appliance = self.asked.kitchen.appliance(key)
        if appliance is None:
            return resource_text(self.asked, key)
        users = self._users(key)
        if appliance.kind is ApplianceKind.OVEN:
            return self._oven(appliance, users)
        if appliance.kind is ApplianceKind.TOOL:
            says = _("one {tool} for {tasks}, washed for {time} between dishes")
            time = duration_text(appliance.change_minutes)
            return says.format(tool=appliance.name, tasks=self._named(users), time=time)
        says = _("the {appliance} with room for {count}, for {tasks}")
        return says.format(appliance=appliance.name, count=appliance.places, tasks=self._named(users))

    def _users(self, key: str) -> list[Task]:
        return [task for task in self.clash.question.tasks if task.may_use(key)]

    def _dishes(self, tasks: Sequence[Task]) -> str:
        dishes = dict.fromkeys(self.asked.work.activities[task.key].dish for task in tasks)
        return listed(dish_number(self.binder, dish) for dish in dishes if dish is not None)

    def _named(self, tasks: Sequence[Task]) -> str:
        names = list(dict.fromkeys(activity_text(self.binder, self.asked.work.activities[one.key]) for one in tasks))
        return _shortened(names)

    def _oven(self, oven: Appliance, tasks: Sequence[Task]) -> str:
        """`oven at 220 °C for dish 2 and at 150 °C for dish 5, both before 11:00`."""
        degrees = dict.fromkeys(task.state for task in tasks)
        parts = [
            _("at {degrees} for {tasks}").format(
                degrees=temperature_short(self.binder, state),
                tasks=self._dishes([one for one in tasks if one.state == state])
                or self._named([one for one in tasks if one.state == state]),
            )
            for state in degrees
        ]
        says = _("{oven} {parts}, {when}") if self._when(tasks) else _("{oven} {parts}")
        return says.format(oven=oven.name, parts=listed(parts), when=self._when(tasks))

    def _when(self, tasks: Sequence[Task]) -> str:
        """By when tasks must be over, where anything says so."""
        ends = [self.windows[task.key][1] for task in tasks]
        if not ends or max(ends) >= self.asked.clock.end:
            return ""
        time = self._moment(self.asked.wall(max(ends)))
        if len(tasks) == 2:  # noqa: PLR2004 - “both”
            return _("both before {time}").format(time=time)
        return _("all before {time}").format(time=time) if len(tasks) > 1 else _("before {time}").format(time=time)


def _shortened(names: Sequence[str]) -> str:
    """Names as a sentence lists them, of many only the first."""
    more = len(names) - _MOST_NAMED
    return listed(names if more <= 0 else [*names[:_MOST_NAMED], _("{count} more").format(count=more)])
