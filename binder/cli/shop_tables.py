"""What `binder shop` shows to people: what to order ahead, then each trip as one walks through the store."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.cli.columns import amounts, numbers, words
from binder.cli.heading import show_heading
from binder.cli.marks import budget_mark
from binder.cli.terminal import say, say_marked, say_parts, show_grouped, show_table
from binder.exchange.shopping_lines import (
    day_words,
    lines_without_packs,
    shopping_trips,
    to_order_first,
)
from binder.figures.budget import FOOD, shoot_budget
from binder.figures.date_text import date_text
from binder.figures.money_words import money
from binder.figures.portion_text import number_style
from binder.figures.shopping import ShoppingList, shopping_list
from binder.figures.trips import buying_clashes
from binder.kitchen.amount_text import grams_text
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.exchange.shopping_lines import ShoppingLine, ShoppingTrip
    from binder.figures.budget import Budget
    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Shoot

NOT_KNOWN = "–"
_EXACT = 0.005
"""Minor units; two sums as near as that are one."""


def show_shop(binder: Binder, shoot: Shoot) -> None:
    """Packs to take, by trip and section of the store, and what they come to."""
    show_heading(binder, shoot)
    trips = shopping_trips(binder, shoot.id)
    _show_orders(binder, to_order_first(trips, lines_without_packs(binder, shoot.id)))
    for trip in trips:
        _show_trip(binder, trip)
    _show_others(binder, lines_without_packs(binder, shoot.id))
    bought = shopping_list(binder, shoot.id)
    for lack in (*bought.missing, *buying_clashes(binder, shoot.id)):
        say_marked("◌" if lack in bought.missing else "△", lack.says)
    say(_till(binder, bought))
    deposit = sum(trip.deposit for trip in trips)
    if deposit:
        says = _("Deposits beside that: {money}, which come back with the empties.")
        say(says.format(money=money(binder, deposit)))
    if shoot.budget is not None:
        say(_budget(binder, shoot_budget(binder, shoot.id), shoot.budget))


def _show_orders(binder: Binder, orders: Sequence[tuple[ShoppingTrip, ShoppingLine]]) -> None:
    if not orders:
        return
    say(_("Order ahead"), strong=True)
    columns = [words(_("Call by")), words(_("Food")), words(_("Take")), words(_("Store")), words(_("Fetch on"))]
    rows = [
        [
            day_words(binder, line.order_by) if line.order_by else NOT_KNOWN,
            line.food,
            line.take or NOT_KNOWN,
            trip.store or _("any store"),
            day_words(binder, trip.on) if trip.on else _("any day"),
        ]
        for trip, line in orders
    ]
    show_table(columns, rows)
    say()


def _show_trip(binder: Binder, trip: ShoppingTrip) -> None:
    day = day_words(binder, trip.on) if trip.on else _("any day")
    say_parts([day, trip.store or _("any store"), money(binder, trip.price)])
    columns = [words(_("Food")), amounts(_("Needed")), words(_("Take")), numbers(_("Price"))]
    columns += [numbers(_("Left over")), words(_("Price of"))]
    show_grouped(columns, [(_(section), [_row(binder, line) for line in lines]) for section, lines in trip.sections])
    say()


def _row(binder: Binder, line: ShoppingLine) -> list[str]:
    style = number_style(binder)
    needed = [grams_text(line.needed, style)] if line.needed is not None else []
    if line.at_home:
        needed.append(_("{grams} at home").format(grams=grams_text(line.at_home, style)))
    return [
        _("{food} ✓ {done}").format(food=line.food, done=line.done) if line.done else line.food,
        " · ".join(needed),
        "; ".join(part for part in (line.take, line.offer, _deposit(binder, line)) if part),
        NOT_KNOWN if line.price is None else money(binder, line.price),
        "" if line.left_over is None else grams_text(line.left_over, style),
        date_text(binder, line.taken.priced.quote.on) if line.taken else "",
    ]


def _deposit(binder: Binder, line: ShoppingLine) -> str:
    if not line.deposit:
        return ""
    return _("{money} deposit").format(money=money(binder, line.deposit))


def _show_others(binder: Binder, lines: Sequence[ShoppingLine]) -> None:
    """What no trip fetches."""
    style = number_style(binder)
    home = [line for line in lines if not line.item.missing]
    unknown = [line for line in lines if line.item.missing]
    if unknown:
        columns = [words(_("No pack known")), numbers(_("Needed")), words("")]
        show_table(columns, [[line.food, grams_text(line.item.needed, style), _("◌ not known")] for line in unknown])
        say()
    if home:
        columns = [words(_("At home")), numbers(_("Needed")), numbers(_("There is"))]
        rows = [(line.food, line.item.needed, line.item.at_home) for line in home]
        show_table(columns, [[food, *(grams_text(grams, style) for grams in pair)] for food, *pair in rows])
        say()


def _till(binder: Binder, bought: ShoppingList) -> str:
    known = money(binder, bought.known_spend)
    says = _("At the till: {money}.")
    if bought.spend is None:
        says = _("At the till: not known; {money} for what has a price.")
    return f"{says.format(money=known)} {_proof(bought)}".rstrip()


def _proof(bought: ShoppingList) -> str:
    """What is proven of the choice: that nothing is cheaper, or better on the terms that count more than the till."""
    if not bought.proven_optimal or not bought.known_spend:
        return ""
    if abs(bought.objective - bought.known_spend) < _EXACT:
        return _("No cheaper whole packs would do.")
    return _("On the shoot's terms (trips, stores, waste) nothing would do better.")


def _budget(binder: Binder, budget: Budget, allowed: int) -> str:
    says, expected = _("Budget: {money}. {mark}"), budget.total.expected
    if expected is not None and expected != budget.of(*FOOD).expected:
        says = _("Budget: {money}; with all that is not food {expected} is expected. {mark}")
    shown = "" if expected is None else money(binder, expected)
    return says.format(money=money(binder, allowed), expected=shown, mark=budget_mark(budget))
