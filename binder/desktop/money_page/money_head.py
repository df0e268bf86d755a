"""The head of the page of money: the budget, what is planned, committed, paid and expected, and what that leaves."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import Align, Cell, Column, Mark, Row, Size, Tone
from binder.desktop.sheet.sheet import NotEditableError, PlainSheet
from binder.desktop.words.figure_text import not_known, part_text, plain_money
from binder.desktop.words.typed import typed_money, typed_part
from binder.figures.missing import Place
from binder.figures.money_words import money
from binder.kitchen.edits.shoots import set_shoot
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.money_page.money_figures import LatestBudget
    from binder.desktop.sheet.sheet import Sight
    from binder.figures.budget import Budget
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.kitchen.shoot import Shoot


class MoneyHead(PlainSheet):
    """Budget and contingency are typed here, as on the page of the shoot."""

    def __init__(self, latest: LatestBudget) -> None:
        self._latest = latest

    @property
    def name(self) -> str:
        return _("Money in short")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("budget", _("budget"), characters=10),
            Column("contingency", _("kept back"), characters=8, tip=_("The part of the budget that is kept back")),
            Column("planned", _("planned in all"), characters=11, align=Align.RIGHT),
            Column("committed", _("committed"), characters=10, align=Align.RIGHT, tip=_("Ordered, or ticked")),
            Column("paid", _("paid"), characters=10, align=Align.RIGHT, tip=_("By receipts")),
            Column(
                "expected",
                _("expected"),
                characters=10,
                align=Align.RIGHT,
                tip=_("What was paid, else what is committed, else what is planned"),
            ),
            Column("room", _("beside the budget"), characters=20, stretch=1),
        )

    def rows(self, sight: Sight) -> list[Row]:
        shoot, figures = sight.binder.shoots.get(sight.shoot or ""), self._latest.value
        if shoot is None:
            return []
        budget = figures.budget if figures is not None else None
        return [_row(sight.binder, shoot, budget, stale=self._latest.stale)]

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder, shoot = sight.binder, sight.binder.shoots[sight.shoot or ""]
        if column == "budget":
            return set_shoot(shoot, budget=typed_money(binder, text))
        if column == "contingency":
            return set_shoot(shoot, contingency=typed_part(binder, text))
        raise NotEditableError


def _row(binder: Binder, shoot: Shoot, budget: Budget | None, *, stale: bool) -> Row:
    tone = Tone.QUIET if stale else Tone.INK
    allowed = "" if shoot.budget is None else money(binder, shoot.budget)
    kept = part_text(binder, shoot.contingency) if shoot.contingency else ""
    cells = (
        Cell(allowed, edit=plain_money(binder, shoot.budget), placeholder=_("none"), size=Size.STRONG),
        Cell(kept, edit=kept, placeholder=_("nothing"), tone=Tone.QUIET),
        *_amounts(binder, budget, tone),
        _room(binder, budget, tone),
    )
    return Row(f"shoots:{shoot.id}", cells, place=Place("shoots", shoot.id), lines=1.9, rule=False)


def _amounts(binder: Binder, budget: Budget | None, tone: Tone) -> tuple[Cell, ...]:
    if budget is None:
        return (Cell("…", tone=Tone.QUIET, spoken=_("being worked out")),) * 4
    total = budget.total

    def cell(minor: int | None, absent: str) -> Cell:
        return Cell(absent, tone=Tone.QUIET) if minor is None else Cell(money(binder, minor), tone=tone)

    unknown = _("not known")
    return (
        cell(total.planned, unknown),
        cell(total.committed, _("nothing yet")),
        cell(total.actual, _("nothing yet")),
        cell(total.expected, unknown),
    )


def _room(binder: Binder, budget: Budget | None, tone: Tone) -> Cell:
    """What the budget leaves, in words and as a shape."""
    if budget is None or budget.allowed is None:
        return Cell(_("no budget set"), tone=Tone.QUIET)
    if budget.room is None:
        if budget.known > budget.allowed:
            says = _("{money} over, and what has no price")
            shown = money(binder, budget.known - budget.allowed)
            return Cell(says.format(money=shown), mark=Mark.OVER, size=Size.STRONG)
        place = budget.missing[0].place if budget.missing else None
        return Cell(not_known(budget.missing), mark=Mark.UNKNOWN, leads_to=place)
    shown = money(binder, abs(budget.room))
    if budget.room < 0:
        says = _("{money} over").format(money=shown)
        return Cell(says, mark=Mark.OVER, tone=Tone.STOP, size=Size.STRONG)
    return Cell(_("{money} to spare").format(money=shown), mark=Mark.WITHIN, tone=tone, size=Size.STRONG)
