"""The running order as strips: number, dish, portions, cost against its cap, base, builds, minutes on camera."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from binder.desktop.pictures.cost_bar import CostBar
from binder.desktop.pictures.pans import Pan, Pans
from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Row, Size, Tone, key_of
from binder.desktop.sheet.sheet import PlainSheet, Remedy, record_of
from binder.desktop.shoot_page.dish_head import recipe_called
from binder.desktop.words.figure_text import (
    grams_parts,
    headroom_text,
    mark_of,
    minutes_text,
    not_known,
    number_text,
    plain_money,
    short_name,
)
from binder.desktop.words.typed import Reading, typed_minutes, typed_money, typed_number
from binder.figures.base import base_balance
from binder.figures.cap_basis import basis_text
from binder.figures.checks import cost_beside_cap
from binder.figures.cost import DishCost, Verdict, cap_of, shoot_costs
from binder.figures.demand import builds_of, last_position
from binder.figures.missing import Place
from binder.figures.money_words import money
from binder.kitchen.change import Change, apply, joined
from binder.kitchen.edits.recipes import add_recipe
from binder.kitchen.edits.records import remove
from binder.kitchen.edits.shoots import add_dish, dish_name, move_dish, remove_dish, set_dish
from binder.kitchen.shoot import BuildKind
from binder.kitchen.wording import _, listed, ngettext

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.desktop.sheet.sheet import CellName, Sight
    from binder.kitchen.binder import Binder
    from binder.kitchen.errors import BinderError
    from binder.kitchen.shoot import Build, Dish

ADD_DISH = "add:dish"
_ROOM = 1.08
"""The longest bar leaves a little of its track free."""

_FORMS_SHOWN = 2


class RunningOrder(PlainSheet):
    """A strip a dish."""

    @property
    def name(self) -> str:
        return _("Running order")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("number", "", characters=2.5, align=Align.RIGHT, tip=_("Running number: leads to the recipe")),
            Column("name", _("dish"), characters=18, stretch=4),
            Column("portions", _("portions"), characters=6, align=Align.RIGHT),
            Column("cost", _("a portion against its cap"), characters=28, stretch=3),
            Column(
                "cap",
                _("cap"),
                characters=7,
                align=Align.RIGHT,
                tip=_("The dish's own cap a portion; grey where it is the shoot's"),
            ),
            Column("base", _("of the base"), characters=13, stretch=1),
            Column("builds", _("builds"), characters=15, stretch=2),
            Column("camera_minutes", _("on camera"), characters=7, align=Align.RIGHT),
        )

    def columns_for(self, sight: Sight) -> tuple[Column, ...]:
        """The head of the costs names what they are held on."""
        shoot = sight.binder.shoots.get(sight.shoot or "")
        if shoot is None:
            return self.columns
        title = _("a portion against its cap: {basis}").format(basis=basis_text(shoot.cap_basis))
        return tuple(replace(one, title=title) if one.id == "cost" else one for one in self.columns)

    def rows(self, sight: Sight) -> list[Row]:
        if sight.shoot is None:
            return []
        costs = shoot_costs(sight.binder, sight.shoot)
        ends = [max(cost.per_portion or 0.0, float(cost.cap or 0)) for cost in costs]
        longest = max(ends, default=0.0) * _ROOM or 1.0
        strips = [_strip(sight.binder, cost, longest) for cost in costs]
        return [*strips, _adding(sight.binder)]

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder = sight.binder
        if row == ADD_DISH:
            return _add(sight, text)
        dish = binder.dishes[record_of(row).id]
        values: dict[str, Reading] = {
            "name": lambda: "" if text.strip() == binder.recipes[dish.recipe].name else text.strip(),
            "portions": lambda: typed_number(binder, text),
            "cap": lambda: typed_money(binder, text),
            "camera_minutes": lambda: typed_minutes(binder, text) if text.strip() else None,
        }
        return set_dish(binder, dish, **{column: values[column]()})

    def remedies(self, sight: Sight, cell: CellName, text: str, error: BinderError) -> Sequence[Remedy]:
        if cell.row != ADD_DISH or not text.strip() or sight.shoot is None:
            return ()
        added, recipe = add_recipe(sight.binder, text.strip())
        dish, _made = add_dish(apply(sight.binder, added), sight.binder.shoots[sight.shoot], recipe)
        begun = joined(dish.label, [added, dish])
        return (Remedy(_("Begin a new recipe “{recipe}”").format(recipe=text.strip()), change=begun),)

    def remove(self, sight: Sight, rows: Sequence[str]) -> Change | None:
        dishes = [sight.binder.dishes[record_of(row).id] for row in rows if row != ADD_DISH]
        if len(dishes) < 2:  # noqa: PLR2004 - one dish goes by its name
            return remove_dish(sight.binder, dishes[0]) if dishes else None
        label = ngettext("Remove {count} dish", "Remove {count} dishes", len(dishes)).format(count=len(dishes))
        return remove(label, sight.binder, *dishes)

    def move_before(self, sight: Sight, row: str, before: str | None) -> Change | None:
        if row == ADD_DISH or sight.shoot is None:
            return None
        dish = sight.binder.dishes[record_of(row).id]
        others = [other.id for other in sight.binder.dishes.where("shoot", sight.shoot) if other.id != dish.id]
        target = record_of(before).id if before and before != ADD_DISH else None
        return move_dish(sight.binder, dish, to=others.index(target) if target in others else len(others))

    def move_by(self, sight: Sight, row: str, by: int) -> Change | None:
        if row == ADD_DISH:
            return None
        dish = sight.binder.dishes[record_of(row).id]
        return move_dish(sight.binder, dish, to=max(0, dish.position + by))


def _add(sight: Sight, text: str) -> Change:
    """A recipe's name typed at the foot of the running order."""
    binder = sight.binder
    return add_dish(binder, binder.shoots[sight.shoot or ""], recipe_called(binder, text))[0]


