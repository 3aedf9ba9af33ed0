"""What past jobs teach the next one: the settings that came out good, needle turns and delivery."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import NamedTuple

from booth.job import measured
from booth.log.events import JobOpened
from booth.log.fold import Job, NoJob, fold
from booth.log.parse import parse
from booth.log.store import log_bytes, log_files
from booth.log.summary import opening_of, summary_of
from booth.moment import Moment
from booth.units import Quantity

#: Two tips are the same when they are within half of the smallest step tips are made in (0.1 mm).
SAME_TIP_MM = 0.05
MOST_PAIRS = 500
MINUTE_OF_NAME = len("20250615-1506")


@dataclass(frozen=True, slots=True)
class GoodSettings:
    """What was set and measured last in a job that came out good. None: not measured there."""

    path: Path
    job: str
    opened: Moment
    gun: str
    parts: tuple[str, ...]
    efflux_s: float | None = None
    efflux_cup: str | None = None
    thinner_percent: float | None = None
    delivery_ml_min: float | None = None
    delivery_liquid: str | None = None
    turns: float | None = None
    tip_mm: float | None = None
    inlet_kpa: float | None = None
    cap_kpa: float | None = None
    fan_mm: float | None = None
    fan_turns: float | None = None
    distance_mm: float | None = None
    overlap_percent: float | None = None
    pass_mm_s: float | None = None
    next_time: str = ""


class CatchPair(NamedTuple):
    """One past catch at a known needle setting."""

    turns: float
    delivery_ml_min: float
    liquid: str


class PastJobs:
    """The jobs of a folder, as far as they teach the one on the bench; each question read once."""

    def __init__(self, folder: Path | None = None) -> None:
        self.folder = folder
        self._pairs: dict[tuple[str, float | None, str, str], tuple[CatchPair, ...]] = {}

    def pairs(
        self, gun: str, tip_mm: float | None, profile_key: str, without: str
    ) -> tuple[CatchPair, ...]:
        """Catches of past jobs with this gun and tip, see ``pairs``."""
        asked = gun, tip_mm, profile_key, without
        if self.folder is None:
            return ()
        if asked not in self._pairs:
            found = pairs(self.folder, gun, tip_mm, profile_key, without=without)
            self._pairs[asked] = tuple(found)
        return self._pairs[asked]


def last_good(folder: Path, profile_key: str, gun: str = "") -> GoodSettings | None:
    """Give the settings of the latest job of this profile, and gun if named, closed as good."""
    best: tuple[Path, bytes, Moment] | None = None
    for path, data, opened in _jobs(folder, profile_key, gun):
        if best is not None and path.name[:MINUTE_OF_NAME] != best[0].name[:MINUTE_OF_NAME]:
            break
        # Names tell minutes only: of two in one minute, the later opening decides.
        if best is not None and best[2].wall >= opened.at.wall:
            continue
        if summary_of(path, data).verdict == "good":
            best = path, data, opened.at
    if best is None:
        return None
    return settings_of(best[0], fold(parse(best[1]).events))


def settings_of(path: Path, job: Job) -> GoodSettings:
    """Give what was set and measured last in `job`."""
    liquid = next((each for each in ("paint", "water") if measured.catches(job, each)), None)
    catches = measured.catches(job, liquid) if liquid else ()
    last = catches[-1] if catches else None
    air = job.airs[-1] if job.airs else None
    thinner = measured.thinner_fraction(job)
    fan_turns = [each for each in (*job.fans, *job.airs) if _turns(each) is not None]
    distances = [each.distance.value for each in job.fans if each.distance]
    overlaps = [each.overlap.value for each in job.patterns if each.overlap]
    fan = measured.fan_mm(job)
    return GoodSettings(
        path=path,
        job=job.opened.job or path.stem,
        opened=job.opened.at,
        gun=job.opened.gun,
        parts=job.parts,
        efflux_s=measured.mean_efflux_s(job),
        efflux_cup=job.runs[-1].cup if measured.efflux_runs(job) else None,
        thinner_percent=None if thinner is None else thinner * 100,
        delivery_ml_min=measured.mean_delivery_ml_min(job, liquid) if liquid else None,
        delivery_liquid=liquid,
        turns=_value(last.turns) if last else None,
        tip_mm=_value(last.tip) if last else None,
        inlet_kpa=air.inlet.value if air else _value(last.inlet) if last else None,
        cap_kpa=_value(air.cap) if air else None,
        fan_mm=fan[0] if fan is not None and fan[1] == "measured" else None,
        fan_turns=_turns(max(fan_turns, key=lambda each: each.n)) if fan_turns else None,
        distance_mm=distances[-1] if distances else None,
        overlap_percent=overlaps[-1] if overlaps else None,
        pass_mm_s=_pass_mm_s(job),
        next_time=job.closed.next_time if job.closed else "",
    )


def pairs(
    folder: Path,
    gun: str = "",
    tip_mm: float | None = None,
    profile_key: str = "",
    most: int = MOST_PAIRS,
    without: str = "",
) -> list[CatchPair]:
    """Give needle turns and delivery of past catches, the latest job first.

    gun, tip_mm: where given, only catches with these; a catch that does not say its tip is then
    left out. profile_key: where given, paint catches of other products are left out, since another
    paint runs otherwise; water is water. without: name of a job to leave out, the one at hand.
    """
    found: list[CatchPair] = []
    for _, data, opened in _jobs(folder, "", gun):
        if b"catch made" not in data or (without and opened.job == without):
            continue
        same_product = not profile_key or opened.profile.key == profile_key
        try:
            catches = fold(parse(data).events).catches
        except NoJob:
            continue
        for each in catches:
            if each.turns is None or (each.liquid != "water" and not same_product):
                continue
            tip = _value(each.tip)
            if tip_mm is not None and (tip is None or abs(tip - tip_mm) >= SAME_TIP_MM):
                continue
            found.append(CatchPair(each.turns.value, each.delivery_ml_min, each.liquid))
        if len(found) >= most:
            break
    return found[:most]


def _jobs(folder: Path, profile_key: str, gun: str) -> Iterator[tuple[Path, bytes, JobOpened]]:
    """Give path, bytes and opening of the jobs of this profile and gun, the latest name first."""
    for path in log_files(folder):
        try:
            data = log_bytes(path)
        except OSError:
            continue
        opened = opening_of(data)
        if opened is None:
            # A job whose opening cannot be read has no profile and no gun to go by.
            continue
        if (profile_key and opened.profile.key != profile_key) or (gun and opened.gun != gun):
            continue
        yield path, data, opened


def _value(quantity: Quantity | None) -> float | None:
    return None if quantity is None else quantity.value


def _turns(event: object) -> float | None:
    """Give the turns of the fan that an event of either kind tells."""
    for name in ("turns", "fan_turns"):
        quantity = getattr(event, name, None)
        if quantity is not None:
            return float(quantity.value)
    return None


#: A measured length is kept in either of these [mm].
MM = {"mm": 1.0, "m": 1000.0}


def _pass_mm_s(job: Job) -> float | None:
    """The pace of the last timed pass [mm/s]."""
    for each in reversed(job.passes):
        if each.seconds > 0 and each.length.unit in MM:
            return each.length.value * MM[each.length.unit] / each.seconds
    return None
