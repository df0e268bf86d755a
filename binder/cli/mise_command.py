"""`binder mise`: what is washed, cut, weighed and set out, station by station."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

from binder.cli.asking import binder_argument, json_option, shoot_option
from binder.cli.chosen_shoot import opened


def mise(
    file: Annotated[Path, binder_argument()],
    shoot: Annotated[str | None, shoot_option()] = None,
    as_json: Annotated[bool, json_option()] = False,
) -> None:
    """Show what to set out, station by station."""
    binder, chosen = opened(file, shoot)
    if as_json:
        from binder.cli.answer import print_answer
        from binder.cli.mise_answer import mise_answer

        print_answer(mise_answer(binder, chosen))
    else:
        from binder.cli.mise_tables import show_mise

        show_mise(binder, chosen)
