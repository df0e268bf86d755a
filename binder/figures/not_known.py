"""What stands in the place of a figure that is not known: the words, and what is missing by name."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.missing import MissingKind
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from collections.abc import Iterable

    from binder.figures.missing import Missing
    from binder.kitchen.binder import Binder


def not_known_text(binder: Binder, missing: Iterable[Missing]) -> str:
    """`not known: no price for tahini`; other lacks in their own sentences after it."""
    lacks = list(dict.fromkeys(missing))
    unpriced = [binder.foods[lack.place.id].name for lack in lacks if _is_price_of_food(binder, lack)]
    others = [lack.says for lack in lacks if not _is_price_of_food(binder, lack)]
    says = _("not known")
    if unpriced:
        says = _("not known: no price for {foods}").format(foods=listed(unpriced))
    return ". ".join([says, " ".join(others)]) if others else says


def _is_price_of_food(binder: Binder, lack: Missing) -> bool:
    return lack.kind is MissingKind.PRICE and lack.place.table == "foods" and lack.place.id in binder.foods
