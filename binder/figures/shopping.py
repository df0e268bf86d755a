"""What to buy: for each food the cheapest whole packs that cover what the shoot needs, and what is left over."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.base import base_balance
from binder.figures.base_network import base_forms
from binder.figures.demand import shoot_demand
from binder.figures.memory import remembered
from binder.figures.missing import Missing
from binder.figures.pack_choice import cheapest_choice
from binder.figures.pack_offers import Need, Offer
from binder.figures.price import PricedPack, buyable_packs, chosen_pack

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.kitchen.binder import Binder


@dataclass(frozen=True)
class PackCount:
    """So many of one pack."""

    priced: PricedPack
    count: int

    @property
    def price(self) -> int:
        """Minor currency units for all of them."""
        return self.priced.price * self.count


@dataclass(frozen=True)
class ShoppingItem:
    """One food to buy: grams as purchased needed, the packs to take, minor units to pay and grams left over (None.

    Not known).
    """

    food: str
    name: str
    section: str
    needed: float
    packs: tuple[PackCount, ...]
    missing: Missing | None = None

    @property
    def spend(self) -> int | None:
        """Minor units at the till; None where no pack is known."""
        return None if self.missing else sum(pack.price for pack in self.packs)

    @property
    def left_over(self) -> float | None:
        """Grams bought beyond what is needed."""
        return None if self.missing else sum(pack.priced.grams * pack.count for pack in self.packs) - self.needed


@dataclass(frozen=True)
class ShoppingList:
    """Everything to buy for a shoot.

    `spend` is whole packs at the till in minor units, None where a price is missing.
    """

    items: tuple[ShoppingItem, ...]
    proven_optimal: bool
    missing: tuple[Missing, ...]

    @property
    def known_spend(self) -> int:
        """Minor units of the items whose price is known."""
        return sum(item.spend or 0 for item in self.items)

    @property
    def spend(self) -> int | None:
        """Minor units in all; None where something is missing."""
        return None if self.missing else self.known_spend


@remembered
def shopping_list(binder: Binder, shoot_id: str) -> ShoppingList:
    """The shopping list of a shoot by section of the store, then by name.

    Packs of one food are chosen exactly: no cheaper set covers the need.
    """
    needs = needed_to_buy(binder, shoot_id)
    items = [_item(binder, food, grams) for food, grams in needs.items() if grams > 0 and not binder.foods[food].free]
    order = {section: place for place, section in enumerate(type(binder.foods[items[0].food].section))} if items else {}
    items.sort(key=lambda item: (order[binder.foods[item.food].section], item.name.casefold()))
    lacking = dict.fromkeys(
        [*shoot_demand(binder, shoot_id).missing, *(item.missing for item in items if item.missing)]
    )
    return ShoppingList(tuple(items), proven_optimal=True, missing=tuple(lacking))


@remembered
def needed_to_buy(binder: Binder, shoot_id: str) -> dict[str, float]:
    """Grams as purchased of every food to buy.

    The base is bought as the shoot says there is of it; its forms are made, not bought.
    """
    needs = dict(shoot_demand(binder, shoot_id).grams)
    balance = base_balance(binder, shoot_id)
    if balance is None:
        return needs
    for form in base_forms(binder, balance.base):
        needs.pop(form, None)
    for food, grams in balance.added.items():
        needs[food] = needs.get(food, 0.0) + grams
    bought = balance.there_is or balance.needed or 0.0
    if bought > 0:
        needs[balance.base] = bought
    return needs


def _item(binder: Binder, food_id: str, grams: float) -> ShoppingItem:
    food = binder.foods[food_id]
    packs = buyable_packs(binder, food_id)
    if not packs:
        lacking = chosen_pack(binder, food_id)
        return ShoppingItem(
            food_id, food.name, food.section.value, grams, (), lacking if isinstance(lacking, Missing) else None
        )
    return ShoppingItem(food_id, food.name, food.section.value, grams, cheapest_packs(packs, grams))


def cheapest_packs(packs: Sequence[PricedPack], grams: float) -> tuple[PackCount, ...]:
    """The cheapest counts of whole packs that cover `grams`; ties go to less left over, then to fewer packs."""
    by_key = {priced.pack.id: priced for priced in packs}
    offers = [Offer(key, priced.pack.food, "", priced.grams, priced.price) for key, priced in by_key.items()]
    choice = cheapest_choice(Need("", grams), offers)
    return tuple(PackCount(by_key[one.offer.key], one.count) for one in choice.bought) if choice else ()
