from __future__ import annotations

from binder.figures.claims import claim_findings
from binder.paper.print_set import SheetKind, sheet_bytes
from tests.paper.day_example import day_binder
from tests.paper.example import SHOOT
from tests.paper.reader import read_pages


def test_each_claim_has_a_page_with_its_sentence_its_sum_and_its_prices() -> None:
    pages = [page.words for page in read_pages(sheet_bytes(day_binder(), SHOOT, SheetKind.CLAIMS, "a4"))]
    findings = claim_findings(day_binder(), SHOOT)
    assert len(findings) == len(pages) == 4
    for one, words in zip(findings, pages, strict=True):
        assert f"“{one.says}”" in words
        assert one.verdict.value in words
        for row in one.rows:
            assert f"{row.text} {row.shown}" in words
        if one.total is not None:
            assert f"{one.total.text} {one.total.shown}" in words
        for level in one.levels:
            assert level.shown in words
        for note in one.notes:
            assert note in words


def test_a_sum_on_a_small_card_goes_on_and_says_of_which_claim_it_is() -> None:
    pages = read_pages(sheet_bytes(day_binder(), SHOOT, SheetKind.CLAIMS, "4x6"))
    assert len(pages) > 4
    for one in claim_findings(day_binder(), SHOOT):
        assert any(one.says in page.words for page in pages)
        for row in one.rows:
            assert any(f"{row.text}" in page.words and row.shown in page.words for page in pages)
