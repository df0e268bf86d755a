"""The cards on screen are the very pages that are printed and saved."""

from __future__ import annotations

from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from binder.desktop.cards_page.page import CardsPage
from binder.desktop.main_window import MainWindow
from binder.kitchen.edits.shoots import set_shoot
from binder.paper.print_set import SheetKind, kinds_of, sheet_bytes
from tests.desktop.conftest import Answers


@pytest.fixture
def cards(window: MainWindow, qtbot: QtBot) -> CardsPage:
    page = window.page("cards")
    assert isinstance(page, CardsPage)
    with qtbot.waitSignal(window.desk.tasks.finished):
        window.show_page("cards")
    return page


def test_the_preview_shows_the_sheets_own_bytes(cards: CardsPage, window: MainWindow) -> None:
    assert cards.preview.content == sheet_bytes(window.desk.binder, "day", SheetKind.CARDS)
    assert cards.state.text() == f"{cards.preview.pages.pageCount()} pages"


def test_an_edit_shows_on_the_pages(cards: CardsPage, window: MainWindow, qtbot: QtBot) -> None:
    before = cards.preview.content
    with qtbot.waitSignal(window.desk.tasks.finished):
        window.desk.make(set_shoot(window.desk.binder.shoots["day"], name="Another name"))
    assert cards.preview.content != before
    assert cards.preview.content == sheet_bytes(window.desk.binder, "day", SheetKind.CARDS)


def test_another_sheet_and_another_paper_are_chosen(cards: CardsPage, window: MainWindow, qtbot: QtBot) -> None:
    with qtbot.waitSignal(window.desk.tasks.finished):
        cards.list.select_key("shopping")
    with qtbot.waitSignal(window.desk.tasks.finished):
        cards.paper.setCurrentIndex(cards.paper.findData("a5"))
    assert cards.preview.content == sheet_bytes(window.desk.binder, "day", SheetKind.SHOPPING, "a5")


def test_what_is_saved_is_what_is_shown(cards: CardsPage, answers: Answers, tmp_path: Path) -> None:
    answers.file = tmp_path / "cards.pdf"
    cards.save()
    assert answers.file.read_bytes() == cards.preview.content
    assert answers.asked == ["station-cards.pdf"]


def test_the_whole_set_is_saved_into_a_folder(
    cards: CardsPage, answers: Answers, window: MainWindow, tmp_path: Path
) -> None:
    answers.file = tmp_path / "set"
    cards.save_set()
    assert len(list(answers.file.glob("*.pdf"))) == len(kinds_of(window.desk.binder, "day"))


def test_a_folder_that_cannot_be_written_is_said(
    cards: CardsPage, answers: Answers, window: MainWindow, tmp_path: Path
) -> None:
    in_the_way = tmp_path / "file"
    in_the_way.write_text("no folder")
    answers.file = in_the_way / "cards.pdf"
    cards.save()
    assert window.frame.strip.says


def test_printing_sends_every_page(cards: CardsPage, answers: Answers, window: MainWindow) -> None:
    window.actions_.run("print")
    assert answers.printed == [cards.preview.pages.pageCount()]
