"""A Shop as the text of its file: a new one, or one that is there and keeps its comments and order."""

from __future__ import annotations

from booth.shop.keys import SHOP
from booth.shop.model import Shop
from booth.shop.read import read_shop_text
from booth.toml.edit import CannotEdit, edited
from booth.units import System

HEADER = "# The shop: guns, flow cups, compressor, room. `booth check --keys` tells every key.\n"


def write_shop(shop: Shop, system: System = System.US, there: str = "") -> str:
    """Give `shop` as the text of a TOML file; read back, it is the same within rounding.

    there: the text of the file as it is, without faults: only what differs is changed in it.
    """
    says = SHOP.table.write(shop, system)
    if there.strip():
        try:
            text = edited(there, SHOP.table.write(read_shop_text(there, "").shop, system), says)
        except CannotEdit:
            text = ""
        again = read_shop_text(text, "")
        if text and not again.faults and SHOP.table.write(again.shop, system) == says:
            return text
    return edited(HEADER, {}, says)
