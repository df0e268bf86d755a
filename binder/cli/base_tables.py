"""What `binder base` shows to people."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.cli.columns import numbers, words
from binder.cli.heading import show_heading
from binder.cli.marks import base_mark
from binder.cli.terminal import say, say_marked, show_table
from binder.figures.base import BaseBalance, FormBalance, base_balance
from binder.figures.base_repairs import base_repairs, bottleneck
from binder.figures.date_text import date_text, time_text
from binder.figures.duration_text import duration_text
from binder.figures.leads import Lead, shoot_leads
from binder.figures.portion_text import number_style
from binder.kitchen.amount_text import grams_text
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Dish, Shoot

NOT_KNOWN = "–"


def show_base(binder: Binder, shoot: Shoot) -> None:
    """How much base there is and is needed, what becomes of it, and which dish takes what."""
    show_heading(binder, shoot)
    balance = base_balance(binder, shoot.id)
    if balance is None:
        say(_("The shoot has no base ingredient: choose one."))
        return
    say(_summary(binder, balance))
    for lack in balance.missing:
        say_marked("◌", lack.says)
    if short := bottleneck(binder, shoot.id):
        say_marked("◣", short.says)
    for repair in base_repairs(binder, shoot.id):
        say_marked("→", repair.says)
    say()
    columns = [words(_("Form")), numbers(_("Made")), numbers(_("Into dishes")), numbers(_("Into other forms"))]
    show_table([*columns, numbers(_("Left"))], [_form_row(binder, balance, form) for form in balance.forms])
    _show_runs(binder, shoot)
    _show_dishes(binder, shoot, balance)


def _summary(binder: Binder, balance: BaseBalance) -> str:
    says = _("{base}: there is {there_is}, needed {needed}. {verdict}")
    return says.format(
        base=balance.name,
        there_is=_weight(binder, balance.there_is),
        needed=_weight(binder, balance.needed),
        verdict=base_mark(balance.verdict),
    )


def _weight(binder: Binder, grams: float | None) -> str:
    return NOT_KNOWN if grams is None else grams_text(grams, number_style(binder))


def _form_row(binder: Binder, balance: BaseBalance, form: FormBalance) -> list[str]:
    is_base = form.form == balance.base
    made = _("(bought)") if is_base else _weight(binder, form.made)
    left = balance.left if is_base else form.left
    shown_left = None if left is None else max(0.0, left)
    return [
        form.name,
        made,
        _weight(binder, form.used),
        _weight(binder, form.taken),
        _weight(binder, shown_left),
    ]


def _show_runs(binder: Binder, shoot: Shoot) -> None:
    leads = shoot_leads(binder, shoot.id)
    if leads:
        say()
        columns = [words(_("Done to it")), words(_("Takes")), numbers(_("So much")), words(_("Start by"))]
        show_table(
            columns, [[lead.name, lead.takes, _weight(binder, lead.grams), _start(binder, lead)] for lead in leads]
        )


def _start(binder: Binder, lead: Lead) -> str:
    if lead.starts is None:
        return _("{duration} before call").format(duration=duration_text(lead.minutes_before))
    day, of_day = date_text(binder, lead.starts.date()), time_text(binder, lead.starts.time())
    return _("{date}, {time}").format(date=day, time=of_day)


def _show_dishes(binder: Binder, shoot: Shoot, balance: BaseBalance) -> None:
    rows = [row for dish in binder.dishes.where("shoot", shoot.id) for row in _dish_rows(binder, dish, balance)]
    if rows:
        say()
        columns = [numbers("#"), words(_("Dish")), words(_("Form")), numbers(_("All its builds take"))]
        show_table(columns, rows)


def _dish_rows(binder: Binder, dish: Dish, balance: BaseBalance) -> list[list[str]]:
    """A row for each form a dish takes; the dish stands in the first."""
    uses = balance.by_dish.get(dish.id, {})
    taken = [[binder.foods[form].name, _weight(binder, grams)] for form, grams in uses.items()]
    titles = [[str(dish.position + 1), dish_name(binder, dish)], *(["", ""] for _form in taken)]
    return [[*title, *cells] for title, cells in zip(titles, taken, strict=False)]
