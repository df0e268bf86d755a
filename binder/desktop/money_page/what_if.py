"""What if all prices rose, or fell, by so many per cent: a question that touches nothing. Plain Python."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Mark, Row, Size, Tone
from binder.desktop.sheet.sheet import PlainSheet
from binder.desktop.words.figure_text import headroom_text, mark_of, not_known
from binder.desktop.words.typed import UnreadableError, typed_number
from binder.figures.budget import shoot_budget
from binder.figures.checks import cost_beside_cap
from binder.figures.cost import DishCost, Verdict, shoot_costs
from binder.figures.missing import Place
from binder.figures.money_words import money
from binder.figures.price_history import raised_by
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.latest import Latest
    from binder.desktop.sheet.sheet import Sight
    from binder.figures.budget import Budget
    from binder.kitchen.binder import Binder

    LatestWhatIf = Latest["WhatIf"]

_LEAST, _MOST = -100.0, 1000.0


@dataclass(frozen=True)
class WhatIf:
    """Dishes and budget at the prices chosen, and where all of them were `percent` higher."""

    percent: float
    now: tuple[DishCost, ...]
    then: tuple[DishCost, ...]
    budgets: tuple[Budget, Budget]


def what_if(binder: Binder, question: str) -> WhatIf:
    """The answer to a question as `question_of` writes it; the binder stays as it is."""
    percent, _slash, shoot = question.partition("/")
    risen = raised_by(binder, float(percent))
    return WhatIf(
        percent=float(percent),
        now=shoot_costs(binder, shoot),
        then=shoot_costs(risen, shoot),
        budgets=(shoot_budget(binder, shoot), shoot_budget(risen, shoot)),
    )


def question_of(shoot: str, percent: float) -> str:
    """A question by its shoot and its per cent."""
    return f"{percent!r}/{shoot}"


def typed_percent(binder: Binder, text: str) -> float | None:
    """Per cent of `4`, `4 %`, `+4`, `-2.5 %`; None where the text is empty. Raises BinderError."""
    plain = text.strip().removesuffix("%").strip()
    if not plain:
        return None
    sign = -1.0 if plain[0] in "-−–" else 1.0
    percent = sign * typed_number(binder, plain.lstrip("+-−–").strip())
    if not _LEAST <= percent <= _MOST:
        raise UnreadableError(text, _("write per cent from −100 to 1000, such as 4."))
    return percent


class WhatIfSheet(PlainSheet):
    """A row a dish, and the sum of the budget: now, and then."""

    def __init__(self, latest: LatestWhatIf) -> None:
        self._latest = latest

    @property
    def name(self) -> str:
        return _("What if all prices rose")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("number", "", characters=2.5, align=Align.RIGHT),
            Column("name", _("dish"), characters=22, stretch=3),
            Column("now", _("a portion now"), characters=12, align=Align.RIGHT),
            Column("then", _("then"), characters=12, align=Align.RIGHT),
            Column("cap", _("cap"), characters=10, align=Align.RIGHT),
            Column("state", "", characters=24, stretch=2),
        )

    def rows(self, sight: Sight) -> list[Row]:
        answer = self._latest.value
        if answer is None:
            return []
        tone = Tone.QUIET if self._latest.stale else Tone.INK
        dishes = [_row(sight.binder, now, then, tone) for now, then in zip(answer.now, answer.then, strict=True)]
        return [*dishes, _total(sight.binder, answer.budgets, tone)]


def _row(binder: Binder, now: DishCost, then: DishCost, tone: Tone) -> Row:
    before, _cap = cost_beside_cap(binder, now)
    after, cap = cost_beside_cap(binder, then)
    cells = (
        Cell(str(then.number), tone=Tone.QUIET),
        Cell(then.name),
        Cell(before, tone=Tone.QUIET),
        Cell(after, tone=tone, size=Size.STRONG),
        Cell(cap, tone=Tone.QUIET),
        _state(binder, then, tone),
    )
    return Row(f"what if:{then.dish}", cells, place=Place("dishes", then.dish), lines=1.45)


def _state(binder: Binder, then: DishCost, tone: Tone) -> Cell:
    if then.verdict is Verdict.UNKNOWN:
        return Cell(not_known(then.missing), mark=Mark.UNKNOWN, leads_to=then.missing[0].place)
    loud = Tone.STOP if then.verdict is Verdict.OVER and tone is Tone.INK else tone
    return Cell(headroom_text(binder, then), mark=mark_of(then.verdict), tone=loud)


def _total(binder: Binder, budgets: tuple[Budget, Budget], tone: Tone) -> Row:
    now, then = (_expected(binder, one) for one in budgets)
    allowed, room = budgets[1].allowed, budgets[1].room
    state = NOTHING
    if room is not None:
        says = _("{money} over") if room < 0 else _("{money} to spare")
        mark = Mark.OVER if room < 0 else Mark.WITHIN
        state = Cell(says.format(money=money(binder, abs(room))), mark=mark, tone=tone)
    cells = (
        NOTHING,
        Cell(_("All of the shoot, beside its budget"), size=Size.STRONG),
        Cell(now, tone=Tone.QUIET),
        Cell(then, tone=tone, size=Size.STRONG),
        Cell("" if allowed is None else money(binder, allowed), tone=Tone.QUIET),
        state,
    )
    return Row("what if:total", cells, gap=2, lines=1.7)


def _expected(binder: Binder, budget: Budget) -> str:
    return _("not known") if budget.total.expected is None else money(binder, budget.total.expected)
