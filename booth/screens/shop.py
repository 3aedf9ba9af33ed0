"""The shop on a screen: guns, flow cups, compressor, room. Each change is on disk when it is said."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Horizontal, VerticalScroll
from textual.content import Content
from textual.widgets import OptionList, Static
from textual.widgets.option_list import Option

from booth.files.faults import Fault
from booth.screens.base import OwnScreen
from booth.screens.keyline import key_line
from booth.screens.sheet import Sheet
from booth.screens.shop_form import ShopForm
from booth.screens.shop_forms import (
    COMPRESSOR,
    CUP,
    GUN,
    Item,
    is_there,
    items,
    lines,
    title,
    without_item,
)
from booth.shop.model import Shop
from booth.shop.read import read_shop
from booth.shop.save import ShopNotSaved, save_shop
from booth.units import System
from booth.widgets.quiet_line import put
from booth.widgets.text import content

HEADINGS = {GUN: "Guns", CUP: "Flow cups", COMPRESSOR: "Air", "room": "Room"}
HELP = (
    "Guns, flow cups, compressor and room are used all over the program: which gun a job is sprayed "
    "with, which cups come first and their correction, how long the trigger can be held, what the "
    "exhaust moves.",
    "Enter changes or adds. Backspace twice removes. Every change is written at once; what stood in "
    "the file before you opened this screen is kept beside it.",
)


class ShopScreen(OwnScreen[None]):
    """The list of what the shop has, and what is known of each."""

    BINDINGS = [
        Binding("escape,f9", "leave", "back", show=False),
        Binding("backspace,delete", "remove", "remove", show=False),
        Binding("question_mark,f1", "help", "help", show=False),
    ]
    AUTO_FOCUS = "OptionList"
    HORIZONTAL_BREAKPOINTS = [(0, "-narrow"), (90, "-wide")]

    def __init__(self) -> None:
        super().__init__(id="shop")
        self.shop = Shop()
        self.faults: tuple[Fault, ...] = ()
        self.items: dict[str, Item] = {}
        self._own = ""
        self._removing: Item | None = None

    def compose(self) -> ComposeResult:
        yield Static("Shop", id="name", markup=False)
        with Horizontal(id="shelf"):
            yield OptionList(id="rows")
            with VerticalScroll(id="about", can_focus=False):
                yield Static("", id="about-text", markup=False)
        yield Static("", id="say", markup=False)
        yield Static("", id="keys", markup=False)

    def on_mount(self) -> None:
        found = read_shop(self.app.places.shop_file)
        self.shop, self.faults = found.shop, found.faults
        self._put()

    def _put(self, onto: Item | None = None) -> None:
        """Put the rows on the list, the highlight on `onto`."""
        shown = self.query_one(OptionList)
        shown.clear_options()
        if self.faults:
            count = len(self.faults)
            said = f"! shop.toml  {count} fault{'s' if count != 1 else ''}"
            shown.add_option(Option(content(said), id="faults"))
            shown.highlighted = 0
            return self.draw()
        self.items = {item.id: item for item in items(self.shop)}
        options: list[Option | None] = []
        section = ""
        for item in self.items.values():
            if item.what != section:
                options += [None] if section else []
                section = item.what
                heading = Content.assemble((HEADINGS[section], "bold dim"))
                options.append(Option(heading, disabled=True))
            mark = "  " if is_there(item, self.shop) else "+ "
            options.append(
                Option(Content.assemble(mark, content(title(item, self.shop))), id=item.id)
            )
        shown.add_options(options)
        wanted = onto.id if onto is not None and onto.id in self.items else next(iter(self.items))
        shown.highlighted = shown.get_option_index(wanted)
        return self.draw()

    def draw(self, now: object = None) -> None:
        """Draw what is known of the chosen item, in the units shown now."""
        item = self._item
        keys = [("Enter", "change" if item and is_there(item, self.shop) else "add")]
        if self.faults:
            keys = [("Enter", "faults")]
            words: tuple[str, ...] = (
                "The shop file is left as it is until its faults are mended in a text editor:",
                str(self.app.places.shop_file),
            )
        else:
            words = lines(item, self.shop, self.app.system) if item else ()
            if item and is_there(item, self.shop):
                keys.append(("Bksp", "remove"))
        keys += [("↑↓", "choose"), ("Esc", "back"), ("?", "help"), ("u", "units")]
        put(self.query_one("#about-text", Static), content("\n".join(words), keep_lines=True))
        put(self.query_one("#keys", Static), key_line(tuple(keys), self.size.width))

    @property
    def _item(self) -> Item | None:
        option = self.query_one(OptionList).highlighted_option
        return self.items.get(option.id or "") if option is not None else None

    def say(self, sentence: str, *, fault: bool = False) -> None:
        """Say something above the keys."""
        shown = self.query_one("#say", Static)
        shown.set_class(fault, "-fault")
        shown.update(content(sentence))
        shown.display = bool(sentence)

    def on_option_list_option_highlighted(self) -> None:
        if self._item != self._removing:
            self._removing = None
        self.draw()

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        # A glove presses twice: the second press is not for this screen any more.
        if not self.is_active:
            return
        self._removing = None
        self.say("")
        if self.faults:
            told = tuple(str(fault) for fault in self.faults)
            self.app.push_screen(Sheet("shop.toml", told))
            return
        item = self.items.get(event.option_id or "")
        if item is None:
            return

        def keep(shop: Shop) -> str:
            # What was added stands where 'add' stood.
            number = len(shop.guns if item.what == GUN else shop.cups) - 1
            added = item.at is None and item.what in (GUN, CUP)
            return self._keep(shop, Item(item.what, number) if added else item)

        self.app.push_screen(ShopForm(item, self.shop, keep))

    def _keep(self, shop: Shop, onto: Item) -> str:
        """Bring the shop onto the disk; give the sentence why it is not there, or nothing."""
        path, wall_s = self.app.places.shop_file, self.app.clock.now().wall
        try:
            saved = save_shop(shop, path, wall_s, System(self.app.system), self._own)
        except ShopNotSaved as fault:
            return str(fault)
        self._own = saved.text
        self.app.read_shop()
        # As it reads back, so that the screen shows what the file says.
        self.shop = self.app.shop
        self._put(onto)
        self.say(saved.words)
        return ""

    def action_remove(self) -> None:
        """The first press asks, the second removes."""
        item = self._item
        if not self.is_active:
            return
        if item is None or not is_there(item, self.shop):
            self.say("Nothing here to remove.")
            return
        if self._removing != item:
            self._removing = item
            self.say(f"Backspace again removes {title(item, self.shop)}.")
            return
        self._removing = None
        why_not = self._keep(without_item(self.shop, item), item)
        if why_not:
            self.say(why_not, fault=True)

    def action_help(self) -> None:
        """What this is for."""
        self.app.push_screen(Sheet("Shop", (*HELP, str(self.app.places.shop_file))))

    def action_leave(self) -> None:
        """Back to the list of jobs, which says anew what it knows of the shop file."""
        for screen in self.app.screen_stack:
            read_again = getattr(screen, "read_again", None)
            if read_again is not None:
                read_again()
        self.dismiss(None)
