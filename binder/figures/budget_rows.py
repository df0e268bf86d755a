"""The lines of a budget: food by who uses it, trips, the producer's own, tax by rate, contingency."""

from __future__ import annotations

import math
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from enum import StrEnum
from typing import TYPE_CHECKING

from binder.figures.bought_uses import bought_uses
from binder.figures.demand import dish_batches
from binder.figures.missing import Missing, Place
from binder.figures.money_words import rate_text
from binder.figures.receipts import FoodReceipt, food_receipts
from binder.figures.tax import food_tax_rate, tax_rate, tax_rows
from binder.figures.till_shares import Bearer, BearerKind, bearers, borne, food_uses
from binder.figures.trips import trip_plans
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Sequence

    from binder.kitchen.binder import Binder
    from binder.kitchen.budget import BudgetLine
    from binder.kitchen.shoot import Dish


class RowKind(StrEnum):
    """What a row of the budget is for."""

    DISH = "dish"
    TASTING = "tasting"
    LEFT_OVER = "left over in packs"
    BASE_REST = "rest of the base"
    TRIPS = "trips to stores"
    OWN = "the producer's own"
    TAX = "tax"
    CONTINGENCY = "contingency"


@dataclass(frozen=True)
class Amounts:
    """Minor units of one line: None where a column has nothing yet, or where what was planned is not known.

    `expected` is the best that is known: what was paid, else what was committed, else what was planned.
    """

    planned: int | None
    committed: int | None
    actual: int | None
    expected: int | None

    @property
    def over(self) -> int | None:
        """What is expected beyond the plan; below zero where it is under."""
        return None if self.planned is None or self.expected is None else self.expected - self.planned


@dataclass(frozen=True)
class BudgetRow:
    """One line of the budget, what it is of and where a click on it leads."""

    kind: RowKind
    name: str
    heading: str
    amounts: Amounts
    place: Place
    taxed: bool = True


def added(amounts: Sequence[Amounts]) -> Amounts:
    """The sum of lines: not known in a column where a plan is not, nothing where no line has anything yet."""
    return Amounts(
        planned=_sum_known([one.planned for one in amounts]),
        committed=_sum_given([one.committed for one in amounts]),
        actual=_sum_given([one.actual for one in amounts]),
        expected=_sum_known([one.expected for one in amounts]),
    )


def _sum_known(values: Sequence[int | None]) -> int | None:
    given = [value for value in values if value is not None]
    return sum(given) if len(given) == len(values) else None


def _sum_given(values: Sequence[int | None]) -> int | None:
    given = [value for value in values if value is not None]
    return sum(given) if given else None


_KIND = {
    BearerKind.DISH: RowKind.DISH,
    BearerKind.TASTING: RowKind.TASTING,
    BearerKind.LEFT_OVER: RowKind.LEFT_OVER,
    BearerKind.BASE_REST: RowKind.BASE_REST,
}


def food_rows(binder: Binder, shoot_id: str) -> list[BudgetRow]:
    """Food by who uses it; the rows add up to what is paid at the till in every column."""
    receipts = food_receipts(binder, shoot_id)
    planned = divided_by(binder, shoot_id, receipts, lambda one: (one.planned, one.planned_grams))
    committed = divided_by(binder, shoot_id, receipts, lambda one: (one.committed, one.committed_grams))
    actual = divided_by(binder, shoot_id, receipts, lambda one: (one.paid, one.paid_grams))
    expected = divided_by(binder, shoot_id, receipts, lambda one: (one.expected, one.expected_grams))
    unknown = _not_known(binder, shoot_id, receipts)
    rows = []
    for bearer in bearers(binder, shoot_id):
        amounts = Amounts(
            planned=None if bearer in unknown else planned.get(bearer, 0),
            committed=committed.get(bearer),
            actual=actual.get(bearer),
            expected=None if bearer in unknown else expected.get(bearer, 0),
        )
        if bearer.kind is BearerKind.DISH or amounts != Amounts(0, None, None, 0):
            rows.append(_food_row(binder, shoot_id, bearer, amounts))
    return rows


def divided_by(
    binder: Binder,
    shoot_id: str,
    receipts: Iterable[FoodReceipt],
    column: Callable[[FoodReceipt], tuple[int | None, float]],
) -> dict[Bearer, int]:
    """A column of the receipts, minor units and grams of each food, divided over those who bear it."""
    totals: dict[Bearer, int] = {}
    for receipt in receipts:
        minor, grams = column(receipt)
        for bearer, part in borne(binder, shoot_id, receipt.food, minor, grams).items() if minor is not None else ():
            totals[bearer] = totals.get(bearer, 0) + part
    return totals


def _not_known(binder: Binder, shoot_id: str, receipts: Iterable[FoodReceipt]) -> set[Bearer]:
    """Those who use a food that has no price, and the dishes of which it is not known what they use."""
    uses = food_uses(binder, shoot_id)
    unpriced = {bearer for one in receipts if one.planned is None for bearer in uses.get(one.food, {})}
    dishes = (dish for dish in binder.dishes.where("shoot", shoot_id) if not _is_weighed(binder, dish))
    return unpriced | {Bearer(BearerKind.DISH, dish.id) for dish in dishes}


