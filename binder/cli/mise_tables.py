"""What `binder mise` shows to people."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from binder.cli.columns import amounts, numbers, words
from binder.cli.heading import show_heading
from binder.cli.terminal import say, show_grouped
from binder.figures.mise import MiseItem, mise_list
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Shoot


def show_mise(binder: Binder, shoot: Shoot) -> None:
    """Containers to set out, by station and dish."""
    show_heading(binder, shoot)
    items = mise_list(binder, shoot.id)
    if not items:
        say(_("There is nothing to set out: the shoot's dishes have no builds or no lines yet."))
        return
    columns = [words(_("Food")), amounts(_("Per build")), numbers(_("Builds")), amounts(_("In all"))]
    show_grouped(columns, [(place, [_row(item) for item in group]) for place, group in groupby(items, key=_place)])


def _place(item: MiseItem) -> str:
    """The station, and the dish that is cooked there."""
    return item.station if item.number is None else f"{item.station} · {item.number} {item.for_what}"


def _row(item: MiseItem) -> list[str]:
    food = ", ".join(part for part in (item.food, item.preparation) if part)
    return [food, _per_build(item), str(item.count), item.total.both]


def _per_build(item: MiseItem) -> str:
    """One amount where all builds take the same, else each kind with its own."""
    each = list(dict.fromkeys(build.amount.both for build in item.builds))
    if len(each) == 1:
        return each[0]
    return " · ".join(f"{build.kind} {build.amount.weight or build.amount.measure}" for build in item.builds)
