"""Edits of shoots, their dishes and builds."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.kitchen.change import Change, joined
from binder.kitchen.edits.identity import new_id, readable_id
from binder.kitchen.edits.records import insert, move, remove, set_fields
from binder.kitchen.shoot import Build, BuildKind, Dish, Shoot
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.recipe import Recipe


def add_shoot(binder: Binder, name: str, **fields: object) -> tuple[Change, Shoot]:
    """A shoot. Returns the change and the shoot it makes."""
    shoot = Shoot(id=readable_id(name, binder.shoots), name=name, **fields)  # type: ignore[arg-type]
    return insert(_("Add {shoot}").format(shoot=name), binder, shoot), shoot


def set_shoot(shoot: Shoot, **fields: object) -> Change:
    """Change a shoot's own facts."""
    return set_fields(_("Edit {shoot}").format(shoot=shoot.name), shoot, **fields)


def add_dish(binder: Binder, shoot: Shoot, recipe: Recipe, *, portions: float | None = None) -> tuple[Change, Dish]:
    """A dish at the end of the running order, with a hero build. Returns the change and the dish it makes."""
    dish = Dish(id=new_id("dish"), shoot=shoot.id, recipe=recipe.id, portions=portions or recipe.portions or 1.0)
    label = _("Add {dish} to {shoot}").format(dish=recipe.name, shoot=shoot.name)
    hero = Build(id=new_id("build"), dish=dish.id, kind=BuildKind.HERO)
    return joined(label, [insert(label, binder, dish), insert(label, binder, hero)]), dish


def set_dish(binder: Binder, dish: Dish, **fields: object) -> Change:
    """Change a dish: its portions, its cap, its name on the card. Builds of another recipe go to its end."""
    label = _("Edit {dish}").format(dish=dish_name(binder, dish))
    builds = binder.builds.where("dish", dish.id) if fields.get("recipe", dish.recipe) != dish.recipe else ()
    return joined(label, [set_fields(label, dish, **fields), *(set_fields(label, one, up_to=None) for one in builds)])


def move_dish(binder: Binder, dish: Dish, *, to: int) -> Change:
    """Put a dish at another place in the running order."""
    return move(_("Move {dish}").format(dish=dish_name(binder, dish)), binder, dish, to=to)


def remove_dish(binder: Binder, dish: Dish) -> Change:
    """Take a dish out of the shoot with its builds and with what is claimed of it; its recipe stays."""
    label = _("Remove {dish} from the shoot").format(dish=dish_name(binder, dish))
    return remove(label, binder, dish, *binder.claims.where("dish", dish.id))


def add_build(
    binder: Binder, dish: Dish, kind: BuildKind, *, up_to: str | None = None, portions: float | None = None
) -> tuple[Change, Build]:
    """A build of a dish, up to and with the step `up_to` (None: to the end).

    Returns the change and the build it makes.
    """
    build = Build(id=new_id("build"), dish=dish.id, kind=kind, up_to=up_to, portions=portions)
    label = _("Add a {kind} of {dish}").format(kind=kind.value, dish=dish_name(binder, dish))
    return insert(label, binder, build), build


def set_build(binder: Binder, build: Build, **fields: object) -> Change:
    """Change a build."""
    label = _("Edit a build of {dish}").format(dish=dish_name(binder, binder.dishes[build.dish]))
    return set_fields(label, build, **fields)


def remove_build(binder: Binder, build: Build) -> Change:
    """Take a build out."""
    label = _("Remove a {kind} of {dish}")
    dish = binder.dishes[build.dish]
    return remove(label.format(kind=build.kind.value, dish=dish_name(binder, dish)), binder, build)


def dish_name(binder: Binder, dish: Dish) -> str:
    """The dish's own name, or else its recipe's."""
    return dish.name or binder.recipes[dish.recipe].name
