"""The one way an error reaches a person: in one sentence; what nobody can mend is logged as well."""

from __future__ import annotations

import logging
import sys
from typing import TYPE_CHECKING

from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable
    from types import TracebackType

_log = logging.getLogger(__name__)


def sentence_for(error: BaseException) -> str:
    """What to tell a person about an error."""
    if isinstance(error, BinderError):
        return error.says
    if isinstance(error, OSError):
        return _("{file} could not be used: {reason}.").format(
            file=error.filename or _("A file"), reason=error.strerror or str(error)
        )
    return _("Something went wrong inside the program. The binder is as it was; what happened is in the log.")


class ErrorReporter:
    """Says errors through `say`, wherever they come from; also those that Qt passes to Python's last resort."""

    def __init__(self, say: Callable[[str], None]) -> None:
        self._say = say

    def attempt(self, action: Callable[[], object]) -> bool:
        """Do something; where it raises an error that a person can mend, say it. Whether it was done."""
        try:
            action()
        except (BinderError, OSError) as error:
            self._say(sentence_for(error))
            return False
        return True

    def install(self) -> None:
        """Take Python's last resort: Qt leads exceptions of slots and of overridden methods there."""
        sys.excepthook = self.last_resort

    def last_resort(self, kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        """Say an error that nobody caught; log it unless it is one that a person can mend."""
        if isinstance(error, KeyboardInterrupt):
            sys.__excepthook__(kind, error, trace)
            return
        if not isinstance(error, BinderError):
            _log.error("An error reached the last resort", exc_info=(kind, error, trace))
        self._say(sentence_for(error))
