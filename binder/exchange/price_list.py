"""A price list as spreadsheets write it, into packs and prices of a binder: one change, or none.

The columns are food, store, pack size, unit, price, currency, date and label, in any order; store, currency, date and
label may be missing, and the unit may stand with the size (`500 g`). Foods and stores are those of the binder, by any
of their names. Nothing here changes a binder: what is given back says what each row would do, and holds the change.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from binder.exchange.price_ledger import PriceLedger
from binder.exchange.price_row import PriceRowReader
from binder.exchange.price_table import price_table
from binder.exchange.price_words import Entered, PriceWords
from binder.kitchen.bulk import uncollected
from binder.kitchen.errors import BinderError
from binder.kitchen.turns import in_turns
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence
    from datetime import date

    from binder.exchange.price_columns import PriceLayout
    from binder.exchange.price_table import PriceTable
    from binder.exchange.table_cell import TableRow
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change

_ROWS_BETWEEN_REPORTS = 500


class Fate(StrEnum):
    """What becomes of a row."""

    NEW = "new"
    CHANGED = "changed"
    SAME = "same"
    REFUSED = "refused"


class RowFate:
    """A row of the list by its number in the spreadsheet, what becomes of it and, in words, why."""

    __slots__ = ("_said", "_words", "fate", "number")

    def __init__(self, number: int, fate: Fate, said: str | Entered, words: PriceWords) -> None:
        """`said` is the sentence, or what `words` make one of."""
        self.number, self.fate = number, fate
        self._said, self._words = said, words

    @property
    def says(self) -> str:
        """The sentence."""
        return self._said if isinstance(self._said, str) else self._words.of(self._said)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, RowFate) and self._shown == other._shown

    def __hash__(self) -> int:
        return hash(self._shown)

    def __repr__(self) -> str:
        return f"RowFate{self._shown}"

    @property
    def _shown(self) -> tuple[int, Fate, str]:
        return self.number, self.fate, self.says


@dataclass(frozen=True)
class PriceList:
    """What becomes of each row, and the change that makes it so: None where nothing is to be done.

    `layout` is which column was taken for what, `unknown_stores` are the names of stores that the binder has not;
    `places` are the places from 0 of the rows of each fate: gathered with the list, as there may be 50,000 of them.
    """

    rows: tuple[RowFate, ...]
    change: Change | None
    layout: PriceLayout
    unknown_stores: tuple[str, ...]
    places: Mapping[Fate, Sequence[int]]

    @property
    def refused_first(self) -> Sequence[int]:
        """The places of all rows, those of the refused ones before the others."""
        refused = self.places.get(Fate.REFUSED, ())
        if not refused:
            return range(len(self.rows))
        return [
            *refused,
            *sorted(at for fate, places in self.places.items() if fate is not Fate.REFUSED for at in places),
        ]

    @property
    def refused(self) -> tuple[RowFate, ...]:
        """The rows that are not taken."""
        return tuple(self.rows[at] for at in self.places.get(Fate.REFUSED, ()))

    @property
    def counts(self) -> Mapping[Fate, int]:
        """How many rows have each fate that any has."""
        return {fate: len(places) for fate, places in self.places.items()}

    def summary(self) -> str:
        """One sentence or two: how many rows are taken, and which are refused first."""
        refusals = self.refused
        taken = len(self.rows) - len(refusals) if self.change or not refusals else 0
        if not self.rows:
            return _("The list has headings and no rows under them: nothing is taken.")
        said = ngettext("{count} price is taken.", "{count} prices are taken.", taken).format(count=taken)
        if not refusals:
            return said
        first = refusals[0]
        refused = ngettext("{count} row is refused.", "{count} rows are refused.", len(refusals))
        where = _("Row {number}: {says}").format(number=first.number, says=first.says)
        return f"{said} {refused.format(count=len(refusals))} {where}"


def read_price_list(
    binder: Binder,
    content: bytes,
    *,
    take_good_rows: bool = False,
    priced_on: date | None = None,
    today: date | None = None,
    source: str = "",
    progress: Callable[[float], None] | None = None,
) -> PriceList:
    """What the price list in a CSV or XLSX file would change in a binder: `price_table` and `preview_prices` at once.

    Raises UnreadableTableError where it is no price list.
    """
    halves = (None, None) if progress is None else (part_of(progress, 0.0, 0.5), part_of(progress, 0.5, 1.0))
    return preview_prices(
        binder,
        price_table(content, progress=halves[0]),
        take_good_rows=take_good_rows,
        priced_on=priced_on,
        today=today,
        source=source,
        progress=halves[1],
    )


def part_of(progress: Callable[[float], None], begin: float, end: float) -> Callable[[float], None]:
    """The progress of a part of the work, told as that of the whole."""
    return lambda share: progress(begin + share * (end - begin))


def preview_prices(  # noqa: PLR0913 - each is a choice by itself, made by keyword
    binder: Binder,
    table: PriceTable,
    *,
    columns: Mapping[str, int | None] | None = None,
    take_good_rows: bool = False,
    new_stores: bool = False,
    priced_on: date | None = None,
    today: date | None = None,
    source: str = "",
    progress: Callable[[float], None] | None = None,
) -> PriceList:
    """What becomes of each row of a table, before anything is changed.

    `columns` are places from 0 of columns chosen by hand (None: not in the list); the others are guessed. One refused
    row refuses the list, unless `take_good_rows`. `new_stores`: stores that the binder has not are made. `priced_on` is
    the day of prices without one; prices of after `today` are refused; `source` is noted with each price. `progress` is
    told the part done, from 0 to 1, and may raise to stop. Raises UnreadableTableError where a column that must be
    there is not.
    """
    layout = table.layout(columns)
    layout.require()
    rows = table.prices(layout)
    reader = PriceRowReader(
        binder,
        layout,
        rows,
        priced_on=priced_on,
        today=today,
        width=len(layout.headings) if table.cells_may_slip and layout.headings else None,
        commas_part=table.commas_part,
        new_stores=new_stores,
    )
    entry = _Entry(reader, PriceLedger(binder, source[:300]), PriceWords(binder))
    with uncollected():
        fates = entry.all(rows, progress)
    places: dict[Fate, list[int]] = {}
    for at, row in enumerate(in_turns(fates)):
        places.setdefault(row.fate, []).append(at)
    whole = take_good_rows or Fate.REFUSED not in places
    return PriceList(fates, entry.change() if whole else None, layout, reader.unknown_stores, places)


class _Entry:
    """Takes row after row, each on what those before have made."""

    def __init__(self, reader: PriceRowReader, ledger: PriceLedger, words: PriceWords) -> None:
        self._reader, self._ledger, self._words = reader, ledger, words

    def change(self) -> Change | None:
        """The change that all rows taken make together; None where they make none."""
        return self._ledger.change()

    def all(self, rows: Sequence[TableRow], progress: Callable[[float], None] | None) -> tuple[RowFate, ...]:
        """What becomes of each row."""
        fates = []
        for index, row in enumerate(in_turns(rows)):
            if progress and index % _ROWS_BETWEEN_REPORTS == 0:
                progress(index / len(rows))
            fates.append(self._fate(row))
        return tuple(fates)

    def _fate(self, row: TableRow) -> RowFate:
        try:
            entered = self._entered(row)
        except BinderError as error:
            return RowFate(row.number, Fate.REFUSED, error.says, self._words)
        fate = Fate.NEW if entered.known is None else Fate.SAME if entered.known == entered.read.price else Fate.CHANGED
        return RowFate(row.number, fate, entered, self._words)

    def _entered(self, row: TableRow) -> Entered:
        read = self._reader.read(row)
        pack = self._ledger.pack(read.food, store=read.store, size=read.size, unit=read.unit, label=read.label)
        is_new = self._ledger.is_new(pack)
        return Entered(read, pack, is_new, self._ledger.enter(pack, price=read.price, on=read.on, number=row.number))
