"""Whether what is to be said on camera holds: at which prices, on which conditions, by how much, and why."""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum
from itertools import combinations
from typing import TYPE_CHECKING

from binder.figures.added_up import Measure, Row, Scale, added_up, honest_scale
from binder.figures.base import base_balance
from binder.figures.cap_basis import basis_text
from binder.figures.circumstances import IN_FULL, Circumstances, Condition, condition_text, on_conditions
from binder.figures.claim_figures import ClaimFigure, claim_figure
from binder.figures.memory import PLANS, remembered_from
from binder.figures.money_words import percent_text
from binder.figures.price_levels import PriceLevel
from binder.figures.tax import is_taxed
from binder.kitchen.claim import ClaimKind
from binder.kitchen.shoot import CapBasis
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from collections.abc import Iterator

    from binder.figures.missing import Missing
    from binder.kitchen.binder import Binder
    from binder.kitchen.claim import Claim

_EQUAL = 1e-9


class ClaimVerdict(StrEnum):
    """How a claim stands."""

    HOLDS = "holds"
    ONLY_IF = "holds only if"
    DOES_NOT = "does not hold"
    NOT_KNOWN = "not known"


@dataclass(frozen=True)
class AtPrices:
    """A claim at one level of prices: the figure, how far it keeps to the claim, and that as a part of the target.

    Minor units, minutes or grams; `margin` is below zero where the claim does not hold.
    """

    level: PriceLevel
    figure: float
    margin: float
    part: float
    holds: bool
    shown: str
    margin_shown: str


@dataclass(frozen=True)
class Way:
    """Conditions that together make a claim hold, and what its figure then is, also as it is shown."""

    conditions: tuple[Condition, ...]
    figure: float
    shown: str


@dataclass(frozen=True)
class ClaimFinding:
    """A claim held against its figure. `target` is minor units, minutes or grams; the rows add up to `total`.

    `levels` are the lowest, chosen and highest prices, or the chosen alone where prices do not matter; `ways` are the
    shortest lists of conditions on which it holds; `notes` say what the figure counts.
    """

    claim: str
    says: str
    verdict: ClaimVerdict
    subject: str
    target: float
    target_shown: str
    levels: tuple[AtPrices, ...]
    ways: tuple[Way, ...]
    rows: tuple[Row, ...]
    total: Row | None
    notes: tuple[str, ...]
    missing: tuple[Missing, ...]

    @property
    def chosen(self) -> AtPrices | None:
        """The claim at the prices chosen; None where its figure is not known."""
        return next((level for level in self.levels if level.level is PriceLevel.CHOSEN), None)


def claim_findings(binder: Binder, shoot_id: str) -> tuple[ClaimFinding, ...]:
    """All claims of a shoot in their order."""
    return tuple(claim_finding(binder, claim.id) for claim in binder.claims.where("shoot", shoot_id))


@remembered_from(PLANS | {"claims", "tax_rates"})
def claim_finding(binder: Binder, claim_id: str) -> ClaimFinding:
    """A claim held against its figure, at the lowest, the chosen and the highest prices."""
    claim = binder.claims[claim_id]
    found = claim_figure(binder, claim, IN_FULL)
    if isinstance(found, tuple):
        return _not_known(binder, claim, found)
    target = _target(binder, claim)
    scale = _scale(binder, claim, found.value, target)
    levels = tuple(at for level in _levels(claim) if (at := _at(binder, claim, level)) is not None)
    ways = tuple(_ways(binder, claim, levels))
    return ClaimFinding(
        claim=claim.id,
        says=claim.says,
        verdict=_verdict(levels, ways),
        subject=found.subject,
        target=target,
        target_shown=_target_shown(binder, claim, target),
        levels=levels,
        ways=ways,
        rows=added_up(binder, found.rows(), found.value, scale),
        total=_total(binder, found, scale),
        notes=tuple(_notes(binder, claim)),
        missing=(),
    )


def _not_known(binder: Binder, claim: Claim, missing: tuple[Missing, ...]) -> ClaimFinding:
    target = _target(binder, claim)
    return ClaimFinding(
        claim=claim.id,
        says=claim.says,
        verdict=ClaimVerdict.NOT_KNOWN,
        subject="",
        target=target,
        target_shown=_target_shown(binder, claim, target),
        levels=(),
        ways=(),
        rows=(),
        total=None,
        notes=tuple(_notes(binder, claim)),
        missing=missing,
    )


