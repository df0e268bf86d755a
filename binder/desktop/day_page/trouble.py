"""Why there is no plan, in words, and what would help: each a change that can be made and undone. Plain Python."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.day_question import day_question
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable

    from binder.desktop.day_page.planning_work import Asked
    from binder.kitchen.change import Change


@dataclass(frozen=True)
class WayOut:
    """A change that would help, and what its button says."""

    title: str
    change: Change


@dataclass(frozen=True)
class Trouble:
    """What clashes, in sentences, and the ways out that were tried and found to help."""

    says: tuple[str, ...]
    ways: tuple[WayOut, ...] = ()


def trouble_of(asked: Asked, going_on: Callable[[], bool]) -> Trouble | None:  # noqa: ARG001
    """Why there is no plan for a shoot; None where there is nothing to plan."""
    if day_question(asked.binder, asked.shoot) is None:
        return None
    return Trouble((_("There is no plan that keeps all that is asked for."),))
