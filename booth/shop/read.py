"""Reads the shop file strictly: the Shop, or every fault of the file. Never raises.

Shape first, as in coating profiles; then what the values mean together. No file is no fault: a shop
of which nothing was said.
"""

from __future__ import annotations

import os
from dataclasses import dataclass, replace
from typing import Any

from booth.files.faults import Fault, Faults, Path, nearest, quoted, said
from booth.files.file_text import text_of
from booth.files.toml_syntax import parse
from booth.profile.keys import Key, Shape
from booth.profile.quantity import bare_number
from booth.profile.values import read_value
from booth.shop.keys import ALSO_CALLED, children
from booth.shop.model import Compressor, Gun, OwnCup, Room, Shop
from booth.trade.cups.cup_names import cup_named
from booth.units import Kind

__all__ = ["ShopRead", "read_shop", "read_shop_text"]

#: So many guns, or cups, or unknown keys of one table; more is another kind of file.
MOST_OF_EACH = 60
MOST_UNKNOWN = 20

#: Millilitres in a litre, litres in a cubic metre.
THOUSAND = 1000.0


@dataclass(frozen=True, slots=True)
class ShopRead:
    """What the shop file came to. Where there are faults, the shop is an empty one."""

    shop: Shop
    faults: tuple[Fault, ...] = ()


def read_shop(path: str | os.PathLike[str]) -> ShopRead:
    """Read the shop file at `path`; where there is no file, an empty shop."""
    try:
        os.stat(path)
    except (FileNotFoundError, NotADirectoryError):
        return ShopRead(Shop())
    except (OSError, ValueError):
        pass  # text_of says what it is
    text = text_of(path)
    if isinstance(text, Fault):
        return ShopRead(Shop(), (_of_shop(text),))
    return read_shop_text(text, os.fspath(path))


def read_shop_text(text: str, name: str) -> ShopRead:
    """Read a shop file from its text; `name` stands for the file in faults."""
    faults = Faults(name)
    parsed = parse(text.removeprefix("\ufeff"), faults)
    faults.lines = parsed.lines
    values = _table(parsed.tables, "", (), faults, complete=parsed.whole)
    _judge(values, faults)
    if faults:
        return ShopRead(Shop(), tuple(_of_shop(fault) for fault in faults.sorted()))
    return ShopRead(_shop(values))


def _of_shop(fault: Fault) -> Fault:
    """What reads any file here was made for profiles and says so: this is another kind of file."""

    def put(text: str) -> str:
        return text.replace("a coating profile", "a shop file")

    return replace(fault, expected=put(fault.expected), advice=put(fault.advice))


def _table(
    data: dict[str, Any], table: str, path: Path, faults: Faults, complete: bool
) -> dict[str, Any]:
    """Read one table: its values by name, those with a fault left out."""
    known = children(table)
    values: dict[str, Any] = {}
    strange = [name for name in data if name not in known]
    for name, value in data.items():
        if name in known:
            found = _value(value, known[name], (*path, name), faults, complete)
            if found is not None:
                values[name] = found
    for name in strange[:MOST_UNKNOWN]:
        # A line that was set aside for its syntax leaves a table of this name; it was told.
        if complete or not name.startswith("set-aside-"):
            _unknown(name, table, (*path, name), faults)
    for name, key in known.items():
        if complete and key.required and name not in data:
            faults.add(
                (*path, name), "nothing", f"{name}: {key.says}", f"Write {name} = {key.example}."
            )
    return values


def _value(value: Any, key: Key, path: Path, faults: Faults, complete: bool) -> Any:
    if key.shape is Shape.TABLE:
        if isinstance(value, dict):
            return _table(value, key.path, path, faults, complete)
        faults.add(path, said(value), f"a table: [{key.path}] and its keys below")
        return None
    if key.shape is Shape.TABLES:
        return _tables(value, key, path, faults, complete)
    if key.kind is Kind.TURNS and isinstance(value, (int, float)):
        return bare_number(value, key, path, faults)
    return read_value(value, key, path, faults)


