"""The facts of a step as cells, and as they are typed: minutes, station, heat, equipment, hazards."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import Cell, Tone
from binder.desktop.words.figure_text import minutes_text
from binder.desktop.words.typed import (
    Reading,
    UnreadableError,
    exact_temperature,
    typed_heat,
    typed_minutes,
    typed_words,
)
from binder.figures.temperature_text import temperature_short
from binder.kitchen.edits.recipes import set_step
from binder.kitchen.recipe import Heat
from binder.kitchen.reference import cautions, deference
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.kitchen.recipe import Step

FACTS = ("hands_on_minutes", "waiting_minutes", "station", "heat", "equipment", "hazards")
"""The columns of facts from left to right."""


def fact_titles() -> tuple[str, ...]:
    """The heads of the columns of facts."""
    return _("hands on"), _("then wait"), _("station"), _("heat"), _("tools"), _("caution")


def fact_cells(binder: Binder, step: Step) -> tuple[Cell, ...]:
    """A cell for each fact."""
    hands_on, waiting = minutes_text(step.hands_on_minutes), minutes_text(step.waiting_minutes)
    tools = ", ".join(step.equipment)
    return (
        Cell(hands_on, edit=hands_on, placeholder="–"),
        Cell(waiting, edit=waiting, placeholder="–"),
        Cell(step.station, edit=step.station, placeholder="–", choices=_stations(binder)),
        _heat_cell(binder, step),
        Cell(tools, edit=tools, placeholder="–", tip=tools or _("Parted by commas")),
        _hazard_cell(step),
    )


def _stations(binder: Binder) -> tuple[str, ...]:
    return tuple(sorted({step.station for step in binder.steps.values() if step.station}))


def _heat_cell(binder: Binder, step: Step) -> Cell:
    word = _(step.heat.value) if step.heat else ""
    degrees = temperature_short(binder, step.celsius) if step.celsius is not None else ""
    exact = exact_temperature(binder, step.celsius) if step.celsius is not None else ""
    text, edit = f"{word} {degrees}".strip(), f"{word} {exact}".strip()
    kinds = tuple(_(heat.value) for heat in Heat)
    return Cell(text, edit=edit, placeholder="–", choices=kinds, tip=_("What is heated, and how far: oven 180 °C"))


def _hazard_cell(step: Step) -> Cell:
    known = cautions()
    text = ", ".join(known[hazard].title if hazard in known else hazard for hazard in step.hazards)
    says = [f"{known[hazard].text} ({known[hazard].source})" for hazard in step.hazards if hazard in known]
    tip = "\n".join([*says, deference()]) if says else _("Hazards of this step, parted by commas")
    titles = tuple(caution.title for caution in known.values())
    tone = Tone.WARNING if text else Tone.INK
    return Cell(text, edit=text, placeholder="–", choices=titles, tip=tip, tone=tone)


def edit_fact(binder: Binder, step: Step, column: str, text: str) -> Change:
    """The change that typing a fact is."""
    if column == "heat":
        heat, celsius = typed_heat(binder, text)
        return set_step(binder, step, heat=heat, celsius=celsius)
    values: dict[str, Reading] = {
        "hands_on_minutes": lambda: typed_minutes(binder, text),
        "waiting_minutes": lambda: typed_minutes(binder, text),
        "station": text.strip,
        "equipment": lambda: typed_words(text),
        "hazards": lambda: typed_hazards(text, step.hazards),
    }
    return set_step(binder, step, **{column: values[column]()})


def typed_hazards(text: str, kept: tuple[str, ...]) -> tuple[str, ...]:
    """Hazards by their titles or codes, parted by commas; those the step has may stay, known or not."""
    known = cautions()
    by_name = {caution.title.casefold(): key for key, caution in known.items()} | {key: key for key in (*known, *kept)}
    found = []
    for word in typed_words(text):
        key = by_name.get(word.casefold()) or by_name.get(word.casefold().replace(" ", "_"))
        if key is None:
            titles = listed([caution.title for caution in known.values()], joined_by=_("or"))
            raise UnreadableError(word, _("choose {choices}.").format(choices=titles))
        found.append(key)
    return tuple(dict.fromkeys(found))
