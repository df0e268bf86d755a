"""Edits of money: budget lines, tax rates, claims to be said on camera, and the basis that caps are held on."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.kitchen.budget import BudgetLine, TaxRate
from binder.kitchen.change import Change, changed
from binder.kitchen.claim import Claim, ClaimKind
from binder.kitchen.edits.identity import new_id
from binder.kitchen.edits.records import insert, move, remove, set_fields
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.food import Section
    from binder.kitchen.shoot import CapBasis, Shoot


def add_budget_line(binder: Binder, shoot: Shoot, name: str, **fields: object) -> tuple[Change, BudgetLine]:
    """A cost beside the food, last of all. Returns the change and the line it makes."""
    line = BudgetLine(id=new_id("budget-line"), shoot=shoot.id, name=name, **fields)  # type: ignore[arg-type]
    return insert(_("Add {line} to the budget").format(line=name), binder, line), line


def set_budget_line(line: BudgetLine, **fields: object) -> Change:
    """Change a line of the budget; `rate`, `committed` and `actual` are minor units."""
    return set_fields(_("Edit {line} in the budget").format(line=line.name), line, **fields)


def move_budget_line(binder: Binder, line: BudgetLine, *, to: int) -> Change:
    """Put a line at another place in the budget."""
    return move(_("Move {line} in the budget").format(line=line.name), binder, line, to=to)


def remove_budget_line(binder: Binder, line: BudgetLine) -> Change:
    """Take a line out of the budget."""
    return remove(_("Remove {line} from the budget").format(line=line.name), binder, line)


def set_tax(binder: Binder, shoot: Shoot, section: Section | None, rate: float) -> Change:
    """Set the tax on a section, or (None) on all that has no rate of its own; `rate` is a part of the price: 0.07."""
    label = _("Set the tax on {section}").format(section=section.value) if section else _("Set the tax")
    before = [one for one in binder.tax_rates.where("shoot", shoot.id) if one.section == section]
    key = before[0].id if before else new_id("tax-rate")
    return changed(label, before=before, after=[TaxRate(id=key, shoot=shoot.id, section=section, rate=rate)])


def remove_tax(binder: Binder, tax: TaxRate) -> Change:
    """Take a tax rate out: its section is taxed as all else is."""
    label = _("Remove the tax on {section}").format(section=tax.section.value) if tax.section else _("Remove the tax")
    return remove(label, binder, tax)


def add_claim(binder: Binder, shoot: Shoot, says: str, kind: ClaimKind, **fields: object) -> tuple[Change, Claim]:
    """A sentence to be said on camera, last of all. Returns the change and the claim it makes."""
    claim = Claim(id=new_id("claim"), shoot=shoot.id, says=says, kind=kind, **fields)  # type: ignore[arg-type]
    return insert(_("Add a claim"), binder, claim), claim


def set_claim(claim: Claim, **fields: object) -> Change:
    """Change a claim: its sentence, or what it is held against."""
    return set_fields(_("Edit a claim"), claim, **fields)


def move_claim(binder: Binder, claim: Claim, *, to: int) -> Change:
    """Put a claim at another place in the order they are said."""
    return move(_("Move a claim"), binder, claim, to=to)


def remove_claim(binder: Binder, claim: Claim) -> Change:
    """Take a claim out."""
    return remove(_("Remove a claim"), binder, claim)


def set_cap_basis(shoot: Shoot, basis: CapBasis) -> Change:
    """Choose what a portion is taken to cost when it is held against its cap."""
    return set_fields(_("Hold caps on another basis"), shoot, cap_basis=basis)
