"""What the base costs, laid on the dishes and on what is left of it: to the smallest coin it adds up."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.base_page.conversions import conversions_of
from binder.desktop.base_page.forms import base_of
from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Mark, Row, Size, Tone, key_of
from binder.desktop.sheet.sheet import PlainSheet
from binder.figures.missing import Missing, Place
from binder.figures.money_words import money
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.base_page.base_figures import LatestFigures
    from binder.desktop.sheet.sheet import Sight
    from binder.figures.base_cost import BaseCost
    from binder.kitchen.binder import Binder
    from binder.kitchen.food import Food


class BaseCosts(PlainSheet):
    """Dishes, then what is left in each form, then all of it, and how the conversions lay their cost."""

    def __init__(self, latest: LatestFigures) -> None:
        self._latest = latest

    @property
    def name(self) -> str:
        return _("What the base costs")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("number", "", characters=2.5, align=Align.RIGHT),
            Column("name", _("used cost of the base"), characters=28, stretch=3),
            Column("cost", "", characters=9, align=Align.RIGHT),
            Column("share", _("share"), characters=7, align=Align.RIGHT),
            Column("note", "", characters=10, stretch=4),
        )

    def rows(self, sight: Sight) -> list[Row]:
        base = base_of(sight)
        figures = self._latest.value
        if base is None or figures is None or figures.balance is None:
            return []
        cost, tone = figures.cost, Tone.QUIET if self._latest.stale else Tone.INK
        if isinstance(cost, Missing):
            return [_missing(cost)]
        if cost is None:
            return []
        binder = sight.binder
        dishes = [_dish_row(binder, key, cost, tone) for key in cost.dishes if key in binder.dishes]
        left = [_left_row(binder, key, cost, tone) for key, rest in cost.left.items() if rest and key in binder.foods]
        return [*dishes, *left, _total(binder, cost), _modes(binder, base)]


def _missing(lack: Missing) -> Row:
    says = _("not known: {reason}").format(reason=lack.says)
    return Row(
        "missing", (NOTHING, Cell(says, mark=Mark.UNKNOWN, leads_to=lack.place), *(NOTHING,) * 3), spans=((1, 4),)
    )


def _dish_row(binder: Binder, key: str, cost: BaseCost, tone: Tone) -> Row:
    dish, place = binder.dishes[key], Place("dishes", key)
    number = Cell(str(dish.position + 1), tone=Tone.QUIET, leads_to=place)
    return Row(
        key_of(place),
        (number, Cell(dish_name(binder, dish)), *_figures(binder, cost.dishes[key], cost, tone)),
        place=place,
    )


def _left_row(binder: Binder, key: str, cost: BaseCost, tone: Tone) -> Row:
    name = Cell(binder.foods[key].name, label=_("left over:"))
    return Row(f"left:{key}", (NOTHING, name, *_figures(binder, cost.left[key], cost, tone)), place=Place("foods", key))


def _figures(binder: Binder, minor: int, cost: BaseCost, tone: Tone) -> tuple[Cell, Cell, Cell]:
    share = minor / cost.total if cost.total else 0.0
    return (
        Cell(money(binder, minor), tone=tone),
        Cell(str(round(share * 100)) if share >= 0.005 or not minor else "<1", "%", tone=Tone.QUIET),  # noqa: PLR2004
        NOTHING,
    )


def _total(binder: Binder, cost: BaseCost) -> Row:
    cells = (
        NOTHING,
        Cell(_("in all"), size=Size.STRONG),
        Cell(money(binder, cost.total), size=Size.STRONG),
        Cell("100" if cost.total else "0", "%", tone=Tone.QUIET),
        NOTHING,
    )
    return Row("total", cells)


def split_text(binder: Binder, base: Food) -> str:
    """How each conversion lays its cost on what comes out: `Soak overnight: by weight`."""
    parts = [f"{one.name}: {_(one.split.value)}" for one in conversions_of(binder, base.id)]
    return "; ".join(parts) or _("The base is used as it is bought.")


def _modes(binder: Binder, base: Food) -> Row:
    says = _("The cost goes on from form to form. {modes}.").format(modes=split_text(binder, base).rstrip("."))
    cells = (NOTHING, Cell(says, tone=Tone.QUIET), NOTHING, NOTHING, NOTHING)
    return Row("modes", cells, spans=((1, 4),), wraps=True, rule=False)
