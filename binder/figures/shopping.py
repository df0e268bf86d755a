"""What to buy: the cheapest whole packs that cover what the shoot needs after the pantry, and what is left over."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from binder.figures.base import base_balance
from binder.figures.base_network import base_forms
from binder.figures.buying_terms import buying_terms, offer_of, waste_rate
from binder.figures.demand import shoot_demand
from binder.figures.memory import PLANS, remembered_from
from binder.figures.missing import Missing, MissingKind, Place
from binder.figures.pack_offers import Bought, Need, NothingCoversError
from binder.figures.pack_program import cheapest_purchase
from binder.figures.price import PricedPack, buyable_packs, chosen_pack, priced_packs
from binder.figures.too_few_stores import too_few_stores_text
from binder.figures.weight import grams_as_bought
from binder.figures.whole_packs import cheapest_bought
from binder.kitchen.food import Section

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from binder.kitchen.binder import Binder


@dataclass(frozen=True)
class PackCount:
    """So many of one pack (at the counter: one, of `grams`), and `price`: minor currency units for all of them."""

    priced: PricedPack
    count: int
    grams: float
    price: int


@dataclass(frozen=True)
class ShoppingItem:
    """One food to buy: grams as purchased needed and at home already, and the packs to take.

    `missing` says why no pack is known.
    """

    food: str
    name: str
    section: str
    needed: float
    packs: tuple[PackCount, ...]
    missing: Missing | None = None
    at_home: float = 0.0

    @property
    def spend(self) -> int | None:
        """Minor units at the till; None where no pack is known."""
        return None if self.missing else sum(pack.price for pack in self.packs)

    @property
    def left_over(self) -> float | None:
        """Grams there will be beyond what is needed; None where no pack is known."""
        if self.missing:
            return None
        return max(0.0, self.at_home + sum(pack.grams for pack in self.packs) - self.needed)

    @property
    def deposit(self) -> int:
        """Minor units that come back with the empties."""
        return sum(pack.priced.pack.deposit * pack.count for pack in self.packs)


@dataclass(frozen=True)
class ShoppingList:
    """Everything to buy for a shoot. `bound` is minor units that no purchase on these terms can cost less than.

    Where trips cost something or stores are avoided, the bound counts that too, as `objective` does.
    """

    items: tuple[ShoppingItem, ...]
    proven_optimal: bool
    missing: tuple[Missing, ...]
    objective: float = 0.0
    bound: float = 0.0

    @property
    def known_spend(self) -> int:
        """Minor units of the items whose price is known."""
        return sum(item.spend or 0 for item in self.items)

    @property
    def spend(self) -> int | None:
        """Minor units in all; None where something is missing."""
        return None if self.missing else self.known_spend


@remembered_from(PLANS)
def shopping_list(binder: Binder, shoot_id: str) -> ShoppingList:
    """The shopping list of a shoot by section of the store, then by name, for all foods and stores at once.

    Packs are chosen exactly: no cheaper set of whole packs covers the need on the shoot's terms.
    """
    needs = {food: grams for food, grams in needed_to_buy(binder, shoot_id).items() if _is_listed(binder, food, grams)}
    home = at_home(binder, shoot_id)
    packs = {food: buyable_packs(binder, food) for food in needs}
    to_cover = [
        Need(food, max(0.0, grams - home.get(food, 0.0)), waste_rate(binder, shoot_id, food))
        for food, grams in needs.items()
    ]
    offers = [offer_of(priced) for group in packs.values() for priced in group]
    try:
        purchase = cheapest_purchase(to_cover, offers, buying_terms(binder, shoot_id))
    except NothingCoversError:
        return _nothing_covers(binder, shoot_id, needs, home, packs)
    taken = _by_food(purchase.bought, packs)
    items = [_item(binder, food, grams, taken.get(food, ()), home.get(food, 0.0)) for food, grams in needs.items()]
    lacking = what_lacks(binder, shoot_id, items)
    return ShoppingList(_in_store_order(items), purchase.proven, lacking, purchase.objective, purchase.bound)


def what_lacks(binder: Binder, shoot_id: str, items: Iterable[ShoppingItem]) -> tuple[Missing, ...]:
    """What is not known of a shoot's need and of where to buy these items, each once."""
    lacking = (*shoot_demand(binder, shoot_id).missing, *(item.missing for item in items if item.missing))
    return tuple(dict.fromkeys(lacking))


def _is_listed(binder: Binder, food: str, grams: float) -> bool:
    return grams > 0 and not binder.foods[food].free


