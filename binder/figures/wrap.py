"""After the shoot: what was paid against what was planned, by food and by dish, and what is left over.

Planned and variance together are what was paid and what is still open, to the minor unit, in every row and in all.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.as_bought import CapAfter, caps_as_bought
from binder.figures.budget import Budget, shoot_budget
from binder.figures.budget_rows import divided_by
from binder.figures.memory import PLANS, remembered_from
from binder.figures.receipts import FoodReceipt, food_receipts
from binder.figures.shopping import at_home, needed_to_buy
from binder.figures.till_shares import LEFT_OVER, Bearer, bearers, borne

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

    from binder.kitchen.binder import Binder


@dataclass(frozen=True)
class Account:
    """Minor units: planned, paid by receipts, and still open (ticked or listed, without a receipt yet)."""

    planned: int
    paid: int
    open: int

    @property
    def variance(self) -> int:
        """What it came, and is still expected to come, to beyond the plan; below zero where it is under."""
        return self.paid + self.open - self.planned


@dataclass(frozen=True)
class FoodAccount:
    """A food: its account, and of what was paid for grams left over beyond all need, with what these are worth.

    `instead` are the names of foods that were taken for it; `without` says that it was not to be had, nor another.
    """

    receipt: FoodReceipt
    account: Account
    left: float
    worth: int
    instead: tuple[str, ...]
    without: bool


@dataclass(frozen=True)
class BearerAccount:
    """A dish, the tasting, or what is left over: its account over all foods."""

    bearer: Bearer
    account: Account


@dataclass(frozen=True)
class Wrap:
    """The closed books of a shoot: `total` is the food, `budget` all else with it; `worth` what is left over, paid for.

    `not_planned` are foods whose price was not known when the list was made and that have no receipt: they are not in
    the accounts.
    """

    foods: tuple[FoodAccount, ...]
    bearers: tuple[BearerAccount, ...]
    total: Account
    worth: int
    caps: tuple[CapAfter, ...]
    budget: Budget
    not_planned: tuple[FoodReceipt, ...]

    @property
    def unsettled(self) -> tuple[FoodReceipt, ...]:
        """Foods that have neither a price nor a receipt, ticked or not: what they cost is in no sum."""
        ticked = (one for one in self.foods if one.receipt.purchases and one.receipt.waits)
        return (*(one.receipt for one in ticked if not one.account.open), *self.not_planned)

    @property
    def closes(self) -> bool:
        """Whether foods and bearers each add up to the whole, in every column."""
        by_food, by_bearer = (added([one.account for one in ones]) for ones in (self.foods, self.bearers))
        return by_food == self.total == by_bearer


def added(accounts: Sequence[Account]) -> Account:
    """The sum of accounts."""
    return Account(
        sum(one.planned for one in accounts), sum(one.paid for one in accounts), sum(one.open for one in accounts)
    )


@remembered_from(PLANS | {"purchases", "budget_lines", "tax_rates"})
def shoot_wrap(binder: Binder, shoot_id: str) -> Wrap:
    """The books of a shoot as they stand: closed once nothing is open."""
    receipts = food_receipts(binder, shoot_id)
    known = [one for one in receipts if one.planned is not None]
    foods = tuple(_food(binder, shoot_id, one) for one in known)
    paid = sum(purchase.paid or 0 for purchase in binder.purchases.where("shoot", shoot_id))
    expected = sum(one.expected or 0 for one in known)
    return Wrap(
        foods=foods,
        bearers=tuple(_bearers(binder, shoot_id, known)),
        total=Account(sum(one.planned or 0 for one in known), paid, expected - paid),
        worth=sum(one.worth for one in foods),
        caps=caps_as_bought(binder, shoot_id),
        budget=shoot_budget(binder, shoot_id),
        not_planned=tuple(one for one in receipts if one.planned is None),
    )


def _food(binder: Binder, shoot_id: str, receipt: FoodReceipt) -> FoodAccount:
    paid = receipt.paid or 0
    needed = needed_to_buy(binder, shoot_id).get(receipt.food, 0.0) - at_home(binder, shoot_id).get(receipt.food, 0.0)
    shares = borne(binder, shoot_id, receipt.food, paid, receipt.paid_grams)
    others = (one.instead for one in receipt.purchases if one.instead is not None and one.instead != receipt.food)
    return FoodAccount(
        receipt=receipt,
        account=Account(receipt.planned or 0, paid, (receipt.expected or 0) - paid),
        left=max(0.0, receipt.paid_grams - max(0.0, needed)),
        worth=shares.get(LEFT_OVER, 0),
        instead=tuple(dict.fromkeys(binder.foods[other].name for other in others)),
        without=bool(receipt.purchases) and not any(one.count for one in receipt.purchases),
    )


def _bearers(binder: Binder, shoot_id: str, receipts: list[FoodReceipt]) -> Iterator[BearerAccount]:
    """The accounts of all who bear something, and of every dish."""

    def column(of: Callable[[FoodReceipt], tuple[int | None, float]]) -> dict[Bearer, int]:
        return divided_by(binder, shoot_id, receipts, of)

    planned = column(lambda one: (one.planned, one.planned_grams))
    paid = column(lambda one: (one.paid, one.paid_grams))
    expected = column(lambda one: (one.expected, one.expected_grams))
    for bearer in bearers(binder, shoot_id):
        settled = paid.get(bearer, 0)
        account = Account(planned.get(bearer, 0), settled, expected.get(bearer, 0) - settled)
        if bearer.dish or account != Account(0, 0, 0):
            yield BearerAccount(bearer, account)
