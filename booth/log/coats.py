"""The coats that were laid: on each part, of each product. Pure."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from booth.log import events as ev
from booth.log.stretches import Entry, Stretch


class Coat(Struct, frozen=True):
    """One coat on one part. number: 1, 2, …; ended is None while it is being sprayed."""

    part: str
    number: int
    begun: ev.CoatBegun
    ended: ev.CoatEnded | None = None
    weather: ev.WeatherRead | None = None
    touches: tuple[ev.TouchTried, ...] = ()


def coats_of(
    live: Sequence[Entry], stretches: Sequence[Stretch]
) -> list[dict[str, tuple[Coat, ...]]]:
    """The coats of each product, by part. What ends or touches a coat may come after the next began."""
    every: list[dict[str, list[Coat]]] = []
    last: dict[str, list[Coat]] = {}
    weather: ev.WeatherRead | None = None
    for stretch in stretches:
        own: dict[str, list[Coat]] = {}
        every.append(own)
        for event in live[stretch.start : stretch.end]:
            if isinstance(event, ev.WeatherRead):
                weather = event
            elif isinstance(event, ev.CoatBegun):
                coats = last[event.part] = own.setdefault(event.part, [])
                if not coats or coats[-1].ended is not None:
                    coats.append(Coat(event.part, len(coats) + 1, event))
            elif isinstance(event, ev.CoatEnded | ev.TouchTried) and event.part in last:
                coats = last[event.part]
                coats[-1] = _with(coats[-1], event, weather)
    return [{part: tuple(coats) for part, coats in own.items()} for own in every]


def _with(coat: Coat, event: ev.CoatEnded | ev.TouchTried, weather: ev.WeatherRead | None) -> Coat:
    if isinstance(event, ev.TouchTried):
        ended = coat.ended is not None
        return replace(coat, touches=(*coat.touches, event)) if ended else coat
    return replace(coat, ended=event, weather=weather) if coat.ended is None else coat
