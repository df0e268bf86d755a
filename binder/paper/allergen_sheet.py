"""The allergens of a shoot: a matrix of dishes and allergens in shapes, and below it each dish in words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.safety import recipe_allergens
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.wording import _, listed
from binder.paper.block import Text, text
from binder.paper.card_safety import no_allergens_text
from binder.paper.cell import Cell, Column, cell
from binder.paper.list_pages import Section, Sheet
from binder.paper.mark import Shape, marked
from binder.paper.ruling import GAP
from binder.paper.run import Run
from binder.paper.sheet_words import shoot_words, titled
from binder.paper.table import Table, table

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Dish
    from binder.paper.block import Block
    from binder.paper.job import Job
    from binder.paper.list_type import ListType

_WORDS = 9.0
"""The column of allergens is at least so many times the type size wide; further dishes come in another matrix."""


def allergen_sheet(job: Job) -> Sheet:
    """The allergens of a shoot."""
    binder, style = job.binder, job.list_type()
    under = (text(shoot_words(binder, job.shoot), style.plain),)
    dishes = binder.dishes.where("shoot", job.shoot)
    if not dishes:
        none = text(_("The shoot has no dishes yet: add the first."), style.plain)
        return Sheet(_("Allergens"), under, [Section(before=(none,))], style)
    most = _most_beside(job, style)
    parts = [dishes[at : at + most] for at in range(0, len(dishes), most)]
    sections = [Section(table=_matrix(binder, part, style)) for part in parts]
    sections[-1].after = (
        marked(Shape.SQUARE, text(_("a food in the dish names it"), style.plain), style.plain),
        marked(
            Shape.DASH, text(_("no food in the dish names it: read the labels all the same"), style.plain), style.plain
        ),
    )
    words = tuple(_in_words(binder, dish, style) for dish in dishes)
    tell = text(_("Tell everyone who tastes."), style.strong)
    return Sheet(_("Allergens"), under, [*sections, Section(_("Dish by dish"), before=(*words, tell))], style)


def _most_beside(job: Job, style: ListType) -> int:
    """How many dishes a matrix has room for."""
    width = job.paper.points[0] - 2 * job.paper.margin
    column = text("88", style.strong).natural_width() + GAP
    return max(1, int((width - _WORDS * style.plain.size) // column))


def _matrix(binder: Binder, dishes: Sequence[Dish], style: ListType) -> Table:
    """A row for each allergen that any dish has, a column for each dish by its running number."""
    carried = {dish.id: {one.group for one in recipe_allergens(binder, dish.recipe)} for dish in dishes}
    groups = sorted(set().union(*carried.values()))
    columns = (
        Column(_("allergen"), head=True),
        *(Column(str(dish.position + 1), figure=True, strong=True) for dish in dishes),
    )
    rows = [
        (
            cell(titled(group), style.lead),
            *(
                Cell(shape=Shape.SQUARE if group in carried[dish.id] else Shape.DASH, size=style.strong.size)
                for dish in dishes
            ),
        )
        for group in groups
    ]
    none = (cell(_("none is named"), style.lead), *(cell("", style.plain) for _dish in dishes))
    return table(columns, rows or [none], style, _("Allergens by dish"))


def _in_words(binder: Binder, dish: Dish, style: ListType) -> Block:
    """A dish with its allergens and the foods that carry them."""
    carried = recipe_allergens(binder, dish.recipe)
    named = listed(f"{one.group} ({', '.join(one.foods)})" for one in carried)
    says = _("contains {allergens}.").format(allergens=named)
    name = Run(f"{dish.position + 1} {dish_name(binder, dish)}: ", style.lead)
    return Text((name, Run(says if carried else no_allergens_text(binder.settings.allergens), style.plain)))
