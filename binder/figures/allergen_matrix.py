"""Allergens dish by dish for everyone who tastes: what is in it, and what may come to it by what dishes share."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.day_words import dish_title
from binder.figures.memory import PLANS, remembered_from
from binder.figures.recipe_use import recipe_uses, recipes_within
from binder.figures.safety import allergen_group, recipe_allergens, with_what_made_it
from binder.kitchen.day import ApplianceKind
from binder.kitchen.recipe import Heat
from binder.kitchen.reference import deference
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from binder.kitchen.binder import Binder
    from binder.kitchen.recipe import Step


@dataclass(frozen=True)
class Contact:
    """An allergen that may come to a dish: from which others (ids of dishes), by which things they share."""

    dishes: tuple[str, ...]
    shared: tuple[str, ...]


@dataclass(frozen=True)
class DishAllergens:
    """What a dish contains (the foods that carry it, by allergen), and what may come to it besides."""

    dish: str
    contains: Mapping[str, tuple[str, ...]]
    may_have: Mapping[str, Contact]


@dataclass(frozen=True)
class AllergenMatrix:
    """The allergens that any dish contains, by the names of the binder's scheme, and the dishes in running order."""

    allergens: tuple[str, ...]
    dishes: tuple[DishAllergens, ...]


@remembered_from(PLANS)
def allergen_matrix(binder: Binder, shoot_id: str) -> AllergenMatrix:
    """Allergens of every dish of a shoot.

    Dishes, and the recipes made ahead for them, share whatever equipment their steps name alike, and the frying oil. A
    wash in between may not be enough for someone with an allergy.
    """
    dishes = binder.dishes.where("shoot", shoot_id)
    made_of = {dish.id: recipes_in(binder, dish.recipe) for dish in dishes}
    touched = {
        recipe: dict(_touched(binder, recipe))
        for recipe in dict.fromkeys(one for all_of in made_of.values() for one in all_of)
    }
    rows = []
    for dish in dishes:
        contains = {one.group: one.foods for one in recipe_allergens(binder, dish.recipe)}
        rows.append(DishAllergens(dish.id, contains, _contacts(dish.id, set(contains), made_of, touched)))
    return AllergenMatrix(tuple(sorted({group for row in rows for group in row.contains})), tuple(rows))


def recipes_in(binder: Binder, recipe_id: str) -> tuple[str, ...]:
    """A recipe and those that it is made from."""
    return (recipe_id, *(one for one in recipes_within(binder, recipe_id) if one != recipe_id))


_Touched = Mapping[str, tuple[str, frozenset[str]]]
"""By the name of a thing without regard to case: as it is written, and the allergens that have been on it."""


def _touched(binder: Binder, recipe_id: str) -> Iterator[tuple[str, tuple[str, frozenset[str]]]]:
    """The things a recipe's own steps use, with the allergens of what has gone in by then."""
    on_it: dict[str, tuple[str, frozenset[str]]] = {}
    so_far: frozenset[str] = frozenset()
    uses = recipe_uses(binder, recipe_id)
    for step in binder.steps.where("recipe", recipe_id):
        foods = {key for use in uses if use.step == step.id for key in with_what_made_it(binder, use.food)}
        so_far |= {allergen_group(binder, code) for food in foods for code in binder.foods[food].allergens} - {""}
        for thing in _things(step):
            _written, before = on_it.get(thing.casefold(), (thing, frozenset()))
            on_it[thing.casefold()] = (thing, before | so_far)
    yield from on_it.items()


def _things(step: Step) -> Iterator[str]:
    yield from step.equipment
    if step.uses is ApplianceKind.FRYER or (step.uses is None and step.heat is Heat.OIL):
        yield _("the frying oil")


def _contacts(
    dish: str, contains: set[str], made_of: Mapping[str, Sequence[str]], touched: Mapping[str, _Touched]
) -> dict[str, Contact]:
    """What may come to a dish from recipes that are no part of it."""
    own = {thing: written for recipe in made_of[dish] for thing, (written, _groups) in touched[recipe].items()}
    found: dict[str, tuple[dict[str, None], dict[str, None]]] = {}
    for other in made_of:
        for recipe in made_of[other] if other != dish else ():
            for thing, (_written, groups) in touched[recipe].items() if recipe not in made_of[dish] else ():
                for group in groups - contains if thing in own else ():
                    dishes, things = found.setdefault(group, ({}, {}))
                    dishes[other] = None
                    things[own[thing]] = None
    return {group: Contact(tuple(dishes), tuple(things)) for group, (dishes, things) in sorted(found.items())}


def contact_text(binder: Binder, row: DishAllergens) -> str:
    """What may come to a dish, in a sentence; empty where nothing may."""
    if not row.may_have:
        return ""
    parts = [
        _("{allergen} (by {things}, from {dishes})").format(
            allergen=allergen,
            things=listed(contact.shared),
            dishes=listed(dish_title(binder, dish) for dish in contact.dishes),
        )
        for allergen, contact in row.may_have.items()
    ]
    says = _("{dish} may also carry {allergens}. Tell everyone who tastes, or keep its things apart. {deference}")
    return says.format(dish=dish_title(binder, row.dish), allergens="; ".join(parts), deference=deference())
