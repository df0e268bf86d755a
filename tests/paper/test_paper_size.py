from __future__ import annotations

import math

import pytest

from binder.kitchen.settings import Measures
from binder.paper.paper_size import PAPERS, UnknownPaperError, card_paper, list_paper, paper_called


@pytest.mark.parametrize(("key", "number"), [("a4", 4), ("a5", 5), ("a6", 6)])
def test_a_sizes_follow_from_one_square_metre_halved(key: str, number: int) -> None:
    # ISO 216: A0 is a square metre in the ratio 1 : √2; each next size is half the one before, in whole millimetres.
    height = 1000 * 2 ** (1 / 4 - number / 2)
    paper = PAPERS[key]
    assert (paper.width, paper.height) == (math.floor(height / math.sqrt(2) + 0.2), math.floor(height + 0.2))


@pytest.mark.parametrize(
    ("key", "inches"), [("letter", (8.5, 11)), ("half-letter", (5.5, 8.5)), ("4x6", (4, 6)), ("5x8", (5, 8))]
)
def test_inch_sizes_are_exact(key: str, inches: tuple[float, float]) -> None:
    # US Letter 8.5 x 11 in: ANSI/ASME Y14.1, size A. A point is 1/72 inch.
    paper = PAPERS[key]
    assert (paper.width, paper.height) == pytest.approx((inches[0] * 25.4, inches[1] * 25.4), rel=1e-12)
    assert paper.points == pytest.approx((inches[0] * 72, inches[1] * 72), rel=1e-12)


def test_every_paper_stands_upright_with_room_for_a_printers_margin() -> None:
    for paper in PAPERS.values():
        assert paper.width < paper.height
        assert paper.margin >= 6 * 72 / 25.4
        assert paper.source


def test_paper_follows_the_binders_measures() -> None:
    assert (card_paper(Measures.US_CUSTOMARY).key, list_paper(Measures.US_CUSTOMARY).key) == ("half-letter", "letter")
    assert (card_paper(Measures.METRIC).key, list_paper(Measures.METRIC).key) == ("a5", "a4")
    assert (card_paper(Measures.IMPERIAL).key, list_paper(Measures.IMPERIAL).key) == ("a5", "a4")


def test_a_paper_is_found_however_it_is_cased_and_an_unknown_one_is_refused_with_the_choices() -> None:
    assert paper_called(" A5 ").key == "a5"
    with pytest.raises(UnknownPaperError, match=r"No paper is called “a9”\. Choose a3, a4, .* or 5x8"):
        paper_called("a9")
