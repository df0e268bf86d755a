"""One more take: how many more of a dish could be made, whole and from each step, what stops the next, its cost."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Mark, Row, Size, Tone
from binder.desktop.sheet.sheet import PlainSheet
from binder.desktop.shoot_page.builds import step_title
from binder.figures.missing import Place
from binder.figures.money_words import money
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.sheet.sheet import Sight
    from binder.desktop.shoot_page.dish_figures import LatestDish
    from binder.figures.takes import Takes
    from binder.kitchen.binder import Binder

_ENDLESS = 1000
"""From here on nothing stops the next."""


class MoreTakes(PlainSheet):
    """The subject is a dish."""

    def __init__(self, latest: LatestDish) -> None:
        self._latest = latest

    @property
    def name(self) -> str:
        return _("One more take")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("step", "", characters=18, stretch=3),
            Column("possible", _("more from here on"), characters=9, align=Align.RIGHT),
            Column("limit", _("what stops the next"), characters=16, stretch=3),
            Column("costs", _("the next, at the till"), characters=9, align=Align.RIGHT),
            Column("up_to", _("more up to here"), characters=9, align=Align.RIGHT, tip=_("Made ahead, as swap-outs")),
        )

    def rows(self, sight: Sight) -> list[Row]:
        figures, dish = self._latest.value, sight.binder.dishes.get(sight.subject or "")
        if figures is None or dish is None or figures.whole.dish != dish.id:
            return []
        binder, stale = sight.binder, self._latest.stale
        whole = _row(binder, "whole", _("the whole dish"), figures.whole, None, stale=stale)
        steps = [binder.steps.get(found.first or "") for found in figures.from_step]
        each = [
            _row(
                binder,
                f"from:{step.id}",
                _("from step {step}").format(step=step_title(step)),
                found,
                up_to,
                stale=stale,
            )
            for step, found, up_to in zip(steps, figures.from_step, figures.up_to_step, strict=True)
            if step is not None
        ]
        return [whole, *(each if len(each) > 1 else [])]


def _row(binder: Binder, key: str, title: str, found: Takes, up_to: Takes | None, *, stale: bool) -> Row:
    tone = Tone.QUIET if stale else Tone.INK
    size = Size.STRONG if up_to is None else Size.BODY
    cells = (
        Cell(title, size=size),
        Cell(_count(found), size=size, tone=tone),
        _limit(binder, found),
        _costs(binder, found, tone),
        NOTHING if up_to is None else Cell(_count(up_to), tone=tone),
    )
    return Row(key, cells, lines=1.6)


def _count(found: Takes) -> str:
    if found.possible is None:
        return _("not known")
    return _("no limit") if found.possible >= _ENDLESS else str(found.possible)


def _limit(binder: Binder, found: Takes) -> Cell:
    if found.possible is None:
        if not found.missing:
            recipe = binder.recipes[binder.dishes[found.dish].recipe]
            says = _("{recipe} does not say how many portions it yields.").format(recipe=recipe.name)
            return Cell(says, mark=Mark.UNKNOWN, leads_to=Place("recipes", recipe.id))
        lack = found.missing[0]
        return Cell(lack.says, mark=Mark.UNKNOWN, leads_to=lack.place, tip="\n".join(one.says for one in found.missing))
    food = binder.foods.get(found.limited_by or "")
    if food is None or found.possible >= _ENDLESS:
        return Cell("–", tone=Tone.QUIET, spoken=_("nothing"))
    return Cell(food.name, leads_to=Place("foods", food.id))


def _costs(binder: Binder, found: Takes, tone: Tone) -> Cell:
    """What would have to be bought for the first that what is left does not give."""
    if found.possible is None or found.possible >= _ENDLESS:
        return NOTHING
    if found.next_costs is None:
        return Cell(_("not known"), mark=Mark.UNKNOWN, tip=_("A price is missing of what would have to be bought."))
    return Cell(money(binder, found.next_costs), tone=tone)
