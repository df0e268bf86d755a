"""Which column of a price list is what: a choice for each thing that can be in one, guessed from the headings."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QSignalBlocker, Signal
from PySide6.QtWidgets import QComboBox, QGridLayout, QLabel, QSizePolicy, QWidget

from binder.desktop.spacing import characters, space
from binder.exchange.price_columns import COLUMNS, REQUIRED, column_letter
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.price_import.reading import Reading
    from binder.exchange.table_cell import TableRow

_A_ROW = 4
"""Choices beside each other."""

_LONGEST = 24
_LOOKED_AT = 30


class ColumnMapper(QWidget):
    """`chosen` is emitted with the name of a column and its place from 0; None where it is not in the list."""

    chosen = Signal(str, object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.choices: dict[str, QComboBox] = {}
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(space(self, 3))
        grid.setVerticalSpacing(space(self, 0.5))
        for at, name in enumerate(COLUMNS):
            box = QComboBox(self)
            box.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
            box.setMinimumWidth(characters(self.font(), 16))
            box.setAccessibleName(_(name))
            box.activated.connect(self._activated)
            label = QLabel(_(name) if name in REQUIRED else _("{column}, if there").format(column=_(name)), self)
            label.setProperty("quiet", True)
            label.setBuddy(box)
            row, column = 2 * (at // _A_ROW), at % _A_ROW
            grid.addWidget(label, row, column)
            grid.addWidget(box, row + 1, column)
            grid.setColumnStretch(column, 1)
            self.choices[name] = box

    def show_reading(self, reading: Reading) -> None:
        """Offer the columns of a file, those it is read by chosen."""
        rows = reading.table.rows
        sample = next(iter(reading.table.prices(reading.layout)), None)
        width = max((len(row.cells) for row in rows[:_LOOKED_AT]), default=0)
        titles = [_title(at, reading.layout.headings, sample) for at in range(width)]
        for name, box in self.choices.items():
            place = reading.layout.places.get(name)
            with QSignalBlocker(box):
                box.clear()
                box.addItem(_("– not in the list"), None)
                for at, title in enumerate(titles):
                    box.addItem(title, at)
                box.setCurrentIndex(0 if place is None else place + 1)

    def _activated(self) -> None:
        box = self.sender()
        name = next((name for name, one in self.choices.items() if one is box), "")
        if name:
            self.chosen.emit(name, self.choices[name].currentData())


def _title(at: int, headings: tuple[str, ...], sample: TableRow | None) -> str:
    """`C: price`; where a column has no heading, what stands first in it."""
    shown = headings[at] if at < len(headings) else ""
    first = sample.shown[at] if sample is not None and at < len(sample.cells) else ""
    text = " ".join((shown or first).split())
    cut = text if len(text) <= _LONGEST else f"{text[: _LONGEST - 1]}…"
    return f"{column_letter(at)}: {cut}" if cut else column_letter(at)
