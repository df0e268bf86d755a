"""Rows are kept while they would be the same, and made anew as soon as anything they show is another."""

from __future__ import annotations

from dataclasses import replace

import pytest

from binder.desktop.buying_page import kept_lines
from binder.desktop.buying_page.buying_figures import ListLine, buying_figures, list_lines
from binder.desktop.buying_page.buying_list import BuyingList
from binder.desktop.buying_page.kept_lines import KeptLines
from binder.desktop.buying_page.list_rows import line_rows
from binder.desktop.latest import Latest
from binder.desktop.sheet.sheet import Sight
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.edits.buying import set_store, tick
from binder.kitchen.edits.foods import set_price
from binder.kitchen.edits.records import set_fields


def first_line(binder: Binder) -> tuple[str, ListLine]:
    shoot = next(iter(binder.shoots))
    lines = list_lines(buying_figures(binder, shoot)).values()
    return shoot, next(line for line in lines if line.taken is not None)


def test_rows_are_those_of_the_line_and_kept(chickpeas: Binder) -> None:
    lines, (shoot, line) = KeptLines(), first_line(chickpeas)
    rows = lines.rows(chickpeas, shoot, line, first=True)
    assert rows == line_rows(chickpeas, shoot, line, first=True)
    assert lines.rows(chickpeas, shoot, replace(line), first=True) is rows
    dish = next(iter(chickpeas.dishes.values()))
    after = chickpeas.with_tables({"dishes": chickpeas.dishes.with_changes([(dish.id, None)])})
    assert lines.rows(after, shoot, line, first=True) is rows


def test_a_second_pack_of_a_food_does_not_name_it_again(chickpeas: Binder) -> None:
    lines, (shoot, line) = KeptLines(), first_line(chickpeas)
    assert lines.rows(chickpeas, shoot, line, first=True) != lines.rows(chickpeas, shoot, line, first=False)


def test_another_line_in_its_place_is_made_anew(chickpeas: Binder) -> None:
    lines, (shoot, line) = KeptLines(), first_line(chickpeas)
    before = lines.rows(chickpeas, shoot, line, first=True)
    more = replace(line, item=replace(line.item, needed=line.item.needed * 3))
    assert lines.rows(chickpeas, shoot, more, first=True) == line_rows(chickpeas, shoot, more, first=True) != before


def test_rows_are_kept_where_a_store_costs_more_to_go_to_and_another_food_is_ticked(chickpeas: Binder) -> None:
    lines, (shoot, line) = KeptLines(), first_line(chickpeas)
    rows = lines.rows(chickpeas, shoot, line, first=True)
    other = next(food for food in chickpeas.foods.values() if food.id != line.item.food)
    after = apply(chickpeas, set_store(next(iter(chickpeas.stores.values())), trip_cost=77))
    after = apply(after, tick(after, after.shoots[shoot], other, pack=None, count=1.0))
    assert lines.rows(after, shoot, line, first=True) is rows == line_rows(after, shoot, line, first=True)


@pytest.mark.parametrize("what", ["price", "store", "tick", "pack", "food", "currency"])
def test_rows_follow_what_they_show(chickpeas: Binder, what: str) -> None:
    lines, (shoot, line) = KeptLines(), first_line(chickpeas)
    assert line.taken is not None
    pack, quote = line.taken.priced.pack, line.taken.priced.quote
    stores = list(chickpeas.stores.values())
    changes = {
        "price": set_price(chickpeas, quote, quote.price + 100),
        "store": set_store(stores[0], name="Round the corner"),
        "pack": set_fields("Label", pack, label="In the green box"),
        "food": set_fields("Name", chickpeas.foods[line.item.food], name="Something else"),
        "currency": set_fields("Currency", chickpeas.settings, currency="EUR"),
        "tick": tick(chickpeas, chickpeas.shoots[shoot], chickpeas.foods[line.item.food], pack=pack, count=1.0),
    }
    lines.rows(chickpeas, shoot, line, first=True)
    after = apply(chickpeas, changes[what])
    assert lines.rows(after, shoot, line, first=True) == line_rows(after, shoot, line, first=True)


def test_the_rows_of_the_whole_list_are_had_ready(chickpeas: Binder, monkeypatch: pytest.MonkeyPatch) -> None:
    shoot = next(iter(chickpeas.shoots))
    figures, lines = buying_figures(chickpeas, shoot), KeptLines()
    lines.have_ready(chickpeas, shoot, figures)
    shown = BuyingList(Latest(figures)).rows(Sight(chickpeas, shoot))
    monkeypatch.setattr(kept_lines, "line_rows", lambda *_args, **_options: pytest.fail("made in the window's time"))
    assert BuyingList(Latest(figures), lines).rows(Sight(chickpeas, shoot)) == shown
