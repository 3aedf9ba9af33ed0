"""The form of one thing of the shop: a gun, a flow cup, the compressor, the room."""

from __future__ import annotations

from collections.abc import Callable

from msgspec.structs import replace
from textual.app import ComposeResult

from booth.forms.field import Field
from booth.forms.form import Rows
from booth.screens.base import Deed
from booth.screens.form_screen import FormScreen
from booth.screens.shop_forms import Item, fields, with_item
from booth.shop.model import Shop
from booth.widgets.form_view import FormView


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
