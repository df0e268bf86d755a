"""The wrap report as an XLSX workbook: the books by who used the food and by food, the budget, and caps as bought."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import TYPE_CHECKING

from binder.exchange.shopping_table import Column, Kind, whole_money
from binder.exchange.workbook_writing import fill, new_workbook, number_formats, saved
from binder.figures.budget_rows import bearer_text
from binder.figures.buying_words import one_line
from binder.figures.cap_basis import basis_text
from binder.figures.wrap import shoot_wrap
from binder.kitchen.money import minor_digits
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence
    from datetime import date

    from binder.exchange.shopping_table import Value
    from binder.figures.budget_rows import Amounts
    from binder.figures.cost import DishCost
    from binder.figures.wrap import Account, FoodAccount, Wrap
    from binder.kitchen.binder import Binder

Row = tuple["Value | date", ...]
_FINE = 4
"""More decimals of a portion's cost than money has: it is compared with its cap unrounded."""


def wrap_workbook(binder: Binder, shoot_id: str) -> bytes:
    """An XLSX file: accounts whose columns add up to their last row, to the minor unit."""
    wrap, book, formats = shoot_wrap(binder, shoot_id), new_workbook(), number_formats(binder)
    pages: list[tuple[str, Sequence[Column], Iterable[Row]]] = [
        (_("By who used it"), _account_columns(binder), _bearer_rows(binder, wrap)),
        (_("By food"), _food_columns(binder), _food_rows(binder, wrap)),
        (_("Budget"), _budget_columns(binder), _budget_rows(binder, wrap)),
    ]
    if wrap.caps:
        pages.append((_("Caps as bought"), _cap_columns(binder, shoot_id), _cap_rows(binder, wrap)))
    for at, (title, columns, rows) in enumerate(pages):
        sheet = book.worksheets[0] if at == 0 else book.create_sheet()
        sheet.title = title
        fill(sheet, columns, rows, formats)
    return saved(book)


def _money(binder: Binder, heading: str) -> Column:
    return Column(f"{heading} ({binder.settings.currency})", Kind.MONEY, 16)


def _account_columns(binder: Binder) -> tuple[Column, ...]:
    headings = (_("planned"), _("paid"), _("still open"), _("over or under"))
    return (Column(_("what"), Kind.TEXT, 32), *(_money(binder, heading) for heading in headings))


def _account(binder: Binder, account: Account) -> Row:
    figures = (account.planned, account.paid, account.open, account.variance)
    return tuple(whole_money(binder, minor) for minor in figures)


def _bearer_rows(binder: Binder, wrap: Wrap) -> Iterator[Row]:
    for one in wrap.bearers:
        yield (one_line(bearer_text(binder, one.bearer)), *_account(binder, one.account))
    yield (_("Food in all"), *_account(binder, wrap.total))


def _food_columns(binder: Binder) -> tuple[Column, ...]:
    more = (Column(_("grams left over"), Kind.GRAMS, 16), _money(binder, _("worth")), Column(_("note"), Kind.TEXT, 36))
    return (*_account_columns(binder), *more)


def _food_rows(binder: Binder, wrap: Wrap) -> Iterator[Row]:
    for one in wrap.foods:
        left = round(one.left, 1) + 0.0
        worth = whole_money(binder, one.worth)
        yield (one_line(one.receipt.name), *_account(binder, one.account), left, worth, _note(one) or None)
    for receipt in wrap.not_planned:
        yield (one_line(receipt.name), *(None,) * 6, _("its price was not known, and it has no receipt"))
    yield (_("Food in all"), *_account(binder, wrap.total), None, whole_money(binder, wrap.worth), None)


def _note(one: FoodAccount) -> str:
    if one.without:
        return _("not to be had")
    return _("taken instead: {foods}").format(foods=one_line(listed(one.instead))) if one.instead else ""


def _budget_columns(binder: Binder) -> tuple[Column, ...]:
    headings = (_("planned"), _("committed"), _("actual"), _("expected"), _("over"))
    return (
        Column(_("what"), Kind.TEXT, 32),
        Column(_("heading"), Kind.TEXT, 20),
        *(_money(binder, heading) for heading in headings),
    )


def _budget_rows(binder: Binder, wrap: Wrap) -> Iterator[Row]:
    budget = wrap.budget
    for row in (*budget.rows, *(() if budget.tax_contained else budget.tax)):
        yield (one_line(row.name), one_line(row.heading) or None, *_amounts(binder, row.amounts))
    yield (_("In all"), None, *_amounts(binder, budget.total))
    yield (_("Budget"), None, *(None,) * 3, whole_money(binder, budget.allowed), None)
    yield (_("Left of the budget"), None, *(None,) * 3, whole_money(binder, budget.room), None)
    for row in budget.tax if budget.tax_contained else ():
        name = _("{tax}, contained in the prices").format(tax=one_line(row.name))
        yield (name, None, *_amounts(binder, row.amounts))


def _amounts(binder: Binder, amounts: Amounts) -> Row:
    figures = (amounts.planned, amounts.committed, amounts.actual, amounts.expected, amounts.over)
    return tuple(whole_money(binder, minor) for minor in figures)


def _cap_columns(binder: Binder, shoot_id: str) -> tuple[Column, ...]:
    basis = basis_text(binder.shoots[shoot_id].cap_basis)
    headings = (_("planned a portion, {basis}").format(basis=basis), _("as bought"), _("cap"))
    return (
        Column(_("dish"), Kind.TEXT, 32),
        *(replace(_money(binder, heading), kind=Kind.TEXT, characters=24) for heading in headings),
        Column(_("state"), Kind.TEXT, 14),
    )


def _cap_rows(binder: Binder, wrap: Wrap) -> Iterator[Row]:
    for one in wrap.caps:
        after = one.after
        cap = whole_money(binder, after.cap)
        yield (one_line(after.name), _portion(binder, one.before), _portion(binder, after), cap, _(after.verdict.value))


def _portion(binder: Binder, cost: DishCost) -> Decimal | None:
    """What a portion costs, in whole units of the currency, fine enough to be held beside its cap."""
    if cost.per_portion is None:
        return None
    digits = minor_digits(binder.settings.currency)
    return round(Decimal(repr(cost.per_portion)).scaleb(-digits), digits + _FINE)
