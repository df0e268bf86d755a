"""The shopping list as one table: a row a line, and what each column holds. CSV and XLSX write the same one."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import Enum, auto
from typing import TYPE_CHECKING

from binder.exchange.shopping_lines import lines_without_packs, shopping_trips
from binder.kitchen.money import minor_digits
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator
    from datetime import date

    from binder.exchange.shopping_lines import ShoppingLine
    from binder.kitchen.binder import Binder


class Kind(Enum):
    """What a column holds, for whoever writes it."""

    TEXT = auto()
    DAY = auto()
    COUNT = auto()
    GRAMS = auto()
    MONEY = auto()


@dataclass(frozen=True)
class Column:
    """A column by its heading; `characters` is a width that suits it."""

    heading: str
    kind: Kind
    characters: int


Value = str | int | float | Decimal | None
"""Texts, counts, grams, and money in whole units of the currency."""


def shopping_columns(binder: Binder) -> tuple[Column, ...]:
    """The columns, their units and the currency in their headings."""
    money = f" ({binder.settings.currency})"
    return (
        Column(_("day"), Kind.DAY, 12),
        Column(_("store"), Kind.TEXT, 22),
        Column(_("section"), Kind.TEXT, 20),
        Column(_("food"), Kind.TEXT, 24),
        Column(_("take"), Kind.TEXT, 26),
        Column(_("packs"), Kind.COUNT, 8),
        Column(_("pack"), Kind.TEXT, 20),
        Column(_("grams bought"), Kind.GRAMS, 14),
        Column(_("price a pack") + money, Kind.MONEY, 18),
        Column(_("offer"), Kind.TEXT, 14),
        Column(_("to pay") + money, Kind.MONEY, 14),
        Column(_("deposit") + money, Kind.MONEY, 14),
        Column(_("grams needed"), Kind.GRAMS, 14),
        Column(_("grams at home"), Kind.GRAMS, 14),
        Column(_("grams left over"), Kind.GRAMS, 16),
        Column(_("price of"), Kind.DAY, 12),
        Column(_("order by"), Kind.DAY, 12),
        Column(_("done"), Kind.TEXT, 14),
        Column(_("note"), Kind.TEXT, 30),
    )


def shopping_rows(binder: Binder, shoot_id: str) -> Iterator[tuple[Value | date, ...]]:
    """The rows by trip and in walking order, then what is not fetched; a value for each column."""
    for trip in shopping_trips(binder, shoot_id):
        for line in trip.lines:
            yield (trip.on, trip.store or _("any store"), *_values(binder, line))
    for line in lines_without_packs(binder, shoot_id):
        yield (None, None, *_values(binder, line))


def _values(binder: Binder, line: ShoppingLine) -> tuple[Value | date, ...]:
    taken = line.taken
    return (
        _(line.section),
        line.food,
        line.take or None,
        None if taken is None or taken.priced.pack.by_weight else taken.count,
        line.pack or None,
        _grams(taken.grams if taken else None),
        whole_money(binder, taken.priced.price if taken else None),
        line.offer or None,
        whole_money(binder, line.price),
        whole_money(binder, line.deposit),
        _grams(line.needed),
        _grams(line.at_home),
        _grams(line.left_over),
        taken.priced.quote.on if taken else None,
        line.order_by,
        line.done or None,
        line.note or None,
    )


def _grams(weight: float | None) -> float | None:
    """Grams to a tenth: finer than any scale on the set."""
    return None if weight is None else round(weight, 1) + 0.0


def whole_money(binder: Binder, minor: int | None) -> Decimal | None:
    """Minor units in whole ones of the currency, with exactly its own decimals."""
    return None if minor is None else Decimal(minor).scaleb(-minor_digits(binder.settings.currency))
