"""The recipes of a shoot as they are published: for the portions of one batch, in both measures, with the method."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from binder.figures.duration_text import duration_text
from binder.figures.portion_text import set_out
from binder.figures.safety import doneness_needed, recipe_allergens, step_cautions
from binder.figures.temperature_text import doneness_text, temperature_text
from binder.kitchen.edits.recipes import line_name
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.reference import deference
from binder.kitchen.wording import _, listed
from binder.paper.arrangement import Beside, Rule, Space, Stack, Tagged
from binder.paper.block import Text, text
from binder.paper.card_safety import no_allergens_text
from binder.paper.card_words import count_text, heat_text
from binder.paper.list_pages import Section, Sheet
from binder.paper.mark import Shape, marked
from binder.paper.run import Run, unbroken
from binder.paper.structure import HEADING, SUBHEADING
from binder.paper.typeface import Weight

if TYPE_CHECKING:
    from collections.abc import Iterator

    from binder.kitchen.binder import Binder
    from binder.kitchen.recipe import Line, Recipe, Step
    from binder.kitchen.reference import Caution
    from binder.paper.block import Block
    from binder.paper.job import Job
    from binder.paper.list_type import ListType

_LEFT_SHARE, _GUTTER = 0.36, 22.0
"""Part of the width that what goes in has beside the method, and points of white between the two."""

_TWO_COLUMNS_FROM = 420.0
"""Points; on narrower paper the method stands below what goes in."""

_BETWEEN = 4.0
"""Points of white below a line of what goes in, and below a step."""


def recipe_sheet(job: Job) -> Sheet:
    """The recipes of the dishes of a shoot, each on a page of its own, then those that they are made with."""
    binder, style = job.binder, job.list_type()
    named: dict[str, str] = {}
    for dish in binder.dishes.where("shoot", job.shoot):
        named.setdefault(dish.recipe, dish_name(binder, dish))
    for recipe in [*named]:
        for inner in _made_with(binder, recipe):
            named.setdefault(inner, binder.recipes[inner].name)
    sections = [_recipe(job, recipe, name, style) for recipe, name in named.items()]
    if not sections:
        none = text(_("The shoot has no dishes yet: add the first."), style.plain)
        return Sheet(
            _("Recipes"), (text(binder.shoots[job.shoot].name, style.plain),), [Section(before=(none,))], style
        )
    return Sheet(_("Recipes"), (), sections, style, shows_title=False)


def _made_with(binder: Binder, recipe: str) -> Iterator[str]:
    for step in binder.steps.where("recipe", recipe):
        for line in binder.lines.where("step", step.id):
            if line.made is not None:
                yield line.made
                yield from _made_with(binder, line.made)


def _recipe(job: Job, recipe_id: str, name: str, style: ListType) -> Section:
    binder, wide = job.binder, job.paper.points[0] - 2 * job.paper.margin
    recipe, steps = binder.recipes[recipe_id], binder.steps.where("recipe", recipe_id)
    lines = [line for step in steps for line in binder.lines.where("step", step.id)]
    goes_in = _headed(_("What goes in"), [_ingredient(binder, line, style) for line in lines], style)
    said: set[str] = set()
    method = _headed(_("Method"), [_step(binder, step, at, said, style) for at, step in enumerate(steps, 1)], style)
    body: list[Block] = [*goes_in, *method]
    if wide >= _TWO_COLUMNS_FROM and lines and steps:
        left = wide * _LEFT_SHARE
        body = [Beside(((Stack(tuple(goes_in)), left), (Stack(tuple(method)), None)), gap=_GUTTER, level=False)]
    title: Block = Tagged(text(name, style.title), HEADING)
    return Section(
        "",
        name,
        (title, *_opening(binder, recipe, style), *body, Stack(tuple(_closing(binder, recipe, style)))),
        outline=name,
    )


def _headed(words: str, blocks: list[Block], style: ListType) -> list[Block]:
    """Blocks with a heading that stays with the first of them; nothing where there are none."""
    head = Stack((Space(6), Tagged(text(words, style.section), SUBHEADING), Rule(0.5, below=_BETWEEN)))
    return [Stack((head, *blocks[:1])), *blocks[1:]] if blocks else []


def _opening(binder: Binder, recipe: Recipe, style: ListType) -> Iterator[Block]:
    facts = [_("serves {count}").format(count=count_text(binder, recipe.portions))] if recipe.portions else []
    steps = binder.steps.where("recipe", recipe.id)
    hands, waits = sum(step.hands_on_minutes for step in steps), sum(step.waiting_minutes for step in steps)
    facts += [_("{time} of work").format(time=duration_text(hands))] if hands else []
    facts += [_("{time} of waiting").format(time=duration_text(waits))] if waits else []
    if facts:
        yield text(" · ".join(unbroken(fact) for fact in facts), style.strong)
    if recipe.introduction:
        yield Stack((Space(3), text(recipe.introduction, replace(style.plain, weight=Weight.ITALIC))))


def _ingredient(binder: Binder, line: Line, style: ListType) -> Block:
    """The cook's measure and the weight, then the food and what is done to it."""
    amount = set_out(binder, line, 1.0)
    shown = " · ".join(unbroken(part) for part in (amount.measure, amount.weight) if part)
    after = ", ".join(part for part in (line.preparation, line.note, _("to serve") if line.garnish else "") if part)
    runs = (Run(f"{shown} ", style.strong), Run(line_name(binder, line), style.plain))
    return Stack((Text((*runs, *([Run(f", {after}", style.plain)] if after else []))), Space(_BETWEEN)))


