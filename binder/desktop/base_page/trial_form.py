"""Records a trial: the day, what was put in, and what was got out of each form. What is amiss is said in place."""

from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent
from PySide6.QtWidgets import QFormLayout, QHBoxLayout, QLabel, QLineEdit, QPushButton, QVBoxLayout, QWidget

from binder.desktop.base_page.trial_typing import typed_trial
from binder.desktop.base_page.trials import use_means
from binder.desktop.spacing import characters, space
from binder.desktop.theme import tokens_for
from binder.figures.trials import measured_yields
from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Callable

    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.kitchen.conversion import Conversion


class TrialForm(QWidget):
    """Is about one conversion at a time. `make` is given the change and says whether it was made."""

    recorded = Signal()

    def __init__(self, make: Callable[[Change], bool], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._make = make
        self._binder: Binder | None = None
        self._conversion: Conversion | None = None
        self.on = self._field(_("Day of the trial"))
        self.taken = self._field(_("What was put in"))
        self.got: dict[str, QLineEdit] = {}
        self.wrong = QLabel(self)
        self.wrong.setWordWrap(True)
        self.wrong.setTextFormat(Qt.TextFormat.PlainText)
        self.button = QPushButton(_("Record a trial"), self)
        self.button.clicked.connect(self.record)
        self.means = QPushButton(self)
        self.means.clicked.connect(self._use_means)
        self._form = QFormLayout()
        self._form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.FieldsStayAtSizeHint)
        self._form.setHorizontalSpacing(space(self, 3))
        self._form.setVerticalSpacing(space(self, 1))
        self._form.addRow(_("Day"), self.on)
        self._put_in = QLabel(self)
        self._put_in.setBuddy(self.taken)
        self._form.addRow(self._put_in, self.taken)
        self.taken.setPlaceholderText("500 g")
        buttons = QHBoxLayout()
        buttons.addWidget(self.button)
        buttons.addWidget(self.means)
        buttons.addStretch(1)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(space(self, 2), space(self, 2), space(self, 2), space(self, 1))
        layout.setSpacing(space(self, 2))
        layout.addLayout(self._form)
        layout.addWidget(self.wrong)
        layout.addLayout(buttons)
        self._say("")

    def _field(self, name: str) -> QLineEdit:
        field = QLineEdit(self)
        field.setAccessibleName(name)
        field.setMinimumWidth(characters(self.font(), 18))
        field.returnPressed.connect(self.record)
        return field

    def show_conversion(self, binder: Binder, conversion: Conversion | None) -> None:
        """Be about a conversion; what has been typed stays as long as it is the same one."""
        forms = [outcome.form for outcome in binder.outcomes.where("conversion", conversion.id)] if conversion else []
        same = self._conversion is not None and conversion is not None and conversion.id == self._conversion.id
        self._binder, self._conversion = binder, conversion
        if not same or list(self.got) != forms:
            self._make_fields(forms, keep=same)
        self.setVisible(bool(forms))
        if conversion is not None:
            says = _("Put in, {form}").format(form=binder.foods[conversion.takes].name)
            self._put_in.setText(says)
            self._title_means(binder, conversion)

    def _make_fields(self, forms: list[str], *, keep: bool) -> None:
        for field in self.got.values():
            self._form.removeRow(field)
        self.got = {}
        if not keep:
            self.on.setText(date.today().isoformat())  # noqa: DTZ011 - the kitchen's own day
            self.taken.clear()
            self._say("")
        for form in forms:
            name = self._binder.foods[form].name if self._binder else form
            field = self._field(_("What was got out of {form}").format(form=name))
            self._form.addRow(_("Got out, {form}").format(form=name), field)
            self.got[form] = field

    def _title_means(self, binder: Binder, conversion: Conversion) -> None:
        most = max((len(one.ratios) for one in measured_yields(binder, conversion.id)), default=0)
        says = ngettext("Use the yield of {count} trial", "Use the mean of {count} trials", most).format(count=most)
        self.means.setText(says)
        self.means.setVisible(most > 0)
        self.means.setEnabled(use_means(binder, conversion) is not None)
        self.means.setToolTip("" if self.means.isEnabled() else _("These are the yields already."))

    def record(self) -> None:
        """Record what was typed, or say what is amiss."""
        if self._binder is None or self._conversion is None:
            return
        got = {form: field.text() for form, field in self.got.items()}
        try:
            change = typed_trial(self._binder, self._conversion, on=self.on.text(), taken=self.taken.text(), got=got)
        except BinderError as error:
            self._say(error.says)
            return
        if self._make(change):
            self.taken.clear()
            for field in self.got.values():
                field.clear()
            self._say("")
            self.recorded.emit()

    def _use_means(self) -> None:
        if self._binder is not None and self._conversion is not None:
            change = use_means(self._binder, self._conversion)
            if change is not None:
                self._make(change)

    def _say(self, sentence: str) -> None:
        self.wrong.setText(sentence)
        self.wrong.setVisible(bool(sentence))
        if sentence:
            self.wrong.setStyleSheet(f"color: {tokens_for(self.palette()).stop};")
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, sentence))
