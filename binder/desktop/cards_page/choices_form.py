"""The fields of how a set is printed: distance, style, margin, several to a sheet, both sides, labels."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QLabel, QLineEdit, QSizePolicy, QWidget

from binder.desktop.cards_page.print_wishes import Wishes, distances
from binder.desktop.spacing import characters, space
from binder.desktop.wrapping_row import WrappingRow
from binder.kitchen.wording import _
from binder.paper.label_grid import EXAMPLE, LABELS
from binder.paper.paper_size import PAPERS, PRINTERS
from binder.paper.print_choices import Backs, Look

if TYPE_CHECKING:
    from collections.abc import Iterable


class ChoicesForm(QWidget):
    """Fields in as many lines as it takes. `wishes` are those that stand in them."""

    changed = Signal()
    """Something else is wished for."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.wishes = Wishes()
        self.read_from = _Combo(_typed_items([(one, one) for one in distances()]), self, typed=True)
        self.look = _Combo([(Look.PLAIN.value, _("plain")), (Look.ON_CAMERA.value, _("on camera"))], self)
        self.margin = _Combo(_typed_items(_margins()), self, typed=True)
        papers = [(paper.key, paper.name) for paper in PAPERS.values()]
        self.sheet = _Combo([("", _("one on its own paper")), *papers], self)
        self.backs = _Combo(
            [
                (Backs.NONE.value, _("one side")),
                (Backs.LONG_EDGE.value, _("both, turned about the long edge")),
                (Backs.SHORT_EDGE.value, _("both, turned about the short edge")),
            ],
            self,
        )
        self.labels = _Combo(_typed_items([(key, PAPERS[key].name) for key in LABELS]), self, typed=True)
        self.labels.setToolTip(_("A common sheet, or measures in millimetres, as {example}").format(example=EXAMPLE))
        self.used = QLineEdit(self)
        self.used.setPlaceholderText("0")
        self.used.setFixedWidth(characters(self.font(), 8))
        self._row = WrappingRow(space(self, 3))
        self.setLayout(self._row)
        self._row.setContentsMargins(0, space(self, 1), 0, space(self, 1))
        for title, field in self._fields():
            self._row.addWidget(_labelled(title, field, self))
        for field in self._combos():
            field.chosen.connect(self._follow)
        self.used.editingFinished.connect(self._follow)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Minimum)

    def _combos(self) -> tuple[_Combo, ...]:
        return (self.read_from, self.look, self.margin, self.sheet, self.backs, self.labels)

    def _fields(self) -> tuple[tuple[str, QWidget], ...]:
        return (
            (_("Cards read from"), self.read_from),
            (_("Style"), self.look),
            (_("Cards on a sheet"), self.sheet),
            (_("Margin"), self.margin),
            (_("Printed on"), self.backs),
            (_("Sheet of labels"), self.labels),
            (_("Labels gone from it"), self.used),
        )

    def show_wishes(self, wishes: Wishes) -> None:
        """Put wishes into the fields."""
        self.wishes = wishes
        for field, key in zip(
            self._combos(),
            (wishes.read_from, wishes.look, wishes.margin, wishes.sheet, wishes.backs, wishes.labels),
            strict=True,
        ):
            field.show_key(key)
        self.used.setText(wishes.used_labels)

    def _follow(self) -> None:
        wishes = replace(
            self.wishes,
            read_from=self.read_from.key,
            look=self.look.key,
            margin=self.margin.key,
            sheet=self.sheet.key,
            backs=self.backs.key,
            labels=self.labels.key,
            used_labels=self.used.text().strip(),
        )
        if wishes != self.wishes:
            self.wishes = wishes
            self.changed.emit()


class _Combo(QComboBox):
    """One of several keys; where it may be `typed`, other text is its own key."""

    chosen = Signal()

    def __init__(self, items: Iterable[tuple[str, str]], parent: QWidget, *, typed: bool = False) -> None:
        super().__init__(parent)
        for key, title in items:
            self.addItem(title, key)
        self.setEditable(typed)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.activated.connect(self.chosen)
        line = self.lineEdit()
        if typed and line is not None:
            self.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
            line.editingFinished.connect(self.chosen)

    @property
    def key(self) -> str:
        """What is chosen, or typed."""
        text = self.currentText().strip()
        at = self.findText(text, Qt.MatchFlag.MatchFixedString)
        return text if at < 0 else str(self.itemData(at))

    def show_key(self, key: str) -> None:
        at = self.findData(key)
        if at >= 0:
            self.setCurrentIndex(at)
        else:
            self.setEditText(key)


def _typed_items(items: Iterable[tuple[str, str]]) -> list[tuple[str, str]]:
    return [("", _("as is usual")), *items]


def _margins() -> list[tuple[str, str]]:
    titles = {"laser": _("laser printer, {millimetres} mm"), "ink-jet": _("ink-jet printer, {millimetres} mm")}
    return [(key, titles[key].format(millimetres=f"{white:g}")) for key, white in PRINTERS.items()]


def _labelled(title: str, field: QWidget, parent: QWidget) -> QWidget:
    """A field with its label before it, that stay together."""
    together = QWidget(parent)
    label = QLabel(title, together)
    label.setBuddy(field)
    field.setAccessibleName(title)
    row = QHBoxLayout(together)
    row.setContentsMargins(0, 0, 0, 0)
    row.setSpacing(space(parent, 1.5))
    row.addWidget(label)
    row.addWidget(field)
    return together
