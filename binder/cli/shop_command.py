"""`binder shop`: what to buy, in whole packs, and what it comes to at the till."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

from binder.cli.asking import binder_argument, json_option, shoot_option
from binder.cli.chosen_shoot import opened


def shop(
    file: Annotated[Path, binder_argument()],
    shoot: Annotated[str | None, shoot_option()] = None,
    as_json: Annotated[bool, json_option()] = False,
) -> None:
    """Show what to buy and what it comes to at the till."""
    binder, chosen = opened(file, shoot)
    if as_json:
        from binder.cli.answer import print_answer
        from binder.cli.shop_answer import shop_answer

        print_answer(shop_answer(binder, chosen))
    else:
        from binder.cli.shop_tables import show_shop

        show_shop(binder, chosen)
