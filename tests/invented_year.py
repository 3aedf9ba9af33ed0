"""A year of invented jobs with a known truth: what a shop does, day by day, written as its logs are.

Everything in it is invented, seeded, and said to be a demo. ``events_of`` makes one job without a
disk; ``write_year`` writes logs line by line through the codec, since a session brings every entry
onto the disk by itself; ``through_session`` writes one job through the program's own Session.
"""

from __future__ import annotations

import math
import random
from dataclasses import dataclass, field
from pathlib import Path

from msgspec.structs import replace

from booth.log import events as ev
from booth.log.codec import encode
from booth.log.session import Session
from booth.moment import Moment, later, utc_text
from booth.profile.model import Efflux, Film, Gun, Mix, MixPart, Profile, Range, Thinner, Waits
from booth.trade.cups.cup_names import cup_named
from booth.trade.cups.efflux_time import efflux_from_viscosity, viscosity_from_efflux
from booth.trade.result import Value
from booth.trade.waits.flash_off import flash_off_at
from booth.trade.waits.wait_time import WaitTime
from tests.job.make import one_time, q

START = Moment(1_735_725_600.0, 10_000.0, "boot of an invented year")
DAY_S = 86_400.0
FLASH_S, AT_C = 600.0, 21.0
GUNS = ("grey gun", "blue gun")
COMPRESSOR = {"receiver_l": 50, "flow_l_min": 130, "cut_in_kpa": 600, "cut_out_kpa": 800}
SHOP = {"guns": [{"name": name, "tip_mm": 1.4, "hvlp": True} for name in GUNS]}
FAN_MM, OVERLAP, AREA_M2 = 250.0, 0.5, 1.2
#: The teeth of a gauge [um].
TEETH = tuple(range(10, 300, 5))
PRODUCT = Profile(
    key="invented-clear",
    name="Invented clear",
    source="invented",
    demo=True,
    mix=Mix(
        parts=(MixPart("clear", 2, 1.0), MixPart("hardener", 1, 1.05)),
        thinner=Thinner("thinner", Range(10, 10), 25, 0.8),
        pot_life=one_time(4 * 3600),
    ),
    efflux=Efflux("Ford #4", Range(30, 34)),
    gun=Gun(
        inlet_kpa=Range(180, 210),
        delivery_ml_min=Range(100, 300),
        overlap_percent=Range(50, 50),
        hvlp=True,
    ),
    film=Film(coats=Range(2, 2), wet_um=Range(40, 60)),
    waits=Waits(flash_off=one_time(FLASH_S, AT_C), recoat_closes=one_time(24 * 3600)),
)


@dataclass(frozen=True)
class Truth:
    """What is so in this shop. Each is the middle of what its jobs show; scatter: standard deviation
    of the logarithm from job to job."""

    wait: float = 1.3
    per_turn_ml_min: dict[str, float] = field(
        default_factory=lambda: {"grey gun": 90.0, "blue gun": 120.0}
    )
    water_ratio: float = 0.75
    lands: float = 0.62
    thinner_percent: float = 8.0
    coat_times: float = 2.6
    recovery_s: float = 62.0
    speed_m_s: float = 0.4
    scatter: float = 0.08

    def delivery(self, gun: str, turns: float) -> float:
        """A rising curve that flattens [ml/min]."""
        return self.per_turn_ml_min[gun] * turns**0.7


@dataclass(frozen=True)
class Kind:
    """What sort of job one is."""

    gun: str = GUNS[0]
    turns: float = 2.0
    rehearsal: bool = False
    lands: str = "large"


def teeth_around(film_um: float) -> tuple[float, float]:
    """The last tooth that came out wet and the first that stayed dry."""
    wet = max((tooth for tooth in TEETH if tooth <= film_um), default=0)
    return float(wet), float(min(tooth for tooth in TEETH if tooth > film_um))


class _Diary:
    """Keeps what happens, one entry after the other."""

    def __init__(self, truth: Truth, drawn: random.Random, start: Moment) -> None:
        self.truth, self.drawn, self.now = truth, drawn, start
        self.events: list[ev.Event] = []

    def about(self, middle: float, share: float = 1.0) -> float:
        return middle * math.exp(self.drawn.gauss(0.0, self.truth.scatter * share))

    def keep(self, kind: type[ev.Event], after_s: float = 1.0, **fields: object) -> None:
        self.now = later(self.now, after_s)
        self.events.append(kind(n=len(self.events) + 1, at=self.now, **fields))


def events_of(
    truth: Truth, drawn: random.Random, day: int = 0, kind: Kind | None = None
) -> list[ev.Event]:
    """Give the entries of one job."""
    kind = kind or Kind()
    diary = _Diary(truth, drawn, later(START, day * DAY_S))
    diary.keep(
        ev.JobOpened,
        job=f"job-{day:03}",
        profile=PRODUCT,
        parts=("door", "hood"),
        gun=kind.gun,
        shop=SHOP,
        rehearsal=kind.rehearsal,
        system="metric",
    )
    part_c = drawn.uniform(14.0, 26.0)
    damp = drawn.uniform(40.0, 65.0)
    diary.keep(ev.WeatherRead, air=q(part_c, "degC"), humidity=q(damp, "%"), part=q(part_c, "degC"))
    _recovers(diary)
    _thins(diary)
    paint = diary.about(truth.delivery(kind.gun, kind.turns))
    _catch(diary, "water", diary.about(paint / truth.water_ratio, 0.5), kind.turns)
    _catch(diary, "paint", paint, kind.turns)
    _sprays(diary, kind, paint, part_c)
    diary.keep(ev.JobClosed, after_s=3600.0, verdict="good")
    return diary.events


