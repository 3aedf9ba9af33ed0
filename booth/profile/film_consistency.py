"""Whether the coats of a profile can leave the film that it asks for.

Films leave five percent: a data sheet rounds wet and dry film to two digits, which is off by up to
5 % (1.05 is printed as 1.0).
"""

from __future__ import annotations

from typing import NamedTuple

from booth.files.faults import Faults
from booth.profile.model import Mix, Profile, Range
from booth.profile.ranges import typed_range
from booth.toml.typed import in_unit
from booth.units import Kind, System

ROUNDED = 0.001
FILM_ROUNDED = 0.05
BOTH = "film.coats, or [[coats]] once for each coat"
ONE = Range(1, 1)


class _Coats(NamedTuple):
    """Some coats alike: how many, and the wet film of each [um]."""

    times: Range
    wet_um: Range | None


def judge_film(profile: Profile, faults: Faults) -> None:
    """Tell what of coats, film and solids cannot be together."""
    film = profile.film
    solids, solvent = film.volume_solids_percent, film.solvent_percent
    least = (solids.low or 0.0) if solids is not None else 0.0
    if solvent is not None and least + solvent > 100 * (1 + ROUNDED):
        found = f"{least:g} % solids and {solvent:g} % solvent"
        faults.add(("film", "solvent_percent"), found, "together no more than 100 %")
    coats = _coats(profile, faults)
    if coats:
        _dry(profile, coats, faults)


def _coats(profile: Profile, faults: Faults) -> list[_Coats]:
    """The coats as planned; none where it is not known how many, which is told."""
    film, listed = profile.film, profile.coats
    for number, coat in enumerate(listed):
        path = ("coats", number, "times")
        if coat.until_hidden and coat.times is None and not faults.below(path):
            expected = "how many it takes usually and at the most"
            faults.add(path, "a coat until it hides, without a most", expected, 'Write "2 to 4".')
    if faults.hides(("film", "coats")) or faults.below(("coats",)):
        return []
    if not listed:
        if film.coats is not None:
            return [_Coats(film.coats, film.wet_um)]
        # What stands there under another name was told.
        if all(fault.advice != "Did you mean coats?" for fault in faults):
            advice = "Write coats = 2 under [film]."
            faults.add(("film", "coats"), "nothing", BOTH, advice)
        return []
    found = [_Coats(coat.times or ONE, coat.wet_um or film.wet_um) for coat in listed]
    whole = _whole(found)
    if film.coats is not None and film.coats != whole:
        told = f"{_count(film.coats)} beside a list of {_count(whole)}"
        faults.add(("film", "coats"), told, BOTH, "Delete film.coats.")
    return found


def _ends(coats: list[_Coats]) -> tuple[list[float | None], list[float | None]]:
    return [each.times.low for each in coats], [each.times.high for each in coats]


def _whole(coats: list[_Coats]) -> Range:
    lows, highs = _ends(coats)
    return Range(sum(end or 0 for end in lows), sum(end or 0 for end in highs))


def _dry(profile: Profile, coats: list[_Coats], faults: Faults) -> None:
    film = profile.film
    solids, dry = film.volume_solids_percent, film.dry_total_um
    wets = [each.wet_um for each in coats]
    if dry is None or faults.below(("film", "volume_solids")):
        return
    # DFT = WFT x VS / (1 + s); the thickest dry film is that without thinner, the thinnest that
    # with all the thinner the profile allows.
    lows = [wet.low if wet is not None else None for wet in wets]
    highs = [wet.high if wet is not None else None for wet in wets]
    most, least = (solids.high, solids.low) if solids is not None else (None, None)
    if dry.low is not None and None not in highs:
        share = 1.0 if most is None else most / 100
        most_um = share * _sum(coats, highs, high=True)
        if dry.low > most_um * (1 + FILM_ROUNDED):
            _tell(profile, faults, coats, "more dry film than", "can leave", most_um)
    # Thinner that could not be read may be any amount.
    known = not faults.below(("mix",)) and least is not None
    if known and dry.high is not None and None not in lows:
        share = (least or 0.0) / 100 / (1 + _most_thinner(profile.mix) / 100)
        least_um = share * _sum(coats, lows, high=False)
        if dry.high < least_um * (1 - FILM_ROUNDED):
            _tell(profile, faults, coats, "less dry film than", "will leave", least_um)


def _sum(coats: list[_Coats], wets: list[float | None], high: bool) -> float:
    times = _ends(coats)[high]
    return sum((count or 0) * (wet or 0.0) for count, wet in zip(times, wets, strict=True))


def _tell(
    profile: Profile, faults: Faults, coats: list[_Coats], more: str, leave: str, film_um: float
) -> None:
    dry, unit = profile.film.dry_total_um, faults.units.get(Kind.THICKNESS, "")
    assert dry is not None
    ends = typed_range(dry, Kind.THICKNESS, System.METRIC, unit or "um")
    whole = _count(_whole(coats))
    where = "the wet of [[coats]]" if profile.coats else "film.coats, film.wet"
    faults.add(
        ("film", "dry_total"),
        f"{more} {whole} {leave}, {in_unit(film_um, Kind.THICKNESS, unit)} (dry_total is {ends})",
        "coats x wet x volume_solids to agree with dry_total",
        f"Check {where}, film.volume_solids and film.dry_total.",
    )


def _count(times: Range) -> str:
    ends = " to ".join(f"{end:g}" for end in dict.fromkeys((times.low, times.high)) if end)
    return "1 coat" if ends == "1" else f"{ends} coats"


def _most_thinner(mix: Mix | None) -> float:
    """All the thinner that the profile allows of any [%]."""
    every = [] if mix is None else [each for each in (mix.thinner, *mix.thinners) if each]
    return max((thinner.most_percent or 0.0 for thinner in every), default=0.0)
