"""The shopping list: by trip, then by section in walking order, with ticks, counts and what was paid. Plain Python."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from binder.desktop.buying_page.buying_figures import BuyingFigures, ListLine, list_lines
from binder.desktop.buying_page.kept_lines import KeptLines
from binder.desktop.buying_page.list_rows import (
    BOUGHT,
    beside_rows,
    ended_rows,
    line_rows,
    reason_rows,
    section_row,
    trip_key,
    trip_row,
)
from binder.desktop.buying_page.sums import sum_rows
from binder.desktop.buying_page.ticking import (
    ends_line,
    foods_like,
    purchase_of,
    toggled,
    typed_count,
    typed_count_of,
    typed_paid,
    typed_taken,
)
from binder.desktop.buying_page.trip_days import remove_day, typed_day
from binder.desktop.larder_page.pack_terms import is_offer, set_offer
from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Row, Size
from binder.desktop.sheet.sheet import NotEditableError, PlainSheet, record_of
from binder.desktop.words.typed import typed_date, typed_money
from binder.kitchen.edits.buying import purchases_of, set_purchase, untick
from binder.kitchen.edits.foods import set_price, typed_price
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from binder.desktop.buying_page.buying_figures import LatestBuying
    from binder.desktop.sheet.sheet import Sight
    from binder.figures.trips import TripLine, TripPlan
    from binder.kitchen.binder import Binder
    from binder.kitchen.buying import Purchase
    from binder.kitchen.change import Change


class BuyingList(PlainSheet):
    """A heading a trip and a section, a row a pack to take, and the sum at the foot."""

    def __init__(self, latest: LatestBuying, lines: KeptLines | None = None) -> None:
        self._latest = latest
        self._lines = KeptLines() if lines is None else lines

    @property
    def name(self) -> str:
        return _("Shopping list")

    @property
    def columns(self) -> tuple[Column, ...]:
        weight = {"align": Align.DECIMAL, "decimals": 1, "unit_room": "kg"}
        return (
            Column("tick", "", characters=2),
            Column("food", _("food"), characters=15, stretch=3),
            Column("needed", _("needed"), characters=7, **weight),  # type: ignore[arg-type]
            Column("count", _("take"), characters=6, align=Align.RIGHT),
            Column("pack", _("pack"), characters=14, stretch=3),
            Column("price", _("a pack"), characters=7, align=Align.RIGHT),
            Column("on", _("as of"), characters=8),
            Column("spend", _("comes to"), characters=8, align=Align.RIGHT),
            Column("paid", _("paid"), characters=7.5, align=Align.RIGHT),
            Column("left_over", _("left over"), characters=7, **weight),  # type: ignore[arg-type]
        )

    def rows(self, sight: Sight) -> list[Row]:
        figures = self._latest.value
        if sight.shoot is None or figures is None:
            return []
        found = list(_trips(sight.binder, sight.shoot, figures, self._lines))
        found += _unknown(sight.binder, sight.shoot, figures)
        found += _beside(sight.binder, sight.shoot, figures)
        return [*found, *sum_rows(sight.binder, sight.shoot, figures.bought)] if found else []

    def line(self, row: str) -> ListLine | None:
        """The line of the list that a row shows."""
        return list_lines(self._latest.value).get(row) if self._latest.value is not None else None

    def _plan(self, row: str) -> TripPlan | None:
        """The trip that a row is the heading of."""
        plans = self._latest.value.plans if self._latest.value is not None else ()
        return next((plan for plan in plans if trip_key(plan) == row), None)

    def toggle(self, sight: Sight, row: str) -> Change | None:
        """The change that ticks a row or lets it be open again."""
        line, place = self.line(row), record_of(row)
        if place.table == "beside":
            return untick(sight.binder, sight.binder.purchases[place.id])
        return toggled(sight.binder, sight.shoot or "", line) if line is not None else None

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder, place, line = sight.binder, record_of(row), self.line(row)
        if place.table == BOUGHT:
            purchase = binder.purchases[place.id]
            return set_purchase(binder, purchase, **_day_or_note(binder, column, text))
        if place.table == "beside":
            return _edit_beside(binder, binder.purchases[place.id], column, text)
        plan = self._plan(row)
        if plan is not None and self._latest.value is not None and sight.shoot is not None:
            return typed_day(binder, sight.shoot, self._latest.value.plans, plan, text)
        if line is None or sight.shoot is None:
            raise NotEditableError
        return _edit_line(binder, sight.shoot, line, column, text)

    def offers(self, sight: Sight, row: str, column: str, text: str) -> Sequence[str]:
        return foods_like(sight.binder, text) if column == "pack" else ()

    def remove(self, sight: Sight, rows: Sequence[str]) -> Change | None:
        """A trip of one's own goes, or what was bought is forgotten."""
        binder, place = sight.binder, record_of(rows[0]) if rows else record_of("")
        if place.table in {BOUGHT, "beside"}:
            return untick(binder, binder.purchases[place.id])
        plan = self._plan(rows[0]) if rows else None
        if plan is not None:
            return remove_day(binder, sight.shoot or "", plan)
        line = self.line(rows[0]) if rows else None
        bought = purchase_of(binder, sight.shoot or "", line) if line is not None else None
        return untick(binder, bought) if bought is not None else None


