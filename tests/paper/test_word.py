from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.paper import word as module
from binder.paper.run import Run, Style, unbroken
from binder.paper.script import clean
from binder.paper.word import in_faces, width_of_runs, words_of

STYLE = Style(size=10)


def _texts(text: str) -> list[str]:
    return ["".join(piece.text for piece in word.pieces) for word in words_of([Run(text, STYLE)])]


def test_words_part_at_blanks_and_within_at_hyphens_and_slashes() -> None:
    assert _texts("soft-boiled eggs and/or  leeks") == ["soft-", "boiled", "eggs", "and/", "or", "leeks"]
    assert _texts("1/2 -5 °C") == ["1/2", "-5", "°C"]


def test_an_amount_stays_with_its_unit() -> None:
    assert [text.replace("\u00a0", " ") for text in _texts(unbroken("1¼ cups + 2 tbsp"))] == ["1¼ cups + 2 tbsp"]


def test_ideographs_part_between_each_other() -> None:
    assert len(_texts("花椒鹰嘴豆")) == 5


def test_runs_without_a_blank_between_them_make_one_word() -> None:
    (word,) = words_of([Run("250", STYLE), Run("g", Style(size=7))])
    assert word.width == pytest.approx(width_of_runs([Run("250", STYLE), Run("g", Style(size=7))]))


def test_a_sign_that_no_face_has_is_shown_by_its_number(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "spare_face", lambda _code: None)
    in_faces.cache_clear()
    stretches = in_faces("bean 🫘🫘🍜", STYLE.weight)
    assert [(drawn.replace("\u00a0", " "), lacks) for _face, drawn, lacks in stretches] == [
        ("bean ", ""),
        ("[U+1FAD8 ×2][U+1F35C]", "🫘🫘🍜"),
    ]
    in_faces.cache_clear()


@given(st.text(max_size=60))
def test_no_character_that_shows_is_lost(text: str) -> None:
    kept = "".join(
        piece.text if not piece.lacks else piece.lacks for w in words_of([Run(text, STYLE)]) for piece in w.pieces
    )
    assert set(clean(text)) - {" ", "\n"} <= set(kept)
