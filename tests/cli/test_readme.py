"""The README against the commands there are."""

from __future__ import annotations

import re

from typer.main import get_command

from binder.cli.main import app
from binder.kitchen.paths import samples_folder


def test_the_readme_tells_of_every_command_and_of_no_other() -> None:
    readme = (samples_folder().parent / "README.md").read_text(encoding="utf-8")
    told = set(re.findall(r"`binder ([a-z]+)", readme))
    command = get_command(app)
    assert told == set(command.commands)  # type: ignore[attr-defined]  # a group has them
