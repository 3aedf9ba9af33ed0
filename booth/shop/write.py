"""A Shop as the text of its file, each quantity in the unit in which its number is shortest."""

from __future__ import annotations

from typing import Any

import tomli_w

from booth.profile.quantity_text import typed
from booth.shop.keys import key_of
from booth.shop.model import Compressor, Gun, OwnCup, Room, Shop
from booth.trade.cups.cup_names import cup_named
from booth.units import Kind, System, read

__all__ = ["quantity_text", "write_shop"]

HEADER = "# The shop: guns, flow cups, compressor, room. `booth check --keys` tells every key.\n"

#: Units a painter would use, the likeliest first: US, metric. Either list is followed by the other.
UNITS: dict[Kind, tuple[tuple[str, ...], tuple[str, ...]]] = {
    Kind.TIP: (("mm",), ("mm",)),
    Kind.VOLUME: (("fl oz", "gal"), ("ml", "l")),
    Kind.AIR_FLOW: (("cfm",), ("l/min", "m3/min")),
    Kind.PRESSURE: (("psi",), ("bar", "kPa")),
    Kind.TURNS: (("turns",), ("turns",)),
    Kind.RECEIVER: (("gal",), ("l",)),
    Kind.ROOM: (("ft3",), ("m3",)),
    Kind.AREA: (("sq ft",), ("m2",)),
}
#: A number is what was typed when it is that close to it: conversions are exact, floats not quite.
EXACT = 1e-9
THOUSAND = 1000.0

Table = dict[str, Any]


def write_shop(shop: Shop, system: System = System.US) -> str:
    """Give `shop` as the text of a TOML file; read back, it is the same within rounding."""
    tables = [HEADER]
    if shop.system:
        tables.append(tomli_w.dumps({"units": shop.system}))
    tables += [_headed("[[gun]]", _gun(gun, system)) for gun in shop.guns]
    tables += [_headed("[[cup]]", _cup(cup)) for cup in shop.cups]
    if shop.compressor is not None:
        tables.append(_headed("[compressor]", _compressor(shop.compressor, system)))
    if shop.room is not None:
        tables.append(_headed("[room]", _room(shop.room, system)))
    return "\n".join(tables)


def quantity_text(value: float | None, path: str, system: System) -> str | None:
    """Give the base value of a key, such as ``gun[].air``, as it would be typed; None stays None.

    The unit is the first, those of `system` before the others, in which the number is exact and
    shortest; what is exact in none was measured, and takes the first.
    """
    if value is None:
        return None
    kind = key_of(path).kind
    assert kind is not None, path
    us, metric = UNITS[kind]
    units = us + metric if system == System.US else metric + us
    texts = [typed(value, kind, system, only=unit) or "" for unit in dict.fromkeys(units)]
    exact = [text for text in texts if _is(text, value, kind)]
    return min(exact, key=lambda text: len(text.partition(" ")[0])) if exact else texts[0]


def _is(text: str, value: float, kind: Kind) -> bool:
    return abs(read(text, kind, System.METRIC).value - value) <= EXACT * max(1.0, abs(value))


def _headed(header: str, table: Table) -> str:
    known = {name: each for name, each in table.items() if each is not None and each != ""}
    return f"{header}\n{tomli_w.dumps(known)}"


def _gun(gun: Gun, system: System) -> Table:
    return {
        "name": gun.name,
        "tip": quantity_text(gun.tip_mm, "gun[].tip", system),
        "cup": quantity_text(gun.cup_ml, "gun[].cup", system),
        "air": quantity_text(gun.air_l_min, "gun[].air", system),
        "at": quantity_text(gun.inlet_kpa, "gun[].at", system),
        "needle_turns": quantity_text(gun.needle_turns, "gun[].needle_turns", system),
        "fan_turns": quantity_text(gun.fan_turns, "gun[].fan_turns", system),
        "hvlp": gun.hvlp or None,
    }


def _cup(cup: OwnCup) -> Table:
    return {
        "cup": cup_named(cup.cup).name,
        "correction": None if cup.correction == 1 else float(f"{cup.correction:.6g}"),
        "note": cup.note,
    }


def _compressor(compressor: Compressor, system: System) -> Table:
    return {
        "receiver": quantity_text(compressor.receiver_l, "compressor.receiver", system),
        "flow": quantity_text(compressor.flow_l_min, "compressor.flow", system),
        "cut_in": quantity_text(compressor.cut_in_kpa, "compressor.cut_in", system),
        "cut_out": quantity_text(compressor.cut_out_kpa, "compressor.cut_out", system),
    }


def _room(room: Room, system: System) -> Table:
    moved = room.exhaust_m3_min
    return {
        "volume": quantity_text(room.volume_m3, "room.volume", system),
        "exhaust": quantity_text(
            None if moved is None else moved * THOUSAND, "room.exhaust", system
        ),
        "open_face": quantity_text(room.face_m2, "room.open_face", system),
    }
