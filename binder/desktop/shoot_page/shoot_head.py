"""The head of a shoot as one row: name, date, call, base ingredient and how much of it, cap and budget."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import Align, Cell, Column, Row, Size
from binder.desktop.sheet.sheet import PlainSheet, Remedy
from binder.desktop.words.figure_text import clock_edit, clock_text, date_text, plain_money
from binder.desktop.words.typed import Reading, typed_clock, typed_date, typed_money
from binder.figures.cap_basis import basis_text
from binder.figures.missing import Place
from binder.figures.money_words import money
from binder.figures.portion_text import number_style
from binder.kitchen.amount import Amount
from binder.kitchen.amount_text import amount_text
from binder.kitchen.change import Change, apply, joined
from binder.kitchen.edits.foods import add_food, adopt_food, typed_size
from binder.kitchen.edits.shoots import set_shoot
from binder.kitchen.line_text import UnknownFoodError
from binder.kitchen.name_book import name_book
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.desktop.sheet.sheet import CellName, Sight
    from binder.kitchen.binder import Binder
    from binder.kitchen.errors import BinderError
    from binder.kitchen.shoot import Shoot


class ShootHead(PlainSheet):
    """What holds for the whole shoot."""

    @property
    def name(self) -> str:
        return _("The shoot")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("name", _("shoot"), characters=20, stretch=3),
            Column("on", _("date"), characters=16),
            Column("call", _("call"), characters=9),
            Column("base", _("base ingredient"), characters=18, stretch=2),
            Column("amount", _("there is of it"), characters=9),
            Column(
                "cap",
                _("cap a portion"),
                characters=9,
                align=Align.RIGHT,
                tip=_("A portion may not cost more than this, where a dish has no cap of its own"),
            ),
            Column(
                "budget",
                _("budget"),
                characters=11,
                align=Align.RIGHT,
                tip=_("For all there is to pay: the page of money has its lines"),
            ),
        )

    def rows(self, sight: Sight) -> list[Row]:
        if sight.shoot is None:
            return []
        return [_row(sight.binder, sight.binder.shoots[sight.shoot])]

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder, shoot = sight.binder, sight.binder.shoots[sight.shoot or ""]
        if column == "base":
            return _set_base(binder, shoot, text)
        if column == "amount":
            amount, unit = typed_size(binder, text) if text.strip() else (0.0, shoot.base_unit)
            return set_shoot(shoot, base_amount=amount, base_unit=unit)
        values: dict[str, Reading] = {
            "name": text.strip,
            "on": lambda: typed_date(binder, text),
            "call": lambda: typed_clock(text),
            "cap": lambda: typed_money(binder, text),
            "budget": lambda: typed_money(binder, text),
        }
        return set_shoot(shoot, **{column: values[column]()})

    def remedies(self, sight: Sight, cell: CellName, text: str, error: BinderError) -> Sequence[Remedy]:
        if cell.column != "base" or not isinstance(error, UnknownFoodError):
            return ()
        return (
            *(Remedy(name, text=name) for name in error.nearest),
            _own_food(sight.binder, sight.binder.shoots[sight.shoot or ""], text),
        )


def _row(binder: Binder, shoot: Shoot) -> Row:
    base = binder.foods[shoot.base].name if shoot.base else ""
    amount = (
        amount_text(Amount(shoot.base_amount, shoot.base_amount, shoot.base_unit), number_style(binder))
        if shoot.base_amount
        else ""
    )
    cells = (
        Cell(shoot.name, edit=shoot.name, size=Size.STRONG),
        Cell(date_text(binder, shoot.on), edit=shoot.on.isoformat() if shoot.on else "", placeholder=_("add the date")),
        Cell(clock_text(binder, shoot.call), edit=clock_edit(binder, shoot.call), placeholder=_("when?")),
        Cell(base, edit=base, placeholder=_("choose one food"), choices=_base_choices(binder)),
        Cell(amount, edit=amount, placeholder=_("how much?")),
        Cell(
            money(binder, shoot.cap) if shoot.cap is not None else "",
            edit=plain_money(binder, shoot.cap),
            placeholder=_("none"),
            tip=_("Held on {basis}").format(basis=basis_text(shoot.cap_basis)),
        ),
        Cell(
            money(binder, shoot.budget) if shoot.budget is not None else "",
            edit=plain_money(binder, shoot.budget),
            placeholder=_("none"),
        ),
    )
    return Row(f"shoots:{shoot.id}", cells, place=Place("shoots", shoot.id), lines=1.9, rule=False)


def _base_choices(binder: Binder) -> tuple[str, ...]:
    """Foods that have forms first: they are most likely meant."""
    foods = [food for food in binder.foods.values() if food.form_of is None]
    return tuple(
        food.name for food in sorted(foods, key=lambda food: (not binder.foods.where("form_of", food.id), food.name))
    )


def _set_base(binder: Binder, shoot: Shoot, text: str) -> Change:
    if not text.strip():
        return set_shoot(shoot, base=None)
    known = name_book(binder).find(text)
    if known is None or known.is_recipe:
        raise UnknownFoodError(text, text.strip(), name_book(binder).nearest(text))
    chosen = set_shoot(shoot, base=known.key)
    return chosen if known.in_binder else joined(chosen.label, [adopt_food(binder, known.key), chosen])


def _own_food(binder: Binder, shoot: Shoot, text: str) -> Remedy:
    added, food = add_food(binder, text.strip())
    change = joined(added.label, [added, set_shoot(apply(binder, added).shoots[shoot.id], base=food.id)])
    return Remedy(_("Add “{food}” to the larder").format(food=text.strip()), change=change)
