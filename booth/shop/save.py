"""Saves the shop file: only what was changed is touched, and what stood there before is kept beside it.

A file with faults is never written over: whoever wrote it by hand meant something by it. How a file
is written whole is in ``files.atomic``.
"""

from __future__ import annotations

import os
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from booth.files.atomic import write_over
from booth.files.faults import counted
from booth.files.safe_text import visible
from booth.files.slug import numbered
from booth.shop.keys import SHOP
from booth.shop.model import Shop
from booth.shop.read import read_shop, read_shop_text
from booth.toml.edit import CannotEdit, edited
from booth.units import System

MOST_KEPT = 100
HEADER = "# The shop: guns, flow cups, compressor, room. `booth check --keys` tells every key.\n"


class ShopNotSaved(Exception):
    """The shop file was not saved, and is as it was; the message is a sentence."""


@dataclass(frozen=True, slots=True)
class ShopSaved:
    """Where the shop was saved, and where what stood there before is kept, if anything did.

    text: what the file now holds.
    """

    path: Path
    before: Path | None
    text: str

    @property
    def words(self) -> str:
        """One sentence or two for the painter."""
        kept = f"Kept in {visible(str(self.path))}."
        if self.before is None:
            return kept
        return f"{kept} What stood there before is in {visible(self.before.name)}, beside it."


def save_shop(
    shop: Shop,
    path: str | os.PathLike[str],
    wall_s: float,
    system: System = System.US,
    own: str = "",
) -> ShopSaved:
    """Save `shop` at `path`, making its folder where needed; on disk when this returns.

    wall_s: now, in seconds since 1970, UTC: it names what is kept beside.
    own: what the program itself wrote there last; that alone is written over without being kept
    beside, so that a form filled row by row does not leave a copy for each row.

    Raises:
        ShopNotSaved: with a sentence; the file is as it was.
    """
    there = read_shop(path)
    if there.faults:
        raise ShopNotSaved(
            f"NOT kept: {visible(os.fspath(path))} has {counted(len(there.faults), 'fault')} "
            f"and is left as it is. Mend it first; the first is: {there.faults[0].text}"
        )
    # A link is kept as a link: what it leads to is written, and kept beside itself.
    place = Path(os.path.realpath(path))
    try:
        old = place.read_bytes().decode("utf-8") if place.exists() else ""
        text = _new_text(shop, system, old)
        before = None
        if text != old:
            names = numbered(f"{place.name}.before-{_stamp(wall_s)}", most=MOST_KEPT)
            before = write_over(place, text.encode("utf-8"), None if old == own else names)
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or str(error)
        raise ShopNotSaved(
            f"NOT kept: {visible(os.fspath(path))} cannot be written: {why}. "
            "Nothing is half written. Put that right and try again."
        ) from error
    return ShopSaved(Path(path), before, text)


def _new_text(shop: Shop, system: System, old: str) -> str:
    """What the file is to hold, known to be read again. Raises ShopNotSaved."""
    text = write_shop(shop, system, old)
    faults = read_shop_text(text, "the shop file").faults
    if faults:
        # It was typed in a form: its labels are what the painter sees, not the keys of the file.
        raise ShopNotSaved(f"NOT kept: {SHOP.in_words_of_a_form(faults[0])}")
    return text


def _stamp(wall_s: float) -> str:
    try:
        return datetime.fromtimestamp(wall_s, UTC).strftime("%Y%m%d-%H%M%S")
    except (OverflowError, OSError, ValueError):
        return "00000000-000000"


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
