"""The base sheet: how far the base ingredient goes, form by form and dish by dish, and how its forms are made."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.base import base_balance
from binder.figures.base_repairs import base_repairs, bottleneck
from binder.figures.date_text import date_text, time_text
from binder.figures.duration_text import duration_text
from binder.figures.leads import shoot_leads
from binder.figures.not_known import not_known_text
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.reference import cautions, deference
from binder.kitchen.wording import _, listed
from binder.paper.arrangement import Space, Stack
from binder.paper.block import Block, Text, text
from binder.paper.cell import Cell, Column, cell
from binder.paper.list_pages import Section, Sheet
from binder.paper.list_type import ON_THE_DESK
from binder.paper.mark import Shape, base_state, marked, state
from binder.paper.run import Run
from binder.paper.sheet_words import grams, shoot_words
from binder.paper.table import Table, table

if TYPE_CHECKING:
    from datetime import datetime

    from binder.figures.base import BaseBalance, FormBalance
    from binder.figures.base import Run as ConversionRun
    from binder.kitchen.binder import Binder
    from binder.kitchen.reference import Caution
    from binder.paper.job import Job
    from binder.paper.list_type import ListType


def base_sheet(job: Job) -> Sheet:
    """The base sheet of a shoot."""
    binder, shoot_id, style = job.binder, job.shoot, job.list_type(ON_THE_DESK)
    balance = base_balance(binder, shoot_id)
    under = [text(shoot_words(binder, shoot_id), style.plain)]
    if balance is None:
        none = text(_("The shoot has no base ingredient: choose one."), style.plain)
        return Sheet(_("Base"), under, [Section(before=(none,))], style)
    sections = [
        Section(balance.name, before=_balance(binder, shoot_id, balance, style)),
        Section(table=_forms(binder, balance, style)),
        Section(table=_dishes(binder, balance, style)),
    ]
    if balance.runs:
        starts = {lead.conversion: lead.starts for lead in shoot_leads(binder, shoot_id)}
        made: list[Block] = [_made(binder, run, starts.get(run.conversion), style) for run in balance.runs]
        if any(binder.conversions[run.conversion].hazards for run in balance.runs):
            made.append(text(deference(), style.strong))
        sections.append(Section(_("How the forms are made"), before=made))
    return Sheet(_("Base"), under, sections, style)


def _balance(binder: Binder, shoot_id: str, balance: BaseBalance, style: ListType) -> tuple[Block, ...]:
    shape, word = base_state(balance.verdict)
    blocks: list[Block] = [state(shape, word, style.section)]
    if balance.left is not None:
        left = _("left {grams}") if balance.left >= 0 else _("short by {grams}")
        figures = (
            _("there is {grams}").format(grams=grams(binder, balance.there_is or 0.0)),
            _("needed {grams}").format(grams=grams(binder, balance.needed or 0.0)),
            left.format(grams=grams(binder, abs(balance.left))),
        )
        blocks.append(text(" · ".join(figures), style.strong))
    short = bottleneck(binder, shoot_id)
    if short:
        blocks.append(text(short.says, style.strong))
        blocks.append(text(_("Any one of these mends it:"), style.plain))
        blocks += [
            marked(Shape.DOT, text(repair.says, style.plain), style.plain) for repair in base_repairs(binder, shoot_id)
        ]
    if balance.missing:
        blocks.append(text(not_known_text(binder, balance.missing), style.plain))
    return tuple(blocks)


def _forms(binder: Binder, balance: BaseBalance, style: ListType) -> Table:
    columns = (
        Column(_("form"), head=True),
        Column(_("made"), figure=True),
        Column(_("used in dishes"), figure=True),
        Column(_("made into others"), figure=True),
        Column(_("left"), figure=True),
    )
    return table(columns, [_form(binder, form, style) for form in balance.forms], style, name=_("Forms"))


def _form(binder: Binder, form: FormBalance, style: ListType) -> tuple[Cell, ...]:
    figures = (form.made, form.used, form.taken)
    return (
        cell(form.name, style.lead),
        *(cell(grams(binder, figure), style.plain) for figure in figures),
        cell(grams(binder, form.left), style.strong),
    )


def _dishes(binder: Binder, balance: BaseBalance, style: ListType) -> Table:
    names = {form.form: form.name for form in balance.forms}
    columns = (Column(_("no."), figure=True, head=True), Column(_("dish"), head=True), Column(_("uses"), share=1.6))
    rows = []
    for dish_id, forms in balance.by_dish.items():
        dish = binder.dishes[dish_id]
        uses = " · ".join(f"{grams(binder, weight)} {names[form]}" for form, weight in forms.items())
        number, name = cell(str(dish.position + 1), style.strong), cell(dish_name(binder, dish), style.lead)
        rows.append((number, name, cell(uses or _("none of the base"), style.plain)))
    return table(columns, rows, style, name=_("Dishes"))


def _made(binder: Binder, run: ConversionRun, starts: datetime | None, style: ListType) -> Stack:
    """One conversion: what it takes and gives, when it starts at the latest, how long it takes, how it is done."""
    conversion = binder.conversions[run.conversion]
    taken = [_part(binder, conversion.takes, run.grams)]
    taken += [_part(binder, a.food, a.ratio * run.grams) for a in binder.additions.where("conversion", conversion.id)]
    out = [_part(binder, o.form, o.ratio * run.grams) for o in binder.outcomes.where("conversion", conversion.id)]
    times = (
        (conversion.hands_on_minutes, _("{time} hands on")),
        (conversion.lead_minutes, _("{time} from start to ready")),
    )
    said = [says.format(time=duration_text(minutes)) for minutes, says in times if minutes > 0]
    head = f"{listed(taken)} → {listed(out)}"
    blocks: list[Block] = [Text((Run(run.name, style.lead), Run(f": {head}", style.strong)))]
    if starts is not None:
        blocks.append(text(_("start at the latest {moment}").format(moment=_moment(binder, starts)), style.strong))
    if said or conversion.equipment:
        blocks.append(text(" · ".join([*said, *conversion.equipment]), style.plain))
    blocks += [text(conversion.text, style.plain)] if conversion.text else []
    blocks += [_caution(cautions()[hazard], style) for hazard in conversion.hazards if hazard in cautions()]
    return Stack((*blocks, Space(3)))


def _caution(caution: Caution, style: ListType) -> Block:
    source = " " + _("[{source}]").format(source=caution.source)
    words = (Run(f"{caution.title}. ", style.strong), Run(caution.text, style.plain), Run(source, style.label))
    return marked(Shape.OPEN_TRIANGLE, Text(words), style.strong)


def _moment(binder: Binder, moment: datetime) -> str:
    return f"{date_text(binder, moment.date())}, {time_text(binder, moment.time())}"


def _part(binder: Binder, food: str, weight: float) -> str:
    return f"{grams(binder, weight)} {binder.foods[food].name}"
