"""A typed line becomes amount, unit, food and preparation by itself."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.kitchen.amount import Amount
from binder.kitchen.errors import BinderError
from binder.kitchen.line_text import UnclearTypedLineError, Understood, UnknownFoodError, typed_line, understand_line
from binder.kitchen.name_book import Known, NameBook, singular_words

NAMES = {
    "onion": "onion",
    "red onion": "red_onion",
    "garlic": "garlic",
    "lemon": "lemon",
    "egg": "egg",
    "chickpeas, dried": "chickpeas_dried",
    "dried chickpeas": "chickpeas_dried",
    "chickpeas": "chickpeas_cooked",
    "chopped tomatoes": "tomatoes_tinned",
    "tomato": "tomato",
    "salt": "salt",
    "black pepper": "black_pepper",
    "olive oil": "olive_oil",
    "harissa": "harissa",
    "leaf gelatine": "gelatine",
    "lemon juice": "lemon_juice",
    "lemon zest": "lemon_zest",
    "fillet steak": "fillet_steak",
    "whole chicken": "chicken_whole",
    "chicken": "chicken_whole",
    "olives": "olives",
}
BOOK = NameBook({singular_words(name): Known(key, name, is_recipe=key == "harissa") for name, key in NAMES.items()}, 4)


@pytest.mark.parametrize(
    ("text", "amount", "key", "preparation"),
    [
        ("1 1/2 cups chopped onion", Amount(1.5, 1.5, "cup"), "onion", "chopped"),
        ("1½ c onions, finely diced", Amount(1.5, 1.5, "cup"), "onion", "finely diced"),
        ("2 red onions", Amount(2, 2, ""), "red_onion", ""),
        ("2-3 cloves garlic, minced", Amount(2, 3, "clove"), "garlic", "minced"),
        ("1 (14 oz) can chopped tomatoes", Amount(1, 1, "(14 oz) can"), "tomatoes_tinned", ""),
        ("3 chopped tomatoes", Amount(3, 3, ""), "tomatoes_tinned", ""),
        ("250g dried chickpeas", Amount(250, 250, "g"), "chickpeas_dried", ""),
        ("250 g chickpeas, dried", Amount(250, 250, "g"), "chickpeas_dried", ""),
        ("2 large eggs", Amount(2, 2, "large"), "egg", ""),
        ("half a lemon, zested", Amount(0.5, 0.5, ""), "lemon", "zested"),
        ("1 T olive oil", Amount(1, 1, "tbsp"), "olive_oil", ""),
        ("juice of 1 lemon", Amount(1, 1, ""), "lemon_juice", ""),
        ("finely grated zest of half a lemon", Amount(0.5, 0.5, ""), "lemon_zest", "finely grated"),
        ("2 fillet steaks", Amount(2, 2, ""), "fillet_steak", ""),
        ("1 whole chicken", Amount(1, 1, ""), "chicken_whole", ""),
        ("  1  whole\tchicken, jointed  ", Amount(1, 1, ""), "chicken_whole", "jointed"),
        (" juice of  1 lemon ", Amount(1, 1, ""), "lemon_juice", ""),
        ("1 olive", Amount(1, 1, ""), "olives", ""),
        ("2 tbsp harissa", Amount(2, 2, "tbsp"), "harissa", ""),
        ("thinly sliced red onion, rinsed", Amount(None, None, ""), "red_onion", "thinly sliced, rinsed"),
    ],
)
def test_reads_a_line_as_a_cook_means_it(text: str, amount: Amount, key: str, preparation: str) -> None:
    meant = understand_line(text, BOOK)
    assert (meant.amount, meant.source.key, meant.preparation) == (amount, key, preparation)


def test_to_taste_garnish_and_notes_are_marks_of_the_line() -> None:
    salt = understand_line("salt, to taste", BOOK)
    assert salt.to_taste
    assert not salt.amount.given
    lemon = understand_line("1 lemon, cut in wedges (unwaxed), for garnish", BOOK)
    assert (lemon.garnish, lemon.note, lemon.preparation) == (True, "unwaxed", "cut in wedges")


def test_a_line_without_an_amount_is_to_taste() -> None:
    assert understand_line("black pepper", BOOK).to_taste


def test_an_unknown_food_names_the_nearest() -> None:
    with pytest.raises(UnknownFoodError) as refused:
        understand_line("2 cups oniom, chopped", BOOK)
    assert "onion" in refused.value.nearest
    assert "oniom" in str(refused.value)


def test_two_foods_are_two_lines() -> None:
    with pytest.raises(UnclearTypedLineError, match="two foods"):
        understand_line("salt and black pepper", BOOK)


def test_an_amount_after_the_food_is_not_lost_but_asked_for_in_front() -> None:
    with pytest.raises(UnclearTypedLineError, match="amount first"):
        understand_line("about 2 cups onion", BOOK)


def test_a_paragraph_is_not_a_line() -> None:
    with pytest.raises(UnclearTypedLineError, match="longer than"):
        understand_line("onion " * 500, BOOK)


def test_says_what_it_understood() -> None:
    meant = Understood(Amount(1.5, 1.5, "cup"), Known("onion", "onion"), "chopped")
    assert meant.says() == "1½ cups · onion · chopped"


@given(
    st.sampled_from(["onion", "red onion", "garlic", "harissa", "chickpeas, dried"]),
    st.sampled_from([(1.0, 1.0, "cup"), (0.5, 0.5, "tsp"), (2.0, 3.0, "clove"), (250.0, 250.0, "g"), (2.0, 2.0, "")]),
    st.sampled_from(["", "chopped", "finely diced", "peeled and crushed"]),
    st.booleans(),
)
def test_a_line_written_out_means_the_same_when_typed_again(
    name: str, amount: tuple[float, float, str], preparation: str, garnish: bool
) -> None:
    from binder.kitchen.recipe import Line

    low, high, unit = amount
    key = NAMES[name]
    food, made = (None, key) if key == "harissa" else (key, None)
    line = Line(
        id="l", step="s", low=low, high=high, unit=unit, preparation=preparation, garnish=garnish, food=food, made=made
    )
    again = understand_line(typed_line(line, name), BOOK)
    assert (again.amount, again.source.key, again.preparation, again.garnish) == (
        Amount(low, high, unit),
        key,
        preparation,
        garnish,
    )


@given(st.text(max_size=80))
def test_any_text_is_understood_or_refused_in_a_sentence(text: str) -> None:
    try:
        meant = understand_line(text, BOOK)
    except BinderError as refused:
        assert str(refused)  # noqa: PT017 - either outcome is right for a random text
    else:
        assert meant.source.key in NAMES.values()
