"""What stands in the fields is what is printed; what cannot be had is said in a sentence."""

from __future__ import annotations

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.desktop.cards_page.print_wishes import (
    TIMED,
    Wishes,
    choices_of,
    distances,
    in_short,
    kept_of,
    wishes_kept,
)
from binder.kitchen.errors import BinderError
from binder.paper.label_grid import EXAMPLE, label_grid
from binder.paper.print_choices import Backs, Look, PrintChoices
from binder.paper.sheet_kind import SheetKind


def test_nothing_wished_for_is_the_usual() -> None:
    assert choices_of(Wishes(), {}) == PrintChoices()
    assert in_short(Wishes()) == ""


def test_every_field_reaches_the_choices() -> None:
    wishes = Wishes(
        read_from="1,5 m",
        look="on-camera",
        margin="ink-jet",
        sheet="a4",
        backs="short-edge",
        labels=EXAMPLE,
        used_labels="3",
        pattern="{date}-{sheet}",
        together=True,
    )
    choices = choices_of(wishes, {})
    assert (choices.metres, choices.look, choices.margin, choices.sheet) == (1.5, Look.ON_CAMERA, 13.0, "a4")
    assert (choices.backs, choices.labels, choices.used_labels) == (Backs.SHORT_EDGE, label_grid(EXAMPLE), 3)
    assert (choices.pattern, choices.together) == ("{date}-{sheet}", True)
    assert in_short(wishes) == (
        f"read from 1,5 m · on-camera style · margin ink-jet · several on A4 · on both sides · labels {EXAMPLE}"
    )


@pytest.mark.parametrize("distance", distances())
def test_every_distance_offered_can_be_had(distance: str) -> None:
    assert choices_of(Wishes(read_from=distance), {}).metres is not None


@pytest.mark.parametrize(
    ("wishes", "says"),
    [
        (Wishes(read_from="far"), "“far” is no number"),
        (Wishes(read_from="9"), "0.5 to 3"),
        (Wishes(margin="wide"), "margin"),
        (Wishes(labels="round ones"), "cannot be read"),
        (Wishes(used_labels="some"), "“some” is no number"),
        (Wishes(pattern="{nonsense}"), "names no files"),
    ],
)
def test_what_cannot_be_had_is_said(wishes: Wishes, says: str) -> None:
    with pytest.raises(BinderError) as told:
        choices_of(wishes, {})
    assert says in told.value.says


@given(st.text(max_size=30), st.text(max_size=30), st.text(max_size=30), st.text(max_size=30))
def test_any_text_is_a_choice_or_a_sentence(read_from: str, margin: str, labels: str, used: str) -> None:
    with suppress(BinderError):
        choices = choices_of(Wishes(read_from=read_from, margin=margin, labels=labels, used_labels=used), {})
        assert choices.used_labels >= 0


def test_sheets_with_times_are_the_ones_that_have_them() -> None:
    assert SheetKind.RUNNING_ORDER in TIMED
    assert SheetKind.CARDS not in TIMED


def test_how_a_kitchen_prints_is_kept_but_not_which_labels_are_gone() -> None:
    wishes = Wishes(read_from="1 m", look=Look.ON_CAMERA.value, margin="laser", used_labels="7", pattern="{date}")
    again = wishes_kept(kept_of(wishes))
    assert again == Wishes(read_from="1 m", look=Look.ON_CAMERA.value, margin="laser")


@given(st.dictionaries(st.sampled_from(["look", "margin", "labels", "backs", "sheet", "other"]), st.text(max_size=9)))
def test_whatever_was_kept_can_be_printed(kept: dict[str, str]) -> None:
    assert isinstance(choices_of(wishes_kept(kept), {}), PrintChoices)
