"""Whatever a binder holds, nothing leaves its page, runs over other text, is cut off, or is an empty box."""

from __future__ import annotations

import os
from collections.abc import Sequence
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from binder.kitchen.binder import Binder
from binder.kitchen.recipe import Line, Step
from binder.kitchen.record import UnfitValueError
from binder.kitchen.reference import allergens
from binder.kitchen.shoot import Dish
from binder.paper.paper_size import PAPERS, paper_called
from binder.paper.preflight import FaultKind
from binder.paper.press import Printed
from binder.paper.print_choices import Look, PrintChoices
from binder.paper.print_set import SheetKind, finished_set, print_sheet, sheet_bytes
from tests.paper.day_example import day_binder, planned
from tests.paper.example import HOSTILE_NAMES, SHOOT, UNBROKEN, full_binder, hostile_binder, metric_binder
from tests.paper.faults import faults_of
from tests.paper.reader import read_pages

ON_PAPER = [kind for kind in SheetKind if kind is not SheetKind.LABELS]
"""All but the sheets whose labels begin at the edge of the paper."""


def _together(binder: Binder, paper: str, choices: PrintChoices, kinds: Sequence[SheetKind]) -> Printed:
    (sheet,) = finished_set(binder, [SHOOT], paper=paper, only=kinds, choices=replace(choices, together=True))
    return sheet.printed


def _require_faultless(printed: Printed, margin: float) -> None:
    """By our own preflight and by an independent reader."""
    assert [fault for fault in printed.faults if fault.kind is not FaultKind.NO_PICTURE] == []
    assert faults_of(printed.content, margin) == []


@pytest.mark.parametrize("paper", list(PAPERS))
def test_the_usual_binder_prints_every_sheet_without_a_fault_on_every_paper(paper: str) -> None:
    printed = _together(day_binder(), paper, planned(), ON_PAPER)
    _require_faultless(printed, paper_called(paper).margin - 1)
    assert printed.missing_glyphs == ()


@pytest.mark.parametrize("paper", ["a5", "letter"])
def test_the_same_in_another_language_and_without_a_plan(paper: str) -> None:
    _require_faultless(_together(metric_binder(), paper, PrintChoices(), ON_PAPER), paper_called(paper).margin - 1)


@pytest.mark.parametrize("metres", [0.5, 1.0, 3.0])
@pytest.mark.parametrize("look", list(Look))
def test_cards_and_wall_sheets_are_faultless_from_every_distance_in_either_look(metres: float, look: Look) -> None:
    kinds = [SheetKind.CARDS, SheetKind.STATIONS, SheetKind.RUNNING_ORDER, SheetKind.MISE]
    choices = replace(planned(), metres=metres, look=look)
    _require_faultless(_together(day_binder(), "a4", choices, kinds), paper_called("a4").margin - 1)


@pytest.mark.parametrize("paper", ["a4", "4x6"])
def test_hostile_names_and_texts_print_on_sheets_without_a_fault(paper: str) -> None:
    kinds = [kind for kind in ON_PAPER if kind not in {SheetKind.CARDS, SheetKind.STATIONS}]
    printed = _together(hostile_binder(), paper, PrintChoices(), kinds)
    _require_faultless(printed, paper_called(paper).margin - 1)


@pytest.mark.parametrize(("paper", "look"), [("half-letter", Look.PLAIN), ("a6", Look.ON_CAMERA)])
def test_hostile_names_and_texts_print_on_cards_without_a_fault(paper: str, look: Look) -> None:
    printed = print_sheet(hostile_binder(), SHOOT, SheetKind.CARDS, paper, choices=PrintChoices(look=look))
    _require_faultless(printed, paper_called(paper).margin - 1)


def _with_step(**values: object) -> Binder:
    step: Step = full_binder().steps["salad/1"]
    return full_binder(replace(step, **values))  # type: ignore[arg-type]


@pytest.mark.parametrize("paper", ["a4", "a5", "4x6"])
def test_ten_thousand_characters_without_a_blank_are_all_printed(paper: str) -> None:
    printed = print_sheet(_with_step(text="Ж" * 10_000), SHOOT, SheetKind.CARDS, paper)
    assert sum(page.text.count("Ж") for page in read_pages(printed.content)) == 10_000
    _require_faultless(printed, paper_called(paper).margin - 1)


@pytest.mark.parametrize("paper", ["a5", "4x6"])
def test_a_name_of_three_hundred_characters_is_printed_whole(paper: str) -> None:
    dish: Dish = full_binder().dishes["dish-salad"]
    last = Step(id="salad/2", recipe="salad", position=1, text="and on " * 150)
    content = sheet_bytes(full_binder(replace(dish, name="W" * 300), last), SHOOT, SheetKind.CARDS, paper)
    counts = [page.text.count("W") for page in read_pages(content) if "WWW" in page.text]
    short_name_of_a_card_that_goes_on = counts[-1]
    assert sum(counts) - short_name_of_a_card_that_goes_on * (len(counts) - 1) == 300


def test_eighty_lines_in_one_step_are_all_on_paper_and_none_is_parted() -> None:
    lines = [
        Line(
            id=f"many/{at}",
            step="salad/1",
            position=at + 10,
            food="salt",
            low=at + 1.0,
            high=at + 1.0,
            unit="g",
            note=f"n{at:02}",
        )
        for at in range(80)
    ]
    pages = [page.words for page in read_pages(sheet_bytes(full_binder(*lines), SHOOT, SheetKind.CARDS, "a5"))]
    for at in range(80):
        assert [page for page in pages if f" {at + 1} g fine salt" in page and f"n{at:02}" in page], at


