"""What became of the shopping list, food by food: planned, ticked, paid for, and how much of it there is."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.buying_terms import offer_of
from binder.figures.memory import PLANS, remembered_from
from binder.figures.missing import Missing
from binder.figures.price import PricedPack, pack_grams, quote_of_pack
from binder.figures.shopping import PackCount, ShoppingItem, shopping_list

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from binder.kitchen.binder import Binder
    from binder.kitchen.buying import Purchase
    from binder.kitchen.price import Pack, Quote


@dataclass(frozen=True)
class FoodReceipt:
    """A food of the list, or one bought beside it. Minor units; grams as purchased.

    `planned` is what the list said when it was ticked, or says now, None where a price is missing. `committed` is for
    what is ticked, as paid or else as the book asks, and `paid` for what has a receipt, None where nothing has.
    `expected` is the best that is known of all of it. `waits`: something is not ticked yet or has no receipt.
    """

    food: str
    name: str
    planned: int | None
    planned_grams: float
    committed: int | None
    committed_grams: float
    paid: int | None
    paid_grams: float
    expected: int | None
    expected_grams: float
    waits: bool
    purchases: tuple[Purchase, ...]
    missing: Missing | None = None

    @property
    def is_listed(self) -> bool:
        """Whether the list asks for it."""
        return self.planned_grams > 0 or self.missing is not None

    @property
    def variance(self) -> int | None:
        """What was paid beyond the plan; None where that is not known, or not all has a receipt."""
        return None if self.paid is None or self.planned is None or self.waits else self.paid - self.planned


@remembered_from(PLANS | {"purchases"})
def food_receipts(binder: Binder, shoot_id: str) -> tuple[FoodReceipt, ...]:
    """Every food of the list in its order, then what was bought beside it."""
    by_food: dict[str, list[Purchase]] = {}
    for purchase in binder.purchases.where("shoot", shoot_id):
        by_food.setdefault(purchase.food, []).append(purchase)
    items = {item.food: item for item in shopping_list(binder, shoot_id).items}
    foods = dict.fromkeys([*items, *by_food])
    return tuple(_receipt(binder, food, items.get(food), by_food.get(food, [])) for food in foods)


@dataclass(frozen=True)
class _Part:
    """A purchase, or a pack of the list that is not ticked yet: minor units and grams."""

    planned: int | None
    asked: int | None
    paid: int | None
    planned_grams: float
    grams: float
    ticked: bool

    @property
    def committed(self) -> int:
        if not self.ticked:
            return 0
        known = (self.paid, self.asked, self.planned)
        return next((amount for amount in known if amount is not None), 0)

    @property
    def expected(self) -> int:
        return self.committed if self.ticked else self.planned or 0


def _receipt(binder: Binder, food: str, item: ShoppingItem | None, purchases: Sequence[Purchase]) -> FoodReceipt:
    parts = list(_parts(binder, item, purchases))
    missing = item.missing if item and not purchases else None
    planned = None if missing else sum(part.planned or 0 for part in parts)
    ticked, paid = [part for part in parts if part.ticked], [part for part in parts if part.paid is not None]
    return FoodReceipt(
        food=food,
        name=binder.foods[food].name,
        planned=planned,
        planned_grams=sum(part.planned_grams for part in parts),
        committed=sum(part.committed for part in ticked) if ticked else None,
        committed_grams=sum(part.grams for part in ticked),
        paid=sum(part.paid or 0 for part in paid) if paid else None,
        paid_grams=sum(part.grams for part in paid),
        expected=None if missing else sum(part.expected for part in parts),
        expected_grams=sum(part.grams for part in parts),
        waits=len(paid) < len(parts) or missing is not None,
        purchases=tuple(purchases),
        missing=missing,
    )


def _parts(binder: Binder, item: ShoppingItem | None, purchases: Sequence[Purchase]) -> list[_Part]:
    """What was bought, and of the list what is still open.

    A purchase of no pack, of another food or of nothing puts an end to the whole line; else each pack has its own tick.
    """
    listed: Mapping[str, PackCount] = {one.priced.pack.id: one for one in (item.packs if item else ())}
    ended = any(one.pack is None or one.instead is not None or not one.count for one in purchases)
    bought = [_bought(binder, one, listed, whole=ended) for one in purchases]
    if ended:
        return _with_plan(bought, listed)
    ticked = {one.pack for one in purchases}
    return [*bought, *(_open(one) for key, one in listed.items() if key not in ticked)]


def _open(one: PackCount) -> _Part:
    return _Part(one.price, one.price, None, one.grams, one.grams, ticked=False)


def _bought(binder: Binder, purchase: Purchase, listed: Mapping[str, PackCount], *, whole: bool) -> _Part:
    on_list = None if whole else listed.get(purchase.pack or "")
    planned = purchase.planned if purchase.planned is not None or on_list is None else on_list.price
    grams, asked = _grams(binder, purchase, listed), _asked(binder, purchase)
    planned_grams = on_list.grams if on_list else 0.0
    return _Part(planned, asked, purchase.paid, planned_grams, grams, ticked=True)


def _with_plan(bought: list[_Part], listed: Mapping[str, PackCount]) -> list[_Part]:
    """Purchases that put an end to a line: the first stands for its plan, unless they say themselves what that was."""
    first, others = bought[0], bought[1:]
    said = any(part.planned is not None for part in bought)
    planned = first.planned if said else sum(one.price for one in listed.values())
    grams = sum(one.grams for one in listed.values())
    asked = first.asked if first.asked is not None else planned
    return [_Part(planned, asked, first.paid, grams, first.grams, ticked=True), *others]


def _grams(binder: Binder, purchase: Purchase, listed: Mapping[str, PackCount]) -> float:
    """Grams as purchased; of a line ticked without a pack, what the list has of it. 0 where it cannot be weighed."""
    if not purchase.count:
        return 0.0
    if purchase.pack is None:
        return 0.0 if purchase.instead else sum(one.grams for one in listed.values())
    grams = pack_grams(binder, binder.packs[purchase.pack])
    return 0.0 if isinstance(grams, Missing) else grams * purchase.count


def _asked(binder: Binder, purchase: Purchase) -> int | None:
    """Minor units that the book asks for what was taken; None where it has no price for it."""
    if not purchase.count:
        return 0
    pack = binder.packs.get(purchase.pack or "")
    quote = quote_of_pack(binder, pack) if pack else None
    return None if pack is None or quote is None else asked_for(binder, pack, quote, purchase.count)


def asked_for(binder: Binder, pack: Pack, quote: Quote, count: float) -> int:
    """Minor units for so many of a pack at a quote, its offer counted; a part of a pack is a part of its price."""
    whole = round(count)
    if pack.by_weight or whole != count:
        return math.floor(quote.price * count + 0.5)
    grams = pack_grams(binder, pack)
    return offer_of(PricedPack(pack, quote, 1.0 if isinstance(grams, Missing) else grams)).cost(whole)
