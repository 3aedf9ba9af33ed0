"""What of a job's mix evaporates, and as which solvents: the ground of the figure against fire. Pure.

Where something is not known the careful answer is taken: all that the profile allows of thinner, and
of the solvents the one that needs the most air. Each such step is told.
"""

from __future__ import annotations

import msgspec

from booth.job import measured
from booth.job.mix_choice import in_use
from booth.job.recipe import thinner_of
from booth.log.fold import Job
from booth.profile.model import Profile
from booth.trade.ventilation.dilution import dilution_air_l_per_l, volatile_fraction
from booth.trade.ventilation.solvents import Solvent, solvent, solvent_names


class Vapour(msgspec.Struct, frozen=True):
    """volatile: share of the thinned coating that evaporates as solvent [1]; blend: its solvents with
    their shares of the solvent; told: what was taken for what, a sentence each."""

    volatile: float
    blend: tuple[tuple[Solvent, float], ...]
    told: tuple[str, ...]


def known_solvent(name: str | None) -> Solvent | None:
    """The solvent of this name where the table has it."""
    return measured.known(solvent, name) if name else None


def worst_solvent() -> Solvent:
    """The solvent of the table that needs the most air for a litre: what is unknown may be it."""
    every = [solvent(name) for name in solvent_names()]
    return max(every, key=lambda each: dilution_air_l_per_l(each.vapour_l_per_l, each.lel_percent))


def percent_known(profile: Profile) -> bool:
    """Whether the profile says, or lets reckon, how much solvent is in the mixed coating."""
    return _coating(profile, None) is not None


def vapour_of(job: Job, solvent_name: str = "", percent: float | None = None) -> Vapour | None:
    """Give what evaporates of the mix of `job`.

    solvent_name: for where the profile names none that is known; percent: solvent in the mixed
    coating by volume, for where the profile does not tell. None where nothing is known to evaporate
    but water.
    """
    profile, told = in_use(job), []
    thinner_share, words = _thinner(job)
    coating = _coating(profile, percent)
    if coating is None and profile.waterborne and not thinner_share:
        return None
    if coating is None:
        coating = 1.0
        told.append("How much solvent is in it is not known: all of it is taken as solvent.")
    whole = coating + thinner_share
    if whole <= 0:
        return None
    if words and thinner_share:
        told.append(words)
    chosen = known_solvent(solvent_name)
    own = known_solvent(profile.film.solvent) or chosen
    thinner = thinner_of(profile)
    other = known_solvent(thinner.solvent if thinner else None) or chosen or own
    worst = worst_solvent()
    if (own is None and coating) or (other is None and thinner_share):
        told.append(f"Its solvent is not known: taken as {worst.name}, which needs the most air.")
    shares = (own or worst, coating / whole), (other or worst, thinner_share / whole)
    blend = tuple(each for each in shares if each[1] > 0)
    return Vapour(whole / (1.0 + thinner_share), blend, tuple(told))


def _coating(profile: Profile, percent: float | None) -> float | None:
    """Solvent in the mixed coating before thinning, by volume [1]."""
    film = profile.film
    if film.solvent_percent is not None:
        return film.solvent_percent / 100
    if percent is not None:
        return min(percent, 100.0) / 100
    if film.volume_solids_percent is not None and not profile.waterborne:
        # Of a range the lower end: the less solids, the more vapour.
        return volatile_fraction((film.volume_solids_percent.low or 0.0) / 100)
    return None


def _thinner(job: Job) -> tuple[float, str]:
    """Solvent added as thinner, by volume of the mixed coating [1], and where that is from."""
    profile = in_use(job)
    thinner = thinner_of(profile)
    if thinner is None or (profile.waterborne and not thinner.solvent):
        return 0.0, ""  # what it is thinned with is water
    mixed = measured.thinner_fraction(job)
    if mixed is not None:
        return mixed, f"{mixed * 100:.0f} % thinner, as mixed."
    most = thinner.most_percent
    if not most:
        return 0.0, ""
    return most / 100, f"{most:g} % thinner, the most that the profile names."
