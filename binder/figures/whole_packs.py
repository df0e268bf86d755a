"""The cheapest whole packs of one food."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.buying_terms import offer_of
from binder.figures.pack_choice import cheapest_choice
from binder.figures.pack_offers import Bought, Need

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.figures.price import PricedPack


def cheapest_bought(packs: Sequence[PricedPack], grams: float) -> tuple[Bought, ...]:
    """The cheapest packs that cover `grams`; ties go to less left over, then to fewer packs."""
    choice = cheapest_choice(Need("", grams), [offer_of(priced) for priced in packs])
    return choice.bought if choice else ()


def packs_price(packs: Sequence[PricedPack], grams: float) -> int:
    """Minor units of the cheapest packs that cover `grams`."""
    return sum(one.cost for one in cheapest_bought(packs, grams))
