"""The crew: who is there, when, and what they can do. A new one is typed by name."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import NOTHING, Cell, Column, Mark, Row, Size, Tone, key_of
from binder.desktop.sheet.sheet import PlainSheet, record_of
from binder.desktop.words.figure_text import clock_edit, clock_text
from binder.desktop.words.typed import Reading, UnreadableError, typed_choice, typed_clock, typed_words
from binder.figures.day_kitchen import day_kitchen
from binder.figures.missing import Place
from binder.kitchen.edits.day import add_person, move_person, remove_person, set_person
from binder.kitchen.edits.records import remove
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.desktop.sheet.sheet import Sight
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.kitchen.day import Person

ADD_PERSON = "add:person"


class CrewSheet(PlainSheet):
    """A row a person; where nobody is named, those that are assumed, in quiet."""

    @property
    def name(self) -> str:
        return _("Crew")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("name", _("who"), characters=16, stretch=2),
            Column("role", _("role"), characters=14, stretch=2),
            Column("on_camera", _("on camera"), characters=8),
            Column("skills", _("can do"), characters=18, stretch=3, tip=_("Parted by commas; steps may ask for one")),
            Column("arrives", _("there from"), characters=9),
            Column("leaves", _("until"), characters=9),
        )

    def rows(self, sight: Sight) -> list[Row]:
        if sight.shoot is None:
            return []
        people = sight.binder.people.where("shoot", sight.shoot)
        shown = [_row(sight.binder, person) for person in people]
        assumed = [_assumed(person) for person in day_kitchen(sight.binder, sight.shoot).people] if not people else []
        return [*shown, *assumed, _adding()]

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder = sight.binder
        if row == ADD_PERSON:
            return add_person(binder, binder.shoots[sight.shoot or ""], _named(text))[0]
        person = binder.people[record_of(row).id]
        values: dict[str, Reading] = {
            "name": lambda: _named(text),
            "role": text.strip,
            "on_camera": lambda: typed_choice(text, yes_or_no()),
            "skills": lambda: typed_words(text),
            "arrives": lambda: typed_clock(text),
            "leaves": lambda: typed_clock(text),
        }
        return set_person(person, **{column: values[column]()})

    def remove(self, sight: Sight, rows: Sequence[str]) -> Change | None:
        found = [sight.binder.people[record_of(row).id] for row in rows if record_of(row).table == "people"]
        if len(found) < 2:  # noqa: PLR2004 - one goes by name
            return remove_person(sight.binder, found[0]) if found else None
        label = ngettext("Take {count} out of the crew", "Take {count} out of the crew", len(found))
        return remove(label.format(count=len(found)), sight.binder, *found)

    def move_by(self, sight: Sight, row: str, by: int) -> Change | None:
        place = record_of(row)
        if place.table != "people":
            return None
        person = sight.binder.people[place.id]
        return move_person(sight.binder, person, to=max(0, person.position + by))


def yes_or_no() -> dict[str, bool]:
    """The words for whether something is so."""
    return {_("yes"): True, _("no"): False}


def _named(text: str) -> str:
    if not text.strip():
        raise UnreadableError(text, _("write a name."))
    return text.strip()


def _row(binder: Binder, person: Person) -> Row:
    skills = ", ".join(person.skills)
    known = sorted({skill for one in binder.people.values() for skill in one.skills})
    place = Place("people", person.id)
    cells = (
        Cell(person.name, edit=person.name, size=Size.STRONG),
        Cell(person.role, edit=person.role, placeholder="–"),
        yes_no_cell(yes=person.on_camera),
        Cell(skills, edit=skills, placeholder="–", choices=tuple(known)),
        Cell(clock_text(binder, person.arrives), edit=clock_edit(binder, person.arrives), placeholder=_("call")),
        Cell(clock_text(binder, person.leaves), edit=clock_edit(binder, person.leaves), placeholder=_("wrap")),
    )
    return Row(key_of(place), cells, place=place)


def yes_no_cell(*, yes: bool) -> Cell:
    """Whether something is so, as a word."""
    word = _("yes") if yes else _("no")
    return Cell(word, edit=word, choices=tuple(yes_or_no()), tone=Tone.INK if yes else Tone.QUIET)


def _assumed(person: Person) -> Row:
    cells = (
        Cell(person.name, tone=Tone.QUIET, mark=Mark.UNKNOWN),
        Cell(_("assumed"), tone=Tone.QUIET, tip=_("Until someone is named")),
        Cell(_("yes") if person.on_camera else _("no"), tone=Tone.QUIET),
        *(NOTHING,) * 3,
    )
    return Row(f"assumed:{person.id}", cells)


def _adding() -> Row:
    cell = Cell(edit="", placeholder=_("Add someone: their name"))
    return Row(ADD_PERSON, (cell, *(NOTHING,) * 5), spans=((0, 3),), rule=False, adds=True)
