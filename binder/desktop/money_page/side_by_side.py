"""Two shoots of one binder beside each other: what each is expected to cost, line by line. Plain Python."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Row, Size, Tone
from binder.desktop.sheet.sheet import PlainSheet
from binder.figures.budget import shoot_budget, side_by_side
from binder.figures.budget_rows import RowKind
from binder.figures.money_words import money
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from binder.desktop.latest import Latest
    from binder.desktop.sheet.sheet import Sight
    from binder.figures.budget import Budget, SideRow
    from binder.figures.budget_rows import Amounts
    from binder.kitchen.binder import Binder

    LatestSides = Latest["Sides"]


@dataclass(frozen=True)
class Sides:
    """The lines of two shoots and their budgets; `left` and `right` are the ids of the shoots."""

    left: str
    right: str
    rows: tuple[SideRow, ...]
    totals: tuple[Budget, Budget]


def sides(binder: Binder, left: str, right: str) -> Sides:
    """Two shoots of a binder beside each other."""
    budgets = (shoot_budget(binder, left), shoot_budget(binder, right))
    return Sides(left, right, side_by_side(binder, left, right), budgets)


class SideBySide(PlainSheet):
    """Dishes of one name stand in one row; what only one shoot has leaves the other side empty."""

    def __init__(self, latest: LatestSides) -> None:
        self._latest = latest

    @property
    def name(self) -> str:
        return _("Two shoots side by side")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("name", _("what"), characters=26, stretch=3),
            Column("left", _("this shoot"), characters=16, stretch=1, align=Align.RIGHT),
            Column("right", _("the other"), characters=16, stretch=1, align=Align.RIGHT),
            Column("more", _("difference"), characters=12, stretch=1, align=Align.RIGHT),
        )

    def columns_for(self, sight: Sight) -> tuple[Column, ...]:
        """The heads name the shoots."""
        shown, shoots = self._latest.value, sight.binder.shoots
        if shown is None or shown.left not in shoots or shown.right not in shoots:
            return self.columns
        names = {"left": shoots[shown.left].name, "right": shoots[shown.right].name}
        return tuple(replace(one, title=names.get(one.id, one.title)) for one in self.columns)

    def rows(self, sight: Sight) -> list[Row]:
        shown = self._latest.value
        if shown is None:
            return []
        tone = Tone.QUIET if self._latest.stale else Tone.INK
        return list(_rows(sight.binder, shown, tone))


def _rows(binder: Binder, shown: Sides, tone: Tone) -> Iterator[Row]:
    kind: RowKind | None = None
    for number, row in enumerate(shown.rows):
        if _group(row.kind) != (_group(kind) if kind else None):
            yield _heading(_group(row.kind), first=number == 0)
        kind = row.kind
        contained = row.kind is RowKind.TAX and _is_contained(row, shown)
        name = _("{tax}, contained in the prices").format(tax=row.name) if contained else row.name
        cells = (
            Cell(name, tone=Tone.QUIET if contained else Tone.INK),
            _amount(binder, row.left, tone),
            _amount(binder, row.right, tone),
            _more(binder, row.more, tone, Size.BODY),
        )
        yield Row(f"{row.kind.value}:{row.name}:{number}", cells, lines=1.4)
    yield _total(binder, shown, tone)


def _is_contained(row: SideRow, shown: Sides) -> bool:
    """Whether the prices of every shoot that has a tax contain it."""
    pairs = zip((row.left, row.right), shown.totals, strict=True)
    return all(budget.tax_contained for amounts, budget in pairs if amounts is not None)


def _group(kind: RowKind) -> str:
    if kind in {RowKind.DISH, RowKind.TASTING, RowKind.LEFT_OVER, RowKind.BASE_REST}:
        return _("Food, at the till")
    return _("Beside the food")


def _heading(name: str, *, first: bool) -> Row:
    cells = (Cell(name, size=Size.SMALL, tone=Tone.QUIET), NOTHING, NOTHING, NOTHING)
    return Row(f"heading:{name}", cells, gap=0 if first else 2)


def _amount(binder: Binder, amounts: Amounts | None, tone: Tone) -> Cell:
    if amounts is None:
        return Cell("–", tone=Tone.QUIET, spoken=_("not in this shoot"))
    if amounts.expected is None:
        return Cell(_("not known"), tone=Tone.QUIET)
    return Cell(money(binder, amounts.expected), tone=tone)


def _more(binder: Binder, more: int | None, tone: Tone, size: Size) -> Cell:
    """How much more the right costs, with its sign."""
    if more is None:
        return Cell(_("not known"), tone=Tone.QUIET, size=size)
    if not more:
        return Cell(_("alike"), tone=Tone.QUIET, size=size)
    return Cell(f"{'+' if more > 0 else '−'}{money(binder, abs(more))}", tone=tone, size=size)


def _total(binder: Binder, shown: Sides, tone: Tone) -> Row:
    left, right = (budget.total.expected for budget in shown.totals)
    more = None if left is None or right is None else right - left
    known = [
        Cell(_("not known"), size=Size.STRONG) if one is None else Cell(money(binder, one), size=Size.STRONG, tone=tone)
        for one in (left, right)
    ]
    return Row("total", (Cell(_("in all"), size=Size.STRONG), *known, _more(binder, more, tone, Size.STRONG)), gap=2)


def others_of(binder: Binder, shoot: str | None) -> Sequence[tuple[str, str]]:
    """The other shoots by id and name, in the order of their days."""
    days = sorted(binder.shoots.values(), key=lambda one: (one.on.isoformat() if one.on else "9999", one.name))
    return [(one.id, one.name) for one in days if one.id != shoot]
