"""Events and jobs for the tests of the log; all values are invented."""

from __future__ import annotations

from pathlib import Path

import msgspec
from hypothesis import strategies as st

from booth.log import codec
from booth.log import events as ev
from booth.log.history import history
from booth.log.summary import JobSummary
from booth.moment import Moment
from booth.profile.model import Film, Profile, Range
from booth.units import Quantity

PROFILE = Profile(
    key="demo-clear",
    name="Demo clear, two-pack",
    source="invented",
    demo=True,
    film=Film(coats=Range(2.0, 2.0)),
)


def moment(seconds: float = 0.0) -> Moment:
    """Give a moment `seconds` after 2025-06-15 15:06:40 UTC."""
    return Moment(1_750_000_000.0 + seconds, 1000.0 + seconds, "boot 1")


def quantity(value: float, unit: str) -> Quantity:
    """Give a quantity typed in its base unit."""
    return Quantity(value, unit, f"{value:g} {unit}")


def opened(n: int = 1, seconds: float = 0.0, **fields: object) -> ev.JobOpened:
    """Give the opening of a job."""
    given: dict[str, object] = {"job": "job", "profile": PROFILE, "parts": ("hood", "door")}
    return ev.JobOpened(n=n, at=moment(seconds), **(given | fields))  # type: ignore[arg-type]


def note(n: int, text: str = "a note") -> ev.NoteMade:
    """Give a note."""
    return ev.NoteMade(n=n, at=moment(n), text=text)


def write(folder: Path, name: str, *events: ev.Event) -> Path:
    """Write a log, its entries numbered as they come."""
    path = folder / f"{name}.jsonl"
    numbered = [msgspec.structs.replace(event, n=n) for n, event in enumerate(events, 1)]
    path.write_bytes(b"".join(map(codec.encode, numbered)))
    return path


def unfinished(folder: Path) -> list[JobSummary]:
    """Give the jobs that are not closed, and what cannot be read."""
    return [each for each in history(folder) if each.is_open or each.fault]


def closed(verdict: str = "good", seconds: float = 5000, **more: str) -> ev.JobClosed:
    return ev.JobClosed(n=0, at=moment(seconds), verdict=verdict, **more)


def voided(target: int) -> ev.Voided:
    return ev.Voided(n=0, at=moment(6000), target=target)


def restored(target: int) -> ev.Restored:
    return ev.Restored(n=0, at=moment(7000), target=target)


def caught(
    delivery: float, turns: float | None = 1.5, liquid: str = "paint", tip: float | None = 1.4
) -> ev.CatchMade:
    return ev.CatchMade(
        n=0,
        at=moment(100),
        seconds=60,
        amount=quantity(delivery, "ml"),
        liquid=liquid,
        delivery_ml_min=delivery,
        turns=quantity(turns, "turns") if turns is not None else None,
        inlet=quantity(190, "kPa"),
        tip=quantity(tip, "mm") if tip is not None else None,
    )


def timed(seconds: float, cup: str = "Ford #4") -> ev.EffluxTimed:
    return ev.EffluxTimed(n=0, at=moment(50), cup=cup, seconds=seconds)


#: Any text that JSON can hold: everything but lone surrogates.
any_text = st.text(st.characters(exclude_categories=["Cs"]), max_size=40)
moments = st.builds(
    Moment, st.floats(0, 4e9), st.floats(0, 1e7), st.sampled_from(["boot 1", "boot 2"])
)
quantities = st.builds(Quantity, st.floats(0, 1e4), st.sampled_from(["ml", "kPa"]), any_text)
#: Events of several shapes, not yet numbered.
some_events = st.one_of(
    st.builds(ev.NoteMade, n=st.just(0), at=moments, text=any_text, part=any_text),
    st.builds(
        ev.WeatherRead,
        n=st.just(0),
        at=moments,
        air=quantities,
        humidity=quantities,
        part=quantities,
    ),
    st.builds(ev.EffluxTimed, n=st.just(0), at=moments, cup=any_text, seconds=st.floats(0, 500)),
    st.builds(ev.CoatBegun, n=st.just(0), at=moments, part=any_text, coat=st.integers(1, 9)),
    st.builds(ev.Voided, n=st.just(0), at=moments, target=st.integers(1, 30)),
)
