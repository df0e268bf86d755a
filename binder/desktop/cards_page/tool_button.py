"""A small flat button above the pages: a sign or a word, and its name for whoever hovers or listens."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QToolButton

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget


def tool_button(parent: QWidget, sign: str, name: str, pressed: object) -> QToolButton:
    """A button on `parent` that does `pressed`."""
    button = QToolButton(parent)
    button.setText(sign)
    button.setAccessibleName(name)
    button.setToolTip(name)
    button.clicked.connect(pressed)
    return button
