"""What the picture says of each node."""

from __future__ import annotations

from dataclasses import replace

from binder.desktop.base_page.flow_words import NodeWords, node_words
from binder.figures.flow import base_flow
from tests.kitchen_binder import small_binder


def words_by_name(grams: float = 1000) -> dict[str, NodeWords]:
    binder = small_binder(replace(small_binder().shoots["day"], base_amount=grams, base_unit="g"))
    return {one.name: one for one in node_words(binder, base_flow(binder, "day"), there_is=grams).values()}


def test_a_form_says_where_it_comes_from_and_where_it_goes() -> None:
    cooked = words_by_name()["cooked beans"]
    assert (cooked.amount, cooked.lines) == ("750 g", 2)
    assert cooked.says == (
        "cooked beans, 750 g. From soaked beans by Cook. 600 g into 1 Bean spread and 150 g into 2 Onion flatbread"
    )


def test_a_dish_says_what_it_takes() -> None:
    says = words_by_name()["1 Bean spread"].says
    assert says == "1 Bean spread, 760 g. Takes 600 g cooked beans and 160 g bean liquid"


def test_what_is_left_over_says_of_what() -> None:
    assert words_by_name()["left over"].says == "left over, 1.01 kg. 643 g beans, dried; and 371 g bean liquid"


def test_what_runs_out_is_said_in_words_and_takes_a_line_more() -> None:
    words = words_by_name(300)
    assert words["cooked beans"].short == "runs out: 120 g short"
    assert words["cooked beans"].lines == 3
    assert (words["beans, dried"].amount, words["beans, dried"].short) == ("357 g needed", "there is 300 g")
    assert words["bean liquid"].lines == 2
