"""A price list as spreadsheets write it, into packs and prices of a binder: one change, or none.

The columns are food, store, pack size, unit, price, date and label, in any order; store, date and label may be missing,
and the unit may stand with the size (`500 g`). Foods and stores are those of the binder, by any of their names.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from binder.exchange.named_records import NamedRecords
from binder.exchange.price_date import parse_date
from binder.exchange.price_ledger import PriceLedger
from binder.exchange.price_table import RefusedRowError, TableRow, rows_of
from binder.kitchen.amount import parse_amount
from binder.kitchen.errors import BinderError
from binder.kitchen.money import money_text, parse_money, uses_decimal_comma
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from datetime import date

    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.kitchen.food import Food


class Fate(StrEnum):
    """What becomes of a row."""

    NEW = "new"
    CHANGED = "changed"
    SAME = "same"
    REFUSED = "refused"


@dataclass(frozen=True)
class RowFate:
    """A row of the list by its number in the spreadsheet, what becomes of it and, in words, why."""

    number: int
    fate: Fate
    says: str


@dataclass(frozen=True)
class PriceList:
    """What becomes of each row, and the change that makes it so: None where nothing is to be done."""

    rows: tuple[RowFate, ...]
    change: Change | None

    @property
    def refused(self) -> tuple[RowFate, ...]:
        """The rows that are not taken."""
        return tuple(row for row in self.rows if row.fate is Fate.REFUSED)

    def summary(self) -> str:
        """One sentence or two: how many rows are taken, and which are refused first."""
        taken = len(self.rows) - len(self.refused) if self.change or not self.refused else 0
        said = ngettext("{count} price is taken.", "{count} prices are taken.", taken).format(count=taken)
        if not self.refused:
            return said
        first = self.refused[0]
        refused = ngettext("{count} row is refused.", "{count} rows are refused.", len(self.refused))
        where = _("Row {number}: {says}").format(number=first.number, says=first.says)
        return f"{said} {refused.format(count=len(self.refused))} {where}"


def read_price_list(
    binder: Binder,
    content: bytes,
    *,
    take_good_rows: bool = False,
    priced_on: date | None = None,
    today: date | None = None,
    source: str = "",
) -> PriceList:
    """What a price list would change in a binder.

    One refused row refuses the list, unless `take_good_rows`. `priced_on` is the day of prices without one; prices of
    after `today` are refused; `source` is noted with each price. Raises UnreadableTableError where it is no price list.
    """
    reader = _Reader(binder, priced_on=priced_on, today=today, source=source[:300])
    rows = tuple(reader.take(row) for row in rows_of(content))
    whole = take_good_rows or not any(row.fate is Fate.REFUSED for row in rows)
    return PriceList(rows, reader.change() if whole else None)


class _Reader:
    """Takes row after row, each on what those before have made."""

    def __init__(self, binder: Binder, *, priced_on: date | None, today: date | None, source: str) -> None:
        self._settings = binder.settings
        self._binder = binder
        self._priced_on, self._today = priced_on, today
        self._foods = NamedRecords(
            _("food"), ((food, (food.name, *food.other_names)) for food in binder.foods.values())
        )
        self._stores = NamedRecords(_("store"), ((store, (store.name,)) for store in binder.stores.values()))
        self._ledger = PriceLedger(binder, source)
        self._sizes: dict[tuple[str, str], tuple[float, str]] = {}

    def change(self) -> Change | None:
        """The change that all rows taken make together; None where they make none."""
        return self._ledger.change()

    def take(self, row: TableRow) -> RowFate:
        """What becomes of a row."""
        try:
            fate, says = self._entered(row)
        except BinderError as error:
            return RowFate(row.number, Fate.REFUSED, error.says)
        return RowFate(row.number, fate, says)

    def _entered(self, row: TableRow) -> tuple[Fate, str]:
        if row.has_more_cells:
            raise RefusedRowError(_("it has more cells than the header. Take the ones too many out."))
        food = self._foods.find(row["food"])
        store = self._stores.find(row["store"]) if row["store"] else None
        size, unit = self._size(f"{row['pack size']} {row['unit']}".strip(), food)
        price = self._price(row["price"])
        on = self._date(row["date"])
        pack = self._ledger.pack(food, store=store, size=size, unit=unit, label=row["label"])
        said = f"{food.name}, {row['pack size']} {row['unit']}".rstrip()
        known = self._ledger.enter(pack, price=price, on=on, number=row.number)
        if known is None:
            return Fate.NEW, said
        if known == price:
            return Fate.SAME, said
        was = money_text(known, self._settings.currency, self._settings.locale)
        return Fate.CHANGED, _("{pack}; it was {price}").format(pack=said, price=was)

    def _size(self, text: str, food: Food) -> tuple[float, str]:
        """Sizes recur from row to row, so each is read once a food."""
        if (text, food.id) not in self._sizes:
            self._sizes[(text, food.id)] = self._read_size(text, food)
        return self._sizes[(text, food.id)]

    def _read_size(self, text: str, food: Food) -> tuple[float, str]:
        if not text:
            raise RefusedRowError(_("its pack size is missing. Add it."))
        pieces = frozenset(measure.unit for measure in self._binder.measures.where("food", food.id))
        comma = uses_decimal_comma(self._settings.locale)
        amount = parse_amount(text, self._settings.measures, pieces=pieces, decimal_comma=comma)
        if amount.is_range or not amount.high:
            raise RefusedRowError(_("a pack cannot hold {size}. Write one size, above zero.").format(size=text))
        return amount.high, amount.unit or "each"

    def _price(self, text: str) -> int:
        if not text:
            raise RefusedRowError(_("its price is missing. Add it, or take the row out."))
        return parse_money(text, self._settings.currency, self._settings.locale)

    def _date(self, text: str) -> date:
        on = parse_date(text, self._settings.locale) if text else self._priced_on
        if on is None:
            raise RefusedRowError(_("its date is missing. Add it, as 2026-03-14."))
        if self._today is not None and on > self._today:
            raise RefusedRowError(_("its date, {date}, is still to come. Correct it.").format(date=on.isoformat()))
        return on
