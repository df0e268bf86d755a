"""The checks: everything about a shoot that needs someone, in plain sentences, the worst first."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from binder.figures.base import BaseVerdict, base_balance
from binder.figures.base_repairs import base_repairs, bottleneck
from binder.figures.budget import shoot_budget
from binder.figures.cap_basis import basis_text, portion_by_food
from binder.figures.claims import ClaimVerdict, claim_findings, verdict_text
from binder.figures.cost import DishCost, Verdict, shoot_costs
from binder.figures.day_lacks import day_lacks
from binder.figures.demand import builds_of
from binder.figures.leads import shelf_life_clashes
from binder.figures.memory import remembered
from binder.figures.missing import Missing, Place
from binder.figures.money_words import money, money_beside
from binder.figures.old_prices import old_price_text, old_prices
from binder.figures.safety import doneness_needed, recipe_allergens
from binder.figures.shopping import shopping_list
from binder.figures.spend import shoot_spend
from binder.figures.temperature_text import doneness_text
from binder.figures.trips import buying_clashes
from binder.kitchen.reference import deference
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from binder.kitchen.binder import Binder


class Severity(StrEnum):
    """How much a check matters: it stops the shoot, it wants a look, or it is worth knowing."""

    STOP = "stop"
    WARN = "warn"
    NOTE = "note"


@dataclass(frozen=True)
class Check:
    """One finding: what kind, where, how grave, and the sentence."""

    kind: str
    severity: Severity
    place: Place
    where: str
    says: str


@remembered
def shoot_checks(binder: Binder, shoot_id: str) -> tuple[Check, ...]:
    """All findings of a shoot, the gravest first, then in running order."""
    found = [
        *_cost_checks(binder, shoot_id),
        *_base_checks(binder, shoot_id),
        *_lacking(binder, shoot_id),
        *_budget_checks(binder, shoot_id),
        *_buying_checks(binder, shoot_id),
        *_claim_checks(binder, shoot_id),
        *_safety_checks(binder, shoot_id),
        *_day_checks(binder, shoot_id),
        *_empty_checks(binder, shoot_id),
    ]
    return gravest_first(found)


def gravest_first(checks: Iterable[Check]) -> tuple[Check, ...]:
    """Checks, each once, by severity and else in the order they have."""
    grave = list(Severity)
    return tuple(sorted(dict.fromkeys(checks), key=lambda check: grave.index(check.severity)))


def _cost_checks(binder: Binder, shoot_id: str) -> Iterator[Check]:
    for cost in shoot_costs(binder, shoot_id):
        place, where = Place("dishes", cost.dish), dish_title(cost)
        if cost.verdict is Verdict.OVER:
            yield Check("over cap", Severity.STOP, place, where, _over_cap(binder, cost))
        if cost.verdict is Verdict.UNKNOWN:
            reasons = listed(sorted({lack.says.rstrip(".") for lack in cost.missing}))
            says = _("{dish}: cost not known. {reasons}.").format(dish=where, reasons=reasons)
            yield Check("cost not known", Severity.STOP, place, where, says)
        if cost.not_counted:
            says = _("{dish}: {foods} to taste, without an amount, so not in the cost.")
            yield Check(
                "not counted", Severity.NOTE, place, where, says.format(dish=where, foods=listed(cost.not_counted))
            )


def dish_title(cost: DishCost) -> str:
    """A dish by its running number and name."""
    return f"{cost.number} {cost.name}"


def cost_beside_cap(binder: Binder, cost: DishCost) -> tuple[str, str]:
    """Cost and cap of a dish as money, with as many digits as it takes not to lie; a dash where one is not known."""
    if cost.per_portion is None or cost.cap is None:
        known = cost.per_portion if cost.per_portion is not None else cost.cap
        shown = "–" if known is None else money(binder, known)
        return (shown, "–") if cost.per_portion is not None else ("–", shown)
    return money_beside(binder, cost.per_portion, cost.cap), money(binder, cost.cap)


def _over_cap(binder: Binder, cost: DishCost) -> str:
    shown, cap = cost_beside_cap(binder, cost)
    dearest = _dearest(binder, cost)
    says = _("{dish} is over its cap: {cost} a portion ({basis}), the cap is {cap}.")
    if dearest:
        says = _("{dish} is over its cap: {cost} a portion ({basis}), the cap is {cap}. Most of it is {food}.")
    return says.format(dish=dish_title(cost), cost=shown, basis=basis_text(cost.basis), cap=cap, food=dearest)


def _dearest(binder: Binder, cost: DishCost) -> str:
    """The food that most of a portion's cost is for, on the basis of the cap; empty where that is not known."""
    by_food = portion_by_food(binder, binder.dishes[cost.dish])
    if not isinstance(by_food, Mapping) or not any(by_food.values()):
        return ""
    return binder.foods[max(by_food, key=lambda food: by_food[food])].name


def _base_checks(binder: Binder, shoot_id: str) -> Iterator[Check]:
    balance = base_balance(binder, shoot_id)
    place = Place("shoots", shoot_id)
    if balance is None:
        yield Check(
            "no base",
            Severity.WARN,
            place,
            binder.shoots[shoot_id].name,
            _("The shoot has no base ingredient: choose one."),
        )
    elif balance.verdict is BaseVerdict.SHORT:
        yield Check("short of base", Severity.STOP, place, balance.name, _shortage(binder, shoot_id))
    for clash in shelf_life_clashes(binder, shoot_id):
        yield Check("past its days", Severity.WARN, clash.place, _place_name(binder, clash), clash.says)


