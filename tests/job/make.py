"""Small makers of events and profiles for tests. All values are invented."""

from __future__ import annotations

from booth.log.events import JobOpened, WeatherRead
from booth.moment import Moment, later
from booth.profile.model import (
    AtTemperature,
    Efflux,
    Film,
    Gun,
    Hazard,
    Mix,
    MixPart,
    Profile,
    Range,
    Thinner,
    WaitRule,
    Waits,
)
from booth.units import Quantity

START = Moment(1_790_000_000.0, 10_000.0, "boot-a")


def at(seconds: float) -> Moment:
    """The moment so many seconds after the start."""
    return later(START, seconds)


def q(value: float, unit: str, typed: str = "") -> Quantity:
    """A quantity."""
    return Quantity(value, unit, typed or f"{value:g} {unit}")


def one_time(seconds: float, at_c: float = 21.0) -> WaitRule:
    """A wait given at one temperature."""
    return WaitRule((AtTemperature(at_c, seconds),))


def table(*rows: tuple[float, float]) -> WaitRule:
    """A wait given by (degC, seconds)."""
    return WaitRule(tuple(AtTemperature(c, s) for c, s in rows))


def profile(**changes: object) -> Profile:
    """A two-pack clear with three coats."""
    given: dict[str, object] = {
        "key": "trial-clear",
        "name": "Trial clear",
        "source": "invented",
        "demo": True,
        "hazards": (Hazard.ISOCYANATE, Hazard.FLAMMABLE),
        "mix": Mix(
            parts=(MixPart("clear", 2, 1.0), MixPart("hardener", 1, 1.05)),
            thinner=Thinner("thinner", Range(10, 10), 15, 0.8),
            pot_life=one_time(4 * 3600),
        ),
        "efflux": Efflux("Ford #4", Range(20, 24)),
        "gun": Gun(inlet_kpa=Range(180, 210), delivery_ml_min=Range(170, 240)),
        "film": Film(coats=Range(3, 3), volume_solids_percent=Range(45, 45), wet_um=Range(40, 60)),
        "waits": Waits(
            flash_off=one_time(600),
            recoat_closes=one_time(24 * 3600),
            handle=one_time(8 * 3600),
        ),
    }
    given.update(changes)
    return Profile(**given)  # type: ignore[arg-type]


def mild(n: int = 2, seconds: float = 0.0, **changes: float) -> WeatherRead:
    """A reading at which the waits of these profiles hold as they are: 21 C, 50 %, a part of 21 C."""
    air, humidity, part = (
        changes.get(name, usual)
        for name, usual in (("air", 21.0), ("humidity", 50.0), ("part", 21.0))
    )
    return WeatherRead(
        n=n, at=at(seconds), air=q(air, "degC"), humidity=q(humidity, "%"), part=q(part, "degC")
    )


def opened(parts: tuple[str, ...] = ("door", "hood"), **changes: object) -> JobOpened:
    """The first event of a job."""
    return JobOpened(n=1, at=START, job="trial", profile=profile(**changes), parts=parts)
