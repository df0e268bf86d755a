"""`binder shop`: what to buy, in whole packs, trip by trip, and what it comes to at the till."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from binder.cli.asking import binder_argument, json_option, shoot_option
from binder.cli.chosen_shoot import opened
from binder.cli.endings import WrongUsageError
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Shoot


def shop(
    file: Annotated[Path, binder_argument()],
    shoot: Annotated[str | None, shoot_option()] = None,
    to: Annotated[
        Path | None,
        typer.Option("--to", metavar="FILE", help=_("Write the list as .csv, .xlsx or .txt; replaced if there.")),
    ] = None,
    as_json: Annotated[bool, json_option()] = False,
) -> None:
    """Show what to buy and what it comes to at the till."""
    _require_kind(to)
    binder, chosen = opened(file, shoot)
    if to is not None:
        _write(binder, chosen, to, as_json=as_json)
    elif as_json:
        from binder.cli.answer import print_answer
        from binder.cli.shop_answer import shop_answer

        print_answer(shop_answer(binder, chosen))
    else:
        from binder.cli.shop_tables import show_shop

        show_shop(binder, chosen)


def _require_kind(to: Path | None) -> None:
    """Raise WrongUsageError before anything is read where the list is not written as such a file."""
    from binder.exchange.shopping_file import SHOPPING_SUFFIXES, NoShoppingFileError

    if to is not None and to.suffix.casefold() not in SHOPPING_SUFFIXES:
        raise WrongUsageError(NoShoppingFileError(to).says)


def _write(binder: Binder, shoot: Shoot, to: Path, *, as_json: bool) -> None:
    from binder.exchange.shopping_file import write_shopping

    write_shopping(binder, shoot.id, to)
    if as_json:
        from binder.cli.answer import print_answer

        print_answer({"binder": binder.settings.name, "shoot": shoot.name, "file": str(to)})
    else:
        from binder.cli.terminal import say

        says = _("Wrote the shopping list of {shoot} to {file}.")
        say(says.format(shoot=shoot.name, file=to))
