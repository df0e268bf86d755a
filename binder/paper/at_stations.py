"""What is done at each station: the steps of all dishes that name it, in the order they come to it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.card import StationCard, station_cards
from binder.figures.mise import unnamed_station
from binder.kitchen.wording import _, ngettext
from binder.paper.card_step import StepOf
from binder.paper.plan_words import clock, starts_by_step

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence
    from datetime import datetime

    from binder.figures.card import CardStep
    from binder.figures.day_plan import DayPlan
    from binder.figures.safety import AllergenInDish, DonenessNeeded
    from binder.kitchen.binder import Binder


@dataclass(frozen=True)
class AtStation:
    """One station: a card of all that is done there, whose each step is (by the step's id), and how many dishes come.

    A recipe that several dishes are made from is made once.
    """

    card: StationCard
    whose: dict[str, StepOf]
    dishes: int


@dataclass(frozen=True)
class _Visit:
    """A step of a card at its station, and when it first begins there, where a plan says so."""

    card: StationCard
    label: str
    found: CardStep
    at: datetime | None


def labelled_cards(binder: Binder, shoot_id: str) -> list[tuple[str, StationCard]]:
    """The cards of a shoot with their labels: the running number of a dish; A, B, C ... for what is made ahead."""
    labelled, ahead = [], 0
    for card in station_cards(binder, shoot_id):
        ahead += card.number is None
        labelled.append((str(card.number) if card.number is not None else _letters(ahead), card))
    return labelled


def _letters(number: int) -> str:
    """A for 1, AA after Z."""
    letters = ""
    while number > 0:
        number, letter = divmod(number - 1, 26)
        letters = chr(ord("A") + letter) + letters
    return letters


def at_stations(binder: Binder, shoot_id: str, plan: DayPlan | None) -> list[AtStation]:
    """The stations of a shoot, in the order that dishes come to them; with a plan their steps by the clock."""
    starts = _first_starts(plan) if plan else {}
    visits: dict[str, list[_Visit]] = {}
    for label, card in labelled_cards(binder, shoot_id):
        for found in card.steps:
            station = found.step.station or unnamed_station()
            visits.setdefault(station, []).append(_Visit(card, label, found, starts.get(found.step.id)))
    return [_at_station(binder, station, found) for station, found in visits.items()]


def _first_starts(plan: DayPlan) -> dict[str, datetime]:
    found: dict[str, datetime] = {}
    for (_build, step), start in starts_by_step(plan).items():
        found[step] = min(start, found.get(step, start))
    return found


def _at_station(binder: Binder, station: str, visits: Sequence[_Visit]) -> AtStation:
    ordered = sorted(visits, key=lambda visit: "" if visit.at is None else visit.at.isoformat())
    whose = {
        visit.found.step.id: StepOf(f"{visit.label}·{visit.found.number}", _whose(binder, visit)) for visit in ordered
    }
    cards = list({visit.card.recipe: visit.card for visit in ordered}.values())
    card = StationCard(
        dish="",
        recipe="",
        number=None,
        name=station,
        portions=None,
        batches=1.0,
        builds=(),
        steps=tuple({visit.found.step.id: visit.found for visit in ordered}.values()),
        allergens=_together(allergen for card in cards for allergen in card.allergens),
        doneness=_needed_here(cards),
        notes="",
    )
    return AtStation(card, whose, len({visit.card.name for visit in ordered}))


def _whose(binder: Binder, visit: _Visit) -> str:
    when = clock(binder, visit.at) if visit.at else ""
    return " · ".join(part for part in (when, visit.card.name) if part)


def _together(allergens: Iterable[AllergenInDish]) -> tuple[AllergenInDish, ...]:
    """The same allergen of several dishes as one, with the foods that carry it in any."""
    found: dict[str, AllergenInDish] = {}
    for one in allergens:
        known = found.get(one.group)
        kinds, foods = (known.kinds, known.foods) if known else ((), ())
        found[one.group] = type(one)(
            one.group, tuple(dict.fromkeys((*kinds, *one.kinds))), tuple(dict.fromkeys((*foods, *one.foods)))
        )
    return tuple(found[group] for group in sorted(found))


def _needed_here(cards: Sequence[StationCard]) -> tuple[DonenessNeeded, ...]:
    return tuple(dict.fromkeys(needed for card in cards for needed in card.doneness))


def dishes_text(count: int, steps: int) -> str:
    """How much comes together at a station."""
    dishes = ngettext("{count} dish or recipe", "{count} dishes and recipes", count).format(count=count)
    return _("{dishes}, {steps}").format(
        dishes=dishes, steps=ngettext("{count} step", "{count} steps", steps).format(count=steps)
    )
