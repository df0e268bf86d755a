"""The terms of a shoot: what caps are held on, how it is bought for and how the day runs. A row a term."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from binder.desktop.base_page.forms import days_text, typed_days
from binder.desktop.sheet.cell import NOTHING, Cell, Column, Row, Size, Tone
from binder.desktop.sheet.sheet import NotEditableError, PlainSheet
from binder.desktop.shoot_page.zones import typed_zone, zones_like
from binder.desktop.words.figure_text import clock_edit, clock_text, minutes_text, part_text
from binder.desktop.words.typed import (
    Reading,
    UnreadableError,
    typed_choice,
    typed_clock,
    typed_minutes,
    typed_part,
    typed_whole,
    yes_or_no,
)
from binder.figures.cap_basis import basis_text
from binder.figures.missing import Place
from binder.kitchen.edits.day import set_wrap
from binder.kitchen.edits.money import set_cap_basis
from binder.kitchen.edits.shoots import set_shoot
from binder.kitchen.shoot import CapBasis
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Sequence
    from datetime import time

    from binder.desktop.sheet.sheet import Sight
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.kitchen.shoot import Shoot

_MONEY = ("cap_basis", "contingency", "most_stores", "waste_value", "quote_days", "prices_taxed")
_CAMERA = ("spares", "wait_limit", "reset_minutes", "may_reorder", "wrap")
_KITCHEN = ("prep_from", "prep_until", "hot_set", "zone")
TERMS = (*_MONEY, *_CAMERA, *_KITCHEN, "notes")
"""The fields of a shoot that stand here, in their order; each is the key of its row."""


class ShootTerms(PlainSheet):
    """Label, value and what it means."""

    @property
    def name(self) -> str:
        return _("Terms of the shoot")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("label", "", characters=23),
            Column("value", "", characters=16, stretch=2),
            Column("means", "", characters=24, stretch=5),
        )

    def rows(self, sight: Sight) -> list[Row]:
        shoot = sight.binder.shoots.get(sight.shoot or "")
        if shoot is None:
            return []
        groups = ((_("Money"), _MONEY), (_("Before the camera"), _CAMERA), (_("Kitchen and clock"), _KITCHEN))
        values = _values(sight.binder, shoot)
        rows = [row for title, terms in groups for row in _group(shoot, title, terms, values)]
        return [*rows, _notes(shoot)]

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder, shoot = sight.binder, sight.binder.shoots[sight.shoot or ""]
        if row == "cap_basis":
            return set_cap_basis(shoot, typed_choice(text, _bases()))
        if row == "wrap":
            return set_wrap(shoot, typed_clock(text))
        reading = _readings(binder, text).get(row)
        if reading is None or column != "value":
            raise NotEditableError
        return set_shoot(shoot, **{row: reading()})

    def offers(self, sight: Sight, row: str, column: str, text: str) -> Sequence[str]:
        return zones_like(text) if row == "zone" else ()


def terms_in_short(binder: Binder, shoot: Shoot) -> str:
    """The terms that figures on every page hang on, in a few words."""
    parts = [_("caps on {basis}").format(basis=basis_text(shoot.cap_basis))]
    if shoot.wrap is not None:
        parts.append(_("wrap by {time}").format(time=clock_text(binder, shoot.wrap)))
    if shoot.spares:
        says = ngettext("{count} spare of each dish", "{count} spares of each dish", shoot.spares)
        parts.append(says.format(count=shoot.spares))
    parts.append(_("prices up to {days} old").format(days=days_text(binder, shoot.quote_days)))
    return ", ".join(parts)


def _readings(binder: Binder, text: str) -> dict[str, Reading]:
    """How each term is read when it is the one typed."""
    return {
        "contingency": lambda: typed_part(binder, text),
        "most_stores": lambda: typed_whole(binder, text) if text.strip() else None,
        "waste_value": lambda: typed_part(binder, text),
        "quote_days": lambda: _needed(typed_days(binder, text), text, _("write days, such as 60 days.")),
        "prices_taxed": lambda: typed_choice(text, yes_or_no()),
        "spares": lambda: typed_whole(binder, text) if text.strip() else 0,
        "wait_limit": lambda: typed_minutes(binder, text),
        "reset_minutes": lambda: typed_minutes(binder, text),
        "may_reorder": lambda: typed_choice(text, yes_or_no()),
        "prep_from": lambda: _needed(typed_clock(text), text, _("write a time of day such as 8:00.")),
        "prep_until": lambda: _needed(typed_clock(text), text, _("write a time of day such as 20:00.")),
        "hot_set": lambda: typed_choice(text, yes_or_no()),
        "zone": lambda: typed_zone(text),
        "notes": text.strip,
    }


def _needed(value: int | time | None, text: str, rule: str) -> object:
    """A value that cannot be left out."""
    if value is None:
        raise UnreadableError(text, rule)
    return value


def _bases() -> dict[str, CapBasis]:
    return {basis_text(basis): basis for basis in CapBasis}


def _values(binder: Binder, shoot: Shoot) -> dict[str, tuple[str, Cell, str]]:
    """Label, value and meaning of each term but the notes."""
    return {**_of_money(binder, shoot), **_of_camera(binder, shoot), **_of_kitchen(binder, shoot)}


def _of_money(binder: Binder, shoot: Shoot) -> dict[str, tuple[str, Cell, str]]:
    stores = str(shoot.most_stores) if shoot.most_stores is not None else ""
    return {
        "cap_basis": (
            _("caps are held on"),
            Cell(basis_text(shoot.cap_basis), choices=tuple(_bases())),
            _("What a portion is taken to cost beside its cap, on every page, card and sheet"),
        ),
        "contingency": (
            _("contingency"),
            Cell(part_text(binder, shoot.contingency)),
            _("The part of the budget that is kept back"),
        ),
        "most_stores": (
            _("stores gone to, at most"),
            Cell(stores, placeholder=_("any number")),
            _("Packs are chosen from so many stores together"),
        ),
        "waste_value": (
            _("left over and thrown away"),
            Cell(part_text(binder, shoot.waste_value)),
            _("The part of its price that perishable food left in an opened pack counts as lost"),
        ),
        "quote_days": (
            _("a price may be old by"),
            Cell(days_text(binder, shoot.quote_days)),
            _("Older prices are to be asked for again"),
        ),
        "prices_taxed": (
            _("shelf prices with tax"),
            _switch(on=shoot.prices_taxed),
            _("Whether the prices in the book include the tax"),
        ),
    }


def _of_camera(binder: Binder, shoot: Shoot) -> dict[str, tuple[str, Cell, str]]:
    return {
        "spares": (_("spares of each dish"), Cell(str(shoot.spares)), _("Spare builds that are proposed")),
        "wait_limit": (
            _("the camera waits for"),
            Cell(minutes_text(shoot.wait_limit), placeholder=_("nothing")),
            _("A step that waits longer asks for a swap-out"),
        ),
        "reset_minutes": (
            _("reset between dishes"),
            Cell(minutes_text(shoot.reset_minutes), placeholder=_("none")),
            _("What camera and set take from one dish to the next"),
        ),
        "may_reorder": (
            _("dishes may change places"),
            _switch(on=shoot.may_reorder),
            _("Whether the day may be planned in another order than the running order"),
        ),
        "wrap": (
            _("wrap by"),
            Cell(clock_text(binder, shoot.wrap), edit=clock_edit(binder, shoot.wrap), placeholder=_("open")),
            _("By when filming has ended"),
        ),
    }


def _of_kitchen(binder: Binder, shoot: Shoot) -> dict[str, tuple[str, Cell, str]]:
    return {
        "prep_from": (
            _("days before, work from"),
            Cell(clock_text(binder, shoot.prep_from), edit=clock_edit(binder, shoot.prep_from)),
            _("When people begin on the days before"),
        ),
        "prep_until": (
            _("and until"),
            Cell(clock_text(binder, shoot.prep_until), edit=clock_edit(binder, shoot.prep_until)),
            _("And when they stop"),
        ),
        "hot_set": (
            _("above 32 °C on the set"),
            _switch(on=shoot.hot_set),
            _("Food out of the cold then lasts one hour, not two (USDA FSIS); your food-safety lead has the last word"),
        ),
        "zone": (
            _("clock of"),
            Cell(shoot.zone, placeholder=_("no zone")),
            _("Such as Europe/Berlin: counts back right over a night in which the clocks change"),
        ),
    }


def _switch(*, on: bool) -> Cell:
    return Cell(_("yes") if on else _("no"), choices=tuple(yes_or_no()))


def _group(shoot: Shoot, title: str, terms: tuple[str, ...], values: dict[str, tuple[str, Cell, str]]) -> list[Row]:
    heading = Row(f"heading:{terms[0]}", (Cell(title, size=Size.SMALL, tone=Tone.QUIET), NOTHING, NOTHING), gap=2)
    return [heading, *(_row(shoot, term, *values[term]) for term in terms)]


def _row(shoot: Shoot, term: str, label: str, value: Cell, means: str) -> Row:
    cells = (
        Cell(label, tone=Tone.QUIET),
        replace(value, edit=value.text if value.edit is None else value.edit, tip=means),
        Cell(means, tone=Tone.QUIET, size=Size.SMALL, tip=means),
    )
    return Row(term, cells, place=Place("shoots", shoot.id), lines=1.5)


def _notes(shoot: Shoot) -> Row:
    text = Cell(shoot.notes, edit=shoot.notes, placeholder=_("Notes on this shoot"), paragraph=True)
    cells = (Cell(_("notes"), tone=Tone.QUIET), text, NOTHING)
    return Row("notes", cells, place=Place("shoots", shoot.id), spans=((1, 2),), wraps=True, gap=2)
