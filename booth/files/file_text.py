"""From a path to the text of a file that a painter wrote, or to the reason why there is none. Never raises."""

from __future__ import annotations

import os
import stat

from booth.files.faults import Fault

#: A profile is some three thousand bytes; what is twenty times as long is something else.
MOST_BYTES = 64 * 1024

OTHER_KIND = "This is another kind of file."
BOMS_OF_OTHERS = (b"\xff\xfe", b"\xfe\xff")
BOM = b"\xef\xbb\xbf"


def text_of(path: str | os.PathLike[str], what: str = "a file") -> str | Fault:
    """Read the file at `path`: its text, or the one fault that kept it from being read.

    what: the kind of file that is expected there, as 'a coating profile'.
    """
    file = os.fspath(path)

    def fault(found: str, advice: str = "") -> Fault:
        return Fault(file, None, "", found, f"{what}: a text file in UTF-8", advice)

    try:
        # Asked before it is opened: to open a pipe would wait for ever.
        mode = os.stat(file).st_mode
        if stat.S_ISDIR(mode):
            return fault("a folder", "Name the file inside it.")
        if not stat.S_ISREG(mode):
            return fault("a device or a pipe", "Name a file.")
        with open(file, "rb") as opened:
            content = opened.read(MOST_BYTES + 1)
    except FileNotFoundError:
        return fault("no such file", "Check its name and folder.")
    except PermissionError:
        return fault("a file you may not read", "Change its permissions.")
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or "a name no file can have"
        return fault(f"a file that cannot be read ({why})")
    return text_of_bytes(content, file, what)


def text_of_bytes(content: bytes, file: str, what: str = "a file") -> str | Fault:
    """Decode what a file holds; a byte-order mark, as Notepad writes it, is taken off."""
    expected = f"{what}: a text file in UTF-8"
    if len(content) > MOST_BYTES:
        more = f"more than {MOST_BYTES // 1024} kB"
        return Fault(file, None, "", more, f"{what}, a few kB of text", OTHER_KIND)
    if content.startswith(BOMS_OF_OTHERS):
        return Fault(file, None, "", "a text in UTF-16", expected, "Save it again as UTF-8.")
    if b"\0" in content:
        return Fault(file, None, "", "bytes that are no text", expected, OTHER_KIND)
    try:
        return content.removeprefix(BOM).decode("utf-8")
    except UnicodeDecodeError as error:
        line = content.count(b"\n", 0, error.start) + 1
        found = f"a byte that is not UTF-8 (0x{content[error.start]:02X})"
        return Fault(file, line, "", found, expected, "Save the file again as UTF-8.")
