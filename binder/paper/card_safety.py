"""What keeps people safe, on a card: cautions with their source, temperatures to reach, allergens in words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.temperature_text import temperature_text
from binder.kitchen.reference import deference
from binder.kitchen.settings import AllergenScheme
from binder.kitchen.wording import _, listed
from binder.paper.arrangement import Beside, Stack
from binder.paper.block import Block, Text, text
from binder.paper.card_type import figure_runs
from binder.paper.mark import Shape, marked
from binder.paper.run import Run

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.figures.card import StationCard
    from binder.figures.safety import AllergenInDish, DonenessNeeded
    from binder.kitchen.binder import Binder
    from binder.kitchen.reference import Caution, Doneness
    from binder.paper.card_type import CardType


def caution_block(caution: Caution, style: CardType) -> Beside:
    """A caution in full with its source."""
    source = " " + _("[{source}]").format(source=caution.source)
    words = Text((Run(caution.title + ". ", style.strong), Run(caution.text, style.plain), Run(source, style.quiet)))
    return marked(Shape.OPEN_TRIANGLE, words, style.strong)


def said_before_block(known: Sequence[tuple[str, int]], style: CardType) -> Beside:
    """Cautions that stand in full on an earlier card, by name and with the number of that card."""
    by_card: dict[int, list[str]] = {}
    for title, card in known:
        by_card.setdefault(card, []).append(title)
    runs: list[Run] = []
    for card, titles in by_card.items():
        runs += [Run(" · ", style.plain)] if runs else []
        runs += [
            Run(", ".join(titles), style.strong),
            Run(" " + _("in full on card {card}").format(card=card), style.plain),
        ]
    return marked(Shape.OPEN_TRIANGLE, Text(tuple(runs)), style.strong)


def doneness_block(binder: Binder, needed: Sequence[DonenessNeeded], style: CardType) -> Block | None:
    """The safe core temperature of the foods that need one, with its source; foods of one rule together."""
    foods: dict[Doneness, dict[str, None]] = {}
    for one in needed:
        foods.setdefault(one.rule, {})[one.food] = None
    rows = [_doneness_row(binder, rule, listed(names), style) for rule, names in foods.items()]
    return Stack(tuple(rows)) if rows else None


def _doneness_row(binder: Binder, rule: Doneness, foods: str, style: CardType) -> Beside:
    runs: list[Run] = [Run(f"{foods} ", style.strong)]
    if rule.celsius is not None:
        runs += figure_runs(temperature_text(binder, rule.celsius), style.figure, style.plain)
        runs.append(Run(" " + _("at the core"), style.plain))
    more = [part for part in (rule.sign, rule.hold) if part]
    runs += [Run((", " if rule.celsius is not None else "") + ", ".join(more), style.plain)] if more else []
    runs.append(Run(" " + _("[{source}]").format(source=rule.source), style.quiet))
    return marked(Shape.OPEN_TRIANGLE, Text(tuple(runs)), style.strong)


def deference_block(style: CardType) -> Text:
    """Whose word goes before ours."""
    return text(deference(), style.strong)


def allergens_block(card: StationCard, scheme: AllergenScheme, style: CardType, *, carriers: bool) -> Text:
    """The allergens in words, with the foods that carry them where `carriers`."""
    if not card.allergens:
        return text(no_allergens_text(scheme), style.plain)
    named = listed(_allergen(one, carriers=carriers) for one in card.allergens)
    return Text((Run(_("Contains {allergens}.").format(allergens=named), style.strong),))


def _allergen(one: AllergenInDish, *, carriers: bool) -> str:
    return f"{one.group} ({', '.join(one.foods)})" if carriers else one.group


def no_allergens_text(scheme: AllergenScheme) -> str:
    """That no food names an allergen, which is not that there is none."""
    whose = {
        AllergenScheme.US_NINE: _("the nine allergens of US law"),
        AllergenScheme.EU_FOURTEEN: _("the fourteen allergens of EU law"),
    }[scheme]
    return _("None of {allergens} is named by a food here. Read the labels all the same.").format(allergens=whose)
