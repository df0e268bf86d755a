"""A recipe as a cook writes it: steps as paragraphs, their lines beneath, weights and costs in the outer margin."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.dishes_page.line_cells import line_cells
from binder.desktop.dishes_page.line_moving import move_line, move_line_by
from binder.desktop.dishes_page.line_typing import line_offers, line_remedies, line_understood
from binder.desktop.dishes_page.step_facts import (
    FACTS,
    FILMED_COLUMN,
    MORE_COLUMNS,
    MORE_SPANS,
    edit_fact,
    fact_cells,
    fact_titles,
    filmed_cell,
    more_cells,
)
from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Row, Size, key_of
from binder.desktop.sheet.sheet import CellName, PlainSheet, Remedy, record_of
from binder.figures.missing import Place
from binder.kitchen.change import Change, apply, changed
from binder.kitchen.edits.recipes import (
    add_line,
    add_step,
    move_step,
    remove_line,
    remove_step,
    set_line,
    set_recipe,
)
from binder.kitchen.line_text import UnknownFoodError
from binder.kitchen.recipe import Line
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from binder.desktop.sheet.sheet import Sight
    from binder.kitchen.binder import Binder
    from binder.kitchen.errors import BinderError
    from binder.kitchen.recipe import Recipe, Step
    from binder.kitchen.record import Record

ADD_STEP = "add:step"
TEXT, MORE, ADD_LINE, NOTES = "text", "more", "add-line", "notes"
_CONTENT = len(FACTS) + 1
"""Columns that paragraphs and lines reach over."""

_WHOLE = _CONTENT + 3
_OF_STEP = {"steps", MORE, TEXT}
"""Rows that stand for a step."""

_MORE_OF = {"places": "uses"}
"""Fields typed together with another."""


class RecipeBody(PlainSheet):
    """The subject is a recipe. Each step has two rows of facts, a paragraph, its lines, and a row for the next line."""

    @property
    def name(self) -> str:
        return _("Steps and lines")

    @property
    def columns(self) -> tuple[Column, ...]:
        widths, parts = (7.0, 7.0, 11.0, 10.0), (1, 1, 1, 1)
        facts = zip(FACTS, fact_titles(), widths, parts, strict=True)
        return (
            Column("number", "", characters=2, align=Align.RIGHT),
            Column("title", _("step"), characters=14, stretch=4),
            *(Column(fact, title, characters=width, stretch=part) for fact, title, width, part in facts),
            Column("weight", _("as purchased"), characters=8, align=Align.DECIMAL, decimals=2, unit_room="kg"),
            Column("cost", _("used cost"), characters=8, align=Align.DECIMAL, decimals=2, tip=_("Of a portion")),
            Column("share", _("share"), characters=4, align=Align.RIGHT),
        )

    def rows(self, sight: Sight) -> list[Row]:
        binder, recipe = sight.binder, sight.binder.recipes.get(sight.subject or "")
        if recipe is None:
            return []
        steps = binder.steps.where("recipe", recipe.id)
        found = [row for step in steps for row in _step_rows(binder, step)]
        return [*found, _adding_step(), _notes(recipe)]

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder, place = sight.binder, record_of(row)
        if row == ADD_STEP:
            return add_step(binder, binder.recipes[sight.subject or ""], text=text.strip())[0]
        if row == NOTES:
            return set_recipe(binder.recipes[sight.subject or ""], notes=text.strip())
        if place.table == ADD_LINE:
            return add_line(binder, binder.steps[place.id], text)
        if place.table == "lines":
            line = binder.lines[place.id]
            return set_line(binder, line, text) if text.strip() else remove_line(binder, line)
        return edit_fact(binder, binder.steps[place.id], _field_at(place.table, column), text)

    def understood(self, sight: Sight, row: str, column: str, text: str) -> str:
        return line_understood(sight.binder, text) if _is_line(row) else ""

    def offers(self, sight: Sight, row: str, column: str, text: str) -> Sequence[str]:
        return line_offers(sight.binder, text) if _is_line(row) else ()

    def remedies(self, sight: Sight, cell: CellName, text: str, error: BinderError) -> Sequence[Remedy]:
        if not _is_line(cell.row) or not isinstance(error, UnknownFoodError):
            return ()
        place = record_of(cell.row)
        line = sight.binder.lines[place.id] if place.table == "lines" else None
        step = sight.binder.steps[line.step if line else place.id]
        return line_remedies(sight.binder, step, line, error)

    def remove(self, sight: Sight, rows: Sequence[str]) -> Change | None:
        binder = sight.binder
        steps = [binder.steps[record_of(row).id] for row in rows if record_of(row).table in _OF_STEP]
        steps = list(dict.fromkeys(steps))
        gone = {step.id for step in steps}
        lines = [binder.lines[record_of(row).id] for row in rows if record_of(row).table == "lines"]
        lines = [line for line in lines if line.step not in gone]
        if len(steps) + len(lines) < 2:  # noqa: PLR2004 - one goes by its name
            changes = [*(remove_step(binder, step) for step in steps), *(remove_line(binder, line) for line in lines)]
            return changes[0] if changes else None
        count = len(steps) + len(lines)
        label = ngettext("Remove {count} step or line", "Remove {count} steps and lines", count).format(count=count)
        return _removed(binder, label, steps, lines)

    def move_by(self, sight: Sight, row: str, by: int) -> Change | None:
        binder, place = sight.binder, record_of(row)
        if place.table in _OF_STEP:
            step = binder.steps[place.id]
            return move_step(binder, step, to=max(0, step.position + by))
        return move_line_by(binder, binder.lines[place.id], by) if place.table == "lines" else None

    def move_before(self, sight: Sight, row: str, before: str | None) -> Change | None:
        binder, place, target = sight.binder, record_of(row), record_of(before or ADD_STEP)
        if place.table in _OF_STEP:
            return _step_before(binder, binder.steps[place.id], _step_of(binder, target))
        if place.table != "lines":
            return None
        line = binder.lines[place.id]
        if target.table == "lines":
            other = binder.lines[target.id]
            lifted = other.step == line.step and line.position < other.position
            return move_line(binder, line, step=other.step, to=other.position - lifted)
        if target.table in {ADD_LINE, MORE, TEXT}:
            end = len(binder.lines.where("step", target.id)) if target.table == ADD_LINE else 0
            return move_line(binder, line, step=target.id, to=end)
        return None


def _field_at(table: str, column: str) -> str:
    """The field of a step that stands in a column of one of its rows."""
    if table == TEXT:
        return "text"
    return MORE_COLUMNS[column] if table == MORE else {FILMED_COLUMN: "on_camera"}.get(column, column)


def cell_of_step(step: str, field: str) -> CellName:
    """Where a fact of a step is typed."""
    if field == "text":
        return CellName(f"{TEXT}:{step}", "title")
    if field == "on_camera":
        return CellName(f"steps:{step}", FILMED_COLUMN)
    column = next((column for column, known in MORE_COLUMNS.items() if known == _MORE_OF.get(field, field)), None)
    if column is not None:
        return CellName(f"{MORE}:{step}", column)
    return CellName(f"steps:{step}", {"celsius": "heat"}.get(field, field))


def _step_before(binder: Binder, step: Step, target: str) -> Change:
    """A step before another, or at the end where there is no such."""
    others = [other.id for other in binder.steps.where("recipe", step.recipe) if other.id != step.id]
    return move_step(binder, step, to=others.index(target) if target in others else len(others))


def _is_line(row: str) -> bool:
    return record_of(row).table in {"lines", ADD_LINE}


def _step_of(binder: Binder, target: Place) -> str:
    """The step that a row belongs to; empty for the rows below the last."""
    if target.table == "lines":
        return binder.lines[target.id].step
    return target.id if target.table in {*_OF_STEP, ADD_LINE} else ""


def _removed(binder: Binder, label: str, steps: Sequence[Step], lines: Sequence[Line]) -> Change:
    """Steps and lines out in one change: one after the other, as each would go alone."""
    left, touched = binder, set[tuple[str, str]]()
    for thing in (*steps, *lines):
        is_line = isinstance(thing, Line)
        part = remove_line(left, left.lines[thing.id]) if is_line else remove_step(left, left.steps[thing.id])
        left = apply(left, part)
        touched |= {(edit.table, edit.id) for edit in part.edits}
    return changed(label, before=_found(binder, touched), after=_found(left, touched))


def _found(binder: Binder, keys: Iterable[tuple[str, str]]) -> list[Record]:
    found = (binder.find(*key) for key in sorted(keys))
    return [record for record in found if record is not None]


def _step_rows(binder: Binder, step: Step) -> list[Row]:
    place = Place("steps", step.id)
    number = Cell(str(step.position + 1), size=Size.HEADING, spoken=_("step {number}").format(number=step.position + 1))
    title = Cell(step.title, edit=step.title, size=Size.STRONG, placeholder=_("title"))
    head = Row(
        key_of(place),
        (number, title, *fact_cells(binder, step), filmed_cell(step), NOTHING, NOTHING),
        place=place,
        spans=((_CONTENT + 1, 3),),
        gap=2,
        rule=False,
        lines=1.5,
    )
    more = Row(f"{MORE}:{step.id}", more_cells(step), place=place, spans=MORE_SPANS, rule=False, lines=1.3)
    words = Cell(step.text, edit=step.text, placeholder=_("What is done in this step"), paragraph=True)
    text = _across(f"{TEXT}:{step.id}", words, place, wraps=True, rule=False)
    lines = [
        Row(
            key_of(Place("lines", line.id)),
            (NOTHING, *line_cells(binder, line, _CONTENT)),
            place=Place("lines", line.id),
            spans=((1, _CONTENT),),
            lines=1.55,
        )
        for line in binder.lines.where("step", step.id)
    ]
    typing = Cell(edit="", placeholder=_("Add a line, such as 1 1/2 cups chopped onion"))
    return [head, more, text, *lines, _across(f"{ADD_LINE}:{step.id}", typing, place, rule=False, adds=True)]


def _across(
    key: str, cell: Cell, place: Place | None, *, wraps: bool = False, rule: bool = True, adds: bool = False
) -> Row:
    """A row of one cell that reaches over the content columns."""
    cells = (NOTHING, cell, *(NOTHING,) * (_WHOLE - 1))
    return Row(key, cells, place=place, spans=((1, _CONTENT),), wraps=wraps, rule=rule, adds=adds, lines=1.5)


def _adding_step() -> Row:
    cell = Cell(edit="", placeholder=_("Add a step: write what is done"), paragraph=True)
    cells = (NOTHING, cell, *(NOTHING,) * (_WHOLE - 1))
    return Row(ADD_STEP, cells, spans=((1, _CONTENT),), gap=2, rule=False, adds=True, lines=1.7)


def _notes(recipe: Recipe) -> Row:
    cell = Cell(recipe.notes, edit=recipe.notes, placeholder=_("Notes on this recipe"), paragraph=True)
    return _across(NOTES, cell, Place("recipes", recipe.id), wraps=True, rule=False)
