"""A line while it is typed: what it is understood as, which names it may mean, and ways out where it is not."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.sheet.sheet import Remedy
from binder.desktop.words.typed import comma
from binder.figures.portion_text import number_style
from binder.kitchen.change import apply, joined
from binder.kitchen.edits.foods import add_food
from binder.kitchen.edits.recipes import add_line, set_line
from binder.kitchen.errors import BinderError
from binder.kitchen.line_text import Understood, UnknownFoodError, understand_line
from binder.kitchen.name_book import NameBook, name_book
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.recipe import Line, Step

_MOST_OFFERED = 8
_SHORTEST = 2
"""Letters from which on names are offered."""


class _NamesAlone(NameBook):
    """A name book that looks for no likenesses: that takes longer than the stroke of a key."""

    def nearest(self, text: str, count: int = 3) -> list[str]:
        return []


def _meaning(binder: Binder, text: str) -> Understood:
    book = name_book(binder)
    pieces = frozenset(measure.unit for measure in binder.measures.values() if " " not in measure.unit)
    return understand_line(text, _NamesAlone(book.known, book.longest), pieces=pieces, decimal_comma=comma(binder))


def line_understood(binder: Binder, text: str) -> str:
    """What the line says so far; empty where that is not clear yet."""
    if not text.strip():
        return ""
    try:
        return _meaning(binder, text).says(number_style(binder))
    except BinderError:
        return ""


def line_offers(binder: Binder, text: str) -> list[str]:
    """The line with each name that begins as its last words do, while they name nothing yet."""
    try:
        _meaning(binder, text)
    except UnknownFoodError as unknown:
        name = unknown.name.strip()
        if len(name) < _SHORTEST or not text.rstrip().endswith(name):
            return []
        before = text.rstrip().removesuffix(name)
        return [before + known for known in _names_like(binder, name)]
    except BinderError:
        return []
    return []


def _names_like(binder: Binder, typed: str) -> list[str]:
    """Names with a word that begins with each word typed, the binder's own first."""
    wanted = typed.casefold().split()
    found: dict[str, tuple[bool, str]] = {}
    for known in name_book(binder).known.values():
        words = known.name.casefold().replace(",", " ").split()
        if all(any(word.startswith(one) for word in words) for one in wanted):
            found.setdefault(known.name, (not known.in_binder, known.name.casefold()))
    return sorted(found, key=lambda name: found[name])[:_MOST_OFFERED]


def line_remedies(binder: Binder, step: Step, line: Line | None, error: UnknownFoodError) -> list[Remedy]:
    """For an unknown food: the nearest names, and the food added to the larder."""
    near = [_with_name(error.text, error.name, name) for name in error.nearest]
    return [*near, *_own_food(binder, step, line, error.text, error.name)]


def _with_name(text: str, name: str, instead: str) -> Remedy:
    retyped = text.replace(name, instead, 1) if name in text else f"{text} {instead}"
    return Remedy(retyped, text=retyped)


def _own_food(binder: Binder, step: Step, line: Line | None, text: str, name: str) -> list[Remedy]:
    """The food added, and the line with it, as one change."""
    try:
        added, food = add_food(binder, name)
        grown = apply(binder, added)
        typed = add_line(grown, step, text) if line is None else set_line(grown, line, text)
    except BinderError:
        return []
    title = _("Add “{food}” to the larder").format(food=food.name)
    return [Remedy(title, change=joined(typed.label, [added, typed]))]
