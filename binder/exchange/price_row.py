"""One row of a price list read: which food, which pack, what price, on which day, or why it cannot be taken."""

from __future__ import annotations

import re
from datetime import date
from typing import TYPE_CHECKING, NamedTuple

from binder.exchange.named_records import NamedRecords
from binder.exchange.price_currency import is_own_currency, money_named, other_currency
from binder.exchange.price_date import DateReader
from binder.exchange.price_money import price_in_list
from binder.exchange.price_size import SizeReader
from binder.exchange.price_stores import StoreReader
from binder.exchange.table_cell import ExactNumber, RefusedRowError, Trouble, UnusableCell, shown_text
from binder.kitchen.money import UnreadablePriceError, uses_decimal_comma
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.exchange.price_columns import PriceLayout
    from binder.exchange.table_cell import TableRow
    from binder.kitchen.binder import Binder
    from binder.kitchen.food import Food
    from binder.kitchen.price import Store

UsableCell = str | ExactNumber | date

_FIRST_DAY = date(1970, 1, 1)
"""No price of a kitchen's list is older; what is, is a slip or a count of days that is none."""

_WHOLE, _REST = re.compile(r"\d{1,4}"), re.compile(r"\d{2,3}(?:\.\d+)?")
"""A price and what a comma without quotation marks took off it: `3` and `49`, `1` and `234.50`."""


class PriceRow(NamedTuple):
    """What a row says: a pack of `size` in `unit`, and its price in minor units (`rounded` to them) on a day."""

    food: Food
    store: Store | None
    size: float
    unit: str
    price: int
    rounded: bool
    on: date
    label: str


