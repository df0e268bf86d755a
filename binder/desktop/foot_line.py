"""The quiet line at the foot of the window: the four numbers that matter, each with what it is."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from binder.desktop.base_page.base_figures import is_quick
from binder.desktop.pictures.state_mark import draw_mark
from binder.desktop.quick_shopping import shopping_is_quick
from binder.desktop.sheet.cell import Mark
from binder.desktop.spacing import space
from binder.desktop.theme import tokens_for
from binder.desktop.typeface import sized, small
from binder.desktop.words.figure_text import clock_text, date_text, headroom_text, mark_of
from binder.desktop.worked_out import WorkedOut
from binder.figures.base import BaseVerdict, base_balance
from binder.figures.budget import shoot_budget
from binder.figures.cap_basis import basis_text
from binder.figures.cost import Verdict, shoot_costs
from binder.figures.date_text import DateForm
from binder.figures.money_words import money
from binder.figures.portion_text import number_style
from binder.figures.spend import shoot_spend
from binder.kitchen.amount_text import grams_text
from binder.kitchen.shoot import CapBasis
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.desktop.desk import Desk
    from binder.kitchen.binder import Binder


@dataclass(frozen=True)
class FootFigure:
    """A label, the figure in words, and the shape of its state."""

    label: str
    says: str
    mark: Mark = Mark.NONE


def foot_figures(binder: Binder, shoot: str) -> tuple[FootFigure, ...]:
    """Worst headroom, base left, spend against budget, call."""
    return (_headroom(binder, shoot), _base(binder, shoot), _spend(binder, shoot), _call(binder, shoot))


def foot_is_quick(binder: Binder, shoot: str) -> bool:
    """Whether they are there within a frame."""
    return shopping_is_quick(binder, shoot) and is_quick(binder, shoot)


def _headroom(binder: Binder, shoot: str) -> FootFigure:
    label, basis = _("worst headroom"), binder.shoots[shoot].cap_basis
    if basis is not CapBasis.USED:
        label = _("{label} ({basis})").format(label=label, basis=basis_text(basis))
    costs = shoot_costs(binder, shoot)
    unknown = [cost for cost in costs if cost.verdict is Verdict.UNKNOWN]
    known = [cost for cost in costs if cost.headroom is not None]
    worst = min(known, key=lambda cost: cost.headroom or 0.0, default=None)
    if worst is not None and (worst.verdict is Verdict.OVER or not unknown):
        says = _("{headroom}, {dish}").format(headroom=headroom_text(binder, worst), dish=worst.name)
        return FootFigure(label, says, mark_of(worst.verdict))
    if unknown:
        return FootFigure(label, _("not known, {dish}").format(dish=unknown[0].name), Mark.UNKNOWN)
    return FootFigure(label, _("no cap set"))


def _base(binder: Binder, shoot: str) -> FootFigure:
    balance = base_balance(binder, shoot)
    if balance is None:
        return FootFigure(_("base"), _("none chosen"))
    label = _("{base} left").format(base=balance.name)
    if balance.verdict is BaseVerdict.UNKNOWN or balance.left is None:
        return FootFigure(label, _("not known"), Mark.UNKNOWN)
    style = number_style(binder)
    if balance.verdict is BaseVerdict.SHORT:
        return FootFigure(label, _("{grams} short").format(grams=grams_text(-balance.left, style)), Mark.SHORT)
    there_is = grams_text(balance.there_is or 0.0, style)
    left = grams_text(balance.left, style) if balance.left > 0 else "0 g"
    return FootFigure(label, _("{left} of {there_is}").format(left=left, there_is=there_is), Mark.WITHIN)


def _spend(binder: Binder, shoot: str) -> FootFigure:
    """All that the shoot is expected to cost, where that is more than the till; else the till."""
    spend, budget = shoot_spend(binder, shoot), shoot_budget(binder, shoot)
    if budget.total.expected is not None and budget.total.expected != spend.till:
        return _expected(binder, budget.total.expected, budget.allowed)
    shown, label = money(binder, spend.known), _("at the till")
    if spend.till is None:
        shown = _("{money} and what has no price").format(money=shown)
    if spend.budget is None:
        return FootFigure(label, shown, Mark.UNKNOWN if spend.till is None else Mark.NONE)
    says = _("{spend} of {budget}").format(spend=shown, budget=money(binder, spend.budget))
    over = spend.known > spend.budget
    return FootFigure(label, says, Mark.OVER if over else Mark.UNKNOWN if spend.till is None else Mark.WITHIN)


def _expected(binder: Binder, expected: int, allowed: int | None) -> FootFigure:
    label, shown = _("expected in all"), money(binder, expected)
    if allowed is None:
        return FootFigure(label, shown)
    says = _("{spend} of {budget}").format(spend=shown, budget=money(binder, allowed))
    return FootFigure(label, says, Mark.OVER if expected > allowed else Mark.WITHIN)


def _call(binder: Binder, shoot: str) -> FootFigure:
    planned = binder.shoots[shoot]
    parts = [clock_text(binder, planned.call), date_text(binder, planned.on, DateForm.WEEKDAY)]
    return FootFigure(_("call"), ", ".join(part for part in parts if part) or _("not set"))


def shared_room(needs: Sequence[float], room: float) -> list[float]:
    """How much of a room each takes: what it needs and an equal part of the rest, or less of each where it is short."""
    short = room - sum(needs)
    if short >= 0:
        return [need + short / len(needs) for need in needs]
    return [need * room / sum(needs) for need in needs]


class FootLine(QWidget):
    """Paints the figures on one line, each with the room it needs; pale while the next are being worked out."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._worked_out: WorkedOut[tuple[FootFigure, ...]] = WorkedOut(
            desk.tasks, "foot", foot_figures, foot_is_quick, self
        )
        self._worked_out.changed.connect(self._show)
        self._figures: tuple[FootFigure, ...] = ()
        self._stale = False
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        desk.changed.connect(self.refresh)

    @property
    def says(self) -> str:
        """The whole line as words."""
        return "; ".join(f"{figure.label}: {figure.says}" for figure in self._figures)

    def refresh(self) -> None:
        """Follow the binder as it is now."""
        shoot = self._desk.shoot
        self._worked_out.follow(self._desk.binder, shoot.id if shoot else None)

    def _show(self) -> None:
        latest = self._worked_out.latest
        figures = latest.value or ()
        if (figures, latest.stale) != (self._figures, self._stale):
            self._figures, self._stale = figures, latest.stale
            self.setAccessibleName(self.says or _("No shoot yet"))
            self.setToolTip("\n".join(f"{figure.label}: {figure.says}" for figure in figures))
            self.update()

    def sizeHint(self) -> QSize:
        return QSize(space(self, 100), space(self, 8))

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens, painter = tokens_for(self.palette()), QPainter(self)
        painter.fillRect(QRectF(0, 0, self.width(), 1), tokens.colour("line"))
        if not self._figures:
            return
        left = float(space(self, 4))
        labelled, widths = self._widths(self.width() - space(self, 8))
        for width, figure in zip(widths, self._figures, strict=True):
            box = QRectF(left, 1, width - space(self, 4), self.height() - 1)
            self._paint_figure(painter, box, figure, labelled=labelled)
            left += width

    def _widths(self, room: float) -> tuple[bool, list[float]]:
        """Whether there is room for labels beside the figures, and the pixels of each figure."""
        for labelled in (True, False):
            needs = [self._need(figure, labelled=labelled) for figure in self._figures]
            if sum(needs) <= room or not labelled:
                break
        return labelled, shared_room(needs, room)

    def _need(self, figure: FootFigure, *, labelled: bool) -> float:
        """Pixels of a figure that is not cut, with the white after it."""
        lesser, strong = QFontMetricsF(small(self.font())), QFontMetricsF(sized(self.font(), 1.0, strong=True))
        mark = space(self, 4) if figure.mark is not Mark.NONE else 0.0
        label = lesser.horizontalAdvance(figure.label) + space(self, 2) if labelled else 0.0
        return mark + label + strong.horizontalAdvance(figure.says) + space(self, 5)

    def _paint_figure(self, painter: QPainter, box: QRectF, figure: FootFigure, *, labelled: bool) -> None:
        tokens, lesser, strong = tokens_for(self.palette()), small(self.font()), sized(self.font(), 1.0, strong=True)
        flags = int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft)
        left = box.left()
        if figure.mark is not Mark.NONE:
            side = space(self, 2.5)
            draw_mark(painter, QRectF(left, box.center().y() - side / 2, side, side), figure.mark, tokens)
            left += side + space(self, 1.5)
        if labelled:
            painter.setFont(lesser)
            painter.setPen(tokens.colour("quiet"))
            painter.drawText(QRectF(left, box.top(), box.right() - left, box.height()), flags, figure.label)
            left += QFontMetricsF(lesser).horizontalAdvance(figure.label) + space(self, 2)
        painter.setFont(strong)
        painter.setPen(tokens.colour("quiet" if self._stale else "ink"))
        room = max(0.0, box.right() - left)
        text = QFontMetricsF(strong).elidedText(figure.says, Qt.TextElideMode.ElideRight, room)
        painter.drawText(QRectF(left, box.top(), room, box.height()), flags, text)
