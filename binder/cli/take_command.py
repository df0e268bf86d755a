"""`binder take`: how many more takes of a dish could be made, and what stops the next one."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from binder.cli.asking import binder_argument, json_option, shoot_option
from binder.cli.chosen_shoot import opened
from binder.cli.endings import WrongUsageError
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from binder.figures.takes import Takes
    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Dish, Shoot


def take(
    file: Annotated[Path, binder_argument()],
    number: Annotated[int, typer.Option("--dish", metavar="N", help=_("The dish, by its running number."))],
    step: Annotated[
        int | None, typer.Option("--from", metavar="STEP", help=_("The step the take begins with, by its number."))
    ] = None,
    till: Annotated[bool, typer.Option("--till", help=_("Say what the next one would cost at the till."))] = False,
    shoot: Annotated[str | None, shoot_option()] = None,
    as_json: Annotated[bool, json_option()] = False,
) -> None:
    """Say how many more takes of a dish could be made."""
    from binder.figures.takes import takes

    binder, chosen = opened(file, shoot)
    dish = _dish(binder, chosen, number)
    found = takes(binder, dish.id, None if step is None else _step(binder, dish, step))
    if as_json:
        _answer(binder, chosen, found, till=till)
    else:
        _show(binder, chosen, found, till=till)


def _dish(binder: Binder, shoot: Shoot, number: int) -> Dish:
    dishes = binder.dishes.where("shoot", shoot.id)
    for dish in dishes:
        if dish.position + 1 == number:
            return dish
    says = _("The shoot has no dish {number}: its dishes are numbered from 1 to {count}.")
    raise WrongUsageError(says.format(number=number, count=len(dishes)))


def _step(binder: Binder, dish: Dish, number: int) -> str:
    steps = binder.steps.where("recipe", dish.recipe)
    if not 1 <= number <= len(steps):
        says = _("The dish has no step {number}: its steps are numbered from 1 to {count}.")
        raise WrongUsageError(says.format(number=number, count=len(steps)))
    return steps[number - 1].id


def _limit(binder: Binder, found: Takes) -> str | None:
    return None if found.limited_by is None else binder.foods[found.limited_by].name


def _answer(binder: Binder, shoot: Shoot, found: Takes, *, till: bool) -> None:
    from binder.cli.answer import answer_of, paid, print_answer

    figures: dict[str, object] = {"builds_possible": found.possible, "limited_by": _limit(binder, found)}
    if till:
        figures["next_costs"] = paid(found.next_costs, binder.settings.currency)
    print_answer(answer_of(binder, shoot, **figures, missing=_missing(binder, found, till=till)))


def _missing(binder: Binder, found: Takes, *, till: bool) -> list[str]:
    reasons = [lack.says for lack in found.missing]
    if found.possible is None and not reasons:
        recipe = binder.recipes[binder.dishes[found.dish].recipe]
        reasons = [_("{recipe} does not say how many portions it yields: add it.").format(recipe=recipe.name)]
    if till and found.next_costs is None and not reasons:
        reasons = [_("A price is missing of what would have to be bought.")]
    return reasons


def _show(binder: Binder, shoot: Shoot, found: Takes, *, till: bool) -> None:
    from binder.cli.heading import show_heading
    from binder.cli.terminal import say, say_marked

    show_heading(binder, shoot)
    say(_possible(binder, found))
    if till and found.next_costs is not None:
        from binder.figures.money_words import money

        say(_("The one after that: {money} at the till.").format(money=money(binder, found.next_costs)))
    for reason in _missing(binder, found, till=till):
        say_marked("◌", reason)


def _possible(binder: Binder, found: Takes) -> str:
    from binder.kitchen.edits.shoots import dish_name

    dish = binder.dishes[found.dish]
    title = f"{dish.position + 1} {dish_name(binder, dish)}"
    if found.possible is None:
        return _("{dish}: not known how many more could be made.").format(dish=title)
    says = ngettext("{dish}: {count} more could be made.", "{dish}: {count} more could be made.", found.possible)
    says = says.format(dish=title, count=found.possible)
    limit = _limit(binder, found)
    return says if limit is None else says + " " + _("What runs out then is {food}.").format(food=limit)
