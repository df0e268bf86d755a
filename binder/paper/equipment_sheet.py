"""What must be on the set: equipment with who uses it, ovens and oil with their temperatures, bowls by their size."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from binder.figures.base import base_balance
from binder.figures.mise import made_ahead
from binder.figures.temperature_text import temperature_text
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.recipe import Heat
from binder.kitchen.wording import _
from binder.paper.block import text
from binder.paper.card_words import heat_text
from binder.paper.cell import Cell, Column, cell
from binder.paper.containers_needed import containers_needed
from binder.paper.list_pages import Section, Sheet
from binder.paper.mark import Shape
from binder.paper.sheet_words import shoot_words
from binder.paper.table import Table, table

if TYPE_CHECKING:
    from collections.abc import Iterator

    from binder.figures.day_plan import DayPlan
    from binder.kitchen.binder import Binder
    from binder.kitchen.recipe import Step
    from binder.paper.job import Job
    from binder.paper.list_type import ListType


@dataclass
class _Piece:
    """A piece of equipment, who uses it, and by which keys the day plan knows its users."""

    name: str
    users: dict[str, None] = field(default_factory=dict)
    steps: set[str] = field(default_factory=set)


def equipment_sheet(job: Job) -> Sheet:
    """The equipment and the containers of a shoot."""
    binder, shoot_id, style = job.binder, job.shoot, job.list_type()
    pieces = _pieces(binder, shoot_id)
    sections = [
        Section(table=one)
        for one in (
            _equipment(pieces, job.plan, style),
            _heats(binder, shoot_id, style),
            _appliances(binder, shoot_id, style),
            _containers(binder, shoot_id, style),
        )
        if one is not None
    ]
    if not sections:
        sections = [Section(before=(text(_("No step names equipment, and nothing is set out yet."), style.plain),))]
    elif sections[-1].table and sections[-1].table.name == _("Containers"):
        says = _("One container a build for each thing set out, filled to three quarters at most.")
        sections[-1].after = (text(says, style.label),)
    return Sheet(_("Equipment and containers"), (text(shoot_words(binder, shoot_id), style.plain),), sections, style)


def _pieces(binder: Binder, shoot_id: str) -> list[_Piece]:
    found: dict[str, _Piece] = {}
    for user, step_id, names in _used(binder, shoot_id):
        for name in names:
            piece = found.setdefault(" ".join(name.casefold().split()), _Piece(name))
            piece.users[user] = None
            piece.steps.add(step_id)
    return [found[key] for key in sorted(found)]


def _used(binder: Binder, shoot_id: str) -> Iterator[tuple[str, str, tuple[str, ...]]]:
    """Who uses which equipment: conversions, what is made ahead, dishes step by step."""
    balance = base_balance(binder, shoot_id)
    for run in balance.runs if balance else ():
        conversion = binder.conversions[run.conversion]
        yield conversion.name, conversion.id, conversion.equipment
    for user, step in steps_of(binder, shoot_id):
        yield user, step.id, step.equipment


def steps_of(binder: Binder, shoot_id: str) -> Iterator[tuple[str, Step]]:
    """Every step of a shoot with whose it is: what is made ahead by its name, a dish by its number and name."""
    for recipe in made_ahead(binder, shoot_id):
        for step in binder.steps.where("recipe", recipe):
            yield binder.recipes[recipe].name, step
    for dish in binder.dishes.where("shoot", shoot_id):
        for step in binder.steps.where("recipe", dish.recipe):
            yield f"{dish.position + 1} {dish_name(binder, dish)}", step


def _equipment(pieces: list[_Piece], plan: DayPlan | None, style: ListType) -> Table | None:
    if not pieces:
        return None
    columns = (
        Column("", figure=True, head=True),
        Column(_("at once"), figure=True, head=True),
        Column(_("what"), head=True),
        Column(_("for"), share=1.6),
    )
    rows = [
        (
            Cell(shape=Shape.TICK_BOX, size=style.lead.size),
            cell("" if plan is None else str(max(1, _at_once(piece.steps, plan))), style.lead),
            cell(piece.name, style.lead),
            cell(" · ".join(piece.users), style.plain),
        )
        for piece in pieces
    ]
    return table(columns, rows, style, _("Equipment"))


def _at_once(steps: set[str], plan: DayPlan) -> int:
    """How many activities of some steps the plan has under way at one moment at most, their waits included."""
    spans = [
        (one.start, one.end)
        for one in plan.activities
        if (one.activity.step in steps or one.activity.conversion in steps) and one.end > one.start
    ]
    moments = sorted([(start, 1) for start, _end in spans] + [(end, -1) for _start, end in spans])
    most = under_way = 0
    for _moment, change in moments:
        under_way += change
        most = max(most, under_way)
    return most


def _heats(binder: Binder, shoot_id: str, style: ListType) -> Table | None:
    """Ovens and oil, with what they are heated to for whom."""
    found: dict[tuple[str, float], dict[str, None]] = {}
    for user, step in steps_of(binder, shoot_id):
        if step.heat in {Heat.OVEN, Heat.OIL} and step.celsius is not None:
            found.setdefault((heat_text(step.heat), step.celsius), {})[user] = None
    if not found:
        return None
    columns = (Column(_("heat"), head=True, share=0.5), Column("", head=True, share=0.8), Column(_("for"), share=1.6))
    rows = [
        (
            cell(name, style.lead),
            cell(temperature_text(binder, celsius), style.lead),
            cell(" · ".join(users), style.plain),
        )
        for (name, celsius), users in sorted(found.items())
    ]
    return table(columns, rows, style, _("Ovens and oil"))


def _appliances(binder: Binder, shoot_id: str, style: ListType) -> Table | None:
    """What the kitchen has, as the shoot names it."""
    own = binder.appliances.where("shoot", shoot_id)
    if not own:
        return None
    columns = (Column(_("places"), figure=True, head=True), Column(_("what"), head=True), Column(_("is"), share=1.0))
    rows = [
        (cell(str(one.places), style.lead), cell(one.name, style.lead), cell(one.kind.value, style.plain))
        for one in own
    ]
    return table(columns, rows, style, _("What the kitchen has"))


def _containers(binder: Binder, shoot_id: str, style: ListType) -> Table | None:
    needed = containers_needed(binder, shoot_id)
    if not needed:
        return None
    columns = (
        Column("", figure=True, head=True),
        Column(_("how many"), figure=True, head=True),
        Column(_("holds"), share=0.5, head=True),
        Column(_("for"), share=2.0),
    )
    rows = [
        (
            Cell(shape=Shape.TICK_BOX, size=style.lead.size),
            cell(str(one.count), style.lead),
            cell(one.size.name if one.size else _("size not known"), style.lead),
            cell(", ".join(f"{food} ×{count}" if count > 1 else food for food, count in one.foods), style.plain),
        )
        for one in needed
    ]
    return table(columns, rows, style, _("Containers"))
