"""How much a card makes: portions and builds, or batches of what is made ahead."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from binder.figures.portion_text import number_style
from binder.kitchen.amount_text import cooks_measure, grams_text
from binder.kitchen.wording import _, ngettext
from binder.paper.arrangement import Stack, Tagged
from binder.paper.block import Block, Text, text
from binder.paper.card_type import figure_runs
from binder.paper.card_words import builds_text, count_text, portions_text
from binder.paper.run import Run
from binder.paper.structure import SUBHEADING

if TYPE_CHECKING:
    from binder.figures.card import PlannedBuild, StationCard
    from binder.kitchen.binder import Binder
    from binder.paper.card_type import CardType


def what_it_makes(binder: Binder, card: StationCard, style: CardType, *, build_by_build: bool = False) -> Text:
    """The line under the name: portions and builds, or how much of what is made ahead.

    `build_by_build`: all that `builds_block` says stands here, as running text.
    """
    if card.number is None:
        return _made_ahead(binder, card, style)
    runs = figure_runs(portions_text(binder, card.portions or 0.0), style.lead, style.plain)
    if not card.builds:
        return Text((*runs, Run(" · " + _("no build planned"), style.plain)))
    if build_by_build:
        each = (_in_passing(binder, card, build, count, style) for build, count in Counter(card.builds).items())
        return Text((*runs, *(run for words in each for run in words)))
    return Text((*runs, Run(" · " + builds_text(card.builds), style.plain)))


def _in_passing(binder: Binder, card: StationCard, build: PlannedBuild, count: int, style: CardType) -> tuple[Run, ...]:
    """A build among others on a line; where one that stops short waits is said at the step it stops at."""
    portions = "" if build.portions == card.portions else portions_text(binder, build.portions)
    waits = _waits_text(build) if build.stops_at is None else ""
    says = ", ".join(part for part in (portions, _stops_text(build), waits) if part)
    return Run(" · ", style.plain), Run(_name_text(build, count), style.strong), Run(f" {says}", style.plain)


def _made_ahead(binder: Binder, card: StationCard, style: CardType) -> Text:
    """How many batches, and what they come to where the recipe says what one yields."""
    recipe, number = binder.recipes[card.recipe], number_style(binder)
    batches = ngettext("{count} batch", "{count} batches", max(1, card.batches))
    comes_to = ""
    if recipe.grams is not None:
        comes_to = grams_text(recipe.grams * card.batches, number)
    elif recipe.millilitres is not None:
        comes_to = cooks_measure(recipe.millilitres * card.batches, binder.settings.measures, number)
    runs = figure_runs(batches.format(count=count_text(binder, card.batches)), style.lead, style.plain)
    more = (Run(" · ", style.plain), *figure_runs(comes_to, style.lead, style.plain)) if comes_to else ()
    return Text((Run(_("made ahead") + " · ", style.plain), *runs, *more))


def builds_block(binder: Binder, card: StationCard, style: CardType) -> Block | None:
    """Every build: its kind, portions, up to which step, where it waits."""
    if not card.builds:
        return None
    rows = [_build_row(binder, build, count, style) for build, count in Counter(card.builds).items()]
    return Stack((Tagged(text(_("Builds"), style.lead), SUBHEADING), *rows))


def _build_row(binder: Binder, build: PlannedBuild, count: int, style: CardType) -> Text:
    parts = (portions_text(binder, build.portions), _stops_text(build), _waits_text(build))
    says = " · ".join(part for part in parts if part)
    return Text((Run(_name_text(build, count), style.strong), Run(f" · {says}", style.plain)))


def _name_text(build: PlannedBuild, count: int) -> str:
    return build.kind if count == 1 else f"{build.kind} ×{count}"


def _stops_text(build: PlannedBuild) -> str:
    return _("finished") if build.stops_at is None else _("up to and with step {number}").format(number=build.stops_at)


def _waits_text(build: PlannedBuild) -> str:
    return _("waits: {where}").format(where=build.waits) if build.waits else ""
