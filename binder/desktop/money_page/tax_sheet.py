"""Tax by section of the store: a rate for all, and others for what has its own. Plain Python."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Row, Tone, key_of
from binder.desktop.sheet.sheet import NotEditableError, PlainSheet, record_of
from binder.desktop.words.figure_text import part_text
from binder.desktop.words.typed import UnreadableError, typed_choice, typed_part
from binder.figures.missing import Place
from binder.kitchen.change import joined
from binder.kitchen.edits.money import remove_tax, set_tax
from binder.kitchen.edits.records import remove, set_fields
from binder.kitchen.edits.shoots import set_shoot
from binder.kitchen.food import Section
from binder.kitchen.number import NUMBER_PATTERN
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from binder.desktop.sheet.sheet import Sight
    from binder.kitchen.binder import Binder
    from binder.kitchen.budget import TaxRate
    from binder.kitchen.change import Change
    from binder.kitchen.shoot import Shoot

ADD_TAX = "add:tax"
_TAXED = "prices_taxed"
_WHOLE = re.compile(rf"^(?:(?P<section>\D*\S)\s+)?(?P<rate>{NUMBER_PATTERN}\s*%?)$")


class TaxSheet(PlainSheet):
    """Whether the prices contain the tax, then a row a rate."""

    @property
    def name(self) -> str:
        return _("Tax")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("section", _("on"), characters=24, stretch=2),
            Column("rate", _("rate"), characters=9, align=Align.RIGHT),
            Column("note", "", characters=20, stretch=4),
        )

    def rows(self, sight: Sight) -> list[Row]:
        shoot = sight.binder.shoots.get(sight.shoot or "")
        if shoot is None:
            return []
        rates = sorted(sight.binder.tax_rates.where("shoot", shoot.id), key=_in_order)
        return [_contained(shoot), *(_row(sight.binder, rate) for rate in rates), _adding()]

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder, shoot = sight.binder, sight.binder.shoots[sight.shoot or ""]
        if row == ADD_TAX:
            return _added(binder, shoot, text)
        if row == _TAXED:
            return set_shoot(shoot, prices_taxed=typed_choice(text, _contains()))
        tax = binder.tax_rates[record_of(row).id]
        if column == "rate":
            return set_tax(binder, shoot, tax.section, _rate(binder, text))
        if column == "section":
            return _on_another(binder, tax, typed_choice(text, sections()))
        raise NotEditableError

    def remove(self, sight: Sight, rows: Sequence[str]) -> Change | None:
        taxes = [sight.binder.tax_rates[record_of(row).id] for row in rows if record_of(row).table == "tax_rates"]
        if len(taxes) == 1:
            return remove_tax(sight.binder, taxes[0])
        label = ngettext("Remove {count} tax rate", "Remove {count} tax rates", len(taxes)).format(count=len(taxes))
        return remove(label, sight.binder, *taxes) if taxes else None


def sections() -> Mapping[str, Section | None]:
    """What a rate may be on, by the word it is chosen with."""
    return {_("all else"): None, **{_(section.value): section for section in Section}}


def _contains() -> Mapping[str, bool]:
    return {_("contained in the prices"): True, _("added at the till"): False}


def _in_order(tax: TaxRate) -> tuple[bool, str]:
    return (tax.section is not None, tax.section.value if tax.section else "")


def _contained(shoot: Shoot) -> Row:
    shown = next(word for word, contained in _contains().items() if contained is shoot.prices_taxed)
    cells = (Cell(shown, label=_("the tax is"), edit=shown, choices=tuple(_contains())), NOTHING, NOTHING)
    return Row(_TAXED, cells, place=Place("shoots", shoot.id), spans=((0, 2),), lines=1.5)


def _row(binder: Binder, tax: TaxRate) -> Row:
    section = _(tax.section.value) if tax.section else _("all else")
    rate = part_text(binder, tax.rate)
    note = _("And on the costs beside the food that are taxed") if tax.section is None else ""
    cells = (
        Cell(section, edit=section, choices=tuple(sections())),
        Cell(rate, edit=rate),
        Cell(note, tone=Tone.QUIET),
    )
    place = Place("tax_rates", tax.id)
    return Row(key_of(place), cells, place=place, lines=1.5)


def _adding() -> Row:
    placeholder = _("Add a rate, such as 7 % or produce 2 %")
    return Row(
        ADD_TAX, (Cell(edit="", placeholder=placeholder), NOTHING, NOTHING), spans=((0, 3),), adds=True, rule=False
    )


def _added(binder: Binder, shoot: Shoot, text: str) -> Change:
    """`7 %` for all, `produce 2 %` for one section."""
    found = _WHOLE.match(text.strip())
    if found is None:
        raise UnreadableError(text, _("write a rate, such as 7 % or produce 2 %."))
    section = typed_choice(found["section"], sections()) if found["section"] else None
    if any(tax.section == section for tax in binder.tax_rates.where("shoot", shoot.id)):
        raise UnreadableError(text, _("there is a rate for it already: change that one."))
    return set_tax(binder, shoot, section, _rate(binder, found["rate"]))


def _rate(binder: Binder, text: str) -> float:
    """A rate is per cent, also where that is not said: 1 is one per cent here."""
    return typed_part(binder, text if text.strip().endswith("%") else f"{text.strip()} %")


def _on_another(binder: Binder, tax: TaxRate, section: Section | None) -> Change:
    """A rate put on another section; one that is there already gives way."""
    there = [one for one in binder.tax_rates.where("shoot", tax.shoot) if one.section == section and one.id != tax.id]
    name = _(section.value) if section else _("all else")
    label = _("Put the tax on {section}").format(section=name)
    moved = set_fields(label, tax, section=section)
    return joined(label, [remove(label, binder, *there), moved]) if there else moved
