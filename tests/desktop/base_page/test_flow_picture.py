"""The picture in a window: nodes are gone to by keys, heard, and lead where they say."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QAccessible
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QScrollArea
from pytestqt.qtbot import QtBot

from binder.desktop.appearance import Wardrobe
from binder.desktop.base_page.flow_painting import BAND_SHARE, LIT_SHARE, mixed
from binder.desktop.base_page.flow_picture import FlowPicture
from binder.desktop.theme import DARK, LIGHT, Tokens, contrast
from binder.figures.flow import Flow, base_flow
from binder.figures.flow_layout import PlacedBand
from binder.figures.missing import Place
from binder.kitchen.binder import Binder
from tests.kitchen_binder import small_binder
from tests.large_shoot import Size, large_shoot


@pytest.fixture
def picture(qtbot: QtBot, wardrobe: Wardrobe) -> Iterator[FlowPicture]:
    area = QScrollArea()
    qtbot.addWidget(area)
    area.resize(1700, 900)
    made = FlowPicture()
    area.setWidget(made)
    made.resize(900, 400)
    made.show_flow(small_binder(), base_flow(small_binder(), "day"))
    area.show()
    qtbot.waitExposed(area)
    area.activateWindow()
    yield made
    area.close()


def focused(picture: FlowPicture) -> str:
    return next((key for key, node in picture.nodes.items() if node.hasFocus()), "")


def go(picture: FlowPicture, *keys: Qt.Key) -> str:
    for key in keys:
        QTest.keyClick(QApplication.focusWidget() or picture, key)
    return focused(picture)


def dish_key(picture: FlowPicture, name: str) -> str:
    return next(key for key, node in picture.nodes.items() if node.text() == name)


def test_arrows_go_from_node_to_node(picture: FlowPicture) -> None:
    picture.nodes["beans"].setFocus()
    assert go(picture, Qt.Key.Key_Right) == "soaked"
    assert go(picture, Qt.Key.Key_Right) in {"cooked", "liquid"}
    assert go(picture, Qt.Key.Key_Up, Qt.Key.Key_Up) == "cooked"
    assert go(picture, Qt.Key.Key_Down) == "liquid"
    assert go(picture, Qt.Key.Key_Down) == "liquid", "the edge of the picture"
    assert go(picture, Qt.Key.Key_Left, Qt.Key.Key_Left, Qt.Key.Key_Left) == "beans"


def test_tab_comes_to_one_node_and_back_to_the_same(picture: FlowPicture) -> None:
    stops = [key for key, node in picture.nodes.items() if node.focusPolicy() == Qt.FocusPolicy.StrongFocus]
    assert stops == ["beans"]
    picture.nodes["beans"].setFocus()
    reached = go(picture, Qt.Key.Key_Right, Qt.Key.Key_Right)
    stops = [key for key, node in picture.nodes.items() if node.focusPolicy() == Qt.FocusPolicy.StrongFocus]
    assert stops == [reached]


def test_enter_and_a_click_lead_to_the_form_and_to_the_dish(picture: FlowPicture, qtbot: QtBot) -> None:
    picture.nodes["cooked"].setFocus()
    with qtbot.waitSignal(picture.place_asked) as asked:
        QTest.keyClick(picture.nodes["cooked"], Qt.Key.Key_Return)
    assert asked.args == [Place("foods", "cooked")]
    with qtbot.waitSignal(picture.place_asked) as asked:
        QTest.mouseClick(picture.nodes[dish_key(picture, "1 Bean spread")], Qt.MouseButton.LeftButton)
    assert asked.args == [Place("dishes", "dish-spread")]
    with qtbot.assertNotEmitted(picture.place_asked):
        QTest.mouseClick(picture.nodes[dish_key(picture, "left over")], Qt.MouseButton.LeftButton)


def test_every_node_is_a_button_with_a_name_that_says_all(picture: FlowPicture) -> None:
    heard = {
        key: QAccessible.queryAccessibleInterface(node).text(QAccessible.Text.Name)
        for key, node in picture.nodes.items()
    }
    assert heard["cooked"].startswith("cooked beans, 750 g. From soaked beans by Cook.")
    assert all(heard.values())


def test_nodes_come_and_go_and_the_keyboard_stays(picture: FlowPicture) -> None:
    picture.nodes["liquid"].setFocus()
    binder = small_binder(replace(small_binder().dishes["dish-bread"], portions=4.0))
    picture.show_flow(binder, base_flow(binder, "day"))
    assert focused(picture) == "liquid"
    picture.show_flow(binder, Flow((), ()))
    assert picture.nodes == {}


@pytest.mark.parametrize(
    "binder", [small_binder(), large_shoot(Size(dishes=12, kilograms=24.2))], ids=["4 forms", "16 forms, short"]
)
@pytest.mark.parametrize("width", [420, 900, 1600])
def test_no_node_lies_on_another_and_all_are_in_sight(picture: FlowPicture, binder: Binder, width: int) -> None:
    picture.show_flow(binder, base_flow(binder, "day"))
    picture.resize(width, picture.height())
    picture.grab()
    boxes = [(key, node.geometry()) for key, node in picture.nodes.items()]
    assert all(picture.rect().contains(box.adjusted(3, 3, -3, -3)) for _key, box in boxes)
    for at, (key, box) in enumerate(boxes):
        touching = [
            other
            for other, that in boxes[at + 1 :]
            if box.adjusted(3, 3, -3, -3).intersects(that.adjusted(3, 3, -3, -3))
        ]
        assert not touching, (key, touching)


@pytest.mark.parametrize("tokens", [LIGHT, DARK], ids=["light", "dark"])
def test_words_can_be_read_on_bands(tokens: Tokens) -> None:
    band = mixed(tokens.colour("accent"), tokens.colour("raised"), BAND_SHARE).name()
    assert contrast(tokens.ink, band) >= 4.5
    assert contrast(tokens.stop, band) >= 4.5
    assert contrast(tokens.quiet, band) >= 4.5
    assert contrast(tokens.accent, tokens.raised) >= 3
    assert contrast(tokens.edge, tokens.faint) >= 2.5
    assert contrast(tokens.ink, mixed(tokens.colour("accent"), tokens.colour("raised"), LIT_SHARE).name()) >= 4.5


def test_the_bands_of_the_node_looked_at_stand_out(picture: FlowPicture) -> None:
    into = next(one for one in picture.picture.bands if one.band.target == "cooked")
    aside = next(one for one in picture.picture.bands if one.band.target == "liquid")
    before = [colour_on(picture, into), colour_on(picture, aside)]
    picture.nodes["cooked"].setFocus()
    assert colour_on(picture, into) != before[0]
    assert colour_on(picture, aside) == before[1]


def colour_on(picture: FlowPicture, band: PlacedBand) -> str:
    """The colour of a band just before it arrives."""
    at = QPoint(round(band.right) - 12, round(band.right_top + band.right_height / 2))
    return picture.grab().toImage().pixelColor(at + QPoint(picture._edge(), picture._edge())).name()
