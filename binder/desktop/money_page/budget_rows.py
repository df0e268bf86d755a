"""The rows of the budget: each group under its sum, every figure beside what it is. Plain Python."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import NOTHING, Cell, Mark, Row, Size, Tone, key_of
from binder.desktop.words.figure_text import number_text, plain_money
from binder.figures.budget import FOOD
from binder.figures.budget_rows import RowKind, own_amounts
from binder.figures.missing import Place
from binder.figures.money_words import money
from binder.figures.old_prices import as_of_text, asked_text
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from binder.desktop.money_page.money_figures import BudgetFigures
    from binder.figures.budget import Budget
    from binder.figures.budget_rows import Amounts, BudgetRow
    from binder.figures.old_prices import PriceInUse
    from binder.kitchen.binder import Binder
    from binder.kitchen.budget import BudgetLine
    from binder.kitchen.shoot import Shoot

_WIDTH = 9


def budget_rows(binder: Binder, shoot: Shoot, figures: BudgetFigures, *, stale: bool, adding: str) -> list[Row]:
    """All rows of a shoot's budget; `adding` is the key of the row in which a line is begun."""
    budget, maker = figures.budget, _Maker(binder, Tone.QUIET if stale else Tone.INK)
    lines = binder.budget_lines.where("shoot", shoot.id)
    return [
        maker.sum_of("food", _("Food, at the till"), budget.of(*FOOD), first=True),
        *(maker.figure(row) for row in budget.rows if row.kind in FOOD),
        *(maker.figure(row, gap=2) for row in budget.rows if row.kind is RowKind.TRIPS),
        maker.sum_of("own", _("Beside the food"), budget.of(RowKind.OWN) if lines else None),
        *(maker.own(line) for line in lines),
        _adding(adding),
        *maker.tax(budget),
        *(maker.figure(row, gap=2) for row in budget.rows if row.kind is RowKind.CONTINGENCY),
        maker.total(budget),
        *maker.notes(budget, figures.prices, shoot),
    ]


def _adding(key: str) -> Row:
    placeholder = _("Add a cost beside the food, such as gas bottle, 2 × 24.50")
    cells = (Cell(edit="", placeholder=placeholder), *(NOTHING,) * (_WIDTH - 1))
    return Row(key, cells, spans=((0, 4),), rule=False, adds=True)


