"""The station cards of a shoot: a card a dish, then a card for each recipe that is made ahead for the dishes."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from binder.kitchen.wording import _
from binder.paper.at_stations import at_stations, dishes_text, labelled_cards
from binder.paper.block import text
from binder.paper.card_pages import CardLayout, Way
from binder.paper.page import Page

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from binder.figures.card import StationCard
    from binder.paper.card_type import CardType
    from binder.paper.job import Job
    from binder.paper.paper_size import PaperSize


def card_pages(job: Job) -> list[Page]:
    """All cards of a shoot, in running order; one page that says so where there is no dish."""
    style, pages = job.card_type(), list[Page]()
    for label, card in labelled_cards(job.binder, job.shoot):
        pages += _dish_pages(job, card, label, style)
    return pages or [_no_dishes(job.paper, style)]


def at_station_pages(job: Job) -> list[Page]:
    """A card for each station, with the steps of all dishes that come to it; one page that says so where none do."""
    style, pages = job.card_type(), list[Page]()
    for one in at_stations(job.binder, job.shoot, job.plan):
        makes = text(dishes_text(one.dishes, len(one.card.steps)), style.plain)
        layout = partial(
            CardLayout, job.binder, one.card, label="", paper=job.paper, style=style, makes=makes, whose=one.whose
        )
        pages += _fewest(layout, [Way(close=True)])
    return pages or [_no_dishes(job.paper, style)]


def _dish_pages(job: Job, card: StationCard, label: str, style: CardType) -> list[Page]:
    """The cards of a dish; its builds stand under its name where they would else need a card of their own."""
    layout = partial(CardLayout, job.binder, card, label=label, paper=job.paper, style=style)
    return _fewest(layout, [Way(builds_above=True), Way(close=True), Way(builds_above=True, close=True)])


def _fewest(layout: Callable[..., CardLayout], ways: Sequence[Way]) -> list[Page]:
    """The cards in the usual way; where the last of them has no step on it, in that of some ways with the fewest."""
    usual = layout()
    pages = usual.pages()
    if usual.ends_without_steps:
        others = [layout(way=way) for way in ways]
        return min([pages, *(one.pages() for one in others if one.has_a_small_band)], key=len)
    return pages


def _no_dishes(paper: PaperSize, style: CardType) -> Page:
    page = Page(outline=_("No dishes"))
    width, height = paper.points
    says = text(_("The shoot has no dishes yet: add the first."), style.lead)
    page.put(says, paper.margin, height - paper.margin, width - 2 * paper.margin)
    return page
