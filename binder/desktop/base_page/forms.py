"""The forms of the base: how much of each is made, where it goes and what is left, and how long it keeps."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Mark, Row, Size, Tone, key_of
from binder.desktop.sheet.sheet import PlainSheet, record_of
from binder.desktop.words.figure_text import grams_parts, number_text
from binder.desktop.words.typed import Reading, UnreadableError, typed_optional_number
from binder.figures.base_network import base_forms
from binder.figures.missing import Place
from binder.figures.portion_text import number_style
from binder.kitchen.amount_text import grams_text
from binder.kitchen.edits.base import add_form
from binder.kitchen.edits.foods import set_food
from binder.kitchen.edits.records import remove
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.desktop.base_page.base_figures import BaseFigures, LatestFigures
    from binder.desktop.sheet.sheet import Sight
    from binder.figures.base import BaseBalance, FormBalance
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.kitchen.food import Food

ADD_FORM = "add:form"
_UNKNOWN = Cell("–", tone=Tone.QUIET, spoken=_("not known"))


def base_of(sight: Sight) -> Food | None:
    """The base ingredient of the shoot looked at."""
    base = sight.binder.shoots[sight.shoot].base if sight.shoot else None
    return sight.binder.foods[base] if base is not None else None


class Forms(PlainSheet):
    """A row a form, the base first. Figures are the latest that were worked out."""

    def __init__(self, latest: LatestFigures) -> None:
        self._latest = latest

    @property
    def name(self) -> str:
        return _("Forms")

    @property
    def columns(self) -> tuple[Column, ...]:
        weight = {"characters": 7.5, "align": Align.DECIMAL, "unit_room": "kg"}
        return (
            Column("name", _("form"), characters=14, stretch=4),
            Column("made", _("made"), **weight),  # type: ignore[arg-type]
            Column("used", _("into dishes"), **weight),  # type: ignore[arg-type]
            Column("taken", _("into other forms"), **weight),  # type: ignore[arg-type]
            Column("left", _("left"), **weight),  # type: ignore[arg-type]
            Column("good_from_days", _("good from"), characters=6, tip=_("Days after it is made")),
            Column("keeps_days", _("keeps"), characters=7, tip=_("Days after it is made")),
            Column("weighs", _("weighs"), characters=9, stretch=1, tip=_("Density and measures, in the larder")),
        )

    def rows(self, sight: Sight) -> list[Row]:
        base = base_of(sight)
        if base is None:
            return []
        keys = self._in_order(sight.binder, base)
        return [*(self._row(sight.binder, sight.binder.foods[key], base) for key in keys), _adding(base)]

    def _in_order(self, binder: Binder, base: Food) -> list[str]:
        """As they are made, as far as that has been worked out."""
        figures, forms = self._latest.value, base_forms(binder, base.id)
        made = [form.form for form in figures.balance.forms] if figures and figures.balance else []
        return [key for key in dict.fromkeys((*made, *forms)) if key in forms]

    def _row(self, binder: Binder, form: Food, base: Food) -> Row:
        figures = self._latest.value
        balance = figures.balance if figures else None
        found = next((one for one in balance.forms if one.form == form.id), None) if balance else None
        weights = _weights(binder, balance, found) if balance and found else (_UNKNOWN,) * 4
        if self._latest.stale:
            weights = tuple(_paled(cell) for cell in weights)
        short = _short_text(binder, figures, form)
        is_base = form.id == base.id
        cells = (
            Cell(
                form.name,
                edit=form.name,
                size=Size.STRONG if is_base else Size.BODY,
                under=short or (_("the base, as bought") if is_base else ""),
                mark=Mark.SHORT if short else Mark.NONE,
            ),
            *weights,
            *((NOTHING, NOTHING) if is_base else (_days(binder, form.good_from_days), _days(binder, form.keeps_days))),
            _weighing(binder, form),
        )
        place = Place("foods", form.id)
        return Row(key_of(place), cells, place=place, lines=2.1 if cells[0].under else 1.6)

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder, base = sight.binder, base_of(sight)
        if row == ADD_FORM and base is not None:
            if not text.strip():
                raise UnreadableError(text, _("write what the form is called."))
            return add_form(binder, base, text.strip())[0]
        values: dict[str, Reading] = {
            "name": text.strip,
            "good_from_days": lambda: typed_days(binder, text),
            "keeps_days": lambda: typed_days(binder, text),
        }
        return set_food(binder.foods[record_of(row).id], **{column: values[column]()})

    def remove(self, sight: Sight, rows: Sequence[str]) -> Change | None:
        foods = [sight.binder.foods[record_of(row).id] for row in rows if row != ADD_FORM]
        forms = [food for food in foods if food.form_of is not None]
        if not forms:
            return None
        one = _("Remove the form {form}").format(form=forms[0].name)
        label = ngettext("{one}", "Remove {count} forms", len(forms)).format(one=one, count=len(forms))
        return remove(label, sight.binder, *forms)


def typed_days(binder: Binder, text: str) -> int | None:
    """Whole days of `3`, `3 days`, `3 d`; None where the text is empty."""
    plain = text.strip().casefold()
    for word in (_("days"), _("day"), "d"):
        plain = plain.removesuffix(word).strip()
    number = typed_optional_number(binder, plain)
    if number is not None and number != int(number):
        raise UnreadableError(text, _("write whole days, such as 3 days."))
    return None if number is None else int(number)


def days_text(binder: Binder, days: int | None) -> str:
    """`3 days`; empty for none."""
    if days is None:
        return ""
    return ngettext("{count} day", "{count} days", days).format(count=number_text(binder, days))


def _days(binder: Binder, days: int | None) -> Cell:
    return Cell(days_text(binder, days), edit=days_text(binder, days), placeholder="–")


def _weights(binder: Binder, balance: BaseBalance, form: FormBalance) -> tuple[Cell, ...]:
    is_base = form.form == balance.base
    made = balance.there_is if is_base else form.made
    left = balance.left if is_base else form.left
    return (*(_weight(binder, one) for one in (made, form.used, form.taken)), _left(binder, left))


def _weight(binder: Binder, grams: float | None) -> Cell:
    if grams is None:
        return _UNKNOWN
    if not grams:
        return Cell("–", tone=Tone.QUIET, spoken=_("none"))
    number, unit = grams_parts(binder, grams)
    return Cell(number, unit)


def _left(binder: Binder, grams: float | None) -> Cell:
    if grams is not None and grams < 0:
        number, unit = grams_parts(binder, -grams)
        return Cell(f"−{number}", unit, tone=Tone.STOP, spoken=_("{grams} short").format(grams=f"{number} {unit}"))
    return _weight(binder, grams)


def _paled(cell: Cell) -> Cell:
    from dataclasses import replace

    return replace(cell, tone=Tone.QUIET, spoken=_("{figure}, being worked out again").format(figure=cell.says))


def _short_text(binder: Binder, figures: BaseFigures | None, form: Food) -> str:
    short = figures.bottleneck if figures else None
    if short is None or short.form != form.id:
        return ""
    return _("runs out: {grams} short").format(grams=grams_text(short.short, number_style(binder)))


def _weighing(binder: Binder, form: Food) -> Cell:
    """What the larder knows of its weights; leads there."""
    place = Place("foods", form.id)
    parts = [_("{number} g/ml").format(number=number_text(binder, form.density))] if form.density else []
    count = len(binder.measures.where("food", form.id))
    parts += [ngettext("{count} measure", "{count} measures", count).format(count=count)] if count else []
    return Cell(", ".join(parts) or _("add weights"), leads_to=place, tip=_("Opens the larder"))


def _adding(base: Food) -> Row:
    says = _("Add a form of {base}: what it is called").format(base=base.name)
    return Row(ADD_FORM, (Cell(edit="", placeholder=says), *(NOTHING,) * 7), spans=((0, 8),), rule=False, adds=True)
