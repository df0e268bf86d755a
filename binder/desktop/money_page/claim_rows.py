"""The rows of one claim: its sentence, what it is held against at three levels of prices, its verdict and its sum."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.money_page.claim_terms import (
    about_choices,
    about_text,
    kind_text,
    kind_words,
    target_edit,
    target_text,
)
from binder.desktop.sheet.cell import NOTHING, Cell, Mark, Row, Size, Tone, key_of
from binder.figures.claims import ClaimVerdict, verdict_text
from binder.figures.missing import Place
from binder.figures.money_words import percent_text
from binder.figures.price_levels import PriceLevel
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator

    from binder.figures.added_up import Row as SumRow
    from binder.figures.claims import AtPrices, ClaimFinding
    from binder.kitchen.binder import Binder
    from binder.kitchen.claim import Claim

SUM = "claim sums"
"""The table of a place that stands for the sum of a claim: a link to it folds the sum out or away."""

_MARKS = {
    ClaimVerdict.HOLDS: Mark.WITHIN,
    ClaimVerdict.ONLY_IF: Mark.WARN,
    ClaimVerdict.DOES_NOT: Mark.OVER,
    ClaimVerdict.NOT_KNOWN: Mark.UNKNOWN,
}


def claim_rows(
    binder: Binder, claim: Claim, finding: ClaimFinding | None, *, stale: bool, unfolded: bool
) -> Iterator[Row]:
    """All rows of a claim; `finding` None where it has not been worked out yet."""
    tone = Tone.QUIET if stale else Tone.INK
    yield _sentence(claim, finding, tone)
    yield _held_against(binder, claim, finding, tone)
    yield _verdict(claim, finding, tone, unfolded=unfolded)
    if unfolded and finding is not None:
        yield from _sum(claim, finding, tone)


def verdict_words(verdict: ClaimVerdict) -> str:
    """A verdict in a word or two."""
    return {
        ClaimVerdict.HOLDS: _("holds"),
        ClaimVerdict.ONLY_IF: _("holds only if"),
        ClaimVerdict.DOES_NOT: _("does not hold"),
        ClaimVerdict.NOT_KNOWN: _("not known"),
    }[verdict]


def _sentence(claim: Claim, finding: ClaimFinding | None, tone: Tone) -> Row:
    if finding is None:
        verdict = Cell(_("being worked out"), tone=Tone.QUIET)
    else:
        loud = Tone.STOP if finding.verdict is ClaimVerdict.DOES_NOT and tone is Tone.INK else tone
        verdict = Cell(verdict_words(finding.verdict), mark=_MARKS[finding.verdict], tone=loud, size=Size.STRONG)
    says = Cell(claim.says, edit=claim.says, size=Size.STRONG, paragraph=True)
    number = Cell(str(claim.position + 1), tone=Tone.QUIET)
    place = Place("claims", claim.id)
    cells = (number, says, *(NOTHING,) * 5, verdict)
    return Row(key_of(place), cells, place=place, spans=((1, 6),), wraps=True, rule=False, gap=1)


def _held_against(binder: Binder, claim: Claim, finding: ClaimFinding | None, tone: Tone) -> Row:
    about, choices = about_text(binder, claim), about_choices(binder, claim)
    target, shown = target_edit(binder, claim), target_text(binder, claim)
    if finding is not None and target is None:
        shown = finding.target_shown
    kind = kind_text(claim.kind)
    cells = (
        NOTHING,
        Cell(kind, edit=kind, choices=tuple(kind_words()), tip=_("What the sentence is held against")),
        Cell(
            about,
            edit=about if choices else None,
            choices=choices,
            placeholder=_("choose a recipe"),
            folds=True,
            tip=about,
        ),
        Cell(shown, edit=target),
        *_levels(finding, tone),
        _margin(binder, finding, tone),
    )
    return Row(f"terms:{claim.id}", cells, place=Place("claims", claim.id), rule=False, lines=1.5)


def _levels(finding: ClaimFinding | None, tone: Tone) -> tuple[Cell, ...]:
    at = {one.level: one for one in finding.levels} if finding is not None else {}
    return tuple(_level(at.get(level), tone) for level in PriceLevel)


def _level(at: AtPrices | None, tone: Tone) -> Cell:
    if at is None:
        return NOTHING
    mark = Mark.WITHIN if at.holds else Mark.OVER
    spoken = _("at the {level} prices {figure}, {state}").format(
        level=_(at.level.value), figure=at.shown, state=_("holds") if at.holds else _("does not hold")
    )
    return Cell(at.shown, mark=mark, tone=tone, spoken=spoken)


def _margin(binder: Binder, finding: ClaimFinding | None, tone: Tone) -> Cell:
    chosen = finding.chosen if finding is not None else None
    if chosen is None:
        return NOTHING
    says = _("{margin} to spare") if chosen.holds else _("{margin} too much")
    percent = percent_text(binder, abs(chosen.part))
    shown = says.format(margin=chosen.margin_shown.lstrip("-−"))
    return Cell(f"{shown}, {percent}", tone=tone, tip=f"{shown}, {percent}")


def _verdict(claim: Claim, finding: ClaimFinding | None, tone: Tone, *, unfolded: bool) -> Row:
    """The verdict with its conditions, what the figure counts, and the way to its sum."""
    place, key = Place("claims", claim.id), f"{SUM}:{claim.id}"
    if finding is None:
        return Row(key, (NOTHING,) * 8, place=place, lines=0.5)
    says = " ".join([verdict_text(finding), *finding.notes])
    missing = finding.missing[0].place if finding.missing else None
    link = NOTHING
    if finding.rows:
        title = _("fold the sum away") if unfolded else _("show the sum")
        link = Cell(title, leads_to=Place(SUM, claim.id), tip=_("The arithmetic behind it"))
    words = Cell(says, tone=tone, size=Size.SMALL, leads_to=missing)
    cells = (NOTHING, words, *(NOTHING,) * 5, link)
    return Row(key, cells, place=place, spans=((1, 6),), wraps=True, rule=not unfolded)


def _sum(claim: Claim, finding: ClaimFinding, tone: Tone) -> Iterator[Row]:
    """The rows that add up to the figure at the prices chosen."""
    place = Place("claims", claim.id)
    for number, row in enumerate(finding.rows):
        yield _sum_row(f"{SUM}:{claim.id}#{number}", place, row, tone, Size.BODY, last=False)
    if finding.total is not None:
        yield _sum_row(f"{SUM}:{claim.id}#total", place, finding.total, tone, Size.STRONG, last=True)


def _sum_row(key: str, place: Place, row: SumRow, tone: Tone, size: Size, *, last: bool) -> Row:
    quiet = Tone.INK if last and tone is Tone.INK else Tone.QUIET
    text, amount = Cell(row.text, tone=quiet, size=size, tip=row.text), Cell(row.shown, tone=tone, size=size)
    cells = (NOTHING, text, NOTHING, NOTHING, NOTHING, amount, NOTHING, NOTHING)
    return Row(key, cells, place=place, spans=((1, 4),), rule=last, lines=1.35)
