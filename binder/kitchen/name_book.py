"""Names by which foods and recipes are known: the binder's own first, then the larder's."""

from __future__ import annotations

import difflib
import functools
import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.kitchen.larder import Larder, reference_larder

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from binder.kitchen.binder import Binder
    from binder.kitchen.food import Food
    from binder.kitchen.recipe import Recipe
    from binder.kitchen.table import Table

Words = tuple[str, ...]
_WORD = re.compile(r"[^\W_]+(?:['’-][^\W_]+)*", re.UNICODE)


@dataclass(frozen=True)
class Known:
    """What a name stands for: a food (of the binder or, not `in_binder`, of the larder) or a recipe."""

    key: str
    name: str
    is_recipe: bool = False
    in_binder: bool = True


@dataclass(frozen=True)
class NameBook:
    """Names as tuples of singular words, each with what it stands for."""

    known: Mapping[Words, Known]
    longest: int

    def find(self, text: str) -> Known | None:
        """What a whole name stands for, or None."""
        return self.known.get(singular_words(text))

    def nearest(self, text: str, count: int = 3) -> list[str]:
        """The names most like `text`: those that share a word with it first, the shortest before longer ones."""
        asked = singular_words(text)
        sharing = sorted((words for words in self.known if set(words) & set(asked)), key=len)
        names = list(dict.fromkeys(self.known[words].name for words in sharing))
        if len(names) < count:
            spelled = {" ".join(words): words for words in self.known}
            close = difflib.get_close_matches(" ".join(asked), spelled, n=count * 3, cutoff=0.5)
            names += [self.known[spelled[match]].name for match in close]
        return list(dict.fromkeys(names))[:count]


def words_of(text: str) -> list[str]:
    """The words of a text without its punctuation."""
    return _WORD.findall(text)


def singular_words(text: str) -> Words:
    """A name as it is looked up: folded, each word in the singular."""
    return tuple(_singular(word.casefold().replace("’", "'")) for word in words_of(text))


_IRREGULAR = {
    "leaves": "leaf",
    "loaves": "loaf",
    "halves": "half",
    "calves": "calf",
    "knives": "knife",
    "shelves": "shelf",
    "geese": "goose",
}
_ENDINGS = (("ies", "y"), ("oes", "o"), ("ches", "ch"), ("shes", "sh"), ("xes", "x"))


@functools.lru_cache(maxsize=20_000)
def _singular(word: str) -> str:
    if len(word) <= 3 or word.endswith(("ss", "us", "is")):  # noqa: PLR2004 - `gas`, `hummus`, `molasses` keep their s
        return word
    if word in _IRREGULAR:
        return _IRREGULAR[word]
    for ending, instead in _ENDINGS:
        if word.endswith(ending):
            return word.removesuffix(ending) + instead
    return word.removesuffix("s")


def name_book(binder: Binder) -> NameBook:
    """All names known in a binder."""
    return _book(binder.foods, binder.recipes)


@functools.lru_cache(maxsize=8)
def _book(foods: Table[Food], recipes: Table[Recipe]) -> NameBook:
    known = dict(_larder_names())
    for food in foods.values():
        for words in _ways_to_say(food.name, food.other_names):
            known[words] = Known(food.id, food.name)
    for recipe in recipes.values():
        known[singular_words(recipe.name)] = Known(recipe.id, recipe.name, is_recipe=True)
    known.pop((), None)
    return NameBook(known, max(map(len, known), default=0))


@functools.cache
def _larder_names() -> Mapping[Words, Known]:
    larder: Larder = reference_larder()
    names: dict[Words, Known] = {}
    for food in larder.foods.values():
        for words in _ways_to_say(food.name, food.other_names):
            names.setdefault(words, Known(food.id, food.name, in_binder=False))
    return names


def _ways_to_say(name: str, other_names: Iterable[str]) -> list[Words]:
    """A name as it stands and, where it has a comma, turned round: `chickpeas, dried` and `dried chickpeas`."""
    said = []
    for text in (name, *other_names):
        said.append(singular_words(text))
        parts = [part.strip() for part in text.split(",")]
        if len(parts) > 1:
            said.append(singular_words(" ".join([*parts[1:], parts[0]])))
    return said
