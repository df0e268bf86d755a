"""Single changes that may bring a dish under its cap, by what its portion would then come to; none is tried here."""

from __future__ import annotations

import bisect
import functools
import math
from itertools import islice
from typing import TYPE_CHECKING

from binder.figures.cap_candidate import Candidate, CapRepairKind
from binder.figures.cap_portion import Portion
from binder.figures.cap_swaps import swaps
from binder.figures.date_text import date_text
from binder.figures.missing import Missing, Place
from binder.figures.money_words import money, pack_words
from binder.figures.portion_text import number_style
from binder.figures.price import PricedPack, chosen_pack, pack_grams, priced_packs
from binder.kitchen.amount import Amount
from binder.kitchen.amount_text import amount_text
from binder.kitchen.cooks_steps import measures_below
from binder.kitchen.edits.foods import pin_quote
from binder.kitchen.edits.recipes import line_name
from binder.kitchen.edits.records import set_fields
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

    from binder.kitchen.binder import Binder
    from binder.kitchen.recipe import Line

_MOST_STEPS = 2000
"""Measures looked at below an amount; half of any amount is fewer steps down."""


def candidates(binder: Binder, dish_id: str) -> Iterator[Candidate]:
    """The changes that may bring a dish of known cost under its cap, kind by kind."""
    portion = Portion(binder, dish_id)
    for food in portion.costs:
        yield from _other_packs(portion, food)
        yield from _cheapest_on_record(portion, food)
    for line in portion.lines():
        yield from _less(portion, line)
    yield from _more_portions(portion)
    for line in portion.lines():
        yield from swaps(portion, line)


def _other_packs(portion: Portion, food: str) -> Iterator[Candidate]:
    """Each other pack of a food, its price pinned."""
    binder, chosen = portion.binder, chosen_pack(portion.binder, food)
    if isinstance(chosen, Missing):
        return
    for priced in priced_packs(binder, food):
        if priced.pack.id != chosen.pack.id and portion.fits(portion.with_pack(priced)):
            yield Candidate(
                CapRepairKind.PACK,
                functools.partial(_bought_as, binder, priced),
                pin_quote(binder, priced.quote, pinned=True),
                priced.price / max(1, chosen.price),
                Place("packs", priced.pack.id),
            )


def _bought_as(binder: Binder, priced: PricedPack) -> str:
    store = binder.stores[priced.pack.store].name if priced.pack.store else ""
    says = _("Buy {food} as {pack} at {store} for {price}") if store else _("Buy {food} as {pack} for {price}")
    return says.format(
        food=binder.foods[priced.pack.food].name,
        pack=pack_words(binder, priced.pack),
        store=store,
        price=money(binder, priced.price),
    )


def _cheapest_on_record(portion: Portion, food: str) -> Iterator[Candidate]:
    """The price a gram that was the lowest ever asked, where it is not one that is asked now."""
    binder = portion.binder
    asked = {priced.quote.id for priced in priced_packs(binder, food)}
    record = [
        PricedPack(pack, quote, grams)
        for pack in binder.packs.where("food", food)
        if pack.on_sale and not isinstance(grams := pack_grams(binder, pack), Missing)
        for quote in binder.quotes.where("pack", pack.id)
    ]
    cheapest = min(record, key=lambda one: (one.per_gram, -one.quote.on.toordinal()), default=None)
    if cheapest is None or cheapest.quote.id in asked or not portion.fits(portion.with_pack(cheapest)):
        return
    newest = max(one.quote.on for one in record)
    yield Candidate(
        CapRepairKind.QUOTE,
        functools.partial(_had_again, binder, cheapest),
        pin_quote(binder, cheapest.quote, pinned=True),
        (newest - cheapest.quote.on).days,
        Place("packs", cheapest.pack.id),
    )


def _had_again(binder: Binder, priced: PricedPack) -> str:
    says = _("Have {food} as {pack} for {price} again, as on {day}")
    return says.format(
        food=binder.foods[priced.pack.food].name,
        pack=pack_words(binder, priced.pack),
        price=money(binder, priced.price),
        day=date_text(binder, priced.quote.on),
    )


def _less(portion: Portion, line: Line) -> Iterator[Candidate]:
    """The most of a line, in an amount a cook has a measure for, that is not too dear; never under half of it."""
    high, takes = line.high or 0.0, portion.of_line(line.id)

    def does(amount: float) -> bool:
        kept = {food: portion.batch[food] - grams * (1 - amount / high) for food, grams in takes.items()}
        return portion.fits(portion.with_grams(kept))

    if not takes or not does(high / 2):
        return
    amount = _first_that(does, list(islice(measures_below(high, line.unit, least=high / 2), _MOST_STEPS)))
    if amount is None:
        return
    name = line_name(portion.binder, line)
    label = _("Take less {food} in {recipe}").format(food=name, recipe=portion.recipe.name)
    change = set_fields(label, line, low=min(line.low or 0.0, amount), high=amount)
    says = functools.partial(_less_text, portion, line, amount)
    yield Candidate(CapRepairKind.LESS, says, change, 1 - amount / high, Place("lines", line.id))


def _less_text(portion: Portion, line: Line, amount: float) -> str:
    binder, high = portion.binder, line.high or 0.0
    style, name = number_style(binder), line_name(binder, line)
    counted = _("Take {amount} {food} instead of {before}")
    measured = _("Take {amount} of {food} instead of {before}")
    says = (measured if line.unit else counted).format(
        amount=amount_text(Amount(amount, amount, line.unit), style),
        food=name,
        before=amount_text(Amount(high, high, line.unit), style),
    )
    return portion.in_step(line, says)


def _first_that(does: Callable[[float], bool], tries: Sequence[float]) -> float | None:
    """The first that does, where all after one that does do too; None where the last does not."""
    at = bisect.bisect_left(range(len(tries)), x=True, key=lambda place: does(tries[place]))
    return tries[at] if at < len(tries) else None


def _more_portions(portion: Portion) -> Iterator[Candidate]:
    """The fewest whole portions, up to twice as many, that a batch is to be divided into."""
    before = portion.portions
    tries = [float(count) for count in range(math.floor(before) + 1, math.floor(2 * before) + 1)][:_MOST_STEPS]
    portions = _first_that(lambda count: portion.fits(portion.in_portions(count)), tries)
    if portions is None:
        return
    name = portion.recipe.name
    change = set_fields(_("Divide {recipe} into more portions").format(recipe=name), portion.recipe, portions=portions)
    says = functools.partial(_divided_text, portion, portions)
    yield Candidate(CapRepairKind.PORTIONS, says, change, portions / before - 1, Place("recipes", portion.recipe.id))


def _divided_text(portion: Portion, portions: float) -> str:
    style, before = number_style(portion.binder), portion.portions
    says = _("Divide {recipe} into {portions} portions instead of {before}")
    return says.format(
        recipe=portion.recipe.name,
        portions=amount_text(Amount(portions, portions), style),
        before=amount_text(Amount(before, before), style),
    )
