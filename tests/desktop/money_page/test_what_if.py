"""What if all prices rose: an answer beside the binder, which stays as it is."""

from __future__ import annotations

import pytest

from binder.desktop.latest import Latest
from binder.desktop.money_page.what_if import WhatIf, WhatIfSheet, question_of, typed_percent, what_if
from binder.desktop.sheet.cell import Mark
from binder.desktop.sheet.sheet import Sight
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.edits.records import remove, set_fields
from binder.kitchen.errors import BinderError
from tests.desktop.money_page.latest import DAY
from tests.desktop.sheets import cell_called, is_even


def answer(binder: Binder, percent: float) -> WhatIf:
    return what_if(binder, question_of(DAY, percent))


def test_every_price_rises_and_the_binder_is_not_touched(chickpeas: Binder) -> None:
    quotes = dict(chickpeas.quotes)
    found = answer(chickpeas, 10.0)
    assert dict(chickpeas.quotes) == quotes
    for now, then in zip(found.now, found.then, strict=True):
        assert now.per_portion is not None
        assert then.per_portion == pytest.approx(now.per_portion * 1.1, rel=0.02)


def test_the_table_says_which_dish_would_be_over(chickpeas: Binder) -> None:
    sheet, sight = WhatIfSheet(Latest(answer(chickpeas, 10.0))), Sight(chickpeas, DAY)
    stew = cell_called(sheet, sight, "what if:dish_3", "state")
    assert (stew.text, stew.mark) == ("$0.01 over", Mark.OVER)
    assert cell_called(sheet, sight, "what if:dish_4", "state").mark is Mark.WITHIN
    assert cell_called(sheet, sight, "what if:total", "now").text == "$91.22"
    assert cell_called(sheet, sight, "what if:total", "state").text.endswith("over")
    assert is_even(sheet, sight)


def test_what_is_not_known_stays_so(chickpeas: Binder) -> None:
    lacking = apply(chickpeas, remove("x", chickpeas, chickpeas.packs["pack_tahini"]))
    sheet = WhatIfSheet(Latest(answer(lacking, 4.0)))
    assert cell_called(sheet, Sight(lacking, DAY), "what if:dish_1", "state").mark is Mark.UNKNOWN
    assert cell_called(sheet, Sight(lacking, DAY), "what if:total", "then").text == "not known"


@pytest.mark.parametrize(
    ("text", "percent"),
    [("4", 4.0), ("4 %", 4.0), ("+4", 4.0), ("-2.5%", -2.5), ("−10", -10.0), ("", None), (" % ", None)],
)
def test_per_cent_is_typed_as_it_is_said(chickpeas: Binder, text: str, percent: float | None) -> None:
    assert typed_percent(chickpeas, text) == percent


def test_a_decimal_comma_is_understood_where_it_is_written(chickpeas: Binder) -> None:
    german = apply(chickpeas, set_fields("x", chickpeas.settings, locale="de_DE"))
    assert typed_percent(german, "2,5") == 2.5


@pytest.mark.parametrize("text", ["x", "-101", "1001", "4 5"])
def test_what_is_no_per_cent_is_refused(chickpeas: Binder, text: str) -> None:
    with pytest.raises(BinderError):
        typed_percent(chickpeas, text)


def test_nothing_is_shown_before_it_is_asked(chickpeas: Binder) -> None:
    assert WhatIfSheet(Latest()).rows(Sight(chickpeas, DAY)) == []
