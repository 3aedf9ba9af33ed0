"""The shop on a screen: guns, flow cups, compressor, room. Each change is on disk when it is said."""

from __future__ import annotations

from booth.files.faults import Fault
from booth.forms.key import Key
from booth.moment import Moment
from booth.screens.base import Deed
from booth.screens.list_screen import ListScreen
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
from booth.words.shown import Page, PickLine

HEADINGS = {GUN: "Guns", CUP: "Flow cups", COMPRESSOR: "Air", "room": "Room"}
HELP = (
    "Guns, flow cups, compressor and room are used all over the program: which gun a job is sprayed "
    "with, which cups come first and their correction, how long the trigger can be held, what the "
    "exhaust moves.",
    "Enter changes or adds. Backspace twice removes. Every change is written at once; what stood in "
    "the file before you opened this screen is kept beside it.",
)


class ShopScreen(ListScreen[None]):
    """The list of what the shop has, and what is known of each."""

    def __init__(self) -> None:
        super().__init__(id="shop")
        self.shop = Shop()
        self.faults: tuple[Fault, ...] = ()
        self._own = ""
        self._removing: Item | None = None

    def on_mount(self) -> None:
        found = read_shop(self.host.places.shop_file)
        self.shop, self.faults = found.shop, found.faults
        self.picked = 0 if self.faults else 1
        super().on_mount()

    def heading(self) -> str:
        return "Shop"

    def _listed(self) -> tuple[tuple[PickLine, Item | None], ...]:
        """The lines with their items; headings have none."""
        if self.faults:
            count = f"{len(self.faults)} fault{'s' if len(self.faults) != 1 else ''}"
            return ((PickLine("shop.toml", count, must=True, mark="!"), None),)
        found: list[tuple[PickLine, Item | None]] = []
        section = ""
        for item in items(self.shop):
            if item.what != section:
                found += [(PickLine("", head=True), None)] if section else []
                section = item.what
                found.append((PickLine(HEADINGS[section], head=True), None))
            mark = "" if is_there(item, self.shop) else "+"
            found.append((PickLine(title(item, self.shop), mark=mark), item))
        return tuple(found)

    def lines(self, now: Moment) -> tuple[PickLine, ...]:
        return tuple(line for line, _ in self._listed())

    @property
    def item(self) -> Item | None:
        """The picked item."""
        listed = self._listed()
        return listed[self.picked][1] if self.picked < len(listed) else None

    def about(self, now: Moment) -> Page:
        item = self.item
        words: tuple[str, ...] = lines(item, self.shop, self.host.system) if item else ()
        if self.faults:
            words = (
                "The shop file is left as it is until its faults are mended in a text editor:",
                str(self.host.places.shop_file),
            )
        return Page(tuple(("text", line) for line in words))

    # -- keys -------------------------------------------------------------------------------

    def deed(self, key: Key) -> Deed | None:
        if key.name in ("escape", "f9"):
            return Deed("back" if key.name == "escape" else "", self.close)
        if key.name in ("backspace", "delete"):
            there = self.item is not None and is_there(self.item, self.shop)
            return Deed("remove" if there else "", self._remove)
        if key.name in ("question_mark", "f1"):
            told = Sheet("Shop", (*HELP, str(self.host.places.shop_file)))
            return Deed("help" if key.name == "question_mark" else "", lambda: self.host.show(told))
        return super().deed(key)

    def pick(self, index: int) -> None:
        self._removing = None
        super().pick(index)

    def enter(self) -> Deed | None:
        item = self.item
        if self.faults:
            told = tuple(str(fault) for fault in self.faults)
            return Deed("faults", lambda: self.host.show(Sheet("shop.toml", told)))
        if item is None:
            return None
        word = "change" if is_there(item, self.shop) else "add"
        return Deed(word, lambda: self._open(item))

    async def _open(self, item: Item) -> None:
        self._removing = None
        self.say("")

        def keep(shop: Shop) -> str:
            # What was added stands where 'add' stood.
            number = len(shop.guns if item.what == GUN else shop.cups) - 1
            added = item.at is None and item.what in (GUN, CUP)
            return self._keep(shop, Item(item.what, number) if added else item)

        await self.host.show(ShopForm(item, self.shop, keep))

    def _keep(self, shop: Shop, onto: Item) -> str:
        """Bring the shop onto the disk; give the sentence why it is not there, or nothing."""
        host = self.host
        path, wall_s = host.places.shop_file, host.clock.now().wall
        try:
            saved = save_shop(shop, path, wall_s, host.system, self._own)
        except ShopNotSaved as fault:
            return str(fault)
        self._own = saved.text
        host.read_shop()
        # As it reads back, so that the screen shows what the file says.
        self.shop = host.shop
        found = [at for at, (_, item) in enumerate(self._listed()) if item == onto]
        self.picked = found[0] if found else 1
        self.draw(host.clock.now())
        self.say(saved.words)
        return ""

    def _remove(self) -> None:
        """The first press asks, the second removes."""
        item = self.item
        if item is None or not is_there(item, self.shop):
            self.say("Nothing here to remove.")
        elif self._removing != item:
            self._removing = item
            self.say(f"Backspace again removes {title(item, self.shop)}.")
        else:
            self._removing = None
            why_not = self._keep(without_item(self.shop, item), item)
            if why_not:
                self.say(why_not, fault=True)
