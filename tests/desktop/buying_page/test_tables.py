"""What is at home already, the days to go shopping, the stores and the way through each."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from binder.desktop.buying_page.at_home import ADD_HOME, AtHome
from binder.desktop.buying_page.buying_figures import BuyingFigures, buying_figures, list_lines
from binder.desktop.buying_page.shopping_days import ADD_DAY, ShoppingDays
from binder.desktop.buying_page.stores import ADD_STORE, Stores
from binder.desktop.buying_page.to_order import ToOrder
from binder.desktop.buying_page.walking_order import WalkingOrder
from binder.desktop.buying_page.why import as_bought_text, why_text
from binder.desktop.latest import Latest
from binder.desktop.sheet.cell import Mark
from binder.desktop.sheet.sheet import CellName, NotEditableError, Sight
from binder.figures.shopping import shopping_list
from binder.kitchen.binder import Binder
from binder.kitchen.buying import PantryItem, Purchase, Trip
from binder.kitchen.change import apply, changed
from binder.kitchen.edits.buying import walking_order
from binder.kitchen.errors import BinderError
from binder.kitchen.line_text import UnknownFoodError
from binder.kitchen.price import Pack, Quote
from binder.kitchen.shoot import CapBasis
from tests.desktop.sheets import after_typing, cell_called, is_even
from tests.kitchen_binder import small_binder

HOME, STORES, WALK = AtHome(), Stores(), WalkingOrder()


def latest(binder: Binder) -> Latest[BuyingFigures]:
    return Latest(buying_figures(binder, "day"))


def day(binder: Binder) -> Sight:
    return Sight(binder, "day")


class TestAtHome:
    @pytest.mark.parametrize(
        ("text", "food", "amount", "unit"),
        [
            ("500 g flour", "flour", 500.0, "g"),
            ("2 onions", "onion", 2.0, "each"),
            ("1 cup flour", "flour", 1.0, "cup"),
        ],
    )
    def test_a_food_is_typed_whole(self, text: str, food: str, amount: float, unit: str) -> None:
        binder = after_typing(HOME, day(small_binder()), ADD_HOME, "food", text)
        (item,) = binder.pantry_items.values()
        assert (item.shoot, item.food, item.amount, item.unit) == ("day", food, amount, unit)
        assert is_even(HOME, day(binder))

    def test_a_food_is_brought_from_the_shipped_larder(self) -> None:
        binder = after_typing(HOME, day(small_binder()), ADD_HOME, "food", "200 g semolina")
        (item,) = binder.pantry_items.values()
        assert binder.foods[item.food].name == "semolina"

    @pytest.mark.parametrize("text", ["", "flour, to taste", "1 bean spread", "20 g moonberry"])
    def test_what_is_no_food_with_an_amount_is_refused(self, text: str) -> None:
        with pytest.raises(BinderError):
            HOME.edit(day(small_binder()), ADD_HOME, "food", text)

    def test_names_like_the_one_typed_are_offered(self) -> None:
        sight = day(small_binder())
        assert HOME.offers(sight, ADD_HOME, "food", "500 g flou")[0] == "500 g flour"
        with pytest.raises(UnknownFoodError) as error:
            HOME.edit(sight, ADD_HOME, "food", "500 g tahiny")
        titles = [
            remedy.text for remedy in HOME.remedies(sight, CellName(ADD_HOME, "food"), "500 g tahiny", error.value)
        ]
        assert "500 g tahini" in titles

    def test_an_amount_is_edited_and_less_is_then_bought(self) -> None:
        item = PantryItem(id="jar", shoot="day", food="tahini", amount=100, unit="g")
        sight = day(small_binder(item))
        assert cell_called(HOME, sight, "pantry_items:jar", "weighs").text == "100 g as purchased"
        binder = after_typing(HOME, sight, "pantry_items:jar", "amount", "1 kg")
        assert binder.pantry_items["jar"].amount == 1
        assert not next(one for one in shopping_list(binder, "day").items if one.food == "tahini").packs
        with pytest.raises(NotEditableError):
            HOME.edit(sight, "pantry_items:jar", "weighs", "3")
        gone = HOME.remove(sight, ["pantry_items:jar", ADD_HOME])
        assert gone is not None
        assert not apply(sight.binder, gone).pantry_items

    def test_what_cannot_be_weighed_says_so(self) -> None:
        item = PantryItem(id="jar", shoot="day", food="tahini", amount=2, unit="bunch")
        cell = cell_called(HOME, day(small_binder(item)), "pantry_items:jar", "weighs")
        assert cell.mark is Mark.UNKNOWN
        assert cell.leads_to is not None


class TestDays:
    def test_a_day_is_typed_whole_by_the_beginning_of_the_store(self) -> None:
        binder = small_binder()
        after = after_typing(ShoppingDays(latest(binder)), day(binder), ADD_DAY, "on", "corner on 2026-11-30")
        (trip,) = after.trips.values()
        assert (trip.store, trip.on) == ("corner", date(2026, 11, 30))
        sheet = ShoppingDays(latest(after))
        assert "foods, $" in cell_called(sheet, day(after), f"trips:{trip.id}", "fetched").text
        assert is_even(sheet, day(after))

    @pytest.mark.parametrize("text", ["corner", "nowhere on 2026-11-30", "corner on soon", ""])
    def test_what_is_no_day_is_refused(self, text: str) -> None:
        binder = small_binder()
        with pytest.raises(BinderError):
            ShoppingDays(latest(binder)).edit(day(binder), ADD_DAY, "on", text)

    def test_day_and_store_are_edited_and_days_removed(self, chickpeas: Binder) -> None:
        trips = [
            Trip(id=f"t{at}", shoot="day", store="hall", on=date(2026, 11, 2 + at), position=at) for at in range(2)
        ]
        binder = apply(chickpeas, changed("Add trips", after=trips))
        sheet = ShoppingDays(latest(binder))
        assert after_typing(sheet, day(binder), "trips:t0", "on", "2026-11-05").trips["t0"].on == date(2026, 11, 5)
        assert after_typing(sheet, day(binder), "trips:t0", "store", "corner grocer").trips["t0"].store == "corner"
        gone = sheet.remove(day(binder), ["trips:t0", "trips:t1"])
        assert gone is not None
        assert apply(binder, gone) == chickpeas

    def test_a_day_on_which_nothing_is_fetched_says_so(self) -> None:
        late = Trip(id="late", shoot="day", store="corner", on=date(2027, 1, 1))
        early = Trip(id="early", shoot="day", store="corner", on=date(2026, 11, 30))
        binder = small_binder(late, early)
        shown = cell_called(ShoppingDays(latest(binder)), day(binder), "trips:late", "fetched").text
        assert shown == "nothing on the list"


class TestStores:
    @pytest.mark.parametrize(
        ("column", "text", "field", "value"),
        [
            ("name", "The corner", "name", "The corner"),
            ("trip_cost", "4.50", "trip_cost", 450),
            ("trip_cost", "", "trip_cost", 0),
            ("avoided", "$2", "avoided", 200),
            ("notes", "closed on Mondays", "notes", "closed on Mondays"),
        ],
    )
    def test_typing_edits_a_store(self, column: str, text: str, field: str, value: object) -> None:
        binder = after_typing(STORES, day(small_binder()), "stores:corner", column, text)
        assert getattr(binder.stores["corner"], field) == value
        assert is_even(STORES, day(binder))

    def test_stores_are_added_and_those_nobody_needs_removed(self) -> None:
        binder = after_typing(STORES, day(small_binder()), ADD_STORE, "name", "The mill")
        assert {store.name for store in binder.stores.values()} == {"Corner Larder", "The mill"}
        gone = STORES.remove(day(binder), ["stores:the_mill", ADD_STORE])
        assert gone is not None
        assert "the_mill" not in apply(binder, gone).stores
        used = STORES.remove(day(binder), ["stores:corner"])
        assert used is not None
        with pytest.raises(BinderError, match="Corner Larder"):
            apply(binder, used)
        with pytest.raises(BinderError):
            STORES.edit(day(binder), ADD_STORE, "name", " ")

    def test_a_section_is_moved_by_keys_and_by_dragging(self) -> None:
        sight = Sight(small_binder(), "day", "corner")
        up = WALK.move_by(sight, "section:drinks", -1)
        assert up is not None
        assert walking_order(apply(sight.binder, up).stores["corner"])[-2] == "drinks"
        first = WALK.move_before(sight, "section:drinks", "section:produce")
        assert first is not None
        turned = Sight(apply(sight.binder, first), "day", "corner")
        assert [row.cells[1].text for row in WALK.rows(turned)][:2] == ["drinks", "produce"]
        last = WALK.move_before(turned, "section:drinks", None)
        assert last is not None
        assert walking_order(apply(turned.binder, last).stores["corner"])[-1] == "drinks"
        assert WALK.move_by(sight, "section:produce", -1) is None
        assert WALK.move_by(sight, "section:drinks", 1) is None
        assert is_even(WALK, sight)
        assert WALK.rows(Sight(sight.binder, "day", "gone")) == []


class TestOrders:
    def test_what_is_ordered_ahead_stands_by_its_day(self) -> None:
        binder = small_binder(replace(small_binder().foods["tahini"], order_days=3))
        (row,) = ToOrder(latest(binder)).rows(day(binder))
        assert [cell.text for cell in row.cells] == [
            "Sun, Nov 29, 2026",
            "tahini",
            "1 × 300 g",
            "Corner Larder",
            "Wed, Dec 2",
        ]

    def test_most_is_not(self) -> None:
        assert ToOrder(latest(small_binder())).rows(day(small_binder())) == []


class TestWhy:
    def test_the_next_best_and_what_it_would_cost_more(self) -> None:
        tin = Pack(id="tin", food="tahini", store="corner", label="tin", size=100, unit="g")
        binder = small_binder(tin, Quote(id="tin/1", pack="tin", price=400, on=date(2026, 11, 2)))
        line = list_lines(buying_figures(binder, "day"))["buy:tahini/pack-tahini"]
        assert why_text(binder, "day", line) == (
            "tahini: the next best, 2 × 100 g, tin at Corner Larder, would cost $2.00 more."
        )

    @pytest.mark.parametrize(("price", "than"), [(300, "$3.00 less"), (600, "the same"), (900, "$3.00 more")])
    def test_a_pinned_price_is_said_to_be_pinned_and_what_it_costs(self, price: int, than: str) -> None:
        pinned = replace(small_binder().quotes["quote-tahini"], pinned=True)
        tin = Pack(id="tin", food="tahini", store="corner", label="tin", size=200, unit="g")
        binder = small_binder(pinned, tin, Quote(id="tin/1", pack="tin", price=price, on=date(2026, 11, 2)))
        line = list_lines(buying_figures(binder, "day"))["buy:tahini/pack-tahini"]
        says = f"tahini: this price is pinned; 1 × 200 g, tin at Corner Larder would cost {than}."
        assert why_text(binder, "day", line) == says

    def test_at_the_counter_the_next_best_is_a_weight(self) -> None:
        counter = Pack(id="loose", food="tahini", store="corner", size=100, unit="g", by_weight=True)
        binder = small_binder(counter, Quote(id="loose/1", pack="loose", price=500, on=date(2026, 11, 2)))
        line = list_lines(buying_figures(binder, "day"))["buy:tahini/pack-tahini"]
        says = why_text(binder, "day", line)
        assert says == "tahini: the next best, 150 g at the counter of Corner Larder, would cost $1.50 more."

    def test_where_there_is_no_other(self) -> None:
        binder = small_binder()
        line = list_lines(buying_figures(binder, "day"))["buy:tahini/pack-tahini"]
        assert why_text(binder, "day", line) == "tahini: no other pack of it has a price."
        assert why_text(binder, "day", None) == ""

    @pytest.mark.parametrize("basis", list(CapBasis))
    def test_what_was_paid_shows_in_the_caps_on_their_basis(self, basis: CapBasis) -> None:
        shoot = replace(small_binder().shoots["day"], cap_basis=basis)
        assert as_bought_text(small_binder(shoot), "day") == ""
        paid = Purchase(id="p", shoot="day", food="tahini", pack="pack-tahini", paid=1200)
        says = as_bought_text(small_binder(shoot, paid), "day")
        assert says.startswith("As bought (")
        assert "1 Bean spread" in says
        assert "planned" in says
