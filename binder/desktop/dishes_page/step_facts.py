"""The facts of a step as cells, and as they are typed: times, station, heat, tools, hazards, and what the day needs."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import NOTHING, Cell, Size, Tone
from binder.desktop.words.figure_text import minutes_text
from binder.desktop.words.typed import (
    Reading,
    UnreadableError,
    exact_temperature,
    typed_choice,
    typed_heat,
    typed_minutes,
    typed_words,
    words_for,
)
from binder.figures.temperature_text import temperature_short
from binder.kitchen.day import ApplianceKind
from binder.kitchen.edits.day import set_step_use
from binder.kitchen.edits.recipes import set_step
from binder.kitchen.recipe import Heat
from binder.kitchen.reference import cautions, deference
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.kitchen.recipe import Step

FACTS = ("hands_on_minutes", "waiting_minutes", "station", "heat")
"""The columns of facts from left to right, in the row of the step's title."""

FILMED_COLUMN = "weight"
"""In the same row: where the margin begins it says whether the step is filmed."""

MORE_COLUMNS = {
    "title": "equipment",
    "hands_on_minutes": "hazards",
    "station": "uses",
    "heat": "skill",
    "weight": "hold_minutes",
}
"""In the row below, each fact with its label: the column it stands in, and the field it is."""

MORE_SPANS = ((2, 2), (6, 3))
_USE = re.compile(r"^(?P<kind>[^\W\d]*)\s*[×x*]?\s*(?P<places>\d+)?$", re.IGNORECASE)


def fact_titles() -> tuple[str, ...]:
    """The heads of the columns of facts."""
    return _("hands on"), _("then wait"), _("station"), _("heat")


def fact_cells(binder: Binder, step: Step) -> tuple[Cell, ...]:
    """A cell for each fact of the title's row."""
    hands_on, waiting = minutes_text(step.hands_on_minutes), minutes_text(step.waiting_minutes)
    return (
        Cell(hands_on, edit=hands_on, placeholder="–"),
        Cell(waiting, edit=waiting, placeholder="–"),
        Cell(step.station, edit=step.station, placeholder="–", choices=_stations(binder)),
        _heat_cell(binder, step),
    )


def filmed_cell(step: Step) -> Cell:
    """Whether the step is filmed."""
    shown = next(word for word, on in _filmed().items() if on is step.on_camera)
    tone = Tone.QUIET if step.on_camera else Tone.INK
    return Cell(shown, edit=shown, choices=tuple(_filmed()), size=Size.SMALL, tone=tone)


def _filmed() -> dict[str, bool]:
    return {_("on camera"): True, _("off camera"): False}


def more_cells(step: Step) -> tuple[Cell, ...]:
    """Tools, cautions, and what the plan of the day asks of a step: nine cells, from the number's on."""
    tools = ", ".join(step.equipment)
    uses, hold = _use_text(step), minutes_text(step.hold_minutes)
    takes = _("The kind of appliance it stands on or in, and how many places: burners 2. Else the heat says it")
    skill = _("What whoever does it must be able to do, as the crew's skills are named")
    fit = _("How long what comes of this step stays fit to film: 10 min, 2 days")
    return (
        NOTHING,
        _small(tools, _("tools"), tip=tools or _("Parted by commas")),
        _hazard_cell(step),
        NOTHING,
        _small(uses, _("takes"), choices=tuple(words_for(ApplianceKind)), tip=takes),
        _small(step.skill, _("skill"), tip=skill),
        _small(hold, _("fit to film"), tip=fit),
        NOTHING,
        NOTHING,
    )


def _small(text: str, label: str, *, tip: str, choices: tuple[str, ...] = ()) -> Cell:
    return Cell(text, edit=text, label=label, placeholder="–", choices=choices, size=Size.SMALL, tip=tip)


def _use_text(step: Step) -> str:
    """`burners × 2`, `oven`; empty where neither is said."""
    kind = _(step.uses.value) if step.uses else ""
    return f"{kind} × {step.places}".strip() if step.places > 1 else kind


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
    label = _("caution")
    return Cell(text, edit=text, label=label, placeholder="–", choices=titles, tip=tip, tone=tone, size=Size.SMALL)


def edit_fact(binder: Binder, step: Step, field: str, text: str) -> Change:
    """The change that typing a fact is."""
    if field == "heat":
        heat, celsius = typed_heat(binder, text)
        return set_step(binder, step, heat=heat, celsius=celsius)
    if field == "uses":
        kind, places = typed_use(text)
        return set_step_use(binder, step, uses=kind, places=places)
    values: dict[str, Reading] = {
        "title": text.strip,
        "text": text.strip,
        "hands_on_minutes": lambda: typed_minutes(binder, text),
        "waiting_minutes": lambda: typed_minutes(binder, text),
        "station": text.strip,
        "equipment": lambda: typed_words(text),
        "hazards": lambda: typed_hazards(text, step.hazards),
        "on_camera": lambda: typed_choice(text, _filmed()),
        "hold_minutes": lambda: typed_minutes(binder, text) if text.strip() else None,
        "skill": text.strip,
    }
    return set_step(binder, step, **{field: values[field]()})


def typed_use(text: str) -> tuple[ApplianceKind | None, int]:
    """An appliance and how many places of it, of `oven`, `burners 2`, `burners × 2`, `2`."""
    found = _USE.match(" ".join(text.split()))
    if found is None:
        raise UnreadableError(text, _("write what it stands on or in, and how many places: burners 2."))
    kind = typed_choice(found["kind"], words_for(ApplianceKind)) if found["kind"] else None
    return kind, int(found["places"] or 1)


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
