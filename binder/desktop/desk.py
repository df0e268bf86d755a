"""What every part of the window works with: the open binder, the shoot chosen, and ways to change and to go."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from binder.desktop.checks_sheet import checks_are_quick
from binder.desktop.errors import sentence_for
from binder.desktop.sheet.sheet import Sight
from binder.desktop.worked_out import WorkedOut
from binder.figures.checks import Check, shoot_checks
from binder.kitchen.errors import BinderError

if TYPE_CHECKING:
    from collections.abc import Callable

    from binder.desktop.dialogs import Dialogs
    from binder.desktop.document_bridge import DocumentBridge
    from binder.desktop.task_runner import TaskRunner
    from binder.desktop.window_settings import WindowSettings
    from binder.figures.missing import Place
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.kitchen.shoot import Shoot


class Desk(QObject):
    """Shared by the window and its pages; holds no data but which shoot is looked at."""

    changed = Signal()
    """The binder, or the shoot looked at, is another: figures are to follow."""
    asked = Signal(object)
    """Someone wants to go to a Place."""
    said = Signal(str)
    """A sentence for the message strip."""

    def __init__(
        self,
        bridge: DocumentBridge,
        dialogs: Dialogs,
        tasks: TaskRunner,
        settings: WindowSettings,
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self.bridge, self.dialogs, self.tasks, self.settings = bridge, dialogs, tasks, settings
        self._shoot: str | None = None
        self.checks: WorkedOut[tuple[Check, ...]] = WorkedOut(tasks, "checks", shoot_checks, checks_are_quick, self)
        self._choose()
        bridge.changed.connect(self._follow)
        bridge.opened.connect(self._open)
        bridge.failed.connect(self.said)

    @property
    def binder(self) -> Binder:
        """The binder as it is now."""
        return self.bridge.binder

    @property
    def shoot(self) -> Shoot | None:
        """The shoot looked at; None where the binder has none."""
        return self.binder.shoots.get(self._shoot or "")

    def sight(self, subject: str | None = None) -> Sight:
        """What is looked at, by a part of a page that is about one record."""
        return Sight(self.binder, self._shoot, subject)

    def look_at_shoot(self, shoot: str) -> None:
        """Choose another shoot."""
        if shoot != self._shoot and shoot in self.binder.shoots:
            self._shoot = shoot
            self._announce()

    def make(self, change: Change) -> bool:
        """Make a change; where it cannot be made the message strip says so."""
        return self.bridge.make(change)

    def attempt(self, action: Callable[[], object]) -> bool:
        """Do something that may fail for reasons a person can mend; say those. Whether it was done."""
        try:
            action()
        except (BinderError, OSError) as error:
            self.said.emit(sentence_for(error))
            return False
        return True

    def say(self, sentence: str) -> None:
        """Say a sentence in the message strip; nothing where it is empty."""
        if sentence:
            self.said.emit(sentence)

    def go_to(self, place: Place) -> None:
        """Go to where a record is shown."""
        self.asked.emit(place)

    def _follow(self) -> None:
        self._choose()
        self._announce()

    def _announce(self) -> None:
        """Have the checks follow, then everyone else."""
        self.tasks.window_first.take_turn()
        self.checks.follow(self.binder, self._shoot)
        self.changed.emit()

    def _open(self) -> None:
        self._shoot = None
        self._follow()

    def _choose(self) -> None:
        """Keep the shoot chosen, or take the first by date."""
        if self._shoot not in self.binder.shoots:
            ordered = sorted(self.binder.shoots.values(), key=_by_date)
            self._shoot = ordered[0].id if ordered else None


def _by_date(shoot: Shoot) -> tuple[str, str]:
    return (shoot.on.isoformat() if shoot.on else "9999", shoot.name.casefold())
