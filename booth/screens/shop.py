"""The shop on a screen: guns, flow cups, compressor, room. Each change is on disk when it is said."""

from __future__ import annotations

from collections.abc import Callable

from msgspec.structs import replace
from textual.app import ComposeResult

from booth.files.faults import Fault, counted
from booth.forms.form import Field, Rows
from booth.forms.key import Key
from booth.moment import Moment
from booth.screens.base import Deed
from booth.screens.dialog import Sheet
from booth.screens.form_screen import FormScreen
from booth.screens.list_screen import Listed, ListScreen
from booth.screens.shop_forms import SORTS, Item, fields, items, lines, with_item, without_item
from booth.shop.model import Shop
from booth.shop.read import read_shop
from booth.shop.save import ShopNotSaved, save_shop
from booth.widgets.form_view import FormView
from booth.words.shown import PickLine

HELP = (
    "Guns, flow cups, compressor and room are used all over the program: which gun a job is sprayed "
    "with, which cups come first and their correction, how long the trigger can be held, what the "
    "exhaust moves.",
    "Enter changes or adds. Backspace twice removes. Every change is written at once; what stood in "
    "the file before you opened this screen is kept beside it.",
)
#: What stands on the list alone while the file has faults.
BROKEN = Item("")


class ShopScreen(ListScreen[None, Item]):
    """The list of what the shop has, and what is known of each."""

    NAME = "Shop"

    def __init__(self) -> None:
        super().__init__(id="shop")
        self.shop = Shop()
        self.faults: tuple[Fault, ...] = ()
        self._own = ""
        self._removing: Item | None = None

    def on_mount(self) -> None:
        found = read_shop(self.host.places.shop_file)
        self.faults = found.faults
        self._put(found.shop)

    def _put(self, shop: Shop, onto: Item | None = None) -> None:
        """List this shop. onto: the item that is picked, if it is there."""
        self.shop = shop
        rows = ((SORTS[item.what].heading, item, item) for item in items(shop))
        self.listed = Listed([("", BROKEN, BROKEN)] if self.faults else rows)
        self.picked = self.listed.line(onto)

    def help(self) -> Sheet:
        return Sheet("Shop", (*HELP, str(self.host.places.shop_file)))

    def line(self, item: Item, now: Moment) -> PickLine:
        if item == BROKEN:
            return PickLine("shop.toml", counted(len(self.faults), "fault"), must=True, mark="!")
        return PickLine(item.title(self.shop), mark="" if self._has(item) else "+")

    def _has(self, item: Item | None) -> bool:
        """Whether the shop has it, so that it can be changed or removed."""
        return item not in (None, BROKEN) and item.of(self.shop) is not None

    def about(self, now: Moment) -> tuple[str, ...]:
        if self.faults:
            return (
                "The shop file is left as it is until its faults are mended in a text editor:",
                str(self.host.places.shop_file),
            )
        item = self.chosen
        return lines(item, self.shop, self.host.system) if item is not None else ()

    def deed(self, key: Key) -> Deed | None:
        if key.name in ("backspace", "delete"):
            return Deed("remove" if self._has(self.chosen) else "", self._remove)
        return super().deed(key)

    def pick(self, index: int) -> None:
        self._removing = None
        super().pick(index)

    def enter(self) -> Deed | None:
        item = self.chosen
        if self.faults:
            told = tuple(str(fault) for fault in self.faults)
            return Deed("faults", lambda: self.host.show(Sheet("shop.toml", told)))
        if item is None:
            return None
        word = "change" if self._has(item) else "add"
        return Deed(word, lambda: self._open(item))

    async def _open(self, item: Item) -> None:
        self._removing = None
        self.say("")

        def keep(shop: Shop) -> str:
            # What was added stands where 'add' stood.
            added = item.is_listed and item.at is None
            return self._keep(shop, Item(item.what, len(item.kept(shop)) - 1) if added else item)

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
        self._put(host.shop, onto)
        self.draw(host.clock.now())
        self.say(saved.words)
        return ""

    def _remove(self) -> None:
        """The first press asks, the second removes."""
        item = self.chosen
        if item is None or not self._has(item):
            self.say("Nothing here to remove.")
        elif self._removing != item:
            self._removing = item
            self.say(f"Backspace again removes {item.title(self.shop)}.")
        else:
            self._removing = None
            why_not = self._keep(without_item(self.shop, item), item)
            if why_not:
                self.say(why_not, fault=True)


class ShopForm(FormScreen[None]):
    """Rows to fill. What is known stands dim in its row and stays where nothing is typed.

    keep_shop: brings a Shop onto the disk and gives the sentence why not, or nothing.
    """

    BACK = "back, nothing kept"

    def __init__(self, item: Item, shop: Shop, keep_shop: Callable[[Shop], str]) -> None:
        super().__init__(id="shop-form")
        self.item = item
        self.shop = shop
        self.keep_shop = keep_shop
        self._forgotten: frozenset[str] = frozenset()

    def heading(self) -> str:
        return self.item.title(self.shop)

    def body(self) -> ComposeResult:
        yield FormView(id="form")

    def fields(self) -> tuple[Field, ...]:
        return tuple(
            replace(field, default=None) if field.key in self._forgotten else field
            for field in fields(self.item, self.shop)
        )

    def goes_on(self, rows: Rows) -> bool:
        """What is added is gone through row by row; what is there may be kept from any of them."""
        return self.item.of(self.shop) is None

    def erase(self, rows: Rows) -> Deed | None:
        """In an empty row: what stood there dim is forgotten."""
        row = rows.marked
        if row is None or row.field.choices or not row.field.optional or row.field.default is None:
            return None
        return Deed("forget this value", lambda: self._forget(row.key))

    def _forget(self, key: str) -> None:
        self._forgotten |= {key}

    async def keep(self, rows: Rows) -> str:
        why_not = self.keep_shop(with_item(self.shop, self.item, rows.values))
        if not why_not:
            await self.close()
        return why_not
