"""The call sheet: when everyone is where, what happens at fixed times, the hazards, and lines to fill in by hand."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.date_text import date_text, moment_text, time_text
from binder.figures.duration_text import duration_text
from binder.figures.safety import recipe_allergens, step_cautions
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.reference import deference
from binder.kitchen.wording import _, listed
from binder.paper.arrangement import Space
from binder.paper.block import Text, text
from binder.paper.cell import Cell, Column, cell
from binder.paper.fill_in import FillIn
from binder.paper.list_pages import Section, Sheet
from binder.paper.mark import Shape, marked
from binder.paper.plan_words import clock
from binder.paper.run import Run
from binder.paper.running_order_sheet import filmed_spans
from binder.paper.script import UNBROKEN_SPACE
from binder.paper.table import Table, table

if TYPE_CHECKING:
    from collections.abc import Iterator

    from binder.kitchen.binder import Binder
    from binder.kitchen.day import Person
    from binder.kitchen.reference import Caution
    from binder.paper.block import Block
    from binder.paper.job import Job
    from binder.paper.list_type import ListType
    from binder.paper.ruling import Row


def call_sheet(job: Job) -> Sheet:
    """The call sheet of a shoot."""
    binder, style = job.binder, job.list_type()
    shoot = binder.shoots[job.shoot]
    day = date_text(binder, shoot.on) if shoot.on else _("day not set")
    under = (text(" · ".join(part for part in (shoot.name, day) if part), style.lead), *_call(job, style))
    sections = [
        Section(_("Where"), before=tuple(FillIn(label, style.strong) for label in _places())),
        Section(table=_people(binder, job.shoot, style)),
        Section(table=_times(job, style)),
        *_dangers(binder, job.shoot, style),
    ]
    return Sheet(_("Call sheet"), under, [one for one in sections if one.before or one.table], style)


def _call(job: Job, style: ListType) -> Iterator[Block]:
    binder, shoot = job.binder, job.binder.shoots[job.shoot]
    call = _("call {time}").format(time=time_text(binder, shoot.call)) if shoot.call else _("call not set")
    yield text(call, style.title)
    wrap = shoot.wrap
    if job.plan is not None:
        yield text(_("wrap planned {moment}").format(moment=moment_text(binder, job.plan.wrap, shoot.on)), style.lead)
    elif wrap is not None:
        yield text(_("wrap {time}").format(time=time_text(binder, wrap)), style.lead)


def _places() -> tuple[str, ...]:
    """What only those on the spot know; nothing of it is kept in a binder."""
    return (
        _("Address"),
        _("Way in and parking"),
        _("Nearest emergency care, with its address"),
        _("Emergency number"),
        _("First-aid box, fire blanket, extinguisher"),
        _("Food-safety lead"),
    )


def _people(binder: Binder, shoot_id: str, style: ListType) -> Table:
    columns = (
        Column(_("name"), head=True),
        Column(_("does"), share=1.2),
        Column(_("from"), figure=True, head=True),
        Column(_("until"), figure=True),
        Column(_("telephone")),
    )
    rows = [_person(binder, shoot_id, person, style) for person in binder.people.where("shoot", shoot_id)]
    blank = tuple(cell(UNBROKEN_SPACE, style.section) for _column in columns)
    return table(columns, rows or [blank] * 5, style, _("Who"))


def _person(binder: Binder, shoot_id: str, person: Person, style: ListType) -> Row:
    shoot = binder.shoots[shoot_id]
    arrives, leaves = person.arrives or shoot.call, person.leaves or shoot.wrap
    does = [person.role, *person.skills, *([_("on camera")] if person.on_camera else [])]
    return (
        cell(person.name, style.lead),
        cell(", ".join(part for part in does if part), style.plain),
        cell(time_text(binder, arrives) if arrives else _("at call"), style.lead),
        cell(time_text(binder, leaves) if leaves else _("at wrap"), style.plain),
        cell("", style.plain),
    )


def _times(job: Job, style: ListType) -> Table | None:
    """The day at a glance: fixed events, and when the camera is on each dish."""
    binder = job.binder
    rows = [
        (
            event.at,
            (
                cell(time_text(binder, event.at), style.lead),
                cell(duration_text(event.minutes) if event.minutes else "", style.plain),
                _named(event.name, _("work stops") if event.stops_work else "", style),
            ),
        )
        for event in binder.fixed_events.where("shoot", job.shoot)
    ]
    for dish, start, end in filmed_spans(binder, job.shoot, job.plan) if job.plan else ():
        minutes = (end - start).total_seconds() / 60
        name = f"{dish.position + 1} {dish_name(binder, dish)}"
        found = (cell(clock(binder, start), style.lead), cell(duration_text(minutes), style.plain))
        rows.append((start.time(), (*found, _named(name, _("on camera"), style))))
    columns = (
        Column(_("from"), figure=True, head=True),
        Column(_("for"), figure=True),
        Column(_("what"), head=True),
    )
    ordered = [row for _at, row in sorted(rows, key=lambda pair: pair[0])]
    return table(columns, ordered, style, _("When")) if ordered else None


def _named(name: str, more: str, style: ListType) -> Cell:
    runs = [Run(name, style.lead), *([Run(f" {more}", style.label)] if more else [])]
    return Cell(tuple(runs), size=style.lead.size)


def _dangers(binder: Binder, shoot_id: str, style: ListType) -> Iterator[Section]:
    """What everyone on the set is told: the hazards of the day, and what allergens are about."""
    cautions: dict[str, Caution] = {}
    carried: dict[str, dict[str, None]] = {}
    for dish in binder.dishes.where("shoot", shoot_id):
        for step in binder.steps.where("recipe", dish.recipe):
            cautions |= {caution.hazard: caution for caution in step_cautions(step)}
        for one in recipe_allergens(binder, dish.recipe):
            carried.setdefault(one.group, {})[str(dish.position + 1)] = None
    blocks = [_caution(caution, style) for caution in cautions.values()]
    if blocks:
        yield Section(_("Hazards of the day"), before=(*blocks, Space(2), text(deference(), style.strong)))
    if carried:
        named = [
            _("{allergen} (dish {numbers})").format(allergen=group, numbers=", ".join(numbers))
            for group, numbers in carried.items()
        ]
        says = _("On the set there is {allergens}. Tell everyone who tastes.").format(allergens=listed(named))
        yield Section(_("Allergens"), before=(text(says, style.strong),))


def _caution(caution: Caution, style: ListType) -> Block:
    source = " " + _("[{source}]").format(source=caution.source)
    words = (Run(f"{caution.title}. ", style.strong), Run(caution.text, style.plain), Run(source, style.label))
    return marked(Shape.OPEN_TRIANGLE, Text(words), style.strong)
