"""Amounts read from text."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.kitchen.amount import NO_AMOUNT, Amount, UnreadableAmountError, leading_amount, parse_amount
from binder.kitchen.amount_text import amount_text
from binder.kitchen.errors import BinderError
from binder.kitchen.settings import Measures
from binder.kitchen.units import Dimension, UnknownUnitError, unit

US = Measures.US_CUSTOMARY


@pytest.mark.parametrize(
    ("text", "amount", "dimension"),
    [
        ("1 1/2 cups", Amount(1.5, 1.5, "cup"), Dimension.VOLUME),
        ("1½ c", Amount(1.5, 1.5, "cup"), Dimension.VOLUME),
        ("¾ tsp", Amount(0.75, 0.75, "tsp"), Dimension.VOLUME),
        ("2-3 cloves", Amount(2, 3, "clove"), Dimension.PIECE),
        ("2 to 3", Amount(2, 3, ""), Dimension.PIECE),
        ("2–3", Amount(2, 3, ""), Dimension.PIECE),
        ("a pinch", Amount(1, 1, "pinch"), Dimension.VOLUME),
        ("1 (14 oz) can", Amount(1, 1, "(14 oz) can"), Dimension.WEIGHT),
        ("2 x 400 g tins", Amount(2, 2, "(400 g) tin"), Dimension.WEIGHT),
        ("1 14-ounce can", Amount(1, 1, "(14 oz) can"), Dimension.WEIGHT),
        ("250g", Amount(250, 250, "g"), Dimension.WEIGHT),
        ("0,5 l", Amount(0.5, 0.5, "l"), Dimension.VOLUME),
        ("1 T", Amount(1, 1, "tbsp"), Dimension.VOLUME),
        ("1 t", Amount(1, 1, "tsp"), Dimension.VOLUME),
        ("2 Tbsp.", Amount(2, 2, "tbsp"), Dimension.VOLUME),
        ("6 fl oz", Amount(6, 6, "fl oz"), Dimension.VOLUME),
        ("1 1/2 - 2 lb", Amount(1.5, 2, "lb"), Dimension.WEIGHT),
        ("half a cup", Amount(0.5, 0.5, "cup"), Dimension.VOLUME),
    ],
)
def test_every_way_a_cook_writes_an_amount(text: str, amount: Amount, dimension: Dimension) -> None:
    read = parse_amount(text, US)
    assert read == amount
    assert unit(read.unit, US).dimension is dimension


def test_a_can_weighs_what_its_label_says() -> None:
    # Avoirdupois ounce 28.349523125 g exactly: NIST Handbook 44, Appendix C.
    assert unit("(14 oz) can", US).factor == pytest.approx(14 * 28.349523125, rel=1e-12)


def test_a_unit_no_one_knows_names_the_three_nearest() -> None:
    with pytest.raises(UnknownUnitError) as refused:
        parse_amount("3 cupps", US)
    assert len(refused.value.nearest) == 3
    assert "cup" in refused.value.nearest
    assert all(near in str(refused.value) for near in refused.value.nearest)


@pytest.mark.parametrize("text", ["-1 cup", "− 2 g", "3-2 cups", "99999999999 g", "1/0 cup", "cup", ""])
def test_amounts_that_cannot_be_are_refused_in_a_sentence(text: str) -> None:
    with pytest.raises(BinderError) as refused:
        parse_amount(text, US)
    assert str(refused.value).endswith((".", "?"))


def test_text_without_a_number_has_no_amount() -> None:
    assert leading_amount("salt, to taste") == (NO_AMOUNT, "salt, to taste")


def test_the_rest_of_a_line_follows_its_amount() -> None:
    assert leading_amount("1 (14 oz) can chickpeas, drained")[1] == "chickpeas, drained"
    assert leading_amount("a pinch of saffron") == (Amount(1, 1, "pinch"), "saffron")
    assert leading_amount("2 large eggs") == (Amount(2, 2, "large"), "eggs")
    assert leading_amount("half a lemon") == (Amount(0.5, 0.5, ""), "lemon")


def test_a_backwards_range_says_so() -> None:
    with pytest.raises(UnreadableAmountError, match="larger to the smaller"):
        leading_amount("3 to 2 cups flour")


COOKS_NUMBERS = st.sampled_from([1, 2, 3, 4, 6, 8, 12]).flatmap(
    lambda whole: st.sampled_from([0.0, 0.25, 0.5, 0.75, 1 / 3, 2 / 3, 0.125]).map(lambda part: whole + part)
)


@given(
    COOKS_NUMBERS,
    COOKS_NUMBERS,
    st.sampled_from(["cup", "tbsp", "tsp", "clove", "lb", "oz", "", "bunch", "(14 oz) can"]),
)
def test_an_amount_written_out_is_read_back_the_same(one: float, other: float, unit_key: str) -> None:
    amount = Amount(min(one, other), max(one, other), unit_key)
    again = parse_amount(amount_text(amount), US)
    assert again.unit == amount.unit
    assert (again.low, again.high) == pytest.approx((amount.low, amount.high), rel=1e-9)


@given(st.text(max_size=60))
def test_any_text_is_read_or_refused_in_a_sentence(text: str) -> None:
    try:
        amount = parse_amount(text, US)
    except BinderError as refused:
        assert str(refused)  # noqa: PT017 - either outcome is right for a random text
    else:
        assert amount.given
