"""Bringing a price list into a binder file: every row's fate is shown, and all of it is one change or none."""

from __future__ import annotations

import sys
from contextlib import contextmanager
from dataclasses import dataclass
from typing import TYPE_CHECKING

import typer

from binder.cli.endings import ExitCode, WrongUsageError
from binder.exchange.price_columns import COLUMNS, UnknownColumnError, column_letter, column_place, guessed_columns
from binder.exchange.price_list import Fate, PriceList, part_of, preview_prices
from binder.exchange.price_table import price_table
from binder.exchange.table_cell import UnreadableTableError
from binder.kitchen.errors import BinderError
from binder.kitchen.whole_file import read_whole
from binder.kitchen.wording import _, listed, ngettext

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence
    from datetime import date
    from pathlib import Path

    from binder.exchange.price_columns import PriceLayout
    from binder.exchange.price_list import RowFate
    from binder.exchange.price_table import PriceTable
    from binder.kitchen.binder import Binder

_MOST_SHOWN = 500
"""Rows that someone reads through in a terminal; of more, those that are refused or change a price come first."""


class RowsRefusedError(BinderError):
    """A price list of which nothing was taken, because a row could not be."""

    def __init__(self, prices: PriceList, *, priced: bool) -> None:
        """`priced`: whether the day of prices without one was said."""
        hint = _("Mend the list, or take its good rows with --good-rows.")
        if not priced and "date" not in prices.layout.places:
            hint = _("It has no column of dates: say the day of its prices, as --priced-on 2026-03-14.")
        elif prices.unknown_stores:
            hint = _("Mend the list, add its stores with --new-stores, or take its good rows with --good-rows.")
        super().__init__(f"{prices.summary()} {hint}")


@dataclass(frozen=True)
class PriceImport:
    """A price list to bring in. `priced_on` is the day of prices without one; prices of after `today` are refused.

    `columns` says which column is what, as it was typed (`food=A,price=D`); `sheet` which sheet of a workbook.
    """

    file: Path
    good_rows: bool
    priced_on: date | None
    today: date
    columns: str = ""
    sheet: str | None = None
    new_stores: bool = False

    def bring_into(self, into: Path, *, as_json: bool) -> None:
        """Read the list, make its change, show what became of each row. Raises RowsRefusedError where none is taken."""
        from binder.storage.document import OpenDocument

        content = read_whole(self.file)
        document = OpenDocument.open(into)
        try:
            with _progress(content) as progress:
                prices, _table = self._read(document.binder, content, progress)
            if prices.change:
                document.make(prices.change)
        finally:
            document.close()
        if as_json:
            _answer(document.binder, prices, changed=prices.change is not None)
        else:
            _show(prices)
        if prices.refused and not self.good_rows:
            raise self._refused(prices)

    def preview(self, into: Path, *, as_json: bool) -> None:
        """Show what would become of each row, and change nothing. Exit code 1 where the list would be refused."""
        from binder.cli.loaded import loaded

        content = read_whole(self.file)
        binder = loaded(into)
        with _progress(content) as progress:
            prices, table = self._read(binder, content, progress)
        if as_json:
            _answer(binder, prices, changed=False)
        else:
            _show_columns(prices, table)
            _show(prices)
            if prices.refused and not self.good_rows:
                _say_below(self._refused(prices).says)
        if prices.refused and not self.good_rows:
            raise typer.Exit(ExitCode.CHECK_FAILED)

    def _refused(self, prices: PriceList) -> RowsRefusedError:
        return RowsRefusedError(prices, priced=self.priced_on is not None)

    def _read(
        self, binder: Binder, content: bytes, progress: Callable[[float], None] | None
    ) -> tuple[PriceList, PriceTable]:
        reading, entering = (None, None) if progress is None else (part_of(progress, 0, 0.5), part_of(progress, 0.5, 1))
        table = price_table(content, sheet=self.sheet, progress=reading)
        columns = _chosen(self.columns, table.layout().headings)
        _require(table.layout(columns))
        prices = preview_prices(
            binder,
            table,
            columns=columns,
            take_good_rows=self.good_rows,
            new_stores=self.new_stores,
            priced_on=self.priced_on,
            today=self.today,
            source=self.file.name,
            progress=entering,
        )
        return prices, table


