"""What stands in front of the cook: a row for each line of a recipe, weight first."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.kitchen.wording import _
from binder.paper.arrangement import Beside, Space, Stack
from binder.paper.block import Block, Text, text
from binder.paper.card_type import figure_runs
from binder.paper.card_words import kinds_text, measure_text
from binder.paper.run import Run, unbroken

if TYPE_CHECKING:
    from binder.figures.card import Containers, SetAmount
    from binder.paper.card_type import CardType

_BETWEEN_ROWS = 3.0
"""Points of white between rows."""


def containers_block(row: Containers, style: CardType) -> Stack:
    """One line set out: weight first, then the food, the cook's measure, its preparation; at the right how many.

    Where builds take different amounts, each amount has a line of its own with whose it is, and the food comes last.
    """
    after = ", ".join(part for part in (row.preparation, row.note, _("garnish") if row.garnish else "") if part)
    if len(row.amounts) == 1:
        return Stack((_one_amount(row.food, row.amounts[0], after, style), Space(_BETWEEN_ROWS)))
    food = Text((Run(row.food, style.lead), *([Run(" " + after, style.after)] if after else [])))
    amounts = (_whose_amount(found, style) for found in row.amounts)
    return Stack((*amounts, food, Space(_BETWEEN_ROWS)))


def _one_amount(food: str, found: SetAmount, after: str, style: CardType) -> Block:
    weight, measure = found.amount.weight, measure_text(found.amount.measure)
    runs = [*figure_runs(weight or measure, style.figure, style.plain), Run(f" {food}", style.lead)]
    rest = [part for part in (unbroken(measure) if weight else "", after) if part]
    runs += [Run(" " + " · ".join(rest), style.after)] if rest else []
    count = len(found.kinds)
    if count < 2:  # noqa: PLR2004 - one container needs no count
        return Text(tuple(runs))
    times = text(f"×{count}", style.lead)
    return Beside(((Text(tuple(runs)), None), (times, times.natural_width() + 0.1)), gap=6)


def _whose_amount(found: SetAmount, style: CardType) -> Block:
    weight, measure = found.amount.weight, measure_text(found.amount.measure)
    runs = figure_runs(weight or measure, style.figure, style.plain)
    if weight and measure:
        runs = (*runs, Run(" · ", style.plain), *figure_runs(measure, style.plain, style.plain))
    return Text((*runs, Run(" " + kinds_text(found.kinds), style.strong)))