def _step(binder: Binder, step: Step, number: int, said: set[str], style: ListType) -> Block:
    facts = []
    if step.celsius is not None:
        heat = f"{heat_text(step.heat)} " if step.heat else ""
        facts.append(unbroken(heat + temperature_text(binder, step.celsius)))
    times = ((step.hands_on_minutes, _("{time} of work")), (step.waiting_minutes, _("{time} of waiting")))
    facts += [unbroken(says.format(time=duration_text(minutes))) for minutes, says in times if minutes]
    words = [Run(f"{step.title}. ", style.strong)] if step.title else []
    words += [Run(step.text, style.plain)] if step.text else []
    words += [Run((" " if words else "") + " · ".join(facts), style.strong)] if facts else []
    body: list[Block] = [Text(tuple(words))] if words else []
    body += [_caution(caution, said, style) for caution in step_cautions(step)]
    numbered = Beside(((text(f"{number}", style.lead), style.lead.size * 1.6), (Stack(tuple(body)), None)))
    return Stack((numbered, Space(_BETWEEN)))


def _caution(caution: Caution, said: set[str], style: ListType) -> Block:
    """In full with its source where it comes first in a recipe, by its name after that."""
    runs = [Run(f"{caution.title}. ", style.strong)]
    if caution.hazard not in said:
        source = " " + _("[{source}]").format(source=caution.source)
        runs += [Run(caution.text, style.plain), Run(source, style.label)]
    said.add(caution.hazard)
    return marked(Shape.OPEN_TRIANGLE, Text(tuple(runs)), style.strong)


def _closing(binder: Binder, recipe: Recipe, style: ListType) -> Iterator[Block]:
    """Safe temperatures, allergens in words, notes."""
    yield Space(_BETWEEN)
    needed = doneness_needed(binder, recipe.id)
    for one in needed:
        says = _("{food}: {temperature} [{source}]").format(
            food=one.food, temperature=doneness_text(binder, one.rule), source=one.rule.source
        )
        yield marked(Shape.OPEN_TRIANGLE, text(says, style.plain), style.strong)
    if needed or any(step_cautions(step) for step in binder.steps.where("recipe", recipe.id)):
        yield text(deference(), style.strong)
    carried = listed(one.group for one in recipe_allergens(binder, recipe.id))
    contains = _("Contains {allergens}.").format(allergens=carried)
    yield text(contains if carried else no_allergens_text(binder.settings.allergens), style.strong)
    if recipe.notes:
        yield text(recipe.notes, style.plain)
