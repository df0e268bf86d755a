"""Why this pack, and what the things bought make of the caps: the sentences under the list. Plain Python."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.words.figure_text import store_name
from binder.figures.as_bought import caps_as_bought
from binder.figures.buying_words import take_words
from binder.figures.cap_basis import basis_text
from binder.figures.checks import cost_beside_cap
from binder.figures.cost import Verdict
from binder.figures.money_words import money
from binder.figures.shopping import PackCount, next_best
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.desktop.buying_page.buying_figures import ListLine
    from binder.figures.as_bought import CapAfter
    from binder.kitchen.binder import Binder


def why_text(binder: Binder, shoot: str, line: ListLine | None) -> str:
    """What the next best packs of a food would have cost."""
    if line is None or line.taken is None or line.item.food not in binder.foods:
        return ""
    other = next_best(binder, shoot, line.item.food)
    if other is None:
        return _("{food}: no other pack of it has a price.").format(food=line.item.name)
    packs = _packs(binder, other.packs)
    if line.taken.priced.quote.pinned:
        return _pinned_text(binder, line.item.name, packs, other.more)
    if not other.more:
        says = _("{food}: {packs} would cost the same, with more left over or more to carry.")
        return says.format(food=line.item.name, packs=packs)
    if other.more < 0:
        says = _("{food}: {packs} alone would cost {money} less, but not with the stores and leftovers counted.")
        return says.format(food=line.item.name, packs=packs, money=money(binder, -other.more))
    says = _("{food}: the next best, {packs}, would cost {money} more.")
    return says.format(food=line.item.name, packs=packs, money=money(binder, other.more))


def _pinned_text(binder: Binder, food: str, packs: str, more: int) -> str:
    """What a pinned price costs or saves: it was taken for the pin's sake."""
    says = _("{food}: this price is pinned; {packs} would cost the same.")
    if more:
        says = _("{food}: this price is pinned; {packs} would cost {money} more.")
    if more < 0:
        says = _("{food}: this price is pinned; {packs} would cost {money} less.")
    return says.format(food=food, packs=packs, money=money(binder, abs(more)))


def _packs(binder: Binder, packs: Sequence[PackCount]) -> str:
    return listed(_at_store(binder, one) for one in packs)


def _at_store(binder: Binder, one: PackCount) -> str:
    says = _("{take} of {store}") if one.priced.pack.by_weight else _("{take} at {store}")
    return says.format(take=take_words(binder, one), store=store_name(binder, one.priced.pack.store))


def as_bought_text(binder: Binder, shoot: str) -> str:
    """What a portion of each dish costs as things were bought, where that is another sum than was planned."""
    parts = [_cap_text(binder, one) for one in caps_as_bought(binder, shoot)]
    basis = basis_text(binder.shoots[shoot].cap_basis)
    return _("As bought ({basis}): {dishes}.").format(basis=basis, dishes="; ".join(parts)) if parts else ""


def _cap_text(binder: Binder, one: CapAfter) -> str:
    before, after = one.before, one.after
    shown, cap = cost_beside_cap(binder, after)
    dish = f"{before.number} {before.name}"
    if after.per_portion is None:
        return _("{dish} not known").format(dish=dish)
    planned = cost_beside_cap(binder, before)[0]
    says = {
        Verdict.OVER: _("{dish} {cost} a portion, planned {planned}, over its cap of {cap}"),
        Verdict.WITHIN: _("{dish} {cost} a portion, planned {planned}, within its cap of {cap}"),
    }.get(after.verdict, _("{dish} {cost} a portion, planned {planned}"))
    return says.format(dish=dish, cost=shown, planned=planned, cap=cap)
