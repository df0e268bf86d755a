"""Columns: words fold, numbers stay whole, tables fit their room where they can."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st
from rich.cells import cell_len

from binder.cli.columns import amounts, fitted, folded, heading_lines, names, numbers, row_lines, words

TEXTS = st.text(st.characters(categories=["L", "N", "P", "Zs"]), max_size=60).map(lambda text: " ".join(text.split()))


@given(TEXTS, st.integers(2, 40))
def test_words_fold_to_the_width_and_none_is_lost(text: str, width: int) -> None:
    lines = folded(text, width, words())
    assert all(cell_len(line) <= width for line in lines)
    assert "".join(lines).replace(" ", "") == text.replace(" ", "")


def test_a_number_is_never_cut() -> None:
    assert folded("$10,000,000.00", 4, numbers("Cap")) == ["$10,000,000.00"]


def test_a_path_is_never_cut_in_a_sentence_or_a_column() -> None:
    assert folded("Wrote /a/very/long/path.json.", 10) == ["Wrote", "/a/very/long/path.json."]
    assert folded("/a/long folder/of mine", 5, names("File")) == ["/a/long folder/of mine"]


def test_an_amount_breaks_between_weight_and_measure_only() -> None:
    assert folded("180 g · 1½ cups", 10, amounts("Per build")) == ["180 g", "1½ cups"]
    assert folded("180 g · 1½ cups", 15, amounts("Per build")) == ["180 g · 1½ cups"]


def test_columns_are_as_wide_as_their_texts_where_there_is_room() -> None:
    assert fitted([words("Dish"), numbers("Cost")], [["Flatbread", "$1.20"]], 80) == [9, 5]


def test_only_words_give_way_where_room_is_short() -> None:
    columns = [words("Dish"), numbers("Cost")]
    widths = fitted(columns, [["Flatbread with beans and onion", "$1.20"]], 30)
    assert widths == [23, 5]


def test_a_table_that_cannot_fit_keeps_its_numbers() -> None:
    columns = [words("Dish"), numbers("Cost")]
    assert fitted(columns, [["Beans", "$10,000,000.00"]], 10) == [5, 14]


def test_a_table_without_rows_has_its_headings() -> None:
    columns = [words("Dish"), numbers("Cost")]
    assert heading_lines(columns, fitted(columns, [], 80)) == ["Dish  Cost", "──────────"]


def test_headings_of_several_lines_stand_on_the_rule() -> None:
    columns = [words("Form"), numbers("Into other forms")]
    assert heading_lines(columns, [4, 6])[:3] == ["        Into", "       other", "Form   forms"]


def test_rows_align_numbers_right_also_beside_wide_letters() -> None:
    columns = [words("Dish"), amounts("Amount")]
    rows = [["豆", "5 g"], ["beans", "1 kg"]]
    widths = fitted(columns, rows, 80)
    assert [row_lines(columns, row, widths) for row in rows] == [["豆        5 g"], ["beans    1 kg"]]
    assert len({cell_len(row_lines(columns, row, widths)[0]) for row in rows}) == 1


def test_no_line_ends_in_blanks() -> None:
    assert row_lines([numbers("#"), words("")], ["1", ""], [1, 9]) == ["1"]
