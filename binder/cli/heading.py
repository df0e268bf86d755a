"""The line that every table stands under: which binder, which shoot, when."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.cli.terminal import say, say_parts
from binder.figures.date_text import date_text, time_text

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Shoot


def show_heading(binder: Binder, shoot: Shoot) -> None:
    """Name the binder and the shoot, with its date and call time where it has them."""
    day = date_text(binder, shoot.on) if shoot.on else ""
    call = time_text(binder, shoot.call) if shoot.call else ""
    say_parts(part for part in (binder.settings.name, shoot.name, day, call) if part)
    say()
