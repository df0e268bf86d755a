"""Mise en place: what is washed, cut, weighed and set out before the camera rolls, by station, for every build."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from functools import partial
from typing import TYPE_CHECKING

from binder.figures.demand import build_batches, builds_of, reaches
from binder.figures.memory import remembered
from binder.figures.missing import Missing
from binder.figures.portion_text import SetOut, set_out
from binder.figures.recipe_use import batches
from binder.kitchen.edits.recipes import line_name
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from binder.kitchen.binder import Binder
    from binder.kitchen.recipe import Line
    from binder.kitchen.shoot import Build, Dish


@dataclass(frozen=True)
class PerBuild:
    """What one build takes of a line."""

    build: str
    kind: str
    amount: SetOut


@dataclass(frozen=True)
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
    items = [*_made_ahead(binder, shoot_id, ready), *_dish_items(binder, shoot_id, ready)]
    stations = list(dict.fromkeys(item.station for item in items))
    return tuple(sorted(items, key=lambda item: stations.index(item.station)))


def _dish_items(binder: Binder, shoot_id: str, ready: datetime | None) -> Iterator[MiseItem]:
    for dish in binder.dishes.where("shoot", shoot_id):
        for step in binder.steps.where("recipe", dish.recipe):
            for line in binder.lines.where("step", step.id):
                builds = tuple(_per_build(binder, dish, line))
                if builds:
                    yield MiseItem(
                        station=step.station or unnamed_station(),
                        dish=dish.id,
                        number=dish.position + 1,
                        for_what=dish_name(binder, dish),
                        line=line.id,
                        food=line_name(binder, line),
                        preparation=line.preparation,
                        builds=builds,
                        total=set_out(binder, line, _factor_in_all(binder, dish, line)),
                        ready_by=ready,
                    )


def _per_build(binder: Binder, dish: Dish, line: Line) -> Iterator[PerBuild]:
    for build in builds_of(binder, dish.id):
        factor = build_batches(binder, dish, build)
        if not isinstance(factor, Missing) and reaches(binder, build, line.step):
            yield PerBuild(build.id, build.kind.value, set_out(binder, line, factor))


def _factor_in_all(binder: Binder, dish: Dish, line: Line) -> float:
    factors = (
        build_batches(binder, dish, build) for build in builds_of(binder, dish.id) if reaches(binder, build, line.step)
    )
    return sum(factor for factor in factors if not isinstance(factor, Missing))


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
    """Batches of each recipe that dishes of a shoot are made from, the innermost first; what has no known amount is left out."""
    wanted: dict[str, float] = {}
    for dish in binder.dishes.where("shoot", shoot_id):
        for build in builds_of(binder, dish.id):
            factor = build_batches(binder, dish, build)
            if not isinstance(factor, Missing):
                _gather(binder, dish.recipe, factor, wanted, partial(_counts, binder, build))
    return dict(reversed(wanted.items()))


def _counts(binder: Binder, build: Build, line: Line) -> bool:
    return reaches(binder, build, line.step)


def _gather(
    binder: Binder, recipe_id: str, factor: float, wanted: dict[str, float], counts: Callable[[Line], bool]
) -> None:
    for step in binder.steps.where("recipe", recipe_id):
        for line in binder.lines.where("step", step.id):
            if line.made is None or not counts(line):
                continue
            inner = batches(binder, binder.recipes[line.made], line)
            if not isinstance(inner, Missing):
                before = wanted.pop(line.made, 0.0)
                wanted[line.made] = before + inner * factor
                _gather(binder, line.made, inner * factor, wanted, lambda _line: True)
