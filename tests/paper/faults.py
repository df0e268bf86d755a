"""The faults of printed pages, found by a reader that knows nothing of how they were laid out."""

from __future__ import annotations

from tests.paper.reader import outside, overlapping, read_pages

NO_PICTURE = "■\ufffd"


def faults_of(content: bytes, margin: float) -> list[str]:
    """Every fault of a printed document, by page; `margin` is points of white on every side."""
    found = []
    for number, page in enumerate(read_pages(content), start=1):
        found += [f"page {number}: {sign} leaves the page" for sign in outside(page, margin)]
        found += [f"page {number}: {one} over {other}" for one, other in overlapping(page)]
        found += [f"page {number}: an empty box" for sign in page.text if sign in NO_PICTURE]
    return found
