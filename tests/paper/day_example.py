"""The usual binder with a day and with money: people, a kitchen, lunch, claims, a budget, receipts; and its plan."""

from __future__ import annotations

import functools
from dataclasses import replace
from datetime import date, time

from binder.figures.day_plan import DayPlan, day_plan
from binder.kitchen.binder import Binder
from binder.kitchen.budget import BudgetLine, TaxRate
from binder.kitchen.buying import PantryItem, Purchase, Trip
from binder.kitchen.claim import Claim, ClaimKind
from binder.kitchen.day import Appliance, ApplianceKind, FixedEvent, Person
from binder.kitchen.food import Food
from binder.kitchen.price import Pack, Quote
from binder.kitchen.record import Record
from binder.kitchen.shoot import Shoot
from binder.paper.print_choices import PrintChoices
from tests.paper.example import SHOOT, full_binder

DAY = date(2026, 12, 3)


@functools.cache
def day_binder() -> Binder:
    """Everything that any sheet has to say something of."""
    plain: Shoot = full_binder().shoots[SHOOT]
    chicken: Food = full_binder().foods["chicken"]
    return full_binder(
        replace(plain, contingency=0.1, wrap=time(18, 0)), replace(chicken, order_days=3), *_crew(), *_money()
    )


def _crew() -> list[Record]:
    return [
        Person(id="ana", shoot=SHOOT, name="Ana Veld", role="presenter", on_camera=True, skills=("knife",)),
        Person(id="bo", shoot=SHOOT, position=1, name="Bo Ravn", role="cook", arrives=time(7, 0), leaves=time(17, 0)),
        Person(id="ci", shoot=SHOOT, position=2, name="Ci Holm", role="assistant"),
        Appliance(id="hob", shoot=SHOOT, name="gas hob", kind=ApplianceKind.BURNERS, places=4),
        Appliance(id="pan", shoot=SHOOT, position=1, name="wide braising pan", places=2),
        FixedEvent(id="lunch", shoot=SHOOT, name="Lunch", at=time(12, 30), minutes=45),
    ]


def _money() -> list[Record]:
    claims = (
        ("Not one portion of this costs three euros.", ClaimKind.PORTION_UNDER, "dish-salad", 300),
        ("Everything on this table for fifty.", ClaimKind.ALL_UNDER, None, 5000),
        ("All of it comes from one bag.", ClaimKind.ALL_FROM_BASE, None, 0),
        ("Done in a quarter of an hour.", ClaimKind.MINUTES_UNDER, "dish-stew", 15),
    )
    return [
        *(
            Claim(id=f"claim{at}", shoot=SHOOT, position=at, says=says, kind=kind, dish=dish, target=target)
            for at, (says, kind, dish, target) in enumerate(claims)
        ),
        BudgetLine(id="gas", shoot=SHOOT, name="Gas", heading="Kitchen", quantity=2, rate=1250, committed=2400),
        BudgetLine(id="help", shoot=SHOOT, position=1, name="Assistant", heading="Crew", quantity=8, rate=1800),
        TaxRate(id="tax", shoot=SHOOT, rate=0.07),
        Trip(id="trip", shoot=SHOOT, store="market", on=date(2026, 11, 30)),
        PantryItem(id="home", shoot=SHOOT, food="oil", amount=2, unit="l"),
        Purchase(id="b1", shoot=SHOOT, food="onion", pack="pack-onion", planned=349, paid=329, on=date(2026, 11, 30)),
        Purchase(id="b2", shoot=SHOOT, food="cumin", pack="pack-cumin", planned=329),
        Pack(id="pack-parsley", food="parsley", store="market", label="bunch", size=60, unit="g"),
        Quote(id="quote-parsley", pack="pack-parsley", price=149, on=date(2026, 11, 2)),
    ]


@functools.cache
def the_plan() -> DayPlan:
    """A plan of that day."""
    plan = day_plan(day_binder(), SHOOT, seconds=20.0)
    assert plan is not None
    return plan


def planned() -> PrintChoices:
    """Choices with that plan."""
    return PrintChoices(plans={SHOOT: the_plan()})