def _measure(claim: Claim) -> Measure:
    return {ClaimKind.ALL_FROM_BASE: Measure.GRAMS, ClaimKind.MINUTES_UNDER: Measure.MINUTES}.get(
        claim.kind, Measure.MONEY
    )


def _scale(binder: Binder, claim: Claim, value: float, target: float) -> Scale:
    """As many decimals as keep a figure on its own side of its target; for “about”, also of where about ends."""
    measure = _measure(claim)
    scale = honest_scale(binder, measure, value, target)
    if claim.kind is not ClaimKind.AMOUNT_ABOUT:
        return scale
    end = target * (1 + math.copysign(claim.tolerance, value - target))
    return max(scale, honest_scale(binder, measure, value, end), key=lambda one: one.digits)


def _target(binder: Binder, claim: Claim) -> float:
    """What the figure is held against; for the base, what there is of it."""
    if claim.kind is not ClaimKind.ALL_FROM_BASE:
        return claim.target
    balance = base_balance(binder, claim.shoot)
    return balance.there_is or 0.0 if balance else 0.0


def _target_shown(binder: Binder, claim: Claim, target: float) -> str:
    """A target to the digits it was set with."""
    measure = _measure(claim)
    return honest_scale(binder, measure, target, target if target == int(target) else int(target)).shown(binder, target)


def _levels(claim: Claim) -> tuple[PriceLevel, ...]:
    return tuple(PriceLevel) if _measure(claim) is Measure.MONEY else (PriceLevel.CHOSEN,)


def _at(binder: Binder, claim: Claim, level: PriceLevel) -> AtPrices | None:
    """The claim at one level of prices, everything counted; None where no figure can be had at that level."""
    found = claim_figure(binder, claim, Circumstances(level=level))
    if isinstance(found, tuple):
        return None
    target = _target(binder, claim)
    scale = _scale(binder, claim, found.value, target)
    margin = _margin(claim, found.value, target)
    figure = scale.value(binder, scale.steps(binder, found.value))
    return AtPrices(
        level=level,
        figure=found.value,
        margin=margin,
        part=margin / target if target else 0.0,
        holds=_holds(claim, found.value, target),
        shown=scale.shown(binder, found.value),
        margin_shown=scale.shown(binder, _margin(claim, figure, target)),
    )


def _margin(claim: Claim, value: float, target: float) -> float:
    """How far a figure keeps to its claim; for “about”, how much further off it might be."""
    if claim.kind is ClaimKind.AMOUNT_ABOUT:
        return claim.tolerance * target - abs(value - target)
    return target - value


def _holds(claim: Claim, value: float, target: float) -> bool:
    """Compared unrounded. Under is under: what costs exactly so much does not cost under it."""
    same = math.isclose(value, target, rel_tol=_EQUAL, abs_tol=_EQUAL)
    if claim.kind is ClaimKind.AMOUNT_ABOUT:
        return abs(value - target) <= claim.tolerance * target * (1 + _EQUAL) + _EQUAL
    if claim.kind in {ClaimKind.ALL_FROM_BASE, ClaimKind.MINUTES_UNDER}:
        return same or value < target
    return not same and value < target


def _verdict(levels: tuple[AtPrices, ...], ways: tuple[Way, ...]) -> ClaimVerdict:
    if all(level.holds for level in levels):
        return ClaimVerdict.HOLDS
    return ClaimVerdict.ONLY_IF if ways else ClaimVerdict.DOES_NOT


def _ways(binder: Binder, claim: Claim, levels: tuple[AtPrices, ...]) -> Iterator[Way]:
    """The shortest lists of conditions on which the claim holds, where it does not hold at every level."""
    at = {level.level: level for level in levels}
    chosen = at[PriceLevel.CHOSEN]
    if chosen.holds:
        failing = {
            PriceLevel.HIGHEST: Condition.NOT_AT_HIGHEST,
            PriceLevel.LOWEST: Condition.NOT_AT_LOWEST,
        }
        named = tuple(condition for level, condition in failing.items() if level in at and not at[level].holds)
        if named:
            yield Way(named, chosen.figure, chosen.shown)
        return
    conditions = _conditions(binder, claim)
    for count in range(1, len(conditions) + 1):
        tried = (_way(binder, claim, some) for some in combinations(conditions, count))
        found = [way for way in tried if way is not None]
        if found:
            yield from found
            return


