"""The shop's forms, a row for each key of its tables; how what they hold becomes a Shop. No widget here."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, NamedTuple

import msgspec
from msgspec.structs import replace

from booth.forms.form import BLANK, Field, Given, chosen_words, placeholder, rows_of, same
from booth.shop.keys import SHOP
from booth.shop.model import Shop
from booth.toml.key import Choice, Cup, Flag, Key, Text
from booth.toml.quantity import Quantity as Number
from booth.toml.table import Table, Tables
from booth.trade.cups.cup_table import CUPS
from booth.units import Quantity, System

YES, NO = "yes", "no"


class Sort(NamedTuple):
    """One sort of thing: its heading, how one is called that is added, what it is for."""

    heading: str
    one: str
    about: str


#: By the table of the file that holds it, in the order of the screen.
SORTS = {
    "gun": Sort(
        "Guns",
        "a gun",
        "A gun with its tip, what its cup holds, and the air it needs. New jobs ask which gun is "
        "used; past settings and catches are kept apart by gun.",
    ),
    "cup": Sort(
        "Flow cups",
        "a flow cup",
        "A flow cup you own. Owned cups come first where a cup is chosen. A correction found with "
        "a liquid of known viscosity is applied to every run.",
    ),
    "compressor": Sort(
        "Air",
        "the compressor",
        "Receiver, delivered flow, cut-in and cut-out pressure, rated duty: with the gun's air demand "
        "they tell how long the trigger can be held.",
    ),
    "room": Sort(
        "Room",
        "the room",
        "Volume, exhaust and open front: the fresh-air figure is held against them.",
    ),
}


class Item(msgspec.Struct, frozen=True):
    """One thing of the shop. at: its place among its sort; None: a new one, or the only one."""

    what: str
    at: int | None = None

    @property
    def is_listed(self) -> bool:
        """Whether the shop may have several of its sort."""
        return isinstance(SHOP.table.keys[self.what], Tables)

    @property
    def table(self) -> Table:
        """The table of its keys."""
        return SHOP.table_at(self.what + "[]" * self.is_listed)

    def kept(self, shop: Shop) -> Any:
        """All that the shop has of its sort: a tuple where there can be several."""
        return getattr(shop, SHOP.table.attributes[self.what])

    def of(self, shop: Shop) -> Any:
        """What the shop has of it; None where that is nothing yet."""
        if not self.is_listed:
            return self.kept(shop)
        return None if self.at is None else self.kept(shop)[self.at]

    def title(self, shop: Shop) -> str:
        """How its row reads: one of several by its first key, which is its name."""
        there = self.of(shop)
        if there is None:
            return f"add {SORTS[self.what].one}"
        if not self.is_listed:
            return self.what
        name, key = next(iter(self.table.keys.items()))
        return str(key.write(getattr(there, name), System.US))


def items(shop: Shop) -> tuple[Item, ...]:
    """Everything that can be changed or added, in the order of the screen."""
    found: list[Item] = []
    for new in map(Item, SORTS):
        if new.is_listed:
            found += [Item(new.what, number) for number in range(len(new.kept(shop)))]
        if new.what != "cup" or len(shop.cups) < len(CUPS):  # else nothing is left to add
            found.append(new)
    return tuple(found)


def lines(item: Item, shop: Shop, system: System) -> tuple[str, ...]:
    """What is known of an item: a line for each of its fields."""
    if item.of(shop) is None:
        return (SORTS[item.what].about,)
    told = []
    for row in rows_of(BLANK, fields(item, shop), system).every:
        known = chosen_words(row) or (placeholder(row.field, system) if row.given else "–")
        told.append(f"{row.field.label:<13} {known}")
    return (item.title(shop), "", *told)


def fields(item: Item, shop: Shop) -> tuple[Field, ...]:
    """The rows of an item's form; what is known stands in them and is taken where nothing is typed."""
    return tuple(_field(item, name, key, shop) for name, key in item.table.keys.items())


def _field(item: Item, name: str, key: Key, shop: Shop) -> Field:
    table = item.table
    attribute = table.attributes[name]
    known = getattr(item.of(shop), attribute, key.unsaid)
    known = None if known == key.unsaid else known
    row = Field(name, key.label_for(name), optional=name not in table.needed, hint=key.says)
    match key:
        case Number():
            default = None if known is None else Quantity(known * key.per, key.kind.base, "")
            return replace(row, kind=key.kind, default=default)
        case Flag():
            return replace(row, choices=same((NO, YES)), default=YES if known else NO)
        case Choice():
            return replace(row, choices=same(key.choices), default=known)
        case Cup():
            taken = {getattr(each, attribute) for each in item.kept(shop)} - {known}
            left = tuple((each, cup.name) for each, cup in CUPS.items() if each not in taken)
            return replace(row, choices=left, default=known)
    return replace(row, default=known)


def with_item(shop: Shop, item: Item, given: Mapping[str, Given]) -> Shop:
    """The shop with what the item's form holds. Everything required has to be there."""
    table = item.table
    read = {table.attributes[name]: _read(key, given.get(name)) for name, key in table.keys.items()}
    said = {attribute: value for attribute, value in read.items() if value is not None}
    return _changed(shop, item, table.make(**said) if said else None)


def _read(key: Key, given: Given) -> Any:
    """What the model keeps of what a row gives; None where that is nothing."""
    if isinstance(given, Quantity):
        return given.value / key.per if isinstance(key, Number) else None
    if isinstance(key, Flag):
        return given == YES
    return " ".join(given.split()) if given and isinstance(key, Text) and key.tidy else given


def without_item(shop: Shop, item: Item) -> Shop:
    """The shop without the item."""
    return _changed(shop, item, None)


def _changed(shop: Shop, item: Item, thing: Any) -> Shop:
    """The shop with this in the place of the item; None: with nothing there."""
    if item.is_listed:
        every = list(item.kept(shop))
        at = len(every) if item.at is None else item.at
        every[at : at + 1] = [] if thing is None else [thing]
        thing = tuple(every)
    return replace(shop, **{SHOP.table.attributes[item.what]: thing})