def _require(layout: PriceLayout) -> None:
    """Raise UnreadableTableError, with the option that says it, where a column that must be there is not found."""
    if layout.trouble:
        raise UnreadableTableError(layout.trouble.removesuffix(".") + ": --columns food=A,size=B,price=C.")


def _chosen(typed: str, headings: Sequence[str]) -> dict[str, int | None]:
    """`food=A,price=D,label=` as places by column; nothing after the sign says that there is no such column."""
    chosen: dict[str, int | None] = {}
    for part in filter(None, (part.strip() for part in typed.split(","))):
        name, sign, asked = (piece.strip() for piece in part.partition("="))
        column = next(iter(guessed_columns([name])), "")
        if not column or not sign:
            says = _("“{part}” names no column: write {columns}, each with = and a letter or heading, as food=A.")
            raise WrongUsageError(says.format(part=part[:60], columns=listed(map(_, COLUMNS), joined_by=_("or"))))
        try:
            chosen[column] = column_place(asked, headings) if asked else None
        except UnknownColumnError as unknown:
            raise WrongUsageError(unknown.says) from unknown
    return chosen


@contextmanager
def _progress(content: bytes) -> Iterator[Callable[[float], None] | None]:
    """A bar on standard error while a long list is read, where someone looks at it."""
    if not sys.stderr.isatty() or len(content) < 200_000:  # noqa: PLR2004 - below, it is read before a bar is seen
        yield None
        return
    from rich.console import Console
    from rich.progress import Progress

    with Progress(console=Console(stderr=True), transient=True) as bar:
        task = bar.add_task(_("Reading prices"), total=1.0)
        yield lambda share: bar.update(task, completed=share)


def _answer(binder: Binder, prices: PriceList, *, changed: bool) -> None:
    from binder.cli.answer import print_answer

    rows = [{"row": row.number, "fate": row.fate.value, "says": row.says} for row in prices.rows]
    columns = {name: column_letter(place) for name, place in prices.layout.places.items()}
    print_answer({"binder": binder.settings.name, "columns": columns, "rows": rows, "changed": changed})


def _show_columns(prices: PriceList, table: PriceTable) -> None:
    """Which column was taken for what, and of which sheet."""
    from binder.cli.columns import words
    from binder.cli.terminal import say, show_table

    if table.sheet:
        say(_("Sheet “{sheet}”").format(sheet=table.sheet))
    places, headings = prices.layout.places, prices.layout.headings
    rows = [
        [_(name), column_letter(places[name]), headings[places[name]] if places[name] < len(headings) else ""]
        for name in COLUMNS
        if name in places
    ]
    show_table([words(_("What")), words(_("Column")), words(_("Heading"))], rows)
    say()


def _show(prices: PriceList) -> None:
    from binder.cli.columns import numbers, words
    from binder.cli.terminal import say, show_table

    marks = {Fate.NEW: _("+ new"), Fate.CHANGED: _("± changed"), Fate.SAME: _("= same"), Fate.REFUSED: _("◣ refused")}
    columns = [numbers(_("Row")), words(_("Fate")), words(_("What it says"))]
    shown = _worth_showing(prices.rows)
    show_table(columns, [[str(row.number), marks[row.fate], row.says] for row in shown])
    more = len(prices.rows) - len(shown)
    if more:
        says = ngettext("{count} row more; --json has it.", "{count} rows more; --json has them all.", more)
        say(says.format(count=more))
    if prices.change or not prices.refused:
        _say_below(prices.summary())


def _say_below(sentence: str) -> None:
    from binder.cli.terminal import say

    say()
    say(sentence)


def _worth_showing(rows: Sequence[RowFate]) -> Sequence[RowFate]:
    if len(rows) <= _MOST_SHOWN:
        return rows
    order = [Fate.REFUSED, Fate.CHANGED, Fate.NEW, Fate.SAME]
    first = sorted(rows, key=lambda row: order.index(row.fate))[:_MOST_SHOWN]
    return sorted(first, key=lambda row: row.number)
