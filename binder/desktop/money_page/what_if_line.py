"""The line on which the question of risen prices is asked."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QLineEdit, QVBoxLayout, QWidget

from binder.desktop.spacing import characters, space
from binder.desktop.theme import tokens_for
from binder.kitchen.wording import _


class WhatIfLine(QWidget):
    """`typed` is emitted with each text; what is amiss with it is said beneath."""

    typed = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.field = QLineEdit(self)
        self.field.setPlaceholderText("4")
        self.field.setFixedWidth(characters(self.font(), 9))
        self.field.setAlignment(Qt.AlignmentFlag.AlignRight)
        self.field.setClearButtonEnabled(False)
        self.field.textChanged.connect(self.typed)
        asks = QLabel(_("What if all prices &rose by"), self)
        asks.setBuddy(self.field)
        percent = QLabel(_("per cent? Nothing is changed by asking; below zero they fall."), self)
        percent.setProperty("quiet", True)
        self.wrong = QLabel(self)
        self.wrong.setTextFormat(Qt.TextFormat.PlainText)
        self.wrong.setWordWrap(True)
        line = QHBoxLayout()
        line.setSpacing(space(self, 1.5))
        line.addWidget(asks)
        line.addWidget(self.field)
        line.addWidget(percent, 1)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(space(self, 2), space(self, 2), space(self, 2), space(self, 1))
        layout.addLayout(line)
        layout.addWidget(self.wrong)
        self.say("")

    def say(self, sentence: str) -> None:
        """Say what is amiss with what was typed; empty where nothing is."""
        self.wrong.setText(sentence)
        self.wrong.setVisible(bool(sentence))
        if sentence:
            self.wrong.setStyleSheet(f"color: {tokens_for(self.palette()).stop};")
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, sentence))
