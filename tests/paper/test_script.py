from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.paper.script import UNBROKEN_SPACE, clean, in_setting_order, turns


@pytest.mark.parametrize(
    ("typed", "shown"),
    [
        ("a\tb\u2003c", "a b c"),
        ("a\r\nb\u2028c", "a\nb\nc"),
        ("8:00\u202fAM", f"8:00{UNBROKEN_SPACE}AM"),
        ("zero\u200bwidth\u200d \ufe0fjoined\u00ad", "zerowidth joined"),
        ("\u202ereversed\u202c", "reversed"),
        ("e\u0301", "é"),
        ("\u0300", "\u25cc\u0300"),
        ("a \u0300\u0300b\u20dd", "a \u25cc\u0300\u0300b\u20dd"),
    ],
)
def test_what_has_no_picture_is_left_out_and_spaces_become_plain(typed: str, shown: str) -> None:
    assert clean(typed) == shown


@given(st.text())
def test_cleaning_leaves_no_control_and_changes_nothing_the_second_time(text: str) -> None:
    once = clean(text)
    assert clean(once) == once
    assert not {"\t", "\r", "\u200b", "\u202e"} & set(once)


def _set(text: str) -> str:
    return "".join(in_setting_order(list(text), lambda sign: sign, lambda _sign, other: other))


def test_right_to_left_words_are_turned_and_numbers_in_them_are_not() -> None:
    assert _set("abc אבג def") == "abc גבא def"
    assert _set("אב 1.25 גד") == "דג 1.25 בא"
    assert _set("אב (גד)") == "(דג) בא"
    assert _set("250 g") == "250 g"


@given(st.text(alphabet="abאב12. ()"))
def test_setting_loses_nothing(text: str) -> None:
    mirror = str.maketrans("()", "((")
    assert sorted(_set(text).translate(mirror)) == sorted(text.translate(mirror))


def test_arabic_letters_join_their_neighbours() -> None:
    # Unicode names the forms: seen stands first, meem between, kaf last in سمك (fish).
    assert [hex(ord(sign)) for sign in clean("سمك")] == ["0xfeb3", "0xfee4", "0xfeda"]
    # Alef never joins the letter after it; lam and alef make one sign.
    assert [hex(ord(sign)) for sign in clean("لا")] == ["0xfefb"]
    assert turns("سمك")
    assert not turns("fish")
