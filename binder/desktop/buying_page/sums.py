"""The foot of the list: the sum at the till beside the budget, what is paid so far, and how surely it is cheapest."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import NOTHING, Cell, Mark, Row, Size, Tone
from binder.figures.missing import Place
from binder.figures.money_words import money
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.figures.shopping import ShoppingList
    from binder.kitchen.binder import Binder

_CENT = 0.5
"""Minor units; a bound closer than this is the sum itself."""


def sum_rows(binder: Binder, shoot: str, bought: ShoppingList) -> list[Row]:
    """The sum, and under it what is said of it."""
    cells = (
        NOTHING,
        Cell(_sum_text(binder, shoot, bought), mark=_mark(binder, shoot, bought), size=Size.STRONG),
        *(NOTHING,) * 5,
        Cell(money(binder, bought.known_spend), size=Size.STRONG),
        _paid(binder, shoot),
        NOTHING,
    )
    place = Place("shoots", shoot)
    return [
        Row("total", cells, place=place, spans=((1, 6),), gap=4, lines=1.8, rule=False),
        Row(
            "surely",
            (NOTHING, Cell(surely_text(binder, bought), size=Size.SMALL, tone=Tone.QUIET), *(NOTHING,) * 8),
            spans=((1, 9),),
            lines=1.4,
            rule=False,
        ),
    ]


def _sum_text(binder: Binder, shoot: str, bought: ShoppingList) -> str:
    budget = binder.shoots[shoot].budget
    of = _("; the budget, for all there is to pay, is {money}").format(money=money(binder, budget)) if budget else ""
    rest = _(", and what has no price") if bought.spend is None else ""
    return _("At the till, whole packs{rest}{budget}").format(budget=of, rest=rest)


def _mark(binder: Binder, shoot: str, bought: ShoppingList) -> Mark:
    budget = binder.shoots[shoot].budget
    if budget is not None and bought.known_spend > budget:
        return Mark.OVER
    if bought.spend is None:
        return Mark.UNKNOWN
    return Mark.WITHIN if budget is not None else Mark.NONE


def _paid(binder: Binder, shoot: str) -> Cell:
    paid = [one.paid for one in binder.purchases.where("shoot", shoot) if one.paid is not None]
    return Cell(money(binder, sum(paid)), size=Size.STRONG, tip=_("Paid so far")) if paid else NOTHING


def surely_text(binder: Binder, bought: ShoppingList) -> str:
    """Whether anything could be cheaper, and what of the sum comes back."""
    says = []
    if bought.items and bought.proven_optimal:
        says.append(_("No other choice of packs costs less: proven."))
    elif bought.items and bought.bound < bought.objective - _CENT:
        says.append(_("No choice of packs can cost less than {money}.").format(money=money(binder, bought.bound)))
    deposit = sum(item.deposit for item in bought.items)
    if deposit:
        says.append(_("Deposits of {money} come back with the empties.").format(money=money(binder, deposit)))
    return " ".join(says)
