from __future__ import annotations

import pytest

from binder.paper.print_choices import (
    Backs,
    Look,
    PrintChoices,
    UnfitDistanceError,
    UnknownBacksError,
    UnknownLookError,
    backs_called,
    look_called,
)


def test_looks_and_backs_go_by_their_names_however_they_are_cased() -> None:
    assert look_called(" On-Camera ") is Look.ON_CAMERA
    assert backs_called("LONG-EDGE") is Backs.LONG_EDGE


def test_what_there_is_not_is_refused_with_what_there_is() -> None:
    with pytest.raises(UnknownLookError, match="Choose plain or on-camera"):
        look_called("fancy")
    with pytest.raises(UnknownBacksError, match="Choose none, long-edge or short-edge"):
        backs_called("both")


@pytest.mark.parametrize("metres", [0.49, 3.01, -1.0, float("nan"), float("inf")])
def test_nobody_reads_a_card_from_nearer_or_further(metres: float) -> None:
    with pytest.raises(UnfitDistanceError):
        PrintChoices(metres=metres)


def test_the_nearest_and_the_furthest_are_fit() -> None:
    assert PrintChoices(metres=0.5).metres == 0.5
    assert PrintChoices(metres=3.0).metres == 3.0
