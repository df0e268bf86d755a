"""What is asked of a price list, and what was found in it. Plain Python: worked out beside the window."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from binder.exchange.price_list import part_of, preview_prices
from binder.exchange.price_table import price_table
from binder.exchange.table_cell import UnreadableTableError

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping
    from datetime import date

    from binder.exchange.price_columns import PriceLayout
    from binder.exchange.price_list import PriceList
    from binder.exchange.price_table import PriceTable
    from binder.kitchen.binder import Binder


@dataclass(frozen=True)
class Question:
    """How a file is to be read: `columns` by place from 0 (None: not in the list), where they are chosen by hand.

    `priced_on` is the day of prices without one; prices of after `today` are refused.
    """

    content: bytes = field(repr=False)
    source: str
    today: date
    priced_on: date | None = None
    sheet: str | None = None
    columns: Mapping[str, int | None] = field(default_factory=dict)
    good_rows: bool = False
    new_stores: bool = False

    def with_column(self, name: str, place: int | None) -> Question:
        """The same with another column chosen for something."""
        return replace(self, columns={**self.columns, name: place})


@dataclass(frozen=True)
class Reading:
    """A file as it was read: its table and columns, and what becomes of its rows; where that cannot be told, `why`."""

    question: Question
    table: PriceTable
    layout: PriceLayout
    prices: PriceList | None
    why: str = ""


def read(
    binder: Binder, question: Question, progress: Callable[[float], None], *, known: PriceTable | None = None
) -> Reading:
    """Read a price list; `known` is its table where the sheet is read already.

    `progress` is told the part done, from 0 to 1, and may raise to stop. Raises UnreadableTableError where the file
    holds no table at all.
    """
    table = known or price_table(question.content, sheet=question.sheet, progress=part_of(progress, 0.0, 0.5))
    layout = table.layout(question.columns)
    try:
        prices = preview_prices(
            binder,
            table,
            columns=question.columns,
            take_good_rows=question.good_rows,
            new_stores=question.new_stores,
            priced_on=question.priced_on,
            today=question.today,
            source=question.source,
            progress=part_of(progress, 0.5, 1.0),
        )
    except UnreadableTableError as error:
        return Reading(question, table, layout, None, error.says)
    return Reading(question, table, layout, prices)
