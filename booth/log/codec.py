"""Events to lines of JSON and back: one event, one line."""

from __future__ import annotations

from functools import cache
from typing import Any, Union

import msgspec

from booth.log.earlier import as_of_today
from booth.log.events import Event, JobOpened, UnknownEvent
from booth.moment import Moment

#: What this program calls a log of its own; a later one may know more.
VERSION = 2
#: Whole numbers beyond this are not safe in JSON (RFC 8259, section 6).
HIGHEST_NUMBER = 2**53 - 1
#: What reading a line of anything may raise.
UNREADABLE = (ValueError, ArithmeticError, RecursionError)


class BrokenLine(ValueError):
    """A line of a log that is no event; the message says what is wrong with it."""


class Header(msgspec.Struct, gc=False):
    """What every line has, whatever its kind. version: of an opening."""

    n: int
    at: Moment
    event: str
    version: Any = VERSION


_encoder = msgspec.json.Encoder()
_header = msgspec.json.Decoder(Header)


def kinds() -> tuple[type[Event], ...]:
    """Give every kind of event there is, in the order in which they are defined."""
    return tuple(Event.__subclasses__())


@cache
def _decoder(known: tuple[type[Event], ...]) -> msgspec.json.Decoder[Any]:
    return msgspec.json.Decoder(Union[known])  # noqa: UP007 - a union of a tuple


def encode(event: Event) -> bytes:
    return _encoder.encode(event) + b"\n"


def decode(line: bytes) -> Event | UnknownEvent:
    """Read one line, whatever it holds: brackets by the thousand, numbers by the yard.

    Raises:
        BrokenLine: it is no event of this or a later version; the message says why.
    """
    try:
        event: Event | UnknownEvent = _decoder(kinds()).decode(line)
        if isinstance(event, JobOpened) and event.version < VERSION:
            event = _of_earlier(line)
    except UnicodeDecodeError as fault:
        raise BrokenLine(f"not UTF-8: {fault.reason}") from None
    except UNREADABLE as fault:
        event = _other(line, str(fault))
    if not 0 < event.n <= HIGHEST_NUMBER:
        raise BrokenLine("its number is none that an entry can have")
    return event


def _of_earlier(line: bytes) -> JobOpened:
    """Read the opening of a job that an earlier version wrote."""
    return msgspec.convert(as_of_today(msgspec.json.decode(line)), JobOpened)


def _other(line: bytes, why: str) -> JobOpened | UnknownEvent:
    """Read a line that is none of the events of today, and say `why` where it should be one."""
    try:
        header = _header.decode(line)
    except UNREADABLE:
        raise BrokenLine(why) from None
    if header.event not in {kind.__struct_config__.tag for kind in kinds()}:
        return UnknownEvent(header.n, header.at, header.event, line.decode("utf-8", "replace"))
    if header.event == JobOpened.__struct_config__.tag:
        try:
            return _of_earlier(line)
        except UNREADABLE as fault:
            why = str(fault)
    version = header.version
    if isinstance(version, int) and version > VERSION:
        why += f" (it is of version {version}, this program knows {VERSION})"
    raise BrokenLine(f"{header.event!r}: {why}")
