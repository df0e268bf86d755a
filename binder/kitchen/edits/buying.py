"""Edits of buying: the pantry, days of trips, ticks on the list, what stores have and ask."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.kitchen.buying import PantryItem, Purchase, Trip
from binder.kitchen.change import Change, changed
from binder.kitchen.edits.identity import new_id
from binder.kitchen.edits.records import insert, remove, set_fields
from binder.kitchen.food import Section
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from datetime import date

    from binder.kitchen.binder import Binder
    from binder.kitchen.food import Food
    from binder.kitchen.price import Pack, Quote, Store
    from binder.kitchen.shoot import Shoot


def add_pantry_item(
    binder: Binder, shoot: Shoot, food: Food, *, amount: float, unit: str = "g"
) -> tuple[Change, PantryItem]:
    """So much of a food that need not be bought. Returns the change and the item it makes."""
    item = PantryItem(id=new_id("pantry-item"), shoot=shoot.id, food=food.id, amount=amount, unit=unit)
    return insert(_("Add {food} to the pantry").format(food=food.name), binder, item), item


def set_pantry_item(binder: Binder, item: PantryItem, **fields: object) -> Change:
    """Change how much of a food there is already."""
    return set_fields(_("Set {food} in the pantry").format(food=binder.foods[item.food].name), item, **fields)


def remove_pantry_item(binder: Binder, item: PantryItem) -> Change:
    """Take a food out of the pantry, so that it is bought."""
    return remove(_("Take {food} out of the pantry").format(food=binder.foods[item.food].name), binder, item)


def add_trip(binder: Binder, shoot: Shoot, store: Store, *, on: date) -> tuple[Change, Trip]:
    """A day on which a store is gone to. Returns the change and the trip it makes."""
    trip = Trip(id=new_id("trip"), shoot=shoot.id, store=store.id, on=on)
    return insert(_("Add a trip to {store}").format(store=store.name), binder, trip), trip


def set_trip(binder: Binder, trip: Trip, **fields: object) -> Change:
    """Change the day or the store of a trip."""
    return set_fields(_("Edit the trip to {store}").format(store=binder.stores[trip.store].name), trip, **fields)


def remove_trip(binder: Binder, trip: Trip) -> Change:
    """Take a trip out; what was to be fetched on it is fetched on another day."""
    return remove(_("Remove the trip to {store}").format(store=binder.stores[trip.store].name), binder, trip)


def tick(
    binder: Binder,
    shoot: Shoot,
    food: Food,
    *,
    pack: Pack | None = None,
    count: float = 1.0,
    planned: int | None = None,
    paid: int | None = None,
    on: date | None = None,
) -> Change:
    """Say that a line of the list is bought: so many of a pack (None: as the list has it), on a day.

    `planned` is what the list says they cost, `paid` what was paid for them, both in minor units. A line of the same
    food and pack that is ticked already is ticked anew.
    """
    purchase = Purchase(
        id=new_id("purchase"),
        shoot=shoot.id,
        food=food.id,
        pack=pack.id if pack else None,
        count=count,
        planned=planned,
        paid=paid,
        on=on,
    )
    return _ticked(_("Tick {food}").format(food=food.name), binder, purchase)


def take_instead(
    binder: Binder, shoot: Shoot, food: Food, *, instead: Food, pack: Pack | None = None, **bought: object
) -> Change:
    """Say that a food was not to be had and that a pack of another was taken instead; what was ticked is forgotten.

    `bought` are fields of the purchase: `count`, `planned` (what the list said the food itself would cost) and `paid`
    in minor units, `on`.
    """
    purchase = Purchase(
        id=new_id("purchase"),
        shoot=shoot.id,
        food=food.id,
        pack=pack.id if pack else None,
        instead=instead.id,
        **bought,  # type: ignore[arg-type]
    )
    label = _("Take {other} instead of {food}").format(other=instead.name, food=food.name)
    return changed(label, before=purchases_of(binder, shoot.id, food.id), after=[purchase])


def not_to_be_had(
    binder: Binder, shoot: Shoot, food: Food, *, planned: int | None = None, on: date | None = None
) -> Change:
    """Say that a food was not to be had and nothing was taken in its place: the shoot goes without."""
    nothing = Purchase(id=new_id("purchase"), shoot=shoot.id, food=food.id, count=0.0, planned=planned, paid=0, on=on)
    label = _("{food} is not to be had").format(food=food.name)
    return changed(label, before=purchases_of(binder, shoot.id, food.id), after=[nothing])


def _ticked(label: str, binder: Binder, purchase: Purchase) -> Change:
    before = [
        one
        for one in purchases_of(binder, purchase.shoot, purchase.food)
        if one.pack == purchase.pack or one.instead is not None or not one.count
    ]
    return changed(label, before=before, after=[purchase])


def purchases_of(binder: Binder, shoot: str, food: str) -> list[Purchase]:
    """What became of a food of a shoot's list so far, both by their ids: a list may still name a food that is gone."""
    return [purchase for purchase in binder.purchases.where("food", food) if purchase.shoot == shoot]


