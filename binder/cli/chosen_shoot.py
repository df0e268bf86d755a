"""Which shoot a command is about."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.cli.endings import WrongUsageError
from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from collections.abc import Iterable
    from pathlib import Path

    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Shoot


class NoShootError(BinderError):
    """A binder without a shoot: there is nothing to work out yet."""

    def __init__(self, binder: str) -> None:
        super().__init__(_("“{binder}” has no shoot yet: open it and add one.").format(binder=binder))


class ShootNotChosenError(WrongUsageError):
    """Several shoots fit, and the command is about one."""

    def __init__(self, shoots: Iterable[Shoot]) -> None:
        names = listed((_quoted(name) for name in _told_apart(list(shoots))), joined_by=_("or"))
        super().__init__(_("The binder has several shoots: choose one with --shoot {names}.").format(names=names))


class UnknownShootError(WrongUsageError):
    """No shoot has that name."""

    def __init__(self, name: str, shoots: Iterable[Shoot]) -> None:
        names = listed((_quoted(known) for known in _told_apart(list(shoots))), joined_by=_("or"))
        says = _("No shoot is called {name}: it is --shoot {names}.")
        super().__init__(says.format(name=_quoted(name[:60]), names=names))


def opened(file: Path, shoot: str | None) -> tuple[Binder, Shoot]:
    """The binder in a file and the shoot asked for. Raises the errors of loading and of this module."""
    from binder.cli.loaded import loaded

    binder = loaded(file)
    return binder, chosen_shoot(binder, shoot)


def chosen_shoot(binder: Binder, name: str | None) -> Shoot:
    """The shoot called `name` (or with that id); without a name the only one there is."""
    shoots = sorted(binder.shoots.values(), key=lambda shoot: (shoot.name.casefold(), shoot.id))
    if not shoots:
        raise NoShootError(binder.settings.name)
    fitting = shoots if name is None else _called(shoots, name)
    if not fitting:
        raise UnknownShootError(name or "", shoots)
    if len(fitting) > 1:
        raise ShootNotChosenError(fitting)
    return fitting[0]


def _called(shoots: list[Shoot], name: str) -> list[Shoot]:
    by_id = [shoot for shoot in shoots if shoot.id == name]
    exactly = [shoot for shoot in shoots if shoot.name == name]
    folded = [shoot for shoot in shoots if shoot.name.casefold() == name.strip().casefold()]
    return by_id or exactly or folded


def _told_apart(shoots: list[Shoot]) -> list[str]:
    """Their names; the ids instead where two have one name."""
    names = [shoot.name for shoot in shoots]
    return [shoot.id if names.count(shoot.name) > 1 else shoot.name for shoot in shoots]


def _quoted(name: str) -> str:
    return f"“{name}”"
