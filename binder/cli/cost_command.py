"""`binder cost`: what a portion of each dish costs, against its cap."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from binder.cli.asking import binder_argument, json_option, shoot_option
from binder.cli.chosen_shoot import opened
from binder.kitchen.wording import _


def cost(
    file: Annotated[Path, binder_argument()],
    shoot: Annotated[str | None, shoot_option()] = None,
    lines: Annotated[
        bool, typer.Option("--lines", help=_("Each line with its share, and the prices that would meet the cap."))
    ] = False,
    as_json: Annotated[bool, json_option()] = False,
) -> None:
    """Show what a portion of each dish costs, against its cap."""
    binder, chosen = opened(file, shoot)
    if as_json:
        from binder.cli.answer import print_answer
        from binder.cli.cost_answer import cost_answer

        print_answer(cost_answer(binder, chosen))
    else:
        from binder.cli.cost_tables import show_costs

        show_costs(binder, chosen, lines=lines)