def _edit_line(binder: Binder, shoot: str, line: ListLine, column: str, text: str) -> Change:
    if column == "count":
        return typed_count(binder, shoot, line, text)
    if column == "paid":
        return typed_paid(binder, shoot, line, text)
    if column == "pack":
        return typed_taken(binder, shoot, line, text)
    if column != "price" or line.taken is None:
        raise NotEditableError
    quote = binder.quotes[line.taken.priced.quote.id]
    return set_offer(binder, quote, text) if is_offer(text) else set_price(binder, quote, typed_price(binder, text))


def _edit_beside(binder: Binder, purchase: Purchase, column: str, text: str) -> Change:
    if column == "count":
        return typed_count_of(binder, purchase, text)
    if column != "paid":
        raise NotEditableError
    return set_purchase(binder, purchase, paid=typed_money(binder, text))


def _day_or_note(binder: Binder, column: str, text: str) -> dict[str, object]:
    return {"on": typed_date(binder, text)} if column == "food" else {"note": text.strip()}


def _trips(binder: Binder, shoot: str, figures: BuyingFigures, kept: KeptLines) -> Iterator[Row]:
    """The trips; a food whose line is ended stands once, where it would have been fetched first."""
    ended: set[str] = set()
    for at, plan in enumerate(figures.plans):
        yield trip_row(binder, shoot, plan, first=at == 0)
        for section, lines in groupby(plan.lines, key=lambda line: line.item.section):
            yield section_row(f"section:{trip_key(plan)}/{section}", section)
            for line in lines:
                yield from _food(binder, shoot, plan, line, ended, kept)


def _food(
    binder: Binder, shoot: str, plan: TripPlan, fetched: TripLine, ended: set[str], kept: KeptLines
) -> Iterator[Row]:
    food, whole = fetched.item.food, ListLine(fetched.item, None, plan.on)
    purchase = purchase_of(binder, shoot, whole)
    if purchase is not None and (purchase.instead is not None or not purchase.count):
        if food not in ended:
            ended.add(food)
            yield from ended_rows(binder, whole, purchase)
        return
    for number, taken in enumerate(fetched.packs):
        yield from kept.rows(binder, shoot, ListLine(whole.item, taken, plan.on), first=number == 0)


def _unknown(binder: Binder, shoot: str, figures: BuyingFigures) -> Iterator[Row]:
    """Foods of which no pack is known."""
    items = [item for item in figures.bought.items if item.missing is not None]
    if items:
        yield _heading("unknown", _("Not known where to buy"))
        yield from reason_rows(figures.bought)
    for item in items:
        line = ListLine(item, None, None)
        purchase = purchase_of(binder, shoot, line)
        yield from (
            line_rows(binder, shoot, line, first=True) if purchase is None else ended_rows(binder, line, purchase)
        )


def _beside(binder: Binder, shoot: str, figures: BuyingFigures) -> Iterator[Row]:
    """What was bought that the list does not ask for, or not in that pack."""
    listed = {item.food: {one.priced.pack.id for one in item.packs} for item in figures.bought.items}
    foods = dict.fromkeys(one.food for one in binder.purchases.where("shoot", shoot))
    beside = [
        one
        for food in foods
        for one in purchases_of(binder, shoot, food)
        if food not in listed or (not ends_line(one) and one.pack not in listed[food])
    ]
    if beside:
        yield _heading("beside", _("Bought beside the list"))
    for purchase in beside:
        yield from beside_rows(binder, purchase)


def _heading(key: str, title: str) -> Row:
    cells = (NOTHING, Cell(title, size=Size.STRONG), *(NOTHING,) * 8)
    return Row(f"heading:{key}", cells, spans=((1, 4),), gap=4, lines=1.7)
