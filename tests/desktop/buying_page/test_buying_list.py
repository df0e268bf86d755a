"""The shopping list on screen: by trip and section, ticked, counted, paid for, and settled with something else."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from binder.desktop.buying_page.buying_figures import BuyingFigures, buying_figures
from binder.desktop.buying_page.buying_list import BuyingList
from binder.desktop.latest import Latest
from binder.desktop.pictures.tick_box import TickBox
from binder.desktop.sheet.cell import Cell, Mark
from binder.desktop.sheet.sheet import NotEditableError, Sight
from binder.figures.missing import Place
from binder.figures.shopping import shopping_list
from binder.figures.trips import trip_plans
from binder.kitchen.binder import Binder
from binder.kitchen.buying import Purchase
from binder.kitchen.change import apply
from binder.kitchen.edits.buying import add_pantry_item
from binder.kitchen.edits.records import remove
from binder.kitchen.edits.shoots import set_shoot
from binder.kitchen.errors import BinderError
from binder.kitchen.food import Food
from binder.kitchen.price import Pack, Quote, Store
from tests.desktop.sheets import is_even
from tests.kitchen_binder import small_binder

TAHINI, ONION = "buy:tahini/pack-tahini", "buy:onion/pack-onion"


class Shopping:
    """The list of a binder, and the binder after each thing done to it."""

    def __init__(self, binder: Binder, *, shoot: str = "day") -> None:
        self.binder, self.shoot = binder, shoot

    @property
    def sheet(self) -> BuyingList:
        latest: Latest[BuyingFigures] = Latest(buying_figures(self.binder, self.shoot))
        return BuyingList(latest)

    @property
    def sight(self) -> Sight:
        return Sight(self.binder, self.shoot)

    @property
    def keys(self) -> list[str]:
        return [row.key for row in self.sheet.rows(self.sight)]

    def cell(self, row: str, column: str) -> Cell:
        sheet = self.sheet
        at = [one.id for one in sheet.columns].index(column)
        return next(one for one in sheet.rows(self.sight) if one.key == row).cells[at]

    def type_in(self, row: str, column: str, text: str) -> Shopping:
        return Shopping(apply(self.binder, self.sheet.edit(self.sight, row, column, text)), shoot=self.shoot)

    def tick(self, row: str) -> Shopping:
        change = self.sheet.toggle(self.sight, row)
        assert change is not None
        return Shopping(apply(self.binder, change), shoot=self.shoot)

    def bought(self, food: str) -> list[Purchase]:
        return [one for one in self.binder.purchases.values() if one.food == food]

    @property
    def only(self) -> Purchase:
        (purchase,) = self.binder.purchases.values()
        return purchase


@pytest.fixture
def small() -> Shopping:
    """One jar of tahini, 300 g at 6.00, a bag of onions and more, all at the Corner Larder."""
    return Shopping(small_binder())


@pytest.fixture
def day(chickpeas: Binder) -> Shopping:
    """Two stores."""
    return Shopping(chickpeas)


def test_every_pack_to_take_stands_under_its_trip_and_section(day: Shopping) -> None:
    wanted = []
    for plan in trip_plans(day.binder, "day"):
        trip = f"trip:{plan.store}/{plan.on}"
        wanted.append(trip)
        section = ""
        for line in plan.lines:
            if line.item.section != section:
                section = line.item.section
                wanted.append(f"section:{trip}/{section}")
            wanted += [f"buy:{line.item.food}/{pack.priced.pack.id}" for pack in line.packs]
    assert day.keys[: len(wanted)] == wanted
    assert day.keys[len(wanted) :] == ["total", "surely"]
    assert is_even(day.sheet, day.sight)


def test_a_row_has_need_packs_price_and_left_over(day: Shopping) -> None:
    row = "buy:tomatoes_plum/pack_tomatoes_plum"
    shown = {column.id: day.cell(row, column.id).text for column in day.sheet.columns}
    assert shown == {
        "tick": "",
        "food": "tomatoes, plum",
        "needed": "955",
        "count": "3",
        "pack": "1 lb",
        "price": "$2.49",
        "on": "Oct 19",
        "spend": "$7.47",
        "paid": "",
        "left_over": "406",
    }
    assert day.cell(row, "food").leads_to == Place("foods", "tomatoes_plum")


def test_a_line_that_an_offer_makes_cheaper_says_the_offer() -> None:
    quote = replace(small_binder().quotes["quote-tahini"], price=300, bundle_packs=3, bundle_price=600)
    jar = replace(small_binder().packs["pack-tahini"], label="jar", size=60)
    small = Shopping(small_binder(quote, jar))
    assert (small.cell(TAHINI, "count").text, small.cell(TAHINI, "spend").text) == ("3", "$6.00")
    assert (small.cell(TAHINI, "pack").text, small.cell(TAHINI, "pack").unit) == ("60 g, jar", "3 for $6.00")
    # Two were all there were: the offer is off, and the line says what two cost.
    fewer = small.type_in(TAHINI, "count", "2")
    assert (fewer.cell(TAHINI, "pack").unit, fewer.cell(TAHINI, "spend").text) == ("30 g short", "$6.00")


def test_the_offer_on_a_pack_with_a_long_label_goes_below_and_is_not_cut_off() -> None:
    quote = replace(small_binder().quotes["quote-tahini"], price=300, bundle_packs=3, bundle_price=600)
    jar = replace(small_binder().packs["pack-tahini"], label="jar of the better sort, from the top shelf", size=60)
    cell = Shopping(small_binder(quote, jar)).cell(TAHINI, "pack")
    assert (cell.unit, cell.under, cell.folds) == ("", "3 for $6.00", True)
    assert cell.says == "60 g, jar of the better sort, from the top shelf 3 for $6.00"


def test_long_names_go_on_below_so_that_two_alike_are_told_apart() -> None:
    named = replace(small_binder().foods["tahini"], name="paste of hulled sesame, roasted dark")
    jar = replace(small_binder().packs["pack-tahini"], label="jar of the better sort, from the top shelf")
    long = Shopping(small_binder(named, jar))
    assert [long.cell(TAHINI, column).folds for column in ("food", "pack")] == [True, True]
    assert [long.cell(ONION, column).folds for column in ("food", "pack")] == [False, False]


def test_the_foot_is_the_sum_at_the_till_against_the_budget_and_how_surely(day: Shopping) -> None:
    assert day.cell("total", "food").text == "At the till, whole packs; the budget, for all there is to pay, is $90.00"
    spend = shopping_list(day.binder, "day").spend
    assert spend is not None
    assert day.cell("total", "spend").text == f"${spend / 100:.2f}"
    assert day.cell("total", "food").mark is Mark.OVER
    assert day.cell("surely", "food").text == "No other choice of packs costs less: proven."


def test_a_tick_says_what_was_taken_as_the_list_has_it(small: Shopping) -> None:
    assert small.cell(TAHINI, "tick").picture == TickBox()
    after = small.tick(TAHINI)
    bought = after.only
    assert (bought.food, bought.pack, bought.count, bought.planned, bought.paid) == (
        "tahini",
        "pack-tahini",
        1,
        600,
        None,
    )
    assert bought.on == trip_plans(small.binder, "day")[0].on
    assert after.cell(TAHINI, "tick").picture == TickBox(ticked=True)
    assert after.cell(TAHINI, "tick").says == "bought"
    assert is_even(after.sheet, after.sight)
    assert after.tick(TAHINI).binder == small.binder


def test_what_was_paid_ticks_an_open_line(small: Shopping) -> None:
    after = small.type_in(TAHINI, "paid", "6.49")
    assert (after.only.paid, after.only.planned) == (649, 600)
    assert after.cell("total", "paid").text == "$6.49"
    assert after.type_in(TAHINI, "paid", "").only.paid is None


def test_more_or_fewer_packs_than_the_list_has(small: Shopping) -> None:
    after = small.type_in(TAHINI, "count", "2")
    assert after.only.count == 2
    assert after.cell(TAHINI, "spend").text == "$12.00"
    assert after.type_in(TAHINI, "count", "3").only.count == 3


def test_what_is_left_over_follows_what_was_bought(small: Shopping) -> None:
    # 150 g of a jar of 300 g are needed.
    after = small.type_in(TAHINI, "count", "2")
    assert (small.cell(TAHINI, "left_over").text, after.cell(TAHINI, "left_over").text) == ("150", "450")


def test_what_was_bought_and_is_too_little_says_how_much_is_short() -> None:
    jar = replace(small_binder().packs["pack-tahini"], size=60)
    two = Shopping(small_binder(jar)).type_in(TAHINI, "count", "2")
    left, pack = two.cell(TAHINI, "left_over"), two.cell(TAHINI, "pack")
    assert (left.text, left.says) == ("–", "nothing left over")
    assert (pack.unit, pack.mark) == ("30 g short", Mark.SHORT)
    # A third jar, of another size and beside the list, makes up for it.
    small = Pack(id="small", food="tahini", store="corner", size=40, unit="g")
    beside = Purchase(id="beside", shoot="day", food="tahini", pack="small")
    more = Shopping(small_binder(jar, small, beside, two.only))
    assert more.cell(TAHINI, "left_over").text == "10"


def test_what_was_taken_instead_comes_to_its_own_price_and_nothing_to_none(small: Shopping) -> None:
    oil = small.type_in(TAHINI, "pack", "olive oil")
    row = next(key for key in oil.keys if key.startswith("buy:tahini/"))
    assert (oil.cell(row, "spend").text, oil.cell(row, "spend").tip) == ("$9.00", "planned: $6.00")
    none = small.type_in(TAHINI, "count", "0")
    assert (none.cell(row, "spend").text, none.cell(row, "spend").says) == ("–", "planned: $6.00")


def test_none_at_all_was_not_to_be_had(small: Shopping) -> None:
    for after in (small.type_in(TAHINI, "count", "0"), small.type_in(TAHINI, "pack", "not to be had")):
        assert (after.only.count, after.only.paid, after.only.pack) == (0, 0, None)
        assert after.cell("buy:tahini/", "pack").text == "not to be had"
        assert after.cell("buy:tahini/", "tick").says == "not to be had"
        assert TAHINI not in after.keys
        assert is_even(after.sheet, after.sight)
        assert after.tick("buy:tahini/").binder == small.binder


def test_another_food_taken_instead(small: Shopping) -> None:
    after = small.type_in(TAHINI, "pack", "Flour")
    bought = after.only
    assert (bought.food, bought.instead, bought.pack, bought.count, bought.planned) == (
        "tahini",
        "flour",
        "pack-flour",
        1,
        600,
    )
    assert after.cell("buy:tahini/", "pack").text == "flour instead, 1000 g"
    paid = after.type_in("buy:tahini/", "paid", "1.50")
    assert paid.only.paid == 150
    assert "flo" in small.sheet.offers(small.sight, TAHINI, "pack", "flo")[0]


def test_another_pack_of_the_same_food_in_as_many_as_cover_the_need(small: Shopping) -> None:
    tin = Pack(id="tin", food="tahini", store="corner", label="small tin", size=50, unit="g")
    dear = Shopping(small_binder(tin, Quote(id="tin/1", pack="tin", price=300, on=date(2026, 11, 2))))
    offered = dear.cell(TAHINI, "pack").choices
    assert offered == ("50 g, small tin at Corner Larder", "not to be had")
    after = dear.type_in(TAHINI, "pack", offered[0])
    assert (after.only.instead, after.only.pack, after.only.count) == ("tahini", "tin", 6)
    assert after.cell("buy:tahini/", "pack").text == "50 g, small tin"


def test_at_the_counter_a_weight_is_taken(small: Shopping) -> None:
    counter = replace(small.binder.packs["pack-onion"], by_weight=True)
    weighed = Shopping(small_binder(counter))
    item = next(item for item in shopping_list(weighed.binder, "day").items if item.food == "onion")
    assert weighed.cell(ONION, "count").says.endswith("g")
    ticked = weighed.tick(ONION)
    assert ticked.only.count * 907.18474 == pytest.approx(item.packs[0].grams, rel=1e-6)
    more = ticked.type_in(ONION, "count", "500 g")
    assert more.only.count == pytest.approx(500 / 907.18474)
    assert more.cell(ONION, "count").text == "500"


def test_the_day_and_a_note_stand_under_what_is_bought(small: Shopping) -> None:
    after = small.tick(TAHINI)
    row = f"bought:{after.only.id}"
    dated = after.type_in(row, "food", "2026-12-01").type_in(row, "pack", "the last jar")
    assert (dated.only.on, dated.only.note) == (date(2026, 12, 1), "the last jar")
    assert dated.cell(row, "pack").text == "the last jar"
    assert dated.type_in(row, "food", "").only.on is None


def test_a_price_or_an_offer_is_edited_where_it_is_read(small: Shopping) -> None:
    assert small.type_in(TAHINI, "price", "8.25").binder.quotes["quote-tahini"].price == 825
    assert small.type_in(TAHINI, "price", "3 for 15").binder.quotes["quote-tahini"].bundle_price == 1500
    with pytest.raises(NotEditableError):
        small.sheet.edit(small.sight, TAHINI, "needed", "1")
    with pytest.raises(BinderError, match="not to be had"):
        small.sheet.edit(small.sight, TAHINI, "pack", "moonberries")


def test_what_was_bought_beside_the_list_is_shown_and_can_be_forgotten(small: Shopping) -> None:
    sumac = (Food(id="sumac", name="sumac"), Pack(id="sumac/1", food="sumac", size=50, unit="g"))
    purchase = Purchase(id="p", shoot="day", food="sumac", pack="sumac/1", count=2)
    beside = Shopping(small_binder(*sumac, purchase))
    assert beside.cell("beside:p", "food").text == "sumac"
    assert beside.cell("beside:p", "count").text == "2"
    assert is_even(beside.sheet, beside.sight)
    assert beside.type_in("beside:p", "paid", "2").only.paid == 200
    assert beside.type_in("beside:p", "count", "3").only.count == 3
    assert not beside.tick("beside:p").binder.purchases


def test_what_has_no_price_says_so_leads_there_and_can_be_paid_for(small: Shopping) -> None:
    binder = apply(small.binder, remove("", small.binder, small.binder.packs["pack-tahini"]))
    bare = Shopping(binder)
    cell = bare.cell("buy:tahini/", "pack")
    assert (cell.text, cell.leads_to) == ("not known: no price for tahini", Place("foods", "tahini"))
    assert "whole packs, and what has no price;" in bare.cell("total", "food").text
    paid = bare.type_in("buy:tahini/", "paid", "7")
    assert paid.only.paid == 700
    assert is_even(paid.sheet, paid.sight)


def test_a_tick_of_the_whole_line_shows_once_under_its_first_pack(small: Shopping) -> None:
    tins = (
        Pack(id="large", food="tahini", store="corner", size=600, unit="g"),
        Quote(id="large/1", pack="large", price=900, on=date(2026, 11, 2)),
        replace(small.binder.lines["spread/1/2"], low=20.0, high=20.0),
        Purchase(id="p", shoot="day", food="tahini", paid=1400),
    )
    both = Shopping(small_binder(*tins))
    rows = [key for key in both.keys if key.startswith("buy:tahini/")]
    assert len(rows) == 2
    assert both.keys.count("bought:p") == 1
    assert is_even(both.sheet, both.sight)
    for row in rows:
        assert not both.tick(row).binder.purchases


def test_what_is_at_home_is_named(small: Shopping) -> None:
    change, _item = add_pantry_item(
        small.binder, small.binder.shoots["day"], small.binder.foods["flour"], amount=100, unit="g"
    )
    after = Shopping(apply(small.binder, change))
    assert after.cell("buy:flour/pack-flour", "food").tip == "100 g of it at home already"


def test_no_shoot_nothing_to_buy(chickpeas: Binder) -> None:
    assert BuyingList(Latest()).rows(Sight(chickpeas, None)) == []
    assert BuyingList(Latest()).rows(Sight(chickpeas, "day")) == []


class TestDaysOfTrips:
    """The day above a trip is typed in place."""

    def test_a_day_typed_over_the_one_worked_out_is_ones_own(self, small: Shopping) -> None:
        (plan,) = trip_plans(small.binder, "day")
        trip = f"trip:corner/{plan.on}"
        assert small.cell(trip, "food").text == "Wed, Dec 2, 2026"
        after = small.type_in(trip, "food", "2026-11-30")
        (own,) = after.binder.trips.values()
        assert (own.store, own.on, own.shoot) == ("corner", date(2026, 11, 30), "day")
        assert "trip:corner/2026-11-30" in after.keys
        moved = after.type_in("trip:corner/2026-11-30", "food", "2026-12-01")
        assert [one.on for one in moved.binder.trips.values()] == [date(2026, 12, 1)]
        assert moved.type_in("trip:corner/2026-12-01", "food", "").binder == small.binder
        gone = moved.sheet.remove(moved.sight, ["trip:corner/2026-12-01"])
        assert gone is not None
        assert apply(moved.binder, gone) == small.binder

    def test_the_other_days_of_the_store_stay_as_they_were(self) -> None:
        herbs = replace(small_binder().foods["onion"], keeps_days=1)
        early = Food(id="soaked", name="soaked beans", form_of="beans", good_from_days=5)
        two = Shopping(small_binder(herbs, early))
        days = [plan.on for plan in trip_plans(two.binder, "day")]
        assert len(days) == 2
        after = two.type_in(f"trip:corner/{days[1]}", "food", "2026-12-01")
        assert {one.on for one in after.binder.trips.values()} == {days[0], date(2026, 12, 1)}
        assert after.sheet.remove(after.sight, [f"trip:corner/{days[0]}"]) is not None

    def test_a_day_worked_out_cannot_be_emptied_or_removed(self, small: Shopping) -> None:
        (plan,) = trip_plans(small.binder, "day")
        with pytest.raises(BinderError, match="write a date"):
            small.sheet.edit(small.sight, f"trip:corner/{plan.on}", "food", "")
        assert small.sheet.remove(small.sight, [f"trip:corner/{plan.on}"]) is None

    def test_what_any_store_sells_has_no_day_to_type(self, small: Shopping) -> None:
        anywhere = Shopping(small_binder(replace(small.binder.packs["pack-tahini"], store=None)))
        trip = next(key for key in anywhere.keys if key.startswith("trip:/"))
        assert anywhere.cell(trip, "food").edit is None
        with pytest.raises(BinderError):
            anywhere.sheet.edit(anywhere.sight, trip, "food", "2026-12-01")

    def test_a_shoot_without_a_date_is_bought_for_on_any_day(self, small: Shopping) -> None:
        undated = Shopping(apply(small.binder, set_shoot(small.binder.shoots["day"], on=None)))
        assert undated.cell("trip:corner/", "food").text == ""
        assert undated.type_in("trip:corner/", "food", "2026-12-01").binder.trips


def test_stores_are_walked_through_in_their_own_order(small: Shopping) -> None:
    turned = Store(id="corner", name="Corner Larder", sections=("baking", "oils and vinegars"))
    sections = [key.rsplit("/", 1)[1] for key in Shopping(small_binder(turned)).keys if key.startswith("section:")]
    assert sections[:2] == ["baking", "oils and vinegars"]


def test_where_too_few_stores_are_gone_to_that_is_said_once_and_leads_to_the_shoot() -> None:
    plain = small_binder()
    shoot, oil = replace(plain.shoots["day"], most_stores=1), replace(plain.packs["pack-oil"], store="far")
    small = Shopping(small_binder(Store(id="far", name="Far Barn"), shoot, oil))
    assert small.keys[:2] == ["heading:unknown", "reason:0"]
    reason = small.cell("reason:0", "food")
    assert reason.text.startswith("No store alone sells everything on the list. Corner Larder comes nearest")
    assert reason.leads_to == Place("shoots", "day")
    assert small.cell("buy:onion/", "pack").text == "not known: too few stores"
    assert is_even(small.sheet, small.sight)
