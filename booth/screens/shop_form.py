"""The form of one thing of the shop: a gun, a flow cup, the compressor, the room."""

from __future__ import annotations

from collections.abc import Callable

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import VerticalScroll
from textual.widgets import Static

from booth.screens.base import OwnScreen
from booth.screens.keyline import key_line
from booth.screens.shop_forms import Item, fields, is_there, title, with_item
from booth.shop.model import Shop
from booth.units import System
from booth.widgets.entry import FieldRow, Given, TypedText
from booth.widgets.quiet_line import put
from booth.widgets.text import content


class ShopForm(OwnScreen[None]):
    """Rows to fill. What is known stands dim in its row and stays where nothing is typed.

    keep: brings a Shop onto the disk and gives the sentence why not, or nothing.
    """

    BINDINGS = [Binding("escape,f9", "leave", "back", show=False)]
    AUTO_FOCUS = ""

    def __init__(self, item: Item, shop: Shop, keep: Callable[[Shop], str]) -> None:
        super().__init__(id="shop-form")
        self.item = item
        self.shop = shop
        self.keep = keep
        self._system: System | None = None

    @property
    def is_new(self) -> bool:
        """Whether this adds something: then Enter leads from row to row."""
        return not is_there(self.item, self.shop)

    def compose(self) -> ComposeResult:
        yield Static(content(title(self.item, self.shop)), id="name", markup=False)
        with VerticalScroll(id="form", can_focus=False):
            for field in fields(self.item, self.shop):
                yield FieldRow(field, lambda: self.app.system)
        yield Static("", id="say", markup=False)
        yield Static("", id="keys", markup=False)

    def on_mount(self) -> None:
        self._system = self.app.system
        self.rows[0].place.focus()
        self.draw()

    @property
    def rows(self) -> list[FieldRow]:
        """The rows of the form."""
        return list(self.query(FieldRow))

    @property
    def row(self) -> FieldRow | None:
        """The row that has the focus."""
        return next((row for row in self.rows if row.place is self.focused), None)

    def draw(self, now: object = None) -> None:
        """Draw the keys; show everything anew in the units shown now."""
        if self._system is not None and self._system != self.app.system:
            before, self._system = self._system, self.app.system
            for each in self.rows:
                each.units_changed(before)
        row = self.row
        keys = [("Enter", "next row" if self._next(row) is not None else "keep")]
        keys += [("↑↓", "rows")]
        if row is not None and row.field.choices:
            keys += [("←→", "choose")]
        elif row is not None and row.field.optional and row.field.default is not None:
            keys += [("Bksp", "forget this value")]
        keys += [("Esc", "back, nothing kept"), ("F3", "units")]
        put(self.query_one("#keys", Static), key_line(tuple(keys), self.size.width))

    def say(self, sentence: str) -> None:
        """Say why something was not done."""
        shown = self.query_one("#say", Static)
        shown.set_class(True, "-fault")
        shown.update(content(sentence))
        shown.display = bool(sentence)

    def on_descendant_focus(self) -> None:
        self.draw()

    def on_field_row_edited(self, event: FieldRow.Edited) -> None:
        event.stop()
        self.say("")
        self.draw()

    def on_field_row_entered(self, event: FieldRow.Entered) -> None:
        event.stop()
        self._enter()

    def on_typed_text_void(self, event: TypedText.Void) -> None:
        """Backspace in an empty entry: what stood there dim is forgotten."""
        event.stop()
        row = self.row
        if row is not None and row.field.optional:
            row.offer(None)
            self.draw()

    def on_key(self, event: events.Key) -> None:
        places = [row.place for row in self.rows]
        if event.key in ("up", "down") and self.focused in places:
            event.stop()
            by = 1 if event.key == "down" else -1
            places[(places.index(self.focused) + by) % len(places)].focus()  # type: ignore[arg-type]
        elif event.key == "enter":
            event.stop()
            self._enter()

    def _next(self, row: FieldRow | None) -> FieldRow | None:
        """The row to go to before anything is kept: one that is missing, or the next of a new one."""
        rows = self.rows
        if row is None:
            return rows[0]
        at = rows.index(row)
        if self._is_missing(row):
            return row
        if self.is_new and at + 1 < len(rows):
            return rows[at + 1]
        others = (*rows[at + 1 :], *rows[:at])
        return next((each for each in others if each.fault or self._is_missing(each)), None)

    @staticmethod
    def _is_missing(row: FieldRow) -> bool:
        field = row.field
        return not field.optional and field.default is None and row.is_empty

    def _enter(self) -> None:
        if not self.is_active:
            return
        row = self.row
        if row is not None and row.fault:
            self.say(row.fault)
            return
        following = self._next(row)
        if following is None:
            self._keep()
        elif following is row:
            self.say(f"{row.field.label} is needed.")
        else:
            following.place.focus()

    def _keep(self) -> None:
        given: dict[str, Given] = {row.field.key: row.given() for row in self.rows}
        why_not = self.keep(with_item(self.shop, self.item, given))
        if why_not:
            self.say(why_not)
        else:
            self.dismiss(None)

    def action_leave(self) -> None:
        """Back; nothing is kept."""
        self.dismiss(None)
