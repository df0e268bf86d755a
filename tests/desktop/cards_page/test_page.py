"""The cards on screen are the very pages that are printed and saved."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from pypdf import PdfReader
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from binder.desktop.cards_page.page import CardsPage
from binder.desktop.cards_page.print_wishes import Wishes
from binder.desktop.main_window import MainWindow
from binder.desktop.sheet.cell import Mark
from binder.kitchen.binder import Binder
from binder.kitchen.change import changed
from binder.kitchen.edits.shoots import set_shoot
from binder.paper.print_choices import Look, PrintChoices
from binder.paper.print_set import SheetKind, kinds_of, sheet_bytes
from tests.desktop.conftest import Answers, MakeWindow

OFFSCREEN = pytest.mark.qt_log_ignore("does not support propagateSizeHints")
"""The screen of the tests says so of every window that has a least size."""


def shown_on(window: MainWindow, qtbot: QtBot) -> CardsPage:
    page = window.page("cards")
    assert isinstance(page, CardsPage)
    window.show_page("cards")
    laid_out(page, qtbot)
    return page


def laid_out(page: CardsPage, qtbot: QtBot) -> None:
    """Wait until the pages of the binder as it is are shown."""
    qtbot.waitUntil(lambda: page.shown is not None and page.shown[0] == page.layout_wanted(), timeout=15_000)


@pytest.fixture
def cards(window: MainWindow, qtbot: QtBot) -> CardsPage:
    return shown_on(window, qtbot)


def test_the_preview_shows_the_sheets_own_bytes(cards: CardsPage, window: MainWindow) -> None:
    assert cards.preview.content == sheet_bytes(window.desk.binder, "day", SheetKind.CARDS)
    count = cards.preview.pages.pageCount()
    assert cards.preflight.sentence.text() == f"{count} pages, nothing is wrong with them"
    assert cards.number.of.text() == f"of {count}"
    assert cards.strip.pictures.rowCount() == count


def test_an_edit_shows_on_the_pages(cards: CardsPage, window: MainWindow, qtbot: QtBot) -> None:
    before = cards.preview.content
    window.desk.make(set_shoot(window.desk.binder.shoots["day"], name="Another name"))
    laid_out(cards, qtbot)
    assert cards.preview.content != before
    assert cards.preview.content == sheet_bytes(window.desk.binder, "day", SheetKind.CARDS)


def test_an_edit_leaves_the_page_that_was_looked_at(cards: CardsPage, window: MainWindow, qtbot: QtBot) -> None:
    cards.preview.go_to_page(2)
    window.desk.make(set_shoot(window.desk.binder.shoots["day"], name="Another name"))
    laid_out(cards, qtbot)
    assert cards.preview.page == 2


def test_another_sheet_and_another_paper_are_chosen(cards: CardsPage, window: MainWindow, qtbot: QtBot) -> None:
    cards.list.select_key("shopping")
    cards.paper.setCurrentIndex(cards.paper.findData("a5"))
    cards.paper.activated.emit(cards.paper.currentIndex())
    laid_out(cards, qtbot)
    assert cards.preview.content == sheet_bytes(window.desk.binder, "day", SheetKind.SHOPPING, "a5")


def test_every_kind_of_sheet_can_be_chosen(cards: CardsPage) -> None:
    model = cards.list.sheet_model
    assert [model.row_at(at).key for at in range(model.rowCount())] == [kind.value for kind in SheetKind]


def test_how_it_is_printed_shows_on_the_pages(cards: CardsPage, window: MainWindow, qtbot: QtBot) -> None:
    cards.form.look.setCurrentIndex(cards.form.look.findData(Look.ON_CAMERA.value))
    cards.form.read_from.setEditText("1 m")
    cards.form.sheet.setCurrentIndex(cards.form.sheet.findData("a3"))
    cards.form.sheet.activated.emit(cards.form.sheet.currentIndex())
    laid_out(cards, qtbot)
    choices = PrintChoices(metres=1.0, look=Look.ON_CAMERA, sheet="a3")
    assert cards.preview.content == sheet_bytes(window.desk.binder, "day", SheetKind.CARDS, choices=choices)


def test_how_it_is_printed_is_kept_for_the_next_time(cards: CardsPage, window: MainWindow) -> None:
    cards.form.look.setCurrentIndex(cards.form.look.findData(Look.ON_CAMERA.value))
    cards.form.look.activated.emit(cards.form.look.currentIndex())
    again = CardsPage(window.desk)
    assert again.form.wishes == Wishes(look=Look.ON_CAMERA.value)
    assert again.form.look.key == Look.ON_CAMERA.value


def test_choices_that_cannot_be_had_are_said_and_the_pages_stay(cards: CardsPage) -> None:
    before = cards.preview.content
    cards.form.labels.setEditText("round ones")
    cards.form.labels.activated.emit(-1)
    assert "cannot be read" in cards.preflight.sentence.text()
    assert cards.preview.content == before


def test_a_margin_that_a_paper_is_too_small_for_is_said(cards: CardsPage, qtbot: QtBot) -> None:
    cards.paper.setCurrentIndex(cards.paper.findData("4x6"))
    cards.form.margin.setEditText("35")
    cards.form.margin.activated.emit(-1)
    qtbot.waitUntil(lambda: "margin" in cards.preflight.sentence.text())


def with_sign(chickpeas: Binder) -> Binder:
    """The chickpea day with a step that no installed face can print."""
    from binder.kitchen.change import apply

    step = max(chickpeas.steps.values(), key=lambda one: (chickpeas.recipes[one.recipe].name, one.position))
    lost = replace(step, text=f"{step.text} \U000f1234")
    return apply(chickpeas, changed("x", before=[step], after=[lost]))


def test_a_failing_page_is_named_and_led_to(window_on: MakeWindow, chickpeas: Binder, qtbot: QtBot) -> None:
    cards = shown_on(window_on(with_sign(chickpeas)), qtbot)
    (link,) = cards.preflight.links
    assert "U+F1234" in link.text()
    number = int(link.text().removeprefix("Page ").split(":")[0])
    assert number > 1
    link.click()
    assert cards.preview.page == number - 1
    assert cards.strip.pictures.index(number - 1).data(Qt.ItemDataRole.UserRole) == Mark.WARN


def test_a_failing_page_among_several_on_a_sheet_is_led_to(
    window_on: MakeWindow, chickpeas: Binder, qtbot: QtBot
) -> None:
    cards = shown_on(window_on(with_sign(chickpeas)), qtbot)
    cards.form.sheet.setCurrentIndex(cards.form.sheet.findData("a3"))
    cards.form.sheet.activated.emit(0)
    laid_out(cards, qtbot)
    (link,) = cards.preflight.links
    link.click()
    assert "[U+F1234]" in cards.preview.pages.getAllText(cards.preview.page).text()


def test_times_are_on_the_sheet_once_the_day_is_planned(cards: CardsPage, qtbot: QtBot) -> None:
    cards.list.select_key("running-order")
    qtbot.waitUntil(lambda: cards.shown is not None and bool(cards.shown[0].choices.plans), timeout=30_000)
    pages = cards.preview.pages
    assert "Wrap" in "".join(pages.getAllText(page).text() for page in range(pages.pageCount()))


# Looking


def test_pages_are_walked_with_keys_and_the_strip_follows(cards: CardsPage) -> None:
    preview = cards.preview
    QTest.keyClick(preview, Qt.Key.Key_PageDown)
    assert (preview.page, cards.strip.currentIndex().row(), cards.number.number.text()) == (1, 1, "2")
    QTest.keyClick(preview, Qt.Key.Key_End)
    assert preview.page == preview.pages.pageCount() - 1
    cards.strip.setCurrentIndex(cards.strip.pictures.index(0))
    assert preview.page == 0
    cards.number.number.setText("3")
    QTest.keyClick(cards.number.number, Qt.Key.Key_Return)
    assert preview.page == 2


def test_pages_are_shown_larger_and_fit_again(cards: CardsPage) -> None:
    preview = cards.preview
    whole = preview.shown_factor
    QTest.keyClick(preview, Qt.Key.Key_Plus)
    assert preview.shown_factor == pytest.approx(whole * 1.2)
    assert cards.zooms.factor.text() == f"{round(whole * 120)} %"
    QTest.keyClick(preview, Qt.Key.Key_W)
    assert preview.shown_factor > whole
    QTest.keyClick(preview, Qt.Key.Key_P)
    assert preview.shown_factor == pytest.approx(whole)


def test_words_are_found_on_the_pages(cards: CardsPage, qtbot: QtBot) -> None:
    pages = cards.preview.pages
    texts = [pages.getAllText(page).text().casefold() for page in range(pages.pageCount())]
    last = next(page for page in reversed(range(len(texts))) if "salt" in texts[page])
    cards.search.field.setText("salt")
    QTest.keyClick(cards.search.field, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: cards.search.number == sum(text.count("salt") for text in texts))
    cards.search.go_back()
    assert cards.search.count.text().endswith(f"of {cards.search.number}")
    while not cards.search.count.text().startswith(f"{cards.search.number} "):
        cards.search.go_back()
    assert cards.preview.page == last


def test_words_that_are_nowhere_are_said(cards: CardsPage, qtbot: QtBot) -> None:
    cards.search.field.setText("moonberry")
    qtbot.waitUntil(lambda: cards.search.count.text() == "not on these pages")
    QTest.keyClick(cards.search.field, Qt.Key.Key_Escape)
    qtbot.waitUntil(lambda: not cards.search.count.text())


# Taking away


def test_what_is_saved_is_what_is_shown(cards: CardsPage, answers: Answers, tmp_path: Path) -> None:
    answers.file = tmp_path / "cards.pdf"
    cards.save()
    assert answers.file.read_bytes() == cards.preview.content
    assert answers.asked == ["station-cards.pdf"]


def test_what_is_saved_right_after_an_edit_has_it(
    cards: CardsPage, window: MainWindow, answers: Answers, tmp_path: Path, qtbot: QtBot
) -> None:
    answers.file = tmp_path / "cards.pdf"
    window.desk.make(set_shoot(window.desk.binder.shoots["day"], name="Another name"))
    cards.save()
    qtbot.waitUntil(answers.file.exists)
    assert answers.file.read_bytes() == sheet_bytes(window.desk.binder, "day", SheetKind.CARDS)


def test_a_page_is_saved_as_a_picture(cards: CardsPage, answers: Answers, tmp_path: Path) -> None:
    answers.file = tmp_path / "page.png"
    cards.preview.go_to_page(1)
    cards.save_page()
    assert answers.asked == ["station-cards-02.png"]
    picture = QImage(str(answers.file))
    assert max(picture.width(), picture.height()) == 2400
    assert picture.pixelColor(2, 2).name() == "#ffffff"
    corner = {picture.pixel(x, y) for x in range(0, picture.width(), 7) for y in range(0, picture.height(), 7)}
    assert len(corner) > 1


def test_every_page_is_saved_as_a_picture(
    cards: CardsPage, window: MainWindow, answers: Answers, tmp_path: Path, qtbot: QtBot
) -> None:
    answers.file = tmp_path
    cards.save_every_page()
    qtbot.waitUntil(lambda: not cards.taking.busy, timeout=20_000)
    assert len(list(tmp_path.glob("station-cards-*.png"))) == cards.preview.pages.pageCount()
    assert "pages are in" in window.frame.strip.says


@OFFSCREEN
def test_the_whole_set_is_saved_into_a_folder(
    cards: CardsPage, answers: Answers, window: MainWindow, tmp_path: Path, qtbot: QtBot
) -> None:
    answers.file = tmp_path / "set"
    asking = cards.ask_for_set()
    assert asking is not None
    asking.save.click()
    assert cards.going_on.isVisible()
    qtbot.waitUntil(lambda: not cards.taking.busy, timeout=30_000)
    written = list(answers.file.glob("*.pdf"))
    assert len(written) == len(kinds_of(window.desk.binder, "day"))
    assert f"{len(written)} files" in window.frame.strip.says
    assert not cards.going_on.isVisible()
    order = PdfReader(answers.file / "running-order.pdf")
    assert "Wrap" in "".join(page.extract_text() for page in order.pages)


@OFFSCREEN
def test_a_folder_that_cannot_be_written_is_said(
    cards: CardsPage, answers: Answers, window: MainWindow, tmp_path: Path, qtbot: QtBot
) -> None:
    in_the_way = tmp_path / "file"
    in_the_way.write_text("no folder")
    answers.file = in_the_way / "cards.pdf"
    cards.save()
    assert window.frame.strip.says
    window.frame.strip.hide()
    asking = cards.ask_for_set()
    assert asking is not None
    asking.save.click()
    qtbot.waitUntil(lambda: not cards.taking.busy, timeout=30_000)
    assert "cannot be written" in window.frame.strip.says


def test_printing_sends_every_page(cards: CardsPage, answers: Answers, window: MainWindow) -> None:
    window.actions_.run("print")
    assert answers.printed == [cards.preview.pages.pageCount()]


def test_the_page_looked_at_can_be_printed_alone(cards: CardsPage, answers: Answers) -> None:
    cards.preview.go_to_page(2)
    cards.print()
    assert answers.wanted[-1].shown == 2


@OFFSCREEN
def test_each_card_is_printed_as_often_as_wanted(cards: CardsPage, answers: Answers) -> None:
    assert cards.shown is not None
    asking = cards.taking.print_copies(cards.shown[0])
    first, second = list(asking.counts.values())[:2]
    first.setValue(3)
    second.setValue(0)
    pages = [len(part.pages) for part in asking.parts]
    asking.print.click()
    assert answers.printed == [3 * pages[0] + sum(pages[2:])]
    assert answers.wanted[-1].order is not None
    assert answers.wanted[-1].order[: pages[0]] == tuple(range(pages[0]))


def test_small_pictures_come_once_the_page_looked_at_is_drawn(cards: CardsPage, qtbot: QtBot) -> None:
    index = cards.strip.pictures.index(0)

    def picture() -> object:
        return index.data(Qt.ItemDataRole.DecorationRole)

    qtbot.waitUntil(lambda: isinstance(picture(), QImage))
    assert cards.strip.pictures.index(1).data(Qt.ItemDataRole.AccessibleTextRole) == "page 2"
