"""Everything that can be done, declared once: menus, shortcuts, action finder and list of keys come from here."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from binder.kitchen.wording import _


class Menu(StrEnum):
    """The menus from left to right."""

    FILE = "&File"
    EDIT = "&Edit"
    VIEW = "&View"
    BINDER = "&Binder"
    TOOLS = "&Tools"
    HELP = "&Help"


class Needs(StrEnum):
    """What must be the case for an action to be of use; each has a sentence for where it is not."""

    NOTHING = "nothing"
    UNDO = "undo"
    REDO = "redo"
    TEXT_OR_ROW = "text or row"
    ROW = "row"
    SHOOT = "shoot"
    RECIPE = "recipe"
    DISH = "dish"
    CHECK = "check"
    BACKUPS = "backups"
    FOUND = "found"


@dataclass(frozen=True)
class Action:
    """One thing to do. `keys` name a standard shortcut first where there is one (`Undo`), else the keys themselves.

    `also` are keys that do the same everywhere.
    `group` parts a menu by lines; `choice` names a set of which one is chosen; `ticks` marks one that is on or off.
    """

    id: str
    title: str
    menu: Menu
    group: int
    keys: tuple[str, ...] = ()
    needs: Needs = Needs.NOTHING
    choice: str = ""
    ticks: bool = False
    says: str = ""
    also: tuple[str, ...] = ()


def every_action() -> tuple[Action, ...]:
    """All actions in the order of the menus."""
    return (*_file(), *_edit(), *_view(), *_binder(), *_tools(), *_help())


def _file() -> tuple[Action, ...]:
    file = Menu.FILE
    return (
        Action("new", _("&New binder..."), file, 0, ("New", "Ctrl+N")),
        Action("open", _("&Open..."), file, 0, ("Open", "Ctrl+O")),
        Action("open_damaged", _("Open a &damaged binder..."), file, 0),
        Action("copy_binder", _("&Save a copy as..."), file, 2, ("Ctrl+Shift+S",)),
        Action("go_back", _("&Go back to how it was opened"), file, 2),
        Action("backups", _("Bac&kups..."), file, 2, needs=Needs.BACKUPS),
        Action("import_prices", _("&Import prices..."), file, 3),
        Action("export_json", _("&Export JSON..."), file, 3),
        Action("export_shopping", _("Export the shopping &list..."), file, 3, needs=Needs.SHOOT),
        Action("export_calendar", _("Export the &calendar..."), file, 3, needs=Needs.SHOOT),
        Action("print", _("&Print..."), file, 4, ("Print", "Ctrl+P"), Needs.SHOOT),
        Action("quit", _("&Quit"), file, 6, ("Quit", "Ctrl+Q")),
    )


def _edit() -> tuple[Action, ...]:
    edit = Menu.EDIT
    return (
        Action("undo", _("&Undo"), edit, 0, ("Undo", "Ctrl+Z"), Needs.UNDO),
        Action("redo", _("&Redo"), edit, 0, ("Redo", "Ctrl+Shift+Z"), Needs.REDO, also=("Ctrl+Y",)),
        Action("cut", _("Cu&t"), edit, 1, ("Cut", "Ctrl+X"), Needs.TEXT_OR_ROW),
        Action("copy", _("&Copy"), edit, 1, ("Copy", "Ctrl+C"), Needs.TEXT_OR_ROW),
        Action("paste", _("&Paste"), edit, 1, ("Paste", "Ctrl+V"), Needs.TEXT_OR_ROW),
        Action("select_all", _("Select &all"), edit, 2, ("SelectAll", "Ctrl+A"), Needs.TEXT_OR_ROW),
        Action("delete", _("&Delete"), edit, 3, ("Delete", "Del"), Needs.ROW),
        Action("find", _("&Find..."), edit, 4, ("Find", "Ctrl+F")),
        Action("find_next", _("Find &next"), edit, 4, ("FindNext", "F3"), Needs.FOUND),
    )


def _view() -> tuple[Action, ...]:
    view = Menu.VIEW
    return (
        Action("checks", _("C&hecks"), view, 1, ("F9",), ticks=True, says=_("Show or fold away the checks")),
        Action("light", _("&Light"), view, 2, choice="appearance"),
        Action("dark", _("Dar&k"), view, 2, choice="appearance"),
        Action("system", _("As the sys&tem"), view, 2, choice="appearance"),
        Action("larger", _("La&rger text"), view, 3, ("ZoomIn", "Ctrl++")),
        Action("smaller", _("S&maller text"), view, 3, ("ZoomOut", "Ctrl+-")),
        Action("usual", _("&Usual text size"), view, 3, ("Ctrl+0",)),
        Action("full_screen", _("&Full screen"), view, 4, ("F11",), ticks=True),
        Action("on_set", _("&On the set"), view, 4, ("Shift+F11",), Needs.SHOOT),
    )


def _binder() -> tuple[Action, ...]:
    binder = Menu.BINDER
    return (
        Action("add_shoot", _("Add a s&hoot"), binder, 0),
        Action("add_dish", _("Add a &dish"), binder, 0, ("Ctrl+Shift+D",), Needs.SHOOT),
        Action("add_build", _("Add a &build"), binder, 0, ("Ctrl+Shift+B",), Needs.DISH),
        Action("add_proposed", _("Add the &proposed builds"), binder, 0, needs=Needs.DISH),
        Action("add_recipe", _("Add a &recipe"), binder, 1, ("Ctrl+Shift+R",)),
        Action("add_step", _("Add a &step"), binder, 1, ("Ctrl+Shift+T",), Needs.RECIPE),
        Action("add_line", _("Add a &line"), binder, 1, ("Ctrl+Shift+L",), Needs.RECIPE),
        Action("add_food", _("Add a &food"), binder, 2, ("Ctrl+Shift+F",)),
        Action("add_form", _("Add a for&m of the base"), binder, 2, needs=Needs.SHOOT),
        Action("add_conversion", _("Add a &conversion"), binder, 2, needs=Needs.SHOOT),
        Action("record_trial", _("Record a &trial"), binder, 2, needs=Needs.SHOOT),
        Action("add_person", _("Add som&eone to the crew"), binder, 2, needs=Needs.SHOOT),
        Action("add_appliance", _("Add an appl&iance or a tool"), binder, 2, needs=Needs.SHOOT),
        Action("add_event", _("Add what is at a fi&xed time"), binder, 2, needs=Needs.SHOOT),
        Action("add_budget_line", _("Add to the bud&get"), binder, 2, needs=Needs.SHOOT),
        Action("add_claim", _("Add a cl&aim"), binder, 2, needs=Needs.SHOOT),
        Action("open_recipe", _("&Open the recipe of this dish"), binder, 3, ("Ctrl+Return",), Needs.DISH),
        Action("move_up", _("Move &up"), binder, 4, ("Ctrl+Shift+Up",), Needs.ROW),
        Action("move_down", _("Move do&wn"), binder, 4, ("Ctrl+Shift+Down",), Needs.ROW),
    )


def _tools() -> tuple[Action, ...]:
    tools = Menu.TOOLS
    return (
        Action("palette", _("Find an action or a &place..."), tools, 0, ("Ctrl+Shift+P",)),
        Action("next_check", _("&Next check"), tools, 0, ("F8",), Needs.CHECK),
        Action("binder_settings", _("&Settings of this binder..."), tools, 1, ("Preferences", "Ctrl+,")),
    )


def _help() -> tuple[Action, ...]:
    return (
        Action("help", _("&How to use the binder"), Menu.HELP, 0, ("HelpContents", "F1")),
        Action("about", _("&About Binder"), Menu.HELP, 1),
    )


def menu_title(menu: Menu) -> str:
    """A menu's title with its access key."""
    return {
        Menu.FILE: _("&File"),
        Menu.EDIT: _("&Edit"),
        Menu.VIEW: _("&View"),
        Menu.BINDER: _("&Binder"),
        Menu.TOOLS: _("&Tools"),
        Menu.HELP: _("&Help"),
    }[menu]


def reason(needs: Needs) -> str:
    """Why an action that needs something cannot be used now."""
    return {
        Needs.NOTHING: "",
        Needs.UNDO: _("Nothing has been changed yet."),
        Needs.REDO: _("Nothing has been undone."),
        Needs.TEXT_OR_ROW: _("Choose a row or a text first."),
        Needs.ROW: _("Choose a row first."),
        Needs.SHOOT: _("Add a shoot first."),
        Needs.RECIPE: _("Add a recipe first."),
        Needs.DISH: _("Choose a dish on the page of the shoot first."),
        Needs.CHECK: _("No check needs you."),
        Needs.BACKUPS: _("A binder has backups once it is kept in a file."),
        Needs.FOUND: _("Find something first."),
    }[needs]


def without_access_key(title: str) -> str:
    """A title as it reads, without the mark of its access key."""
    return title.replace("&&", "\0").replace("&", "").replace("\0", "&")
