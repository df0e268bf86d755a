"""Binder: a recipe binder for food shoots."""

from __future__ import annotations

__version__ = "0.1.0"
