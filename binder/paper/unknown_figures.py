"""What figures do not know, as the phrases that sheets must carry instead of numbers: preflight looks for them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.cost import Verdict, shoot_costs
from binder.figures.not_known import not_known_text
from binder.figures.shopping import shopping_list

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from binder.kitchen.binder import Binder


def no_unknown_figures(_binder: Binder, _shoot_id: str) -> Iterable[str]:
    """For sheets without figures that may be unknown."""
    return ()


def unknown_costs(binder: Binder, shoot_id: str) -> Iterator[str]:
    """For each dish whose cost is not known: what is missing."""
    for cost in shoot_costs(binder, shoot_id):
        if cost.verdict is Verdict.UNKNOWN:
            yield not_known_text(binder, cost.missing)


def unknown_budget(binder: Binder, shoot_id: str) -> Iterator[str]:
    """For the total of the budget, where a price is missing."""
    missing = shopping_list(binder, shoot_id).missing
    if missing:
        yield not_known_text(binder, missing)


def unknown_spend(binder: Binder, shoot_id: str) -> Iterator[str]:
    """For each food without a price, and for the spend that is therefore not known."""
    bought = shopping_list(binder, shoot_id)
    for item in bought.items:
        if item.missing:
            yield not_known_text(binder, [item.missing])
    if bought.missing:
        yield not_known_text(binder, bought.missing)
