"""What was kept before the pictures are taken; invented."""

from __future__ import annotations

from collections.abc import Sequence

from booth.log import events as ev
from booth.moment import Moment, later
from booth.shop.model import Shop
from booth.shop.read import read_shop_text
from tests.job.make import q
from tests.manual_clock import ManualClock
from tests.screens.at_app import a_job
from tests.screens.test_fits import bundled
from tests.shop.made import WHOLE

PARTS = ("left door", "right door", "hood", "fuel flap", "mirror shells")


def whole_shop() -> Shop:
    return read_shop_text(WHOLE, "shop.toml").shop


def weather(at: Moment, air: float = 22.0, part: float = 21.0) -> ev.WeatherRead:
    return ev.WeatherRead(n=0, at=at, air=q(air, "degC"), humidity=q(48, "%"), part=q(part, "degC"))


def coat(at: Moment, part: str, number: int = 1, took_s: float = 70.0) -> tuple[ev.Event, ev.Event]:
    """A coat that ended then."""
    return (
        ev.CoatBegun(n=0, at=later(at, -took_s), part=part, coat=number),
        ev.CoatEnded(n=0, at=at, part=part, coat=number),
    )


def mixed(at: Moment) -> ev.BatchMixed:
    pours = tuple(
        ev.Pour(name, q(amount, "ml"))
        for name, amount in (("clear", 364), ("hardener", 182), ("medium thinner", 55))
    )
    return ev.BatchMixed(n=0, at=at, batch=1, pours=pours, total=q(600, "ml"))


def measured(clock: ManualClock) -> Sequence[ev.Event]:
    """A morning in which everything was measured once."""
    now = clock.now()
    start = later(now, -2400)
    caught = {"amount": q(136, "ml"), "delivery_ml_min": 272.0, "liquid": "paint"}
    return (
        *(ev.StepDone(n=0, at=start, step=step) for step in ("cautions", "prepare", "fresh-air")),
        weather(later(now, -600)),
        ev.AreaAdded(n=0, at=start, shape="area", area=q(2.4, "m2")),
        ev.AmountPlanned(n=0, at=start, area=q(2.4, "m2"), amount=q(600, "ml")),
        mixed(later(start, 300)),
        *(
            ev.EffluxTimed(n=0, at=later(start, 400 + n), cup="ford-4", seconds=seconds)
            for n, seconds in enumerate((26.4, 26.1))
        ),
        ev.ThinnerAdded(n=0, at=later(start, 500), amount=q(20, "ml"), remaining=q(590, "ml")),
        *(
            ev.EffluxTimed(n=0, at=later(start, 600 + n), cup="ford-4", seconds=seconds)
            for n, seconds in enumerate((21.4, 21.9, 21.6))
        ),
        ev.AirRead(n=0, at=later(start, 700), inlet=q(195, "kPa")),
        ev.CatchMade(n=0, at=later(start, 800), seconds=30.0, **caught),  # type: ignore[arg-type]
        ev.FanSet(n=0, at=later(start, 900), width=q(270, "mm"), distance=q(180, "mm")),
        ev.PatternRead(n=0, at=later(start, 1000), shape="even", overlap=q(50, "%")),
        ev.PassTimed(n=0, at=later(start, 1100), length=q(1, "m"), seconds=2.5),
        *coat(later(now, -300), "hood"),
        *coat(later(now, -160), "left door"),
        ev.FilmRead(
            n=0, at=now, part="hood", last_wetted=q(50, "um"), first_dry=q(60, "um"), coat=1
        ),
        ev.NoteMade(n=0, at=now, text="wind from the door"),
    )


def past_jobs(clock: ManualClock) -> None:
    """Jobs of the last weeks, on the disk."""
    profiles = [bundled(name) for name in ("two-pack-clear", "epoxy-primer", "two-pack-gloss")]
    verdicts = (("good", ""), ("usable", "less in the corners"), ("redo", "slower, 20 cm away"))
    for number in range(14):
        begun = later(clock.now(), -86400.0 * (2 * number + 1))
        verdict, next_time = verdicts[number % 3]
        a_job(
            begun,
            weather(begun, air=18 + number % 5),
            *coat(later(begun, 2400), "hood"),
            ev.FaultSeen(n=0, at=later(begun, 5000), fault="dust", part="hood"),
            ev.JobClosed(
                n=0,
                at=later(begun, 9000),
                verdict=verdict,
                words="even along the edge",
                next_time=next_time,
            ),
            parts=("hood", "left door") if number % 2 else ("24 doors",),
            profile=profiles[number % len(profiles)],
            gun="clear gun",
        )