def _tables(value: Any, key: Key, path: Path, faults: Faults, complete: bool) -> Any:
    header = f"[[{key.path.removesuffix('[]')}]]"
    if not isinstance(value, list) or not all(isinstance(each, dict) for each in value):
        advice = "Double the square brackets." if isinstance(value, dict) else ""
        faults.add(
            path,
            said(value),
            f"a list of tables: {header} and its keys below, once for each",
            advice,
        )
        return None
    if len(value) > MOST_OF_EACH:
        faults.add(path, f"a list of {len(value)}", f"at most {MOST_OF_EACH}")
        return None
    return [_table(each, key.path, (*path, n), faults, complete) for n, each in enumerate(value)]


def _unknown(name: str, table: str, path: Path, faults: Faults) -> None:
    here = children(table)
    near = nearest(name, here) or _elsewhere(name, table)
    where = f"in [{table.removesuffix('[]')}]" if table else "at the top of the file"
    found = f"an unknown key {quoted(name)} {where}"
    faults.add(path, found, ", ".join(here), f"Did you mean {near}?" if near else "")


def _elsewhere(name: str, table: str) -> str:
    folded = name.casefold().replace(" ", "").replace("-", "").replace("_", "")
    called = ALSO_CALLED.get(folded, "")
    own = table.removesuffix("[]")
    return called.removeprefix(f"{own}.") if own else called


def _judge(values: dict[str, Any], faults: Faults) -> None:
    """What each value may be by itself and not beside the others."""
    _once("gun", "name", values, faults)
    _once("cup", "cup", values, faults)
    compressor = values.get("compressor", {})
    cut_in, cut_out = compressor.get("cut_in"), compressor.get("cut_out")
    if cut_in is not None and cut_out is not None and cut_in >= cut_out:
        faults.add(
            ("compressor", "cut_out"),
            "a cut_out that is not above cut_in",
            "the pressure at which it stops above that at which it starts",
            "Exchange the two.",
        )


def _once(table: str, name: str, values: dict[str, Any], faults: Faults) -> None:
    seen: set[str] = set()
    for number, each in enumerate(values.get(table, ())):
        called = " ".join(each.get(name, "").split())
        if called in seen:
            faults.add(
                (table, number, name),
                f"{quoted(called)} a second time",
                f"each {table} once",
                "Give one of them another name." if name == "name" else "Delete one of the two.",
            )
        elif called:
            seen.add(called)


def _shop(values: dict[str, Any]) -> Shop:
    return Shop(
        guns=tuple(_gun(each) for each in values.get("gun", ())),
        cups=tuple(_cup(each) for each in values.get("cup", ())),
        compressor=_compressor(values["compressor"]) if "compressor" in values else None,
        room=_room(values["room"]) if "room" in values else None,
        system=values.get("units", ""),
    )


def _gun(values: dict[str, Any]) -> Gun:
    return Gun(
        name=" ".join(values["name"].split()),
        tip_mm=values.get("tip"),
        cup_ml=values.get("cup"),
        air_l_min=values.get("air"),
        inlet_kpa=values.get("at"),
        needle_turns=values.get("needle_turns"),
        fan_turns=values.get("fan_turns"),
        hvlp=values.get("hvlp", False),
    )


def _cup(values: dict[str, Any]) -> OwnCup:
    """Cups are kept by their key, by which runs of a cup are kept too."""
    return OwnCup(
        cup=cup_named(values["cup"]).key,
        correction=values.get("correction", 1.0),
        note=values.get("note", ""),
    )


def _compressor(values: dict[str, Any]) -> Compressor:
    return Compressor(
        receiver_l=values["receiver"],
        flow_l_min=values["flow"],
        cut_in_kpa=values["cut_in"],
        cut_out_kpa=values["cut_out"],
    )


def _room(values: dict[str, Any]) -> Room:
    exhaust = values.get("exhaust")
    return Room(
        volume_m3=values.get("volume"),
        exhaust_m3_min=None if exhaust is None else exhaust / THOUSAND,
        face_m2=values.get("open_face"),
    )
