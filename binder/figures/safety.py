"""What keeps people who taste safe: allergens in words, cautions where the hazard is, temperatures to reach."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.memory import FORMS, remembered_of
from binder.figures.recipe_use import recipe_parts, recipe_uses, recipes_within
from binder.figures.temperature_text import fahrenheit
from binder.kitchen.recipe import Heat
from binder.kitchen.reference import Caution, Doneness, allergens, cautions, doneness

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.food import Food
    from binder.kitchen.recipe import Step


@dataclass(frozen=True, slots=True)
class AllergenInDish:
    """An allergen by the name the binder's scheme has for it, and the foods that carry it."""

    group: str
    kinds: tuple[str, ...]
    foods: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class DonenessNeeded:
    """A food that must be cooked to a temperature, and whether a step says one at least as high."""

    food: str
    rule: Doneness
    stated: bool


@remembered_of(recipe_parts, FORMS)
def foods_in_recipe(binder: Binder, recipe_id: str) -> tuple[Food, ...]:
    """Every food in a recipe, down through the recipes it is made from and all conversions its forms can come of."""
    found: dict[str, Food] = {}
    for used in dict.fromkeys(use.food for use in recipe_uses(binder, recipe_id)):
        for food_id in with_what_made_it(binder, used):
            found[food_id] = binder.foods[food_id]
    return tuple(found.values())


def with_what_made_it(binder: Binder, food_id: str) -> tuple[str, ...]:
    """A food (its id), and all foods that conversions to it take or add."""
    gathered: dict[str, None] = {}
    waiting = [food_id]
    while waiting:
        key = waiting.pop()
        if key in gathered:
            continue
        gathered[key] = None
        for outcome in binder.outcomes.where("form", key):
            waiting.append(binder.conversions[outcome.conversion].takes)
            waiting += [addition.food for addition in binder.additions.where("conversion", outcome.conversion)]
    return tuple(gathered)


@remembered_of(recipe_parts, FORMS)
def recipe_allergens(binder: Binder, recipe_id: str) -> tuple[AllergenInDish, ...]:
    """The allergens of a recipe under the binder's scheme, with the foods that carry each."""
    kinds: dict[str, dict[str, None]] = {}
    carriers: dict[str, dict[str, None]] = {}
    for food in foods_in_recipe(binder, recipe_id):
        for code in food.allergens:
            group = allergen_group(binder, code)
            if group:
                known = allergens().get(code)
                kinds.setdefault(group, {})[known.name if known else code] = None
                carriers.setdefault(group, {})[food.name] = None
    return tuple(AllergenInDish(group, tuple(kinds[group]), tuple(carriers[group])) for group in sorted(kinds))


def allergen_group(binder: Binder, code: str) -> str:
    """The name that the binder's scheme has for an allergen; empty where it does not list it."""
    known = allergens().get(code)
    return known.group(binder.settings.allergens) if known else code


def step_cautions(step: Step) -> tuple[Caution, ...]:
    """The usual cautions for the hazards a step names, those the reference knows."""
    return tuple(cautions()[hazard] for hazard in step.hazards if hazard in cautions())


@remembered_of(recipe_parts, FORMS)
def doneness_needed(binder: Binder, recipe_id: str) -> tuple[DonenessNeeded, ...]:
    """The foods of a recipe that must be cooked to a temperature, each with its rule and whether a step states it."""
    reached = max(
        (
            step.celsius
            for step in _steps_within(binder, recipe_id)
            if step.heat is Heat.CORE and step.celsius is not None
        ),
        default=None,
    )
    needed = []
    for food in foods_in_recipe(binder, recipe_id):
        rule = doneness(binder.settings.safety, food.doneness) if food.doneness else None
        if rule is not None:
            stated = rule.celsius is None or (reached is not None and _reaches(reached, rule))
            needed.append(DonenessNeeded(food.name, rule, stated))
    return tuple(needed)


def _reaches(celsius: float, rule: Doneness) -> bool:
    """Whether a stated temperature is the rule's on either scale: 165 °F is 73.9 °C, which the chart rounds to 74."""
    in_fahrenheit = rule.fahrenheit is not None and round(fahrenheit(celsius), 6) >= rule.fahrenheit
    return in_fahrenheit or celsius >= (rule.celsius or 0.0)


def _steps_within(binder: Binder, recipe_id: str) -> list[Step]:
    """The steps of a recipe and of all recipes in it, each once."""
    recipes = (recipe_id, *recipes_within(binder, recipe_id))
    return [step for recipe in recipes for step in binder.steps.where("recipe", recipe)]
