"""Mise en place: what is washed, cut, weighed and set out before the camera rolls, by station, for every build."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import TYPE_CHECKING

from binder.figures.demand import Batches, dish_batches, dish_parts, step_batches
from binder.figures.memory import WEIGHTS, remembered, remembered_of
from binder.figures.missing import Missing
from binder.figures.portion_text import SetOut, set_out
from binder.figures.recipe_use import batches, recipes_within
from binder.kitchen.edits.recipes import line_name
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from binder.kitchen.binder import Binder
    from binder.kitchen.recipe import Line, Step
    from binder.kitchen.shoot import Dish


@dataclass(frozen=True, slots=True)
class PerBuild:
    """What one build takes of a line."""

    build: str
    kind: str
    amount: SetOut


@dataclass(frozen=True, slots=True)
class MiseItem:
    """One line of one dish (or of a recipe made ahead for it) to set out. `dish` is empty for what is made ahead."""

    station: str
    dish: str
    number: int | None
    for_what: str
    line: str
    food: str
    preparation: str
    builds: tuple[PerBuild, ...]
    total: SetOut
    ready_by: datetime | None

    @property
    def count(self) -> int:
        """How many containers: one a build."""
        return len(self.builds)


def unnamed_station() -> str:
    """What a step without a station is filed under."""
    return _("station not named")


@remembered
def mise_list(binder: Binder, shoot_id: str) -> tuple[MiseItem, ...]:
    """Everything to set out for a shoot: what is made ahead first, then by station in the order the dishes use them."""
    shoot = binder.shoots[shoot_id]
    ready = datetime.combine(shoot.on, shoot.call) if shoot.on and shoot.call else None
    dishes = binder.dishes.where("shoot", shoot_id)
    of_dishes = (item for dish in dishes for item in _dish_items(binder, dish.id, ready))
    items = [*_made_ahead(binder, shoot_id, ready), *of_dishes]
    stations = list(dict.fromkeys(item.station for item in items))
    return tuple(sorted(items, key=lambda item: stations.index(item.station)))


@remembered_of(dish_parts, WEIGHTS)
def _dish_items(binder: Binder, dish_id: str, ready: datetime | None) -> tuple[MiseItem, ...]:
    dish, batches = binder.dishes[dish_id], dish_batches(binder, dish_id)
    if isinstance(batches, Missing):
        return ()
    items: list[MiseItem] = []
    for step in binder.steps.where("recipe", dish.recipe):
        reaching = [one for one in batches if one.reach(step)]
        lines = binder.lines.where("step", step.id) if reaching else ()
        items += (_dish_item(binder, dish, step, line, reaching, ready) for line in lines)
    return tuple(items)


def _dish_item(
    binder: Binder, dish: Dish, step: Step, line: Line, reaching: Sequence[Batches], ready: datetime | None
) -> MiseItem:
    amounts = {count: set_out(binder, line, count) for count in {one.count for one in reaching}}
    return MiseItem(
        station=step.station or unnamed_station(),
        dish=dish.id,
        number=dish.position + 1,
        for_what=dish_name(binder, dish),
        line=line.id,
        food=line_name(binder, line),
        preparation=line.preparation,
        builds=tuple(PerBuild(one.build.id, one.build.kind.value, amounts[one.count]) for one in reaching),
        total=set_out(binder, line, sum(one.count for one in reaching)),
        ready_by=ready,
    )


def _made_ahead(binder: Binder, shoot_id: str, ready: datetime | None) -> Iterator[MiseItem]:
    for recipe_id, count in made_ahead(binder, shoot_id).items():
        recipe = binder.recipes[recipe_id]
        for step in binder.steps.where("recipe", recipe_id):
            for line in binder.lines.where("step", step.id):
                amount = set_out(binder, line, count)
                yield MiseItem(
                    station=_("made ahead: {recipe}").format(recipe=recipe.name),
                    dish="",
                    number=None,
                    for_what=recipe.name,
                    line=line.id,
                    food=line_name(binder, line),
                    preparation=line.preparation,
                    builds=(PerBuild("", _("in all"), amount),),
                    total=amount,
                    ready_by=ready,
                )


@remembered
def made_ahead(binder: Binder, shoot_id: str) -> dict[str, float]:
    """Batches of each recipe that dishes of a shoot are made from, the innermost first.

    What has no known amount is left out.
    """
    wanted: dict[str, float] = {}
    within: dict[str, None] = {}
    for dish in binder.dishes.where("shoot", shoot_id):
        batches = step_batches(binder, dish.id)
        for step_id, count in () if isinstance(batches, Missing) else batches.items():
            _gather(binder, step_id, count, wanted)
        within |= dict.fromkeys(recipes_within(binder, dish.recipe))
    for recipe in reversed(within):
        for step in binder.steps.where("recipe", recipe):
            _gather(binder, step.id, wanted.get(recipe, 0.0), wanted)
    return {recipe: wanted[recipe] for recipe in within if wanted.get(recipe, 0.0) > 0}


def _gather(binder: Binder, step_id: str, factor: float, wanted: dict[str, float]) -> None:
    """Add what `factor` batches of a step take of other recipes."""
    for line in binder.lines.where("step", step_id) if factor > 0 else ():
        inner = batches_in(binder, line) if line.made is not None else 0.0
        if line.made is not None and not isinstance(inner, Missing):
            wanted[line.made] = wanted.get(line.made, 0.0) + inner * factor


def batches_in(binder: Binder, line: Line) -> float | Missing:
    """How many batches a line asks for of the recipe that it names."""
    return batches(binder, binder.recipes[line.made or ""], line)
