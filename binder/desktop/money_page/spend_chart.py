"""Where the money goes: a bar for each part of the budget, the largest first, each beside its number. Plain Python."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.pictures.cost_bar import CostBar
from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Row, Size, Tone
from binder.desktop.sheet.sheet import PlainSheet
from binder.figures.money_parts import money_parts
from binder.figures.money_words import money, percent_text
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from binder.desktop.money_page.money_figures import LatestBudget
    from binder.desktop.sheet.sheet import Sight
    from binder.figures.budget import Budget
    from binder.figures.money_parts import MoneyPart
    from binder.kitchen.binder import Binder

_ROOM = 1.04
"""The longest bar leaves a little of its track free."""


class SpendChart(PlainSheet):
    """The bars say what is expected, all on one scale; a notch is where the plan was, in the whole the budget."""

    def __init__(self, latest: LatestBudget) -> None:
        self._latest = latest

    @property
    def name(self) -> str:
        return _("Where the money goes")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("name", "", characters=24, stretch=2),
            Column("bar", "", characters=30, stretch=5),
            Column("amount", _("expected"), characters=10, align=Align.RIGHT),
            Column("share", _("share"), characters=7, align=Align.RIGHT),
        )

    def rows(self, sight: Sight) -> list[Row]:
        figures = self._latest.value
        if figures is None or sight.shoot is None:
            return []
        parts = money_parts(figures.budget)
        if not any(part.expected for part in parts):
            return []
        tone = Tone.QUIET if self._latest.stale else Tone.INK
        scale = max(_sum(parts), figures.budget.allowed or 0) * _ROOM
        whole = _whole(sight.binder, figures.budget, _sum(parts), scale, tone)
        return [whole, *_bars(sight.binder, parts, scale, tone)]


def _sum(parts: Sequence[MoneyPart]) -> int:
    return sum(part.expected for part in parts)


def _whole(binder: Binder, budget: Budget, total: int, scale: float, tone: Tone) -> Row:
    cap = None if budget.allowed is None else budget.allowed / scale
    name = _("known") if budget.missing else _("in all")
    if budget.allowed is not None:
        beside = _("{what}, beside the budget of {money}")
        name = beside.format(what=name, money=money(binder, budget.allowed))
    cells = (
        Cell(name, size=Size.STRONG, tip=name),
        Cell(picture=CostBar(total / scale, cap), spoken=name),
        Cell(money(binder, total), size=Size.STRONG, tone=tone),
        NOTHING,
    )
    return Row("whole", cells, lines=1.8)


def _bars(binder: Binder, parts: Sequence[MoneyPart], scale: float, tone: Tone) -> Iterator[Row]:
    total = _sum(parts)
    for part in parts:
        notch = None if part.planned == part.expected else part.planned / scale
        shown = money(binder, part.expected)
        tip = "" if notch is None else _("{money} was planned").format(money=money(binder, part.planned))
        cells = (
            Cell(part.name, tip=part.name),
            Cell(picture=CostBar(part.expected / scale, notch), spoken=shown, tip=tip),
            Cell(shown, tone=tone, tip=tip),
            Cell(percent_text(binder, part.expected / total), tone=Tone.QUIET, size=Size.SMALL),
        )
        yield Row(part.key, cells, lines=1.4, rule=False)