def _adding(binder: Binder) -> Row:
    names = tuple(sorted(recipe.name for recipe in binder.recipes.values()))
    cell = Cell(edit="", placeholder=_("Add a dish: the name of its recipe"), choices=names)
    cells = (NOTHING, cell, *(NOTHING,) * 6)
    return Row(ADD_DISH, cells, spans=((1, 3),), lines=2.1, rule=False, adds=True)


def _strip(binder: Binder, cost: DishCost, longest: float) -> Row:
    dish = binder.dishes[cost.dish]
    recipe = binder.recipes[dish.recipe]
    cells = (
        Cell(
            str(cost.number),
            size=Size.TITLE,
            leads_to=Place("recipes", recipe.id),
            tip=_("Open the recipe"),
            spoken=_("number {number}").format(number=cost.number),
        ),
        Cell(
            cost.name,
            edit=cost.name,
            size=Size.STRONG,
            under=recipe.name if dish.name else "",
            folds=True,
            tip=cost.name,
        ),
        Cell(number_text(binder, dish.portions), edit=number_text(binder, dish.portions)),
        _cost_cell(binder, cost, longest),
        _cap_cell(binder, dish),
        _base_cell(binder, dish),
        _builds_cell(binder, dish),
        Cell(
            minutes_text(dish.camera_minutes),
            edit=minutes_text(dish.camera_minutes),
            placeholder="–",
            spoken=_("{time} on camera").format(time=minutes_text(dish.camera_minutes) or _("no time")),
        ),
    )
    return Row(key_of(Place("dishes", dish.id)), cells, place=Place("dishes", dish.id), lines=3.1)


def _cost_cell(binder: Binder, cost: DishCost, longest: float) -> Cell:
    bar = CostBar(
        None if cost.per_portion is None else cost.per_portion / longest,
        None if cost.cap is None else cost.cap / longest,
    )
    if cost.verdict is Verdict.UNKNOWN:
        reason = not_known(cost.missing)
        return Cell(
            reason,
            picture=bar,
            mark=mark_of(cost.verdict),
            leads_to=cost.missing[0].place,
            tip="\n".join(lack.says for lack in cost.missing),
        )
    shown, _cap = cost_beside_cap(binder, cost)
    if cost.verdict is Verdict.NO_CAP:
        return Cell(_("{cost}, no cap").format(cost=shown), picture=bar, tip=basis_text(cost.basis))
    state = _("over") if cost.verdict is Verdict.OVER else _("within")
    says = _("{cost}, {state}: {headroom}").format(cost=shown, state=state, headroom=headroom_text(binder, cost))
    tone = Tone.STOP if cost.verdict is Verdict.OVER else Tone.INK
    return Cell(says, picture=bar, mark=mark_of(cost.verdict), tone=tone, tip=basis_text(cost.basis))


def _cap_cell(binder: Binder, dish: Dish) -> Cell:
    cap = cap_of(binder, dish)
    if dish.cap is None:
        return Cell(money(binder, cap) if cap is not None else "", edit="", placeholder=_("none"), tone=Tone.QUIET)
    return Cell(money(binder, dish.cap), edit=plain_money(binder, dish.cap))


def _base_cell(binder: Binder, dish: Dish) -> Cell:
    balance = base_balance(binder, dish.shoot)
    if balance is None:
        return NOTHING
    base = binder.foods[balance.base]
    parts = []
    for form, grams in sorted(balance.by_dish.get(dish.id, {}).items(), key=lambda pair: -pair[1]):
        number, unit = grams_parts(binder, grams)
        name = short_name(binder.foods[form], base.name)
        parts.append((number, unit, name))
    if not parts:
        return Cell("–", tone=Tone.QUIET, spoken=_("none of the base"))
    every = [f"{number} {unit} {name}" for number, unit, name in parts]
    under = every[1] if len(every) == _FORMS_SHOWN else _more(len(every) - 1)
    number, unit, name = parts[0]
    return Cell(number, f"{unit} {name}", under=under, tip="\n".join(every), spoken=listed(every))


def _more(count: int) -> str:
    return ngettext("and {count} more form", "and {count} more forms", count).format(count=count) if count > 0 else ""


def _builds_cell(binder: Binder, dish: Dish) -> Cell:
    builds = builds_of(binder, dish.id)
    if not builds:
        return Cell(_("no build"), tone=Tone.WARNING)
    steps = len(binder.steps.where("recipe", dish.recipe)) or 1
    pans = Pans(tuple(pan_of(binder, build, steps) for build in builds))
    says = _builds_text(binder, builds)
    return Cell(says, picture=pans, tone=Tone.QUIET, size=Size.SMALL, tip=says)


def pan_of(binder: Binder, build: Build, steps: int) -> Pan:
    """A build as it is drawn."""
    if build.kind is BuildKind.HERO and build.up_to is None:
        return Pan(0.0)
    last = last_position(binder, build)
    return Pan(1.0 if last is None else (last + 1) / steps, small=build.kind is BuildKind.TASTING)


def _builds_text(binder: Binder, builds: Sequence[Build]) -> str:
    said: dict[str, int] = {}
    for build in builds:
        last = last_position(binder, build)
        kind = _(build.kind.value)
        words = kind if last is None else _("{kind} to step {number}").format(kind=kind, number=last + 1)
        said[words] = said.get(words, 0) + 1
    return ", ".join(words if count == 1 else f"{count} × {words}" for words, count in said.items())


def dish_title(binder: Binder, dish: Dish) -> str:
    """A dish by its running number and name."""
    return f"{dish.position + 1} {dish_name(binder, dish)}"
