"""Finds anything by its words: dishes, recipes, foods, stores, and what steps and lines say. Plain Python."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.missing import Place
from binder.kitchen.edits.recipes import line_name
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator

    from binder.kitchen.binder import Binder

_MOST = 40
_AROUND = 30
"""Characters shown on each side of what was found in a long text."""


@dataclass(frozen=True)
class Found:
    """Something found: its title, what it is, and where."""

    title: str
    kind: str
    place: Place


def find(binder: Binder, words: str) -> list[Found]:
    """What has all of the words, names that begin with them first."""
    wanted = words.casefold().split()
    if not wanted:
        return []
    ranked = []
    for order, (text, found) in enumerate(_everything(binder)):
        folded = text.casefold()
        if all(word in folded for word in wanted):
            ranked.append((_rank(folded, wanted), order, _shown(text, wanted[0], found)))
    return [found for _rank_of, _order, found in sorted(ranked, key=lambda one: one[:2])[:_MOST]]


def _rank(text: str, wanted: list[str]) -> int:
    first = wanted[0]
    if text.startswith(first):
        return 0
    return 1 if f" {first}" in text else 2


def _shown(text: str, word: str, found: Found) -> Found:
    """Long texts are cut to what stands around the word."""
    if len(text) <= 3 * _AROUND:
        return found
    at = text.casefold().find(word)
    start, end = max(0, at - _AROUND), at + len(word) + _AROUND
    cut = ("… " if start else "") + text[start:end].strip() + (" …" if end < len(text) else "")
    return Found(cut, found.kind, found.place)


def _everything(binder: Binder) -> Iterator[tuple[str, Found]]:
    for shoot in binder.shoots.values():
        yield shoot.name, Found(shoot.name, _("shoot"), Place("shoots", shoot.id))
    for dish in binder.dishes.values():
        name = dish_name(binder, dish)
        yield name, Found(name, _("dish {number}").format(number=dish.position + 1), Place("dishes", dish.id))
    for recipe in binder.recipes.values():
        yield recipe.name, Found(recipe.name, _("recipe"), Place("recipes", recipe.id))
    for food in binder.foods.values():
        said = " / ".join((food.name, *food.other_names))
        yield said, Found(food.name, _("food"), Place("foods", food.id))
    for store in binder.stores.values():
        yield store.name, Found(store.name, _("store"), Place("stores", store.id))
    yield from _within_recipes(binder)


def _within_recipes(binder: Binder) -> Iterator[tuple[str, Found]]:
    for step in binder.steps.values():
        text = ". ".join(part for part in (step.title, step.text) if part)
        where = _("step {number} of {recipe}").format(number=step.position + 1, recipe=binder.recipes[step.recipe].name)
        if text:
            yield text, Found(text, where, Place("steps", step.id))
        for line in binder.lines.where("step", step.id):
            said = ", ".join(part for part in (line_name(binder, line), line.preparation, line.note) if part)
            yield said, Found(said, where, Place("lines", line.id))
