"""What stands in front of the cook: a row for each line of a recipe, weight first."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.kitchen.wording import _
from binder.paper.arrangement import Beside, Space, Stack
from binder.paper.block import Block, Text, text
from binder.paper.card_type import figure_runs
from binder.paper.card_words import kinds_text, measure_text
from binder.paper.run import Run

if TYPE_CHECKING:
    from binder.figures.card import Containers, SetAmount
    from binder.paper.card_type import CardType

_BETWEEN_ROWS = 3.0
"""Points of white between rows."""


def containers_block(row: Containers, style: CardType) -> Stack:
    """One line set out: weight first, the cook's measure after it, how many; then the food and its preparation.

    Where builds take different amounts, each amount has a line of its own with whose it is.
    """
    after = ", ".join(part for part in (row.preparation, row.note, _("garnish") if row.garnish else "") if part)
    food = Text((Run(row.food, style.lead), *([Run(" " + after, style.plain)] if after else [])))
    several = len(row.amounts) > 1
    amounts = [_amount_line(found, style, whose=several) for found in row.amounts]
    return Stack((*amounts, food, Space(_BETWEEN_ROWS)))


def _amount_line(found: SetAmount, style: CardType, *, whose: bool) -> Block:
    amount, count = _amount_runs(found, style), len(found.kinds)
    if whose:
        return Text((*amount, Run(" · " + kinds_text(found.kinds), style.strong)))
    if count < 2:  # noqa: PLR2004 - one container needs no count
        return Text(amount)
    times = text(f"×{count}", style.lead)
    return Beside(((Text(amount), None), (times, times.natural_width() + 0.1)), gap=6)


def _amount_runs(found: SetAmount, style: CardType) -> tuple[Run, ...]:
    """Weight first, the cook's measure after it."""
    weight, measure = found.amount.weight, measure_text(found.amount.measure)
    runs = figure_runs(weight or measure, style.figure, style.plain)
    if weight and measure:
        runs = (*runs, Run(" · ", style.plain), *figure_runs(measure, style.plain, style.plain))
    return runs
