"""Jobs for the tests of the card. All values are invented."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

import msgspec

from booth.card.build import card_of
from booth.card.model import Card
from booth.log import codec
from booth.log import events as ev
from booth.moment import Moment
from booth.units import System
from tests.job.make import START, at, mild, opened, q

#: What would steer a terminal, be read as markup of any kind, or be taken for a formula.
HOSTILE = (
    "[/ x [bold] [@click=app.quit]y[/]",
    "\x1b]0;SEIZED\x07\x1b[2J\x9b31m",
    "\u202egnp.exe\u2066 👨\u200d👩\u200d👧 車体塗装 e\u0301\u0301\u0301\u0301",
    "<script>alert(1)</script><img src=x onerror=alert(1)>",
    '"><svg onload=alert(1)>&lt;b&gt;&amp;&#60;',
    "</style></title></body>--><!-- ]]>",
    "[a](javascript:x) ![b](//c.d) <https://e.f> https://g.h www.i.jk l@m.no",
    "**b** _i_ `c` ~~s~~ | d | # e\n- f\n1. g\n> h\n    i\n---\n\\",
    "=1+1",
    '=HYPERLINK("x","y")',
    "+1",
    "-1",
    "@SUM(A1)",
    "\t=1",
    " =1",
    '"quoted, and\r\nbroken"',
    "'=1",
    "\uff1d1",
    "- ",
    "1. one",
    "$x^2$ {y} ==z== :smile: @someone #12",
)


def time_of(when: Moment) -> str:
    minutes = int(when.wall - START.wall) // 60
    return f"{(8 + minutes // 60) % 24:02}:{minutes % 60:02}"


def date_of(when: Moment) -> str:
    return f"2026-09-{21 + int(when.wall - START.wall) // 86400:02}"


def numbered(events: Sequence[ev.Event]) -> list[ev.Event]:
    return [msgspec.structs.replace(event, n=n) for n, event in enumerate(events, 1)]


def card(events: Sequence[ev.Event], system: System = System.METRIC, **more: Any) -> Card:
    given: dict[str, Any] = {"name": "trial-1a2b", "pictures": True, **more}
    return card_of(numbered(events), system, time_of, date_of, **given)


def measured(seconds: float = 0) -> Iterator[ev.Event]:
    """A mix, a cup, the air, a catch, a fan, a pattern, a pass."""

    def when(more: float) -> Moment:
        return at(seconds + more)

    pours = (ev.Pour("clear", q(200, "ml")), ev.Pour("hardener", q(100, "ml")))
    pours = (*pours, ev.Pour("thinner", q(30, "ml")))
    yield mild(seconds=seconds + 60)
    yield ev.BatchMixed(n=0, at=when(300), batch=1, pours=pours, total=q(330, "ml"))
    yield ev.NoteMade(n=0, at=when(310), text="cans: A12, B7")
    yield ev.EffluxTimed(n=0, at=when(400), cup="ford-4", seconds=21.5)
    yield ev.AirRead(n=0, at=when(500), inlet=q(190, "kPa"), fan_turns=q(2.5, "turns"))
    yield ev.CatchMade(
        n=0,
        at=when(560),
        seconds=30,
        amount=q(125, "ml"),
        delivery_ml_min=250,
        turns=q(2, "turns"),
        tip=q(1.4, "mm"),
    )
    yield ev.FanSet(n=0, at=when(600), width=q(260, "mm"), distance=q(180, "mm"))
    yield ev.PatternRead(
        n=0, at=when(700), shape="even, tapering", overlap=q(60, "%"), width=q(255, "mm")
    )
    yield ev.PassTimed(n=0, at=when(760), length=q(1.2, "m"), seconds=2.4)


def coated(
    parts: Sequence[str], coats: int = 3, seconds: float = 900, read: bool = True
) -> Iterator[ev.Event]:
    for coat in range(1, coats + 1):
        for part in parts:
            yield ev.CoatBegun(n=0, at=at(seconds), part=part, coat=coat)
            yield ev.CoatEnded(n=0, at=at(seconds + 150), part=part, coat=coat)
            if read and coat < coats:
                yield ev.FilmRead(
                    n=0,
                    at=at(seconds + 170),
                    part=part,
                    coat=coat,
                    last_wetted=q(50, "um"),
                    first_dry=q(60, "um"),
                )
            seconds += 240
        seconds += 700


def whole(parts: tuple[str, ...] = ("door", "hood")) -> list[ev.Event]:
    """A job from its opening to the second look at it."""
    return [
        opened(parts),
        *measured(),
        *coated(parts),
        ev.FaultSeen(n=0, at=at(7000), fault="runs", part=parts[-1]),
        ev.JobClosed(
            n=0, at=at(8000), verdict="good", words="flat", next_time="slower at the edge"
        ),
        ev.FaultSeen(n=0, at=at(90_000), fault="dust"),
        ev.JudgedAgain(n=0, at=at(90_010), verdict="usable", words="some dust"),
        ev.FinishedLater(n=0, at=at(90_020), work="polished", part=parts[0]),
    ]


#: Texts that the program itself reads, by their place in an entry.
OWN = {"boot-a", "us", "metric", "volume", "paint", "wet", "good"}
KEPT_KEYS = {"event", "unit", "shape", "cup", "fault", "stopwatch", "key", "kind", "by", "hazards"}


def poisoned(events: Sequence[ev.Event], text: str) -> list[ev.Event]:
    """The events with `text` in every place where people put one."""

    def poison(value: Any, key: str = "") -> Any:
        if isinstance(value, str):
            return value if key in KEPT_KEYS or value in OWN else text
        if isinstance(value, dict):
            return {name: poison(each, name) for name, each in value.items()}
        return [poison(each, key) for each in value] if isinstance(value, list) else value

    found = []
    for event in numbered(events):
        told = poison(msgspec.json.decode(codec.encode(event)))
        if isinstance(event, ev.JobOpened):
            told["parts"] = [f"{text}{at}" for at in range(len(event.parts))]
        line = msgspec.json.encode(told)
        found.append(codec.decode(line))
    return found  # type: ignore[return-value]
