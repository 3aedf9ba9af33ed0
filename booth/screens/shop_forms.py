"""What the shop's forms ask for, and how what they hold becomes a Shop. No widget here."""

from __future__ import annotations

from collections.abc import Mapping

import msgspec

from booth.forms.field import Field, Given
from booth.shop.keys import key_of
from booth.shop.model import Compressor, Gun, OwnCup, Room, Shop
from booth.trade.cups.cup_table import CUPS
from booth.units import Kind, Quantity, System, show

GUN, CUP, COMPRESSOR, ROOM = "gun", "cup", "compressor", "room"
THOUSAND = 1000.0
YES, NO = "yes", "no"


class Item(msgspec.Struct, frozen=True):
    """One thing of the shop. at: its place among its kind; None: a new one, or the only one."""

    what: str
    at: int | None = None

    @property
    def id(self) -> str:
        return self.what if self.at is None else f"{self.what}:{self.at}"


def items(shop: Shop) -> tuple[Item, ...]:
    """Everything that can be changed or added, in the order of the file."""
    guns = tuple(Item(GUN, number) for number in range(len(shop.guns)))
    cups = tuple(Item(CUP, number) for number in range(len(shop.cups)))
    more = (Item(CUP),) if len(shop.cups) < len(CUPS) else ()
    return (*guns, Item(GUN), *cups, *more, Item(COMPRESSOR), Item(ROOM))


def is_there(item: Item, shop: Shop) -> bool:
    """Whether the shop has it already, so that it can be removed."""
    if item.what == COMPRESSOR:
        return shop.compressor is not None
    if item.what == ROOM:
        return shop.room is not None
    return item.at is not None


def title(item: Item, shop: Shop) -> str:
    """How the row of an item reads."""
    if item.what == GUN:
        return "add a gun" if item.at is None else shop.guns[item.at].name
    if item.what == CUP:
        return "add a flow cup" if item.at is None else cup_words(shop.cups[item.at].cup)
    name = "compressor" if item.what == COMPRESSOR else "room"
    return name if is_there(item, shop) else f"add the {name}"


def cup_words(key: str) -> str:
    return CUPS[key].name if key in CUPS else key


def lines(item: Item, shop: Shop, system: System) -> tuple[str, ...]:
    """What is known of an item: a line for each of its fields."""
    if not is_there(item, shop):
        return (ABOUT[item.what],)
    told = []
    for field in fields(item, shop):
        given = field.default
        if isinstance(given, Quantity):
            assert field.kind is not None
            words = show(given.value, field.kind, system)
        elif field.choices:
            words = dict(field.choices).get(str(given), "")
        else:
            words = str(given or "")
        told.append(f"{field.label:<13} {words or '–'}")
    return (title(item, shop), "", *told)


#: What each is for, shown where nothing is known yet.
ABOUT = {
    GUN: "A gun with its tip, what its cup holds, and the air it needs. New jobs ask which gun is "
    "used; past settings and catches are kept apart by gun.",
    CUP: "A flow cup you own. Owned cups come first where a cup is chosen. A correction found with "
    "a liquid of known viscosity is applied to every run.",
    COMPRESSOR: "Receiver, delivered flow, cut-in and cut-out pressure: with the gun's air demand "
    "they tell how long the trigger can be held.",
    ROOM: "Volume, exhaust and open face: they are what the fresh-air figure is reckoned against.",
}


def fields(item: Item, shop: Shop) -> tuple[Field, ...]:
    """The rows of an item's form; what is known stands in them and is taken where nothing is typed."""
    return _FIELDS[item.what](item, shop)


def _row(
    key: str, label: str, path: str, value: float | None, hint: str = "", optional: bool = True
) -> Field:
    kind = key_of(path).kind
    assert kind is not None
    default = None if value is None else Quantity(value, kind.base, "")
    return Field(key, label, kind, optional=optional, default=default, hint=hint)


def _gun_fields(item: Item, shop: Shop) -> tuple[Field, ...]:
    gun = Gun("") if item.at is None else shop.guns[item.at]
    yes_no = ((NO, "no"), (YES, "yes"))
    return (
        Field("name", "Name", default=gun.name or None, hint="jobs keep it by this name"),
        _row("tip", "Tip", "gun[].tip", gun.tip_mm),
        _row("holds", "Cup holds", "gun[].cup", gun.cup_ml),
        _row("air", "Air demand", "gun[].air", gun.air_l_min, "free air, trigger pulled"),
        _row("at", "at inlet", "gun[].at", gun.inlet_kpa, "the pressure it needs that air at"),
        _row("needle", "Needle", "gun[].needle_turns", gun.needle_turns, "turns, shut to open"),
        _row("fan", "Fan", "gun[].fan_turns", gun.fan_turns, "turns, shut to open"),
        Field("hvlp", "HVLP", choices=yes_no, default=YES if gun.hvlp else NO),
    )


