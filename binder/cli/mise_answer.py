"""The answer of `binder mise --json`."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.cli.answer import Answer, answer_of, weighed
from binder.figures.mise import MiseItem, mise_list
from binder.figures.missing import Missing
from binder.figures.weight import grams_of
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.figures.portion_text import SetOut
    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Shoot


def mise_answer(binder: Binder, shoot: Shoot) -> Answer:
    """What to set out. `amount` is for all builds, `per_build` for each; both as grams and as the cook's measure."""
    return answer_of(binder, shoot, items=[_item(binder, item) for item in mise_list(binder, shoot.id)])


def _item(binder: Binder, item: MiseItem) -> Answer:
    return {
        "station": item.station,
        "dish": item.for_what,
        "food": item.food,
        "preparation": item.preparation,
        "amount": _amount(item.total),
        "per_build": [{"build": build.kind, **_amount(build.amount)} for build in item.builds],
        "builds": item.count,
        "ready_by": item.ready_by.isoformat() if item.ready_by else None,
        "missing": _missing(binder, item),
    }


def _amount(amount: SetOut) -> Answer:
    return {"grams": weighed(amount.grams), "measure": amount.measure}


def _missing(binder: Binder, item: MiseItem) -> list[str]:
    reasons = [] if item.total.grams is not None else [_why_not_weighed(binder, item)]
    if item.ready_by is None:
        reasons.append(_("The shoot has no date or no call time: add them."))
    return reasons


def _why_not_weighed(binder: Binder, item: MiseItem) -> str:
    line = binder.lines[item.line]
    if line.high is None:
        return _("{food} has no amount.").format(food=item.food)
    weight = None if line.food is None else grams_of(binder, binder.foods[line.food], 1.0, line.unit, line.preparation)
    return weight.says if isinstance(weight, Missing) else _("{food} is measured, not weighed.").format(food=item.food)
