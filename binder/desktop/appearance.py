"""Dresses the application: style, palette, style sheet and face, by the user's choice and the system's."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt

from binder.desktop.style_sheet import style_sheet
from binder.desktop.theme import DARK, LIGHT, Appearance, Tokens, palette_of
from binder.desktop.typeface import BODY_POINTS, body_font

if TYPE_CHECKING:
    from PySide6.QtWidgets import QApplication

    from binder.desktop.window_settings import WindowSettings

_STEP = 1.1
"""Text grows and shrinks by a tenth."""


def tokens_wanted(appearance: Appearance, scheme: Qt.ColorScheme) -> Tokens:
    """The tokens for a choice, where the system's own scheme is `scheme`."""
    dark = appearance is Appearance.DARK or (appearance is Appearance.SYSTEM and scheme is Qt.ColorScheme.Dark)
    return DARK if dark else LIGHT


class Wardrobe(QObject):
    """Keeps the application dressed as the settings say, also when the system changes its mind."""

    def __init__(self, application: QApplication, settings: WindowSettings) -> None:
        super().__init__(application)
        self._application, self._settings = application, settings
        application.styleHints().colorSchemeChanged.connect(self.dress)
        self.dress()

    def dress(self) -> None:
        """Put on what the settings say."""
        application = self._application
        tokens = tokens_wanted(self._settings.appearance, application.styleHints().colorScheme())
        font = body_font(self._settings.points)
        if application.font() != font:
            application.setFont(font)
        application.setPalette(palette_of(tokens))
        application.setStyleSheet(style_sheet(tokens))

    def choose(self, appearance: Appearance) -> None:
        """Wear something else."""
        self._settings.appearance = appearance
        self.dress()

    def resize_text(self, by: int) -> None:
        """Larger by so many steps, or smaller; 0 for the usual size."""
        self._settings.points = self._settings.points * _STEP**by if by else BODY_POINTS
        self.dress()
