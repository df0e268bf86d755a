"""The figure behind each kind of claim, with the arithmetic it is the sum of."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.base import base_balance
from binder.figures.base_cost import base_content
from binder.figures.base_network import network_of
from binder.figures.bought_uses import bought_by_food
from binder.figures.cap_basis import portion_by_food, shares_of_packs
from binder.figures.circumstances import Circumstances, in_circumstances
from binder.figures.cost import dish_cost
from binder.figures.missing import Missing, MissingKind, Place
from binder.figures.money_words import money, pack_words, rate_text
from binder.figures.portion_text import number_style
from binder.figures.price import PricedPack, buyable_packs, chosen_pack
from binder.figures.recipe_use import batches_for
from binder.figures.shopping import cheapest_packs, shopping_list
from binder.figures.tax import food_tax_rate, tax_on, with_tax, without_tax
from binder.kitchen.amount import Amount
from binder.kitchen.amount_text import amount_text, grams_text
from binder.kitchen.claim import ClaimKind
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.shoot import CapBasis
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Mapping, Sequence

    from binder.figures.base import BaseBalance
    from binder.figures.shopping import PackCount
    from binder.kitchen.binder import Binder
    from binder.kitchen.claim import Claim
    from binder.kitchen.shoot import Dish


@dataclass(frozen=True)
class ClaimFigure:
    """What a claim is about comes to: minor units, minutes or grams; `subject` says of what.

    `rows` gives the sum it is, in words, each time it is asked: most figures are only compared.
    """

    subject: str
    value: float
    rows: Callable[[], Sequence[tuple[str, float]]]


Found = ClaimFigure | tuple[Missing, ...]
"""A figure, or what is missing for it."""


def claim_figure(binder: Binder, claim: Claim, circumstances: Circumstances) -> Found:
    """The figure a claim is about, as it would be in some circumstances."""
    by_pack = _chooses_packs(binder, claim, circumstances)
    return _FIGURES[claim.kind](in_circumstances(binder, claim.shoot, circumstances, by_pack), claim, circumstances)


def _chooses_packs(binder: Binder, claim: Claim, circumstances: Circumstances) -> bool:
    """Whether a figure is of whole packs, which are chosen among; an amount is always a share of the pack chosen."""
    whole = circumstances.packs and binder.shoots[claim.shoot].cap_basis is CapBasis.WHOLE_PACKS
    return claim.kind is ClaimKind.ALL_UNDER or (whole and claim.kind is ClaimKind.PORTION_UNDER)


def _portion(binder: Binder, claim: Claim, circumstances: Circumstances) -> Found:
    """A portion of the dish, or of the dearest dish of the shoot where the claim names none."""
    found = [_portion_of(binder, dish, circumstances) for dish in _dishes(binder, claim)]
    return _largest(claim, found)


def _dishes(binder: Binder, claim: Claim) -> tuple[Dish, ...]:
    return binder.dishes.where("shoot", claim.shoot) if claim.dish is None else (binder.dishes[claim.dish],)


def _largest(claim: Claim, found: list[Found]) -> Found:
    missing = dict.fromkeys(lack for one in found if isinstance(one, tuple) for lack in one)
    figures = [one for one in found if isinstance(one, ClaimFigure)]
    if missing or not figures:
        return tuple(missing) or (_nothing(claim, _("the shoot has no dishes yet: add the first.")),)
    return max(figures, key=lambda figure: figure.value)


def _nothing(claim: Claim, why: str) -> Missing:
    says = _("“{claim}”: {why}").format(claim=claim.says, why=why)
    return Missing(MissingKind.AMOUNT, says, Place("claims", claim.id))


def _portion_of(binder: Binder, dish: Dish, circumstances: Circumstances) -> Found:
    recipe, costs = binder.recipes[dish.recipe], portion_by_food(binder, dish)
    if isinstance(costs, tuple) or recipe.portions is None:
        return costs if isinstance(costs, tuple) else dish_cost(binder, dish.id).missing
    batch, portions = bought_by_food(binder, recipe.id), recipe.portions
    grams = {food: taken / portions for food, taken in batch.items()} if not isinstance(batch, tuple) else {}
    whole = binder.shoots[dish.shoot].cap_basis is CapBasis.WHOLE_PACKS

    def words(food: str) -> str:
        return _whole_words(binder, dish, food, grams[food]) if whole else _share_words(binder, food, grams[food])

    return _taxed(binder, dish.shoot, dish_name(binder, dish), costs, words, circumstances)


def _share_words(binder: Binder, food: str, grams: float) -> str:
    """`dark chocolate: 35.5 g of 3.5 oz bar at $4.49`."""
    name, priced = binder.foods[food].name, chosen_pack(binder, food)
    if not isinstance(priced, PricedPack):
        return name
    says = _("{food}: {grams} of {pack} at {price}")
    shown = grams_text(grams, number_style(binder))
    return says.format(food=name, grams=shown, pack=pack_words(binder, priced.pack), price=money(binder, priced.price))


def _whole_words(binder: Binder, dish: Dish, food: str, grams: float) -> str:
    """`tahini: 1 × 16 oz jar over 4 portions`."""
    packs = cheapest_packs(buyable_packs(binder, food), grams * dish.portions)
    says = _("{food}: {packs} over {portions} portions")
    portions = amount_text(Amount(dish.portions, dish.portions), number_style(binder))
    return says.format(food=binder.foods[food].name, packs=packs_words(binder, packs), portions=portions)


def packs_words(binder: Binder, packs: Iterable[PackCount]) -> str:
    """`2 × 14.5 oz can + 1 × 28 oz can`; what the counter sells by its weight."""
    return " + ".join(
        grams_text(one.grams, number_style(binder))
        if one.priced.pack.by_weight
        else f"{one.count} × {pack_words(binder, one.priced.pack)}"
        for one in packs
    )


def _taxed(
    binder: Binder,
    shoot: str,
    subject: str,
    costs: Mapping[str, float],
    words: Callable[[str], str],
    circumstances: Circumstances,
) -> ClaimFigure:
    """Costs by food as a figure, what tax adds in rows of their own; without tax where it is not counted."""
    counted = with_tax if circumstances.taxed else without_tax
    value = sum(counted(binder, shoot, food, cost) for food, cost in costs.items())

    def rows() -> list[tuple[str, float]]:
        tax: dict[float, float] = {}
        for food, cost in costs.items() if circumstances.taxed else ():
            rate = food_tax_rate(binder, shoot, food)
            tax[rate] = tax.get(rate, 0.0) + with_tax(binder, shoot, food, cost) - cost
        shown = sorted(((words(food), cost) for food, cost in costs.items()), key=lambda row: (-row[1], row[0]))
        return [*shown, *((tax_words(binder, rate), added) for rate, added in sorted(tax.items()) if added > 0)]

    return ClaimFigure(subject, value, rows)


def tax_words(binder: Binder, rate: float) -> str:
    """`tax of 7%`."""
    return _("tax of {percent}").format(percent=rate_text(binder, rate))


def _amount(binder: Binder, claim: Claim, circumstances: Circumstances) -> Found:
    """So much of a recipe, by the share of each pack in it."""
    if claim.recipe is None:
        return (_nothing(claim, _("it names no recipe. Choose one.")),)
    recipe = binder.recipes[claim.recipe]
    part, batch = batches_for(binder, recipe, claim.amount, claim.unit), bought_by_food(binder, recipe.id)
    if isinstance(part, Missing) or isinstance(batch, tuple):
        return (part,) if isinstance(part, Missing) else batch if isinstance(batch, tuple) else ()
    grams = {food: taken * part for food, taken in batch.items()}
    costs = shares_of_packs(binder, grams, 1.0)
    if isinstance(costs, tuple):
        return costs
    amount = amount_text(Amount(claim.amount, claim.amount, claim.unit), number_style(binder))
    subject = _("{amount} of {recipe}").format(amount=amount, recipe=recipe.name)
    return _taxed(
        binder, claim.shoot, subject, costs, lambda food: _share_words(binder, food, grams[food]), circumstances
    )


def _till(binder: Binder, claim: Claim, circumstances: Circumstances) -> Found:
    """The whole shopping, tax rounded once a rate as the till does."""
    bought = shopping_list(binder, claim.shoot)
    if bought.missing:
        return bought.missing
    by_rate: dict[float, int] = {}
    for item in bought.items:
        rate = food_tax_rate(binder, claim.shoot, item.food)
        by_rate[rate] = by_rate.get(rate, 0) + (item.spend or 0)
    contained = binder.shoots[claim.shoot].prices_taxed
    sign = 0 if contained is circumstances.taxed else -1 if contained else 1
    tax = {rate: sign * tax_on(spend, rate, contained=contained) for rate, spend in sorted(by_rate.items()) if rate > 0}

    def rows() -> list[tuple[str, float]]:
        dearest = sorted(
            (item for item in bought.items if item.spend), key=lambda item: (-(item.spend or 0), item.name)
        )
        shown = [(f"{item.name}: {packs_words(binder, item.packs)}", float(item.spend or 0)) for item in dearest]
        return [*shown, *((tax_words(binder, rate), float(added)) for rate, added in tax.items() if added)]

    return ClaimFigure(_("Everything at the till"), bought.known_spend + sum(tax.values()), rows)


def _base(binder: Binder, claim: Claim, _circumstances: Circumstances) -> Found:
    """Grams of the base that are needed, by dish and by what is left of each form."""
    balance = base_balance(binder, claim.shoot)
    if balance is None or balance.missing or balance.needed is None:
        lacking = balance.missing if balance else ()
        return lacking or (_nothing(claim, _("the shoot has no base ingredient. Choose one.")),)
    return ClaimFigure(balance.name, balance.needed, lambda: _base_rows(binder, balance))


def _base_rows(binder: Binder, balance: BaseBalance) -> tuple[tuple[str, float], ...]:
    network = network_of(binder, balance.base)
    content = network if isinstance(network, Missing) else base_content(binder, network, balance)
    if isinstance(content, Missing):
        return ((balance.name, balance.needed or 0.0),)
    rows = [(dish_name(binder, binder.dishes[dish]), _grams(needs, content)) for dish, needs in balance.by_dish.items()]
    left = [
        (_("left over: {form}").format(form=form.name), form.left * content.get(form.form, 0.0))
        for form in balance.forms
        if form.form != balance.base
    ]
    return tuple((text, grams) for text, grams in (*rows, *left) if grams > 0)


def _grams(needs: Mapping[str, float], content: Mapping[str, float]) -> float:
    return sum(grams * content.get(form, 0.0) for form, grams in needs.items())


def _minutes(binder: Binder, claim: Claim, circumstances: Circumstances) -> Found:
    """The minutes of a dish's steps, or of the longest dish of the shoot."""
    found: list[Found] = [_minutes_of(binder, dish, circumstances) for dish in _dishes(binder, claim)]
    return _largest(claim, found)


def _minutes_of(binder: Binder, dish: Dish, circumstances: Circumstances) -> ClaimFigure:
    rows: list[tuple[str, float]] = []
    for step in binder.steps.where("recipe", dish.recipe):
        title = _("{number} {title}").format(number=step.position + 1, title=step.title).strip()
        rows.append((_("{step}, hands on").format(step=title), step.hands_on_minutes))
        if circumstances.waiting:
            rows.append((_("{step}, waiting").format(step=title), step.waiting_minutes))
    shown = tuple((text, minutes) for text, minutes in rows if minutes > 0)
    return ClaimFigure(dish_name(binder, dish), sum(minutes for _text, minutes in shown), lambda: shown)


_FIGURES: Mapping[ClaimKind, Callable[[Binder, Claim, Circumstances], Found]] = {
    ClaimKind.PORTION_UNDER: _portion,
    ClaimKind.AMOUNT_ABOUT: _amount,
    ClaimKind.ALL_UNDER: _till,
    ClaimKind.ALL_FROM_BASE: _base,
    ClaimKind.MINUTES_UNDER: _minutes,
}
