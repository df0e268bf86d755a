from __future__ import annotations

from pathlib import Path

import pytest
from reportlab.pdfbase import pdfmetrics

from binder.paper import spare_face as module
from binder.paper.spare_face import spare_face


def test_a_spare_face_really_has_the_sign() -> None:
    for sign in "אب豆☕":
        name = spare_face(ord(sign))
        assert name is None or pdfmetrics.getFont(name).face.charToGlyph[ord(sign)]  # type: ignore[attr-defined]


def test_no_face_is_made_up_for_a_sign_of_no_script() -> None:
    assert spare_face(0xE000) is None


def test_a_damaged_font_file_is_passed_over(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    broken = tmp_path / "Broken.ttf"
    broken.write_bytes(b"\x00\x01\x00\x00 this is no font")
    monkeypatch.setattr(module, "_font_files", lambda: {"broken.ttf": broken})
    assert module._installed.__wrapped__("Broken.ttf") is None
