"""The table itself: sized by its text, moved in by keys, edited in place, reordered by dragging."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QEvent, QItemSelectionModel, QModelIndex, QPersistentModelIndex, Qt, Signal
from PySide6.QtWidgets import (
    QAbstractItemDelegate,
    QAbstractItemView,
    QFrame,
    QHeaderView,
    QScrollArea,
    QTableView,
    QWidget,
)

from binder.desktop.sheet.cell import Mark
from binder.desktop.sheet.cell_editor import LineEditor, ParagraphEditor
from binder.desktop.sheet.cell_faces import padding
from binder.desktop.sheet.cell_painting import folded_height, wrapped_height
from binder.desktop.sheet.sheet_delegate import SheetDelegate
from binder.desktop.sheet.sheet_header import SheetHeader, title_width
from binder.desktop.sheet.sheet_model import SheetModel
from binder.desktop.spacing import characters

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent, QResizeEvent

    from binder.desktop.sheet.cell import Cell, Row
    from binder.desktop.sheet.sheet import Sheet, Sight
    from binder.kitchen.change import Change

_EDIT = (
    QAbstractItemView.EditTrigger.DoubleClicked
    | QAbstractItemView.EditTrigger.EditKeyPressed
    | QAbstractItemView.EditTrigger.AnyKeyPressed
    | QAbstractItemView.EditTrigger.SelectedClicked
)
_NEAR = QAbstractItemView.ScrollHint.EnsureVisible


class SheetView(QTableView):
    """Shows a `Sheet`. `make` is given each change an edit leads to and says whether it was made."""

    place_asked = Signal(object)
    """A link was followed: the place it leads to."""
    place_current = Signal(object)
    """Another row is the current one: the place it shows, or None."""
    row_entered = Signal(object)
    """Enter on a row whose cells are not edited, or a click in a list: its place."""

    def __init__(self, sheet: Sheet, make: Callable[[Change], bool], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(sheet.name)
        self._sheet_model = SheetModel(sheet, make, self)
        self._delegate = SheetDelegate(self)
        self._header = SheetHeader(self)
        self._fits_rows = False
        self._folded_heights: dict[tuple[object, ...], int] = {}
        self._is_unsettled = self._has_spans = False
        self.setModel(self._sheet_model)
        self.setItemDelegate(self._delegate)
        self._delegate.left.connect(self._edit_ended)
        self._shape()
        for unsettling in (self._sheet_model.modelReset, self._sheet_model.rowsMoved, self._sheet_model.rowsRemoved):
            unsettling.connect(self._unsettle)
        self._sheet_model.rowsInserted.connect(self._set_inserted)
        self._sheet_model.dataChanged.connect(self._set_changed)
        self._sheet_model.followed.connect(self._settle)
        self._sheet_model.headerDataChanged.connect(self._set_columns)

    def _shape(self) -> None:
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setShowGrid(False)
        self.setWordWrap(True)
        self.setCornerButtonEnabled(False)
        self.setTabKeyNavigation(False)
        self.setMouseTracking(True)
        self.setEditTriggers(_EDIT)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.verticalHeader().hide()
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.verticalHeader().setMinimumSectionSize(1)
        self.setHorizontalHeader(self._header)
        self._header.setMinimumSectionSize(1)
        self._header.setVisible(any(column.title for column in self._sheet_model.columns))

    def fit_rows(self) -> None:
        """Be as high as the rows are: the page scrolls, the table does not."""
        self._fits_rows = True
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._fit()

    def _fit(self) -> None:
        if self._fits_rows:
            self.setFixedHeight(self.content_height())

    def scrollTo(self, index: QModelIndex | QPersistentModelIndex, hint: QAbstractItemView.ScrollHint = _NEAR) -> None:
        if not self._fits_rows:
            super().scrollTo(index, hint)
            return
        area = self.parentWidget()
        while area is not None and not isinstance(area, QScrollArea):
            area = area.parentWidget()
        if isinstance(area, QScrollArea):
            box = self.visualRect(index)
            middle = self.viewport().mapTo(area.widget() or area, box.center())
            area.ensureVisible(middle.x(), middle.y(), 0, box.height())

    def allow_dragging(self) -> None:
        """Let rows be dragged to another place among their siblings."""
        self.setDragDropMode(QAbstractItemView.DragDropMode.InternalMove)
        self.setDragDropOverwriteMode(False)
        self.setDefaultDropAction(Qt.DropAction.MoveAction)
        self.setDropIndicatorShown(True)

    @property
    def sheet_model(self) -> SheetModel:
        """The model shown."""
        return self._sheet_model

    def show_sight(self, sight: Sight) -> None:
        """Show a value of the binder; the current row stays the current one."""
        self._sheet_model.show_sight(sight)

    # Rows by what they show

    def row_at(self, at: int) -> Row:
        """The row at a place."""
        return self._sheet_model.row_at(at)

    def shown_text(self, keys: list[str]) -> str:
        """Rows as text, their cells parted by tabs, as other programs take them."""
        model = self._sheet_model
        rows = [model.row_at(at) for at in range(model.rowCount()) if model.row_at(at).key in keys]
        return "\n".join("\t".join(f"{cell.text} {cell.unit}".strip() for cell in row.cells) for row in rows)

    def type_in(self, text: str) -> None:
        """Type text into the current cell; in the row that begins new records, each line of it by itself.

        Where a line is not understood its editor stays open with the reason.
        """
        model, index = self._sheet_model, QPersistentModelIndex(self.currentIndex())
        lines = [line.strip() for line in text.splitlines() if line.strip()] or [""]
        while index.isValid() and model.cell(index).edit is not None and lines:
            if not (model.row_at(index.row()).adds and model.takes(index, lines[0])):
                self.edit_and_type(model.index(index.row(), index.column()), lines[0])
                return
            lines = lines[1:]

    def begin_edit(self, index: QModelIndex) -> bool:
        """Open the editor of a cell; where one is open that cannot be left, go there instead."""
        if self.state() == QAbstractItemView.State.EditingState:
            open_one = self.viewport().findChild(LineEditor) or self.viewport().findChild(ParagraphEditor)
            if open_one is not None:
                open_one.setFocus(Qt.FocusReason.OtherFocusReason)
            return False
        if self._sheet_model.cell(index).edit is None:
            return False
        return self.edit(index, QAbstractItemView.EditTrigger.AllEditTriggers, QEvent(QEvent.Type.None_))

    def edit_and_type(self, index: QModelIndex, text: str) -> None:
        """Open the editor of a cell with a text that is not taken yet."""
        self.begin_edit(index)
        editor = self.viewport().findChild(LineEditor)
        if isinstance(editor, LineEditor):
            editor.setText(text)
            editor.typed.emit()

    def current_row(self) -> Row | None:
        """The current row, or None."""
        index = self.currentIndex()
        return self._sheet_model.row_at(index.row()) if index.isValid() else None

    def selected_keys(self) -> list[str]:
        """The keys of the selected rows, from the top."""
        rows = sorted({index.row() for index in self.selectionModel().selectedIndexes()})
        return [self._sheet_model.row_at(at).key for at in rows]

    def select_key(self, key: str, column: int | None = None) -> bool:
        """Make the row with a key the current one and bring it into sight; False where it is not shown."""
        at = self._sheet_model.row_numbered(key)
        if at is None:
            return False
        index = self._sheet_model.index(at, self._first_column(at) if column is None else column)
        self.selectionModel().setCurrentIndex(
            index, QItemSelectionModel.SelectionFlag.ClearAndSelect | QItemSelectionModel.SelectionFlag.Rows
        )
        self.scrollTo(index)
        return True

    def _first_column(self, at: int) -> int:
        cells = self._sheet_model.row_at(at).cells
        return next((place for place, cell in enumerate(cells) if cell.edit is not None), 0)

    def edit_key(self, key: str, column: int | None = None) -> bool:
        """Begin to edit a cell of the row with a key: its first that can be edited."""
        if not self.select_key(key, column) or self.currentIndex().isValid() is False:
            return False
        if self._sheet_model.cell(self.currentIndex()).edit is None:
            return False
        self.setFocus(Qt.FocusReason.OtherFocusReason)
        return self.begin_edit(self.currentIndex())

    def currentChanged(
        self, current: QModelIndex | QPersistentModelIndex, previous: QModelIndex | QPersistentModelIndex
    ) -> None:
        super().currentChanged(current, previous)
        if current.row() != previous.row() or not previous.isValid():
            self.place_current.emit(self._sheet_model.row_at(current.row()).place if current.isValid() else None)

    def closeEditor(self, editor: QWidget, hint: QAbstractItemDelegate.EndEditHint) -> None:
        """Qt closes an editor when another cell becomes the current one; not while it holds what is not understood."""
        if hint is QAbstractItemDelegate.EndEditHint.RevertModelCache or not self._delegate.keeps_open(editor):
            super().closeEditor(editor, hint)

    # Keys and clicks

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The keyboard always has a row to start from."""
        if not self.currentIndex().isValid() and self._sheet_model.rowCount():
            rows = [self._sheet_model.row_at(at) for at in range(self._sheet_model.rowCount())]
            self.select_key(next((row for row in rows if row.place is not None), rows[0]).key)
        super().focusInEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter} and not event.modifiers():
            self._enter(self.currentIndex())
            return
        cell = self._sheet_model.cell(self.currentIndex())
        if event.key() == Qt.Key.Key_Space and cell.edit is None and cell.leads_to is not None:
            self.place_asked.emit(cell.leads_to)
            return
        super().keyPressEvent(event)

    def _enter(self, index: QModelIndex) -> None:
        if not index.isValid():
            return
        cell = self._sheet_model.cell(index)
        if cell.edit is not None:
            self.begin_edit(index)
        elif cell.leads_to is not None:
            self.place_asked.emit(cell.leads_to)
        else:
            self.row_entered.emit(self._sheet_model.row_at(index.row()).place)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        super().mouseReleaseEvent(event)
        index = self.indexAt(event.position().toPoint())
        if event.button() != Qt.MouseButton.LeftButton or not index.isValid() or index != self.currentIndex():
            return
        cell, row = self._sheet_model.cell(index), self._sheet_model.row_at(index.row())
        if row.adds and cell.edit is not None and self.state() != QAbstractItemView.State.EditingState:
            self.begin_edit(index)
        elif cell.leads_to is not None:
            self.place_asked.emit(cell.leads_to)
        elif cell.edit is None:
            self.row_entered.emit(row.place)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        super().mouseMoveEvent(event)
        cell = self._sheet_model.cell(self.indexAt(event.position().toPoint()))
        link = cell.leads_to is not None
        self.viewport().setCursor(Qt.CursorShape.PointingHandCursor if link else Qt.CursorShape.ArrowCursor)

    def _edit_ended(self, place: object, key: object) -> None:
        """After Enter where new records are begun the next is begun; Tab goes on to the next cell to edit."""
        kept = cast("QPersistentModelIndex", place)
        if not kept.isValid():
            return
        index = self._sheet_model.index(kept.row(), kept.column())
        self.setFocus(Qt.FocusReason.OtherFocusReason)
        if key in {Qt.Key.Key_Tab, Qt.Key.Key_Backtab}:
            self._edit_next(index, 1 if key == Qt.Key.Key_Tab else -1)
        elif self._sheet_model.row_at(index.row()).adds:
            self.setCurrentIndex(index)
            self.begin_edit(index)

    def _edit_next(self, index: QModelIndex, by: int) -> None:
        width = self._sheet_model.columnCount()
        at = index.row() * width + index.column() + by
        while 0 <= at < self._sheet_model.rowCount() * width:
            nearby = self._sheet_model.index(at // width, at % width)
            if self._sheet_model.cell(nearby).edit is not None and not self._covered(nearby):
                self.setCurrentIndex(nearby)
                self.begin_edit(nearby)
                return
            at += by

    def _covered(self, index: QModelIndex) -> bool:
        row = self._sheet_model.row_at(index.row())
        return any(column < index.column() < column + count for column, count in row.spans)

    # Sizes

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._set_columns()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange:
            self._folded_heights.clear()
            self._header.updateGeometry()
            self._set_columns()
            self._set_all_rows()

    def _set_columns(self) -> None:
        columns = self._sheet_model.columns
        least = [
            max(characters(self.font(), column.characters) + 2 * padding(self.font()), title_width(self.font(), column))
            for column in columns
        ]
        spare = max(0, self.viewport().width() - sum(least))
        parts = sum(column.stretch for column in columns) or 1
        widths = [width + spare * column.stretch // parts for width, column in zip(least, columns, strict=True)]
        if widths != [self.columnWidth(at) for at in range(len(columns))]:
            for at, width in enumerate(widths):
                self.setColumnWidth(at, width)
            self._set_all_rows()
        self._fit()

    def _unsettle(self) -> None:
        self._is_unsettled = True

    def _settle(self) -> None:
        """Once for all steps to other rows: a list that is wholly another takes hundreds."""
        if self._is_unsettled:
            self._set_all_rows()
        else:
            self._fit()

    def _set_all_rows(self) -> None:
        self._is_unsettled = False
        for at in range(self._sheet_model.rowCount()):
            self._set_row(at)
        self._fit()

    def _set_inserted(self, parent: QModelIndex, first: int, last: int) -> None:
        for at in range(first, last + 1):
            self._set_row(at)

    def _set_changed(self, first: QModelIndex, last: QModelIndex, roles: Sequence[int]) -> None:
        if roles and Qt.ItemDataRole.SizeHintRole not in roles:
            return
        for at in range(first.row(), last.row() + 1):
            self._set_row(at)

    def _set_row(self, at: int) -> None:
        row = self._sheet_model.row_at(at)
        self._has_spans = self._has_spans or bool(row.spans)
        if self._has_spans:
            self._set_spans(at, row)
        height = self._height(row)
        if self.rowHeight(at) != height:
            self.setRowHeight(at, height)

    def _set_spans(self, at: int, row: Row) -> None:
        """Undo what no cell reaches over any more before others do: two spans that overlap are refused by Qt."""
        wanted, column = dict(row.spans), 0
        while column < self._sheet_model.columnCount():
            reach = self.columnSpan(at, column)
            if reach > 1 and wanted.get(column) != reach:
                self.setSpan(at, column, 1, 1)
            column += reach
        for first, count in wanted.items():
            if self.columnSpan(at, first) != count:
                self.setSpan(at, first, 1, count)

    @staticmethod
    def _inside(row: Row, column: int) -> bool:
        return any(start < column < start + count for start, count in row.spans)

    def _height(self, row: Row) -> int:
        faces = self._delegate.faces_of(self.font())
        plain, gap = faces.step(4.5 * row.lines), faces.step(row.gap) if row.gap else 0
        if row.wraps:
            spanned = dict(row.spans)
            for at, cell in enumerate(row.cells):
                width = sum(self.columnWidth(at + offset) for offset in range(spanned.get(at, 1)))
                if not self._inside(row, at):
                    plain = max(plain, round(wrapped_height(self.font(), cell, width)))
        for at, cell in enumerate(row.cells):
            if cell.folds:
                plain = max(plain, self._folded(cell, self.columnWidth(at)))
        return plain + gap

    def _folded(self, cell: Cell, width: int) -> int:
        """Kept, as thousands of foods have their names still when all their prices are others."""
        key = (cell.text, bool(cell.under), cell.size, cell.mark is Mark.NONE, width)
        height = self._folded_heights.get(key)
        if height is None:
            height = self._folded_heights[key] = round(folded_height(self.font(), cell, width))
        return height

    def content_height(self) -> int:
        """How high all rows and the header are together, in pixels."""
        header = self._header.sizeHint().height() if self._header.isVisibleTo(self) else 0
        wide = sum(self.columnWidth(at) for at in range(self._sheet_model.columnCount())) > self.viewport().width()
        header += self.horizontalScrollBar().sizeHint().height() if wide else 0
        return header + self.verticalHeader().length() + 2
