"""Reads the shop file strictly: the Shop, or every fault of the file. Never raises.

No file is no fault: a shop of which nothing was said.
"""

from __future__ import annotations

import os
from dataclasses import dataclass

from booth.files.faults import Fault, Faults, quoted
from booth.files.file_text import text_of
from booth.shop.keys import SHOP
from booth.shop.model import Compressor, Shop


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
    text = text_of(path, SHOP.what)
    if isinstance(text, Fault):
        return ShopRead(Shop(), (text,))
    return read_shop_text(text, os.fspath(path))


def read_shop_text(text: str, name: str) -> ShopRead:
    """Read a shop file from its text; `name` stands for the file in faults."""
    values, faults = SHOP.read(text, name)
    shop = Shop(**values)
    _once("gun", "name", [gun.name for gun in shop.guns], faults)
    _once("cup", "cup", [cup.cup for cup in shop.cups], faults)
    _pressures(shop.compressor, faults)
    return ShopRead(Shop(), faults.sorted()) if faults else ShopRead(shop)


def _once(table: str, key: str, names: list[str], faults: Faults) -> None:
    for number, name in enumerate(names):
        if name in names[:number]:
            faults.add(
                (table, number, key),
                f"{quoted(name)} a second time",
                f"each {table} once",
                "Give one of them another name." if key == "name" else "Delete one of the two.",
            )


def _pressures(compressor: Compressor | None, faults: Faults) -> None:
    if compressor is not None and compressor.cut_in_kpa >= compressor.cut_out_kpa:
        faults.add(
            ("compressor", "cut_out"),
            "a cut_out that is not above cut_in",
            "the pressure at which it stops above that at which it starts",
            "Exchange the two.",
        )
