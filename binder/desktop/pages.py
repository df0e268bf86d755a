"""The pages of the binder in the order of their dividers. A new page is one module and one line here."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable

    from binder.desktop.desk import Desk
    from binder.desktop.page import Page


@dataclass(frozen=True)
class PageEntry:
    """A page by its key, the word on its divider with its access key in the View menu, and how it is made."""

    key: str
    title: str
    make: Callable[[Desk], Page]


def every_page() -> tuple[PageEntry, ...]:
    """All pages."""
    return (
        PageEntry("shoot", _("The &shoot"), _shoot),
        PageEntry("dishes", _("&Dishes"), _dishes),
        PageEntry("base", _("&Base"), _base),
        PageEntry("larder", _("Lard&er"), _larder),
        PageEntry("buying", _("Bu&ying"), _buying),
        PageEntry("mise", _("M&ise"), _mise),
        PageEntry("day", _("D&ay"), _day),
        PageEntry("cards", _("&Cards"), _cards),
        PageEntry("money", _("Mo&ney"), _money),
    )


def _shoot(desk: Desk) -> Page:
    from binder.desktop.shoot_page.page import ShootPage

    return ShootPage(desk)


def _dishes(desk: Desk) -> Page:
    from binder.desktop.dishes_page.page import DishesPage

    return DishesPage(desk)


def _base(desk: Desk) -> Page:
    from binder.desktop.base_page.page import BasePage

    return BasePage(desk)


def _larder(desk: Desk) -> Page:
    from binder.desktop.larder_page.page import LarderPage

    return LarderPage(desk)


def _buying(desk: Desk) -> Page:
    from binder.desktop.buying_page.page import BuyingPage

    return BuyingPage(desk)


def _mise(desk: Desk) -> Page:
    from binder.desktop.mise_page.page import MisePage

    return MisePage(desk)


def _day(desk: Desk) -> Page:
    from binder.desktop.day_page.page import DayPage

    return DayPage(desk)


def _cards(desk: Desk) -> Page:
    from binder.desktop.cards_page.page import CardsPage

    return CardsPage(desk)


def _money(desk: Desk) -> Page:
    from binder.desktop.money_page.page import MoneyPage

    return MoneyPage(desk)
