"""However a table comes to other rows, each is as high as in a table that shows them at first, and reaches as far."""

from __future__ import annotations

from dataclasses import dataclass

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from binder.desktop.sheet.cell import Cell, Column, Row
from binder.desktop.sheet.sheet import NotEditableError, PlainSheet, Sight
from binder.desktop.sheet.sheet_view import SheetView
from binder.desktop.typeface import sized
from binder.kitchen.binder import Binder
from binder.kitchen.change import Change


@dataclass
class Given(PlainSheet):
    """Shows rows as they are given."""

    given: tuple[Row, ...] = ()
    name: str = "Given"
    columns: tuple[Column, ...] = (Column("one", "one", characters=12), Column("two", "two"), Column("three", "three"))

    def rows(self, sight: Sight) -> list[Row]:
        return list(self.given)

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        raise NotEditableError


LONG = "a name that goes on below as it is much too long"
ROWS = st.builds(
    lambda key, text, folds, spans, lines, gap, wraps: Row(
        key, (Cell(text, folds=folds), Cell("2"), Cell("3")), spans=spans, lines=lines, gap=gap, wraps=wraps
    ),
    st.sampled_from("abcdefgh"),
    st.sampled_from(["short", LONG, LONG * 2]),
    st.booleans(),
    st.sampled_from([(), (), ((0, 2),), ((1, 2),)]),
    st.sampled_from([1.5, 1.6]),
    st.sampled_from([0.0, 4.0]),
    st.booleans(),
)
TABLES = st.lists(ROWS, max_size=8, unique_by=lambda row: row.key).map(tuple)


def view_of(rows: tuple[Row, ...], qtbot: QtBot) -> SheetView:
    view = SheetView(Given(rows), lambda _change: True)
    qtbot.addWidget(view)
    view.resize(400, 300)
    view.show_sight(Sight(Binder()))
    return view


def shape(view: SheetView) -> list[tuple[int, list[int]]]:
    model = view.sheet_model
    return [
        (view.rowHeight(at), [view.columnSpan(at, column) for column in range(model.columnCount())])
        for at in range(model.rowCount())
    ]


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow])
@given(st.lists(TABLES, min_size=2, max_size=4))
def test_rows_are_as_high_as_if_they_were_shown_at_first(qtbot: QtBot, tables: list[tuple[Row, ...]]) -> None:
    view = view_of(tables[0], qtbot)
    view.fit_rows()
    for rows in tables[1:]:
        view.sheet_model.sheet.given = rows  # type: ignore[attr-defined]
        view.show_sight(Sight(Binder()))
        anew = view_of(rows, qtbot)
        anew.fit_rows()
        assert shape(view) == shape(anew)
        assert view.height() == anew.height() == view.content_height()


@pytest.mark.parametrize("factor", [0.8, 1.5])
def test_larger_text_makes_all_rows_anew(qtbot: QtBot, qapp: QApplication, factor: float) -> None:
    rows = (Row("a", (Cell(LONG, folds=True), Cell("2"), Cell("3"))), Row("b", (Cell("1"),) * 3, gap=4.0))
    view = view_of(rows, qtbot)
    before = shape(view)
    view.setFont(sized(qapp.font(), factor))
    after = shape(view)
    assert all((new > old) == (factor > 1) for (old, _spans), (new, _other) in zip(before, after, strict=True))