def test_two_hundred_steps_are_all_on_paper() -> None:
    steps = [Step(id=f"many/{at}", recipe="salad", position=at + 1, text=f"Turn{at} it over.") for at in range(199)]
    words = " ".join(
        page.words for page in read_pages(sheet_bytes(full_binder(*steps), SHOOT, SheetKind.CARDS, "letter"))
    )
    assert all(f"Turn{at} it over." in words for at in range(199))


def test_a_step_is_parted_only_where_it_is_taller_than_a_card() -> None:
    words = " ".join(f"w{number}" for number in range(120))
    pages = [page.words for page in read_pages(sheet_bytes(_with_step(text=words), SHOOT, SheetKind.CARDS, "a5"))]
    (whole,) = [page for page in pages if "w0 " in page]
    assert "w119" in whole
    longer = " ".join(f"w{number}" for number in range(1200))
    pages = [page.words for page in read_pages(sheet_bytes(_with_step(text=longer), SHOOT, SheetKind.CARDS, "a5"))]
    (first,) = [page for page in pages if "w0 " in page]
    assert "w1199" not in first
    assert sum("1 continued" in page for page in pages) >= 1


@pytest.mark.parametrize("accent", ["\u0300", "\u030e", "\u0303"])
def test_an_accent_without_a_letter_stays_on_the_page(accent: str) -> None:
    plain = full_binder()
    alone = full_binder(
        replace(plain.foods["tahini"], name=accent),
        replace(plain.dishes["dish-salad"], name=accent),
        replace(plain.steps["salad/1"], title=accent, text=""),
        replace(plain.shoots[SHOOT], name=accent),
    )
    printed = _together(alone, "a5", PrintChoices(), [SheetKind.CARDS, SheetKind.SHOPPING, SheetKind.STATIONS])
    _require_faultless(printed, paper_called("a5").margin - 1)


def test_signs_that_no_face_has_are_told_and_shown_by_their_number() -> None:
    printed = print_sheet(_with_step(text="Mix \ue123 well."), SHOOT, SheetKind.CARDS)
    assert printed.missing_glyphs == ("\ue123",)
    assert "Mix [U+E123] well." in " ".join(page.words for page in read_pages(printed.content))
    assert print_sheet(full_binder(), SHOOT, SheetKind.CARDS).missing_glyphs == ()


TYPED = st.text(min_size=1, max_size=300).filter(lambda name: name.strip() and "\x00" not in name)
SIGNS = "🍜🫘👩 אבגד حمص 12½ab-"
NAMES = st.one_of(TYPED, st.sampled_from(HOSTILE_NAMES), st.text(SIGNS, min_size=1).filter(str.strip))
ALLERGENS = tuple(allergens())[:12]
RANDOM_BINDERS = 500 if os.environ.get("HYPOTHESIS_PROFILE") == "thorough" else 8


@settings(max_examples=RANDOM_BINDERS)
@given(name=NAMES, text=st.text(max_size=400), paper=st.sampled_from(["a5", "4x6", "letter"]), data=st.data())
def test_any_binder_prints_without_a_fault(name: str, text: str, paper: str, data: st.DataObject) -> None:
    binder = _named(name, text, data)
    others = data.draw(st.lists(st.sampled_from(ON_PAPER), min_size=2, max_size=4, unique=True))
    kinds = list(dict.fromkeys([SheetKind.CARDS, SheetKind.SHOPPING, *others]))
    choices = PrintChoices(look=data.draw(st.sampled_from(Look)))
    _require_faultless(_together(binder, paper, choices, kinds), paper_called(paper).margin - 1)


def _named(name: str, text: str, data: st.DataObject) -> Binder:
    """The usual binder with a name and a text, 0 to 80 lines more and up to twelve allergens."""
    plain = full_binder()
    lines = [_drawn_line(at, data) for at in range(data.draw(st.sampled_from([0, 1, 5, 80])))]
    carried = tuple(data.draw(st.lists(st.sampled_from(ALLERGENS), max_size=12, unique=True)))
    try:
        return full_binder(
            replace(plain.foods["tahini"], name=name, allergens=carried),
            replace(plain.dishes["dish-salad"], name=name),
            replace(plain.steps["salad/1"], title=name[:300], text=text),
            replace(plain.shoots[SHOOT], name=name),
            *lines,
        )
    except UnfitValueError:  # nothing but characters that are not kept
        return full_binder(replace(plain.foods["tahini"], name=UNBROKEN, allergens=carried), *lines)


def _drawn_line(at: int, data: st.DataObject) -> Line:
    low = data.draw(st.floats(0.001, 1e6))
    food, unit = data.draw(st.sampled_from([("tahini", "tbsp"), ("salt", "g"), ("onion", "each"), ("oil", "furlong")]))
    return Line(id=f"drawn/{at}", step="salad/1", position=at + 10, food=food, low=low, high=low * 2, unit=unit)


def test_steps_without_containers_have_the_whole_width_of_a_card_that_has_none() -> None:
    words = " ".join(f"w{number:03}" for number in range(60))
    steps = [Step(id=f"plain/{at}", recipe="salad", position=at + 1, title=f"Rest{at}", text=words) for at in range(6)]
    pages = read_pages(sheet_bytes(full_binder(*steps), SHOOT, SheetKind.CARDS, "a5"))
    page = next(page for page in pages if "Rest5" in page.words)
    assert min(sign.left for sign in page.signs if sign.text == "w") < page.width * 0.1
    assert max(sign.right for sign in page.signs) > page.width * 0.85
