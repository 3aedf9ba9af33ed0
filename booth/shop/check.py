"""``booth check`` for files of either kind: shop files here, coating profiles by their own reader."""

from __future__ import annotations

import os
from collections.abc import Iterable
from typing import TextIO

from booth.files.faults import Fault
from booth.files.file_text import text_of
from booth.files.safe_text import visible
from booth.files.toml_lines import where
from booth.profile import check as profiles
from booth.profile.keys import keys_text as profile_keys_text
from booth.shop.keys import keys_text
from booth.shop.model import Shop
from booth.shop.read import ShopRead, read_shop

__all__ = ["check", "check_shop", "is_shop_file", "is_shop_text", "print_keys"]

#: The name a shop file goes by, whatever stands in it.
NAME = "shop.toml"
#: A text that has one of these is a shop file, unless it also has one of the others.
MARKS = (("gun", 0), ("cup", 0), ("compressor",), ("room",))
MARKS_OF_PROFILES = (("name",), ("source",), ("film",), ("waits",), ("mix",), ("efflux",))


def check(paths: Iterable[str | os.PathLike[str]], out: TextIO) -> int:
    """Check files, and the profiles of folders; print all faults and a line for each file.

    Returns: 0 when all are in order, 1 when one has faults, 2 when one is not there or nothing was
    named.
    """
    named = list(paths)
    if not named:
        return profiles.check(named, out)
    return max(
        _check_shop_file(path, out) if is_shop_file(path) else profiles.check([path], out)
        for path in named
    )


def check_shop(path: str | os.PathLike[str]) -> tuple[Fault, ...]:
    """Give every fault of the shop file at `path`; a file that is not there has none."""
    return read_shop(path).faults


def is_shop_file(path: str | os.PathLike[str]) -> bool:
    """Whether the file at `path` is one, by its name or by what stands in it."""
    if not os.path.isfile(path):
        return False
    if os.path.basename(os.fspath(path)) == NAME:
        return True
    text = text_of(path)
    return isinstance(text, str) and is_shop_text(text)


def is_shop_text(text: str) -> bool:
    """Whether a text is meant as a shop file, damaged or not: it has one of its tables.

    A profile has a table [gun], a shop file a list of tables [[gun]].
    """
    found = where(text.removeprefix("\ufeff")).lines
    return any(mark in found for mark in MARKS) and not any(
        mark in found for mark in MARKS_OF_PROFILES
    )


def print_keys(out: TextIO) -> int:
    """Print every key of a coating profile and of the shop file."""
    print(f"{profile_keys_text()}\n{keys_text()}", end="", file=out)
    return profiles.OK


def _check_shop_file(path: str | os.PathLike[str], out: TextIO) -> int:
    answer = read_shop(path)
    if answer.faults:
        for fault in answer.faults:
            _say(out, str(fault))
        count = "1 fault" if len(answer.faults) == 1 else f"{len(answer.faults)} faults"
        _say(out, f"{os.fspath(path)}: {count}")
        return profiles.FAULTS
    _say(out, f"{os.fspath(path)}: a shop file, {in_words(answer)}")
    return profiles.OK


def in_words(answer: ShopRead) -> str:
    """Say what a shop file holds."""
    shop: Shop = answer.shop
    told = [_count(len(shop.guns), "gun"), _count(len(shop.cups), "flow cup")]
    told += [] if shop.compressor is None else ["the compressor"]
    told += [] if shop.room is None else ["the room"]
    return ", ".join(told)


def _count(number: int, what: str) -> str:
    return f"{number} {what}" if number == 1 else f"{number} {what}s"


def _say(out: TextIO, line: str) -> None:
    text = visible(line)
    # A terminal that cannot write a character gets a question mark, not an exception.
    encoding = getattr(out, "encoding", None) or "utf-8"
    print(text.encode(encoding, "replace").decode(encoding), file=out)
