"""A line of a recipe as cells: the line as it is typed, and in the margin its weight, cost and share."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import NOTHING, Cell, Mark, Size, Tone
from binder.desktop.words.figure_text import grams_parts, money_parts, small_money
from binder.figures.cost import LineCost, recipe_lines_cost
from binder.figures.missing import Missing
from binder.figures.portion_text import number_style
from binder.kitchen.edits.recipes import line_name
from binder.kitchen.line_text import typed_line
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.recipe import Line


def line_cells(binder: Binder, line: Line, content: int) -> tuple[Cell, ...]:
    """The cell of the line, so many columns wide, and the three of the margin."""
    text = typed_line(line, line_name(binder, line), number_style(binder))
    typed = Cell(text, edit=text, tip=_("Ctrl+Enter opens {name}").format(name=line_name(binder, line)))
    return (typed, *(NOTHING,) * (content - 1), *margin_cells(binder, line))


def margin_cells(binder: Binder, line: Line) -> tuple[Cell, Cell, Cell]:
    """What one batch's line weighs as purchased, what it costs a portion, and its share of that."""
    recipe = binder.recipes[binder.steps[line.step].recipe]
    costs = recipe_lines_cost(binder, recipe.id)
    if isinstance(costs, Missing):
        return (NOTHING, NOTHING, NOTHING)
    cost = next((one for one in costs if one.line == line.id), None)
    if cost is None or not cost.counted:
        return (
            NOTHING,
            Cell(_("to taste"), tone=Tone.QUIET, size=Size.SMALL, tip=_("To taste: no amount, so not in the cost")),
            NOTHING,
        )
    if cost.missing:
        return _missing_cells(cost)
    return (_weight(binder, cost, recipe.portions or 1.0), _cost(binder, cost), _share(cost))


def _missing_cells(cost: LineCost) -> tuple[Cell, Cell, Cell]:
    lack = cost.missing[0]
    says = "\n".join(one.says for one in cost.missing)
    return (NOTHING, Cell(_("not known"), mark=Mark.UNKNOWN, leads_to=lack.place, tip=says, spoken=says), NOTHING)


def _weight(binder: Binder, cost: LineCost, portions: float) -> Cell:
    if cost.purchased is None:
        return NOTHING
    number, unit = grams_parts(binder, cost.purchased * portions)
    return Cell(number, unit)


def _cost(binder: Binder, cost: LineCost) -> Cell:
    if not cost.cost:
        return Cell(_("free"), tone=Tone.QUIET)
    number, currency = money_parts(small_money(binder, cost.cost))
    return Cell(number, currency)


def _share(cost: LineCost) -> Cell:
    if cost.share is None:
        return NOTHING
    percent = round(cost.share * 100)
    return Cell(str(percent) if percent or not cost.share else "<1", "%")
