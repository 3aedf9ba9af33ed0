"""The thinner in a mix: how much is in, how much may still go in, what it does to the film.

A thinner fraction is thinner per volume of coating before thinning, as data sheets give it (25 % is
0.25, 4 : 1). It stays the same when some of the mix is poured away or sprayed.
"""

from __future__ import annotations

from booth.trade.result import require


def _coating_ml(remaining_ml: float, thinner_fraction: float) -> float:
    """Give the coating, thinner left out, in what remains of a mix [ml]."""
    require("The mix that remains", remaining_ml, above=0.0, unit="ml")
    require("The thinner in the mix, as a share of the coating", thinner_fraction, 0.0)
    return remaining_ml / (1.0 + thinner_fraction)


def _thinner_share(thinner_fraction: float) -> float:
    """Give the share of the whole mix that is thinner [1], from thinner per coating."""
    require("The thinner in the mix, as a share of the coating", thinner_fraction, 0.0)
    return thinner_fraction / (1.0 + thinner_fraction)


def thinner_fraction_after(remaining_ml: float, thinner_fraction: float, added_ml: float) -> float:
    """Give the thinner fraction after thinner was added to what remains of the mix.

    Args:
        remaining_ml: mix in the pot when the thinner goes in [ml], above 0.
        thinner_fraction: thinner in it so far, per volume of coating [1], 0 or more.
        added_ml: thinner added [ml], 0 or more.

    Returns: thinner per volume of coating [1]: ``s + added / coating``.
    Range: volumes taken as adding up, which solvents and paints do to about 1 %.
    Source: conservation of volume.

    >>> round(thinner_fraction_after(550.0, 0.10, 50.0), 6)  # half of a litre and its 10 % left
    0.2
    """
    require("The thinner added", added_ml, 0.0, unit="ml")
    return thinner_fraction + added_ml / _coating_ml(remaining_ml, thinner_fraction)


def thinner_room_ml(remaining_ml: float, thinner_fraction: float, limit_fraction: float) -> float:
    """Give the most thinner that may still go into what remains of the mix.

    Args:
        remaining_ml: mix in the pot [ml], above 0.
        thinner_fraction: thinner in it so far, per volume of coating [1], 0 or more.
        limit_fraction: most thinner the data sheet allows, per volume of coating [1], 0 or more.

    Returns: thinner [ml]: ``(limit - s) x coating``; 0 where the limit is reached or passed.
    Range: as thinner_fraction_after. Local rules on solvent content may allow less.
    Source: conservation of volume.

    >>> round(thinner_room_ml(550.0, 0.10, 0.25), 6)
    75.0
    """
    require("The most thinner allowed, as a share of the coating", limit_fraction, 0.0)
    coating = _coating_ml(remaining_ml, thinner_fraction)
    return max(0.0, (limit_fraction - thinner_fraction) * coating)


def solids_after_thinning(volume_solids_fraction: float, thinner_fraction: float) -> float:
    """Give the volume solids of the thinned mix: ``VS / (1 + s)``.

    Args:
        volume_solids_fraction: volume solids of the coating before thinning [1], above 0 to 1.
        thinner_fraction: thinner per volume of coating [1], 0 or more.

    Returns: volume solids of the mix [1].
    Range: thinner without solids of its own.
    Source: Organic Finishing Guidebook 2012-13 p. 615; without thinner also MIL-HDBK-1110 (now UFC
        3-190-06) 2.1.5.

    >>> solids_after_thinning(0.50, 0.25)
    0.4
    """
    require("Volume solids", volume_solids_fraction, above=0.0, high=1.0)
    require("The thinner added, as a share of the coating", thinner_fraction, 0.0)
    return volume_solids_fraction / (1.0 + thinner_fraction)


def wet_film_after_thinning_um(
    wet_um: float, fraction_before: float, fraction_after: float
) -> float:
    """Give the wet film that leaves the same dry film once more thinner is in.

    Args:
        wet_um: wet film wanted at the first thinner fraction [um], 0 or more.
        fraction_before: thinner per volume of coating that `wet_um` is meant for [1], 0 or more.
        fraction_after: thinner per volume of coating now [1], 0 or more.

    Returns: wet film [um]: ``WFT x (1 + after) / (1 + before)``. A thinner mix also runs sooner:
        where this is above what the data sheet allows for one coat, more coats are the answer.
    Range: as solids_after_thinning.
    Source: DFT = WFT x VS / (1 + s) (Organic Finishing Guidebook 2012-13 p. 615), twice.

    >>> wet_film_after_thinning_um(100.0, 0.0, 0.25)
    125.0
    """
    require("The wet film", wet_um, 0.0, unit="um")
    require("The thinner before, as a share of the coating", fraction_before, 0.0)
    require("The thinner after, as a share of the coating", fraction_after, 0.0)
    return wet_um * (1.0 + fraction_after) / (1.0 + fraction_before)
