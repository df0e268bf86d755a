"""The files themselves: well-formed by another program's check, tagged in reading order, and without any colour."""

from __future__ import annotations

import shutil
import subprocess
from io import BytesIO
from pathlib import Path
from typing import Any

import pypdf
import pypdfium2 as pdfium
import pytest

from binder.paper.paper_size import paper_called
from binder.paper.print_choices import Backs, Look, PrintChoices
from binder.paper.print_set import SheetKind, finished_set, sheet_bytes
from tests.paper.day_example import day_binder, planned
from tests.paper.example import SHOOT, hostile_binder
from tests.paper.reader import read_pages

ALL_IN_ONE = PrintChoices(together=True, plans=planned().plans)
QPDF = shutil.which("qpdf")


def _whole_set(choices: PrintChoices = ALL_IN_ONE, paper: str = "a4") -> bytes:
    (sheet,) = finished_set(day_binder(), [SHOOT], paper=paper, choices=choices)
    return sheet.printed.content


def _checked(content: bytes, folder: Path) -> subprocess.CompletedProcess[str]:
    file = folder / "set.pdf"
    file.write_bytes(content)
    return subprocess.run([str(QPDF), "--check", str(file)], capture_output=True, text=True, check=False)


@pytest.mark.skipif(QPDF is None, reason="qpdf is not installed")
def test_another_program_finds_the_whole_set_well_formed(tmp_path: Path) -> None:
    imposed = PrintChoices(together=True, sheet="a4", backs=Backs.LONG_EDGE, look=Look.ON_CAMERA)
    for content in (_whole_set(), _whole_set(imposed, "a6")):
        done = _checked(content, tmp_path)
        assert done.returncode == 0, done.stdout + done.stderr
        assert "No syntax or stream encoding errors found" in done.stdout


@pytest.mark.skipif(QPDF is None, reason="qpdf is not installed")
def test_a_hostile_binder_is_well_formed_too(tmp_path: Path) -> None:
    done = _checked(sheet_bytes(hostile_binder(), SHOOT, SheetKind.SHOPPING), tmp_path)
    assert done.returncode == 0, done.stdout + done.stderr


def _elements(node: Any) -> list[Any]:  # noqa: ANN401 - pypdf's objects
    """An element and all in it, in the order of the tree."""
    found = [node]
    for kid in node.get("/K", []):
        within = kid.get_object()
        if isinstance(within, pypdf.generic.DictionaryObject):
            found += _elements(within)
    return found


@pytest.mark.parametrize("kind", list(SheetKind))
def test_all_text_is_tagged_once_and_in_the_order_it_is_read(kind: SheetKind) -> None:
    reader = pypdf.PdfReader(BytesIO(sheet_bytes(day_binder(), SHOOT, kind, choices=planned())))
    catalog: Any = reader.root_object
    assert catalog["/MarkInfo"]["/Marked"].value is True
    elements = _elements(catalog["/StructTreeRoot"]["/K"].get_object())
    assert elements[0]["/S"] == "/Document"
    by_page: dict[int, list[int]] = {}
    for element in elements:
        numbers = [int(kid) for kid in element.get("/K", []) if isinstance(kid, int)]
        if numbers:
            on = reader.get_page_number(element["/Pg"].get_object())
            by_page.setdefault(on or 0, []).extend(numbers)
    for at, page in enumerate(reader.pages):
        marked = page.get_contents().get_data().count(b"/MCID ")  # type: ignore[union-attr]
        assert by_page.get(at, []) == list(range(marked)), "each piece of text in one element, as it was drawn"


def _roles(kind: SheetKind) -> list[Any]:
    reader = pypdf.PdfReader(BytesIO(sheet_bytes(day_binder(), SHOOT, kind, "a4", choices=planned())))
    catalog: Any = reader.root_object
    return _elements(catalog["/StructTreeRoot"]["/K"].get_object())


def test_a_card_has_a_heading_for_its_dish_and_one_for_each_step() -> None:
    roles = [element["/S"] for element in _roles(SheetKind.CARDS)]
    assert roles.count("/H1") == 3, "two dishes and a paste"
    titled = sum(1 for step in day_binder().steps.values() if step.title)
    assert roles.count("/H2") >= titled


def test_head_cells_say_that_they_head_a_column() -> None:
    heads = [element for element in _roles(SheetKind.BUDGET) if element["/S"] == "/TH"]
    assert heads
    assert all(head["/A"]["/Scope"] == "/Column" for head in heads)


def test_lists_have_a_heading_tables_rows_and_cells() -> None:
    for kind in (SheetKind.SHOPPING, SheetKind.MISE, SheetKind.BUDGET, SheetKind.EQUIPMENT):
        roles = [element["/S"] for element in _roles(kind)]
        assert roles.count("/H1") == 1
        assert {"/Table", "/TR", "/TH", "/TD"} <= set(roles)


@pytest.mark.parametrize("look", list(Look))
def test_every_page_is_without_colour_and_white_at_its_edges(look: Look) -> None:
    choices = PrintChoices(together=True, look=look, plans=planned().plans)
    content, margin = _whole_set(choices), paper_called("a4").margin
    document = pdfium.PdfDocument(content)
    for at, read in enumerate(read_pages(content)):
        picture = document[at].render(scale=1.0).to_pil()
        red, green, blue = picture.convert("RGB").split()
        assert red.tobytes() == green.tobytes() == blue.tobytes(), "no colour"
        labels = not any("page" in word for word in read.words.split())
        if not labels:
            inked = picture.convert("L").point(lambda grey: 255 if grey < 250 else 0).getbbox()
            assert inked is not None
            assert min(inked[0], inked[1]) >= margin - 2
            assert max(inked[2] - picture.width, inked[3] - picture.height) <= 2 - margin
    document.close()


def test_text_is_black_or_white_and_never_grey() -> None:
    reader = pypdf.PdfReader(BytesIO(_whole_set()))
    for page in reader.pages:
        operators = pypdf.generic.ContentStream(page.get_contents(), reader).operations
        grey = 0.0
        for operands, operator in operators:
            if operator == b"g":
                grey = float(operands[0])
            elif operator in {b"Tj", b"TJ"}:
                assert grey in {0.0, 1.0}
