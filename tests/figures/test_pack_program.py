"""The cheapest packs over all foods and stores, against trying everything and against an independent solver."""

from __future__ import annotations

import itertools
import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import Bounds, LinearConstraint, milp

from binder.figures.pack_offers import Bundle, Need, NothingCoversError, Offer, Terms
from binder.figures.pack_program import cheapest_purchase

STORES = ("A", "B", "C")


@st.composite
def questions(draw: st.DrawFn) -> tuple[list[Need], list[Offer], Terms]:
    """A few foods, each offered in a few packs at a few stores, some in bundles, with and without trip costs."""
    needs, offers = [], []
    for food in range(draw(st.integers(1, 3))):
        waste = draw(st.sampled_from([0.0, 0.0, 0.5]))
        needs.append(Need(f"food{food}", float(draw(st.integers(1, 900))), waste))
        for pack in range(draw(st.integers(1, 3))):
            price = draw(st.integers(1, 500))
            bundle = draw(st.sampled_from([None, None, Bundle(3, price * 2), Bundle(2, price + price // 2)]))
            size = float(draw(st.integers(100, 1000)))
            offers.append(Offer(f"{food}-{pack}", f"food{food}", draw(st.sampled_from(STORES)), size, price, bundle))
    trips = {store: draw(st.sampled_from([0, 100])) for store in STORES}
    return needs, offers, Terms(draw(st.sampled_from([None, 3, 2])), trips)


def by_trying_everything(needs: list[Need], offers: list[Offer], terms: Terms) -> float | None:
    """Minor units of the cheapest purchase, by trying every count of every pack; None where nothing covers."""
    best: float | None = None
    for count in range(1, len(STORES) + 1):
        for stores in itertools.combinations(STORES, count):
            if terms.most_stores is not None and count > terms.most_stores:
                continue
            costs = [
                _cheapest_for(need, [o for o in offers if o.food == need.food and o.store in stores]) for need in needs
            ]
            if all(cost is not None for cost in costs):
                total = sum(cost or 0.0 for cost in costs) + sum(terms.trip_costs.get(store, 0) for store in stores)
                best = total if best is None else min(best, total)
    return best


def _cheapest_for(need: Need, offers: list[Offer]) -> float | None:
    ranges = [
        range(math.ceil(need.grams / offer.grams) + (offer.bundle.packs if offer.bundle else 0) + 1) for offer in offers
    ]
    found = [
        sum(_least_cost(offer, count) for offer, count in zip(offers, counts, strict=True))
        + need.waste * (grams - need.grams)
        for counts in itertools.product(*ranges)
        if (grams := sum(o.grams * c for o, c in zip(offers, counts, strict=True))) >= need.grams and counts
    ]
    return min(found, default=None)


def _least_cost(offer: Offer, count: int) -> int:
    return offer.cost(count)


@settings(max_examples=300)
@given(questions())
def test_no_purchase_is_cheaper(question: tuple[list[Need], list[Offer], Terms]) -> None:
    needs, offers, terms = question
    tried = by_trying_everything(needs, offers, terms)
    if tried is None:
        with pytest.raises(NothingCoversError):
            cheapest_purchase(needs, offers, terms)
        return
    found = cheapest_purchase(needs, offers, terms)
    assert found.proven
    assert found.objective == pytest.approx(tried, abs=0.01)
    assert found.bound == pytest.approx(found.objective, abs=0.01)
    for need in needs:
        assert sum(one.grams for one in found.bought if one.offer.food == need.food) >= need.grams * (1 - 1e-6)


@settings(max_examples=60)
@given(questions())
def test_the_same_cost_as_scipys_solver(question: tuple[list[Need], list[Offer], Terms]) -> None:
    needs, offers, _terms = question
    plain = [Offer(o.key, o.food, o.store, o.grams, o.price) for o in offers]
    cost = np.array([float(offer.price) for offer in plain])
    rows = np.array([[offer.grams if offer.food == need.food else 0.0 for offer in plain] for need in needs])
    solved = milp(
        cost,
        constraints=LinearConstraint(rows, [need.grams for need in needs], np.inf),
        integrality=np.ones(len(plain)),
        bounds=Bounds(0, np.inf),
        options={"mip_rel_gap": 0},
    )
    found = cheapest_purchase([Need(need.food, need.grams) for need in needs], plain)
    assert found.cost == pytest.approx(solved.fun)


@settings(max_examples=60, deadline=None)
@given(questions())
def test_trips_and_few_stores_cost_what_scipys_solver_says(question: tuple[list[Need], list[Offer], Terms]) -> None:
    """As one program in whole numbers: counts of packs, and a visit to each store that any pack comes from."""
    needs, offers, terms = question
    plain = [Offer(o.key, o.food, o.store, o.grams, o.price) for o in offers]
    most = [math.ceil(next(n.grams for n in needs if n.food == o.food) / o.grams) for o in plain]
    trips = [float(terms.trip_costs.get(store, 0)) for store in STORES]
    cover = [[o.grams if o.food == n.food else 0.0 for o in plain] + [0.0] * len(STORES) for n in needs]
    visit = [
        [float(at == one) for at in range(len(plain))] + [-float(most[one]) * (o.store == s) for s in STORES]
        for one, o in enumerate(plain)
    ]
    few = [[0.0] * len(plain) + [1.0] * len(STORES)]
    stores = math.inf if terms.most_stores is None else terms.most_stores
    rows = np.array([*cover, *visit, *few])
    low = [*(need.grams for need in needs), *(-np.inf for _ in plain), 0]
    high = [*(np.inf for _ in needs), *(0.0 for _ in plain), stores]
    solved = milp(
        np.array([*(float(o.price) for o in plain), *trips]),
        constraints=LinearConstraint(rows, low, high),
        integrality=np.ones(len(plain) + len(STORES)),
        bounds=Bounds(0, [*map(float, most), *(1.0 for _ in STORES)]),
        options={"mip_rel_gap": 0},
    )
    if not solved.success:
        with pytest.raises(NothingCoversError):
            cheapest_purchase([Need(n.food, n.grams) for n in needs], plain, terms)
        return
    found = cheapest_purchase([Need(n.food, n.grams) for n in needs], plain, terms)
    assert found.objective == pytest.approx(solved.fun)


@pytest.mark.parametrize(
    ("coins", "amount", "fewest"),
    [((1, 3, 4), 6, 2), ((1, 10, 25), 30, 3), ((1, 5, 10, 25), 63, 6), ((1, 7, 10), 14, 2)],
)
def test_change_given_in_the_fewest_coins(coins: tuple[int, ...], amount: int, fewest: int) -> None:
    """The textbook case against taking the largest first; counted by hand. What is exact leaves nothing over."""
    offers = [Offer(str(coin), "f", "A", float(coin), 1) for coin in coins]
    found = cheapest_purchase([Need("f", float(amount), waste=1.0)], offers)
    assert (sum(one.count for one in found.bought), found.proven) == (fewest, True)
    assert sum(one.grams for one in found.bought) == amount


def test_a_covering_instance_with_a_known_optimum() -> None:
    # The coin problem: to reach 7 with pieces worth 3 at 5 and worth 4 at 6 the least is 11 (one of each); by hand.
    found = cheapest_purchase([Need("f", 7.0)], [Offer("a", "f", "A", 3.0, 5), Offer("b", "f", "A", 4.0, 6)])
    assert (found.cost, found.proven) == (11, True)


@pytest.mark.parametrize(("small", "large"), [(3, 5), (4, 9), (7, 12), (8, 15)])
def test_amounts_that_no_packs_add_up_to_are_as_many_as_sylvester_counted(small: int, large: int) -> None:
    """Of two sizes without a common divisor the largest amount they cannot make is ab - a - b, and there are
    (a - 1)(b - 1) / 2 such amounts (J. J. Sylvester, Educational Times 41, 1884, question 7382; from memory).

    At a price as large as the size, the cheapest purchase costs the amount itself where it can be made, else more.
    """
    offers = [Offer("small", "f", "A", float(small), small), Offer("large", "f", "A", float(large), large)]
    beyond = [
        amount
        for amount in range(1, small * large)
        if cheapest_purchase([Need("f", float(amount))], offers).cost != amount
    ]
    assert max(beyond) == small * large - small - large
    assert len(beyond) == (small - 1) * (large - 1) // 2


def test_three_for_the_price_of_two_is_taken_even_for_more_than_is_needed() -> None:
    offer = Offer("tin", "f", "A", 400.0, 100, Bundle(3, 150))
    found = cheapest_purchase([Need("f", 700.0)], [offer])
    assert [(one.count, one.cost) for one in found.bought] == [(3, 150)]


def test_at_the_counter_just_as_much_as_is_needed() -> None:
    counter = Offer("counter", "f", "A", 1000.0, 2000, by_weight=True, least=100.0)
    found = cheapest_purchase([Need("f", 340.4)], [counter, Offer("pack", "f", "A", 500.0, 900)])
    assert [(one.offer.key, one.grams, one.cost) for one in found.bought] == [("counter", 341.0, 682)]
    assert cheapest_purchase([Need("f", 20.0)], [counter]).bought[0].grams == 100.0


def test_a_second_trip_must_pay_for_itself() -> None:
    offers = [Offer("a", "f", "A", 500.0, 300), Offer("b", "f", "B", 500.0, 250), Offer("g", "g", "A", 100.0, 100)]
    needs = [Need("f", 500.0), Need("g", 100.0)]
    assert cheapest_purchase(needs, offers, Terms(trip_costs={"B": 60})).stores == {"A"}
    assert cheapest_purchase(needs, offers, Terms(trip_costs={"B": 40})).stores == {"A", "B"}
    assert cheapest_purchase(needs, offers, Terms(most_stores=1)).stores == {"A"}


def test_the_dearer_small_pack_where_the_rest_of_the_big_one_would_be_thrown_away() -> None:
    offers = [Offer("big", "f", "A", 1000.0, 300), Offer("small", "f", "A", 300.0, 160)]
    assert cheapest_purchase([Need("f", 600.0)], offers).cost == 300
    found = cheapest_purchase([Need("f", 600.0, waste=0.1)], offers)
    assert [(one.offer.key, one.count) for one in found.bought] == [("small", 2)]


def test_what_nobody_offers_is_named_and_the_rest_is_bought() -> None:
    found = cheapest_purchase([Need("f", 100.0), Need("ghost", 5.0)], [Offer("a", "f", "A", 100.0, 10)])
    assert found.uncovered == ("ghost",)
    assert found.cost == 10


@pytest.mark.parametrize("terms", [Terms(), Terms(most_stores=1), Terms(trip_costs={"A": 100})])
def test_where_nothing_has_a_price_nothing_is_bought_and_no_store_is_too_few(terms: Terms) -> None:
    found = cheapest_purchase([Need("f", 100.0), Need("g", 0.0)], [Offer("a", "g", "A", 100.0, 10)], terms)
    assert (found.bought, found.uncovered, found.objective, found.proven) == ((), ("f",), 0, True)


def test_ties_go_to_less_left_over_then_to_fewer_packs() -> None:
    offers = [Offer("a", "f", "A", 100.0, 10), Offer("b", "f", "A", 50.0, 5), Offer("c", "f", "A", 300.0, 10)]
    found = cheapest_purchase([Need("f", 100.0)], offers)
    assert [(one.offer.key, one.count) for one in found.bought] == [("a", 1)]


def test_ties_between_stores_go_to_less_left_over_too() -> None:
    offers = [Offer("a", "f", "A", 300.0, 10), Offer("b", "f", "B", 250.0, 10), Offer("c", "f", "C", 260.0, 10)]
    found = cheapest_purchase([Need("f", 200.0)], offers, Terms(trip_costs=dict.fromkeys(STORES, 100)))
    assert ([one.offer.key for one in found.bought], found.proven) == (["b"], True)


@pytest.mark.parametrize("stores", [3, 40])
def test_a_search_that_is_cut_short_says_no_more_than_it_knows(stores: int) -> None:
    offers = [
        Offer(f"{f}/{s}", f"f{f}", f"s{s}", 100.0 + f, 50 + (7 * f + 11 * s) % 13)
        for f in range(9)
        for s in range(stores)
    ]
    needs = [Need(f"f{food}", 250.0) for food in range(9)]
    terms = Terms(most_stores=2, trip_costs={f"s{store}": 20 + store for store in range(stores)})
    found = cheapest_purchase(needs, offers[: 9 * stores], terms, seconds=1e-9)
    assert {one.offer.food for one in found.bought} == {need.food for need in needs}
    assert len(found.stores) <= 2
    assert found.bound <= found.objective
    assert not found.proven


def test_progress_is_told_and_can_stop_the_search() -> None:
    told: list[tuple[float, float]] = []

    def tell(cost: float, bound: float) -> bool:
        told.append((cost, bound))
        return False

    needs = [Need(f"f{n}", 1000.0 + 37 * n) for n in range(30)]
    offers = [
        Offer(f"{n}-{p}", f"f{n}", STORES[(n + p) % 3], 130.0 + 31 * p + n, 50 + 17 * p + n % 7)
        for n in range(30)
        for p in range(8)
    ]
    found = cheapest_purchase(needs, offers, Terms(trip_costs=dict.fromkeys(STORES, 150)), progress=tell)
    assert told
    assert all(cost >= bound - 1e-6 for cost, bound in told)
    assert found.objective >= found.bound - 1e-6


@pytest.mark.parametrize(
    ("grams", "packs"),
    [
        (1e9, [(1.0, 1)]),
        (2_500_000.5, [(1000.0, 1000), (10.0, 10), (1.0, 1)]),
        (1e15, [(7.0, 3), (5.0, 2), (3.0, 1)]),
        (1e6, [(400.0, 0), (10.0, 0)]),
    ],
)
def test_a_slip_of_the_keyboard_never_makes_the_list_wait(grams: float, packs: list[tuple[float, int]]) -> None:
    offers = [Offer(f"p{n}", "f", "A", size, price) for n, (size, price) in enumerate(packs)]
    found = cheapest_purchase([Need("f", grams)], offers)
    assert sum(one.grams for one in found.bought) >= grams * (1 - 1e-6)
    assert found.bound <= found.objective
    assert found.proven == (found.bound == found.objective)


@pytest.mark.parametrize("stores", [1, 12])
def test_as_many_stores_as_there_are_cost_no_time_where_trips_are_free(stores: int) -> None:
    offers = [Offer(f"p{n}", "f", f"store {n % stores}", 90.0 + 30 * n, 50 + 15 * n) for n in range(12)]
    assert (
        cheapest_purchase([Need("f", 500.0)], offers).cost
        == cheapest_purchase([Need("f", 500.0)], [Offer(o.key, "f", "", o.grams, o.price) for o in offers]).cost
    )


@given(
    st.lists(st.tuples(st.integers(1, 60), st.integers(0, 40), st.sampled_from([0, 2, 3])), min_size=1, max_size=3),
    st.integers(1, 150),
)
def test_every_count_was_worth_trying_that_was_not_tried(packs: list[tuple[int, int, int]], grams: int) -> None:
    offers = [
        Offer(f"p{n}", "f", "A", float(size), price, Bundle(bundle, price * bundle - price // 2) if bundle else None)
        for n, (size, price, bundle) in enumerate(packs)
    ]
    found = cheapest_purchase([Need("f", float(grams))], offers)
    counts = itertools.product(*(range(math.ceil(grams / offer.grams) + 4) for offer in offers))
    ranks = [
        (
            sum(offer.cost(count) for offer, count in zip(offers, each, strict=True)),
            sum(offer.grams * count for offer, count in zip(offers, each, strict=True)),
            sum(each),
        )
        for each in counts
    ]
    covering = [rank for rank in ranks if rank[1] >= grams]
    weight, count = sum(one.grams for one in found.bought), sum(one.count for one in found.bought)
    assert (found.cost, weight, count) == min(covering)
    assert found.proven


def test_prices_beyond_what_the_solver_holds_are_still_compared() -> None:
    offers = [
        Offer("a", "f", "A", 1.0, 10**13),
        Offer("b", "f", "B", 1.0, 10**13 - 10**6),
        Offer("g", "g", "A", 100.0, 100),
    ]
    found = cheapest_purchase([Need("f", 5000.0), Need("g", 50.0)], offers, Terms(trip_costs={"A": 50, "B": 70}))
    assert found.stores == {"A", "B"}
    assert {one.offer.key for one in found.bought} == {"b", "g"}


@settings(max_examples=300)
@given(
    st.lists(st.tuples(st.integers(1, 60), st.integers(0, 40), st.sampled_from([0, 2, 3])), max_size=2),
    st.lists(st.tuples(st.integers(1, 60), st.integers(0, 40), st.integers(0, 30)), min_size=1, max_size=2),
    st.integers(1, 150),
)
def test_packs_beside_a_counter_come_to_the_last_cent(
    packs: list[tuple[int, int, int]], counters: list[tuple[int, int, int]], grams: int
) -> None:
    offers = [
        Offer(f"p{n}", "f", "A", float(size), price, Bundle(bundle, price * bundle - price // 2) if bundle else None)
        for n, (size, price, bundle) in enumerate(packs)
    ]
    weighed = [
        Offer(f"c{n}", "f", "A", float(size), price, by_weight=True, least=float(least))
        for n, (size, price, least) in enumerate(counters)
    ]
    ranks = []
    for each in itertools.product(*(range(math.ceil(grams / offer.grams) + 4) for offer in offers)):
        cost = sum(offer.cost(count) for offer, count in zip(offers, each, strict=True))
        weight = sum(int(offer.grams) * count for offer, count in zip(offers, each, strict=True))
        if weight >= grams:
            ranks.append((cost, weight, sum(each)))
            continue
        rests = [(counter, max(grams - weight, int(counter.least))) for counter in weighed]
        ranks += [(cost + counter.cost_of(rest), weight + rest, sum(each) + 1) for counter, rest in rests]
    found = cheapest_purchase([Need("f", float(grams))], [*offers, *weighed])
    grams_bought = sum(one.grams for one in found.bought)
    assert (found.cost, grams_bought, sum(one.count for one in found.bought)) == min(ranks)
    assert found.proven


def test_a_pack_and_the_rest_from_the_counter_may_come_to_a_cent_less() -> None:
    # At 0.704 a gram: 228 g (the scale shows whole ones) are 160.5, and so 161; 170.5 g in a pack and 57 g are 160.1.
    counter = Offer("counter", "f", "A", 3750 / 11, 240, by_weight=True)
    pack = Offer("pack", "f", "A", 1875 / 11, 120)
    assert cheapest_purchase([Need("f", 227.3)], [counter]).cost == 161
    assert cheapest_purchase([Need("f", 227.3)], [counter, pack]).cost == 160
