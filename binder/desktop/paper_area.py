"""A page that scrolls as a whole, like a sheet of paper."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QScrollArea, QVBoxLayout, QWidget

from binder.desktop.spacing import space


class PaperArea(QScrollArea):
    """Put what belongs on the page into `column`, from the top down."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWidgetResizable(True)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.paper = QWidget(self)
        self.paper.setObjectName("paper")
        self.setWidget(self.paper)
        self.column = QVBoxLayout(self.paper)
        margin = space(self, 2)
        self.column.setContentsMargins(margin, margin, margin, margin)
        self.column.setSpacing(0)
