"""The row above the things of one day, in lists that go over several."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import NOTHING, Cell, Row, Size
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from datetime import date


def day_heading(day: date, name: str, *, before: int, columns: int, first: bool) -> Row:
    """`Thursday, December 3, 2 days before`: the day as it is called, and how many it is `before` the shoot's."""
    text = name
    if before > 0:
        count = ngettext("{count} day", "{count} days", before).format(count=before)
        text = _("{day}, {count} before").format(day=name, count=count)
    cells = (Cell(text, size=Size.STRONG), *(NOTHING,) * (columns - 1))
    return Row(f"day:{day.isoformat()}", cells, spans=((0, columns),), gap=0 if first else 3, lines=1.5)
