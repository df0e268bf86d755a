"""What is seen: the window and its pages. Widgets hold no rules; presenters are plain Python."""

from __future__ import annotations

from binder.desktop.lasting_constants import keep_constants

keep_constants()
