"""What a station card says: for one dish, what stands in front of the cook, the steps, the builds and the hazards."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.demand import build_batches, builds_of, dish_parts, last_position, reaches
from binder.figures.memory import FORMS, remembered_of
from binder.figures.mise import made_ahead
from binder.figures.missing import Missing
from binder.figures.portion_text import SetOut, set_out
from binder.figures.recipe_use import recipe_parts
from binder.figures.safety import AllergenInDish, DonenessNeeded, doneness_needed, recipe_allergens, step_cautions
from binder.kitchen.edits.recipes import line_name
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.shoot import Build

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from binder.kitchen.binder import Binder
    from binder.kitchen.recipe import Line, Recipe, Step
    from binder.kitchen.reference import Caution
    from binder.kitchen.shoot import Dish


@dataclass(frozen=True)
class PlannedBuild:
    """A build of a dish: its `portions`, the number of the step it `stops_at` (None: finished), and where it waits."""

    kind: str
    portions: float
    stops_at: int | None
    waits: str


@dataclass(frozen=True)
class SetAmount:
    """One amount, and the kinds of the builds that each get a container with it; empty where no build is planned."""

    amount: SetOut
    kinds: tuple[str, ...]


@dataclass(frozen=True)
class Containers:
    """One line of a step as it is set out: equal amounts of several builds together, in the order of the builds."""

    line: str
    food: str
    preparation: str
    note: str
    garnish: bool
    amounts: tuple[SetAmount, ...]


@dataclass(frozen=True)
class CardStep:
    """One step with what stands ready for it, its cautions, and the builds that stop when it is done."""

    number: int
    step: Step
    containers: tuple[Containers, ...]
    cautions: tuple[Caution, ...]
    stopping: tuple[PlannedBuild, ...]


@dataclass(frozen=True)
class StationCard:
    """A dish (`number` is its running number), or a recipe made ahead for dishes (`number` None).

    `portions` is the dish's, None for what is made ahead; `batches` is what that makes of the recipe. `missing` is why
    amounts are those of one batch, and not of the portions that the dish asks for.
    """

    dish: str
    recipe: str
    number: int | None
    name: str
    portions: float | None
    batches: float
    builds: tuple[PlannedBuild, ...]
    steps: tuple[CardStep, ...]
    allergens: tuple[AllergenInDish, ...]
    doneness: tuple[DonenessNeeded, ...]
    notes: str
    missing: Missing | None = None


@remembered_of(dish_parts, FORMS)
def station_card(binder: Binder, dish_id: str) -> StationCard:
    """The card of a dish: amounts for each of its builds, or for its portions once where no build is planned."""
    dish = binder.dishes[dish_id]
    recipe, builds = binder.recipes[dish.recipe], builds_of(binder, dish_id)
    planned = tuple(_planned(binder, dish, build) for build in builds)
    return StationCard(
        dish=dish_id,
        recipe=recipe.id,
        number=dish.position + 1,
        name=dish_name(binder, dish),
        portions=dish.portions,
        batches=_batches(dish.portions, recipe),
        builds=planned,
        steps=_steps(binder, recipe, planned, lambda line: _dish_amounts(binder, dish, builds, line)),
        allergens=recipe_allergens(binder, recipe.id),
        doneness=doneness_needed(binder, recipe.id),
        notes=dish.notes,
        missing=_lacking(binder, dish, builds),
    )


@remembered_of(recipe_parts, FORMS)
def made_ahead_card(binder: Binder, recipe_id: str, batches: float) -> StationCard:
    """The card of a recipe that dishes are made from, for so many batches in all."""
    recipe = binder.recipes[recipe_id]
    return StationCard(
        dish="",
        recipe=recipe_id,
        number=None,
        name=recipe.name,
        portions=None,
        batches=batches,
        builds=(),
        steps=_steps(binder, recipe, (), lambda line: (SetAmount(set_out(binder, line, batches), ()),)),
        allergens=recipe_allergens(binder, recipe_id),
        doneness=doneness_needed(binder, recipe_id),
        notes="",
    )


def station_cards(binder: Binder, shoot_id: str) -> tuple[StationCard, ...]:
    """The cards of a shoot: the dishes in running order, then what is made ahead for them, the innermost first."""
    dishes = (station_card(binder, dish.id) for dish in binder.dishes.where("shoot", shoot_id))
    ahead = (made_ahead_card(binder, recipe, batches) for recipe, batches in made_ahead(binder, shoot_id).items())
    return (*dishes, *ahead)


def _planned(binder: Binder, dish: Dish, build: Build) -> PlannedBuild:
    last, steps = last_position(binder, build), binder.steps.where("recipe", dish.recipe)
    stops = last + 1 if last is not None and last != steps[-1].position else None
    return PlannedBuild(build.kind.value, build.portions or dish.portions, stops, build.waits)


def _steps(
    binder: Binder,
    recipe: Recipe,
    planned: tuple[PlannedBuild, ...],
    amounts: Callable[[Line], tuple[SetAmount, ...]],
) -> tuple[CardStep, ...]:
    return tuple(
        CardStep(
            number=step.position + 1,
            step=step,
            containers=_containers(binder, step, amounts),
            cautions=step_cautions(step),
            stopping=tuple(build for build in planned if build.stops_at == step.position + 1),
        )
        for step in binder.steps.where("recipe", recipe.id)
    )


def _containers(binder: Binder, step: Step, amounts: Callable[[Line], tuple[SetAmount, ...]]) -> tuple[Containers, ...]:
    return tuple(
        Containers(line.id, line_name(binder, line), line.preparation, line.note, line.garnish, found)
        for line in binder.lines.where("step", step.id)
        if (found := amounts(line))
    )


def _dish_amounts(binder: Binder, dish: Dish, builds: Sequence[Build], line: Line) -> tuple[SetAmount, ...]:
    """What each build that gets as far as a line takes of it; nothing where none does."""
    recipe = binder.recipes[dish.recipe]
    if not builds:
        return (SetAmount(set_out(binder, line, _batches(dish.portions, recipe)), ()),)
    found: dict[str, tuple[SetOut, list[str]]] = {}
    for build in builds:
        if reaches(binder, build, line.step):
            amount = set_out(binder, line, _batches(build.portions or dish.portions, recipe))
            found.setdefault(amount.both, (amount, []))[1].append(build.kind.value)
    return tuple(SetAmount(amount, tuple(kinds)) for amount, kinds in found.values())


def _batches(portions: float, recipe: Recipe) -> float:
    """Batches for so many portions; one where the recipe does not say how many it gives, which `missing` then tells."""
    return portions / recipe.portions if recipe.portions else 1.0


def _lacking(binder: Binder, dish: Dish, builds: Sequence[Build]) -> Missing | None:
    found = build_batches(binder, dish, builds[0] if builds else Build(id=dish.id, dish=dish.id))
    return found if isinstance(found, Missing) else None
