"""What is said of the plan: how good it is, how the search goes, what was assumed; or what clashes, with ways out."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from binder.desktop.day_page.link_button import LinkButton
from binder.desktop.mark_label import MarkLabel
from binder.desktop.spacing import characters, space
from binder.desktop.theme import tokens_for
from binder.desktop.wrapping_row import WrappingRow
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.desktop.day_page.assumptions import Assumption
    from binder.desktop.day_page.standing import Standing
    from binder.desktop.day_page.trouble import WayOut


class WayButton(QPushButton):
    """The button of a way out."""

    def __init__(self, way: WayOut, parent: QWidget) -> None:
        super().__init__(way.title.replace("&", "&&"), parent)
        self.way = way


class PlanLine(QWidget):
    """Shows a Standing."""

    change_asked = Signal(object)
    """A way out was pressed: its change."""
    place_asked = Signal(object)
    """An assumption was pressed: where it is said otherwise."""
    stop_asked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._shown: Standing | None = None
        self.mark = MarkLabel(self)
        self.sentence = _plain(QLabel(self))
        self.more = _plain(QLabel(self))
        self.progress = _ProgressLine(self)
        self.stop = QPushButton(_("Stop looking"), self)
        self.stop.setToolTip(_("Take the best plan found so far"))
        self.stop.clicked.connect(self.stop_asked)
        self._ways_head = _quiet(QLabel(_("Each of these was tried, and helps:"), self))
        self._ways, self._assumed = WrappingRow(space(self, 1.5)), WrappingRow(space(self, 1.5))
        self._lay_out()

    def _lay_out(self) -> None:
        head = QHBoxLayout()
        head.setSpacing(space(self, 2))
        head.addWidget(self.mark, 0, Qt.AlignmentFlag.AlignTop)
        head.addWidget(self.sentence, 1)
        head.addWidget(self.progress)
        head.addWidget(self.stop)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(space(self, 2), space(self, 1), space(self, 2), space(self, 1))
        layout.setSpacing(space(self, 1))
        layout.addLayout(head)
        layout.addWidget(self.more)
        layout.addWidget(self._ways_head)
        layout.addLayout(self._ways)
        layout.addLayout(self._assumed)

    def show_standing(self, standing: Standing) -> None:
        """Say how the plan stands."""
        before, self._shown = self._shown, standing
        if standing == before:
            return
        self.mark.show_mark(standing.mark)
        self.sentence.setText(standing.sentence)
        self.more.setText("\n".join(standing.more))
        self.more.setVisible(bool(standing.more))
        self.progress.setVisible(standing.searching)
        self.stop.setVisible(standing.searching)
        if before is None or before.ways != standing.ways:
            self._fill_ways(standing.ways)
        if before is None or before.assumed != standing.assumed:
            self._fill_assumed(standing.assumed)

    def _fill_ways(self, ways: Sequence[WayOut]) -> None:
        _empty(self._ways)
        for way in ways:
            button = WayButton(way, self)
            button.clicked.connect(self._take_way)
            self._ways.addWidget(button)
            button.show()
        self._ways_head.setVisible(bool(ways))

    def _fill_assumed(self, assumed: Sequence[Assumption]) -> None:
        _empty(self._assumed)
        for one in assumed:
            link = LinkButton(one.title, one.place, self)
            link.clicked.connect(self._follow)
            self._assumed.addWidget(link)
            link.show()

    @property
    def ways(self) -> list[WayButton]:
        """The buttons of the ways out."""
        return [one for one in _widgets(self._ways) if isinstance(one, WayButton)]

    @property
    def assumed(self) -> list[LinkButton]:
        """The links of what was assumed."""
        return [one for one in _widgets(self._assumed) if isinstance(one, LinkButton)]

    def _take_way(self) -> None:
        sender = self.sender()
        if isinstance(sender, WayButton):
            self.change_asked.emit(sender.way.change)

    def _follow(self) -> None:
        sender = self.sender()
        if isinstance(sender, LinkButton):
            self.place_asked.emit(sender.leads_to)


def _widgets(row: WrappingRow) -> list[QWidget]:
    """The widgets in a row, from its beginning."""
    items = (row.itemAt(at) for at in range(row.count()))
    widgets = (item.widget() for item in items if item is not None)
    return [widget for widget in widgets if widget is not None]


def _empty(row: WrappingRow) -> None:
    for widget in _widgets(row):
        row.removeWidget(widget)
        widget.hide()
        widget.deleteLater()


def _plain(label: QLabel) -> QLabel:
    label.setWordWrap(True)
    label.setTextFormat(Qt.TextFormat.PlainText)
    return label


def _quiet(label: QLabel) -> QLabel:
    label.setProperty("quiet", True)
    return label


class _ProgressLine(QWidget):
    """How far a search is: a thin line that only ever grows."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.share = 0.0
        self.setAccessibleName(_("How far the search for a plan is"))
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def show_share(self, share: float) -> None:
        """Show a part of the whole, 0 to 1."""
        self.share = share
        self.setAccessibleDescription(_("{percent} %").format(percent=round(share * 100)))
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(characters(self.font(), 14), space(self, 4.5))

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens, painter = tokens_for(self.palette()), QPainter(self)
        thick = space(self, 0.75)
        box = QRectF(0, (self.height() - thick) / 2, self.width(), thick)
        painter.fillRect(box, tokens.colour("line"))
        painter.fillRect(QRectF(box.left(), box.top(), box.width() * self.share, thick), tokens.colour("accent"))