def set_purchase(binder: Binder, purchase: Purchase, **fields: object) -> Change:
    """Change what was bought: how many, what was paid, on which day."""
    return set_fields(_("Edit what was bought of {food}").format(food=_name(binder, purchase)), purchase, **fields)


def untick(binder: Binder, purchase: Purchase) -> Change:
    """Forget that something was bought: its line is open again."""
    return remove(_("Untick {food}").format(food=_name(binder, purchase)), binder, purchase)


def _name(binder: Binder, purchase: Purchase) -> str:
    return binder.foods[purchase.food].name


def set_on_sale(binder: Binder, pack: Pack, *, on_sale: bool) -> Change:
    """Say that a store has not got a pack, or that it has it again."""
    label = _("{food} is on sale again") if on_sale else _("{food} is not on sale")
    return set_fields(label.format(food=binder.foods[pack.food].name), pack, on_sale=on_sale)


def set_counter(binder: Binder, pack: Pack, *, by_weight: bool, least: float = 0.0) -> Change:
    """Say whether a pack is sold at the counter by weight, from `least` (in the pack's unit) upward."""
    label = _("Sell {food} by weight") if by_weight else _("Sell {food} in packs")
    return set_fields(label.format(food=binder.foods[pack.food].name), pack, by_weight=by_weight, least=least)


def set_store(store: Store, **fields: object) -> Change:
    """Change what holds for a store; `trip_cost` and `avoided` are minor units."""
    return set_fields(_("Edit {store}").format(store=store.name), store, **fields)


def move_section(store: Store, section: str, *, to: int) -> Change:
    """Put a section at another place on the way through a store. Those that had no place yet keep the usual order."""
    others = [other for other in walking_order(store) if other != section]
    place = max(0, min(to, len(others)))
    label = _("Move {section} in {store}").format(section=section, store=store.name)
    return set_fields(label, store, sections=(*others[:place], section, *others[place:]))


def walking_order(store: Store) -> tuple[str, ...]:
    """Every section in the order one walks through a store: the store's own, then those it does not name."""
    return tuple(dict.fromkeys([*store.sections, *(str(section) for section in Section)]))


def set_bundle(binder: Binder, quote: Quote, *, packs: int, price: int) -> Change:
    """Say that so many packs are sold for one price together, in minor units: 3 for the price of 2."""
    label = _("Set the offer on {food}").format(food=_food_of(binder, quote))
    return set_fields(label, quote, bundle_packs=packs, bundle_price=price)


def remove_bundle(binder: Binder, quote: Quote) -> Change:
    """Say that there is no offer on several packs any more."""
    label = _("Remove the offer on {food}").format(food=_food_of(binder, quote))
    return set_fields(label, quote, bundle_packs=None, bundle_price=None)


def _food_of(binder: Binder, quote: Quote) -> str:
    return binder.foods[binder.packs[quote.pack].food].name
