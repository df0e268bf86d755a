"""Bringing a price list into a binder file: every row's fate is shown, and all of it is one change or none."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.exchange.price_list import Fate, PriceList, read_price_list
from binder.kitchen.errors import BinderError
from binder.kitchen.whole_file import read_whole
from binder.kitchen.wording import _
from binder.storage.document import OpenDocument

if TYPE_CHECKING:
    from datetime import date
    from pathlib import Path

    from binder.kitchen.binder import Binder


class RowsRefusedError(BinderError):
    """A price list of which nothing was taken, because a row could not be."""

    def __init__(self, prices: PriceList) -> None:
        hint = _("Mend the list, or take its good rows with --good-rows.")
        super().__init__(f"{prices.summary()} {hint}")


@dataclass(frozen=True)
class PriceImport:
    """A price list to bring in. `priced_on` is the day of prices without one; prices of after `today` are refused."""

    file: Path
    good_rows: bool
    priced_on: date | None
    today: date

    def bring_into(self, into: Path, *, as_json: bool) -> None:
        """Read the list, make its change, show what became of each row. Raises RowsRefusedError where none is taken."""
        content = read_whole(self.file)
        document = OpenDocument.open(into)
        try:
            prices = self._read(document.binder, content)
            if prices.change:
                document.make(prices.change)
        finally:
            document.close()
        if as_json:
            _answer(document.binder, prices)
        else:
            _show(prices)
        if prices.refused and not self.good_rows:
            raise RowsRefusedError(prices)

    def _read(self, binder: Binder, content: bytes) -> PriceList:
        return read_price_list(
            binder,
            content,
            take_good_rows=self.good_rows,
            priced_on=self.priced_on,
            today=self.today,
            source=self.file.name,
        )


def _answer(binder: Binder, prices: PriceList) -> None:
    from binder.cli.answer import print_answer

    rows = [{"row": row.number, "fate": row.fate.value, "says": row.says} for row in prices.rows]
    print_answer({"binder": binder.settings.name, "rows": rows, "changed": prices.change is not None})


def _show(prices: PriceList) -> None:
    from binder.cli.columns import numbers, words
    from binder.cli.terminal import say, show_table

    marks = {Fate.NEW: _("+ new"), Fate.CHANGED: _("± changed"), Fate.SAME: _("= same"), Fate.REFUSED: _("◣ refused")}
    columns = [numbers(_("Row")), words(_("Fate")), words(_("What it says"))]
    show_table(columns, [[str(row.number), marks[row.fate], row.says] for row in prices.rows])
    if prices.change or not prices.refused:
        say()
        say(prices.summary())
