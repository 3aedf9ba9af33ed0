"""Saves the shop file: whole or not at all, what stood there before kept beside it.

A file with faults is never written over: whoever wrote it by hand meant something by it.
"""

from __future__ import annotations

import os
import shutil
import tempfile
from contextlib import suppress
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from booth.files.safe_text import visible
from booth.shop.model import Shop
from booth.shop.read import read_shop, read_shop_text
from booth.shop.write import write_shop
from booth.units import System

__all__ = ["ShopNotSaved", "ShopSaved", "save_shop"]

MOST_TRIES = 100


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
    text = write_shop(shop, system)
    answer = read_shop_text(text, "the shop file")
    if answer.faults:
        raise ShopNotSaved(f"NOT kept: {answer.faults[0].text}")
    there = read_shop(path)
    if there.faults:
        count = len(there.faults)
        what = "a fault" if count == 1 else f"{count} faults"
        raise ShopNotSaved(
            f"NOT kept: {visible(os.fspath(path))} has {what} and is left as it is. Mend it first; "
            f"the first is: {there.faults[0].text}"
        )
    try:
        # A link is kept as a link: what it leads to is written.
        place = Path(os.path.realpath(path))
        place.parent.mkdir(parents=True, exist_ok=True)
        before = _put(text, place, _stamp(wall_s), own)
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or str(error)
        raise ShopNotSaved(
            f"NOT kept: {visible(os.fspath(path))} cannot be written: {why}. "
            "The file is as it was. Put that right and try again."
        ) from error
    return ShopSaved(Path(path), before, text)


def _put(text: str, path: Path, stamp: str, own: str) -> Path | None:
    """Write beside the file, flush, keep the old file by another name, then take its place."""
    content = text.encode("utf-8")
    old = path.read_bytes() if path.exists() else None
    if old == content:
        return None
    handle, fresh = tempfile.mkstemp(prefix=".shop-", suffix=".new", dir=path.parent)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        # A temporary file is its owner's alone.
        os.chmod(fresh, 0o644)
        before = None
        if old is not None:
            shutil.copymode(path, fresh)
            if old != own.encode("utf-8"):
                before = _keep(path, stamp)
        os.replace(fresh, path)
    finally:
        with suppress(FileNotFoundError):
            os.unlink(fresh)
    _flush_folder(path.parent)
    return before


def _keep(path: Path, stamp: str) -> Path:
    """Give the old file a second name, which it keeps when another takes the first."""
    for number in range(1, MOST_TRIES + 1):
        more = "" if number == 1 else f"-{number}"
        before = path.with_name(f"{path.name}.before-{stamp}{more}")
        try:
            os.link(path, before)
        except FileExistsError:
            continue
        except (OSError, NotImplementedError, AttributeError):
            # A disk without hard links (FAT, some network folders).
            if before.exists():
                continue
            shutil.copy2(path, before)
        return before
    raise OSError(f"{MOST_TRIES} copies of {path.name} are kept already; move some away")


def _stamp(wall_s: float) -> str:
    try:
        return datetime.fromtimestamp(wall_s, UTC).strftime("%Y%m%d-%H%M%S")
    except (OverflowError, OSError, ValueError):
        return "00000000-000000"


def _flush_folder(folder: Path) -> None:
    """Have the new names on disk too; a system that cannot open a folder does it by itself."""
    with suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
