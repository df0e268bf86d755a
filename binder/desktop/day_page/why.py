"""Why an activity is where it is: what it waits for, how long it is fit, who does it. Plain Python."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.day_page.cautions import caution_spoken, cautions_of, in_full
from binder.figures.date_text import day_time_text, span_text
from binder.figures.day_activities import step_of
from binder.figures.duration_text import duration_text
from binder.figures.plan_question import RUNNING_ORDER
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from collections.abc import Iterator

    from binder.desktop.day_page.bars import Bar
    from binder.desktop.day_page.day_picture import DayPicture
    from binder.figures.plan_question import Gap
    from binder.kitchen.binder import Binder

_MOST_REASONS = 3


def title_of(binder: Binder, bar: Bar) -> str:
    """What it is: `Fry, 2 Herb fritters, swap-out`."""
    activity = bar.activity
    if activity.dish is None:
        step = binder.steps.get(activity.step or "")
        made = binder.recipes[step.recipe].name if step is not None else ""
        return ", ".join(part for part in (activity.name, made) if part)
    dish = f"{bar.number} {dish_name(binder, binder.dishes[activity.dish])}"
    if activity.build is None:
        return _("The close of {dish}").format(dish=dish)
    return ", ".join([activity.name, dish, _(binder.builds[activity.build].kind.value)])


def when_text(picture: DayPicture, bar: Bar) -> str:
    """When it is: `10:18 AM–10:32 AM, Ode`, with the day where that is not the day of the shoot."""
    start, end = picture.wall(bar.start), picture.wall(bar.end)
    clock = span_text(picture.binder, start.time(), end.time())
    day = "" if start.date() == picture.plan.asked.clock.on else picture.day_name(start.date())
    who = listed(names_of(picture, bar)) if bar.people else ""
    return ", ".join(part for part in (" ".join(part for part in (day, clock) if part), who) if part)


def names_of(picture: DayPicture, bar: Bar) -> list[str]:
    """Who does it."""
    people = {person.id: person.name for person in picture.plan.asked.kitchen.people}
    return [people[person] for person in bar.people if person in people]


def reasons(picture: DayPicture, bar: Bar) -> list[str]:
    """Why it is where it is, in short sentences, what holds it back last first."""
    found: list[str] = []
    if bar.done:
        found.append(_("has begun"))
    elif bar.pinned:
        found.append(_("pinned to {time}").format(time=picture.clock(bar.start)))
    found += list(_waits(picture, bar))[:_MOST_REASONS]
    found += list(_after_it(picture, bar))
    return found


def _waits(picture: DayPicture, bar: Bar) -> Iterator[str]:
    """What it waits for, the latest first."""
    binder, question = picture.binder, picture.plan.asked.question
    waited = [gap for gap in question.gaps if gap.after == bar.key and step_of(gap.before) in picture.bars]
    ready = {gap: picture.bars[step_of(gap.before)].end + gap.least for gap in waited}
    says = (
        _one_wait(binder, gap, picture.bars[step_of(gap.before)], bar)
        for gap in sorted(waited, key=lambda gap: -ready[gap])
    )
    yield from dict.fromkeys(says)


def _one_wait(binder: Binder, gap: Gap, before: Bar, bar: Bar) -> str:
    if gap.key == RUNNING_ORDER:
        dish = binder.dishes[before.activity.dish or ""]
        says = _("after {dish} and {minutes} to reset")
        return says.format(dish=dish_name(binder, dish), minutes=duration_text(gap.least))
    what = before.activity.name if before.activity.dish == bar.activity.dish else title_of(binder, before)
    if gap.least:
        return _("waits for: {what}, {minutes}").format(what=what, minutes=duration_text(gap.least))
    return _("after: {what}").format(what=what)


def _after_it(picture: DayPicture, bar: Bar) -> Iterator[str]:
    """What becomes of it: a wait, and how long its result is fit."""
    if bar.ready > bar.end:
        says = _("then waits {minutes}, ready at {time}")
        yield says.format(minutes=duration_text(bar.ready - bar.end), time=_clock(picture, bar.ready, bar))
    if bar.fresh_until is not None:
        yield _("fresh until {time}").format(time=_clock(picture, bar.fresh_until, bar))


def _clock(picture: DayPicture, minute: int, bar: Bar) -> str:
    """A time of day, with its day where that is another."""
    moment = picture.wall(minute)
    same = moment.date() == picture.wall(bar.start).date()
    return picture.clock(minute) if same else day_time_text(picture.binder, moment)


def why_text(picture: DayPicture, bar: Bar) -> str:
    """All of it in lines, for a hover."""
    first = [title_of(picture.binder, bar), when_text(picture, bar)]
    why = [one[:1].upper() + one[1:] + "." for one in reasons(picture, bar)]
    hazards = in_full(cautions_of(picture.binder, bar.activity))
    return "\n".join([*first, *why, *([hazards] if hazards else [])])


def heard(picture: DayPicture, bar: Bar) -> str:
    """All of it in one line, for those who hear it."""
    hazards = caution_spoken(cautions_of(picture.binder, bar.activity))
    parts = [title_of(picture.binder, bar), when_text(picture, bar), *reasons(picture, bar), hazards]
    return ". ".join(part for part in parts if part)
