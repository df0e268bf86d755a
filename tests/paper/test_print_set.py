from __future__ import annotations

import errno
import os
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from io import BytesIO
from pathlib import Path

import pypdf
import pytest

from binder.kitchen.errors import BinderError
from binder.kitchen.food import Food
from binder.kitchen.shoot import Shoot
from binder.kitchen.whole_file import UnwritableFileError
from binder.paper.paper_size import PAPERS, UnfitMarginError, UnknownPaperError
from binder.paper.print_set import (
    PrintChoices,
    SheetKind,
    UnknownSheetError,
    UnknownShootError,
    finished_set,
    kinds_of,
    print_set,
    safe_name,
    sheet_bytes,
    sheet_title,
    usual_paper,
)
from binder.paper.sheet_kind import FILE_NAMES
from binder.paper.sheet_words import data_version
from tests.paper.day_example import day_binder, planned
from tests.paper.example import SHOOT, full_binder, hostile_binder, metric_binder
from tests.paper.reader import read_pages

FILES = {f"{name}.pdf" for name in FILE_NAMES.values()}


def test_the_whole_set_is_written_into_a_folder_that_is_made(tmp_path: Path) -> None:
    result = print_set(day_binder(), SHOOT, tmp_path / "print" / "set", choices=planned())
    assert {path.name for path in (tmp_path / "print" / "set").iterdir()} == FILES
    for file in result.files:
        pages = read_pages(file.path.read_bytes())
        assert len(pages) == file.pages
    assert result.pages == sum(file.pages for file in result.files)
    assert result.missing_glyphs == ()


def test_some_sheets_only_in_the_order_they_are_asked_for(tmp_path: Path) -> None:
    result = print_set(full_binder(), SHOOT, tmp_path, only=["mise", "cards", "mise"])
    assert [file.path.name for file in result.files] == ["mise-list.pdf", "station-cards.pdf"]
    assert len(list(tmp_path.iterdir())) == 2


@pytest.mark.parametrize("paper", list(PAPERS))
def test_pages_have_the_size_that_is_asked_for(paper: str) -> None:
    for page in read_pages(sheet_bytes(full_binder(), SHOOT, "shopping", paper)):
        assert (page.width, page.height) == pytest.approx(PAPERS[paper].points, abs=0.01)


def test_without_a_paper_cards_are_small_and_lists_large_by_the_binders_measures() -> None:
    cards = {SheetKind.CARDS, SheetKind.STATIONS}
    for kind in SheetKind:
        assert usual_paper(full_binder(), kind).key == ("half-letter" if kind in cards else "letter")
        assert usual_paper(metric_binder(), kind).key == ("a5" if kind in cards else "a4")


def test_a_binder_of_several_shoots_has_the_shoots_name_before_each_file(tmp_path: Path) -> None:
    binder = full_binder(Shoot(id="other", name="Épisode 5/6: <Finale>"))
    result = print_set(binder, "other", tmp_path, only=["base"])
    assert [file.path.name for file in result.files] == ["episode-5-6-finale-base.pdf"]
    assert safe_name("../../etc: x*?") == "etc-x"
    assert safe_name("豆") == ""


@pytest.mark.parametrize("kind", list(SheetKind))
def test_the_same_binder_gives_the_same_bytes(kind: SheetKind) -> None:
    assert sheet_bytes(full_binder(), SHOOT, kind) == sheet_bytes(full_binder(), SHOOT, kind)


def test_the_foot_has_the_date_of_the_data_binder_shoot_and_page_of_pages() -> None:
    pages = read_pages(sheet_bytes(full_binder(), SHOOT, "cards", data_of=date(2026, 11, 20)))
    for number, page in enumerate(pages, start=1):
        assert f"page {number} of {len(pages)}" in page.words
        for said in ("data of Nov 20, 2026", "shoot on Dec 3, 2026", "One bag of chickpeas", "Episode four"):
            assert said in page.words
    assert "prices up to Nov 2, 2026" in read_pages(sheet_bytes(full_binder(), SHOOT, "base"))[0].words


