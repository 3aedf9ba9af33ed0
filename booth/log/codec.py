"""Events to lines of JSON and back: one event, one line."""

from __future__ import annotations

from functools import cache
from typing import Any, Union

import msgspec

from booth.log.events import Event, UnknownEvent
from booth.moment import Moment

#: What this program calls a log of its own; a later one may know more.
VERSION = 1


class BrokenLine(ValueError):
    """A line of a log that is no event; the message says what is wrong with it."""


class _Header(msgspec.Struct):
    n: int
    at: Moment
    event: str
    version: Any = VERSION


_encoder = msgspec.json.Encoder()
_header = msgspec.json.Decoder(_Header)


def kinds() -> tuple[type[Event], ...]:
    """Give every kind of event there is, in the order in which they are defined."""
    return tuple(Event.__subclasses__())


@cache
def _decoder(known: tuple[type[Event], ...]) -> msgspec.json.Decoder[Any]:
    return msgspec.json.Decoder(Union[known])  # noqa: UP007 - a union of a tuple


def encode(event: Event) -> bytes:
    return _encoder.encode(event) + b"\n"


def decode(line: bytes) -> Event | UnknownEvent:
    """Read one line. Raises BrokenLine where it is no event of this or a later version."""
    try:
        found: Event = _decoder(kinds()).decode(line)
        return found
    except msgspec.DecodeError as fault:
        why = str(fault)
    except UnicodeDecodeError as fault:
        raise BrokenLine(f"not UTF-8: {fault.reason}") from None
    try:
        header = _header.decode(line)
    except (msgspec.DecodeError, UnicodeDecodeError):
        raise BrokenLine(why) from None
    if header.event not in {kind.__struct_config__.tag for kind in kinds()}:
        return UnknownEvent(header.n, header.at, header.event, line.decode("utf-8", "replace"))
    version = header.version
    if isinstance(version, int) and version > VERSION:
        why += f" (it is of version {version}, this program knows {VERSION})"
    raise BrokenLine(f"{header.event!r}: {why}")


def decode_all(lines: list[bytes]) -> list[Event] | None:
    """Read many lines at once, which is five times as fast; None where any of them is unusual."""
    # Without this, one event over two lines, or two in one, would pass.
    if not all(line[:1] == b"{" and line[-1:] == b"}" for line in lines):
        return None
    try:
        found: list[Event] = _decoder(kinds()).decode_lines(b"\n".join(lines))
    except (ValueError, ArithmeticError, RecursionError):
        return None
    return found if len(found) == len(lines) else None