class _Maker:
    """Makes rows in the tone that figures have now."""

    def __init__(self, binder: Binder, tone: Tone) -> None:
        self._binder, self._tone = binder, tone

    def _money(self, minor: int | None, *, size: Size = Size.BODY, absent: str = "") -> Cell:
        if minor is None:
            return Cell(absent, tone=Tone.QUIET, size=size)
        return Cell(money(self._binder, minor), tone=self._tone, size=size)

    def _amounts(self, amounts: Amounts, *, size: Size = Size.BODY) -> tuple[Cell, ...]:
        planned = self._money(amounts.planned, size=size, absent=_("not known"))
        committed, actual = (self._money(one, size=size) for one in (amounts.committed, amounts.actual))
        return planned, committed, actual, self._over(amounts, size)

    def _over(self, amounts: Amounts, size: Size) -> Cell:
        """How far what is expected is beyond the plan, in words and as a shape."""
        over = amounts.over
        if not over or (amounts.committed is None and amounts.actual is None):
            return NOTHING
        shown = money(self._binder, abs(over))
        if over > 0:
            return Cell(_("{money} over").format(money=shown), tone=Tone.STOP, mark=Mark.OVER, size=size)
        return Cell(_("{money} under").format(money=shown), tone=self._tone, mark=Mark.WITHIN, size=size)

    def sum_of(self, key: str, name: str, amounts: Amounts | None, *, first: bool = False) -> Row:
        """The head of a group, with its sum where it has any."""
        figures = (NOTHING,) * 4 if amounts is None else self._amounts(amounts, size=Size.STRONG)
        cells = (Cell(name, size=Size.STRONG), NOTHING, NOTHING, NOTHING, *figures, NOTHING)
        return Row(f"sum:{key}", cells, lines=1.7, gap=0 if first else 3)

    def figure(self, row: BudgetRow, *, gap: float = 0.0) -> Row:
        """A row that is worked out; its name leads to where it comes from."""
        is_dish = row.kind is RowKind.DISH
        leads_to = row.place if is_dish or row.kind is RowKind.CONTINGENCY else None
        name = Cell(row.name, leads_to=leads_to, folds=True)
        key = key_of(row.place) if is_dish else f"{row.kind.value}:{row.name}"
        cells = (name, NOTHING, NOTHING, NOTHING, *self._amounts(row.amounts), NOTHING)
        return Row(key, cells, place=row.place, gap=gap, lines=1.5)

    def own(self, line: BudgetLine) -> Row:
        """A line of the producer's own, all of it typed in place."""
        binder, place = self._binder, Place("budget_lines", line.id)
        quantity = number_text(binder, line.quantity)
        planned, _committed, _actual, over = self._amounts(own_amounts(line))
        taxed = _("yes") if line.taxed else _("no")
        cells = (
            Cell(line.name, edit=line.name, tip=line.name, folds=True),
            Cell(line.heading, edit=line.heading, placeholder="–", choices=self._headings()),
            Cell(quantity, "×", edit=quantity),
            Cell(money(binder, line.rate), edit=plain_money(binder, line.rate)),
            planned,
            self._typed(line.committed, _("committed")),
            self._typed(line.actual, _("paid")),
            over,
            Cell(taxed, edit=taxed, choices=(_("yes"), _("no")), tone=Tone.QUIET),
        )
        return Row(key_of(place), cells, place=place, lines=1.6)

    def _typed(self, minor: int | None, name: str) -> Cell:
        shown = "" if minor is None else money(self._binder, minor)
        spoken = _("{what} {money}").format(what=name, money=shown or _("nothing yet"))
        return Cell(shown, edit=plain_money(self._binder, minor), placeholder="–", spoken=spoken)

    def _headings(self) -> tuple[str, ...]:
        own = sorted({line.heading for line in self._binder.budget_lines.values() if line.heading})
        return tuple(dict.fromkeys([*own, *_usual_headings()]))

    def tax(self, budget: Budget) -> Iterator[Row]:
        """Tax by rate: a part of the sum, or in brackets what the prices contain of it already."""
        for number, row in enumerate(budget.tax):
            says = _("{tax}, contained in the prices") if budget.tax_contained else "{tax}"
            size, tone = (Size.SMALL, Tone.QUIET) if budget.tax_contained else (Size.BODY, self._tone)
            figures = self._amounts(row.amounts, size=size)
            name = Cell(says.format(tax=row.name), tone=tone, size=size)
            cells = (name, NOTHING, NOTHING, NOTHING, *figures, NOTHING)
            yield Row(f"tax:{row.name}", cells, gap=0 if number else 2, lines=1.5)

    def total(self, budget: Budget) -> Row:
        """All of it."""
        total = budget.total
        planned, *rest = self._amounts(total, size=Size.STRONG)
        name = Cell(_("in all"), size=Size.STRONG)
        if total.planned is not None:
            return Row("total", (name, NOTHING, NOTHING, NOTHING, planned, *rest, NOTHING), gap=3, lines=1.8)
        says = _("not known; {money} of it is").format(money=money(self._binder, budget.known))
        place = budget.missing[0].place if budget.missing else None
        cell = Cell(says, mark=Mark.UNKNOWN, size=Size.STRONG, leads_to=place)
        return Row("total", (name, NOTHING, cell, NOTHING, NOTHING, *rest, NOTHING), gap=3, lines=1.8, spans=((2, 3),))

    def notes(self, budget: Budget, prices: Sequence[PriceInUse], shoot: Shoot) -> Iterator[Row]:
        """What stands beside the sum: deposits, what is missing, of when the prices are."""
        if budget.deposits:
            says = _("Deposits of {money} come back with the empties and are in no sum.")
            yield _note("deposits", says.format(money=money(self._binder, budget.deposits)))
        for number, lack in enumerate(budget.missing):
            yield _note(f"missing:{number}", lack.says, mark=Mark.UNKNOWN, leads_to=lack.place)
        if prices:
            yield _note("prices", as_of_text(self._binder, prices, shoot.quote_days))
        for old in prices:
            if old.too_old and old.priced.pack.food in self._binder.foods:
                yield self._old(old)

    def _old(self, old: PriceInUse) -> Row:
        key, place = f"old:{old.priced.quote.id}", Place("packs", old.priced.pack.id)
        return _note(key, asked_text(self._binder, old), mark=Mark.WARN, leads_to=place)


def _usual_headings() -> tuple[str, ...]:
    """What a cost beside the food is usually for. Common practice, no source."""
    return (
        _("Props"),
        _("Gas and power"),
        _("Disposables"),
        _("Cleaning"),
        _("Hands"),
        _("Kitchen hire"),
        _("Tasting"),
    )


def _note(key: str, says: str, *, mark: Mark = Mark.NONE, leads_to: Place | None = None) -> Row:
    cell = Cell(says, tone=Tone.QUIET if leads_to is None else Tone.INK, mark=mark, leads_to=leads_to)
    return Row(f"note:{key}", (cell, *(NOTHING,) * (_WIDTH - 1)), spans=((0, _WIDTH),), rule=False, wraps=True)
