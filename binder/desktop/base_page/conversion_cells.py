"""The rows of one conversion: the facts and figures of each of its parts as cells."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import NOTHING, Cell, Row, Size, Tone, key_of
from binder.desktop.words.figure_text import grams_parts, minutes_text
from binder.figures.base_network import base_forms
from binder.figures.date_text import day_time_text
from binder.figures.duration_text import duration_text
from binder.figures.form_cost import cost_carried
from binder.figures.missing import Missing, Place
from binder.figures.portion_text import number_style
from binder.figures.trials import measured_yields
from binder.kitchen.conversion import CostSplit
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.number import in_decimals
from binder.kitchen.reference import cautions, deference
from binder.kitchen.wording import _, listed, ngettext

if TYPE_CHECKING:
    from binder.desktop.base_page.base_figures import LatestFigures
    from binder.figures.leads import Lead
    from binder.kitchen.binder import Binder
    from binder.kitchen.conversion import Addition, Conversion, Outcome


def conversion_rows(binder: Binder, conversion: Conversion, latest: LatestFigures) -> list[Row]:
    """All rows of a conversion."""
    figures = latest.value
    lead = next((one for one in figures.leads if one.conversion == conversion.id), None) if figures else None
    outcomes = binder.outcomes.where("conversion", conversion.id)
    additions = binder.additions.where("conversion", conversion.id)
    grams = lead.grams if lead else None
    return [
        _head(binder, conversion, lead, stale=latest.stale),
        _text(conversion),
        _limits(binder, conversion),
        *(_outcome(binder, conversion, one, grams) for one in outcomes),
        *(_addition(binder, one, grams) for one in additions),
        _adding(conversion),
    ]


def _head(binder: Binder, conversion: Conversion, lead: Lead | None, *, stale: bool) -> Row:
    hands_on, waits = minutes_text(conversion.hands_on_minutes), minutes_text(conversion.lead_minutes)
    base = binder.foods[conversion.takes].form_of or conversion.takes
    forms = tuple(binder.foods[form].name for form in base_forms(binder, base))
    takes, split = binder.foods[conversion.takes].name, _(conversion.split.value)
    cells = (
        Cell(conversion.name, edit=conversion.name, size=Size.STRONG),
        Cell(takes, edit=takes, choices=forms),
        NOTHING,
        _grams(binder, lead.grams if lead else None, tone=Tone.QUIET if stale else Tone.INK),
        Cell(hands_on, edit=hands_on, placeholder="–", spoken=_("{time} hands on").format(time=hands_on or _("no"))),
        Cell(waits, edit=waits, placeholder="–", spoken=_("then waits {time}").format(time=waits or _("for nothing"))),
        _start(binder, lead, stale=stale),
        Cell(split, edit=split, choices=tuple(_(one.value) for one in CostSplit)),
    )
    place = Place("conversions", conversion.id)
    return Row(key_of(place), cells, place=place, rule=False, gap=2, lines=1.7)


def _grams(binder: Binder, grams: float | None, *, tone: Tone = Tone.INK) -> Cell:
    if grams is None:
        return Cell("–", tone=Tone.QUIET, spoken=_("not run in this shoot"))
    number, unit = grams_parts(binder, grams)
    return Cell(number, unit, tone=tone)


def start_text(binder: Binder, lead: Lead) -> str:
    """By when a conversion must begin: `Mon, Dec 7, 7:15 PM`, or how long before call where the shoot has no date."""
    if lead.starts is None:
        return _("{duration} before call").format(duration=duration_text(lead.minutes_before))
    return day_time_text(binder, lead.starts)


def _start(binder: Binder, lead: Lead | None, *, stale: bool) -> Cell:
    if lead is None:
        return Cell("–", tone=Tone.QUIET, spoken=_("not run in this shoot"))
    dishes = [binder.dishes[key] for key in lead.for_dishes if key in binder.dishes]
    names = listed(f"{dish.position + 1} {dish_name(binder, dish)}" for dish in dishes)
    tip = _("{duration} before call, for {dishes}").format(duration=duration_text(lead.minutes_before), dishes=names)
    return Cell(start_text(binder, lead), tip=tip, tone=Tone.QUIET if stale else Tone.INK)


def _text(conversion: Conversion) -> Row:
    """What it is done with, and how."""
    tools = ", ".join(conversion.equipment)
    cells = (
        Cell(tools, edit=tools, placeholder=_("tools"), size=Size.SMALL, tone=Tone.QUIET, tip=_("Parted by commas")),
        Cell(conversion.text, edit=conversion.text, placeholder=_("Say how it is done"), paragraph=True),
        *(NOTHING,) * 6,
    )
    place = Place("conversions", conversion.id)
    return Row(f"text:{conversion.id}", cells, place=place, spans=((1, 7),), wraps=True, rule=False)


def _limits(binder: Binder, conversion: Conversion) -> Row:
    """The least it can take, its whole batch, and cautions."""
    cells = (
        NOTHING,
        _weight(binder, _("at least"), conversion.least_grams),
        _weight(binder, _("in batches of"), conversion.batch_grams),
        NOTHING,
        _hazards(conversion),
        *(NOTHING,) * 3,
    )
    place = Place("conversions", conversion.id)
    return Row(f"limits:{conversion.id}", cells, place=place, spans=((2, 2), (4, 4)), lines=1.4)


def _weight(binder: Binder, label: str, grams: float | None) -> Cell:
    text = exact_grams(binder, grams) if grams else ""
    return Cell(text, edit=text, label=label, placeholder="–")


def exact_grams(binder: Binder, grams: float) -> str:
    """A weight as it was given, never rounded to what a scale shows: `1815 g`."""
    return f"{in_decimals(grams, digits=2, decimal_mark=number_style(binder).decimal_mark)} g"


def _hazards(conversion: Conversion) -> Cell:
    known = cautions()
    text = ", ".join(known[one].title if one in known else one for one in conversion.hazards)
    says = [f"{known[one].text} ({known[one].source})" for one in conversion.hazards if one in known]
    tip = "\n".join([*says, deference()]) if says else _("Hazards, parted by commas")
    titles = tuple(caution.title for caution in known.values())
    tone = Tone.WARNING if text else Tone.INK
    return Cell(text, edit=text, label=_("caution"), placeholder="–", choices=titles, tip=tip, tone=tone)


def ratio_text(binder: Binder, ratio: float) -> str:
    """A yield to two decimals, to as many as it takes where it is small: `1.05`, `2.00`, `0.004`."""
    mark = number_style(binder).decimal_mark
    if ratio < _SMALL:
        return in_decimals(ratio, digits=4, decimal_mark=mark)
    return f"{ratio:.2f}".replace(".", mark)


_SMALL = 0.1


def _exact(binder: Binder, ratio: float) -> str:
    return in_decimals(ratio, digits=6, decimal_mark=number_style(binder).decimal_mark)


def _outcome(binder: Binder, conversion: Conversion, outcome: Outcome, grams: float | None) -> Row:
    form = binder.foods[outcome.form]
    cells = (
        NOTHING,
        Cell(form.name, label=_("gives")),
        Cell(ratio_text(binder, outcome.ratio), edit=_exact(binder, outcome.ratio), tip=outcome.source),
        _grams(binder, None if grams is None else grams * outcome.ratio),
        _measured(binder, conversion, outcome),
        NOTHING,
        NOTHING,
        _share(binder, conversion, outcome),
    )
    place = Place("outcomes", outcome.id)
    return Row(key_of(place), cells, place=place, spans=((4, 3),), lines=1.5)


def _measured(binder: Binder, conversion: Conversion, outcome: Outcome) -> Cell:
    """What test days measured of a yield, or else where it comes from."""
    found = next((one for one in measured_yields(binder, conversion.id) if one.form == outcome.form), None)
    if found is None:
        source = outcome.source or _("no trial yet")
        return Cell(source, tone=Tone.QUIET, size=Size.SMALL, tip=outcome.source)
    mean, count = ratio_text(binder, found.mean), len(found.ratios)
    if found.spread is None:
        says = _("measured {mean} in 1 trial").format(mean=mean)
    else:
        spread = spread_text(binder, found.spread)
        says = ngettext("mean {mean} ± {spread} of {count} trial", "mean {mean} ± {spread} of {count} trials", count)
        says = says.format(mean=mean, spread=spread, count=count)
    return Cell(says, tone=Tone.QUIET, size=Size.SMALL, tip=outcome.source)


def spread_text(binder: Binder, spread: float) -> str:
    """A spread to two decimals, or to as many as show its first figure: `0.02`, `0.0004`."""
    digits = next((more for more in range(2, 5) if round(spread, more)), 5)
    return in_decimals(spread, digits=digits, decimal_mark=number_style(binder).decimal_mark)


def _share(binder: Binder, conversion: Conversion, outcome: Outcome) -> Cell:
    """Which part of the cost an outcome carries; typed only where the conversion splits by shares."""
    edit = None
    if conversion.split is CostSplit.SHARES:
        edit = _percent(binder, outcome.cost_share) if outcome.cost_share is not None else ""
    carried = cost_carried(binder, conversion)
    if isinstance(carried, Missing):
        return Cell(_("not 100 %"), edit=edit, tone=Tone.WARNING, tip=carried.says)
    percent = _percent(binder, carried[outcome.form] * outcome.ratio)
    own = conversion.split is CostSplit.SHARES and outcome.cost_share is not None
    return Cell(percent, "%", edit=edit, tone=Tone.INK if own else Tone.QUIET)


def _percent(binder: Binder, share: float) -> str:
    return in_decimals(share * 100, digits=1, decimal_mark=number_style(binder).decimal_mark)


def _addition(binder: Binder, addition: Addition, grams: float | None) -> Row:
    cells = (
        NOTHING,
        Cell(binder.foods[addition.food].name, label=_("with")),
        Cell(ratio_text(binder, addition.ratio), edit=_exact(binder, addition.ratio)),
        _grams(binder, None if grams is None else grams * addition.ratio),
        *(NOTHING,) * 4,
    )
    place = Place("additions", addition.id)
    return Row(key_of(place), cells, place=place, lines=1.5)


def _adding(conversion: Conversion) -> Row:
    says = _("Add what comes of it, such as 0.8 cooking liquid, or what goes in: with 3 water")
    cells = (NOTHING, Cell(edit="", placeholder=says), *(NOTHING,) * 6)
    return Row(f"part:{conversion.id}", cells, spans=((1, 6),), lines=1.5, adds=True)
