"""How standard widgets look: flat, one-pixel lines, radius four. What shows data is painted by our delegates."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.kitchen.paths import resources_folder

if TYPE_CHECKING:
    from binder.desktop.theme import Tokens

_SHEET = """
QToolTip {{ background: {raised}; color: {ink}; border: 1px solid {edge}; padding: 0.3em; }}
QMenuBar {{ background: {ground}; border: none; }}
QMenuBar::item {{ padding: 0.25em 0.6em; background: transparent; }}
QMenuBar::item:selected {{ background: {tint}; color: {ink}; }}
QMenu {{ background: {raised}; border: 1px solid {line}; padding: 0.3em 0; }}
QMenu::item {{ padding: 0.3em 2.2em 0.3em 2em; }}
QMenu::item:selected {{ background: {tint}; color: {ink}; }}
QMenu::indicator {{ width: 1em; height: 1em; left: 0.5em; }}
QMenu::indicator:checked {{ image: url({icons}/tick-{name}.svg); }}
QMenu::item:disabled {{ color: {edge}; }}
QMenu::separator {{ height: 1px; background: {line}; margin: 0.3em 0; }}
QPushButton {{ background: {raised}; color: {ink}; border: 1px solid {edge}; border-radius: 4px; }}
QPushButton {{ padding: 0.3em 0.9em; min-height: 1.1em; }}
QPushButton:hover {{ background: {tint}; }}
QPushButton:focus {{ border: 2px solid {accent}; padding: 0.24em 0.84em; }}
QPushButton:disabled {{ color: {edge}; border-color: {line}; }}
QPushButton[leading="true"] {{ background: {accent}; color: {on_accent}; border-color: {accent}; }}
QPushButton[leading="true"]:disabled {{ background: {raised}; color: {edge}; border-color: {line}; }}
QPushButton[leading="true"]:focus {{ border: 2px solid {ink}; }}
QToolButton {{ background: transparent; color: {ink}; border: 1px solid transparent; border-radius: 4px; }}
QToolButton {{ padding: 0.2em 0.5em; }}
QToolButton:hover {{ background: {tint}; }}
QToolButton:focus {{ border: 1px solid {accent}; }}
QToolButton::menu-indicator {{ image: none; }}
QLineEdit, QPlainTextEdit {{ background: {raised}; color: {ink}; border: 1px solid {edge}; border-radius: 4px; }}
QLineEdit, QPlainTextEdit {{ padding: 0.15em 0.4em; }}
QLineEdit, QPlainTextEdit {{ selection-background-color: {accent}; selection-color: {on_accent}; }}
QLineEdit:focus, QPlainTextEdit:focus {{ border: 1px solid {accent}; }}
QCheckBox {{ min-height: 1.6em; spacing: 0.4em; }}
QCheckBox::indicator {{ width: 0.95em; height: 0.95em; border: 1px solid {edge}; border-radius: 3px; }}
QCheckBox::indicator {{ background: {raised}; }}
QCheckBox::indicator:checked {{ background: {accent}; border-color: {accent}; }}
QCheckBox::indicator:checked {{ image: url({icons}/check-{name}.svg); }}
QCheckBox:focus {{ color: {accent}; }}
QComboBox {{ background: {raised}; color: {ink}; border: 1px solid {edge}; border-radius: 4px; padding: 0.2em 0.6em; }}
QComboBox::drop-down {{ border: none; width: 1.6em; }}
QComboBox::down-arrow {{ image: url({icons}/chevron-{name}.svg); width: 0.8em; height: 0.8em; }}
QComboBox:focus {{ border: 1px solid {accent}; }}
QListWidget::item {{ padding: 0.12em 0.2em; }}
QListWidget::item:selected {{ background: {accent}; color: {on_accent}; }}
QTableView, QListView {{ background: {raised}; border: none; outline: none; }}
QTableView[lies="ground"] {{ background: {ground}; }}
QHeaderView {{ background: {raised}; border: none; }}
QScrollBar:vertical {{ background: transparent; width: 0.65em; margin: 0; }}
QScrollBar:horizontal {{ background: transparent; height: 0.65em; margin: 0; }}
QScrollBar::handle {{ background: {line}; border-radius: 3px; min-height: 2em; min-width: 2em; margin: 1px; }}
QScrollBar::handle:hover {{ background: {edge}; }}
QScrollBar::add-line, QScrollBar::sub-line {{ width: 0; height: 0; }}
QScrollBar::add-page, QScrollBar::sub-page {{ background: transparent; }}
QAbstractScrollArea::corner {{ background: transparent; }}
QSplitter::handle {{ background: transparent; }}
QWidget#paper {{ background: {raised}; }}
QScrollArea {{ border: none; background: transparent; }}
QLabel[quiet="true"] {{ color: {quiet}; }}
QTextBrowser {{ border: none; background: {raised}; }}
"""


def style_sheet(tokens: Tokens) -> str:
    """The style sheet of the application in these colours."""
    icons = (resources_folder() / "icons").as_posix()
    return _SHEET.format(icons=icons, **{name: getattr(tokens, name) for name in tokens.__dataclass_fields__})
