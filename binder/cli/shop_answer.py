"""The answer of `binder shop --json`."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.cli.answer import Answer, answer_of, paid, weighed
from binder.cli.pack_text import pack_label, store_name
from binder.figures.shopping import PackCount, ShoppingItem, shopping_list

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Shoot


def shop_answer(binder: Binder, shoot: Shoot) -> Answer:
    """What to buy. `bound` is what the till cannot go below: the cheapest packs of all that has a price."""
    bought, currency = shopping_list(binder, shoot.id), binder.settings.currency
    return answer_of(
        binder,
        shoot,
        items=[_item(binder, item) for item in bought.items],
        spend=paid(bought.spend, currency),
        proven_optimal=bought.proven_optimal,
        bound=paid(bought.known_spend, currency) if bought.proven_optimal else None,
        missing=[lack.says for lack in bought.missing],
    )


def _item(binder: Binder, item: ShoppingItem) -> Answer:
    return {
        "food": item.name,
        "grams_needed": weighed(item.needed),
        "packs": [_pack(binder, pack) for pack in item.packs],
        "missing": [item.missing.says] if item.missing else [],
    }


def _pack(binder: Binder, taken: PackCount) -> Answer:
    """One kind of pack; `price` is for one of them."""
    return {
        "label": pack_label(binder, taken.priced.pack),
        "count": taken.count,
        "price": paid(taken.priced.price, binder.settings.currency),
        "store": store_name(binder, taken.priced.pack),
        "date": taken.priced.quote.on.isoformat(),
    }
