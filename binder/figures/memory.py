"""Figures are worked out once: a change forgets only those that depend on a table it touched."""

from __future__ import annotations

import functools
from typing import TYPE_CHECKING, Concatenate, ParamSpec, TypeVar, cast

from binder.kitchen.binder import EVERY_TABLE
from binder.kitchen.turns import give_way

if TYPE_CHECKING:
    from collections.abc import Callable

    from binder.kitchen.binder import Binder

_NOT_YET = object()
P = ParamSpec("P")
R = TypeVar("R")

WEIGHTS = frozenset({"settings", "foods", "measures"})
"""The tables that weights of amounts depend on."""

PRICES = WEIGHTS | {"packs", "quotes"}
"""The tables that prices depend on."""

FORMS = PRICES | {"conversions", "outcomes", "additions"}
"""The tables that costs of forms depend on."""

RECIPES = WEIGHTS | {"recipes", "steps", "lines"}
"""The tables that what a recipe uses depends on."""

COSTS = FORMS | RECIPES | {"shoots", "dishes"}
"""The tables that what a portion costs depends on."""

PLANS = EVERY_TABLE - {"purchases", "budget_lines", "tax_rates", "claims"}
"""The tables that what is cooked and what is to be bought depend on: a tick on the list forgets nothing of that."""

_MOST_KEPT = 100_000
"""Results on one shelf; in a long session the amounts of old portions would else be kept for ever."""


def remembered_from(
    tables: frozenset[str],
) -> Callable[[Callable[Concatenate[Binder, P], R]], Callable[Concatenate[Binder, P], R]]:
    """Keep the results of a figure that reads only `tables`, by its arguments, which are hashable."""

    def keeping(figure: Callable[Concatenate[Binder, P], R]) -> Callable[Concatenate[Binder, P], R]:
        name = f"{figure.__module__}.{figure.__qualname__}"

        @functools.wraps(figure)
        def worked_out(binder: Binder, *args: P.args, **kwargs: P.kwargs) -> R:
            shelf = binder.memory.shelf(tables)
            key = (name, *args, *kwargs.items()) if kwargs else (name, *args)
            found = shelf.get(key, _NOT_YET)
            if found is _NOT_YET:
                give_way()
                if len(shelf) >= _MOST_KEPT:
                    shelf.clear()
                found = shelf[key] = figure(binder, *args, **kwargs)
            return cast("R", found)

        return cast("Callable[Concatenate[Binder, P], R]", worked_out)

    return keeping


def remembered_of(
    parts_of: Callable[[Binder, str], tuple[object, ...]], tables: frozenset[str]
) -> Callable[[Callable[Concatenate[Binder, str, P], R]], Callable[Concatenate[Binder, str, P], R]]:
    """Keep the last results of a figure of one record that reads, beside `tables`, only the records `parts_of` gives.

    They outlive every change of others: one line edited, and only its own recipe is worked out anew.
    """

    def keeping(figure: Callable[Concatenate[Binder, str, P], R]) -> Callable[Concatenate[Binder, str, P], R]:
        name = f"{figure.__module__}.{figure.__qualname__}"

        @functools.wraps(figure)
        def worked_out(binder: Binder, of: str, /, *args: P.args, **kwargs: P.kwargs) -> R:
            shelf, parts = binder.memory.shelf(tables), parts_of(binder, of)
            key = (name, of, *args, *kwargs.items())
            kept = shelf.get(key)
            if kept is None or kept[0] != parts:
                kept = shelf[key] = (parts, figure(binder, of, *args, **kwargs))
            return cast("R", kept[1])

        return cast("Callable[Concatenate[Binder, str, P], R]", worked_out)

    return keeping


def remembered(figure: Callable[Concatenate[Binder, P], R]) -> Callable[Concatenate[Binder, P], R]:
    """Keep the results of a figure that may read anything: every change forgets them."""
    return remembered_from(EVERY_TABLE)(figure)
