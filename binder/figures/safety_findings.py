"""What a plan says about safety beside its clocks: temperatures, cooling, thawing, raw before ready, reheating."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from binder.figures.date_text import moment_text
from binder.figures.day_activities import ActivityKind
from binder.figures.day_words import activity_text, dish_title
from binder.figures.duration_text import duration_text
from binder.figures.exposure import Where, is_heated, threads
from binder.figures.missing import Place
from binder.figures.safety import DonenessNeeded, doneness_needed
from binder.figures.safety_clocks import clock_text, safety_clocks, thread_text
from binder.figures.temperature_text import doneness_text, temperature_text
from binder.figures.thawing import thaw_text, thaws
from binder.kitchen.reference import Doneness, cautions, deference, time_limits
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from collections.abc import Iterator

    from binder.figures.day_activities import Activity
    from binder.figures.day_plan import DayPlan, PlannedActivity
    from binder.figures.exposure import Thread
    from binder.kitchen.binder import Binder
    from binder.kitchen.conversion import Conversion

_RAW = {"raw_poultry", "raw_meat", "raw_fish", "raw_shellfish", "raw_egg"}
"""Hazards of steps that handle what is cooked before it is eaten."""

COOLING, REHEATING = "cooling", "reheating"
"""The hazards by which steps and conversions say that something is cooled, or heated again."""


class SafetyKind(StrEnum):
    """What a finding is about."""

    OUT_OF_COLD = "out of the cold"
    DONENESS = "core temperature"
    COOLING = "cooling"
    THAWING = "thawing"
    RAW_FIRST = "raw before ready to eat"
    REHEATING = "reheating"


@dataclass(frozen=True)
class SafetyFinding:
    """One thing to see to, in sentences with its source. `over`: a limit is broken; else it is to be kept in mind."""

    kind: SafetyKind
    place: Place
    where: str
    says: str
    over: bool


def safety_findings(binder: Binder, shoot_id: str, plan: DayPlan) -> tuple[SafetyFinding, ...]:
    """Everything a plan says about safety: what is over a limit first."""
    found = [
        *_clocks(binder, shoot_id, plan),
        *_raw_first(plan),
        *_cooling(plan),
        *_reheating(plan),
        *_thawing(binder, shoot_id, plan),
        *_doneness(binder, shoot_id),
    ]
    return tuple(sorted(dict.fromkeys(found), key=lambda finding: not finding.over))


def _place(binder: Binder, thread: Thread) -> tuple[Place, str]:
    if thread.dish is None:
        return Place("recipes", thread.key), binder.recipes[thread.key].name
    return Place("dishes", thread.dish), dish_title(binder, thread.dish)


def _clocks(binder: Binder, shoot_id: str, plan: DayPlan) -> Iterator[SafetyFinding]:
    for clock in safety_clocks(binder, shoot_id, plan):
        if clock.over:
            place = Place("dishes", clock.dish) if clock.dish else Place("recipes", clock.thread)
            says = clock_text(binder, clock, shoot_id)
            yield SafetyFinding(SafetyKind.OUT_OF_COLD, place, clock.name, says, over=True)


def _doneness(binder: Binder, shoot_id: str) -> Iterator[SafetyFinding]:
    """The core temperatures of what a dish cooks or reheats, foods of one rule together."""
    for dish in binder.dishes.where("shoot", shoot_id):
        by_rule: dict[Doneness, list[DonenessNeeded]] = {}
        for needed in doneness_needed(binder, dish.recipe):
            by_rule.setdefault(needed.rule, []).append(needed)
        for rule, group in by_rule.items():
            foods = listed(needed.food for needed in group)
            says = _doneness_text(binder, rule, f"{dish_title(binder, dish.id)}: {foods}")
            over = not all(needed.stated for needed in group)
            yield SafetyFinding(
                SafetyKind.DONENESS, Place("dishes", dish.id), dish_title(binder, dish.id), says, over=over
            )


def _doneness_text(binder: Binder, rule: Doneness, what: str) -> str:
    says = _("{what}: cook {sign} ({source}). {deference}")
    if rule.celsius is not None:
        says = _("{what}: cook to {temperature} at the core ({source}). {deference}")
    temperature = doneness_text(binder, rule)
    return says.format(what=what, sign=rule.sign, temperature=temperature, source=rule.source, deference=deference())


def _cooling(plan: DayPlan) -> Iterator[SafetyFinding]:
    """Cooked food that is chilled, build by build: by when it must be how cold; over where it stands about longer."""
    first, total = time_limits()["cooling_stage_1"], time_limits()["cooling_total"]
    for thread in threads(plan):
        place, where = _place(plan.asked.binder, thread)
        name = thread_text(plan.asked.binder, thread)
        for hot_until, cold_from in _chilled(thread):
            by_first, by_total = (hot_until + round(limit.minutes or 0) for limit in (first, total))
            says = _(
                "{name}: cool from {hot} to {cool} by {by_first} and to {cold} by {by_total} ({source}). {deference}"
            )
            shown = _cooling_text(plan, says, name, by_first=_at(plan, by_first), by_total=_at(plan, by_total))
            yield SafetyFinding(SafetyKind.COOLING, place, where, shown, over=cold_from > by_first)
    for conversion in _cooled_conversions(plan):
        says = _(
            "{name}: cool from {hot} to {cool} within {by_first} and to {cold} within {by_total} in all ({source}). "
            "{deference}"
        )
        within = {"by_first": duration_text(first.minutes or 0), "by_total": duration_text(total.minutes or 0)}
        shown = _cooling_text(plan, says, conversion.name, **within)
        place = Place("conversions", conversion.id)
        yield SafetyFinding(SafetyKind.COOLING, place, conversion.name, shown, over=False)


def _cooling_text(plan: DayPlan, says: str, name: str, **by: str) -> str:
    binder, limits = plan.asked.binder, time_limits()
    hot, cool, cold = (
        temperature_text(binder, limits[key].celsius or 0) for key in ("hot_hold", "cooling_stage_1", "cooling_total")
    )
    source = limits["cooling_total"].source
    return says.format(name=name, hot=hot, cool=cool, cold=cold, source=source, deference=deference(), **by)


def _chilled(thread: Thread) -> Iterator[tuple[int, int]]:
    """Until when food that needs temperature control is hot, and from when it then is in the cold."""
    hot_until: int | None = None
    for one in thread.stretches if thread.joins else ():
        if one.where is Where.HEAT:
            hot_until = one.end
        elif one.where is Where.COLD and hot_until is not None:
            yield hot_until, one.start
            hot_until = None


def _cooled_conversions(plan: DayPlan) -> Iterator[Conversion]:
    """Conversions that name the hazard of cooling and give what keeps cold."""
    binder = plan.asked.binder
    for one in plan.activities:
        conversion = binder.conversions[one.activity.conversion] if one.activity.conversion else None
        if conversion is not None and COOLING in conversion.hazards:
            forms = [binder.foods[outcome.form] for outcome in binder.outcomes.where("conversion", conversion.id)]
            if any(form.temperature_control for form in forms):
                yield conversion


def _at(plan: DayPlan, minute: int) -> str:
    return moment_text(plan.asked.binder, plan.asked.wall(minute), plan.asked.clock.on)


def _reheating(plan: DayPlan) -> Iterator[SafetyFinding]:
    """What is reheated, and what more than once: in a build, or already in what it is made from."""
    binder, caution = plan.asked.binder, cautions()[REHEATING]
    counts: dict[str, int] = {}
    for thread in threads(plan):
        made = [key for one in thread.steps for key in plan.asked.work.foods.get(one.key, ()) if key in counts]
        own = sum(REHEATING in binder.steps[one.step or ""].hazards for one in thread.steps)
        counts[thread.key] = own + max((counts[key] for key in made), default=0)
        if own:
            place, name = _place(binder, thread)
            over = counts[thread.key] > 1
            says = _("{name} is reheated more than once.") if over else _("{name} is reheated.")
            shown = f"{says.format(name=name)} {caution.text} ({caution.source}). {deference()}"
            yield SafetyFinding(SafetyKind.REHEATING, place, name, shown, over=over)


def _raw_first(plan: DayPlan) -> Iterator[SafetyFinding]:
    """Equipment that raw food was on when the next thing on it is eaten as it is; tools that are washed are not."""
    last: dict[str, PlannedActivity | None] = {}
    ready = {step.key for thread in threads(plan) for step in _eaten_as_it_is(plan, thread)}
    washed = {tool.name.casefold() for tool in plan.asked.kitchen.appliances if tool.change_minutes > 0}
    for one in plan.activities:
        if one.activity.kind is ActivityKind.WAIT:
            continue
        for name in _equipment(plan, one.activity):
            raw = last.get(name.casefold())
            if raw is not None and one.activity.key in ready and name.casefold() not in washed:
                yield _raw_finding(plan, name, raw, one)
            last[name.casefold()] = one if _handles_raw(plan, one.activity) else None


def _equipment(plan: DayPlan, activity: Activity) -> tuple[str, ...]:
    binder = plan.asked.binder
    if activity.conversion is not None:
        return binder.conversions[activity.conversion].equipment
    return binder.steps[activity.step].equipment if activity.step is not None else ()


def _handles_raw(plan: DayPlan, activity: Activity) -> bool:
    """Whether raw animal food is handled cold: what goes straight into a hot pan leaves nothing behind."""
    binder = plan.asked.binder
    if activity.conversion is not None:
        return bool(_RAW.intersection(binder.conversions[activity.conversion].hazards))
    step = binder.steps[activity.step] if activity.step is not None else None
    return step is not None and not is_heated(step) and bool(_RAW.intersection(step.hazards))


def _eaten_as_it_is(plan: DayPlan, thread: Thread) -> Iterator[Activity]:
    """The steps of a thread after which nothing heats it any more."""
    heated = [at for at, one in enumerate(thread.steps) if is_heated(plan.asked.binder.steps[one.step or ""])]
    later = heated[-1] + 1 if heated else 0
    made_on = thread.dish is None
    yield from (one for one in thread.steps[later:] if not made_on and not _handles_raw(plan, one))


def _raw_finding(plan: DayPlan, name: str, raw: PlannedActivity, ready: PlannedActivity) -> SafetyFinding:
    binder = plan.asked.binder
    step = binder.steps[raw.activity.step] if raw.activity.step else None
    hazards = step.hazards if step else binder.conversions[raw.activity.conversion or ""].hazards
    source = next(cautions()[hazard].source for hazard in hazards if hazard in _RAW)
    says = _(
        "“{equipment}” has had raw food on it ({raw}, {raw_at}) when it is used for {ready} at {ready_at}, which is "
        "not cooked after that: wash and sanitise it in between, or take another ({source}). {deference}"
    ).format(
        equipment=name,
        raw=activity_text(binder, raw.activity),
        raw_at=moment_text(binder, raw.start, plan.asked.clock.on),
        ready=activity_text(binder, ready.activity),
        ready_at=moment_text(binder, ready.start, plan.asked.clock.on),
        source=source,
        deference=deference(),
    )
    place = Place("steps", ready.activity.step or "")
    return SafetyFinding(SafetyKind.RAW_FIRST, place, name, says, over=True)


def _thawing(binder: Binder, shoot_id: str, plan: DayPlan) -> Iterator[SafetyFinding]:
    """When what is frozen goes into the refrigerator, by its weight, and how long cold water takes instead."""
    for thaw in thaws(binder, shoot_id, plan):
        place, name = Place("foods", thaw.food), binder.foods[thaw.food].name
        says = thaw_text(binder, thaw, plan.asked.clock.on)
        yield SafetyFinding(SafetyKind.THAWING, place, name, says, over=thaw.too_late)