def _cup_fields(item: Item, shop: Shop) -> tuple[Field, ...]:
    taken = {cup.cup for number, cup in enumerate(shop.cups) if number != item.at}
    choices = tuple((key, cup.name) for key, cup in CUPS.items() if key not in taken)
    own = OwnCup(choices[0][0]) if item.at is None else shop.cups[item.at]
    given = None if own.correction == 1 else Quantity(own.correction, Kind.RATIO.base, "")
    hint = "true time = time read x this; none is 1"
    return (
        Field("cup", "Cup", choices=choices, default=own.cup),
        Field("correction", "Correction", Kind.RATIO, optional=True, default=given, hint=hint),
        Field("note", "Note", optional=True, default=own.note or None),
    )


def _compressor_fields(item: Item, shop: Shop) -> tuple[Field, ...]:
    own = shop.compressor

    def row(key: str, label: str, attribute: str, hint: str) -> Field:
        value = getattr(own, attribute) if own is not None else None
        return _row(key, label, f"compressor.{key}", value, hint, optional=False)

    return (
        row("receiver", "Receiver", "receiver_l", "its volume"),
        row("flow", "Delivers", "flow_l_min", "free air, not what the pump displaces"),
        row("cut_in", "Starts at", "cut_in_kpa", "cut-in pressure"),
        row("cut_out", "Stops at", "cut_out_kpa", "cut-out pressure"),
    )


def _room_fields(item: Item, shop: Shop) -> tuple[Field, ...]:
    room = shop.room or Room()
    moved = room.exhaust_m3_min
    moved_l = None if moved is None else moved * THOUSAND
    return (
        _row("volume", "Volume", "room.volume", room.volume_m3),
        _row("exhaust", "Exhaust", "room.exhaust", moved_l, "what it moves, measured if it can be"),
        _row("face", "Open face", "room.open_face", room.face_m2, "of the booth"),
    )


_FIELDS = {
    GUN: _gun_fields,
    CUP: _cup_fields,
    COMPRESSOR: _compressor_fields,
    ROOM: _room_fields,
}


def with_item(shop: Shop, item: Item, given: Mapping[str, Given]) -> Shop:
    """The shop with what the item's form holds. Everything required has to be there."""
    if item.what == GUN:
        return _changed(shop, "guns", item.at, _gun(given))
    if item.what == CUP:
        return _changed(shop, "cups", item.at, _cup(given))
    if item.what == COMPRESSOR:
        receiver, flow, cut_in, cut_out = (
            _value(given, key) or 0.0 for key in ("receiver", "flow", "cut_in", "cut_out")
        )
        compressor = Compressor(receiver, flow, cut_in, cut_out)
        return msgspec.structs.replace(shop, compressor=compressor)
    moved = _value(given, "exhaust")
    room = Room(
        _value(given, "volume"), None if moved is None else moved / THOUSAND, _value(given, "face")
    )
    return msgspec.structs.replace(shop, room=None if room == Room() else room)


def without_item(shop: Shop, item: Item) -> Shop:
    """The shop without the item."""
    if item.what in (COMPRESSOR, ROOM):
        return msgspec.structs.replace(shop, **{item.what: None})
    name = "guns" if item.what == GUN else "cups"
    assert item.at is not None
    kept = list(getattr(shop, name))
    del kept[item.at]
    return msgspec.structs.replace(shop, **{name: tuple(kept)})


def _changed(shop: Shop, name: str, at: int | None, one: Gun | OwnCup) -> Shop:
    every = list(getattr(shop, name))
    if at is None:
        every.append(one)
    else:
        every[at] = one
    return msgspec.structs.replace(shop, **{name: tuple(every)})


def _gun(given: Mapping[str, Given]) -> Gun:
    return Gun(
        name=" ".join(_text(given, "name").split()),
        tip_mm=_value(given, "tip"),
        cup_ml=_value(given, "holds"),
        air_l_min=_value(given, "air"),
        inlet_kpa=_value(given, "at"),
        needle_turns=_value(given, "needle"),
        fan_turns=_value(given, "fan"),
        hvlp=_text(given, "hvlp") == YES,
    )


def _cup(given: Mapping[str, Given]) -> OwnCup:
    correction = _value(given, "correction")
    return OwnCup(
        cup=_text(given, "cup"),
        correction=1.0 if correction is None else correction,
        note=_text(given, "note"),
    )


def _value(given: Mapping[str, Given], key: str) -> float | None:
    found = given.get(key)
    return found.value if isinstance(found, Quantity) else None


def _text(given: Mapping[str, Given], key: str) -> str:
    found = given.get(key)
    return found if isinstance(found, str) else ""
