"""How far a coating goes, and how much of it a job needs, losses counted."""

from __future__ import annotations

from dataclasses import dataclass

from booth.trade.film.transfer_efficiency import Efficiency, _figure_for
from booth.trade.result import Estimate, Value, _whole_up, require


@dataclass(frozen=True, slots=True)
class CupFills:
    """cups: how often the cup is filled; last_ml: what goes into it the last time [ml]."""

    cups: int
    last_ml: float


def theoretical_coverage_m2_l(dry_um: float, volume_solids_fraction: float) -> float:
    """Give the theoretical spreading rate: the area of a dry film from a litre, nothing lost.

    Args:
        dry_um: dry film [um], above 0.
        volume_solids_fraction: volume solids of the coating as measured out [1], above 0 to 1.

    Returns: spreading rate [m2/L]: ``1000 VS / DFT``.
    Range: smooth, non-absorbing surfaces. Take the solids of what is counted: the coating as
        supplied, or the thinned mix.
    Source: 1000 m2.um/L; 1604.17 ft2.mil per US gal (231 in3/gal / 0.001 in / 144 in2/ft2), the
        spreading-rate formula of data sheets.

    >>> theoretical_coverage_m2_l(125.0, 0.65)
    5.2
    """
    require("The dry film", dry_um, above=0.0, unit="um")
    require("Volume solids", volume_solids_fraction, above=0.0, high=1.0)
    return 1000.0 * volume_solids_fraction / dry_um


def practical_coverage_m2_l(
    dry_um: float,
    volume_solids_fraction: float,
    transfer_efficiency: Efficiency,
    loss_fraction: float = 0.0,
) -> Value | Estimate:
    """Give the practical spreading rate: the area from a litre, with what is lost.

    Args:
        dry_um: dry film [um], above 0.
        volume_solids_fraction: volume solids of the coating as measured out [1], above 0 to 1.
        transfer_efficiency: share of the paint that lands [1], above 0 to 1; or a band.
        loss_fraction: share lost before the gun, in cans, strainer, hose [1], 0 up to but not 1.

    Returns: spreading rate [m2/L]: a Value for a known efficiency, an Estimate for a band.
    Range: as for theoretical_coverage_m2_l; a rough surface takes more.
    Source: paintcenter.org, October 2003: 52 % solids, transfer efficiency 30 %, 1.5 mil, 167 ft2
        per US gal.

    >>> ft2_per_gal = 3.785411784 / 0.09290304
    >>> round(practical_coverage_m2_l(1.5 * 25.4, 0.52, 0.30).value * ft2_per_gal)
    167
    """
    full = theoretical_coverage_m2_l(dry_um, volume_solids_fraction)
    require("The share lost before the gun", loss_fraction, 0.0, below=1.0)
    return _figure_for(
        transfer_efficiency,
        lambda te: full * te * (1.0 - loss_fraction),
        "m2/L",
        "1000 x volume solids / dry film x transfer efficiency x (1 - losses)",
    )


def material_for_area_ml(
    area_m2: float,
    wet_um: float,
    coats: int,
    transfer_efficiency: Efficiency,
    loss_fraction: float = 0.0,
    left_ml: float = 0.0,
) -> Value | Estimate:
    """Give the ready-to-spray material that an area needs.

    Args:
        area_m2: area of all parts [m2], 0 or more.
        wet_um: wet film of one coat [um], above 0 (from a dry film: wet_film_um).
        coats: number of coats, 1 or more.
        transfer_efficiency: share of the paint that lands [1], above 0 to 1; or a band.
        loss_fraction: share lost before the gun, in cans and strainer [1], 0 up to but not 1.
        left_ml: what stays in cup and gun at the end, and test patterns [ml], 0 or more.

    Returns: volume of ready-to-spray material, thinner included [ml]: a Value for a known
        efficiency, an Estimate for a band; mix the upper end when the job cannot be interrupted.
    Range: smooth surfaces; 1 um over 1 m2 is 1 ml.
    Source: 1000 m2.um/L (spreading-rate formula of data sheets), divided by the shares that land
        and that reach the gun.

    >>> material_for_area_ml(2.0, 50.0, 2, 0.5).value
    400.0
    """
    require("The area", area_m2, 0.0, unit="m2")
    require("The wet film", wet_um, above=0.0, unit="um")
    require("The number of coats", coats, 1)
    require("The share lost before the gun", loss_fraction, 0.0, below=1.0)
    require("What stays in the cup", left_ml, 0.0, unit="ml")
    landed_ml = area_m2 * wet_um * coats
    return _figure_for(
        transfer_efficiency,
        lambda te: (landed_ml / te + left_ml) / (1.0 - loss_fraction),
        "ml",
        "area x wet film x coats / transfer efficiency / (1 - losses)",
    )


def cups_to_fill(material_ml: float, cup_ml: float) -> CupFills:
    """Give how often the cup has to be filled.

    Args:
        material_ml: material to be sprayed [ml], 0 or more.
        cup_ml: what the cup is filled to [ml], above 0.

    Returns: CupFills.
    Range: a cup sprayed empty before it is filled again.
    Source: Euclid, Elements VII (division with remainder).

    >>> cups_to_fill(1500.0, 600.0)
    CupFills(cups=3, last_ml=300.0)
    """
    require("The material", material_ml, 0.0, unit="ml")
    require("The cup", cup_ml, above=0.0, unit="ml")
    cups = _whole_up(material_ml / cup_ml)
    return CupFills(cups, material_ml - (cups - 1) * cup_ml if cups else 0.0)
