"""A repair as a change that can be made, and undone."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from binder.figures.base_repairs import Repair, RepairKind
from binder.figures.missing import Missing
from binder.figures.portion_text import number_style
from binder.figures.weight import grams_of
from binder.kitchen.amount_text import grams_text
from binder.kitchen.edits.records import set_fields
from binder.kitchen.edits.shoots import remove_build, set_dish
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change


def change_of_repair(binder: Binder, shoot: str, repair: Repair) -> Change:
    """What a repair changes: a build taken out, portions made fewer, or more of the base."""
    if repair.kind is RepairKind.BUILD:
        return remove_build(binder, binder.builds[repair.build or ""])
    if repair.kind is RepairKind.PORTIONS:
        return set_dish(binder, binder.dishes[repair.dish or ""], portions=repair.portions)
    return have_more(binder, shoot, repair.grams or 0.0)


def have_more(binder: Binder, shoot_id: str, grams: float) -> Change:
    """So many grams more of the base, in the unit the shoot has it in; rounded up to the gram, so that it suffices."""
    shoot = binder.shoots[shoot_id]
    base = binder.foods[shoot.base or ""]
    one = grams_of(binder, base, 1.0, shoot.base_unit)
    unit, weighs = ("g", 1.0) if isinstance(one, Missing) or not one else (shoot.base_unit, one)
    amount = math.ceil(shoot.base_amount * weighs + grams) / weighs
    says = _("Have {grams} more {base}").format(grams=grams_text(grams, number_style(binder)), base=base.name)
    return set_fields(says, shoot, base_amount=amount, base_unit=unit)
