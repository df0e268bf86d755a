"""A window that asks which sheets of which shoots are written into a folder, and what their files are called."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QCheckBox, QDialog, QGridLayout, QHBoxLayout, QLabel, QLineEdit, QPushButton, QVBoxLayout

from binder.desktop.spacing import characters, space
from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _
from binder.paper.file_names import FIELDS, file_name, require_fit, together_name
from binder.paper.print_set import SheetKind, kinds_of, sheet_title

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from binder.desktop.cards_page.print_wishes import Wishes
    from binder.kitchen.binder import Binder

_COLUMNS = 2


class SetWindow(QDialog):
    """What is ticked at first is what the shoot has anything to say on."""

    asked = Signal(object, object, object)
    """Write the set: the shoots, the kinds of sheet, and the wishes with the pattern of names."""

    def __init__(self, binder: Binder, shoot: str, wishes: Wishes, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(_("Save the set"))
        self._binder, self._shoot, self._wishes = binder, shoot, wishes
        said = kinds_of(binder, shoot)
        self.kinds = {kind: self._tick(sheet_title(kind), ticked=kind in said) for kind in SheetKind}
        self.shoots = {
            one.id: self._tick(one.name, ticked=one.id == shoot)
            for one in sorted(binder.shoots.values(), key=lambda one: (str(one.on or ""), one.name))
        }
        self.together = self._tick(_("All sheets in &one file"), ticked=wishes.together)
        self.pattern = QLineEdit(wishes.pattern, self)
        self.pattern.setPlaceholderText("{date}-{shoot}-{sheet}")
        self.pattern.setToolTip(_("May hold {fields}").format(fields=", ".join(f"{{{field}}}" for field in FIELDS)))
        self.pattern.textChanged.connect(self._follow)
        self.says = QLabel(self)
        self.says.setProperty("quiet", True)
        self.says.setWordWrap(True)
        self.says.setTextFormat(Qt.TextFormat.PlainText)
        self.save = QPushButton(_("Save into a folder..."), self)
        self.save.setProperty("leading", True)
        self.save.setDefault(True)
        self.save.clicked.connect(self._ask)
        self._lay_out()
        self._follow()

    def _tick(self, title: str, *, ticked: bool) -> QCheckBox:
        box = QCheckBox(title, self)
        box.setChecked(ticked)
        box.toggled.connect(self._follow)
        return box

    def _lay_out(self) -> None:
        layout = QVBoxLayout(self)
        layout.setSpacing(space(self, 2))
        grid = QGridLayout()
        rows = -(-len(self.kinds) // _COLUMNS)
        for at, box in enumerate(self.kinds.values()):
            grid.addWidget(box, at % rows, at // rows)
        layout.addLayout(grid)
        if len(self.shoots) > 1:
            heading = QLabel(_("Of these shoots"), self)
            heading.setProperty("quiet", True)
            layout.addWidget(heading)
        for box in self.shoots.values():
            box.setVisible(len(self.shoots) > 1)
            layout.addWidget(box)
        layout.addWidget(self.together)
        names = QHBoxLayout()
        label = QLabel(_("Files are &called"), self)
        label.setBuddy(self.pattern)
        names.addWidget(label)
        names.addWidget(self.pattern, 1)
        layout.addLayout(names)
        layout.addWidget(self.says)
        foot = QHBoxLayout()
        foot.addStretch(1)
        foot.addWidget(self.save)
        layout.addLayout(foot)
        self.setMinimumWidth(characters(self.font(), 70))

    @property
    def wishes(self) -> Wishes:
        """The wishes with what is said here of files."""
        return replace(self._wishes, pattern=self.pattern.text().strip(), together=self.together.isChecked())

    def _ticked(self) -> tuple[tuple[str, ...], tuple[SheetKind, ...]]:
        shoots = tuple(shoot for shoot, box in self.shoots.items() if box.isChecked())
        return shoots, tuple(kind for kind, box in self.kinds.items() if box.isChecked())

    def _follow(self) -> None:
        """Say what files will be called, or why they cannot be called so."""
        shoots, kinds = self._ticked()
        self.save.setEnabled(False)
        if not shoots or not kinds:
            self.says.setText(_("Tick at least one sheet."))
            return
        try:
            self.says.setText(_("as {name}").format(name=self._example(shoots, kinds[0])))
        except BinderError as error:
            self.says.setText(error.says)
            return
        self.save.setEnabled(True)

    def _example(self, shoots: tuple[str, ...], kind: SheetKind) -> str:
        wishes = self.wishes
        pattern = wishes.pattern or None
        if wishes.together:
            return together_name(self._binder, shoots[0] if len(shoots) == 1 else None, pattern)
        if pattern is not None:
            require_fit(pattern, together=False)
        return file_name(self._binder, shoots[0], kind, pattern)

    def _ask(self) -> None:
        shoots, kinds = self._ticked()
        wishes = self.wishes
        self.close()
        self.asked.emit(shoots, kinds, wishes)
