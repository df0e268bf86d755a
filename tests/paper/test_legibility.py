from __future__ import annotations

import pytest

from binder.paper.card_type import card_type
from binder.paper.legibility import ARMS_LENGTH, LEAST_ARC, PREFERRED_ARC, capital_height, seen_under, type_size
from binder.paper.page import FOOT_STYLE
from binder.paper.paper_size import POINTS_PER_MILLIMETRE
from binder.paper.print_choices import Look, PrintChoices
from binder.paper.print_set import sheet_bytes
from binder.paper.run import Style
from binder.paper.typeface import capital_ratio
from tests.paper.example import SHOOT, full_binder
from tests.paper.reader import read_pages


@pytest.mark.parametrize("arc", [15.0, 16.0, 20.0, 22.0])
@pytest.mark.parametrize("metres", [0.4, 0.6, 1.0, 3.0])
def test_height_agrees_with_the_small_angle_form_of_nureg_0700(metres: float, arc: float) -> None:
    # NUREG-0700: h = 6.283 D MA / 21600, h and D in one unit.
    assert capital_height(metres, arc) == pytest.approx(6.283 * metres * 1000 * arc / 21600, rel=1e-4)
    assert seen_under(capital_height(metres, arc), metres) == pytest.approx(arc)


def test_published_heights() -> None:
    # h = 2 D tan(arc / 2), worked out by hand: at 0.6 m 2.79 mm for 16 and 3.49 mm for 20 minutes of arc.
    assert capital_height(0.6, 16) == pytest.approx(2.79, abs=0.005)
    assert capital_height(0.6, 20) == pytest.approx(3.49, abs=0.005)
    # With capitals 0.70 of the size, 1.0 m and 20 minutes ask for 23.6 pt.
    assert type_size(1.0, 20, capitals=0.70) == pytest.approx(23.6, abs=0.1)


def _arc(style: Style) -> float:
    millimetres = style.size * capital_ratio(style.weight) / POINTS_PER_MILLIMETRE
    return seen_under(millimetres, ARMS_LENGTH)


def test_nothing_that_is_read_on_a_card_is_smaller_than_the_least_and_its_numbers_are_as_large_as_preferred() -> None:
    style = card_type()
    assert min(_arc(one) for one in (style.plain, style.strong)) >= LEAST_ARC
    assert min(_arc(one) for one in (style.lead, style.figure, style.name, style.number)) >= PREFERRED_ARC
    assert style.figure.size > style.lead.size > style.plain.size


def test_type_grows_with_the_distance_it_is_read_from() -> None:
    assert card_type(1.2).figure.size == pytest.approx(2 * card_type(0.6).figure.size, abs=0.2)


FLAT_CAPITALS = "BDEFHIKLMNPRTXZ"


def _seen_on_paper(metres: float, look: Look, paper: str) -> dict[float, float]:
    """Minutes of arc under which capitals on printed cards are seen from so far, by their type size."""
    content = sheet_bytes(full_binder(), SHOOT, "cards", paper, choices=PrintChoices(metres=metres, look=look))
    heights: dict[float, float] = {}
    for page in read_pages(content):
        for sign in page.signs:
            if sign.text in FLAT_CAPITALS:
                tall = (sign.top - sign.bottom) / POINTS_PER_MILLIMETRE
                heights[round(sign.size, 1)] = seen_under(tall, metres)
    return heights


@pytest.mark.parametrize("look", list(Look))
@pytest.mark.parametrize("metres", [0.6, 1.0, 2.0])
def test_capitals_measured_on_the_printed_card_are_as_high_as_the_rule_asks(metres: float, look: Look) -> None:
    seen, style = _seen_on_paper(metres, look, "a3"), card_type(metres, look=look)
    for one, arc in ((style.plain, LEAST_ARC), (style.strong, LEAST_ARC), (style.lead, PREFERRED_ARC)):
        assert seen[round(one.size, 1)] >= arc - 0.1
    if metres <= ARMS_LENGTH:
        assert all(arc >= LEAST_ARC - 0.1 for size, arc in seen.items() if size > FOOT_STYLE.size)


@pytest.mark.parametrize("metres", [0.5, 0.6, 1.0, 3.0])
def test_the_most_used_numbers_are_the_largest_in_a_step(metres: float) -> None:
    style = card_type(metres)
    assert style.figure.size >= max(style.lead.size, style.strong.size, style.plain.size, style.after.size)
    content = sheet_bytes(full_binder(), SHOOT, "cards", "a3", choices=PrintChoices(metres=metres))
    amounts = [sign.size for page in read_pages(content) for sign in page.signs if sign.text in "0123456789"]
    assert round(style.figure.size, 1) in {round(size, 1) for size in amounts}