def _recovers(diary: _Diary) -> None:
    diary.keep(
        ev.RecoveryTimed,
        seconds=diary.about(diary.truth.recovery_s, 0.5),
        cut_in=q(600, "kPa"),
        cut_out=q(800, "kPa"),
        receiver=q(50, "l"),
        rated=q(130, "l/min"),
    )


def _thins(diary: _Diary) -> None:
    """Mixed, timed too thick, thinned, timed, thinned past the target, timed."""
    diary.keep(
        ev.BatchMixed,
        after_s=300.0,
        batch=1,
        pours=(ev.Pour("clear", q(400, "ml")), ev.Pour("hardener", q(200, "ml"))),
    )
    cup, share = cup_named("Ford #4"), _share(diary.about(diary.truth.thinner_percent) / 100)
    target = viscosity_from_efflux(cup, 32.0)
    assert isinstance(target, Value)
    fall, fraction = 6.0, 0.0
    for added in (0.0, 0.04, 0.09):
        if added:
            diary.keep(
                ev.ThinnerAdded,
                amount=q(600 * added, "ml"),
                remaining=q(600 * (1 + fraction), "ml"),
            )
            fraction += added
        nu = target.value * math.exp(-fall * (_share(fraction) - share))
        seconds = efflux_from_viscosity(cup, nu)
        assert isinstance(seconds, Value)
        run = {"cup": cup.key, "seconds": seconds.value, "liquid_temperature": q(21, "degC")}
        diary.keep(ev.EffluxTimed, after_s=60.0, **run)


def _share(fraction: float) -> float:
    return fraction / (1 + fraction)


def _catch(diary: _Diary, liquid: str, delivery: float, turns: float) -> None:
    diary.keep(
        ev.CatchMade,
        after_s=90.0,
        seconds=60.0,
        amount=q(delivery, "ml"),
        delivery_ml_min=delivery,
        liquid=liquid,
        turns=q(turns, "turns"),
        tip=q(1.4, "mm"),
    )


def _sprays(diary: _Diary, kind: Kind, delivery: float, part_c: float) -> None:
    truth, drawn = diary.truth, diary.drawn
    diary.keep(ev.FanSet, width=q(FAN_MM, "mm"))
    speed = diary.about(truth.speed_m_s, 0.5)
    diary.keep(ev.PassTimed, length=q(1.0, "m"), seconds=1.0 / speed)
    for part in ("door", "hood"):
        diary.keep(ev.AreaAdded, shape="area", area=q(AREA_M2, "m2"), part=part)
    area, amount = q(2 * AREA_M2, "m2"), q(400, "ml")
    diary.keep(ev.AmountPlanned, area=area, amount=amount, lands=kind.lands)
    lands = diary.about(truth.lands)
    swept = FAN_MM * (1 - OVERLAP) * speed * 1000 * 60 / 1e6
    film_um = lands * delivery / swept
    at_trigger_s = AREA_M2 * 50.0 / lands / delivery * 60
    slow = diary.about(truth.coat_times)
    wait = flash_off_at(FLASH_S, AT_C, part_c)
    assert isinstance(wait, WaitTime)
    real_s = wait.seconds * diary.about(truth.wait)
    for coat in (1, 2):
        for part in ("door", "hood"):
            diary.keep(ev.CoatBegun, after_s=20.0, part=part, coat=coat)
            diary.keep(ev.CoatEnded, after_s=slow * at_trigger_s, part=part, coat=coat)
        ended = diary.now
        if coat == 1:
            wetted, dry = teeth_around(diary.about(film_um, 0.3))
            read = {"last_wetted": q(wetted, "um"), "first_dry": q(dry, "um")}
            diary.keep(ev.FilmRead, part="hood", coat=coat, **read)
            _touches(diary, ended, real_s, drawn.uniform(0.5, 1.0) * wait.seconds)


def _touches(diary: _Diary, ended: Moment, real_s: float, first_s: float) -> None:
    """Touched again and again, a little apart, until it is dry."""
    at_s = first_s
    while True:
        result = "dry" if at_s >= real_s else "tacky"
        diary.now = later(ended, at_s)
        diary.keep(ev.TouchTried, after_s=0.0, part="hood", result=result)
        if result == "dry":
            return
        at_s += diary.drawn.uniform(0.05, 0.3) * FLASH_S


def write_year(
    folder: Path, seed: int = 1, jobs: int = 250, truth: Truth | None = None
) -> list[Path]:
    """Write the logs of a year; every tenth job is a rehearsal, the guns take turns."""
    drawn, found = random.Random(seed), []
    folder.mkdir(parents=True, exist_ok=True)
    for day in range(jobs):
        kind = Kind(
            gun=GUNS[day % 2],
            turns=(1.5, 2.0, 2.5)[day % 3],
            rehearsal=day % 10 == 9,
            lands="small" if day % 4 == 3 else "large",
        )
        events = events_of(truth or Truth(), drawn, day, kind)
        stem = utc_text(events[0].at, "%Y%m%d-%H%M", "")
        path = folder / f"{stem}-invented-clear-{day:04x}.jsonl"
        path.write_bytes(b"".join(map(encode, events)))
        found.append(path)
    return found


def through_session(folder: Path, events: list[ev.Event]) -> Path:
    """Write one job as the program does: entry by entry, each on the disk before the next."""
    first = events[0]
    assert isinstance(first, ev.JobOpened)
    session = Session.begin(folder, first)
    try:
        for each in events[1:]:
            session.record(replace(each, n=0))
        return session.log.path
    finally:
        session.close()
