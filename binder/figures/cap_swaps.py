"""Other foods that may stand in a dish for one that is too dear."""

from __future__ import annotations

import functools
import math
from typing import TYPE_CHECKING

from binder.figures.cap_candidate import Candidate, CapRepairKind
from binder.figures.missing import Missing, Place
from binder.figures.money_words import money, pack_words
from binder.figures.price import PricedPack, chosen_pack, priced_packs
from binder.figures.safety import foods_in_recipe
from binder.figures.weight import grams_of
from binder.kitchen.edits.records import set_fields
from binder.kitchen.food import Section
from binder.kitchen.name_book import singular_words
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator

    from binder.figures.cap_portion import Portion
    from binder.kitchen.binder import Binder
    from binder.kitchen.food import Food
    from binder.kitchen.recipe import Line

_MOST_SWAPS = 12
"""Foods looked at closely for one line."""

_OF_ONE_KIND = {Section.MEAT, Section.FISH}
"""Sections in which whatever is cooked to the same temperature may stand for each other; elsewhere names must agree."""


def swaps(portion: Portion, line: Line) -> Iterator[Candidate]:
    """Other foods of the section for a line, the nearest in price first: they bring no allergen and no new caution."""
    binder = portion.binder
    food = binder.foods.get(line.food or "")
    takes = portion.of_line(line.id)
    base = binder.shoots[portion.dish.shoot].base
    if food is None or food.form_of is not None or food.id == base or food.id not in takes:
        return
    left = portion.batch[food.id] - takes[food.id]
    if not portion.fits(portion.with_grams({food.id: left})):
        return
    found = sorted(_like(portion, food), key=lambda other: (abs(math.log(_dearer(binder, food, other))), other.id))
    for other in found[:_MOST_SWAPS]:
        grams = grams_of(binder, other, line.high or 0.0, line.unit, line.preparation)
        if isinstance(grams, Missing):
            continue
        needs = portion.batch.get(other.id, 0.0) + grams / other.trim_yield
        if portion.fits(portion.with_grams({food.id: left, other.id: needs})):
            yield _swap(portion, line, food, other)


def _like(portion: Portion, food: Food) -> Iterator[Food]:
    """The priced foods of the same section and kind that may be eaten by whoever may eat the dish."""
    binder = portion.binder
    inside = foods_in_recipe(binder, portion.recipe.id)
    carried, names = {code for one in inside for code in one.allergens}, {one.id for one in inside}
    for other in binder.foods.where("section", food.section):
        if (
            other.id not in names
            and other.form_of is None
            and _are_kin(food, other)
            and not other.free
            and other.doneness == food.doneness
            and (food.temperature_control or not other.temperature_control)
            and carried.issuperset(other.allergens)
            and priced_packs(binder, other.id)
        ):
            yield other


def _are_kin(food: Food, other: Food) -> bool:
    """Whether a cook would think of one for the other: white onion for red onion, but not soda for chocolate."""
    return food.section in _OF_ONE_KIND or _kind(food) == _kind(other)


def _kind(food: Food) -> str:
    """What a food is, without what kind of it: the last word of its name before a comma."""
    return " ".join(singular_words(food.name.partition(",")[0].partition("(")[0])[-1:])


def _dearer(binder: Binder, food: Food, other: Food) -> float:
    """How many times the price a gram of a food another has."""
    rates = [chosen_pack(binder, one.id) for one in (other, food)]
    over, under = (max(1e-9, rate.per_gram) if isinstance(rate, PricedPack) else 1.0 for rate in rates)
    return over / under


def _swap(portion: Portion, line: Line, food: Food, other: Food) -> Candidate:
    label = _("Swap {food} for {other} in {recipe}")
    change = set_fields(label.format(food=food.name, other=other.name, recipe=portion.recipe.name), line, food=other.id)
    size = abs(math.log(_dearer(portion.binder, food, other)))
    says = functools.partial(_swap_text, portion, line, food, other)
    return Candidate(CapRepairKind.SWAP, says, change, size, Place("lines", line.id))


def _swap_text(portion: Portion, line: Line, food: Food, other: Food) -> str:
    binder, priced = portion.binder, chosen_pack(portion.binder, other.id)
    assert isinstance(priced, PricedPack)  # noqa: S101 - only priced foods are looked at
    says = _("Take {other} ({price} for {pack}) instead of {food}").format(
        other=other.name, price=money(binder, priced.price), pack=pack_words(binder, priced.pack), food=food.name
    )
    return portion.in_step(line, says)
