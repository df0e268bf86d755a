"""Allergens dish by dish for everyone who tastes: what is in it, and what may come to it by what dishes share."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.day_words import dish_title
from binder.figures.memory import PLANS, remembered_from
from binder.figures.safety import recipe_allergens
from binder.kitchen.day import ApplianceKind
from binder.kitchen.recipe import Heat
from binder.kitchen.reference import deference
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from binder.kitchen.binder import Binder
    from binder.kitchen.recipe import Step
    from binder.kitchen.shoot import Dish


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

    Dishes share whatever equipment their steps (and the recipes made ahead for them) name alike, and the frying oil. A
    wash in between may not be enough for someone with an allergy.
    """
    dishes = binder.dishes.where("shoot", shoot_id)
    contains = {dish.id: {one.group: one.foods for one in recipe_allergens(binder, dish.recipe)} for dish in dishes}
    used = {dish.id: dict(_things(binder, dish)) for dish in dishes}
    rows = tuple(DishAllergens(dish.id, contains[dish.id], _contacts(dish, contains, used)) for dish in dishes)
    return AllergenMatrix(tuple(sorted({group for row in rows for group in row.contains})), rows)


def _things(binder: Binder, dish: Dish) -> Iterator[tuple[str, str]]:
    """What a dish is made with, each by its name without regard to case, and as it is written."""
    for step in _steps(binder, dish.recipe):
        for name in step.equipment:
            yield name.casefold(), name
        if step.uses is ApplianceKind.FRYER or (step.uses is None and step.heat is Heat.OIL):
            yield _("the frying oil").casefold(), _("the frying oil")


def _steps(binder: Binder, recipe_id: str) -> Iterator[Step]:
    waiting, seen = [recipe_id], set[str]()
    while waiting:
        recipe = waiting.pop()
        for step in binder.steps.where("recipe", recipe) if recipe not in seen else ():
            yield step
            waiting += [line.made for line in binder.lines.where("step", step.id) if line.made is not None]
        seen.add(recipe)


def _contacts(
    dish: Dish, contains: Mapping[str, Mapping[str, tuple[str, ...]]], used: Mapping[str, Mapping[str, str]]
) -> dict[str, Contact]:
    found: dict[str, tuple[dict[str, None], dict[str, None]]] = {}
    for other, groups in contains.items():
        shared = [used[other][name] for name in used[other] if name in used[dish.id]]
        for group in groups if other != dish.id and shared else ():
            if group not in contains[dish.id]:
                dishes, things = found.setdefault(group, ({}, {}))
                dishes[other] = None
                things |= dict.fromkeys(shared)
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
