"""The station cards of a shoot: a card a dish, then a card for each recipe that is made ahead for the dishes."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.card import station_cards
from binder.kitchen.wording import _
from binder.paper.block import text
from binder.paper.card_pages import CardLayout
from binder.paper.page import Page

if TYPE_CHECKING:
    from binder.figures.card import StationCard
    from binder.paper.card_type import CardType
    from binder.paper.job import Job
    from binder.paper.paper_size import PaperSize


def card_pages(job: Job) -> list[Page]:
    """All cards of a shoot, in running order; one page that says so where there is no dish."""
    style, pages = job.card_type(), list[Page]()
    ahead = 0
    for card in station_cards(job.binder, job.shoot):
        ahead += card.number is None
        label = _label(card, ahead)
        pages += CardLayout(job.binder, card, label=label, paper=job.paper, style=style).pages()
    return pages or [_no_dishes(job.paper, style)]


def _label(card: StationCard, ahead: int) -> str:
    """The running number of a dish; A, B, C ... for what is made ahead, AA after Z."""
    if card.number is not None:
        return str(card.number)
    letters = ""
    while ahead > 0:
        ahead, letter = divmod(ahead - 1, 26)
        letters = chr(ord("A") + letter) + letters
    return letters


def _no_dishes(paper: PaperSize, style: CardType) -> Page:
    page = Page(outline=_("No dishes"))
    width, height = paper.points
    says = text(_("The shoot has no dishes yet: add the first."), style.lead)
    page.put(says, paper.margin, height - paper.margin, width - 2 * paper.margin)
    return page