def _by_food(bought: Sequence[Bought], packs: Mapping[str, Sequence[PricedPack]]) -> dict[str, tuple[PackCount, ...]]:
    priced = {one.pack.id: one for group in packs.values() for one in group}
    taken: dict[str, tuple[PackCount, ...]] = {}
    for one in bought:
        count = PackCount(priced[one.offer.key], one.count, one.grams, one.cost)
        taken[one.offer.food] = (*taken.get(one.offer.food, ()), count)
    return taken


def _in_store_order(items: Sequence[ShoppingItem]) -> tuple[ShoppingItem, ...]:
    order = [str(section) for section in Section]
    return tuple(sorted(items, key=lambda item: (order.index(item.section), item.name.casefold())))


def _item(binder: Binder, food_id: str, grams: float, packs: tuple[PackCount, ...], home: float) -> ShoppingItem:
    food = binder.foods[food_id]
    lacking = None if packs or grams <= home else chosen_pack(binder, food_id)
    missing = lacking if isinstance(lacking, Missing) else None
    return ShoppingItem(food_id, food.name, food.section.value, grams, packs, missing, home)


def _nothing_covers(
    binder: Binder,
    shoot_id: str,
    needs: Mapping[str, float],
    home: Mapping[str, float],
    packs: Mapping[str, Sequence[PricedPack]],
) -> ShoppingList:
    """The list where the shoot may go to too few stores to get everything: nothing is chosen, and that is said."""
    to_buy = [food for food, grams in needs.items() if grams > home.get(food, 0.0)]
    sold = {food: {one.pack.store for one in packs[food] if one.pack.store} for food in to_buy}
    somewhere = {food: stores for food, stores in sold.items() if stores and all(one.pack.store for one in packs[food])}
    says = too_few_stores_text(binder, binder.shoots[shoot_id].most_stores or 0, somewhere)
    lack = Missing(MissingKind.PRICE, says, Place("shoots", shoot_id))
    items = [_item(binder, food, grams, (), home.get(food, 0.0)) for food, grams in needs.items()]
    items = [replace(item, missing=item.missing or lack) if item.food in to_buy else item for item in items]
    lacking = dict.fromkeys((lack, *(item.missing for item in items if item.missing)))
    return ShoppingList(_in_store_order(items), proven_optimal=True, missing=tuple(lacking))


@remembered_from(PLANS)
def needed_to_buy(binder: Binder, shoot_id: str) -> dict[str, float]:
    """Grams as purchased of every food the shoot needs, whether at home already or not.

    The base is had as the shoot says there is of it; its forms are made, not bought.
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


@remembered_from(PLANS)
def at_home(binder: Binder, shoot_id: str) -> dict[str, float]:
    """Grams as purchased of each food in the shoot's pantry; what cannot be weighed is left out, and so bought."""
    home: dict[str, float] = {}
    for item in binder.pantry_items.where("shoot", shoot_id):
        grams = grams_as_bought(binder, binder.foods[item.food], item.amount, item.unit)
        if not isinstance(grams, Missing):
            home[item.food] = home.get(item.food, 0.0) + grams
    return home


def cheapest_packs(packs: Sequence[PricedPack], grams: float) -> tuple[PackCount, ...]:
    """The cheapest packs of one food that cover `grams`; ties go to less left over, then to fewer packs."""
    by_key = {priced.pack.id: priced for priced in packs}
    bought = cheapest_bought(packs, grams)
    return tuple(PackCount(by_key[one.offer.key], one.count, one.grams, one.cost) for one in bought)


@dataclass(frozen=True)
class NextBest:
    """The best packs of a food without one that was taken, and how many minor units more they would have cost."""

    packs: tuple[PackCount, ...]
    more: int


def next_best(binder: Binder, shoot_id: str, food: str) -> NextBest | None:
    """Why these packs: what the next best would have cost; None where there is no other.

    Where a price is pinned that may be less than what is taken: the pin was chosen, and not the price.
    """
    item = next((one for one in shopping_list(binder, shoot_id).items if one.food == food), None)
    if item is None or not item.packs:
        return None
    taken = {pack.priced.pack.id for pack in item.packs}
    grams = item.needed - item.at_home
    others = (
        cheapest_packs([one for one in priced_packs(binder, food) if one.pack.id != without], grams)
        for without in taken
    )
    best = min((found for found in others if found), key=lambda found: sum(one.price for one in found), default=None)
    return None if best is None else NextBest(best, sum(one.price for one in best) - (item.spend or 0))
