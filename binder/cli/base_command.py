"""`binder base`: how far the base ingredient goes, form by form and dish by dish."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

from binder.cli.asking import binder_argument, json_option, shoot_option
from binder.cli.chosen_shoot import opened


def base(
    file: Annotated[Path, binder_argument()],
    shoot: Annotated[str | None, shoot_option()] = None,
    as_json: Annotated[bool, json_option()] = False,
) -> None:
    """Show how far the base ingredient goes."""
    binder, chosen = opened(file, shoot)
    if as_json:
        from binder.cli.answer import print_answer
        from binder.cli.base_answer import base_answer

        print_answer(base_answer(binder, chosen))
    else:
        from binder.cli.base_tables import show_base

        show_base(binder, chosen)
