"""The builds of one dish: what each is for, how far it goes, for how many, and where it waits."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from binder.desktop.pictures.pans import Pans
from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Mark, Row, Tone, key_of
from binder.desktop.sheet.sheet import PlainSheet, record_of
from binder.desktop.shoot_page.build_refusal import require_base_for, ways_out
from binder.desktop.shoot_page.running_order import pan_of
from binder.desktop.words.figure_text import number_text
from binder.desktop.words.typed import Reading, UnreadableError, typed_choice, typed_optional_number, words_for
from binder.figures.demand import builds_of
from binder.figures.missing import Place
from binder.kitchen.edits.records import move, remove, with_values
from binder.kitchen.edits.shoots import add_build, dish_name, remove_build, set_build
from binder.kitchen.shoot import BuildKind, BuildState
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.desktop.sheet.sheet import CellName, Remedy, Sight
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.kitchen.errors import BinderError
    from binder.kitchen.recipe import Step
    from binder.kitchen.shoot import Build, Dish

ADD_BUILD = "add:build"
_WORDS_OF_A_STEP = 6


class Builds(PlainSheet):
    """The subject is a dish."""

    @property
    def name(self) -> str:
        return _("Builds")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("pan", "", characters=4),
            Column("kind", _("build"), characters=14, stretch=1),
            Column("up_to", _("made up to"), characters=24, stretch=3),
            Column(
                "portions",
                _("portions"),
                characters=8,
                align=Align.RIGHT,
                tip=_("Grey where it is the dish's own number"),
            ),
            Column("waits", _("where it waits"), characters=15, stretch=2),
            Column("state", _("on the day"), characters=10),
        )

    def rows(self, sight: Sight) -> list[Row]:
        dish = sight.binder.dishes.get(sight.subject or "")
        if dish is None:
            return []
        return [*(_row(sight.binder, dish, build) for build in builds_of(sight.binder, dish.id)), _adding()]

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder = sight.binder
        if row == ADD_BUILD:
            dish = binder.dishes[sight.subject or ""]
            change, made = add_build(binder, dish, typed_choice(text, words_for(BuildKind)))
            return require_base_for(binder, None, made, change)
        build = binder.builds[record_of(row).id]
        values: dict[str, Reading] = {
            "kind": lambda: typed_choice(text, words_for(BuildKind)),
            "up_to": lambda: _typed_step(binder, binder.dishes[build.dish], text),
            "portions": lambda: typed_optional_number(binder, text),
            "waits": text.strip,
            "state": lambda: typed_choice(text, words_for(BuildState)),
        }
        changed = with_values(build, **{column: values[column]()})
        return require_base_for(binder, build, changed, set_build(binder, build, **{column: getattr(changed, column)}))

    def remedies(self, sight: Sight, cell: CellName, text: str, error: BinderError) -> Sequence[Remedy]:
        return ways_out(sight.binder, sight.subject or "", error)

    def remove(self, sight: Sight, rows: Sequence[str]) -> Change | None:
        builds = [sight.binder.builds[record_of(row).id] for row in rows if row != ADD_BUILD]
        if len(builds) < 2:  # noqa: PLR2004 - one build goes by its name
            return remove_build(sight.binder, builds[0]) if builds else None
        label = ngettext("Remove {count} build", "Remove {count} builds", len(builds)).format(count=len(builds))
        return remove(label, sight.binder, *builds)

    def move_before(self, sight: Sight, row: str, before: str | None) -> Change | None:
        if row == ADD_BUILD:
            return None
        build = sight.binder.builds[record_of(row).id]
        others = [other.id for other in builds_of(sight.binder, build.dish) if other.id != build.id]
        target = record_of(before).id if before and before != ADD_BUILD else None
        return _moved(sight.binder, build, others.index(target) if target in others else len(others))

    def move_by(self, sight: Sight, row: str, by: int) -> Change | None:
        if row == ADD_BUILD:
            return None
        build = sight.binder.builds[record_of(row).id]
        return _moved(sight.binder, build, max(0, build.position + by))


def _moved(binder: Binder, build: Build, to: int) -> Change:
    label = _("Move a build of {dish}").format(dish=dish_name(binder, binder.dishes[build.dish]))
    return move(label, binder, build, to=to)


def _row(binder: Binder, dish: Dish, build: Build) -> Row:
    steps = binder.steps.where("recipe", dish.recipe)
    end = _("the end")
    up_to = step_title(binder.steps[build.up_to]) if build.up_to else end
    own = build.portions is not None
    cells = (
        Cell(picture=Pans((pan_of(binder, build, len(steps) or 1),)), spoken=" "),
        Cell(_(build.kind.value), edit=_(build.kind.value), choices=tuple(words_for(BuildKind))),
        Cell(up_to, edit=up_to, choices=(end, *(step_title(step) for step in steps))),
        Cell(
            number_text(binder, build.portions or dish.portions),
            edit=number_text(binder, build.portions),
            tone=Tone.INK if own else Tone.QUIET,
        ),
        Cell(build.waits, edit=build.waits, placeholder="–"),
        _state(build),
    )
    return Row(key_of(Place("builds", build.id)), cells, place=Place("builds", build.id), lines=1.7)


def _state(build: Build) -> Cell:
    word = _(build.state.value)
    tone = Tone.QUIET if build.state is BuildState.PLANNED else Tone.INK
    return Cell(word, edit=word, choices=tuple(words_for(BuildState)), tone=tone, mark=_STATE_MARKS[build.state])


_STATE_MARKS = {
    BuildState.PLANNED: Mark.NONE,
    BuildState.UNDER_WAY: Mark.UNKNOWN,
    BuildState.READY: Mark.WITHIN,
    BuildState.USED: Mark.NOTE,
    BuildState.SPOILED: Mark.OVER,
}


def _adding() -> Row:
    cell = Cell(
        edit="",
        placeholder=_("Add a build: hero, swap-out, spare, beauty or tasting"),
        choices=tuple(words_for(BuildKind)),
    )
    return Row(ADD_BUILD, (NOTHING, cell, *(NOTHING,) * 4), spans=((1, 2),), lines=1.8, rule=False, adds=True)


def step_title(step: Step) -> str:
    """A step by its number and title, or else its first words."""
    words = step.title or " ".join(step.text.split()[:_WORDS_OF_A_STEP])
    return f"{step.position + 1} {words}".strip()


def _typed_step(binder: Binder, dish: Dish, text: str) -> str | None:
    """A step by its number or title; None for the end."""
    plain = text.strip().casefold()
    if not plain or plain in {_("the end").casefold(), _("end").casefold()}:
        return None
    number = re.match(r"\d+", plain)
    for step in binder.steps.where("recipe", dish.recipe):
        if plain == step_title(step).casefold() or (number and int(number[0]) == step.position + 1):
            return step.id
    raise UnreadableError(text, _("choose a step of the recipe by its number, or the end."))
