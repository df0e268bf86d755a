"""Anything is found by its words."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from binder.desktop.finder import find
from binder.figures.missing import Place
from binder.kitchen.binder import Binder
from tests.desktop.chickpea_day import chickpea_day

_DAY = chickpea_day()


def test_names_that_begin_with_the_words_come_first(chickpeas: Binder) -> None:
    titles = [found.title for found in find(chickpeas, "chick")]
    assert titles[0].casefold().startswith("chick")


def test_all_words_must_be_there(chickpeas: Binder) -> None:
    assert {found.place for found in find(chickpeas, "fritters herb")} == {
        Place("dishes", "dish_2"),
        Place("recipes", "herb_fritters"),
    }


def test_what_steps_say_is_found_with_what_stands_around_it(chickpeas: Binder) -> None:
    found = find(chickpeas, "soft peak")
    assert found[0].place == Place("steps", "silky_hummus_with_lemon_0")
    assert "soft peak" in found[0].title
    assert found[0].title.startswith("…")
    assert found[0].kind == "step 1 of Silky hummus with lemon"


def test_preparations_are_found(chickpeas: Binder) -> None:
    assert any(found.place.table == "lines" for found in find(chickpeas, "toasted"))


def test_nothing_is_found_by_nothing(chickpeas: Binder) -> None:
    assert find(chickpeas, "  ") == []


@given(st.text(max_size=20))
def test_whatever_is_typed_every_result_has_a_record(words: str) -> None:
    for found in find(_DAY, words):
        assert _DAY.find(found.place.table, found.place.id) is not None
