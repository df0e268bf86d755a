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
        PageEntry("larder", _("Lard&er"), _larder),
    )


def _shoot(desk: Desk) -> Page:
    from binder.desktop.shoot_page.page import ShootPage

    return ShootPage(desk)


def _dishes(desk: Desk) -> Page:
    from binder.desktop.dishes_page.page import DishesPage

    return DishesPage(desk)


def _larder(desk: Desk) -> Page:
    from binder.desktop.larder_page.page import LarderPage

    return LarderPage(desk)
