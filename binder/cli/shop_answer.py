"""The answer of `binder shop --json`."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.cli.answer import Answer, answer_of, paid, weighed, worked_out
from binder.figures.money_words import pack_words
from binder.figures.shopping import PackCount, ShoppingItem, shopping_list
from binder.figures.trips import TripPlan, buying_clashes, to_order, trip_plans

if TYPE_CHECKING:
    from collections.abc import Mapping
    from datetime import date

    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Shoot


def shop_answer(binder: Binder, shoot: Shoot) -> Answer:
    """What to buy, on which trips, and what to order ahead.

    The packs were chosen by `objective`: the till, and what the shoot's terms count beside it (trips, stores avoided,
    food thrown away). No purchase on these terms comes to less than `bound`; where there are no terms, that is the
    least the till can be.
    """
    bought, currency = shopping_list(binder, shoot.id), binder.settings.currency
    plans = trip_plans(binder, shoot.id)
    days = {
        (line.item.food, pack.priced.pack.id): plan.on for plan in plans for line in plan.lines for pack in line.packs
    }
    return answer_of(
        binder,
        shoot,
        items=[_item(binder, item, days) for item in bought.items],
        trips=[_trip(binder, plan) for plan in plans],
        order_ahead=_orders(binder, shoot),
        spend=paid(bought.spend, currency),
        deposits=paid(sum(item.deposit for item in bought.items), currency),
        proven_optimal=bought.proven_optimal,
        objective=worked_out(bought.objective, currency),
        bound=worked_out(bought.bound, currency),
        missing=[lack.says for lack in bought.missing],
        clashes=[clash.says for clash in buying_clashes(binder, shoot.id)],
    )


def _item(binder: Binder, item: ShoppingItem, days: Mapping[tuple[str, str], date | None]) -> Answer:
    return {
        "food": item.name,
        "section": item.section,
        "grams_needed": weighed(item.needed),
        "grams_at_home": weighed(item.at_home),
        "grams_left_over": weighed(item.left_over),
        "packs": [_pack(binder, pack, days.get((item.food, pack.priced.pack.id))) for pack in item.packs],
        "missing": [item.missing.says] if item.missing else [],
    }


def _pack(binder: Binder, taken: PackCount, fetched: date | None) -> Answer:
    """One kind of pack. `price` is for one of them and was asked on `price_date`; `cost` and `deposit` are for all.

    `date` is the day they are fetched on. At the counter, where `by_weight`, there is one, of `grams`, and the price is
    for the size it is sold by. `bundle` is an offer of so many for one price.
    """
    pack, quote, currency = taken.priced.pack, taken.priced.quote, binder.settings.currency
    bundle = quote.bundle_packs and {"count": quote.bundle_packs, "price": paid(quote.bundle_price, currency)}
    return {
        "label": pack_words(binder, pack),
        "count": taken.count,
        "grams": weighed(taken.grams),
        "by_weight": pack.by_weight,
        "price": paid(taken.priced.price, currency),
        "bundle": bundle or None,
        "cost": paid(taken.price, currency),
        "deposit": paid(pack.deposit * taken.count, currency),
        "store": _store(binder, pack.store),
        "date": _iso(fetched),
        "price_date": quote.on.isoformat(),
    }


def _trip(binder: Binder, plan: TripPlan) -> Answer:
    """`foods` in the order one walks through the store."""
    return {
        "date": _iso(plan.on),
        "store": _store(binder, plan.store),
        "cost": paid(plan.price, binder.settings.currency),
        "foods": [line.item.name for line in plan.lines],
    }


def _orders(binder: Binder, shoot: Shoot) -> list[Answer]:
    return [
        {
            "food": line.item.name,
            "by": by.isoformat(),
            "date": _iso(plan.on),
            "store": _store(binder, plan.store),
        }
        for by, plan, line in to_order(binder, shoot.id)
    ]


def _store(binder: Binder, store: str | None) -> str | None:
    """What a store is called; None for any store."""
    return binder.stores[store].name if store else None


def _iso(day: date | None) -> str | None:
    return None if day is None else day.isoformat()