def _way(binder: Binder, claim: Claim, conditions: tuple[Condition, ...]) -> Way | None:
    found = claim_figure(binder, claim, on_conditions(conditions))
    target = _target(binder, claim)
    if isinstance(found, tuple) or not _holds(claim, found.value, target):
        return None
    scale = _scale(binder, claim, found.value, target)
    return Way(conditions, found.value, scale.shown(binder, found.value))


def _conditions(binder: Binder, claim: Claim) -> list[Condition]:
    """The conditions that may make a difference to a claim that does not hold as it is."""
    if claim.kind is ClaimKind.ALL_FROM_BASE:
        return [Condition.ONCE]
    if claim.kind is ClaimKind.MINUTES_UNDER:
        return [Condition.HANDS_ON]
    whole = binder.shoots[claim.shoot].cap_basis is CapBasis.WHOLE_PACKS and claim.kind is ClaimKind.PORTION_UNDER
    may_matter = {
        Condition.NO_TAX: is_taxed(binder, claim.shoot),
        Condition.LOWEST: True,
        Condition.NO_GARNISH: any(line.garnish for line in binder.lines.values()),
        Condition.STAPLES_FREE: any(food.staple for food in binder.foods.values()),
        Condition.SHARES: whole,
    }
    every = [condition for condition, may in may_matter.items() if may]
    under = claim.kind is not ClaimKind.AMOUNT_ABOUT
    return every if not under or _way(binder, claim, tuple(every)) else []


def _total(binder: Binder, found: ClaimFigure, scale: Scale) -> Row:
    value = scale.value(binder, scale.steps(binder, found.value))
    return Row(found.subject, value, scale.shown(binder, found.value))


def _notes(binder: Binder, claim: Claim) -> Iterator[str]:
    """What the figure counts and what it does not."""
    shoot = binder.shoots[claim.shoot]
    if claim.kind is ClaimKind.PORTION_UNDER:
        whole = shoot.cap_basis is CapBasis.WHOLE_PACKS
        yield _("A portion is counted as {basis}.").format(
            basis=basis_text(CapBasis.WHOLE_PACKS if whole else CapBasis.USED)
        )
    if claim.kind is ClaimKind.AMOUNT_ABOUT:
        yield _("About is within {percent} of the target.").format(percent=percent_text(binder, claim.tolerance))
    if _measure(claim) is Measure.MONEY:
        yield _tax_note(binder, claim.shoot)
    if claim.kind is ClaimKind.MINUTES_UNDER:
        yield _("Hands-on and waiting minutes of the dish's own steps; what is made ahead is not counted.")


def _tax_note(binder: Binder, shoot: str) -> str:
    if binder.shoots[shoot].prices_taxed:
        return _("Prices on the shelf include tax.")
    if is_taxed(binder, shoot):
        return _("Tax is added to the prices on the shelf.")
    return _("Prices on the shelf are without tax, and no tax is set.")


def verdict_text(finding: ClaimFinding) -> str:
    """The verdict in a sentence, with its conditions or with what is missing."""
    if finding.verdict is ClaimVerdict.NOT_KNOWN:
        return _("Not known: {reasons}").format(reasons=" ".join(lack.says for lack in finding.missing))
    if finding.verdict is ClaimVerdict.DOES_NOT:
        return _("Does not hold.")
    if finding.verdict is ClaimVerdict.HOLDS:
        return _("Holds.")
    ways = [listed(condition_text(condition) for condition in way.conditions) for way in finding.ways]
    return _("Holds only {ways}.").format(ways=listed(ways, joined_by=_("or")))


def margin_text(binder: Binder, finding: ClaimFinding) -> str:
    """How the figure stands to its target at the prices chosen: `$1.746 beside $1.75: $0.004 (0.2%) to spare`."""
    chosen = finding.chosen
    if chosen is None:
        return ""
    says = _("{figure} beside {target}: {margin} ({percent}) to spare")
    if not chosen.holds:
        says = _("{figure} beside {target}: {margin} ({percent}) too much")
    return says.format(
        figure=chosen.shown,
        target=finding.target_shown,
        margin=chosen.margin_shown.lstrip("-−"),
        percent=percent_text(binder, abs(chosen.part)),
    )
