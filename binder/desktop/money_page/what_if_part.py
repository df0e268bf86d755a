"""The question of risen prices: asked on a line, answered in a table beneath, a moment later."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from binder.desktop.money_page.what_if import WhatIf, WhatIfSheet, question_of, typed_percent, what_if
from binder.desktop.money_page.what_if_line import WhatIfLine
from binder.desktop.worked_out import WorkedOut
from binder.kitchen.errors import BinderError

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from binder.desktop.desk import Desk
    from binder.desktop.money_page.parts import Parts
    from binder.kitchen.binder import Binder


class WhatIfPart(QObject):
    """Changes nothing in the binder."""

    def __init__(self, desk: Desk, parts: Parts, paper: QWidget) -> None:
        super().__init__(paper)
        self._desk, self._parts = desk, parts
        self._answer: WorkedOut[WhatIf] = WorkedOut(desk.tasks, "what if", what_if, _is_quick, self)
        self._answer.changed.connect(self._show)
        sheet = WhatIfSheet(self._answer.latest)
        self.line = WhatIfLine(paper)
        self.line.typed.connect(self.refresh)
        parts.add(self.line, sheet.name)
        self.table = parts.table(sheet, title="")

    def refresh(self) -> None:
        """Follow the binder, and what is asked."""
        shoot = self._desk.shoot
        try:
            percent = typed_percent(self._desk.binder, self.line.field.text())
        except BinderError as error:
            self.line.say(error.says)
            percent = None
        else:
            self.line.say("")
        question = None if shoot is None or percent is None else question_of(shoot.id, percent)
        self._answer.follow(self._desk.binder, question)

    def _show(self) -> None:
        self.table.show_sight(self._desk.sight())
        self._parts.show_filled(self.table)


def _is_quick(_binder: Binder, _question: str) -> bool:
    """Never: every price is another, so that everything is worked out anew."""
    return False
