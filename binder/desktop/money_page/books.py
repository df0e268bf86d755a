"""The books after the shoot: what was paid against the plan by food and by dish, what is left over. Plain Python."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Mark, Row, Size, Tone
from binder.desktop.sheet.sheet import PlainSheet
from binder.desktop.words.figure_text import grams_parts, headroom_text, mark_of
from binder.figures.budget_rows import bearer_text
from binder.figures.checks import cost_beside_cap
from binder.figures.missing import Place
from binder.figures.money_words import money
from binder.figures.till_shares import LEFT_OVER
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from collections.abc import Iterator

    from binder.desktop.money_page.money_figures import LatestBudget
    from binder.desktop.sheet.sheet import Sight
    from binder.figures.as_bought import CapAfter
    from binder.figures.wrap import Account, BearerAccount, FoodAccount, Wrap
    from binder.kitchen.binder import Binder


class _Books(PlainSheet):
    """Tables of one shape: what it is of, then its account."""

    def __init__(self, latest: LatestBudget) -> None:
        self._latest = latest

    def _account_columns(self) -> tuple[Column, ...]:
        return (
            Column("planned", _("planned"), characters=10, align=Align.RIGHT),
            Column("paid", _("paid"), characters=10, align=Align.RIGHT, tip=_("By receipts")),
            Column("open", _("still open"), characters=10, align=Align.RIGHT, tip=_("Without a receipt yet")),
            Column("variance", _("over or under"), characters=14, align=Align.RIGHT),
        )

    @property
    def _wrap(self) -> Wrap | None:
        return self._latest.value.wrap if self._latest.value is not None else None

    @property
    def _tone(self) -> Tone:
        return Tone.QUIET if self._latest.stale else Tone.INK


class FoodBooks(_Books):
    """A row a food."""

    @property
    def name(self) -> str:
        return _("Receipts by food")

    @property
    def columns(self) -> tuple[Column, ...]:
        weight = Column("left", _("left over"), characters=8, align=Align.DECIMAL, decimals=2, unit_room="kg")
        return (
            Column("food", _("food"), characters=20, stretch=3),
            *self._account_columns(),
            weight,
            Column("worth", _("worth"), characters=9, align=Align.RIGHT, tip=_("What was paid for what is left over")),
            Column("note", "", characters=16, stretch=2),
        )

    def rows(self, sight: Sight) -> list[Row]:
        wrap = self._wrap
        if wrap is None or sight.shoot is None:
            return []
        rows = [_food_row(sight.binder, food, self._tone) for food in wrap.foods]
        unknown = [_not_planned(one.food, one.name) for one in wrap.not_planned]
        return [*rows, *unknown, _food_total(sight.binder, wrap, self._tone)] if rows or unknown else []


def _account_cells(
    binder: Binder, account: Account, tone: Tone, size: Size = Size.BODY
) -> tuple[Cell, Cell, Cell, Cell]:
    return (
        Cell(money(binder, account.planned), tone=tone, size=size),
        Cell(money(binder, account.paid), tone=tone, size=size) if account.paid else Cell("–", tone=Tone.QUIET),
        Cell(money(binder, account.open), tone=Tone.QUIET, size=size) if account.open else NOTHING,
        _variance(binder, account, tone, size),
    )


def _variance(binder: Binder, account: Account, tone: Tone, size: Size) -> Cell:
    over = account.variance
    if not over:
        settled = account.paid and not account.open
        return Cell(_("as planned"), tone=Tone.QUIET, size=size) if settled else NOTHING
    shown = money(binder, abs(over))
    if over > 0:
        loud = Tone.STOP if tone is Tone.INK else tone
        return Cell(_("{money} over").format(money=shown), mark=Mark.OVER, tone=loud, size=size)
    return Cell(_("{money} under").format(money=shown), mark=Mark.WITHIN, tone=tone, size=size)


def _food_row(binder: Binder, food: FoodAccount, tone: Tone) -> Row:
    place = Place("foods", food.receipt.food)
    note = ""
    if food.without:
        note = _("was not to be had")
    elif food.instead:
        note = _("{foods} instead").format(foods=listed(food.instead))
    left = Cell(*grams_parts(binder, food.left), tone=tone) if food.left >= 1 else NOTHING
    cells = (
        Cell(food.receipt.name, leads_to=place, tip=_("Open in the larder")),
        *_account_cells(binder, food.account, tone),
        left,
        Cell(money(binder, food.worth), tone=tone) if food.worth else NOTHING,
        Cell(note, tone=Tone.QUIET, tip=note),
    )
    return Row(f"foods:{food.receipt.food}", cells, place=place, lines=1.4)


def _not_planned(food: str, name: str) -> Row:
    cell = Cell(_("no price was known, and there is no receipt"), mark=Mark.UNKNOWN, leads_to=Place("foods", food))
    return Row(f"foods:{food}", (Cell(name), cell, *(NOTHING,) * 6), spans=((1, 7),), lines=1.4)


def _food_total(binder: Binder, wrap: Wrap, tone: Tone) -> Row:
    cells = (
        Cell(_("all food"), size=Size.STRONG),
        *_account_cells(binder, wrap.total, tone, Size.STRONG),
        NOTHING,
        Cell(money(binder, wrap.worth), tone=tone, size=Size.STRONG) if wrap.worth else NOTHING,
        NOTHING,
    )
    return Row("total", cells, gap=2, lines=1.7)


class DishBooks(_Books):
    """A row a dish, and what no dish bears."""

    @property
    def name(self) -> str:
        return _("Receipts by dish")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (Column("who", "", characters=24, stretch=3), *self._account_columns())

    def rows(self, sight: Sight) -> list[Row]:
        wrap = self._wrap
        if wrap is None or not wrap.foods:
            return []
        rows = [_bearer_row(sight.binder, one, self._tone) for one in wrap.bearers]
        return [*rows, _bearer_total(sight.binder, wrap, self._tone)]


def _bearer_row(binder: Binder, one: BearerAccount, tone: Tone) -> Row:
    dish = binder.dishes.get(one.bearer.dish)
    name = bearer_text(binder, one.bearer) if dish is not None or not one.bearer.dish else ""
    quiet = Tone.QUIET if one.bearer == LEFT_OVER else Tone.INK
    cells = (Cell(name, tone=quiet), *_account_cells(binder, one.account, tone))
    place = Place("dishes", dish.id) if dish is not None else None
    return Row(f"bearer:{one.bearer.kind.value}:{one.bearer.dish}", cells, place=place, lines=1.4)


def _bearer_total(binder: Binder, wrap: Wrap, tone: Tone) -> Row:
    cells = (Cell(_("all food"), size=Size.STRONG), *_account_cells(binder, wrap.total, tone, Size.STRONG))
    return Row("total", cells, gap=2, lines=1.7)


class CapsAsBought(_Books):
    """The dishes whose portion came to something else than was planned."""

    @property
    def name(self) -> str:
        return _("Caps as things were bought")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("dish", _("dish"), characters=22, stretch=2),
            Column("before", _("planned"), characters=10, align=Align.RIGHT),
            Column("after", _("as bought"), characters=10, align=Align.RIGHT),
            Column("cap", _("cap"), characters=9, align=Align.RIGHT),
            Column("state", "", characters=18, stretch=1),
            Column("why", "", characters=20, stretch=2),
        )

    def rows(self, sight: Sight) -> list[Row]:
        wrap = self._wrap
        return [] if wrap is None else list(cap_after_rows(sight.binder, wrap.caps, self._tone))


def cap_after_rows(binder: Binder, caps: tuple[CapAfter, ...], tone: Tone) -> Iterator[Row]:
    """A row for each dish that what was bought makes cheaper or dearer."""
    for one in caps:
        before, _cap = cost_beside_cap(binder, one.before)
        after, cap = cost_beside_cap(binder, one.after)
        says = _("{taken} instead of {planned}")
        why = listed(says.format(taken=taken, planned=planned) for planned, taken in one.instead)
        mark = mark_of(one.after.verdict)
        loud = Tone.STOP if mark is Mark.OVER and tone is Tone.INK else tone
        cells = (
            Cell(f"{one.after.number} {one.after.name}"),
            Cell(before, tone=Tone.QUIET),
            Cell(after, size=Size.STRONG, tone=loud),
            Cell(cap, tone=Tone.QUIET),
            Cell(headroom_text(binder, one.after) or _("not known"), mark=mark, tone=loud),
            Cell(why, tone=Tone.QUIET, tip=why),
        )
        yield Row(f"dishes:{one.after.dish}", cells, place=Place("dishes", one.after.dish), lines=1.5)


def closing_words(binder: Binder, wrap: Wrap) -> str:
    """Whether the books close, in a sentence."""
    if wrap.total.open:
        says = _("{paid} was paid; {open} of the list has no receipt yet.")
        return says.format(paid=money(binder, wrap.total.paid), open=money(binder, wrap.total.open))
    if wrap.unsettled:
        says = _("{paid} was paid; no price and no receipt yet: {foods}.")
        return says.format(paid=money(binder, wrap.total.paid), foods=listed(one.name for one in wrap.unsettled))
    if not wrap.closes:
        return _("The books do not close: foods and dishes add up to different sums.")
    says = _("The books close: by food and by dish it is {paid}, {variance} beside the plan.")
    variance = wrap.total.variance
    beside = _("{money} over") if variance > 0 else _("{money} under") if variance else _("nothing")
    shown = beside.format(money=money(binder, abs(variance)))
    return says.format(paid=money(binder, wrap.total.paid), variance=shown)
