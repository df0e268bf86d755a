"""How each dish stands to its cap, on the basis that the shoot has chosen. Plain Python."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from binder.desktop.pictures.cost_bar import CostBar
from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Mark, Row, Size, Tone, key_of
from binder.desktop.sheet.sheet import NotEditableError, PlainSheet, record_of
from binder.desktop.words.figure_text import headroom_text, mark_of, not_known, plain_money
from binder.desktop.words.typed import typed_choice, typed_money
from binder.figures.cap_basis import basis_text
from binder.figures.checks import cost_beside_cap
from binder.figures.cost import DishCost, Verdict, shoot_costs
from binder.figures.missing import Place
from binder.figures.money_words import percent_text
from binder.kitchen.edits.money import set_cap_basis
from binder.kitchen.edits.shoots import set_dish
from binder.kitchen.shoot import CapBasis
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.sheet.sheet import Sight
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change

_BASIS = "basis"
_ROOM = 1.08
"""The longest bar leaves a little of its track free."""


class CapsSheet(PlainSheet):
    """A row a dish: what a portion costs, its cap, what is to spare or over. Caps are typed here too."""

    @property
    def name(self) -> str:
        return _("Caps")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("number", "", characters=2.5, align=Align.RIGHT),
            Column("name", _("dish"), characters=22, stretch=3),
            Column("bar", "", characters=20, stretch=3),
            Column("cost", _("a portion"), characters=9, align=Align.RIGHT),
            Column("cap", _("cap"), characters=8, align=Align.RIGHT, tip=_("Grey where it is the shoot's")),
            Column("headroom", _("to spare or over"), characters=17, align=Align.RIGHT),
            Column("part", _("of the cap"), characters=8, align=Align.RIGHT),
        )

    def columns_for(self, sight: Sight) -> tuple[Column, ...]:
        """The head of the costs names what they are held on."""
        shoot = sight.binder.shoots.get(sight.shoot or "")
        if shoot is None:
            return self.columns
        title = _("a portion: {basis}").format(basis=basis_text(shoot.cap_basis))
        return tuple(replace(one, title=title) if one.id == "bar" else one for one in self.columns)

    def rows(self, sight: Sight) -> list[Row]:
        if sight.shoot is None:
            return []
        costs = shoot_costs(sight.binder, sight.shoot)
        longest = max((max(cost.per_portion or 0.0, float(cost.cap or 0)) for cost in costs), default=0.0) * _ROOM
        return [_basis(sight), *(_row(sight.binder, cost, longest or 1.0) for cost in costs)] if costs else []

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder = sight.binder
        if row == _BASIS and sight.shoot is not None:
            words = {basis_text(basis): basis for basis in CapBasis}
            return set_cap_basis(binder.shoots[sight.shoot], typed_choice(text, words))
        if column != "cap":
            raise NotEditableError
        return set_dish(binder, binder.dishes[record_of(row).id], cap=typed_money(binder, text))


def _basis(sight: Sight) -> Row:
    """What a portion is taken to cost, chosen here."""
    shown = basis_text(sight.binder.shoots[sight.shoot or ""].cap_basis)
    choices = tuple(basis_text(basis) for basis in CapBasis)
    cell = Cell(shown, label=_("caps are held on"), edit=shown, choices=choices)
    place = Place("shoots", sight.shoot or "")
    return Row(_BASIS, (NOTHING, cell, *(NOTHING,) * 5), spans=((1, 3),), lines=1.6, place=place)


def _row(binder: Binder, cost: DishCost, longest: float) -> Row:
    place, dish = Place("dishes", cost.dish), binder.dishes[cost.dish]
    bar = CostBar(
        None if cost.per_portion is None else cost.per_portion / longest,
        None if cost.cap is None else cost.cap / longest,
    )
    shown, cap = cost_beside_cap(binder, cost)
    cells = (
        Cell(str(cost.number), tone=Tone.QUIET, leads_to=place, tip=_("Open in the running order")),
        Cell(cost.name, tip=cost.name),
        Cell(picture=bar, spoken=" "),
        _cost_cell(cost, shown),
        Cell(
            cap if cost.cap is not None else "",
            edit=plain_money(binder, dish.cap),
            placeholder=_("none"),
            tone=Tone.INK if dish.cap is not None else Tone.QUIET,
        ),
        _headroom(binder, cost),
        _part(binder, cost),
    )
    return Row(key_of(place), cells, place=place, lines=1.7)


def _cost_cell(cost: DishCost, shown: str) -> Cell:
    if cost.per_portion is None:
        return Cell("–", tone=Tone.QUIET, spoken=_("not known"))
    return Cell(shown, size=Size.STRONG, tone=Tone.STOP if cost.verdict is Verdict.OVER else Tone.INK)


def _headroom(binder: Binder, cost: DishCost) -> Cell:
    if cost.verdict is Verdict.UNKNOWN:
        tip = "\n".join(lack.says for lack in cost.missing)
        return Cell(not_known(cost.missing), mark=Mark.UNKNOWN, leads_to=cost.missing[0].place, tip=tip)
    if cost.verdict is Verdict.NO_CAP:
        return Cell(_("no cap"), tone=Tone.QUIET)
    over = cost.verdict is Verdict.OVER
    return Cell(headroom_text(binder, cost), mark=mark_of(cost.verdict), tone=Tone.STOP if over else Tone.INK)


def _part(binder: Binder, cost: DishCost) -> Cell:
    """Cost over cap; what is only just over or under is not shown as the whole."""
    if cost.per_portion is None or not cost.cap:
        return NOTHING
    shown, whole = percent_text(binder, cost.per_portion / cost.cap), percent_text(binder, 1.0)
    if shown == whole and cost.verdict is Verdict.OVER:
        shown = f">{whole}"
    elif shown == whole and cost.per_portion < cost.cap:
        shown = f"<{whole}"
    return Cell(shown, tone=Tone.QUIET)


def worst_dish(binder: Binder, shoot: str) -> str | None:
    """The dish that wants a look first: the furthest over its cap, else one not known, else the nearest to its cap."""
    costs = shoot_costs(binder, shoot)
    known = [cost for cost in costs if cost.headroom is not None]
    worst = min(known, key=lambda cost: cost.headroom or 0.0, default=None)
    unknown = [cost for cost in costs if cost.verdict is Verdict.UNKNOWN]
    if worst is not None and (worst.verdict is Verdict.OVER or not unknown):
        return worst.dish
    return unknown[0].dish if unknown else costs[0].dish if costs else None
