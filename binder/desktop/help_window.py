"""How to use the binder: a few sentences, and every key, from the declared actions."""

from __future__ import annotations

from html import escape
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QDialog, QTextBrowser, QVBoxLayout, QWidget

from binder.desktop.actions import Menu, menu_title, without_access_key
from binder.desktop.spacing import characters, space
from binder.kitchen.reference import deference
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.action_set import ActionSet


def help_html(actions: ActionSet) -> str:
    """The help as rich text."""
    said = "".join(f"<p>{escape(sentence)}</p>" for sentence in _sentences())
    return f"<h2>{escape(_('How to use the binder'))}</h2>{said}{_keys(actions)}"


def _sentences() -> tuple[str, ...]:
    return (
        _("Each divider at the left leads to a page. What is data is edited where it stands: type, or press Enter."),
        _("A line of a recipe is typed whole: 1 1/2 cups chopped onion. Under it you see what was understood."),
        _("Every edit is kept at once and can be undone, also tomorrow. There is nothing to save."),
        _("The checks at the right say what needs you. A click leads to the place."),
        _("Allergens, temperatures and prices are yours to confirm.") + " " + deference(),
    )


def _keys(actions: ActionSet) -> str:
    parts = []
    for menu in Menu:
        rows = []
        for declared in actions.declared():
            keys = actions[declared.id].shortcuts()
            if declared.menu is menu and keys:
                shown = keys[0].toString(QKeySequence.SequenceFormat.NativeText)
                title = without_access_key(declared.title).rstrip(".")
                rows.append(f"<tr><td>{escape(shown)}&nbsp;&nbsp;&nbsp;</td><td>{escape(title)}</td></tr>")
        if rows:
            parts.append(f"<h3>{escape(without_access_key(menu_title(menu)))}</h3><table>{''.join(rows)}</table>")
    return "".join(parts)


class TextWindow(QDialog):
    """A window with text to read. It does not stand in the way of the other."""

    def __init__(self, title: str, html: str, parent: QWidget, *, lines: float = 30.0) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(title)
        self.text = QTextBrowser(self)
        self.text.setAccessibleName(title)
        self.text.setHtml(html)
        self.text.document().setDocumentMargin(space(self, 4))
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self.text)
        self.resize(characters(self.font(), 78), space(self, 4.5 * lines))
