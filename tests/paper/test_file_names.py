from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.kitchen.record import UnfitValueError
from binder.kitchen.shoot import Shoot
from binder.paper.file_names import (
    FilesOfOneNameError,
    UnfitPatternError,
    file_name,
    require_fit,
    safe_name,
    together_name,
)
from binder.paper.print_choices import PrintChoices
from binder.paper.print_set import SheetKind, finished_set
from tests.paper.example import SHOOT, full_binder


def test_a_pattern_names_files_by_binder_shoot_date_and_sheet() -> None:
    name = file_name(full_binder(), SHOOT, SheetKind.CARDS, "{date} {binder} {shoot} {sheet}")
    assert name == "2026-12-03-one-bag-of-chickpeas-episode-four-station-cards.pdf"
    assert together_name(full_binder(), SHOOT, "{shoot}") == "episode-four.pdf"
    assert file_name(full_binder(), SHOOT, SheetKind.CARDS, "{sheet}.PDF") == "station-cards.pdf"


@pytest.mark.parametrize("pattern", ["../{sheet}", "a/{sheet}", "C:\\{sheet}", " .{sheet}"])
def test_a_pattern_cannot_lead_out_of_the_folder(pattern: str) -> None:
    name = file_name(full_binder(), SHOOT, SheetKind.CARDS, pattern)
    assert not set(name) & set("/\\:")
    assert name.endswith("station-cards.pdf")
    assert not name.startswith(".")


@pytest.mark.parametrize("pattern", ["", "all", "{sheet", "{sheet}}", "{dish}-{sheet}", "{date}", "/../"])
def test_a_pattern_that_names_no_files_is_refused_in_one_sentence(pattern: str) -> None:
    with pytest.raises(UnfitPatternError) as refused:
        require_fit(pattern, together=False)
    assert "\n" not in refused.value.says


def test_two_shoots_in_files_of_one_name_are_refused_before_anything_is_written() -> None:
    binder = full_binder(Shoot(id="two", name="Second day"))
    with pytest.raises(FilesOfOneNameError, match=r"Put \{shoot\} into the pattern"):
        finished_set(binder, [SHOOT, "two"], only=["cards"], choices=PrintChoices(pattern="{sheet}"))


@given(st.text(min_size=1, max_size=200))
def test_a_name_made_of_any_words_is_fit_for_any_disk(words: str) -> None:
    shoot: Shoot = full_binder().shoots[SHOOT]
    try:
        binder = full_binder(replace(shoot, name=words))
    except UnfitValueError:
        return
    for name in (file_name(binder, SHOOT, SheetKind.CARDS, "{shoot}-{sheet}"), safe_name(words) + ".pdf"):
        assert not set(name) & set('/\\:*?"<>|\n\t\0')
        assert len(name.encode()) < 255
        assert not name.startswith("..")
