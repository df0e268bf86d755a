"""Edits of foods, their measures, packs and prices."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.kitchen.amount import parse_amount
from binder.kitchen.change import Change, changed, joined
from binder.kitchen.edits.identity import new_id, readable_id
from binder.kitchen.edits.records import insert, remove, set_fields, with_values
from binder.kitchen.food import Food, Measure
from binder.kitchen.larder import reference_larder
from binder.kitchen.money import money_text, parse_money, uses_decimal_comma
from binder.kitchen.price import Pack, Quote, Store
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from datetime import date

    from binder.kitchen.binder import Binder
    from binder.kitchen.record import Record


def adopt_food(binder: Binder, key: str) -> Change:
    """Bring a food of the shipped larder into the binder, with its measures; empty where it is there already."""
    label = _("Add {food}").format(food=reference_larder().foods[key].name)
    if key in binder.foods:
        return Change(label, ())
    larder = reference_larder()
    return changed(label, after=[larder.foods[key], *larder.measures[key]])


def add_food(binder: Binder, name: str, **fields: object) -> tuple[Change, Food]:
    """A food of the user's own. Returns the change and the food it makes."""
    taken = {*binder.foods, *reference_larder().foods}
    food = Food(id=readable_id(name, taken), name=name, source=_("the binder's own"), **fields)  # type: ignore[arg-type]
    return insert(_("Add {food}").format(food=name), binder, food), food


def set_food(food: Food, **fields: object) -> Change:
    """Change facts of a food."""
    return set_fields(_("Edit {food}").format(food=food.name), food, **fields)


def remove_food(binder: Binder, food: Food) -> Change:
    """Take a food out with its measures, packs and prices; StillUsedError on applying where a recipe uses it."""
    return remove(_("Remove {food}").format(food=food.name), binder, food)


def add_measure(binder: Binder, food: Food, *, unit: str, grams: float, preparation: str = "") -> Change:
    """Say what one of a unit of a food weighs, in grams, as the user measured it."""
    measure = Measure(
        id=new_id("measure"),
        food=food.id,
        unit=unit,
        preparation=preparation,
        grams=grams,
        source=_("the binder's own"),
    )
    return insert(_("Add the weight of 1 {unit} of {food}").format(unit=unit, food=food.name), binder, measure)


def set_measure(binder: Binder, measure: Measure, **fields: object) -> Change:
    """Change a measure; its source is then the binder's own."""
    fields = {"source": _("the binder's own"), **fields}
    return set_fields(_("Edit a measure of {food}").format(food=binder.foods[measure.food].name), measure, **fields)


def add_store(binder: Binder, name: str) -> tuple[Change, Store]:
    """A store. Returns the change and the store it makes."""
    store = Store(id=readable_id(name, binder.stores), name=name)
    return insert(_("Add {store}").format(store=name), binder, store), store


def add_pack(
    binder: Binder, food: Food, *, size: float, unit: str, store: str | None = None, label: str = ""
) -> tuple[Change, Pack]:
    """A pack of a food. Returns the change and the pack it makes."""
    pack = Pack(id=new_id("pack"), food=food.id, store=store, label=label, size=size, unit=unit)
    return insert(_("Add a pack of {food}").format(food=food.name), binder, pack), pack


def typed_size(binder: Binder, text: str) -> tuple[float, str]:
    """A pack's size as typed (`1 lb`, `400 g`): number and unit. Raises the errors of amounts."""
    settings = binder.settings
    amount = parse_amount(text, settings.measures, decimal_comma=uses_decimal_comma(settings.locale))
    return amount.high or 0.0, amount.unit or "each"


def set_pack(binder: Binder, pack: Pack, **fields: object) -> Change:
    """Change a pack."""
    return set_fields(_("Edit a pack of {food}").format(food=binder.foods[pack.food].name), pack, **fields)


def add_quote(binder: Binder, pack: Pack, *, price: int, on: date, source: str = "") -> Change:
    """A price asked for a pack on a day, in minor currency units; it takes the place of an earlier one of that day."""
    label = _price_label(binder, pack, price)
    same_day = [quote for quote in binder.quotes.where("pack", pack.id) if quote.on == on]
    if same_day:
        return set_fields(label, same_day[-1], price=price, source=source)
    return insert(label, binder, Quote(id=new_id("quote"), pack=pack.id, price=price, on=on, source=source))


def set_price(binder: Binder, quote: Quote, price: int) -> Change:
    """Change what a quote says, in minor currency units."""
    return set_fields(_price_label(binder, binder.packs[quote.pack], price), quote, price=price)


def typed_price(binder: Binder, text: str) -> int:
    """Minor units of a price as typed. Raises UnreadablePriceError."""
    return parse_money(text, binder.settings.currency, binder.settings.locale)


def _price_label(binder: Binder, pack: Pack, price: int) -> str:
    money = money_text(price, binder.settings.currency, binder.settings.locale)
    return _("Set price of {food} to {price}").format(food=binder.foods[pack.food].name, price=money)


def pin_quote(binder: Binder, quote: Quote, *, pinned: bool) -> Change:
    """Choose a quote before all newer ones of its food, or let the newest be chosen again."""
    food = binder.foods[binder.packs[quote.pack].food]
    packs = binder.packs.where("food", food.id)
    others: list[Record] = [
        other
        for pack in packs
        for other in binder.quotes.where("pack", pack.id)
        if other.pinned and other.id != quote.id
    ]
    unpinned = [with_values(other, pinned=False) for other in others]
    label = _("Pin a price of {food}") if pinned else _("Unpin the price of {food}")
    alone = set_fields("", quote, pinned=pinned)
    return joined(label.format(food=food.name), [alone, changed("", before=others, after=unpinned)])
