"""The picture of the flow: from what is bought, through its forms, to what each dish takes, as wide as it weighs."""

from __future__ import annotations

import itertools
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QScrollArea, QSizePolicy, QWidget

from binder.desktop.base_page.flow_node import FlowNode
from binder.desktop.base_page.flow_painting import FlowBrush, thickness
from binder.desktop.base_page.flow_places import Measured, Picture, inked, picture_of
from binder.desktop.base_page.flow_words import band_text, node_words
from binder.desktop.spacing import characters, space
from binder.desktop.theme import tokens_for
from binder.desktop.typeface import sized, small
from binder.figures.flow import Flow
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.base_page.flow_places import PictureNode
    from binder.desktop.base_page.flow_words import NodeWords
    from binder.kitchen.binder import Binder

_STALE = 0.45
"""How much ink a picture keeps while the next is being worked out."""


class FlowPicture(QWidget):
    """Bands are painted here; each node is a button of its own. Tab comes to one node, arrows go to the others."""

    place_asked = Signal(object)
    """A node was pressed: the place it leads to."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(_("The flow from what is bought to the dishes"))
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.nodes: dict[str, FlowNode] = {}
        self._flow = Flow((), ())
        self._words: dict[str, NodeWords] = {}
        self._amounts: dict[int, str] = {}
        self._picture = Picture(0.0, (), (), ())
        self._stale = False
        self._lit: str | None = None

    def show_flow(self, binder: Binder, flow: Flow, *, there_is: float | None = None, stale: bool = False) -> None:
        """Show a flow of so many grams of base; a stale one is pale."""
        words = node_words(binder, flow, there_is=there_is)
        if stale != self._stale:
            self._stale = stale
            self.update()
        if (flow, words) == (self._flow, self._words):
            return
        self._flow, self._words = flow, words
        self._amounts = {place: band_text(binder, band) for place, band in enumerate(flow.bands)}
        for key in [key for key in self.nodes if key not in words]:
            self.nodes.pop(key).deleteLater()
        for node in flow.nodes:
            if node.key not in self.nodes:
                self.nodes[node.key] = self._made_node()
        self._lay_out()

    def _made_node(self) -> FlowNode:
        made = FlowNode(self)
        made.clicked.connect(self._pressed)
        made.arrow_pressed.connect(self._step)
        made.entered.connect(self._keep_tab_stop)
        made.looked_at.connect(self._light_up)
        made.show()
        return made

    @property
    def picture(self) -> Picture:
        """What is drawn, and where."""
        return self._picture

    def _lay_out(self) -> None:
        font = sized(small(self.font()), 1.0, strong=True)
        metrics = QFontMetricsF(font)
        by = Measured(
            line=metrics.height(),
            width_of=metrics.horizontalAdvance,
            bar=float(space(self, 2.5)),
            last_column=float(min(characters(font, 34), self.width() // 3)),
        )
        edge = self._edge()
        self._picture = picture_of(self._flow, self._words, self._amounts, width=self.width() - 2.0 * edge, by=by)
        for one in self._picture.nodes:
            words = self._words[one.node.key]
            self.nodes[one.node.key].show_node(one, words, inked(one, words, by), edge)
        self.setFixedHeight(round(self._picture.height) + 2 * edge)
        self._set_tab_stop(self._tab_stop())
        self.update()

    def _edge(self) -> int:
        return space(self, 2)

    # The keyboard

    def _tab_stop(self) -> FlowNode | None:
        """The node that Tab comes to: the one come to last, or else the first."""
        kept = next((one for one in self.nodes.values() if one.focusPolicy() == Qt.FocusPolicy.StrongFocus), None)
        first = self._picture.nodes[0].node.key if self._picture.nodes else None
        return kept or (self.nodes[first] if first is not None else None)

    def _set_tab_stop(self, node: FlowNode | None) -> None:
        for one in self.nodes.values():
            one.setFocusPolicy(Qt.FocusPolicy.StrongFocus if one is node else Qt.FocusPolicy.ClickFocus)

    def _keep_tab_stop(self) -> None:
        sender = self.sender()
        if isinstance(sender, FlowNode):
            self._set_tab_stop(sender)
            self._bring_into_sight(sender)

    def _bring_into_sight(self, node: FlowNode) -> None:
        area = self.parentWidget()
        while area is not None and not isinstance(area, QScrollArea):
            area = area.parentWidget()
        if area is not None:
            area.ensureWidgetVisible(node)

    def _step(self, key: object) -> None:
        """To the next node up or down the column, or to the nearest of the next column."""
        sender = self.sender()
        if not isinstance(sender, FlowNode) or sender.place is None or not isinstance(key, Qt.Key):
            return
        target = nearest(self._picture, sender.place, key)
        if target is not None:
            self.nodes[target.node.key].setFocus(Qt.FocusReason.OtherFocusReason)

    def _light_up(self) -> None:
        """The bands of the node under the mouse, or else of the one that has the keyboard, stand out."""
        under = next((key for key, node in self.nodes.items() if node.underMouse()), None)
        held = next((key for key, node in self.nodes.items() if node.hasFocus()), None)
        if (under or held) != self._lit:
            self._lit = under or held
            self.update()

    def _pressed(self) -> None:
        sender = self.sender()
        if isinstance(sender, FlowNode) and sender.place is not None and sender.place.node.place is not None:
            self.place_asked.emit(sender.place.node.place)

    # Painting

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setOpacity(_STALE if self._stale else 1.0)
        painter.translate(self._edge(), self._edge())
        brush = FlowBrush(painter, tokens_for(self.palette()), self.font())
        grouped = itertools.groupby(self._picture.bands, key=lambda piece: id(piece.band))
        for pieces in sorted((list(group) for _band, group in grouped), key=thickness, reverse=True):
            brush.band(pieces, lit=self._lit in {pieces[0].band.source, pieces[0].band.target})
        for number in self._picture.numbers:
            brush.number(number.text, number.box)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._lay_out()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange:
            self._lay_out()


def nearest(picture: Picture, start: PictureNode, key: Qt.Key) -> PictureNode | None:
    """The node that an arrow key leads to; None at the edges."""
    columns = sorted({one.node.column for one in picture.nodes})
    if key in {Qt.Key.Key_Up, Qt.Key.Key_Down}:
        column = sorted((one for one in picture.nodes if one.node.column == start.node.column), key=_top)
        at = column.index(start) + (1 if key == Qt.Key.Key_Down else -1)
        return column[at] if 0 <= at < len(column) else None
    at = columns.index(start.node.column) + (1 if key == Qt.Key.Key_Right else -1)
    if not 0 <= at < len(columns):
        return None
    there = [one for one in picture.nodes if one.node.column == columns[at]]
    return min(there, key=lambda one: abs(_top(one) - _top(start)))


def _top(one: PictureNode) -> float:
    return one.bar.top + one.bar.height / 2
