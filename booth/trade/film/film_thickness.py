"""Wet film and dry film of a coat, and the coats that make a wanted dry film."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from booth.trade.film.wet_gauge import FilmInterval
from booth.trade.result import BadInput, _whole_up, require
from booth.trade.thinning.thinner_share import solids_after_thinning


@dataclass(frozen=True, slots=True)
class CoatPlan:
    """Equal coats for a wanted dry film.

    coats: how many more; wet_each_um, dry_each_um: film of each when the dry film is shared evenly
    [um]; dry_total_um: dry film at the end, with what was there before [um].
    """

    coats: int
    wet_each_um: float
    dry_each_um: float
    dry_total_um: float


@dataclass(frozen=True, slots=True)
class WetCoat:
    """One coat as a gauge read it: its wet film lies between two teeth [um].

    thinner_fraction: thinner in it by volume, per volume of coating [1].
    """

    wet_low_um: float
    wet_high_um: float
    thinner_fraction: float = 0.0


def dry_film_um(
    wet_um: float, volume_solids_fraction: float, thinner_fraction: float = 0.0
) -> float:
    """Give the dry film that a wet film leaves: ``DFT = WFT x VS / (1 + s)``.

    Args:
        wet_um: wet film [um], 0 or more.
        volume_solids_fraction: volume solids of the coating before thinning [1], above 0 to 1
            (50 % is 0.5).
        thinner_fraction: thinner added, by volume, per volume of coating [1], 0 or more
            (25 % is 0.25).

    Returns: dry film [um].
    Range: a film read at once; a flat coating may dry thicker than this (ASTM D4414 4.2), and
        thinner that flashes off between gun and panel makes the dry film thicker as well.
    Source: Organic Finishing Guidebook 2012-13 p. 615; without thinner also MIL-HDBK-1110 (now UFC
        3-190-06) 2.1.5.

    >>> round(dry_film_um(4 * 25.4, 0.50, 0.25) / 25.4, 2)  # 4 mil wet, 50 % solids, 4:1
    1.6
    """
    require("The wet film", wet_um, 0.0, unit="um")
    return wet_um * solids_after_thinning(volume_solids_fraction, thinner_fraction)


def film_in_all(
    coats: Sequence[WetCoat], least_solids_fraction: float, most_solids_fraction: float
) -> FilmInterval:
    """Give the dry film that coats make together, as far as the gauge and the data sheet tell.

    Args:
        coats: each coat as it was read, one or more: wet film between 0 and any figure [um],
            thinner added per volume of coating [1].
        least_solids_fraction, most_solids_fraction: volume solids of the coating before
            thinning [1], above 0 to 1; the same twice where the data sheet gives one figure.

    Returns: the interval in which the dry film lies [um]: ``sum of WFT x VS / (1 + s)``, of the
        lower ends with the least solids to the upper ends with the most.
    Range: as for dry_film_um; coats of one product, of which none is left out.
    Source: DFT = WFT x VS / (1 + s) (Organic Finishing Guidebook 2012-13 p. 615), summed by
        interval arithmetic (IEEE 1788-2015).

    >>> film_in_all([WetCoat(50.0, 60.0), WetCoat(50.0, 64.0)], 0.50, 0.50)
    FilmInterval(low_um=50.0, high_um=62.0)
    """
    if not coats:
        raise BadInput("No coat was given; at least one is needed.")
    for coat in coats:
        require("The wet film's lower end", coat.wet_low_um, 0.0, unit="um")
        require("The wet film's upper end", coat.wet_high_um, coat.wet_low_um, unit="um")
    require("The least solids", least_solids_fraction, above=0.0, high=1.0)
    require("The most solids", most_solids_fraction, least_solids_fraction)

    def dry(wet_um: float, solids: float, coat: WetCoat) -> float:
        return dry_film_um(wet_um, solids, coat.thinner_fraction)

    return FilmInterval(
        math.fsum(dry(coat.wet_low_um, least_solids_fraction, coat) for coat in coats),
        math.fsum(dry(coat.wet_high_um, most_solids_fraction, coat) for coat in coats),
    )


def wet_film_um(
    dry_um: float, volume_solids_fraction: float, thinner_fraction: float = 0.0
) -> float:
    """Give the wet film that leaves a wanted dry film: ``WFT = DFT x (1 + s) / VS``.

    Args:
        dry_um: dry film [um], 0 or more.
        volume_solids_fraction: volume solids of the coating before thinning [1], above 0 to 1.
        thinner_fraction: thinner added, by volume, per volume of coating [1], 0 or more.

    Returns: wet film [um].
    Range: as for dry_film_um.
    Source: Organic Finishing Guidebook 2012-13 p. 615; without thinner also MIL-HDBK-1110 (now UFC
        3-190-06) 2.1.5.

    >>> round(wet_film_um(1.5 * 25.4, 0.42) / 25.4, 2)  # 1.5 mil dry at 42 % solids
    3.57
    """
    require("The dry film", dry_um, 0.0, unit="um")
    return dry_um / solids_after_thinning(volume_solids_fraction, thinner_fraction)


def coats_to_dry_film(
    dry_wanted_um: float,
    wet_most_um: float,
    volume_solids_fraction: float,
    thinner_fraction: float = 0.0,
    dry_so_far_um: float = 0.0,
) -> CoatPlan:
    """Give the fewest equal coats that reach a wanted dry film, none wetter than allowed.

    Args:
        dry_wanted_um: dry film wanted in all [um], 0 or more.
        wet_most_um: greatest wet film of one coat, from the data sheet [um], above 0.
        volume_solids_fraction: volume solids of the coating before thinning [1], above 0 to 1.
        thinner_fraction: thinner added, by volume, per volume of coating [1], 0 or more.
        dry_so_far_um: dry film already on the part [um], 0 or more.

    Returns: CoatPlan, by ``DFT = WFT x VS / (1 + s)``; no coats when the film is there already.
    Range: as for dry_film_um; the least wet film that still flows out is not known here, so compare
        wet_each_um with the data sheet's lower figure.
    Source: DFT = WFT x VS / (1 + s) (Organic Finishing Guidebook 2012-13 p. 615), summed.

    >>> plan = coats_to_dry_film(60.0, 60.0, 0.5)
    >>> plan.coats, plan.wet_each_um
    (2, 60.0)
    """
    require("The dry film wanted", dry_wanted_um, 0.0, unit="um")
    require("The greatest wet film of a coat", wet_most_um, above=0.0, unit="um")
    require("The dry film so far", dry_so_far_um, 0.0, unit="um")
    stays = solids_after_thinning(volume_solids_fraction, thinner_fraction)
    missing = dry_wanted_um - dry_so_far_um
    if missing <= 0:
        return CoatPlan(0, 0.0, 0.0, dry_so_far_um)
    coats = max(1, _whole_up(missing / (wet_most_um * stays)))
    return CoatPlan(coats, missing / coats / stays, missing / coats, dry_wanted_um)