class PriceRowReader:
    """Reads rows of one layout with a binder's foods, stores and currency.

    `priced_on` is the day of prices without one; a price of after `today` is refused. `rows` are all of the list, for
    what its dates show together. `width`: how many cells a row may have (None: any); `commas_part` them.
    `new_stores`: a store that the binder has not is made.
    """

    def __init__(
        self,
        binder: Binder,
        layout: PriceLayout,
        rows: Sequence[TableRow],
        *,
        priced_on: date | None,
        today: date | None,
        width: int | None = None,
        commas_part: bool = False,
        new_stores: bool = False,
    ) -> None:
        self._binder, self._layout, self._settings = binder, layout, binder.settings
        self._places = layout.places
        self._priced_on, self._today, self._width = priced_on, today, width
        self._foods = NamedRecords(
            _("food"), ((food, (food.name, *food.other_names)) for food in binder.foods.values())
        )
        self._stores = StoreReader(binder, makes_new=new_stores)
        self._comma = uses_decimal_comma(self._settings.locale)
        self._pieces: dict[str, frozenset[str]] = {}
        self._sizes: dict[tuple[str, bool, frozenset[str]], tuple[float, str]] = {}
        at = layout.places.get("date")
        typed = (row.cells[at] for row in rows if at is not None and at < len(row.cells))
        self._dates = DateReader(
            self._settings.locale, (cell for cell in typed if isinstance(cell, str)), layout.note("date")
        )
        self._prices: dict[tuple[UsableCell, str], tuple[int, bool]] = {}
        label, price = (self._places.get(column) for column in ("label", "price"))
        self._may_slip = commas_part and price is not None and label == price + 1

    @property
    def unknown_stores(self) -> tuple[str, ...]:
        """The names that no store of the binder has, where none is made of them."""
        return self._stores.unknown

    def read(self, row: TableRow) -> PriceRow:
        """What the row says. Raises RefusedRowError, or the error of what cannot be read."""
        if self._width is not None and any(row.cells[self._width :]):
            raise RefusedRowError(_("it has more cells than the header. Take the ones too many out."))
        food = self._foods.find(self._text(row, "food"))
        store = self._stores.read(self._text(row, "store"))
        size, unit = self._size(*self._size_said(row), food)
        price, rounded = self._price(row)
        return PriceRow(
            food=food,
            store=store,
            size=size,
            unit=unit,
            price=price,
            rounded=rounded,
            on=self._date(row),
            label=self._text(row, "label"),
        )

    def _cell(self, row: TableRow, column: str) -> UsableCell:
        """The cell of a column; empty where there is no such column. Raises RefusedRowError where it is unusable."""
        place = self._places.get(column)
        if place is None or place >= len(row.cells):
            return ""
        cell = row.cells[place]
        if isinstance(cell, UnusableCell):
            raise _unusable(cell, column)
        return cell

    def _text(self, row: TableRow, column: str) -> str:
        cell = self._cell(row, column)
        return cell if isinstance(cell, str) else shown_text(cell)

    def _size_said(self, row: TableRow) -> tuple[str, bool]:
        """The size with its unit as text, and whether its number is exact already."""
        cell = self._cell(row, "pack size")
        if isinstance(cell, date):
            raise RefusedRowError(_("its pack size is a date. Write it as 500 g."))
        exact = isinstance(cell, ExactNumber)
        size = cell.text if isinstance(cell, ExactNumber) else cell
        if not size:
            raise RefusedRowError(_("its pack size is missing. Add it."))
        unit = self._text(row, "unit")
        if unit and size.casefold().endswith(f" {unit.casefold()}"):
            unit = ""
        if not unit and self._layout.unit and not size[-1].isalpha():
            unit = self._layout.unit
        return f"{size} {unit}".strip(), exact

    def _size(self, said: str, exact: bool, food: Food) -> tuple[float, str]:  # noqa: FBT001 - as `_size_said` gives it
        """Sizes recur from row to row, so each is read once."""
        key = (said, exact, self._pieces_of(food))
        if key not in self._sizes:
            comma = self._comma and not exact
            reader = SizeReader(self._settings.measures, key[2], decimal_comma=comma, exact=exact)
            self._sizes[key] = reader.read(said)
        return self._sizes[key]

    def _pieces_of(self, food: Food) -> frozenset[str]:
        if food.id not in self._pieces:
            self._pieces[food.id] = frozenset(one.unit for one in self._binder.measures.where("food", food.id))
        return self._pieces[food.id]

    def _price(self, row: TableRow) -> tuple[int, bool]:
        """Prices recur too."""
        cell, named = self._cell(row, "price"), self._text(row, "currency")
        if self._may_slip:
            self._require_whole(cell, self._text(row, "label"))
        key = (cell, named)
        if key not in self._prices:
            self._require_own(cell, named)
            self._prices[key] = self._read_price(cell)
        return self._prices[key]

    def _require_whole(self, cell: UsableCell, label: str) -> None:
        if isinstance(cell, str) and _WHOLE.fullmatch(cell) and _REST.fullmatch(label):
            says = _("its price, {whole}, and label, {rest}, may be one price. Put {whole},{rest} in quotation marks.")
            raise RefusedRowError(says.format(whole=cell, rest=label))

    def _require_own(self, cell: UsableCell, named: str) -> None:
        """Raise RefusedRowError where row, heading or the number's own format says another currency."""
        told = cell.currency if isinstance(cell, ExactNumber) else ""
        heading = "" if named else money_named(self._layout.note("price"))
        for mark in (named, told, heading):
            if mark and not is_own_currency(mark, self._settings.currency, self._settings.locale):
                raise self._in_another(mark)

    def _in_another(self, mark: str) -> RefusedRowError:
        says = _("its price is in {other}, and the binder reckons in {own}. Change it over, or take the row out.")
        return RefusedRowError(says.format(other=mark[:20], own=self._settings.currency))

    def _read_price(self, cell: UsableCell) -> tuple[int, bool]:
        if isinstance(cell, date):
            raise RefusedRowError(_("its price is a date, {date}. Type the price anew.").format(date=cell.isoformat()))
        if not cell:
            raise RefusedRowError(_("its price is missing. Add it, or take the row out."))
        try:
            return price_in_list(cell, self._settings)
        except UnreadablePriceError:
            shown = "" if isinstance(cell, ExactNumber) else cell
            other = other_currency(shown, self._settings.currency, self._settings.locale)
            if other:
                raise self._in_another(other) from None
            raise

    def _date(self, row: TableRow) -> date:
        cell = self._cell(row, "date")
        on = cell if isinstance(cell, date) else self._typed_date(shown_text(cell))
        if on is None:
            raise RefusedRowError(_("its date is missing. Add it, as 2026-03-14."))
        if self._today is not None and on > self._today:
            raise RefusedRowError(_("its date, {date}, is still to come. Correct it.").format(date=on.isoformat()))
        if on < _FIRST_DAY:
            raise RefusedRowError(_("its date, {date}, is too long ago. Correct it.").format(date=on.isoformat()))
        return on

    def _typed_date(self, text: str) -> date | None:
        return self._dates.read(text) if text else self._priced_on


def _unusable(cell: UnusableCell, column: str) -> RefusedRowError:
    says = _("its {column} is the error {text}. Correct it.")
    if cell.trouble is Trouble.FORMULA:
        says = _("its {column} is a formula, and none is worked out here. Put its value in its place.")
    return RefusedRowError(says.format(column=_(column), text=cell.text))
