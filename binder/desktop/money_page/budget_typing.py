"""A cost of the producer's own as it is typed whole: `gas bottle, 2 × 24.50`. Plain Python."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from binder.desktop.words.figure_text import number_text
from binder.desktop.words.typed import UnreadableError, typed_money, typed_number
from binder.figures.money_words import money
from binder.kitchen.edits.money import add_budget_line, set_budget_line
from binder.kitchen.errors import BinderError
from binder.kitchen.number import NUMBER_PATTERN
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.budget import BudgetLine
    from binder.kitchen.change import Change
    from binder.kitchen.shoot import Shoot

_WHOLE = re.compile(
    rf"^(?P<name>.+?)\s*[,;:]\s*(?:(?P<count>{NUMBER_PATTERN})\s*[^\W\d]*\.?\s*[x×*@]\s*)?(?P<rate>\D{{0,4}}\d[^x×*@]*)$"
)


def typed_line(binder: Binder, shoot: Shoot, text: str) -> Change:
    """The line that a text adds; one without a price is planned at nothing until it is given one."""
    name, quantity, rate = _read(binder, text)
    if not name:
        raise UnreadableError(text, _("write what it is and what it costs, such as gas bottle, 2 × 24.50."))
    return add_budget_line(binder, shoot, name, quantity=quantity, rate=rate)[0]


def _read(binder: Binder, text: str) -> tuple[str, float, int]:
    plain = text.strip()
    found = _WHOLE.match(plain)
    if found is None:
        return plain, 1.0, 0
    quantity = typed_number(binder, found["count"]) if found["count"] else 1.0
    try:
        rate = typed_money(binder, found["rate"])
    except BinderError:
        if found["count"]:
            raise
        return plain, 1.0, 0
    return found["name"], quantity, rate or 0


def understood_line(binder: Binder, text: str) -> str:
    """What a text is taken to add: `gas bottle: 2 at $24.50`."""
    try:
        name, quantity, rate = _read(binder, text)
    except BinderError:
        return ""
    if not name or not rate:
        return ""
    says = _("{name}: {quantity} at {rate}")
    return says.format(name=name, quantity=number_text(binder, quantity), rate=money(binder, rate))


def typed_budget_cell(binder: Binder, line: BudgetLine, column: str, text: str, *, taxed: bool | None) -> Change:
    """The change that typing into a cell of a line is; `taxed` is what the text says where that is the cell."""
    if column == "quantity":
        return set_budget_line(line, quantity=typed_number(binder, text) if text.strip() else 1.0)
    if column == "rate":
        return set_budget_line(line, rate=typed_money(binder, text) or 0)
    if column in {"committed", "actual"}:
        return set_budget_line(line, **{column: typed_money(binder, text)})
    if column == "taxed":
        return set_budget_line(line, taxed=taxed)
    return set_budget_line(line, **{column: " ".join(text.split())})
