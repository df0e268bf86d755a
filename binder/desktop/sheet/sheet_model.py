"""The item model of a table: shows the rows a presenter gives, and repaints exactly those that differ."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QAbstractTableModel, QMimeData, QModelIndex, QObject, QPersistentModelIndex, Qt, Signal

from binder.desktop.sheet.cell import NOTHING, Align, Cell, Row
from binder.desktop.sheet.row_difference import Inserted, Moved, Removed, steps_between
from binder.desktop.sheet.sheet import Sheet, Sight
from binder.kitchen.binder import Binder
from binder.kitchen.change import Change, apply
from binder.kitchen.errors import BinderError

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

Index = QModelIndex | QPersistentModelIndex
CELL_ROLE = Qt.ItemDataRole.UserRole + 1
ROW_ROLE = Qt.ItemDataRole.UserRole + 2
_ROW_MIME = "application/x-binder-row"

_FLAGS = {
    (editable, adds): Qt.ItemFlag.ItemIsEnabled
    | Qt.ItemFlag.ItemIsSelectable
    | Qt.ItemFlag.ItemNeverHasChildren
    | (Qt.ItemFlag.ItemIsEditable if editable else Qt.ItemFlag.NoItemFlags)
    | (Qt.ItemFlag.NoItemFlags if adds else Qt.ItemFlag.ItemIsDragEnabled)
    for editable in (False, True)
    for adds in (False, True)
}
"""What a cell allows, by whether it can be edited and its row begins new records; asked for each cell painted."""


_ENOUGH_TO_COMPARE = 1000
"""Rows made anew together; of more it is not looked which of them say the same as before."""

_ENOUGH_TO_TELL = 50
"""Rows that are others together; of more it is not looked which of their columns are the same."""


class SheetModel(QAbstractTableModel):
    """Rows of a `Sheet`. `make` is given each change an edit leads to and says whether it was made."""

    followed = Signal()
    """All rows are those of the sight that was to be shown."""

    def __init__(self, sheet: Sheet, make: Callable[[Change], bool], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.sheet = sheet
        self.columns = sheet.columns
        self.sight = Sight(Binder())
        self._make = make
        self._rows: list[Row] = []

    def show_sight(self, sight: Sight) -> None:
        """Follow to another value of the binder; look at another subject, or at first, anew."""
        same = (sight.shoot, sight.subject) == (self.sight.shoot, self.sight.subject)
        self.sight = sight
        rows, columns = self.sheet.rows(sight), self.sheet.columns_for(sight)
        if columns != self.columns:
            self.columns = columns
            self.headerDataChanged.emit(Qt.Orientation.Horizontal, 0, len(columns) - 1)
        if same and self._rows:
            self._follow(rows)
        else:
            self.beginResetModel()
            self._rows = rows
            self.endResetModel()
        self.followed.emit()

    def _follow(self, rows: list[Row]) -> None:
        after = {row.key: row for row in rows}
        for step in steps_between([row.key for row in self._rows], [row.key for row in rows]):
            if isinstance(step, Removed):
                self.beginRemoveRows(QModelIndex(), step.first, step.last)
                del self._rows[step.first : step.last + 1]
                self.endRemoveRows()
            elif isinstance(step, Moved):
                self._move(step)
            elif isinstance(step, Inserted):
                self.beginInsertRows(QModelIndex(), step.start, step.start + step.count - 1)
                self._rows[step.start : step.start] = rows[step.start : step.start + step.count]
                self.endInsertRows()
        others = [at for at, row in enumerate(self._rows) if after[row.key] is not row]
        if len(others) <= _ENOUGH_TO_COMPARE:
            others = [at for at in others if after[self._rows[at].key] != self._rows[at]]
        for first, last in _runs(others):
            self._replace(first, [after[row.key] for row in self._rows[first : last + 1]])

    def _move(self, step: Moved) -> None:
        below = step.target if step.target < step.source else step.target + 1
        self.beginMoveRows(QModelIndex(), step.source, step.source, QModelIndex(), below)
        self._rows.insert(step.target, self._rows.pop(step.source))
        self.endMoveRows()

    def _replace(self, first: int, rows: list[Row]) -> None:
        """Put rows in place of those from `first` on, and tell which columns are others in any of them."""
        before = self._rows[first : first + len(rows)]
        self._rows[first : first + len(rows)] = rows
        pairs = list(zip(before, rows, strict=True))
        differ = {at for old, new in pairs[:_ENOUGH_TO_TELL] for at in _others(old, new)}
        if not differ or len(pairs) > _ENOUGH_TO_TELL or any(old.spans != new.spans for old, new in pairs):
            differ = set(range(self.columnCount()))
        roles = [] if any(_is_sized_otherwise(old, new) for old, new in pairs) else _ROLES_BUT_SIZE
        self.dataChanged.emit(self.index(first, min(differ)), self.index(first + len(rows) - 1, max(differ)), roles)

    def row_at(self, at: int) -> Row:
        """The row at a place."""
        return self._rows[at]

    def row_numbered(self, key: str) -> int | None:
        """Where the row with a key is; None where it is not shown."""
        return next((at for at, row in enumerate(self._rows) if row.key == key), None)

    def cell(self, index: Index) -> Cell:
        """The cell at an index."""
        return self._rows[index.row()].cells[index.column()] if index.isValid() else NOTHING

    def change_for(self, index: Index, text: str) -> Change:
        """The change that typing `text` there is, tried on the binder. Raises BinderError where it cannot be made."""
        column = self.columns[index.column()].id
        change = self.sheet.edit(self.sight, self._rows[index.row()].key, column, text)
        apply(self.sight.binder, change)
        return change

    def takes(self, index: Index, text: str) -> bool:
        """Type `text` into a cell where that can be; whether it was taken."""
        try:
            return self._make(self.change_for(index, text))
        except BinderError:
            return False

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        return 0 if parent.isValid() else len(self._rows)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008
        return 0 if parent.isValid() else len(self.columns)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:  # noqa: ANN401 - Qt's variant
        if not index.isValid() or index.row() >= len(self._rows):
            return None
        reader = _READERS.get(role)
        if reader is not None:
            return reader(self._rows[index.row()].cells[index.column()])
        if role == ROW_ROLE:
            return self._rows[index.row()]
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _ALIGNMENT[self.columns[index.column()].align]
        return None

    def setData(self, index: Index, value: object, role: int = Qt.ItemDataRole.EditRole) -> bool:
        if role != Qt.ItemDataRole.EditRole or not index.isValid():
            return False
        change = self.change_for(index, str(value))
        return change.empty or self._make(change)

    def make(self, change: Change | None) -> bool:
        """Make a change that a remedy, a key or a drag led to; nothing where there is none."""
        return change is not None and not change.empty and self._make(change)

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> Any:  # noqa: ANN401
        if orientation != Qt.Orientation.Horizontal or not 0 <= section < len(self.columns):
            return None
        column = self.columns[section]
        if role == Qt.ItemDataRole.DisplayRole:
            return column.title
        if role == Qt.ItemDataRole.ToolTipRole:
            return column.tip or None
        return _ALIGNMENT[column.align] if role == Qt.ItemDataRole.TextAlignmentRole else None

    def flags(self, index: Index) -> Qt.ItemFlag:
        if not index.isValid():
            return Qt.ItemFlag.ItemIsDropEnabled
        row = self._rows[index.row()]
        return _FLAGS[row.cells[index.column()].edit is not None, row.adds]

    def supportedDropActions(self) -> Qt.DropAction:
        return Qt.DropAction.MoveAction

    def mimeTypes(self) -> list[str]:
        return [_ROW_MIME]

    def mimeData(self, indexes: Sequence[QModelIndex]) -> QMimeData:
        data = QMimeData()
        if indexes:
            data.setData(_ROW_MIME, self._rows[indexes[0].row()].key.encode())
        return data

    def dropMimeData(self, data: QMimeData, action: Qt.DropAction, row: int, column: int, parent: Index) -> bool:
        """Move the dragged row; always False, so that the view takes nothing out itself."""
        key = bytes(data.data(_ROW_MIME).data()).decode()
        target = row if row >= 0 else parent.row() if parent.isValid() else len(self._rows)
        before = self._rows[target].key if target < len(self._rows) else None
        if self.row_numbered(key) is not None and before != key:
            self.make(self.sheet.move_before(self.sight, key, before))
        return False


def _shown(cell: Cell) -> str:
    return f"{cell.text} {cell.unit}".strip() or cell.placeholder


_READERS: dict[int, Callable[[Cell], Any]] = {
    Qt.ItemDataRole.DisplayRole: _shown,
    Qt.ItemDataRole.EditRole: lambda cell: cell.edit if cell.edit is not None else _shown(cell),
    Qt.ItemDataRole.ToolTipRole: lambda cell: cell.tip or None,
    Qt.ItemDataRole.AccessibleTextRole: lambda cell: cell.says,
    CELL_ROLE: lambda cell: cell,
}
_ALIGNMENT = {
    Align.LEFT: int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter),
    Align.RIGHT: int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter),
    Align.DECIMAL: int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter),
}


_ROLES_BUT_SIZE = [*map(int, _READERS), ROW_ROLE]
"""What is told of rows that are others and as high as before."""


def _others(old: Row, new: Row) -> list[int]:
    """The columns in which a row is another."""
    return [at for at, cell in enumerate(new.cells) if at >= len(old.cells) or old.cells[at] != cell]


def _is_sized_otherwise(old: Row, new: Row) -> bool:
    """Whether a row may be as high as another is not, or reach over others of its columns."""
    if old.wraps or new.wraps or (old.lines, old.gap, old.spans) != (new.lines, new.gap, new.spans):
        return True
    if len(old.cells) != len(new.cells):
        return True
    return any((one.folds or other.folds) and one != other for one, other in zip(old.cells, new.cells, strict=True))


def _runs(places: Sequence[int]) -> Iterator[tuple[int, int]]:
    """The first and last of each run of places that follow one another."""
    for _gap, run in groupby(enumerate(places), key=lambda numbered: numbered[1] - numbered[0]):
        several = [place for _number, place in run]
        yield several[0], several[-1]
