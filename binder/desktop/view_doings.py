"""What the View, Binder, Tools and Help menus do."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.theme import Appearance
from binder.figures.missing import Place
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable

    from binder.desktop.appearance import Wardrobe
    from binder.desktop.main_window import MainWindow
    from binder.desktop.sheet_window import SheetWindow

_BEGINS = {
    "add_shoot": ("shoot", "shoot"),
    "add_dish": ("shoot", "dish"),
    "add_build": ("shoot", "build"),
    "add_proposed": ("shoot", "proposed builds"),
    "add_recipe": ("dishes", "recipe"),
    "add_step": ("dishes", "step"),
    "add_line": ("dishes", "line"),
    "add_food": ("larder", "food"),
    "import_prices": ("larder", "prices"),
    "add_form": ("base", "form"),
    "add_conversion": ("base", "conversion"),
    "record_trial": ("base", "trial"),
    "add_person": ("day", "person"),
    "add_appliance": ("day", "appliance"),
    "add_event": ("day", "event"),
    "export_shopping": ("buying", "list file"),
    "export_calendar": ("day", "calendar"),
    "add_budget_line": ("money", "budget line"),
    "add_claim": ("money", "claim"),
}
"""Where each kind of record is begun: the page, and what it is asked to begin."""


class ViewDoings:
    """Handlers that show something."""

    def __init__(self, window: MainWindow, wardrobe: Wardrobe) -> None:
        self._window, self._wardrobe = window, wardrobe

    def handlers(self) -> dict[str, Callable[[], object]]:
        """What each action does, by its id."""
        return {
            **{key: self._beginner(page, kind) for key, (page, kind) in _BEGINS.items()},
            "find": self.find,
            "find_next": self._window.head.finder.go_next,
            "checks": self.toggle_checks,
            "light": self._wearer(Appearance.LIGHT),
            "dark": self._wearer(Appearance.DARK),
            "system": self._wearer(Appearance.SYSTEM),
            "larger": self._sizer(1),
            "smaller": self._sizer(-1),
            "usual": self._sizer(0),
            "full_screen": self.full_screen,
            "on_set": self.on_set,
            "open_recipe": self.open_recipe,
            "palette": self.find_action,
            "next_check": self.next_check,
            "binder_settings": self.binder_settings,
            "print": self.print_cards,
            "help": self.help,
            "about": self.about,
        }

    def _beginner(self, page: str, kind: str) -> Callable[[], None]:
        def begin() -> None:
            self._window.begin(page, kind)

        return begin

    def _wearer(self, appearance: Appearance) -> Callable[[], None]:
        def wear() -> None:
            self._wardrobe.choose(appearance)
            self.follow()

        return wear

    def _sizer(self, by: int) -> Callable[[], None]:
        def resize() -> None:
            self._wardrobe.resize_text(by)

        return resize

    def page_opener(self, key: str) -> Callable[[], None]:
        """What shows a page and gives it the keyboard."""

        def open_page() -> None:
            self._window.show_page(key)
            self._window.focus_page()

        return open_page

    def follow(self) -> None:
        """Tick what is on."""
        actions = self._window.actions_
        actions["checks"].setChecked(not self._window.checks.is_folded)
        actions[self._window.desk.settings.appearance.value].setChecked(True)
        actions["full_screen"].setChecked(self._window.isFullScreen())

    def find(self) -> None:
        """Take the keyboard to the field that finds anything."""
        self._window.head.finder.setFocus()
        self._window.head.finder.selectAll()

    def toggle_checks(self) -> None:
        """Show the checks or fold them away."""
        self.fold_checks(folded=not self._window.checks.is_folded)

    def fold_checks(self, folded: bool) -> None:  # noqa: FBT001 - a signal gives it so
        """Fold the checks away, or out."""
        self._window.desk.settings.checks_folded = folded
        self._window.checks.set_folded(folded=folded)
        self.follow()

    def full_screen(self) -> None:
        """The whole screen, or a window again."""
        window = self._window
        window.showNormal() if window.isFullScreen() else window.showFullScreen()
        self.follow()

    def on_set(self) -> None:
        """The day as large as the screen."""
        from binder.desktop.set_view.opening import open_on_set

        open_on_set(self._window.desk, self._window)

    def open_recipe(self) -> None:
        """Go to the recipe of the dish chosen."""
        dish = self._window.page(self._window.shown).current_dish()
        if dish is not None:
            self._window.go_to(Place("recipes", self._window.desk.binder.dishes[dish].recipe))

    def next_check(self) -> None:
        """Go to where the next check leads."""
        self._window.checks.next_check()

    def find_action(self) -> None:
        """List every action and place."""
        from binder.desktop.action_finder import ActionFinder

        self._window.actions_.follow(self._window.available)
        finder = ActionFinder(self._window.actions_, self._window.desk, self._window)
        finder.open()

    def binder_settings(self) -> None:
        """Edit the binder's own settings."""
        self.settings_window().open()

    def settings_window(self) -> SheetWindow:
        """The window of the binder's settings, the one that is open where one is; undo and redo work in it too."""
        from binder.desktop.settings_sheet import SettingsSheet
        from binder.desktop.sheet_window import SheetWindow

        open_one = next((one for one in self._window.findChildren(SheetWindow) if one.isVisible()), None)
        if isinstance(open_one, SheetWindow):
            return open_one
        made = SheetWindow(SettingsSheet(), self._window.desk, self._window)
        made.addActions([self._window.actions_["undo"], self._window.actions_["redo"]])
        return made

    def print_cards(self) -> None:
        """Show the cards and print them."""
        self._window.begin("cards", "print")

    def help(self) -> None:
        """How to use the binder."""
        from binder.desktop.help_window import TextWindow, help_html

        TextWindow(_("How to use the binder"), help_html(self._window.actions_), self._window).show()

    def about(self) -> None:
        """What this is."""
        from importlib.metadata import PackageNotFoundError, version

        from binder.desktop.help_window import TextWindow

        try:
            shown = version("shoot-recipe-binder")
        except PackageNotFoundError:
            shown = ""
        says = _("From a recipe to a printed shoot: costs, shopping, mise and station cards from one set of figures.")
        title = _("About Binder")
        TextWindow(title, f"<h2>Binder {shown}</h2><p>{says}</p>", self._window, lines=9.0).show()
