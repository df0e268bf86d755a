"""The flow of the base ingredient as a picture drawn to scale, and the same in figures below it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.base import base_balance
from binder.figures.base_repairs import bottleneck
from binder.figures.flow import NodeKind, base_flow
from binder.figures.not_known import not_known_text
from binder.kitchen.wording import _
from binder.paper.block import text
from binder.paper.cell import Cell, Column, cell
from binder.paper.flow_picture import FlowPicture, shown_nodes
from binder.paper.list_pages import Section, Sheet
from binder.paper.mark import Shape, base_state, state
from binder.paper.page import foot_height
from binder.paper.run import Run
from binder.paper.sheet_words import grams, shoot_words
from binder.paper.table import Table, table

if TYPE_CHECKING:
    from binder.figures.flow import Flow, Node
    from binder.kitchen.binder import Binder
    from binder.paper.block import Block
    from binder.paper.job import Job
    from binder.paper.list_type import ListType
    from binder.paper.ruling import Row

_WHITE = 30.0
"""Points that the white of headings and sections takes beside the picture."""


def has_base(binder: Binder, shoot_id: str) -> bool:
    """Whether a base ingredient is chosen."""
    return base_balance(binder, shoot_id) is not None


def flow_sheet(job: Job) -> Sheet:
    """The picture of a shoot's base ingredient."""
    binder, style = job.binder, job.list_type()
    balance, flow = base_balance(binder, job.shoot), base_flow(binder, job.shoot)
    under: list[Block] = [text(shoot_words(binder, job.shoot), style.plain)]
    if balance is None:
        under.append(text(_("The shoot has no base ingredient: choose one."), style.plain))
        return Sheet(_("Flow of the base"), under, [], style)
    shape, word = base_state(balance.verdict)
    under.append(state(shape, f"{balance.name}: {word}", style.section))
    short = bottleneck(binder, job.shoot)
    under += [text(short.says, style.strong)] if short is not None else []
    under += [text(not_known_text(binder, balance.missing), style.strong)] if balance.missing else []
    if not flow.nodes:
        under.append(text(_("No dish uses it yet: nothing flows."), style.plain))
        return Sheet(_("Flow of the base"), under, [], style)
    picture = _picture(job, flow, style, under)
    sections = [Section(before=(picture,))]
    if picture.keyed:
        sections.append(Section(table=_key(binder, flow, picture, style)))
    return Sheet(_("Flow of the base"), under, [*sections, Section(table=_figures(binder, flow, style))], style)


def _picture(job: Job, flow: Flow, style: ListType, under: list[Block]) -> FlowPicture:
    """As large as the page is, below what stands above it."""
    width, height = (side - 2 * job.paper.margin for side in job.paper.points)
    title = text(_("Flow of the base"), style.title)
    above = title.height(width) + sum(block.height(width) for block in under)
    return FlowPicture(job.binder, flow, style, width, height - foot_height() - above - _WHITE)


def _key(binder: Binder, flow: Flow, picture: FlowPicture, style: ListType) -> Table:
    columns = (
        Column("", head=True, share=0.2),
        Column(_("what"), head=True),
        Column(_("grams"), figure=True, head=True),
    )
    rows = [
        (
            cell(picture.keys[node.key], style.lead),
            cell(node.name, style.plain),
            cell(_grams(binder, node), style.strong),
        )
        for node in flow.nodes
    ]
    return table(columns, rows, style, _("Key"))


def _grams(binder: Binder, node: Node) -> str:
    shown = grams(binder, node.grams)
    return shown if not node.short else _("{grams}, short {short}").format(grams=shown, short=grams(binder, node.short))


def _figures(binder: Binder, flow: Flow, style: ListType) -> Table:
    """Every band: from what to what, by which conversion, how much leaves and how much arrives."""
    nodes = shown_nodes(flow)
    columns = (
        Column(_("from"), head=True),
        Column(_("to"), head=True),
        Column(_("by")),
        Column(_("leaves"), figure=True),
        Column(_("arrives"), figure=True),
    )
    rows: list[Row] = []
    for band in flow.bands:
        target = nodes[band.target]
        shape = Shape.DASH if target.kind is NodeKind.LEFT else None
        to = Cell((Run(target.name, style.plain),), shape, style.plain.size)
        figures = (cell(grams(binder, weight), style.strong) for weight in (band.leaves, band.arrives))
        rows.append((cell(nodes[band.source].name, style.plain), to, cell(band.name, style.plain), *figures))
    return table(columns, rows, style, _("The same in figures"))
