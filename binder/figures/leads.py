"""What must start before call: for each conversion of the base the latest moment it can begin.

The moment is counted back from call through all that follows.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, time
from typing import TYPE_CHECKING

from binder.figures.base import base_balance
from binder.figures.base_network import network_of
from binder.figures.clock import shifted
from binder.figures.memory import PLANS, remembered_from
from binder.figures.missing import Missing, MissingKind, Place
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Mapping

    from binder.figures.base import BaseBalance
    from binder.figures.base_network import Network
    from binder.kitchen.binder import Binder
    from binder.kitchen.food import Food
    from binder.kitchen.shoot import Shoot

_DAY = 24 * 60
_EARLIEST_CALL = time(0, 0)
"""A shoot without a call time is reckoned from the beginning of its day."""


@dataclass(frozen=True)
class Lead:
    """One run of a conversion before call: grams it takes, minutes of hands and of waiting, and its latest start.

    `minutes_before` is how long before call that is; `starts` is None where the shoot has no date.
    """

    conversion: str
    name: str
    takes: str
    grams: float
    hands_on: float
    waiting: float
    minutes_before: float
    starts: datetime | None
    for_dishes: tuple[str, ...]


@remembered_from(PLANS)
def shoot_leads(binder: Binder, shoot_id: str) -> tuple[Lead, ...]:
    """The conversions to run before call, the earliest first. Times are wall-clock times of the shoot's own place."""
    balance = base_balance(binder, shoot_id)
    network = network_of(binder, balance.base) if balance else None
    if balance is None or network is None or isinstance(network, Missing):
        return ()
    begin = minutes_before_call(binder, network, balance)
    shoot = binder.shoots[shoot_id]
    users = _users(network, balance)
    leads = [
        _lead(binder, shoot, run.conversion, run.grams, begin[run.conversion], users[run.conversion])
        for run in balance.runs
    ]
    return tuple(sorted(leads, key=lambda lead: (-lead.minutes_before, lead.name)))


def _lead(binder: Binder, shoot: Shoot, key: str, grams: float, before: float, dishes: tuple[str, ...]) -> Lead:
    conversion = binder.conversions[key]
    return Lead(
        conversion=key,
        name=conversion.name,
        takes=binder.foods[conversion.takes].name,
        grams=grams,
        hands_on=conversion.hands_on_minutes,
        waiting=conversion.lead_minutes,
        minutes_before=before,
        starts=before_call(shoot, before),
        for_dishes=dishes,
    )


def before_call(shoot: Shoot, minutes: float) -> datetime | None:
    """What the clock on the wall shows so many minutes before call, also across a night in which clocks change.

    None where the shoot has no date, or where that is before the calendar begins.
    """
    call = call_moment(shoot)
    try:
        return None if call is None else shifted(call, -minutes, shoot.zone)
    except OverflowError:
        return None


def call_moment(shoot: Shoot) -> datetime | None:
    """Date and time of call, by the clock on the wall; None where the shoot has no date."""
    return None if shoot.on is None else datetime.combine(shoot.on, shoot.call or _EARLIEST_CALL)


def minutes_before_call(binder: Binder, network: Network, balance: BaseBalance) -> dict[str, float]:
    """How many minutes before call each conversion must begin, for all its outcomes to be fit to use at call."""
    runs = {run.conversion for run in balance.runs}
    used = {form.form for form in balance.forms if form.used > 0}
    needed_by: dict[str, float] = dict.fromkeys(used, 0.0)
    begin: dict[str, float] = {}
    for process in network.processes:
        if process.key not in runs:
            continue
        conversion = binder.conversions[process.key]
        ready = max(
            (needed_by[form] + _ageing(binder.foods[form]) for form, _ratio in process.gives if form in needed_by),
            default=0.0,
        )
        begin[process.key] = ready + conversion.hands_on_minutes + conversion.lead_minutes
        for form, _share in process.inputs:
            needed_by[form] = max(needed_by.get(form, 0.0), begin[process.key])
    return begin


def _ageing(form: Food) -> float:
    return (form.good_from_days or 0) * _DAY


def _users(network: Network, balance: BaseBalance) -> dict[str, tuple[str, ...]]:
    """The dishes that each process works for, directly or through what is made on from its outcomes."""
    dishes: dict[str, set[str]] = {}
    for dish, needs in balance.by_dish.items():
        for form in needs:
            dishes.setdefault(form, set()).add(dish)
    users: dict[str, tuple[str, ...]] = {}
    for process in network.processes:
        served = set().union(*(dishes.get(form, set()) for form, _ratio in process.gives))
        users[process.key] = tuple(dish for dish in balance.by_dish if dish in served)
        for form, _share in process.inputs:
            dishes.setdefault(form, set()).update(served)
    return users


@remembered_from(PLANS)
def shelf_life_clashes(binder: Binder, shoot_id: str) -> tuple[Missing, ...]:
    """Forms that no longer keep when they are used, because another outcome of their conversion must age meanwhile."""
    balance = base_balance(binder, shoot_id)
    network = network_of(binder, balance.base) if balance else None
    if balance is None or network is None or isinstance(network, Missing):
        return ()
    begin = minutes_before_call(binder, network, balance)
    last_used = _last_used(network, balance, begin)
    clashes = []
    for process in network.processes:
        for form, _ratio in process.gives if process.key in begin else ():
            food, conversion = binder.foods[form], binder.conversions[process.key]
            made_before = begin[process.key] - conversion.hands_on_minutes - conversion.lead_minutes
            age = made_before - last_used.get(form, made_before)
            if food.keeps_days is not None and age > food.keeps_days * _DAY:
                clashes.append(_clash(food, age))
    return tuple(clashes)


def _last_used(network: Network, balance: BaseBalance, begin: Mapping[str, float]) -> dict[str, float]:
    """Minutes before call that each form is used last, by a dish (at call) or by a conversion (when it begins)."""
    last = {form.form: 0.0 for form in balance.forms if form.used > 0}
    for process in network.processes:
        for form, _share in process.inputs if process.key in begin else ():
            last[form] = min(last.get(form, begin[process.key]), begin[process.key])
    return last


def _clash(food: Food, age: float) -> Missing:
    says = _(
        "{form} keeps {keeps} days and would be {age:.1f} days old when it is used: "
        "make it in a conversion of its own, or change its days."
    )
    return Missing(
        MissingKind.FORM, says.format(form=food.name, keeps=food.keeps_days, age=age / _DAY), Place("foods", food.id)
    )
