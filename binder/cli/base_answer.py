"""The answer of `binder base --json`."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.cli.answer import Answer, answer_of, weighed
from binder.figures.base import BaseBalance, BaseVerdict, FormBalance, base_balance
from binder.figures.base_repairs import base_repairs
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Shoot


def base_answer(binder: Binder, shoot: Shoot) -> Answer:
    """The balance of the base. What is used of a form is what dishes take of it and what goes on into other forms."""
    balance = base_balance(binder, shoot.id)
    if balance is None:
        return answer_of(binder, shoot, **_nothing())
    return answer_of(
        binder,
        shoot,
        base=balance.name,
        grams_there_are=weighed(balance.there_is),
        grams_needed=weighed(balance.needed),
        forms=[_form(balance, form) for form in balance.forms],
        dishes=[_dish(binder, balance, dish.id) for dish in binder.dishes.where("shoot", shoot.id)],
        verdict=balance.verdict.value,
        bottleneck=binder.foods[balance.driver].name if balance.driver else None,
        repairs=[repair.says for repair in base_repairs(binder, shoot.id)],
        missing=[lack.says for lack in balance.missing],
    )


def _nothing() -> Answer:
    missing = [_("The shoot has no base ingredient: choose one.")]
    amounts = dict.fromkeys(("base", "grams_there_are", "grams_needed"))
    return {
        **amounts,
        "forms": [],
        "dishes": [],
        "verdict": BaseVerdict.UNKNOWN.value,
        "bottleneck": None,
        "repairs": [],
        "missing": missing,
    }


def _form(balance: BaseBalance, form: FormBalance) -> Answer:
    made, left = (balance.there_is, balance.left) if form.form == balance.base else (form.made, form.left)
    return {
        "name": form.name,
        "grams_made": weighed(made),
        "grams_used": weighed(form.used + form.taken),
        "grams_left": None if left is None else weighed(max(0.0, left)),
    }


def _dish(binder: Binder, balance: BaseBalance, dish: str) -> Answer:
    uses = balance.by_dish.get(dish, {})
    grams_by_form = {binder.foods[form].name: weighed(grams) for form, grams in uses.items()}
    return {"number": binder.dishes[dish].position + 1, "grams_by_form": grams_by_form}
