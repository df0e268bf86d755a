"""What `binder cost` shows to people."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from binder.cli.columns import numbers, words
from binder.cli.heading import show_heading
from binder.cli.marks import cap_mark
from binder.cli.terminal import say, say_marked, show_table
from binder.figures.cap_basis import basis_text
from binder.figures.checks import cost_beside_cap, dish_title
from binder.figures.cost import BreakEven, DishCost, LineCost, break_even_prices, shoot_costs
from binder.figures.date_text import date_text
from binder.figures.money_words import money
from binder.figures.portion_text import number_style
from binder.kitchen.amount_text import grams_text
from binder.kitchen.money import honest_digits, minor_digits
from binder.kitchen.number import in_decimals
from binder.kitchen.shoot import CapBasis
from binder.kitchen.wording import _, listed, ngettext

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Shoot

NOT_KNOWN = "–"


def show_costs(binder: Binder, shoot: Shoot, *, lines: bool) -> None:
    """The dishes against their caps; with `lines` also what makes up each cost."""
    costs = shoot_costs(binder, shoot.id)
    show_heading(binder, shoot)
    columns = [numbers("#"), words(_("Dish")), numbers(_("Portions")), numbers(_("Cost a portion"))]
    columns += [numbers(_("Cap")), numbers(_("Headroom")), words()]
    show_table(columns, [_dish_row(binder, cost) for cost in costs])
    say()
    say(_in_all(binder, costs))
    for cost in costs:
        _say_what_lacks(cost)
    if lines:
        for cost in costs:
            _show_lines(binder, cost)


def _dish_row(binder: Binder, cost: DishCost) -> list[str]:
    shown, cap = cost_beside_cap(binder, cost)
    portions = in_decimals(cost.portions, digits=2, decimal_mark=number_style(binder).decimal_mark)
    return [str(cost.number), cost.name, portions, shown, cap, _headroom(binder, cost), cap_mark(cost)]


def _headroom(binder: Binder, cost: DishCost) -> str:
    if cost.headroom is None or cost.per_portion is None or cost.cap is None:
        return NOT_KNOWN
    digits = honest_digits(cost.per_portion, cost.cap, binder.settings.currency)
    return money(binder, cost.headroom, digits=digits).replace("-", "−")


def _in_all(binder: Binder, costs: Sequence[DishCost]) -> str:
    portions = sum(cost.portions for cost in costs)
    known = [cost.per_portion * cost.portions for cost in costs if cost.per_portion is not None]
    unknown = len(costs) - len(known)
    says = _("Used cost of {portions} portions, every dish made once: {total}.")
    basis = costs[0].basis if costs else CapBasis.USED
    if basis is not CapBasis.USED:
        says = _("{portions} portions, every dish made once: {total} ({basis}).")
        if unknown:
            says = ngettext(
                "{portions} portions, every dish made once: not known; {total} without {count} dish ({basis}).",
                "{portions} portions, every dish made once: not known; {total} without {count} dishes ({basis}).",
                unknown,
            )
    elif unknown:
        says = ngettext(
            "Used cost of {portions} portions, every dish made once: not known; {total} without {count} dish.",
            "Used cost of {portions} portions, every dish made once: not known; {total} without {count} dishes.",
            unknown,
        )
    return says.format(
        portions=in_decimals(portions, digits=2, decimal_mark=number_style(binder).decimal_mark),
        total=money(binder, sum(known)),
        count=unknown,
        basis=basis_text(basis),
    )


def _say_what_lacks(cost: DishCost) -> None:
    for lack in cost.missing:
        say_marked("◌", f"{dish_title(cost)}: {lack.says}")
    if cost.not_counted:
        says = _("{dish}: {foods} to taste, without an amount, so not in the cost.")
        say_marked("·", says.format(dish=dish_title(cost), foods=listed(cost.not_counted)))


def _show_lines(binder: Binder, cost: DishCost) -> None:
    say()
    say(dish_title(cost), strong=True)
    used = cost.basis is CapBasis.USED
    portion = words(_("For one portion") if used else _("For one portion, used cost"))
    columns = [portion, numbers(_("As purchased")), numbers(_("Cost")), numbers(_("Share"))]
    show_table(columns, [_line_row(binder, line) for line in cost.lines])
    prices = break_even_prices(binder, cost.dish)
    if prices:
        say()
        columns = [
            words(_("The dish just meets its cap with")),
            words(_("Pack")),
            numbers(_("Price now")),
            words(_("As of")),
        ]
        show_table([*columns, numbers(_("At cap"))], [_price_row(binder, price) for price in prices])


def _line_row(binder: Binder, line: LineCost) -> list[str]:
    if not line.counted:
        return [line.name, NOT_KNOWN, _("not counted"), NOT_KNOWN]
    weight = NOT_KNOWN if line.purchased is None else grams_text(line.purchased, number_style(binder))
    share = NOT_KNOWN if line.share is None else f"{in_decimals(line.share * 100, digits=0)} %"
    return [line.name, weight, _fine_money(binder, line.cost), share]


def _fine_money(binder: Binder, minor: float | None) -> str:
    """Money to a tenth of the minor unit: a line's cost is often less than a cent."""
    if minor is None:
        return _("◌ not known")
    return money(binder, minor, digits=minor_digits(binder.settings.currency) + 1)


def _price_row(binder: Binder, price: BreakEven) -> list[str]:
    now = money(binder, price.price_now)
    return [price.name, price.pack_label or NOT_KNOWN, now, date_text(binder, price.on), _price_at_cap(binder, price)]


def _price_at_cap(binder: Binder, price: BreakEven) -> str:
    """The price that meets the cap, rounded down: at the price shown the dish is within it."""
    if price.price_at_cap is None:
        return _("no price would do")
    return money(binder, math.floor(price.price_at_cap + 1e-9))
