"""The one place that knows where files of the program and of the user lie."""

from __future__ import annotations

from pathlib import Path

import binder

_PACKAGE = Path(binder.__file__).resolve().parent


def _shipped(name: str) -> Path:
    """A folder that the wheel carries inside the package and a checkout has beside it."""
    inside = _PACKAGE / name
    return inside if inside.is_dir() else _PACKAGE.parent / name


def resources_folder() -> Path:
    """Reference tables, JSON Schema, icons and catalogues that the program ships."""
    return _shipped("resources")


def larder_folder() -> Path:
    """Foods and measures with their sources, as CSV."""
    return resources_folder() / "larder"


def reference_folder() -> Path:
    """Units, allergens, safe temperatures and cautions with their sources, as CSV."""
    return resources_folder() / "reference"


def catalogue_folder() -> Path:
    """Gettext catalogues, one folder a language."""
    return resources_folder() / "languages"


def samples_folder() -> Path:
    """The sample binders, as JSON documents."""
    return _shipped("sample_binders")


def user_settings_folder() -> Path:
    """Where the program remembers window shape and recent binders."""
    import platformdirs

    return Path(platformdirs.user_config_dir("Binder", appauthor=False))


def user_documents_folder() -> Path:
    """Where a new binder is proposed to be kept."""
    import platformdirs

    return Path(platformdirs.user_documents_dir())
