"""A quiet heading that folds away what stands under it, and says in short what that is while it is folded."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QToolButton, QWidget

from binder.desktop.spacing import space
from binder.kitchen.wording import _


class Fold(QWidget):
    """Shows `content`, which lies elsewhere in the page, while it is open."""

    opened = Signal(bool)

    def __init__(self, title: str, content: QWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._title, self._content, self._in_short = title, content, ""
        self.button = QToolButton(self)
        self.button.setText(title)
        self.button.setCheckable(True)
        self.button.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
        self.button.toggled.connect(self._follow)
        self._short = QLabel(self)
        self._short.setProperty("quiet", True)
        self._short.setTextFormat(Qt.TextFormat.PlainText)
        self._short.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        layout = QHBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(space(self, 2))
        layout.addWidget(self.button)
        layout.addWidget(self._short, 1)
        self._follow(open_=False)

    @property
    def is_open(self) -> bool:
        """Whether what it folds is shown."""
        return self.button.isChecked()

    def open(self) -> None:
        """Show what it folds."""
        self.button.setChecked(True)

    def say(self, short: str) -> None:
        """What stands beside the title while it is folded."""
        self._in_short = short
        self._short.setText("" if self.is_open else short)

    def _follow(self, open_: bool) -> None:  # noqa: FBT001 - a signal gives it so
        self.button.setArrowType(Qt.ArrowType.DownArrow if open_ else Qt.ArrowType.RightArrow)
        state = _("shown") if open_ else _("folded away")
        self.button.setAccessibleName(_("{title}, {state}").format(title=self._title, state=state))
        self._content.setVisible(open_)
        self._short.setText("" if open_ else self._in_short)
        self.opened.emit(open_)
