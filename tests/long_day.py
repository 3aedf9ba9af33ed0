"""A day on which everything was tried more than once, for what larger windows show. All of it invented."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

from booth.log import events as ev
from booth.moment import Moment, later
from booth.profile.model import Profile
from booth.profile.read import read_profile
from tests.job.make import q
from tests.manual_clock import ManualClock

PARTS = ("left door", "right door", "hood")
#: Minutes ago, seconds; thinner went in before the third and the fifth.
RUNS = ((93, 27.8), (92, 28.4), (87, 24.2), (86, 24.6), (81, 21.4), (80, 21.9), (79, 21.6))
#: Minutes ago, ml/min, what was caught, turns.
CATCHES = (
    (70, 228.0, "water", 2.0),
    (66, 196.0, "paint", 2.0),
    (63, 172.0, "paint", 1.5),
    (61, 165.0, "paint", 1.75),
)
WEATHER = ((118, 19.5, 61.0, 17.5), (64, 21.0, 55.0, 19.0), (9, 22.5, 49.0, 21.0))
PASSES = ((45, 2.9), (44, 2.1), (43, 2.45))
FANS = ((58, 210.0, 2.0), (56, 235.0, 2.5), (54, 252.0, 2.75))


def clear() -> Profile:
    """The bundled two-pack clear."""
    found = read_profile(Path(__file__).parents[1] / "profiles" / "two-pack-clear.toml")
    assert isinstance(found, Profile)
    return found


def long_day(clock: ManualClock) -> Sequence[ev.Event]:
    """All of it, in its order."""
    return sorted(_events(clock.now()), key=lambda event: event.at.wall)


def _events(now: Moment) -> Iterator[ev.Event]:
    def at(minutes: float) -> Moment:
        return later(now, -60.0 * minutes)

    for ago, air, humidity, part in WEATHER:
        yield ev.WeatherRead(
            n=0, at=at(ago), air=q(air, "degC"), humidity=q(humidity, "%"), part=q(part, "degC")
        )
    for ago, square_m, name in ((115, 1.0, "hood"), (114, 3.0, "")):
        yield ev.AreaAdded(
            n=0, at=at(ago), shape="area", dimensions={}, area=q(square_m, "m2"), part=name
        )
    pours = (("clear", 364.0), ("hardener", 182.0), ("thinner", 54.0))
    poured = tuple(ev.Pour(name, q(amount, "ml")) for name, amount in pours)
    yield ev.BatchMixed(n=0, at=at(96), batch=1, pours=poured, total=q(600, "ml"))
    for ago, seconds in RUNS:
        yield ev.EffluxTimed(n=0, at=at(ago), cup="ford-4", seconds=seconds)
    for ago, amount in ((89, 18.0), (83, 15.0)):
        yield ev.ThinnerAdded(n=0, at=at(ago), amount=q(amount, "ml"), remaining=q(590, "ml"))
    for ago, kpa in ((76, 230.0), (73, 198.0)):
        yield ev.AirRead(n=0, at=at(ago), inlet=q(kpa, "kPa"))
    for ago, ml_min, liquid, turns in CATCHES:
        yield ev.CatchMade(
            n=0,
            at=at(ago),
            seconds=30.0,
            amount=q(ml_min / 2, "ml"),
            delivery_ml_min=ml_min,
            liquid=liquid,
            turns=q(turns, "turns"),
        )
    for ago, width, turns in FANS:
        yield ev.FanSet(n=0, at=at(ago), width=q(width, "mm"), turns=q(turns, "turns"))
    for ago, shape in ((57, "heavy middle"), (55, "even, tapering"), (53, "even")):
        yield ev.PatternRead(n=0, at=at(ago), shape=shape, overlap=q(50, "%"))
    for ago, seconds in PASSES:
        yield ev.PassTimed(n=0, at=at(ago), length=q(1.2, "m"), seconds=seconds)
    for name, coat, begun, ended in (("hood", 1, 40, 37.5), ("left door", 1, 35, 33)):
        yield ev.CoatBegun(n=0, at=at(begun), part=name, coat=coat)
        yield ev.CoatEnded(n=0, at=at(ended), part=name, coat=coat)
    for ago, name, wet, dry in ((37, "hood", 50.0, 63.0), (32, "left door", 40.0, 50.0)):
        yield ev.FilmRead(
            n=0, at=at(ago), part=name, last_wetted=q(wet, "um"), first_dry=q(dry, "um"), coat=1
        )