def _shortage(binder: Binder, shoot_id: str) -> str:
    """What runs out, and the smallest changes that would make it go round."""
    found = bottleneck(binder, shoot_id)
    repairs = base_repairs(binder, shoot_id)
    smallest = [*repairs[:-1][:2], *repairs[-1:]]
    instead = _(" Or: ").join(repair.says for repair in smallest)
    return f"{found.says if found else ''} {instead}".strip()


def _lacking(binder: Binder, shoot_id: str) -> Iterator[Check]:
    balance = base_balance(binder, shoot_id)
    lacks = [*shopping_list(binder, shoot_id).missing, *(balance.missing if balance else ())]
    for lack in dict.fromkeys(lacks):
        yield Check(lack.kind.value, Severity.STOP, lack.place, _place_name(binder, lack), lack.says)


def _place_name(binder: Binder, lack: Missing) -> str:
    record = binder.find(lack.place.table, lack.place.id)
    return str(getattr(record, "name", lack.place.id))


def _budget_checks(binder: Binder, shoot_id: str) -> Iterator[Check]:
    """The shopping alone above the budget, or else all that the shoot is expected to cost."""
    spend, budget = shoot_spend(binder, shoot_id), shoot_budget(binder, shoot_id)
    if spend.budget is None:
        return
    says = ""
    if spend.known > spend.budget:
        says = _("The shopping comes to {spend} at the till, the budget is {budget}.").format(
            spend=money(binder, spend.known), budget=money(binder, spend.budget)
        )
    elif budget.total.expected is not None and budget.total.expected > spend.budget:
        says = _("The shoot is expected to come to {spend} in all, the budget is {budget}.").format(
            spend=money(binder, budget.total.expected), budget=money(binder, spend.budget)
        )
    if says:
        yield Check("over budget", Severity.WARN, Place("shoots", shoot_id), binder.shoots[shoot_id].name, says)


def _buying_checks(binder: Binder, shoot_id: str) -> Iterator[Check]:
    """Foods bought on a day that does not do, each once, and prices that are too old."""
    clashes = {clash.place: clash for clash in reversed(buying_clashes(binder, shoot_id))}
    for place, clash in reversed(clashes.items()):
        yield Check("wrong day", Severity.WARN, place, _place_name(binder, clash), clash.says)
    for old in old_prices(binder, shoot_id):
        place, where = Place("packs", old.priced.pack.id), binder.foods[old.priced.pack.food].name
        yield Check("old price", Severity.WARN, place, where, old_price_text(binder, old))


def _claim_checks(binder: Binder, shoot_id: str) -> Iterator[Check]:
    """Sentences that must not be said as they are, or may be said on a condition alone."""
    for found in claim_findings(binder, shoot_id):
        place = Place("claims", found.claim)
        says = _("“{claim}”: {verdict}").format(claim=found.says, verdict=verdict_text(found))
        if found.verdict in {ClaimVerdict.DOES_NOT, ClaimVerdict.NOT_KNOWN}:
            yield Check("claim does not hold", Severity.WARN, place, found.says, says)
        elif found.verdict is ClaimVerdict.ONLY_IF:
            yield Check("claim holds only if", Severity.NOTE, place, found.says, says)


def _safety_checks(binder: Binder, shoot_id: str) -> Iterator[Check]:
    for cost in shoot_costs(binder, shoot_id):
        recipe, where = binder.dishes[cost.dish].recipe, dish_title(cost)
        for needed in doneness_needed(binder, recipe):
            if not needed.stated:
                says = _(
                    "{dish}: no step says to cook the {food} to {temperature} at the core ({source}). {deference}"
                ).format(
                    dish=where,
                    food=needed.food,
                    temperature=doneness_text(binder, needed.rule),
                    source=needed.rule.source,
                    deference=deference(),
                )
                yield Check("temperature not stated", Severity.WARN, Place("recipes", recipe), where, says)
        carried = recipe_allergens(binder, recipe)
        if carried:
            says = _("{dish} contains {allergens}. Tell everyone who tastes.")
            groups = listed(one.group for one in carried)
            yield Check(
                "allergens", Severity.NOTE, Place("dishes", cost.dish), where, says.format(dish=where, allergens=groups)
            )


def _day_checks(binder: Binder, shoot_id: str) -> Iterator[Check]:
    """What is known of the day without planning it; the rest is in `day_checks`."""
    for lack in day_lacks(binder, shoot_id):
        yield Check(lack.kind, Severity.WARN if lack.asks else Severity.NOTE, lack.place, lack.where, lack.says)


def _empty_checks(binder: Binder, shoot_id: str) -> Iterator[Check]:
    dishes = binder.dishes.where("shoot", shoot_id)
    if not dishes:
        says = _("The shoot has no dishes yet: add the first.")
        yield Check("no dishes", Severity.WARN, Place("shoots", shoot_id), binder.shoots[shoot_id].name, says)
    for cost in shoot_costs(binder, shoot_id):
        if not builds_of(binder, cost.dish):
            says = _("{dish} has no build: add at least the hero, or nothing is bought or set out for it.")
            yield Check(
                "no build",
                Severity.WARN,
                Place("dishes", cost.dish),
                dish_title(cost),
                says.format(dish=dish_title(cost)),
            )
        elif cost.verdict is Verdict.NO_CAP:
            says = _("{dish} has no cap: set one for the dish or for the shoot.").format(dish=dish_title(cost))
            yield Check("no cap", Severity.NOTE, Place("dishes", cost.dish), dish_title(cost), says)


def failed(checks: tuple[Check, ...]) -> bool:
    """Whether a finding stops the shoot."""
    return any(check.severity is Severity.STOP for check in checks)
