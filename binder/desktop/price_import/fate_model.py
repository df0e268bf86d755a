"""The rows of a price list with what becomes of each: as many as there are, painted as they come into sight."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt

from binder.exchange.price_list import Fate
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.desktop.price_import.reading import Reading
    from binder.exchange.price_list import PriceList
    from binder.exchange.table_cell import TableRow

NUMBER, FATE, SAYS, STANDS = range(4)
_NO_INDEX = QModelIndex()


def fate_word(fate: Fate) -> str:
    """What becomes of a row, as a shape and a word."""
    return {
        Fate.NEW: _("+ new"),
        Fate.CHANGED: _("± changed"),
        Fate.SAME: _("= as it is"),
        Fate.REFUSED: _("◣ refused"),
    }[fate]


class FateModel(QAbstractTableModel):
    """Rows by number, their fate, why, and the row as the file has it."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._rows: Sequence[TableRow] = ()
        self._prices: PriceList | None = None
        self._shown: Sequence[int] = ()
        self._only: Fate | None = None

    def show_reading(self, reading: Reading | None) -> None:
        """Show another reading, of the same fate as before; the rows alone where nothing can be told of them yet."""
        self._prices = prices = reading.prices if reading is not None else None
        self._rows = () if reading is None else reading.table.rows
        if reading is not None and prices is not None:
            self._rows = reading.table.prices(prices.layout)
        self.show_only(self._only if prices is not None else None)

    @property
    def count(self) -> int:
        """How many rows there are, shown or not."""
        return len(self._rows)

    def show_only(self, fate: Fate | None) -> None:
        """Show only the rows of one fate; None: all, the refused ones first."""
        self.beginResetModel()
        self._only = fate
        if self._prices is None:
            self._shown = range(len(self._rows))
        else:
            self._shown = self._prices.refused_first if fate is None else self._prices.places.get(fate, ())
        self.endResetModel()

    def sentence(self, at: int) -> str:
        """What a row shown at a place says, whole; empty where nothing can be told of it."""
        if not 0 <= at < len(self._shown) or self._prices is None:
            return ""
        fate = self._prices.rows[self._shown[at]]
        return _("Row {number}: {says}").format(number=fate.number, says=fate.says)

    def rowCount(self, parent: QModelIndex | QPersistentModelIndex = _NO_INDEX) -> int:
        return 0 if parent.isValid() else len(self._shown)

    def columnCount(self, parent: QModelIndex | QPersistentModelIndex = _NO_INDEX) -> int:
        return 0 if parent.isValid() else 4

    def data(self, index: QModelIndex | QPersistentModelIndex, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        if not index.isValid():
            return None
        at = self._shown[index.row()]
        if role in {Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.ToolTipRole}:
            return self._text(at, index.column())
        if role == Qt.ItemDataRole.TextAlignmentRole and index.column() == NUMBER:
            return Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        return None

    def _text(self, at: int, column: int) -> str:
        if column == STANDS:
            return " · ".join(filter(None, self._rows[at].shown))
        if self._prices is None:
            return str(self._rows[at].number) if column == NUMBER else ""
        fate = self._prices.rows[at]
        return {NUMBER: str(fate.number), FATE: fate_word(fate.fate), SAYS: fate.says}[column]

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> str | None:
        if orientation is not Qt.Orientation.Horizontal or role != Qt.ItemDataRole.DisplayRole:
            return None
        return (_("row"), _("becomes"), _("what it says"), _("as the file has it"))[section]
