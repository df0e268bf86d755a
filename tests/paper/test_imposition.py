"""Several cards on a sheet, and backs behind their fronts: by geometry, and read back from the printed sheet."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.paper.block import text
from binder.paper.imposition import leaves_of
from binder.paper.leaf import Leaf, Placing
from binder.paper.page import Booklet, Page, Part
from binder.paper.paper_size import PAPERS, PaperSize
from binder.paper.press import printed
from binder.paper.print_choices import Backs, PrintChoices
from binder.paper.run import Style
from tests.paper.reader import read_pages

Box = tuple[float, float, float, float]
Vector = tuple[float, float]


def _pages(count: int, outlined: set[int] | None = None) -> list[Page]:
    starts = set(range(count)) if outlined is None else outlined | {0}
    return [Page(outline=f"card {at}" if at in starts else "") for at in range(count)]


def _box(placing: Placing, card: PaperSize) -> Box:
    """Where a card comes to lie on its leaf: left, bottom, right, top."""
    across, rise, _against, _up, x, y = placing.matrix
    wide, tall = card.points
    corners = [(x + across * a * wide - rise * b * tall, y + rise * a * wide + across * b * tall) for a, b in SQUARE]
    return (
        min(x for x, _y in corners),
        min(y for _x, y in corners),
        max(x for x, _y in corners),
        max(y for _x, y in corners),
    )


SQUARE = ((0, 0), (1, 0), (0, 1), (1, 1))


def _spine_and_head(placing: Placing) -> tuple[Vector, Vector]:
    """From which side to which a card is read, and where its head is."""
    across, rise, _against, _up, _x, _y = placing.matrix
    return (across, rise), (-rise, across)


def _seen_through(box: Box, leaf: Leaf, *, about_upright: bool) -> Box:
    """Where something on the back of a sheet lies, seen through from the front."""
    left, bottom, right, top = box
    if about_upright:
        return leaf.width - right, bottom, leaf.width - left, top
    return left, leaf.height - top, right, leaf.height - bottom


CARDS_ON_SHEETS = [
    ("a6", "a4", 4),
    ("a5", "a4", 2),
    ("4x6", "letter", 2),
    ("5x8", "letter", 2),
    ("half-letter", "letter", 2),
    ("a6", "a3", 8),
    ("a4", "a4", 1),
]


@pytest.mark.parametrize(("card", "sheet", "count"), CARDS_ON_SHEETS)
def test_as_many_cards_as_fit_stand_on_a_sheet_and_none_over_another_or_beyond_it(
    card: str, sheet: str, count: int
) -> None:
    first, *_others = leaves_of(_pages(17), PAPERS[card], PrintChoices(sheet=sheet), cards=True)
    assert len(first.placings) == count
    boxes = [_box(placing, PAPERS[card]) for placing in first.placings]
    for at, (left, bottom, right, top) in enumerate(boxes):
        assert min(left, bottom) > -0.2
        assert right < first.width + 0.2
        assert top < first.height + 0.2
        for other in boxes[at + 1 :]:
            assert min(right, other[2]) - max(left, other[0]) < 0.2 or min(top, other[3]) - max(bottom, other[1]) < 0.2


@pytest.mark.parametrize(("card", "sheet", "count"), CARDS_ON_SHEETS)
def test_cutting_marks_stand_at_the_edges_of_cards_and_not_on_them(card: str, sheet: str, count: int) -> None:
    first, *_others = leaves_of(_pages(17), PAPERS[card], PrintChoices(sheet=sheet), cards=True)
    assert bool(first.cuts) == (count > 1)
    edges_x = {round(x, 1) for placing in first.placings for x in _box(placing, PAPERS[card])[::2]}
    edges_y = {round(y, 1) for placing in first.placings for y in _box(placing, PAPERS[card])[1::2]}
    for x, y, to_x, to_y in first.cuts:
        upright = x == to_x
        assert min(abs((x if upright else y) - edge) for edge in (edges_x if upright else edges_y)) < 0.2
        assert 0 <= x <= to_x <= first.width
        assert 0 <= y <= to_y <= first.height


@given(
    card=st.sampled_from(["a6", "a5", "a4", "4x6", "5x8", "half-letter", "letter"]),
    sheet=st.sampled_from([None, "a4", "a3", "letter", "legal"]),
    backs=st.sampled_from([Backs.LONG_EDGE, Backs.SHORT_EDGE]),
    count=st.integers(1, 12),
    data=st.data(),
)
def test_a_back_stands_behind_its_front_and_is_read_the_right_way_up(
    card: str, sheet: str | None, backs: Backs, count: int, data: st.DataObject
) -> None:
    outlined = data.draw(st.sets(st.integers(0, count - 1)))
    paper = PAPERS[card]
    leaves = leaves_of(_pages(count, outlined), paper, PrintChoices(sheet=sheet, backs=backs), cards=True)
    shown = [placing.page for leaf in leaves for placing in leaf.placings]
    assert sorted(shown) == list(range(count)), "each page once"
    for front, back in zip(leaves[::2], leaves[1::2], strict=True):
        about_upright = (backs is Backs.LONG_EDGE) == (front.width <= front.height)
        fronts = {placing.page: placing for placing in front.placings}
        for placing in back.placings:
            before = fronts[placing.page - 1]
            seen = _seen_through(_box(placing, paper), back, about_upright=about_upright)
            assert seen == pytest.approx(_box(before, paper), abs=0.01)
            (spine_x, spine_y), (head_x, head_y) = _spine_and_head(placing)
            turned = (
                ((-spine_x, spine_y), (-head_x, head_y)) if about_upright else ((spine_x, -spine_y), (head_x, -head_y))
            )
            spine, head = _spine_and_head(before)
            assert turned[1] == head, "turned over like a page, its head stays up"
            assert turned[0] == (-spine[0], -spine[1])


def test_a_printed_sheet_has_front_and_back_where_they_belong() -> None:
    paper, style = PAPERS["a6"], Style(size=20)
    pages = _pages(4, {0, 2})
    for at, page in enumerate(pages):
        page.foot = True
        page.put(text(f"card{at}", style), paper.margin, paper.points[1] - paper.margin, 200)
    leaves = leaves_of(pages, paper, PrintChoices(sheet="a4", backs=Backs.LONG_EDGE), cards=True)
    part = Part("t", paper, "foot", pages, leaves)
    front, back = read_pages(printed(Booklet("t", "en", [part])).content)
    assert front.words.index("card0") < front.words.index("card2")
    half = front.width / 2
    digits = {sign.text: sign.left for sign in front.signs if sign.text in "02" and sign.size == 20}
    behind = {sign.text: sign.left for sign in back.signs if sign.text in "13" and sign.size == 20}
    assert digits["0"] < half < digits["2"]
    assert behind["3"] < half < behind["1"], "about the long edge left and right change places"


def test_labels_and_sheets_without_backs_have_a_leaf_a_page() -> None:
    pages = _pages(3)
    assert [leaf.placings for leaf in leaves_of(pages, PAPERS["a4"], PrintChoices(), cards=False)] == [
        (Placing(at, 0.0, 0.0),) for at in range(3)
    ]
    for page in pages:
        page.foot = False
    labels = leaves_of(pages, PAPERS["a4"], PrintChoices(backs=Backs.LONG_EDGE, sheet="a3"), cards=False)
    assert len(labels) == 3
