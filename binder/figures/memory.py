"""Figures are worked out once for a binder value: a new value has a new memory."""

from __future__ import annotations

import functools
from typing import TYPE_CHECKING, Concatenate, ParamSpec, TypeVar, cast

if TYPE_CHECKING:
    from collections.abc import Callable

    from binder.kitchen.binder import Binder

P = ParamSpec("P")
R = TypeVar("R")


def remembered(figure: Callable[Concatenate[Binder, P], R]) -> Callable[Concatenate[Binder, P], R]:
    """Keep the results of a figure in the binder's memory, by its arguments (which must be hashable)."""
    name = f"{figure.__module__}.{figure.__qualname__}"

    @functools.wraps(figure)
    def worked_out(binder: Binder, *args: P.args, **kwargs: P.kwargs) -> R:
        key = (name, args, tuple(kwargs.items())) if kwargs else (name, args)
        if key not in binder.memory:
            binder.memory[key] = figure(binder, *args, **kwargs)
        return cast("R", binder.memory[key])

    return cast("Callable[Concatenate[Binder, P], R]", worked_out)
