"""Above the preview: which page, how large, and the words looked for."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtPdfWidgets import QPdfView
from PySide6.QtWidgets import QHBoxLayout, QLabel, QLineEdit, QToolButton, QWidget

from binder.desktop.cards_page.text_search import TextSearch
from binder.desktop.cards_page.tool_button import tool_button
from binder.desktop.spacing import characters, space
from binder.desktop.typeface import sized
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.cards_page.preview import Preview


class PageNumber(QWidget):
    """The number of the page looked at, typed to go to another."""

    def __init__(self, preview: Preview, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._preview = preview
        label = QLabel(_("Pa&ge"), self)
        self.number = QLineEdit(self)
        self.number.setAccessibleName(_("Page"))
        self.number.setAlignment(Qt.AlignmentFlag.AlignRight)
        self.number.setFixedWidth(characters(self.font(), 6))
        label.setBuddy(self.number)
        self.of = QLabel(self)
        self.of.setProperty("quiet", True)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(space(self, 1.5))
        for widget in (label, self.number, self.of):
            row.addWidget(widget)
        self.number.editingFinished.connect(self._go)
        preview.page_changed.connect(self._follow)
        preview.loaded.connect(self._follow)

    def _follow(self) -> None:
        count = max(1, self._preview.pages.pageCount())
        self.number.setText(str(self._preview.page + 1))
        self.of.setText(_("of {count}").format(count=count))

    def _go(self) -> None:
        typed = self.number.text().strip()
        if typed.isdecimal():
            self._preview.go_to_page(int(typed[:6]) - 1)
        self._follow()


class Zooms(QWidget):
    """Smaller, larger, the whole page, its width, and how large that is."""

    def __init__(self, preview: Preview, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._preview = preview
        self.farther = self._button("−", _("Smaller pages (−)"), preview.look_farther)
        self.factor = QLabel(self)
        self.factor.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.factor.setMinimumWidth(characters(self.font(), 6))
        self.closer = self._button("+", _("Larger pages (+)"), preview.look_closer)
        self.whole = self._button(_("Whole"), _("Each page whole (P)"), preview.fit_page)
        self.wide = self._button(_("Width"), _("As wide as there is room (W)"), preview.fit_width)
        for button in (self.whole, self.wide):
            button.setCheckable(True)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(space(self, 0.5))
        for widget in (self.farther, self.factor, self.closer, self.whole, self.wide):
            row.addWidget(widget)
        preview.zoomed.connect(self._follow)
        preview.page_changed.connect(self._follow)
        self._follow()

    def _button(self, title: str, name: str, pressed: object) -> QToolButton:
        button = tool_button(self, title, name, pressed)
        button.setMinimumSize(space(self, 7), space(self, 7))
        return button

    def _follow(self) -> None:
        self.factor.setText(_("{percent} %").format(percent=round(self._preview.shown_factor * 100)))
        mode = self._preview.zoomMode()
        for button, fits in ((self.whole, QPdfView.ZoomMode.FitInView), (self.wide, QPdfView.ZoomMode.FitToWidth)):
            button.setChecked(mode is fits)
            font = sized(self.font(), 1.0, strong=mode is fits)
            font.setUnderline(mode is fits)
            button.setFont(font)


def view_tools(preview: Preview, parent: QWidget) -> tuple[PageNumber, Zooms, TextSearch]:
    """All of them."""
    return PageNumber(preview, parent), Zooms(preview, parent), TextSearch(preview, parent)
