"""The kitchen: ovens, burners, fridges, tools, and how much each holds. A new one is typed whole: oven, 2 shelves."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from binder.desktop.day_page.degrees import degrees_text, typed_degrees
from binder.desktop.sheet.cell import NOTHING, Cell, Column, Mark, Row, Size, Tone, key_of
from binder.desktop.sheet.sheet import PlainSheet, record_of
from binder.desktop.words.figure_text import minutes_text, number_text
from binder.desktop.words.typed import Reading, UnreadableError, typed_choice, typed_minutes, typed_number, words_for
from binder.figures.day_kitchen import day_kitchen, is_assumed
from binder.figures.missing import Place
from binder.kitchen.day import Appliance, ApplianceKind
from binder.kitchen.edits.day import add_appliance, move_appliance, remove_appliance, set_appliance
from binder.kitchen.edits.records import remove
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.desktop.sheet.sheet import Sight
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change

ADD_APPLIANCE = "add:appliance"
_USUAL: dict[ApplianceKind, dict[str, object]] = {
    ApplianceKind.OVEN: {"places": 2, "change_minutes": 15.0},
    ApplianceKind.BURNERS: {"places": 4},
}
"""What a new one has where it is not typed. Common practice, no source."""

_SEVERAL = re.compile(r"^(?P<name>.*?)[\s,;:×x]*(?P<count>\d+)\b.*$")


class KitchenSheet(PlainSheet):
    """A row an appliance or tool; those the plan assumes, in quiet."""

    @property
    def name(self) -> str:
        return _("Kitchen")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("name", _("what"), characters=18, stretch=2),
            Column("kind", _("kind"), characters=10, stretch=2),
            Column("places", _("at once"), characters=8, stretch=1, tip=_("Shelves, burners, or how many")),
            Column(
                "change_minutes",
                _("between"),
                characters=9,
                stretch=1,
                tip=_("An oven to another temperature, a tool washed between two dishes"),
            ),
            Column(
                "tolerance",
                _("within"),
                characters=9,
                stretch=1,
                tip=_("How far apart two temperatures may be that an oven serves at once"),
            ),
        )

    def rows(self, sight: Sight) -> list[Row]:
        if sight.shoot is None:
            return []
        own = sight.binder.appliances.where("shoot", sight.shoot)
        assumed = [one for one in day_kitchen(sight.binder, sight.shoot).appliances if is_assumed(one)]
        return [*(_row(sight.binder, one) for one in own), *(_assumed(one) for one in assumed), _adding()]

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder = sight.binder
        if row == ADD_APPLIANCE:
            return typed_whole(binder, sight.shoot or "", text)
        appliance = binder.appliances[record_of(row).id]
        values: dict[str, Reading] = {
            "name": lambda: _named(text),
            "kind": lambda: typed_choice(text, words_for(ApplianceKind)),
            "places": lambda: _typed_places(binder, text),
            "change_minutes": lambda: typed_minutes(binder, text),
            "tolerance": lambda: typed_degrees(binder, text),
        }
        return set_appliance(appliance, **{column: values[column]()})

    def remove(self, sight: Sight, rows: Sequence[str]) -> Change | None:
        found = [sight.binder.appliances[record_of(row).id] for row in rows if record_of(row).table == "appliances"]
        if len(found) < 2:  # noqa: PLR2004 - one goes by its name
            return remove_appliance(sight.binder, found[0]) if found else None
        label = ngettext("Take {count} thing out of the kitchen", "Take {count} things out of the kitchen", len(found))
        return remove(label.format(count=len(found)), sight.binder, *found)

    def move_by(self, sight: Sight, row: str, by: int) -> Change | None:
        place = record_of(row)
        if place.table != "appliances":
            return None
        appliance = sight.binder.appliances[place.id]
        return move_appliance(sight.binder, appliance, to=max(0, appliance.position + by))


def typed_whole(binder: Binder, shoot: str, text: str) -> Change:
    """`oven`, `burners, 6`, `food processor`: what is not a kind of appliance is a tool of that name."""
    found = _SEVERAL.match(text.strip())
    name = _named(found["name"] if found else text)
    kinds = {word: kind for word, kind in words_for(ApplianceKind).items() if kind is not ApplianceKind.TOOL}
    kind = next((kind for word, kind in kinds.items() if word.casefold() in name.casefold()), ApplianceKind.TOOL)
    fields = dict(_USUAL.get(kind, {}))
    if found:
        fields["places"] = int(found["count"])
    return add_appliance(binder, binder.shoots[shoot], name, kind, **fields)[0]


def _named(text: str) -> str:
    if not text.strip(" ,;:"):
        raise UnreadableError(text, _("write what it is, such as oven, burners 4 or food processor."))
    return text.strip(" ,;:")


def _typed_places(binder: Binder, text: str) -> int:
    number = typed_number(binder, text)
    if number != int(number):
        raise UnreadableError(text, _("write how many at once, such as 2."))
    return int(number)


def _row(binder: Binder, one: Appliance) -> Row:
    place, between = Place("appliances", one.id), minutes_text(one.change_minutes)
    is_oven = one.kind is ApplianceKind.OVEN
    changes = one.kind in {ApplianceKind.OVEN, ApplianceKind.TOOL}
    cells = (
        Cell(one.name, edit=one.name, size=Size.STRONG),
        Cell(_(one.kind.value), edit=_(one.kind.value), choices=tuple(words_for(ApplianceKind))),
        Cell(number_text(binder, one.places), edit=number_text(binder, one.places)),
        Cell(between, edit=between, placeholder="–") if changes else NOTHING,
        Cell(degrees_text(binder, one.tolerance), edit=degrees_text(binder, one.tolerance)) if is_oven else NOTHING,
    )
    return Row(key_of(place), cells, place=place)


def _assumed(one: Appliance) -> Row:
    cells = (
        Cell(_(one.kind.value), tone=Tone.QUIET, mark=Mark.UNKNOWN),
        Cell(_("assumed"), tone=Tone.QUIET, tip=_("Until one is named")),
        Cell(str(one.places), tone=Tone.QUIET),
        NOTHING,
        NOTHING,
    )
    return Row(f"assumed:{one.id}", cells)


def _adding() -> Row:
    cell = Cell(edit="", placeholder=_("Add an appliance or a tool: oven, burners 4, food processor"))
    return Row(ADD_APPLIANCE, (cell, *(NOTHING,) * 4), spans=((0, 5),), rule=False, adds=True)
