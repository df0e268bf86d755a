"""The window in which a price list is brought in: columns chosen, each row's fate seen, then all taken or none."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QSignalBlocker, Qt
from PySide6.QtWidgets import (
    QAbstractItemView,
    QCheckBox,
    QComboBox,
    QDialog,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QLineEdit,
    QPushButton,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from binder.desktop.errors import sentence_for
from binder.desktop.larder_page.food_list import food_rows
from binder.desktop.price_import.column_mapper import ColumnMapper
from binder.desktop.price_import.fate_model import FATE, NUMBER, SAYS, STANDS, FateModel, fate_word
from binder.desktop.price_import.reading import Question, Reading, read
from binder.desktop.spacing import characters, space
from binder.desktop.task_runner import Lane, Outcome, Task
from binder.desktop.wait_line import WaitLine
from binder.desktop.words.figure_text import number_text
from binder.desktop.words.typed import typed_date
from binder.exchange.price_list import Fate
from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _, listed, ngettext

if TYPE_CHECKING:
    from collections.abc import Callable
    from datetime import date
    from pathlib import Path

    from binder.desktop.desk import Desk
    from binder.kitchen.change import Change

READING = "price list"
"""The subject of reading, in the task runner."""


class PriceWindow(QDialog):
    """Reads beside the window; `take` waits until what is shown is what was asked for."""

    def __init__(self, desk: Desk, file: Path, content: bytes, today: date, parent: QWidget) -> None:
        super().__init__(parent)
        self._desk = desk
        self.question = Question(content, file.name, today, today)
        self.reading: Reading | None = None
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowModality(Qt.WindowModality.WindowModal)
        self.setWindowTitle(_("Prices of {file}").format(file=file.name))
        self._make_head()
        self._make_rows()
        self._make_foot()
        self._lay_out(parent)
        desk.tasks.finished.connect(self._finish)
        desk.tasks.window_first.watch(self)
        self._say_date()
        self._read_again()

    # What it is made of

    def _make_head(self) -> None:
        self.sheets = QComboBox(self)
        self.sheets.setAccessibleName(_("Sheet of the workbook"))
        self.sheets.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToContents)
        self.sheets.activated.connect(self._choose_sheet)
        self._sheets_label = QLabel(_("S&heet"), self)
        self._sheets_label.setBuddy(self.sheets)
        for widget in (self.sheets, self._sheets_label):
            widget.hide()
        self.mapper = ColumnMapper(self)
        self.mapper.setEnabled(False)
        self.mapper.chosen.connect(self._choose_column)
        self.day = QLineEdit(self)
        self.day.setFixedWidth(characters(self.font(), 14))
        self.day.setText(self.question.today.isoformat())
        self.day.textChanged.connect(self._say_date)
        self.day.editingFinished.connect(self._choose_day)
        self._day_wrong = _words(self)

    def _make_rows(self) -> None:
        self.only = QComboBox(self)
        self.only.setAccessibleName(_("Rows shown"))
        self.only.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToContents)
        self.only.activated.connect(self._show_only)
        self.only.setEnabled(False)
        self.fates = FateModel(self)
        self.table = QTableView(self)
        self.table.setAccessibleName(_("What becomes of each row"))
        self.table.setModel(self.fates)
        self.table.setShowGrid(False)
        self.table.setWordWrap(False)
        self.table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.table.setTabKeyNavigation(False)
        self.table.verticalHeader().hide()
        self.table.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.table.verticalHeader().setDefaultSectionSize(space(self, 6.5))
        header = self.table.horizontalHeader()
        header.setHighlightSections(False)
        header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        for column, width in ((NUMBER, 8), (FATE, 12), (STANDS, 42)):
            self.table.setColumnWidth(column, characters(self.font(), width))
        header.setSectionResizeMode(SAYS, QHeaderView.ResizeMode.Stretch)
        self.row_says = _words(self)
        self.row_says.setProperty("quiet", True)
        self.table.selectionModel().currentRowChanged.connect(self._say_row)
        self.fates.modelReset.connect(self._say_row)

    def _make_foot(self) -> None:
        self.wait = WaitLine(self._desk.tasks, READING, self)
        self.wait.stopped.connect(self._stopped)
        self.summary = _words(self)
        self.good_rows = QCheckBox(_("Leave the refused rows out and take the &others"), self)
        self.good_rows.toggled.connect(self._choose_good_rows)
        self.new_stores = QCheckBox(self)
        self.new_stores.toggled.connect(self._choose_new_stores)
        self.new_stores.hide()
        self.again = QPushButton(_("&Read again"), self)
        self.again.clicked.connect(self._read_again)
        self.again.hide()
        self.take = QPushButton(_("&Take these prices"), self)
        self.take.setProperty("leading", True)
        self.take.clicked.connect(self._take)
        self.leave = QPushButton(_("Close"), self)
        self.leave.clicked.connect(self.close)

    def _lay_out(self, parent: QWidget) -> None:
        gap = space(self, 2)
        day = QLabel(_("Prices without a &date are of"), self)
        day.setBuddy(self.day)
        dates = _beside(gap, day, self.day, self._day_wrong)
        dates.addWidget(self._sheets_label)
        dates.addWidget(self.sheets)
        foot = _beside(gap, self.good_rows)
        foot.addStretch(1)
        foot.addWidget(self.again)
        foot.addWidget(self.leave)
        foot.addWidget(self.take)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * gap, 2 * gap, 2 * gap, 2 * gap)
        layout.setSpacing(gap)
        layout.addWidget(self.mapper)
        layout.addLayout(dates)
        layout.addWidget(self.only, 0, Qt.AlignmentFlag.AlignLeft)
        layout.addWidget(self.table, 1)
        layout.addWidget(self._row_or_wait())
        layout.addWidget(self.summary)
        layout.addWidget(self.new_stores)
        layout.addLayout(foot)
        room = parent.window().size()
        self.resize(min(characters(self.font(), 160), room.width()), min(space(self, 170), room.height()))

    def _row_or_wait(self) -> QWidget:
        """The sentence of the row, or in its place how far reading is."""
        place = QWidget(self)
        layout = QVBoxLayout(place)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self.row_says)
        layout.addWidget(self.wait)
        place.setMinimumHeight(self.wait.sizeHint().height())
        return place

    def _begin_to_wait(self, says: str, *, stops: bool = True) -> None:
        self.row_says.hide()
        self.wait.begin(says, stops=stops)

    def _end_to_wait(self) -> None:
        self.wait.end()
        self.row_says.show()

    # What is chosen

    def _ask(self, question: Question) -> None:
        if question != self.question:
            self.question = question
            self._read_again()

    def _choose_sheet(self) -> None:
        self._ask(replace(self.question, sheet=self.sheets.currentText(), columns={}))

    def _choose_column(self, name: str, place: int | None) -> None:
        self._ask(self.question.with_column(name, place))

    def _choose_good_rows(self, chosen: bool) -> None:  # noqa: FBT001 - a signal gives it so
        self._ask(replace(self.question, good_rows=chosen))

    def _choose_new_stores(self, chosen: bool) -> None:  # noqa: FBT001 - a signal gives it so
        self._ask(replace(self.question, new_stores=chosen))

    def _typed_day(self) -> date | None:
        return typed_date(self._desk.binder, self.day.text())

    def _say_date(self) -> None:
        try:
            self._typed_day()
        except BinderError as error:
            self._day_wrong.setText(error.says)
        else:
            self._day_wrong.setText("" if self.day.text().strip() else _("Rows without a date are refused."))

    def _choose_day(self) -> None:
        try:
            on = self._typed_day()
        except BinderError:
            return
        self._ask(replace(self.question, priced_on=on))

    def _show_only(self) -> None:
        chosen = self.only.currentData()
        self.fates.show_only(Fate(chosen) if chosen else None)

    def _say_row(self) -> None:
        """The sentence of the row that is current, whole: in the table there is room for its beginning only."""
        self.row_says.setText(self.fates.sentence(self.table.currentIndex().row()))

    # Reading

    def _read_again(self) -> None:
        known = self.reading.table if self.reading and self.reading.question.sheet == self.question.sheet else None
        binder, question = self._desk.binder, self.question
        self._settle()
        self.again.hide()
        self._begin_to_wait(_("Reading {file}").format(file=question.source))
        work: Callable[[Task], Reading] = lambda task: read(binder, question, task.report, known=known)  # noqa: E731
        self._desk.tasks.run(READING, work, lane=Lane.LONG, soon=True)

    def _finish(self, outcome: object) -> None:
        if not isinstance(outcome, Outcome) or outcome.subject != READING:
            return
        self._end_to_wait()
        if isinstance(outcome.result, Reading):
            self._show(outcome.result)
        elif outcome.error is not None:
            self._show_none(sentence_for(outcome.error))

    def _stopped(self) -> None:
        self._desk.tasks.cancel(READING)
        self._end_to_wait()
        self.again.show()
        self.summary.setText(_("Reading was stopped. Read it again, or close."))

    def _show(self, reading: Reading) -> None:
        self.reading = reading
        self.mapper.show_reading(reading)
        self.mapper.setEnabled(True)
        self._list_sheets(reading)
        self.fates.show_reading(reading)
        self._list_fates(reading)
        self.summary.setText(reading.prices.summary() if reading.prices else reading.why)
        refused = bool(reading.prices and reading.prices.refused)
        self.good_rows.setEnabled(refused or self.question.good_rows)
        self._offer_stores(reading)
        self._settle()

    def _show_none(self, why: str) -> None:
        """Nothing could be read, so that no rows of a sheet before stay in sight; another sheet can be chosen."""
        self.reading = None
        self.fates.show_reading(None)
        self.only.clear()
        self.summary.setText(why)
        self._settle()

    def _offer_stores(self, reading: Reading) -> None:
        """A list of a store that is not in the binder yet need not wait until the store is."""
        names = reading.prices.unknown_stores if reading.prices else ()
        if names:
            shown = listed([f"“{name[:40]}”" for name in names[:3]] + (["…"] if len(names) > 3 else []))  # noqa: PLR2004
            says = ngettext("Add the &store {names}", "Add the &stores {names}", len(names))
            self.new_stores.setText(says.format(names=shown.replace("&", "&&")))
        self.new_stores.setVisible(bool(names) or self.question.new_stores)

    def _list_sheets(self, reading: Reading) -> None:
        with QSignalBlocker(self.sheets):
            self.sheets.clear()
            self.sheets.addItems(list(reading.table.sheets))
            self.sheets.setCurrentText(reading.table.sheet)
        for widget in (self.sheets, self._sheets_label):
            widget.setVisible(len(reading.table.sheets) > 1)

    def _list_fates(self, reading: Reading) -> None:
        """What may be shown alone, with how many there are; what was shown stays so."""
        binder, chosen = self._desk.binder, self.only.currentData()
        counts = reading.prices.counts if reading.prices else {}
        every = self.fates.count
        with QSignalBlocker(self.only):
            self.only.clear()
            all_rows = ngettext("{count} row", "All {count} rows", every).format(count=number_text(binder, every))
            self.only.addItem(all_rows, "")
            for fate in Fate:
                if counts.get(fate):
                    count = number_text(binder, counts[fate])
                    self.only.addItem(_("{fate}: {count}").format(fate=fate_word(fate), count=count), fate.value)
            self.only.setCurrentIndex(max(0, self.only.findData(chosen)))
        self.only.setEnabled(bool(counts))
        self._show_only()

    # Taking

    @property
    def change(self) -> Change | None:
        """What is to be done, once it is what was asked for."""
        reading = self.reading
        if reading is None or reading.prices is None or reading.question != self.question:
            return None
        return reading.prices.change

    def _settle(self) -> None:
        self.take.setEnabled(self.change is not None)

    def _take(self) -> None:
        change = self.change
        if change is None:
            return
        self.setEnabled(False)
        self._begin_to_wait(
            _("Writing {count} edits").format(count=number_text(self._desk.binder, len(change.edits))), stops=False
        )
        self._desk.bridge.make_beside(change, self._desk.tasks, self._taken, food_rows)

    def _taken(self, said: str) -> None:
        """The prices are in the binder; or not, and what is said is why."""
        self.setEnabled(True)
        self._end_to_wait()
        if said:
            self.summary.setText(said)
        else:
            self.close()

    def done(self, result: int) -> None:
        """Reading ends with the window; writing never half way."""
        if not self.isEnabled():
            return
        self._desk.tasks.cancel(READING)
        super().done(result)


def _words(parent: QWidget) -> QLabel:
    label = QLabel(parent)
    label.setTextFormat(Qt.TextFormat.PlainText)
    label.setWordWrap(True)
    return label


def _beside(gap: int, *widgets: QWidget) -> QHBoxLayout:
    layout = QHBoxLayout()
    layout.setSpacing(gap)
    for widget in widgets:
        layout.addWidget(widget, int(isinstance(widget, QLabel) and widget.wordWrap()))
    return layout