def _is_weighed(binder: Binder, dish: Dish) -> bool:
    """Whether all that a dish uses is known by weight."""
    uses = bought_uses(binder, dish.recipe)
    return not isinstance(dish_batches(binder, dish.id), Missing) and not any(isinstance(use, Missing) for use in uses)


def _food_row(binder: Binder, shoot_id: str, bearer: Bearer, amounts: Amounts) -> BudgetRow:
    place = Place("dishes", bearer.dish) if bearer.dish else Place("shoots", shoot_id)
    return BudgetRow(_KIND[bearer.kind], bearer_text(binder, bearer), _("Food"), amounts, place)


def bearer_text(binder: Binder, bearer: Bearer) -> str:
    """Who bears a part of what is paid, in words."""
    if bearer.kind is BearerKind.DISH:
        dish = binder.dishes[bearer.dish]
        return _("{number} {dish}").format(number=dish.position + 1, dish=dish_name(binder, dish))
    return {
        BearerKind.TASTING: _("The crew's tasting"),
        BearerKind.LEFT_OVER: _("Left over in packs"),
        BearerKind.BASE_REST: _("Rest of the base"),
    }[bearer.kind]


def trip_rows(binder: Binder, shoot_id: str) -> list[BudgetRow]:
    """What going to the stores costs, trip by trip as they are planned."""
    stores = (binder.stores[plan.store] for plan in trip_plans(binder, shoot_id) if plan.store)
    costs = [store.trip_cost for store in stores if store.trip_cost]
    if not costs:
        return []
    amounts = Amounts(sum(costs), None, None, sum(costs))
    return [BudgetRow(RowKind.TRIPS, _("Trips to stores"), "", amounts, Place("shoots", shoot_id), taxed=False)]


def own_rows(binder: Binder, shoot_id: str) -> list[BudgetRow]:
    """The lines of the producer's own."""
    return [
        BudgetRow(
            RowKind.OWN, line.name, line.heading, own_amounts(line), Place("budget_lines", line.id), taxed=line.taxed
        )
        for line in binder.budget_lines.where("shoot", shoot_id)
    ]


def own_amounts(line: BudgetLine) -> Amounts:
    """A line of the producer's own: so many at a rate, halves of a minor unit rounded up."""
    exact = Decimal(repr(line.quantity)) * line.rate
    planned = int(exact.quantize(Decimal(1), ROUND_HALF_UP))
    known = (line.actual, line.committed, planned)
    return Amounts(planned, line.committed, line.actual, next(amount for amount in known if amount is not None))


def tax_by_rate(binder: Binder, shoot_id: str) -> list[BudgetRow]:
    """Tax by rate in every column, on food by its section and on what is taxed of the producer's own."""
    receipts = food_receipts(binder, shoot_id)
    foods = [(food_tax_rate(binder, shoot_id, one.food), one) for one in receipts]
    own = [own_amounts(line) for line in binder.budget_lines.where("shoot", shoot_id) if line.taxed]
    else_rate = tax_rate(binder, shoot_id)
    contained = binder.shoots[shoot_id].prices_taxed

    def column(
        of_food: Callable[[FoodReceipt], int | None], of_own: Callable[[Amounts], int | None]
    ) -> dict[float, int]:
        amounts = [(rate, of_food(one)) for rate, one in foods] + [(else_rate, of_own(one)) for one in own]
        given = [(rate, minor) for rate, minor in amounts if minor is not None]
        return {row.rate: row.tax for row in tax_rows(given, contained=contained)}

    planned = column(lambda one: one.planned, lambda one: one.planned)
    committed = column(lambda one: one.committed, lambda one: one.committed)
    actual = column(lambda one: one.paid, lambda one: one.actual)
    expected = column(lambda one: one.expected, lambda one: one.expected)
    unknown = {rate for rate, one in foods if one.planned is None}
    return [
        BudgetRow(
            RowKind.TAX,
            _("Tax of {percent}").format(percent=rate_text(binder, rate)),
            "",
            Amounts(
                None if rate in unknown else planned.get(rate, 0),
                committed.get(rate),
                actual.get(rate),
                None if rate in unknown else expected.get(rate, 0),
            ),
            Place("shoots", shoot_id),
            taxed=False,
        )
        for rate in sorted({*planned, *expected, *(rate for rate in unknown if rate > 0)})
    ]


def contingency_rows(binder: Binder, shoot_id: str, planned: int) -> list[BudgetRow]:
    """What is kept back of the budget; of what is planned where the shoot has no budget."""
    shoot = binder.shoots[shoot_id]
    if not shoot.contingency:
        return []
    whole = planned if shoot.budget is None else shoot.budget
    kept = math.floor(whole * shoot.contingency + 0.5)
    amounts = Amounts(kept, None, None, kept)
    return [BudgetRow(RowKind.CONTINGENCY, _("Contingency"), "", amounts, Place("shoots", shoot_id), taxed=False)]
