"""Lines moved within their step or to another one of the recipe."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.kitchen.change import Change, changed
from binder.kitchen.edits.recipes import line_name
from binder.kitchen.edits.records import move, siblings, with_values
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.kitchen.binder import Binder
    from binder.kitchen.recipe import Line


def move_line(binder: Binder, line: Line, *, step: str, to: int) -> Change:
    """Put a line at a place in a step: its own or another."""
    recipe = binder.recipes[binder.steps[line.step].recipe]
    label = _("Move {food} in {recipe}").format(food=line_name(binder, line), recipe=recipe.name)
    if step == line.step:
        return move(label, binder, line, to=to)
    left = [other for other in siblings(binder, line) if other.id != line.id]
    there = list(binder.lines.where("step", step))
    grown = [*there[:to], with_values(line, step=step), *there[to:]]
    return changed(label, before=[line, *left, *there], after=[*_numbered(left), *_numbered(grown)])


def move_line_by(binder: Binder, line: Line, by: int) -> Change | None:
    """One place up or down, over the edge of its step into the next; None at the ends of the recipe."""
    to = line.position + by
    if 0 <= to < len(siblings(binder, line)):
        return move_line(binder, line, step=line.step, to=to)
    steps = [step.id for step in binder.steps.where("recipe", binder.steps[line.step].recipe)]
    at = steps.index(line.step) + by
    if not 0 <= at < len(steps):
        return None
    return move_line(binder, line, step=steps[at], to=0 if by > 0 else len(binder.lines.where("step", steps[at])))


def _numbered(lines: Sequence[Line]) -> list[Line]:
    return [with_values(line, position=number) for number, line in enumerate(lines)]
