"""Which packs to buy over all foods and stores at once: exact choices for each food, and CP-SAT to choose among them.

Once it is settled where one shops, each food is by itself; so for each food the best choice in every set of its stores
is found first (`pack_choice`), and a program in whole numbers then takes one choice a food and the trips it asks for.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any

from binder.figures.pack_choice import Choice, cheapest_choice
from binder.figures.pack_offers import Need, NothingCoversError, Offer, Progress, Purchase, Terms
from binder.figures.pack_ties import StoreSets, best_in_each, best_within, worth
from binder.figures.under_way import told
from binder.kitchen.turns import in_turns

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

_PARTS = 1e4
"""Parts of a minor unit that the program reckons in: it has whole numbers only."""

_LARGEST = 2.0**60
"""Sums that the program can hold; of larger ones it reckons in fewer parts."""

_WORKERS, _LINEAR = 1, 2
"""One worker that leans on the linear relaxation proves it in a tenth of the time that several take (measured)."""

_MOST_SETS = 500
"""Sets of stores looked at for one food; ten packs in ten stores need up to 150 (measured)."""

ANYWHERE = ""
"""The store of a pack that any store sells: no trip of its own."""


def cheapest_purchase(
    needs: Sequence[Need],
    offers: Sequence[Offer],
    terms: Terms | None = None,
    *,
    seconds: float = 20.0,
    progress: Progress | None = None,
) -> Purchase:
    """The cheapest whole packs that cover every need; ties go to less left over, then to fewer packs.

    Foods without any offer are named in `uncovered`. Raises NothingCoversError where the terms leave no way at all.
    """
    terms = terms or Terms()
    by_food: dict[str, list[Offer]] = {}
    for offer in offers:
        by_food.setdefault(offer.food, []).append(offer)
    wanted = [need for need in needs if need.food in by_food and need.grams > 0]
    uncovered = tuple(need.food for need in needs if need.food not in by_food)
    if not wanted or _each_by_itself(terms):
        alone = [choice for need in told(wanted) if (choice := cheapest_choice(need, by_food[need.food])) is not None]
        return _gathered(alone, terms, uncovered, untried=_untried([[choice] for choice in alone]))
    choices = [choices_for(need, by_food[need.food]) for need in told(wanted)]
    program = _Program(choices, terms, seconds)
    best, bound, proven = program.solve(progress)
    return _gathered(best, terms, uncovered, untried=_untried(choices), bound=bound, proven=proven)


def _untried(choices: Sequence[Sequence[Choice]]) -> float:
    """Minor units that choices might cost less if everything had been tried: none, but for needs beyond all reason."""
    return sum(max((choice.price - choice.bound for choice in group), default=0.0) for group in choices)


def choices_for(need: Need, offers: Sequence[Offer]) -> list[Choice]:
    """The best choice in each set of a food's stores, without those that another beats with no more trips.

    What is best in all stores is best in every set that has the stores it is bought in; so only sets are looked at that
    lack one of these, and so on. Where even they are too many, `bound` of the choices says what may have been missed.
    """
    found: dict[frozenset[str], Choice] = {}
    barred = [frozenset[str]()]
    known = set(barred)
    while barred and len(known) <= _MOST_SETS:
        without = barred.pop(0)
        choice = cheapest_choice(need, [offer for offer in offers if offer.store not in without])
        if choice is None:
            continue
        if choice.stores not in found or choice.rank < found[choice.stores].rank:
            found[choice.stores] = choice
        more = [without | {store} for store in sorted(choice.stores)]
        barred += [one for one in more if one not in known]
        known.update(more)
    if barred:
        _add_single_stores(found, need, offers)
    return [
        one
        for one in found.values()
        if not any(other.stores < one.stores and other.rank <= one.rank for other in found.values())
    ]


def _add_single_stores(found: dict[frozenset[str], Choice], need: Need, offers: Sequence[Offer]) -> None:
    """Where not every set was looked at: each store alone, and that nothing costs less than what is best in all."""
    least = min(choice.bound for choice in found.values())
    for store in {offer.store for offer in offers}:
        choice = cheapest_choice(need, [offer for offer in offers if offer.store == store])
        if choice is not None:
            found.setdefault(choice.stores, choice)
    for stores, choice in found.items():
        found[stores] = replace(choice, bound=min(choice.bound, least))


def _each_by_itself(terms: Terms) -> bool:
    """Whether nothing ties one food's choice to another's."""
    return terms.most_stores is None and not any((*terms.trip_costs.values(), *terms.avoided.values()))


def _gathered(
    choices: Sequence[Choice],
    terms: Terms,
    uncovered: tuple[str, ...],
    *,
    untried: float,
    bound: float | None = None,
    proven: bool = True,
) -> Purchase:
    stores = frozenset().union(*(choice.stores for choice in choices))
    objective = sum(choice.price for choice in choices) + sum(_asked(terms, store) for store in stores)
    bought = tuple(one for choice in choices for one in choice.bought)
    least = (objective if bound is None else bound) - untried
    return Purchase(bought, uncovered, objective, least, proven and not untried)


def _asked(terms: Terms, store: str) -> int:
    """Minor units that going to a store counts."""
    return terms.trip_costs.get(store, 0) + terms.avoided.get(store, 0)


class _Program:
    """One choice a food, and a visit to every store that a choice asks for."""

    def __init__(self, choices: Sequence[Sequence[Choice]], terms: Terms, seconds: float) -> None:
        from ortools.sat.python import cp_model

        self.cp_model: Any = cp_model
        self.model = cp_model.CpModel()
        self.choices, self.terms, self.seconds = choices, terms, seconds
        self.visits: dict[str, Any] = {}
        self.taken = [[self.model.new_bool_var("") for _choice in group] for group in choices]
        for group, taken in in_turns(zip(choices, self.taken, strict=True)):
            self.model.add_exactly_one(taken)
            for store in frozenset().union(*(choice.stores for choice in group)) - {ANYWHERE}:
                asking = [var for choice, var in zip(group, taken, strict=True) if store in choice.stores]
                self.model.add(sum(asking) <= self._visit(store))
        if terms.most_stores is not None:
            self.model.add(sum(self.visits.values()) <= terms.most_stores)
        asked = {store: _asked(terms, store) for store in self.visits}
        self.parts = self._parts(sum(asked.values()))
        self.trips = sum(round(self.parts * asked[store]) * visit for store, visit in self.visits.items())
        self.price = self.trips + sum(
            round(self.parts * choice.price) * var
            for group, taken in in_turns(zip(choices, self.taken, strict=True))
            for choice, var in zip(group, taken, strict=True)
        )

    def _visit(self, store: str) -> Any:  # noqa: ANN401 - the solver has no types
        if store not in self.visits:
            self.visits[store] = self.model.new_bool_var(store)
        return self.visits[store]

    def _parts(self, trips: float) -> float:
        """Parts of a minor unit: as many as the largest sum of prices allows, and what `trips` cost beside them."""
        most = trips + sum(max(choice.price for choice in group) for group in self.choices)
        return min(_PARTS, _LARGEST / most) if most else _PARTS

    def _cost(self, purchase: Sequence[Choice]) -> int:
        """What choices come to with their trips, in the program's own parts."""
        stores = frozenset().union(*(choice.stores for choice in purchase))
        trips = sum(round(self.parts * _asked(self.terms, store)) for store in stores & self.visits.keys())
        return sum(round(self.parts * choice.price) for choice in purchase) + trips

    def solve(self, progress: Progress | None) -> tuple[list[Choice], float, bool]:
        """The best choices, the bound in minor units, and whether they are proven the best."""
        sets = StoreSets(frozenset(self.visits), self.terms.most_stores)
        known = best_in_each(self.choices, sets, self._cost)
        if known is not None:
            self._hint(known)
        found, bound, proven = self._minimise(progress)
        purchases = [one for one in (known, found and self._without_ties(found, sets)) if one]
        if not purchases:
            raise NothingCoversError(_foods(self.choices))
        return min(purchases, key=lambda one: worth(one, self._cost)), bound / self.parts, proven

    def _hint(self, known: Sequence[Choice]) -> None:
        """Begin the search with a purchase: what is left to do is to prove that there is none better."""
        for group, taken, choice in in_turns(zip(self.choices, self.taken, known, strict=True)):
            for one, var in zip(group, taken, strict=True):
                self.model.add_hint(var, one is choice)
        stores = frozenset().union(*(choice.stores for choice in known))
        for store, visit in self.visits.items():
            self.model.add_hint(visit, store in stores)

    def _without_ties(self, found: Sequence[Choice], sets: StoreSets) -> list[Choice]:
        """The best purchase in the stores of the one found."""
        stores = frozenset().union(*(choice.stores for choice in found))
        ordered = [sorted(group, key=lambda choice: choice.rank) for group in self.choices]
        return best_within(ordered, sets.stores - stores) or list(found)

    def _minimise(self, progress: Progress | None) -> tuple[list[Choice] | None, float, bool]:
        """The cheapest choices found, if any; the bound in parts; and whether they are proven the cheapest."""
        solver = self.cp_model.CpSolver()
        solver.parameters.max_time_in_seconds = self.seconds
        solver.parameters.num_workers, solver.parameters.linearization_level = _WORKERS, _LINEAR
        solver.parameters.random_seed = 1
        solver.parameters.catch_sigint_signal = False  # the program ends on Ctrl-C, and not the search alone
        self.model.minimize(self.price)
        ended = solver.solve(self.model, _teller(self.cp_model, progress, self.parts) if progress else None)
        if ended not in (self.cp_model.OPTIMAL, self.cp_model.FEASIBLE):
            return None, max(0.0, solver.best_objective_bound), False
        found = [
            next(choice for choice, var in zip(group, taken, strict=True) if solver.value(var))
            for group, taken in zip(self.choices, self.taken, strict=True)
        ]
        return found, solver.best_objective_bound, ended == self.cp_model.OPTIMAL


def _foods(choices: Sequence[Sequence[Choice]]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(one.offer.food for group in choices for choice in group for one in choice.bought))


def _teller(cp_model: Any, progress: Progress, parts: float) -> Any:  # noqa: ANN401
    """A callback that tells each better purchase and stops the search where it is not wanted any more."""

    class Teller(cp_model.CpSolverSolutionCallback):  # type: ignore[misc]
        def on_solution_callback(self) -> None:
            if not progress(self.objective_value / parts, self.best_objective_bound / parts):
                self.stop_search()

    return Teller()


def spend_by_store(purchase: Purchase) -> Mapping[str, int]:
    """Minor units for goods at each store."""
    spend: dict[str, int] = {}
    for one in purchase.bought:
        spend[one.offer.store] = spend.get(one.offer.store, 0) + one.cost
    return spend
