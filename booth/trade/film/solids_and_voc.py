"""Volume solids, and volatile organic compounds, from weights and densities of a coating.

The figure of the data sheet, measured (ASTM D2697, ISO 3233; EPA Method 24), comes before all of
this. What local rules allow, and which solvents they exempt, is theirs to say.
"""

from __future__ import annotations

from booth.trade.result import BadInput, require

__all__ = [
    "solids_from_weights",
    "voc_less_water_g_l",
    "voc_of_coating_g_l",
    "voc_of_solids_g_l",
]

#: Water at 20 C [g/ml]: Tanaka et al., Metrologia 38 (2001) 301-309; 8.33 lb/gal.
WATER_G_ML = 0.9982
#: The volatile compounds that regulations reckon with where nothing is known [g/ml]: 7.36 lb/gal,
#: 30 TAC 115.423(1) (Texas) and F.A.C. 62-296.500 (Florida).
USUAL_VOC_G_ML = 7.36 * 453.59237 / 3785.411784
ML_PER_L = 1000.0


def solids_from_weights(
    weight_solids_fraction: float, coating_g_ml: float, volatile_g_ml: float
) -> float:
    """Give the volume solids of a coating from its solids by weight.

    Args:
        weight_solids_fraction: solids by weight [1], above 0 to 1 (45 % is 0.45).
        coating_g_ml: density of the coating [g/ml], above 0.
        volatile_g_ml: density of all that evaporates, water included [g/ml], above 0.

    Returns: volume solids [1]: ``1 - coating (1 - weight solids) / volatile``.
    Range: volumes taken as adding up; a film full of pigment holds air and is thicker.
    Source: volume of a solvent = its share by weight x density of the coating / its own density:
        paintcenter.org, August 2010. ASTM D2697 measures what this computes.

    >>> round(solids_from_weights(0.45, 0.98, 0.87), 3)
    0.38
    """
    require("The solids by weight", weight_solids_fraction, above=0.0, high=1.0)
    require("The density of the coating", coating_g_ml, above=0.0, unit="g/ml")
    require("The density of what evaporates", volatile_g_ml, above=0.0, unit="g/ml")
    solids = 1.0 - coating_g_ml * (1.0 - weight_solids_fraction) / volatile_g_ml
    if solids <= 0.0:
        raise BadInput(
            "These figures do not go together: what evaporates would fill the can by itself. "
            "Look at both densities and at the solids again."
        )
    return solids


def _voc_share(solids: float, water: float, exempt: float) -> float:
    """The share by weight that is neither solids nor water nor exempt."""
    require("The solids by weight", solids, 0.0, 1.0)
    require("The water by weight", water, 0.0, 1.0)
    require("The exempt solvent by weight", exempt, 0.0, 1.0)
    share = 1.0 - solids - water - exempt
    if share < 0.0:
        raise BadInput("Solids, water and exempt solvent are more than the whole coating.")
    return share


def voc_of_coating_g_l(
    coating_g_ml: float,
    weight_solids_fraction: float,
    weight_water_fraction: float = 0.0,
    weight_exempt_fraction: float = 0.0,
) -> float:
    """Give the volatile organic compounds in a litre of coating, as it is in the can.

    Args:
        coating_g_ml: density of the coating [g/ml], above 0.
        weight_solids_fraction: solids by weight [1], 0 to 1.
        weight_water_fraction: water by weight [1], 0 to 1.
        weight_exempt_fraction: solvent that the rules exempt, by weight [1], 0 to 1.

    Returns: VOC [g/l]: ``density x (1 - solids - water - exempt)``.
    Range: the coating as supplied or as thinned, whichever the figures are of.
    Source: mass balance, as in EPA Method 24 (40 CFR 60, appendix A-7; from memory, not checked).

    >>> round(voc_of_coating_g_l(0.98, 0.45))
    539
    """
    require("The density of the coating", coating_g_ml, above=0.0, unit="g/ml")
    share = _voc_share(weight_solids_fraction, weight_water_fraction, weight_exempt_fraction)
    return coating_g_ml * share * ML_PER_L


def voc_less_water_g_l(
    coating_g_ml: float,
    weight_solids_fraction: float,
    weight_water_fraction: float = 0.0,
    weight_exempt_fraction: float = 0.0,
    exempt_g_ml: float | None = None,
) -> float:
    """Give the volatile organic compounds to a litre of coating with its water left out of the
    litre.

    Args:
        coating_g_ml: density of the coating [g/ml], above 0.
        weight_solids_fraction: solids by weight [1], 0 to 1.
        weight_water_fraction: water by weight [1], 0 to 1.
        weight_exempt_fraction: solvent that the rules exempt, by weight [1], 0 to 1.
        exempt_g_ml: density of the exempt solvent [g/ml], above 0; needed where there is any.

    Returns: VOC less water and exempt solvent [g/l]:
        ``(volatiles - water - exempt) / (volume - water - exempt)``.
    Range: what limits on coatings are mostly given in; volumes taken as adding up.
    Source: 9VAC5-40-6990 B 1 (Virginia).

    >>> round(voc_less_water_g_l(1.021, 0.208, 0.530))  # 8.52 lb/gal: printed as 4.87 lb/gal
    584
    """
    material = voc_of_coating_g_l(
        coating_g_ml, weight_solids_fraction, weight_water_fraction, weight_exempt_fraction
    )
    left = 1.0 - coating_g_ml * weight_water_fraction / WATER_G_ML
    if exempt_g_ml is not None:
        require("The density of the exempt solvent", exempt_g_ml, above=0.0, unit="g/ml")
        left -= coating_g_ml * weight_exempt_fraction / exempt_g_ml
    elif weight_exempt_fraction > 0.0:
        raise BadInput("The density of the exempt solvent is needed to leave it out.")
    require("What is left of the litre without water and exempt solvent", left, above=0.0)
    return material / left


def voc_of_solids_g_l(voc_g_l: float, solvent_g_ml: float = USUAL_VOC_G_ML) -> float:
    """Give the volatile organic compounds to a litre of solids, from those to a litre of coating.

    Args:
        voc_g_l: VOC of the coating less water and exempt solvent [g/l], 0 or more, below its
            density.
        solvent_g_ml: density of the volatile compounds [g/ml], above 0; 7.36 lb/gal unless given.

    Returns: VOC to a litre of solids [g/l]: ``VOC / (1 - VOC / density)``.
    Range: the litre without its water: solids and compounds fill it. Where the volume solids are
        known, VOC over volume solids is nearer.
    Source: 30 TAC 115.423(1) (Texas); F.A.C. 62-296.500, table 296.500-1 (Florida).

    >>> round(voc_of_solids_g_l(359.5) / 119.826, 2)  # 3 lb/gal is printed as 5.07 lb/gal of solids
    5.06
    """
    require("The density of the volatile compounds", solvent_g_ml, above=0.0, unit="g/ml")
    densest = solvent_g_ml * ML_PER_L
    require("The VOC of the coating", voc_g_l, 0.0, below=densest, unit="g/l")
    return voc_g_l / (1.0 - voc_g_l / densest)
