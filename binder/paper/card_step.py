"""A step on a card: number and verb, heat and times large, then the words, what it takes, which builds stop here."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.duration_text import duration_text
from binder.figures.temperature_text import temperature_text
from binder.kitchen.wording import _
from binder.paper.arrangement import Beside, Flow, Space, Stack, Tagged
from binder.paper.block import Block, Text, text
from binder.paper.card_number import StepNumber
from binder.paper.card_type import figure_runs
from binder.paper.card_words import heat_text, portions_text
from binder.paper.mark import Shape, marked, marked_width
from binder.paper.print_choices import Look
from binder.paper.run import Run, unbroken
from binder.paper.structure import SUBHEADING

if TYPE_CHECKING:
    from binder.figures.card import CardStep, PlannedBuild
    from binder.kitchen.binder import Binder
    from binder.kitchen.recipe import Step
    from binder.kitchen.reference import Caution
    from binder.paper.card_type import CardType

_AFTER_NUMBER = 5.5
_BETWEEN_MARKS = 10.0
_BETWEEN_STEPS = 6.0
"""Points of white between a step's number and its words, between marks of cautions, and below a step."""


@dataclass(frozen=True)
class StepOf:
    """What a step goes by: its number, and where steps of several dishes stand together `whose` it is, and when."""

    number: str
    whose: str = ""


def step_block(
    binder: Binder, found: CardStep, before: CardStep | None, style: CardType, of: StepOf, *, close: bool = False
) -> Stack:
    """A step: its number, what to do, then heat and times large, then the words, what it takes, and who stops here.

    `close`: with less white below it.
    """
    step = found.step
    facts, words = _facts(binder, found, before, style, of), _words(step, style)
    blocks: list[Block] = [Tagged(text(step.title, style.lead), SUBHEADING)] if step.title else []
    blocks += [Text(runs) for runs in (facts, words) if runs]
    if found.cautions:
        blocks.append(Flow(tuple(_caution_mark(caution, style) for caution in found.cautions), _BETWEEN_MARKS))
    blocks += [_stop_block(binder, build, style) for build in found.stopping]
    number = StepNumber(of.number, style.strong, solid=style.look is Look.ON_CAMERA)
    first, *others = blocks or [text("", style.plain)]
    headed = Beside(((number, number.box_width()), (first, None)), gap=_AFTER_NUMBER)
    return Stack((headed, *others, Space(_BETWEEN_STEPS / 3 if close else _BETWEEN_STEPS)))


def _words(step: Step, style: CardType) -> tuple[Run, ...]:
    """What is done, its verb large where the step has no title, what it is done with, how long the result holds."""
    runs = [Run(step.text, style.plain)] if step.text else []
    if step.text and not step.title:
        verb, rest = _leading_word(step.text)
        runs = [Run(verb, style.lead), Run(rest, style.plain)]
    if step.equipment:
        runs.append(Run((" " if runs else "") + _("With") + " ", style.strong))
        runs.append(Run(", ".join(step.equipment), style.plain))
    if step.hold_minutes:
        holds = unbroken(_("holds {time}").format(time=duration_text(step.hold_minutes)))
        runs.append(Run((" · " if runs else "") + holds, style.strong))
    return tuple(runs)


def _leading_word(words: str) -> tuple[str, str]:
    """The verb a step begins with, and the rest."""
    verb, space, rest = words.lstrip().partition(" ")
    return verb, space + rest


def _facts(binder: Binder, found: CardStep, before: CardStep | None, style: CardType, of: StepOf) -> tuple[Run, ...]:
    """Whose or where, how hot and how long, each unbroken, a dot between them."""
    step = found.step
    facts: list[tuple[Run, ...]] = [(Run(of.whose, style.strong),)] if of.whose else []
    moved = before is None or before.step.station != step.station
    if step.station and moved and not of.whose and not (step.heat and step.station == heat_text(step.heat)):
        facts.append((Run(unbroken(step.station), style.strong),))
    if step.celsius is not None:
        facts.append(
            (
                *([Run(heat_text(step.heat) + " ", style.plain)] if step.heat else []),
                *figure_runs(temperature_text(binder, step.celsius), style.figure, style.plain),
            )
        )
    elif step.heat:
        facts.append((Run(heat_text(step.heat), style.strong),))
    times = (
        (step.hands_on_minutes, _("{time} hands on")),
        (step.waiting_minutes, _("{time} waiting")),
    )
    for minutes, says in times:
        if minutes > 0:
            facts.append(figure_runs(says.format(time=duration_text(minutes)), style.figure, style.plain))
    if not step.on_camera:
        facts.append((Run(unbroken(_("off camera")), style.strong),))
    between = Run(" · ", style.plain)
    return tuple(run for at, fact in enumerate(facts) for run in ((between, *fact) if at else fact))


def _caution_mark(caution: Caution, style: CardType) -> tuple[Block, float]:
    """The caution's name at the step that carries the hazard; its words stand at the foot of the same card."""
    words = text(caution.title, style.strong)
    return marked(Shape.OPEN_TRIANGLE, words, style.strong), words.natural_width() + marked_width(style.strong)


def _stop_block(binder: Binder, build: PlannedBuild, style: CardType) -> Beside:
    says = _("{build} stops here").format(build=_build_name(binder, build))
    waits = _("waits: {where}").format(where=build.waits) if build.waits else ""
    return marked(Shape.DOT, text(" · ".join(part for part in (says, waits) if part), style.strong), style.strong)


def _build_name(binder: Binder, build: PlannedBuild) -> str:
    return f"{build.kind} ({portions_text(binder, build.portions)})"
