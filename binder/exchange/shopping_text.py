"""The shopping list as plain text to paste into a message: short lines, tick boxes, by trip and section."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.exchange.shopping_lines import (
    day_words,
    lines_without_packs,
    shopping_trips,
    to_order_first,
)
from binder.figures.buying_words import one_line
from binder.figures.money_words import money
from binder.figures.portion_text import number_style
from binder.figures.shopping import shopping_list
from binder.kitchen.amount_text import grams_text
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from binder.exchange.shopping_lines import ShoppingLine, ShoppingTrip
    from binder.kitchen.binder import Binder

_OPEN, _DONE = "☐", "☑"


def shopping_text(binder: Binder, shoot_id: str) -> str:
    """The list as lines that a message shows whole; it ends with a line end."""
    trips = shopping_trips(binder, shoot_id)
    parts = [[_title(binder, shoot_id)], _ahead(binder, shoot_id, trips)]
    parts += [list(_trip(binder, trip)) for trip in trips]
    parts += [list(_others(binder, shoot_id)), list(_totals(binder, shoot_id, trips))]
    return "\n\n".join("\n".join(part) for part in parts if part) + "\n"


def _title(binder: Binder, shoot_id: str) -> str:
    shoot = binder.shoots[shoot_id]
    says = _("Shopping for {shoot}").format(shoot=one_line(shoot.name))
    return f"{says}, {day_words(binder, shoot.on)}" if shoot.on else says


def _ahead(binder: Binder, shoot_id: str, trips: Sequence[ShoppingTrip]) -> list[str]:
    """What to order ahead: on top, since the day for it comes first."""
    orders = to_order_first(trips, lines_without_packs(binder, shoot_id))
    lines = [_("Order ahead")] if orders else []
    for trip, line in orders:
        day = day_words(binder, line.order_by) if line.order_by else ""
        where = trip.store or _("any store")
        lines.append(_("{box} by {day}: {food}").format(box=_box(line), day=day, food=line.food))
        lines.append(f"   {line.take or line.note}, {where}")
    return lines


def _trip(binder: Binder, trip: ShoppingTrip) -> Iterator[str]:
    day = day_words(binder, trip.on) if trip.on else _("any day")
    yield f"{day}: {trip.store or _('any store')}, {money(binder, trip.price)}"
    for section, lines in trip.sections:
        yield f"· {_(section)}"
        yield from (_line(binder, line) for line in lines)


def _line(binder: Binder, line: ShoppingLine) -> str:
    """`☐ tahini: 1 × 16 oz jar, $7.49`."""
    price = "" if line.price is None else money(binder, line.price)
    take = f"{line.take} ({line.offer})" if line.offer else line.take
    told = [take, price, line.done]
    if line.deposit:
        told.append(_("{money} deposit").format(money=money(binder, line.deposit)))
    return f"{_box(line)} {line.food}: {', '.join(part for part in told if part)}"


def _box(line: ShoppingLine) -> str:
    return _DONE if line.done else _OPEN


def _others(binder: Binder, shoot_id: str) -> Iterator[str]:
    """What no trip fetches: first what has no price yet, since someone must see to it."""
    style = number_style(binder)
    lines = lines_without_packs(binder, shoot_id)
    for line in lines:
        if line.item.missing:
            yield f"{_OPEN} {line.food}, {grams_text(line.item.needed, style)}: {line.note}"
    home = [line for line in lines if not line.item.missing]
    if home:
        yield _("At home: {foods}").format(foods=", ".join(line.food for line in home))


def _totals(binder: Binder, shoot_id: str, trips: Sequence[ShoppingTrip]) -> Iterator[str]:
    bought, deposit = shopping_list(binder, shoot_id), sum(trip.deposit for trip in trips)
    says = _("At the till: {money}") if bought.spend is not None else _("At the till: not known; at least {money}")
    yield says.format(money=money(binder, bought.known_spend))
    if deposit:
        yield _("Deposits: {money}").format(money=money(binder, deposit))
