"""Tax on what is bought, by the section it stands in: contained in the prices on the shelf, or added at the till."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from typing import TYPE_CHECKING

from binder.figures.memory import remembered_from

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from binder.kitchen.binder import Binder


@dataclass(frozen=True)
class TaxRow:
    """What is taxed at one rate (a part of the price, 0.07) and the tax on it, minor units, rounded once for all."""

    rate: float
    taxed: int
    tax: int


@remembered_from(frozenset({"tax_rates"}))
def _rates(binder: Binder, shoot_id: str) -> Mapping[str | None, float]:
    """The first rate given for each section, and under None the one for all else."""
    rates: dict[str | None, float] = {}
    for tax in binder.tax_rates.where("shoot", shoot_id):
        rates.setdefault(tax.section.value if tax.section else None, tax.rate)
    return rates


def tax_rate(binder: Binder, shoot_id: str, section: str | None = None) -> float:
    """The tax on a section as a part of the price; of what has no rate, or no section, the rate for all else, or 0."""
    rates = _rates(binder, shoot_id)
    return rates.get(section, rates.get(None, 0.0))


def food_tax_rate(binder: Binder, shoot_id: str, food_id: str) -> float:
    """The tax on a food as a part of its price."""
    return tax_rate(binder, shoot_id, binder.foods[food_id].section.value)


def is_taxed(binder: Binder, shoot_id: str) -> bool:
    """Whether anything at all is taxed."""
    return any(rate > 0 for rate in _rates(binder, shoot_id).values())


def with_tax(binder: Binder, shoot_id: str, food_id: str, minor: float) -> float:
    """A price on the shelf with tax, minor units, not rounded."""
    return minor if binder.shoots[shoot_id].prices_taxed else minor * (1 + food_tax_rate(binder, shoot_id, food_id))


def without_tax(binder: Binder, shoot_id: str, food_id: str, minor: float) -> float:
    """A price on the shelf without tax, minor units, not rounded."""
    return minor / (1 + food_tax_rate(binder, shoot_id, food_id)) if binder.shoots[shoot_id].prices_taxed else minor


def tax_on(minor: int, rate: float, *, contained: bool) -> int:
    """The tax on (or contained in) minor units at a rate, halves rounded up."""
    part = Decimal(repr(rate))
    tax = minor * part / (1 + part) if contained else minor * part
    return int(tax.quantize(Decimal(1), ROUND_HALF_UP))


def tax_rows(amounts: Iterable[tuple[float, int]], *, contained: bool) -> tuple[TaxRow, ...]:
    """The tax on amounts, each with its rate, added up by rate as a receipt does; what is not taxed has no row."""
    by_rate: dict[float, int] = {}
    for rate, minor in amounts:
        if rate > 0:
            by_rate[rate] = by_rate.get(rate, 0) + minor
    return tuple(
        TaxRow(rate, minor, tax_on(minor, rate, contained=contained)) for rate, minor in sorted(by_rate.items())
    )
