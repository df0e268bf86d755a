"""Whatever a binder asks for, there is a locale to write in."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.kitchen.locale import known_locale


@pytest.mark.parametrize(("tag", "known"), [("de_DE", "de_DE"), ("en_GB", "en_GB"), ("xx_YY", "en_US"), ("", "en_US")])
def test_what_is_not_known_is_us_english(tag: str, known: str) -> None:
    assert str(known_locale(tag)) == known


@given(st.text(max_size=20))
def test_any_text_has_a_locale(tag: str) -> None:
    assert known_locale(tag).currency_formats["standard"]
