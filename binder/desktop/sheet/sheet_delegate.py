"""Paints cells, and edits them in place: what cannot be understood keeps the editor open with the reason under it."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QAbstractItemModel, QEvent, QObject, QPersistentModelIndex, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QAccessible,
    QAccessibleAnnouncementEvent,
    QColor,
    QFocusEvent,
    QFont,
    QKeyEvent,
    QPainter,
    QPen,
)
from PySide6.QtWidgets import QAbstractItemDelegate, QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from binder.desktop.sheet.cell import NOTHING, Align, Cell, Row
from binder.desktop.sheet.cell_editor import Editor, LineEditor, ParagraphEditor
from binder.desktop.sheet.cell_faces import CellFaces, text_font
from binder.desktop.sheet.cell_painting import Brushes, paint_cell
from binder.desktop.sheet.sheet import CellName
from binder.desktop.sheet.sheet_model import ROW_ROLE, Index, SheetModel
from binder.desktop.spacing import characters, step
from binder.desktop.theme import tokens_for
from binder.kitchen.errors import BinderError

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.desktop.sheet.sheet import Remedy

_KEPT_OPEN_BY = {
    Qt.FocusReason.ActiveWindowFocusReason,
    Qt.FocusReason.PopupFocusReason,
    Qt.FocusReason.MenuBarFocusReason,
}
_SELECTED = QStyle.StateFlag.State_Selected.value
_FOCUSED = QStyle.StateFlag.State_HasFocus.value
_HOVERED = QStyle.StateFlag.State_MouseOver.value
_NO_HINT = QAbstractItemDelegate.EndEditHint.NoHint


class SheetDelegate(QStyledItemDelegate):
    """For tables whose model is a SheetModel."""

    left = Signal(object, object)
    """An edit ended well by a key: the persistent index of its cell, and the key."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._places: dict[Editor, QPersistentModelIndex] = {}
        self._remedies: dict[Editor, Sequence[Remedy]] = {}
        self._judged: dict[Editor, tuple[object, bool]] = {}
        self._faces: CellFaces | None = None

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        model = _model_of(index)
        row, cell = model.row_at(index.row()), model.cell(index)
        box, tokens, state = QRectF(option.rect), tokens_for(option.palette), option.state.value
        if state & _SELECTED:
            painter.fillRect(box, tokens.colour("tint"))
        if row.rule:
            painter.fillRect(QRectF(box.left(), box.bottom() - 1, box.width(), 1), tokens.colour("faint"))
        if cell is not NOTHING:
            faces = self.faces_of(option.font)
            content = box.adjusted(0, faces.step(row.gap), 0, -1)
            brushes = Brushes(painter, tokens, faces)
            paint_cell(brushes, content, cell, model.columns[index.column()], wraps=row.wraps)
        if state & _FOCUSED or (state & _HOVERED and cell.edit is not None):
            _outline(painter, box, tokens.colour("accent" if state & _FOCUSED else "line"))

    def faces_of(self, font: QFont) -> CellFaces:
        """The faces of a table whose body is set in a font; measured anew when that is another."""
        if self._faces is None or self._faces.font != font:
            self._faces = CellFaces(QFont(font))
        return self._faces

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        row = cast("Row | None", index.data(ROW_ROLE))
        return QSize(characters(option.font, 4), round(step(option.font, 4.5) * (row.lines if row else 1)))

    def createEditor(self, parent: QWidget, option: QStyleOptionViewItem, index: Index) -> QWidget:
        model, cell = _model_of(index), _model_of(index).cell(index)
        column = model.columns[index.column()]
        name = cell.label or column.title or column.tip or cell.placeholder
        kind = ParagraphEditor if cell.paragraph else LineEditor
        editor: Editor = kind(parent, text_font(option.font, cell.size), name)
        if isinstance(editor, LineEditor) and column.align is not Align.LEFT:
            editor.setAlignment(Qt.AlignmentFlag.AlignRight)
        self._places[editor] = QPersistentModelIndex(index)
        editor.typed.connect(self._explain_sender)
        editor.note.chosen.connect(self._take_offer)
        return editor

    def setEditorData(self, editor: QWidget, index: Index) -> None:
        cell = _model_of(index).cell(index)
        if isinstance(editor, LineEditor | ParagraphEditor) and cell.edit is not None and not editor.begun:
            editor.begin(cell.edit)
            self._explain(editor)

    def setModelData(self, editor: QWidget, model: QAbstractItemModel, index: Index) -> None:
        if isinstance(editor, LineEditor | ParagraphEditor) and editor.changed and not self.keeps_open(editor):
            editor.taken()
            model.setData(index, editor.value(), Qt.ItemDataRole.EditRole)

    def keeps_open(self, editor: QWidget) -> bool:
        """Whether an editor holds what is not understood, so that it neither is taken nor goes."""
        if not isinstance(editor, LineEditor | ParagraphEditor) or not editor.changed:
            return False
        place = self._places.get(editor)
        return place is not None and place.isValid() and not self._acceptable(editor, place)

    def updateEditorGeometry(self, editor: QWidget, option: QStyleOptionViewItem, index: Index) -> None:
        rect = option.rect
        least = characters(option.font, 14)
        if isinstance(editor, ParagraphEditor):
            rect.setHeight(max(rect.height(), step(option.font, 16)))
        else:
            rect.setTop(rect.center().y() - editor.sizeHint().height() // 2)
            rect.setHeight(editor.sizeHint().height())
        if rect.width() < least:
            right = _model_of(index).columns[index.column()].align is not Align.LEFT
            rect.setLeft(max(0, rect.right() - least)) if right else rect.setWidth(least)
        editor.setGeometry(rect)

    def destroyEditor(self, editor: QWidget, index: Index) -> None:
        if isinstance(editor, LineEditor | ParagraphEditor):
            for held in (self._places, self._remedies, self._judged):
                held.pop(editor, None)
            editor.note.hide()
            editor.note.deleteLater()
        super().destroyEditor(editor, index)

    def eventFilter(self, editor: QObject, event: QEvent) -> bool:
        if not isinstance(editor, LineEditor | ParagraphEditor):
            return super().eventFilter(editor, event)
        if event.type() in {QEvent.Type.KeyPress, QEvent.Type.ShortcutOverride}:
            return self._key(editor, cast("QKeyEvent", event))
        if event.type() is QEvent.Type.FocusOut:
            if cast("QFocusEvent", event).reason() not in _KEPT_OPEN_BY:
                self._finish(editor)
            return False
        if event.type() is QEvent.Type.Hide:
            editor.note.hide()
        return False

    def _key(self, editor: Editor, event: QKeyEvent) -> bool:
        key, shifted = event.key(), bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
        enter = key in {Qt.Key.Key_Return, Qt.Key.Key_Enter} and not (isinstance(editor, ParagraphEditor) and shifted)
        ours = enter or key in {Qt.Key.Key_Escape, Qt.Key.Key_Tab, Qt.Key.Key_Backtab}
        if event.type() is QEvent.Type.ShortcutOverride:
            if ours:
                event.accept()
            return ours
        if key in {Qt.Key.Key_Up, Qt.Key.Key_Down} and isinstance(editor, LineEditor):
            return editor.note.step(1 if key == Qt.Key.Key_Down else -1)
        if not ours:
            return False
        if key == Qt.Key.Key_Escape:
            self.closeEditor.emit(editor, QAbstractItemDelegate.EndEditHint.RevertModelCache)
        elif enter and editor.note.current() is not None:
            self._take(editor, editor.note.current() or 0, Qt.Key(key))
        else:
            self._finish(editor, Qt.Key(key))
        return True

    def _finish(self, editor: Editor, key: Qt.Key | None = None) -> bool:
        """Take what was typed and close, or say why not and stay open."""
        place = self._places.get(editor)
        if place is None or not place.isValid():
            return False
        if editor.changed:
            if not self._acceptable(editor, place):
                return False
            self.commitData.emit(editor)
        if editor in self._places:
            self.closeEditor.emit(editor, _NO_HINT)
        if key is not None and place.isValid():
            self.left.emit(place, key)
        return True

    def _acceptable(self, editor: Editor, place: QPersistentModelIndex) -> bool:
        """Whether what stands in an editor can be taken; asked again only once it, or the binder, is another."""
        asked = (editor.value(), _model_of(place).sight)
        if editor not in self._judged or self._judged[editor][0] != asked:
            self._judged[editor] = (asked, self._judge(editor, place))
        return self._judged[editor][1]

    def _judge(self, editor: Editor, place: QPersistentModelIndex) -> bool:
        model = _model_of(place)
        try:
            model.change_for(place, editor.value())
        except BinderError as error:
            row, column = model.row_at(place.row()), model.columns[place.column()]
            remedies = _ways_out(model, CellName(row.key, column.id), editor.value(), error)
            self._remedies[editor] = remedies
            editor.note.show_note(error.says, [remedy.title for remedy in remedies], wrong=True)
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(editor, error.says))
            return False
        return True

    def _explain_sender(self) -> None:
        editor = self.sender()
        if isinstance(editor, LineEditor | ParagraphEditor):
            self._explain(editor)

    def _explain(self, editor: Editor) -> None:
        """While it is typed: what is understood, and the choices that go with what stands there."""
        place = self._places.get(editor)
        if place is None or not place.isValid():
            return
        model = _model_of(place)
        row, column = model.row_at(place.row()), model.columns[place.column()]
        self._remedies.pop(editor, None)
        says = model.sheet.understood(model.sight, row.key, column.id, editor.value())
        offers = model.sheet.offers(model.sight, row.key, column.id, editor.value())
        editor.note.show_note(says, [*_fitting(model.cell(place), editor), *offers])

    def _take_offer(self, at: object) -> None:
        note = self.sender()
        editor = next((editor for editor in self._places if editor.note is note), None)
        if editor is not None and isinstance(at, int):
            self._take(editor, at, Qt.Key.Key_Return)

    def _take(self, editor: Editor, at: int, key: Qt.Key) -> None:
        remedies = self._remedies.get(editor)
        if remedies is None:
            self._retype(editor, editor.note.offers[at], key)
        elif remedies[at].change is not None:
            place = self._places[editor]
            _model_of(place).make(remedies[at].change)
            if editor in self._places:
                self.closeEditor.emit(editor, _NO_HINT)
            if place.isValid():
                self.left.emit(place, key)
        else:
            self._retype(editor, remedies[at].text or "", key)

    def _retype(self, editor: Editor, text: str, key: Qt.Key) -> None:
        editor.setText(text) if isinstance(editor, LineEditor) else editor.setPlainText(text)
        self._finish(editor, key)


def _outline(painter: QPainter, box: QRectF, colour: QColor) -> None:
    """Where the keyboard is, or the mouse over what can be edited."""
    painter.setPen(QPen(colour, 1))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRoundedRect(box.adjusted(1.5, 1.5, -1.5, -2.5), 4, 4)


def _ways_out(model: SheetModel, cell: CellName, text: str, error: BinderError) -> Sequence[Remedy]:
    """The remedies that can be; none where the text fits no record at all."""
    try:
        return model.sheet.remedies(model.sight, cell, text, error)
    except BinderError:
        return ()


def _fitting(cell: Cell, editor: Editor) -> list[str]:
    """The choices that hold what was typed; all of them while nothing has been changed."""
    typed = editor.value().strip().casefold()
    if not typed or not editor.changed:
        return list(cell.choices)
    begin = [choice for choice in cell.choices if choice.casefold().startswith(typed)]
    return begin + [choice for choice in cell.choices if typed in choice.casefold() and choice not in begin]


def _model_of(index: Index) -> SheetModel:
    return cast("SheetModel", index.model())