@pytest.mark.parametrize(
    ("problem", "says"),
    [
        (lambda folder: print_set(full_binder(), "none", folder), "The binder has no shoot “none”"),
        (
            lambda folder: print_set(full_binder(), SHOOT, folder, only=["posters"]),
            "No sheet is called “posters”. Choose",
        ),
        (lambda folder: print_set(full_binder(), SHOOT, folder, paper="a99"), "No paper is called “a99”. Choose a3"),
    ],
)
def test_what_is_not_known_is_refused_in_one_sentence_and_nothing_is_written(
    problem: Callable[[Path], object], says: str, tmp_path: Path
) -> None:
    with pytest.raises((UnknownShootError, UnknownSheetError, UnknownPaperError)) as refused:
        problem(tmp_path / "out")
    assert isinstance(refused.value, BinderError)
    assert says in refused.value.says
    assert not (tmp_path / "out").exists()


def test_a_file_in_the_place_of_the_folder_is_one_sentence(tmp_path: Path) -> None:
    (tmp_path / "out").write_text("not a folder")
    with pytest.raises(UnwritableFileError, match="“out” cannot be written: "):
        print_set(full_binder(), SHOOT, tmp_path / "out")
    assert (tmp_path / "out").read_text() == "not a folder"


def test_a_full_disk_leaves_the_old_file_and_nothing_half_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "costs.pdf").write_bytes(b"the old costs")

    def full(_handle: int) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr("os.fsync", full)
    with pytest.raises(UnwritableFileError, match=r"“costs\.pdf” cannot be written: the disk is full"):
        print_set(full_binder(), SHOOT, tmp_path, only=["costs"])
    assert [(path.name, path.read_bytes()) for path in tmp_path.iterdir()] == [("costs.pdf", b"the old costs")]


def test_a_hostile_binder_writes_its_set_and_tells_what_no_face_has(tmp_path: Path) -> None:
    result = print_set(hostile_binder(), SHOOT, tmp_path, only=["shopping", "base"])
    assert "\ue000" in result.missing_glyphs
    assert all(path.name in FILES for path in tmp_path.iterdir())


def test_a_file_that_is_open_elsewhere_is_one_sentence_and_stays_as_it_was(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "costs.pdf").write_bytes(b"the old costs")

    def taken(_source: object, _target: object) -> None:
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES))

    monkeypatch.setattr("os.replace", taken)
    with pytest.raises(UnwritableFileError, match=r"“costs\.pdf” cannot be written: ") as refused:
        print_set(full_binder(), SHOOT, tmp_path, only=["costs"])
    assert "\n" not in refused.value.says
    assert [(path.name, path.read_bytes()) for path in tmp_path.iterdir()] == [("costs.pdf", b"the old costs")]


def test_all_is_laid_out_before_the_first_file_is_written(tmp_path: Path) -> None:
    with pytest.raises(UnfitMarginError):
        print_set(full_binder(), SHOOT, tmp_path / "out", paper="4x6", choices=PrintChoices(margin=30))
    assert not (tmp_path / "out").exists()


def test_one_file_has_every_sheet_with_an_outline_of_sheets_and_pages_counted_through() -> None:
    (sheet,) = finished_set(day_binder(), [SHOOT], choices=replace(planned(), together=True))
    reader = pypdf.PdfReader(BytesIO(sheet.printed.content))
    titles = [entry.title for entry in reader.outline if not isinstance(entry, list)]
    assert titles == [sheet_title(kind) for kind in kinds_of(day_binder(), SHOOT)]
    for number, page in enumerate(read_pages(sheet.printed.content), start=1):
        if "version" in page.words:  # sheets of labels have no foot
            assert f"page {number} of {len(reader.pages)}" in page.words


def test_several_shoots_in_one_file_say_which_is_which() -> None:
    other: Shoot = full_binder().shoots[SHOOT]
    binder = full_binder(replace(other, id="two", name="Second day"))
    (sheet,) = finished_set(binder, [SHOOT, "two"], only=["shopping"], choices=PrintChoices(together=True))
    reader = pypdf.PdfReader(BytesIO(sheet.printed.content))
    titles = [entry.title for entry in reader.outline if not isinstance(entry, list)]
    assert titles == ["Shopping list · Episode four", "Shopping list · Second day"]


def test_a_version_of_the_data_is_another_as_soon_as_anything_is() -> None:
    assert data_version(full_binder()) == data_version(full_binder())
    oil: Food = full_binder().foods["oil"]
    assert data_version(full_binder()) != data_version(full_binder(replace(oil, density=0.92)))
    assert f"version {data_version(full_binder())}" in read_pages(sheet_bytes(full_binder(), SHOOT, "base"))[0].words
