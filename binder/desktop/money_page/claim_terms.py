"""What a claim is held against, in words and as it is typed. Plain Python."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from binder.desktop.money_page.claim_guess import bare_terms, guessed_terms, tablespoon
from binder.desktop.shoot_page.dish_head import recipe_called
from binder.desktop.words.figure_text import minutes_text, part_text, plain_money
from binder.desktop.words.typed import (
    UnreadableError,
    comma,
    typed_choice,
    typed_minutes,
    typed_money,
    typed_part,
)
from binder.figures.money_words import money
from binder.figures.portion_text import number_style
from binder.kitchen.amount import Amount, parse_amount
from binder.kitchen.amount_text import amount_text
from binder.kitchen.claim import Claim, ClaimKind
from binder.kitchen.edits.money import set_claim
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Mapping

    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change

_OF_A_DISH = {ClaimKind.PORTION_UNDER, ClaimKind.MINUTES_UNDER}
_NO_TARGET = {ClaimKind.ALL_FROM_BASE}


def kind_words() -> Mapping[str, ClaimKind]:
    """The figures a claim may be held against, by the words each is chosen with."""
    return {
        _("a portion costs under"): ClaimKind.PORTION_UNDER,
        _("an amount costs about"): ClaimKind.AMOUNT_ABOUT,
        _("everything costs under"): ClaimKind.ALL_UNDER,
        _("everything comes from the base"): ClaimKind.ALL_FROM_BASE,
        _("a dish takes at most"): ClaimKind.MINUTES_UNDER,
    }


def kind_text(kind: ClaimKind) -> str:
    """The figure that a claim is held against."""
    return next(word for word, one in kind_words().items() if one is kind)


def about_text(binder: Binder, claim: Claim) -> str:
    """What the figure is of: a dish, so much of a recipe, or the whole shoot."""
    if claim.kind in _OF_A_DISH:
        return dish_name(binder, binder.dishes[claim.dish]) if claim.dish else _("every dish")
    if claim.kind is ClaimKind.ALL_UNDER:
        return _("at the till")
    if claim.kind is ClaimKind.ALL_FROM_BASE:
        base = binder.shoots[claim.shoot].base
        return binder.foods[base].name if base else _("no base chosen")
    if claim.recipe is None:
        return ""
    return _amount_of(binder, claim.amount, claim.unit, binder.recipes[claim.recipe].name)


def _amount_of(binder: Binder, amount: float, unit: str, recipe: str) -> str:
    shown = amount_text(Amount(amount, amount, unit), number_style(binder))
    return _("{amount} of {recipe}").format(amount=shown, recipe=recipe)


def about_choices(binder: Binder, claim: Claim) -> tuple[str, ...]:
    """What the figure may be of; none where there is nothing to choose."""
    if claim.kind in _OF_A_DISH:
        return (_("every dish"), *(dish_name(binder, dish) for dish in binder.dishes.where("shoot", claim.shoot)))
    if claim.kind is ClaimKind.AMOUNT_ABOUT:
        names = sorted((recipe.name for recipe in binder.recipes.values()), key=str.casefold)
        return tuple(_amount_of(binder, 1.0, tablespoon(binder), name) for name in names)
    return ()


def typed_about(binder: Binder, claim: Claim, text: str) -> Change:
    """What was typed as what the figure is of."""
    if claim.kind in _OF_A_DISH:
        dishes = {dish_name(binder, dish): dish.id for dish in binder.dishes.where("shoot", claim.shoot)}
        chosen = typed_choice(text or _("every dish"), {_("every dish"): None, **dishes})
        return set_claim(claim, dish=chosen)
    if claim.kind is not ClaimKind.AMOUNT_ABOUT:
        raise UnreadableError(text, _("this claim is about the whole shoot."))
    found = re.match(
        _("{amount} of {recipe}").format(amount=r"^(?P<amount>.+?)", recipe=r"(?P<recipe>.+)$"), text.strip()
    )
    if found is None:
        raise UnreadableError(text, _("write how much of which recipe, such as 1 tbsp of Red Oil."))
    recipe = recipe_called(binder, found["recipe"])
    amount = parse_amount(found["amount"], binder.settings.measures, decimal_comma=comma(binder))
    return set_claim(claim, recipe=recipe.id, amount=amount.high, unit=amount.unit)


def target_text(binder: Binder, claim: Claim) -> str:
    """What the figure is held against."""
    if claim.kind in _NO_TARGET:
        return ""
    if claim.kind is ClaimKind.MINUTES_UNDER:
        return minutes_text(claim.target) or _("{count} min").format(count=0)
    return money(binder, claim.target)


def target_edit(binder: Binder, claim: Claim) -> str | None:
    """What its editor begins with; None where the shoot itself says what it is held against."""
    if claim.kind in _NO_TARGET:
        return None
    if claim.kind is ClaimKind.MINUTES_UNDER:
        return minutes_text(claim.target)
    shown = plain_money(binder, round(claim.target))
    return f"{shown} ± {part_text(binder, claim.tolerance)}" if claim.kind is ClaimKind.AMOUNT_ABOUT else shown


def typed_target(binder: Binder, claim: Claim, text: str) -> Change:
    """What was typed as what the figure is held against: `1.75`, `0.12 ± 10 %`, `30 min`."""
    if claim.kind is ClaimKind.MINUTES_UNDER:
        return set_claim(claim, target=typed_minutes(binder, text))
    if claim.kind in _NO_TARGET:
        raise UnreadableError(text, _("it is held against what there is of the base: change that on the shoot."))
    shown, sign, off = text.partition("±")
    target = typed_money(binder, shown.strip())
    if target is None:
        raise UnreadableError(text, _("write an amount of money, such as 1.75."))
    within = {"tolerance": typed_part(binder, off if off.strip().endswith("%") else f"{off} %")} if sign else {}
    return set_claim(claim, target=float(target), **within)


def typed_kind(binder: Binder, claim: Claim, text: str) -> Change:
    """Another figure to hold a claim against; what it needs beside is guessed from the sentence where that says it."""
    kind = typed_choice(text, kind_words())
    if kind is claim.kind:
        return set_claim(claim, kind=kind)
    guess = guessed_terms(binder, binder.shoots[claim.shoot], claim.says)
    fields = guess if guess["kind"] is kind else bare_terms(binder, binder.shoots[claim.shoot], kind)
    return set_claim(claim, **fields)


def target_words(binder: Binder, claim: Claim) -> str:
    """What is held against and of what, as it follows the figure: `$1.75, every dish`."""
    return ", ".join(part for part in (target_text(binder, claim), about_text(binder, claim)) if part)
