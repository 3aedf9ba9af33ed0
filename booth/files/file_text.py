"""From a path to the text of a profile file, or to the reason why there is none. Never raises."""

from __future__ import annotations

import os
import stat
from pathlib import Path

from booth.files.faults import Fault

__all__ = ["MOST_BYTES", "file_name", "text_of", "text_of_bytes"]

#: A profile is some three thousand bytes; what is twenty times as long is something else.
MOST_BYTES = 64 * 1024

EXPECTED = "a coating profile: a text file in UTF-8"
BOMS_OF_OTHERS = (b"\xff\xfe", b"\xfe\xff")
BOM = b"\xef\xbb\xbf"


def text_of(path: str | os.PathLike[str]) -> str | Fault:
    """Read the file at `path`: its text, or the one fault that kept it from being read."""
    file = os.fspath(path)
    try:
        # Asked before it is opened: to open a pipe would wait for ever.
        about = os.stat(file)
        if stat.S_ISDIR(about.st_mode):
            return _whole(file, "a folder", EXPECTED, "Name the file inside it.")
        if not stat.S_ISREG(about.st_mode):
            return _whole(file, "a device or a pipe", EXPECTED, "Name a file.")
        with open(file, "rb") as opened:
            content = opened.read(MOST_BYTES + 1)
    except FileNotFoundError:
        return _whole(file, "no such file", EXPECTED, "Check its name and folder.")
    except PermissionError:
        return _whole(file, "a file you may not read", EXPECTED, "Change its permissions.")
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or "a name no file can have"
        return _whole(file, f"a file that cannot be read ({why})", EXPECTED)
    return text_of_bytes(content, file)


def text_of_bytes(content: bytes, file: str) -> str | Fault:
    """Decode what a file holds; a byte-order mark, as Notepad writes it, is taken off."""
    if len(content) > MOST_BYTES:
        return _whole(
            file,
            f"more than {MOST_BYTES // 1024} kB",
            "a coating profile, some 3 kB of text",
            "This is another kind of file.",
        )
    if content.startswith(BOMS_OF_OTHERS):
        return _whole(file, "a text in UTF-16", EXPECTED, "Save it again as UTF-8.")
    if b"\0" in content:
        return _whole(file, "bytes that are no text", EXPECTED, "This is another kind of file.")
    try:
        return content.removeprefix(BOM).decode("utf-8")
    except UnicodeDecodeError as error:
        line = content.count(b"\n", 0, error.start) + 1
        found = f"a byte that is not UTF-8 (0x{content[error.start]:02X})"
        return Fault(file, line, "", found, EXPECTED, "Save the file again as UTF-8.")


def file_name(path: str | os.PathLike[str]) -> str:
    """Give the name of the file without its folder and ending; it is the profile's key."""
    return Path(os.fspath(path)).stem


def _whole(file: str, found: str, expected: str, advice: str = "") -> Fault:
    return Fault(file, None, "", found, expected, advice)
