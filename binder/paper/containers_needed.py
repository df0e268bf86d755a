"""Which bowls and boxes a shoot needs, from the volume of what is set out in each."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.demand import dish_batches
from binder.figures.mise import made_ahead, mise_list
from binder.figures.missing import Missing
from binder.figures.portion_text import number_style
from binder.figures.weight import grams_per_millilitre
from binder.kitchen.amount import Amount
from binder.kitchen.amount_text import amount_text, millilitres_text
from binder.kitchen.settings import Measures
from binder.kitchen.units import Dimension, UnknownUnitError, unit

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from binder.figures.mise import MiseItem, PerBuild
    from binder.kitchen.binder import Binder

_FULLEST = 0.75
"""A bowl is filled to three quarters at most, so that it can be carried. Common practice, no source."""

_SIZES: Mapping[Measures, tuple[tuple[float, str], ...]] = {
    Measures.US_CUSTOMARY: (
        (0.25, "cup"),
        (0.5, "cup"),
        (1, "cup"),
        (1, "pint"),
        (1, "quart"),
        (2, "quart"),
        (4, "quart"),
        (12, "quart"),
    ),
    Measures.IMPERIAL: (
        (50, "ml"),
        (100, "ml"),
        (250, "ml"),
        (1, "pint"),
        (2, "pint"),
        (4, "pint"),
        (8, "pint"),
        (20, "pint"),
    ),
    Measures.METRIC: ((50, "ml"), (100, "ml"), (250, "ml"), (500, "ml"), (1, "l"), (2, "l"), (4, "l"), (12, "l")),
}
"""The sizes that bowls and boxes come in. Common practice, no source."""


@dataclass(frozen=True)
class ContainerSize:
    """A size of bowl: `millilitres` to the brim, and its name. The largest of all stands for `more` than one of it."""

    millilitres: float
    name: str


@dataclass(frozen=True)
class ContainersNeeded:
    """So many of one size (None: no size is known), and the foods that go into them with how many each."""

    size: ContainerSize | None
    count: int
    foods: tuple[tuple[str, int], ...]


def containers_needed(binder: Binder, shoot_id: str) -> tuple[ContainersNeeded, ...]:
    """One container a build for everything that is set out, the smallest size that holds it; the smallest size first.

    What is larger than the largest takes several of it. What has no known volume comes last, without a size.
    """
    counts: dict[ContainerSize | None, Counter[str]] = {}
    for item in mise_list(binder, shoot_id):
        for build in item.builds:
            size, number = _size_for(binder, _volume(binder, shoot_id, item, build))
            counts.setdefault(size, Counter())[item.food] += number
    ordered = sorted(counts.items(), key=lambda pair: (pair[0] is None, pair[0].millilitres if pair[0] else 0.0))
    return tuple(ContainersNeeded(size, foods.total(), tuple(foods.items())) for size, foods in ordered)


def container_sizes(binder: Binder) -> Iterator[ContainerSize]:
    """The sizes there are, in the binder's measures."""
    measures, style = binder.settings.measures, number_style(binder)
    for count, key in _SIZES[measures]:
        millilitres = count * unit(key, measures).factor
        metric = key in {"ml", "l"}
        name = millilitres_text(millilitres, style) if metric else amount_text(Amount(count, count, key), style)
        yield ContainerSize(millilitres, name)


def _size_for(binder: Binder, millilitres: float | None) -> tuple[ContainerSize | None, int]:
    if millilitres is None:
        return None, 1
    largest = None
    for size in container_sizes(binder):
        if millilitres <= size.millilitres * _FULLEST:
            return size, 1
        largest = size
    return largest, -int(-millilitres // (largest.millilitres * _FULLEST)) if largest else 1


def _volume(binder: Binder, shoot_id: str, item: MiseItem, build: PerBuild) -> float | None:
    """Millilitres of what one build takes of a line; None where neither a volume nor a density is known."""
    line = binder.lines[item.line]
    try:
        asked = unit(line.unit, binder.settings.measures)
    except UnknownUnitError:
        asked = None
    if asked is not None and asked.dimension is Dimension.VOLUME and line.high is not None:
        count = _batches(binder, shoot_id, item, build)
        return None if count is None else line.high * asked.factor * count
    if line.food is None or build.amount.grams is None:
        return None
    density = grams_per_millilitre(binder, binder.foods[line.food], None, line.preparation)
    return build.amount.grams / density if density else None


def _batches(binder: Binder, shoot_id: str, item: MiseItem, build: PerBuild) -> float | None:
    """How many batches of its recipe a build is, or all that is made ahead."""
    if not item.dish:
        return made_ahead(binder, shoot_id).get(binder.steps[binder.lines[item.line].step].recipe)
    batches = dish_batches(binder, item.dish)
    if isinstance(batches, Missing):
        return None
    return next((one.count for one in batches if one.build.id == build.build), None)
