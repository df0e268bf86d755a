"""What a claim is to be held against, guessed from its sentence. Plain Python."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING
from unicodedata import category

from binder.desktop.words.typed import typed_money
from binder.figures.cost import cap_of
from binder.kitchen.claim import ClaimKind
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.errors import BinderError
from binder.kitchen.money import minor_digits
from binder.kitchen.units import unit
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator

    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Dish, Shoot

_HALF_AN_HOUR = 30.0
_CENTS = 2
"""Decimals of a currency that has cents."""


def guessed_terms(binder: Binder, shoot: Shoot, says: str) -> dict[str, object]:
    """The fields of a claim as its sentence has them: `Every plate under $1.75` is a portion of every dish."""
    plain = says.casefold()
    target, minutes = _money_in(binder, says), _minutes_in(says)
    if target is None and minutes is not None:
        fields = bare_terms(binder, shoot, ClaimKind.MINUTES_UNDER)
        return fields | {"target": minutes, "dish": _dish_in(binder, shoot, plain)}
    if target is None:
        return bare_terms(binder, shoot, ClaimKind.ALL_FROM_BASE)
    amount = _amount_in(binder, plain)
    if amount is not None:
        return bare_terms(binder, shoot, ClaimKind.AMOUNT_ABOUT) | amount | {"target": float(target)}
    whole = any(word.strip() in plain for word in _("everything,all of it,the whole,all in all").split(","))
    kind = ClaimKind.ALL_UNDER if whole else ClaimKind.PORTION_UNDER
    dish = None if whole else _dish_in(binder, shoot, plain)
    return bare_terms(binder, shoot, kind) | {"target": float(target), "dish": dish}


def bare_terms(binder: Binder, shoot: Shoot, kind: ClaimKind) -> dict[str, object]:
    """A claim of a kind before anything is known of it: against the cap, the budget, half an hour."""
    dishes = binder.dishes.where("shoot", shoot.id)
    caps = [cap for dish in dishes if (cap := cap_of(binder, dish)) is not None]
    cap = shoot.cap if shoot.cap is not None else min(caps, default=0)
    targets: dict[ClaimKind, float] = {
        ClaimKind.PORTION_UNDER: cap,
        ClaimKind.ALL_UNDER: shoot.budget or 0,
        ClaimKind.MINUTES_UNDER: _HALF_AN_HOUR,
    }
    spoon = kind is ClaimKind.AMOUNT_ABOUT
    recipe = dishes[0].recipe if dishes else min(binder.recipes, default=None)
    return {
        "kind": kind,
        "dish": None,
        "recipe": recipe if spoon else None,
        "amount": 1.0,
        "unit": tablespoon(binder) if spoon else "",
        "target": float(targets.get(kind, 0)),
    }


_NUMBER = re.compile(r"(?P<before>[^\s\d]{0,3})(?P<number>\d[\d.,'’]*\d|\d)")


def _money_in(binder: Binder, says: str) -> int | None:
    """The first price in a sentence, in minor units: `$1.75`, `1,75 €`, `12 cents`, or a bare number with decimals."""
    for found in _NUMBER.finditer(says):
        after = says[found.end() :].lstrip().casefold()
        try:
            if minor_digits(binder.settings.currency) == _CENTS and after.startswith(tuple(_("cent,ct").split(","))):
                return int(found["number"])
            if _is_price(binder, found["before"], found["number"], after):
                return typed_money(binder, found["number"])
        except (BinderError, ValueError):
            continue
    return None


def _is_price(binder: Binder, before: str, number: str, after: str) -> bool:
    """Whether a number has a sign of the binder's currency beside it, or no sign and just the currency's decimals."""
    marked = any(before.endswith(sign) or after.startswith(sign.casefold()) for sign in _signs(binder))
    other = any(category(sign) == "Sc" for sign in (*before, *after[:1]))
    decimals = minor_digits(binder.settings.currency)
    return marked or (not other and decimals > 0 and re.fullmatch(rf"\d+[.,]\d{{{decimals}}}", number) is not None)


def _signs(binder: Binder) -> set[str]:
    from babel.core import UnknownLocaleError
    from babel.numbers import get_currency_symbol

    signs = {binder.settings.currency}
    for locale in (binder.settings.locale, "en_US"):
        try:
            signs.add(get_currency_symbol(binder.settings.currency, locale=locale))
        except (UnknownLocaleError, ValueError):
            continue
    return signs


def _minutes_in(says: str) -> float | None:
    words = "|".join(re.escape(word) for word in _("minutes,minute,min,hours,hour").split(","))
    found = re.search(rf"(\d+)\s*({words})\b", says.casefold())
    if found is None:
        return None
    hours = found[2] in _("hours,hour").split(",")
    return float(found[1]) * (60 if hours else 1)


def _dish_in(binder: Binder, shoot: Shoot, plain: str) -> str | None:
    """The dish that a sentence names; None where it names none."""
    named = (dish for dish in binder.dishes.where("shoot", shoot.id) if _names(binder, dish, plain))
    return next((dish.id for dish in named), None)


def _names(binder: Binder, dish: Dish, plain: str) -> bool:
    return any(name.casefold() in plain for name in (dish_name(binder, dish), binder.recipes[dish.recipe].name))


def _amount_in(binder: Binder, plain: str) -> dict[str, object] | None:
    """So much of a recipe, where a sentence has both a measure and a recipe's name."""
    named = (recipe for recipe in binder.recipes.values() if recipe.name.casefold() in plain)
    recipe = max(named, key=lambda one: len(one.name), default=None)
    spoon = next((key for word, key in _spoons(binder) if word in plain), None)
    if recipe is None or spoon is None:
        return None
    return {"recipe": recipe.id, "amount": 1.0, "unit": spoon}


def _spoons(binder: Binder) -> Iterator[tuple[str, str]]:
    """The spoons a sentence may name, and the units they are."""
    spoon = tablespoon(binder)
    yield from ((word, spoon) for word in _("tablespoon,tbsp").split(","))
    yield from ((word, unit("tsp", binder.settings.measures).key) for word in _("teaspoon,tsp").split(","))
    yield from ((word, spoon) for word in _("spoon").split(","))


def tablespoon(binder: Binder) -> str:
    """The tablespoon of the binder's own measures."""
    return unit("tbsp", binder.settings.measures).key
