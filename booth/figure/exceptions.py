"""What does not follow from the trade: other words for subjects, arguments, figures; other readers.

Everything here is an exception. A function that stands nowhere in it has its subject all the same.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from typing import Any, NamedTuple

from booth.figure import readers, shapes
from booth.figure.docs import Function
from booth.figure.readers import Part, Reader, named, quantity
from booth.trade.air.air_base import AIR_BASES, AirBase, air_base
from booth.trade.cups.cup_names import cup_named
from booth.trade.cups.cup_table import Cup
from booth.trade.faults.fault_table import FAULTS, Fault
from booth.trade.faults.ranked_causes import fault_named
from booth.trade.film.transfer_efficiency import HVLP_LARGE_PARTS, Efficiency
from booth.trade.film.wet_gauge import FilmInterval, film_between_teeth
from booth.trade.mixing.components import Measure
from booth.trade.pattern.fan_profile import FanProfile, profile_by_name, profile_from_zones
from booth.trade.result import BadInput
from booth.trade.ventilation.solvents import Solvent, solvent, solvent_from_data_sheet


class Row(NamedTuple):
    """What is other in the subject of one function.

    label: of its figure, two parted by a bar; note: what has to be said with it. Both are filled
    with what was given.
    """

    name: str = ""
    label: str = ""
    note: str = ""


#: Public functions that cannot be asked.
NOT_ASKED = {"require": "it checks a number, and computes nothing"}

#: Function, subject, figure, note, two blanks between; a dash for what follows from the function.
_ROWS = """
air_changes_per_h              air-changes           air changes
blend_index_mm2_s              blend                 -  the two rules disagree about paint: neither is a prediction
convert_flow_l_min             air-base              flow as {to.name}  {from.source}; {to.source}
cups_for_viscosity             which-cup             cups
default_band                   efficiency-band       transfer efficiency  to begin with, until the gauge says otherwise
delivery_of_water              delivery-water        delivery of water  paint runs slower (see paint-from-water)
efflux_from_viscosity          efflux                efflux time
equivalent_efflux              equivalent            efflux time in {to.name}
evaporation_in_moving_air      moving-air
film_at                        film-at               film over mean film
flash_off_at                   flash-off             flash-off
material_for_area_ml           material              ready to spray
minimum_air                    fresh-air
one_point_band                 viscosity-band        viscosity  no correction: the band one point leaves
practical_coverage_m2_l        coverage
paint_from_water               -                     delivery of paint
pour_table                     mix
pour_table_from_component      mix-from
pour_table_on_top              mix-top-up
read_sign                      sign                  |strength of the sign
reading                        pattern
recoat_closes_at               -                     recoat window closes after
recoat_opens_at                -                     recoat window opens after
run_statistics                 runs
scaled_s                       -                     time
solvent                        -                     -  its own safety data sheet comes before any list
speed_for_wet_film_mm_s        speed                 gun speed
steady_part                    steady                steady from|to  of the painted width
suggest_cup_for_out_of_range   other-cup
thinner_for_target             thinner
next_thinning_step             same-cup
thinner_fraction_after         thinned               thinned by
transfer_efficiency_from_film  efficiency
trigger_hold                   hold
viscosity_at                   viscosity-at          viscosity
viscosity_from_efflux          viscosity             viscosity  the standard asks for {cup.temperature_c:g} C
waterborne_closes_at           closes-waterborne     window closes after
weather_verdict                weather               -  limits met are not the same as good to spray
"""


def _row(line: str) -> tuple[str, Row]:
    function, *cells = (cell.removeprefix("-") for cell in re.split(r"\s{2,}", line))
    return function, Row(*cells)


#: By the name of the function.
ROWS = dict(_row(line) for line in _ROWS.strip().splitlines())

_PARAMETERS = """
profile=pattern
air_kpa=room blend=solvents closes_s=time correction_from=from-correction
correction_to=to-correction counted_as=from cup_from=from cup_to=to deliveries_ml_min=catches
dry_so_far_um=so-far dry_wanted_um=dry duration_s=time efflux_s=time fraction_after=after
fraction_before=before high_kpa=full large=booth large_flat_part=large least_margin_c=margin
low_kpa=least measure=pour mix_c=today open_face_m2=face opens_s=time pot_life_s=time
reference_c=reference-air reference_percent=reference-humidity share_of_lel=stay
thinner_fraction=thinned transfer_efficiency=efficiency trigger_share=trigger
volume_solids_fraction=solids wanted_as=to wanted_ml_min=delivery
"""
#: Words for parameters: wherever they stand, and in one function.
PARAMETERS = dict(pair.split("=") for pair in _PARAMETERS.split())
_TODAY = {"part_c": "today"}
WORDS: Mapping[str, Mapping[str, str]] = {
    "flash_off_at": {**_TODAY, "flash_off_s": "time"},
    "pour_table": {"wanted": "amount"},
    "pour_table_from_component": {"name": "component"},
    "recoat_closes_at": _TODAY,
    "recoat_opens_at": _TODAY,
    "run_statistics": {"efflux_s": "runs"},
    "solvent": {"name": "solvent"},
    "wait_from_table": _TODAY,
    "wait_from_humid_table": _TODAY,
    "waterborne_closes_at": {"at_c": "reference-air", "at_percent": "reference-humidity"},
    "waterborne_flash_off_at": {
        "flash_off_s": "time",
        "at_c": "reference-air",
        "at_percent": "reference-humidity",
    },
}
#: Parameters that have to be given though a function assumes them; and the other way round.
NEEDED = {("sheet_area_m2", "thickness_mm"), ("volatile_fraction", "thinner_fraction")}
DEFAULTS: Mapping[tuple[str, str], Any] = {("thinner_for_target", "thinner_fraction"): 0.0}

#: Functions that arguments are read by, and that are no subjects of their own.
USES: Mapping[str, tuple[Function, ...]] = {
    "convert_flow_l_min": (air_base,),
    "cups_for_viscosity": (cup_named,),
    "evenness": (profile_by_name, profile_from_zones),
}

_MEETS = "no end while the compressor may run: it meets the demand"
#: What is told where there is no figure, or one without end: by the function, or the type of a
#: result and its field.
LACKING = {
    "cups_for_viscosity": "none suits",
    "longest_trigger_s": _MEETS,
    "read_sign": "no figure, or no limit to hold it against",
    "steady_part": "nowhere: too few passes",
    "Evenness.max_over_min": "without end: some of the width gets nothing",
    "FilmInterval.high_um": "no dry tooth was read, so it may be more",
    "FilmStatistics.spread_most_um": "cannot be said: no dry tooth was read",
    "PotLife.pot_life_left_s": "none: it is over",
    "RunStatistics.suspect": "cannot be said",
    "ControlLimits.lower": "none",
    "ControlLimits.moving_range": "none",
    "ControlLimits.upper": "none",
    "HoldTime.best_s": _MEETS,
    "HoldTime.rest_s": "none, or the compressor does not start",
    "HoldTime.worst_s": _MEETS,
}
#: Words for the figures of a result, by its type and the name of the field.
FIGURES = {
    "CapPressure.within": "within HVLP",
    "DryingPower.of_the_reference_air_fraction": "of the reference air's",
    "ControlLimits.lower": "lower limit",
    "ControlLimits.moving_range": "mean moving range",
    "ControlLimits.outside": "outside, by place",
    "ControlLimits.upper": "upper limit",
    "CatchStatistics.cv": "the same over the mean",
    "CatchStatistics.sd_ml_min": "standard deviation",
    "CupFills.cups": "fills",
    "CupFills.last_ml": "last fill",
    "Evenness.max_over_min": "thickest over thinnest",
    "Evenness.cv": "coefficient of variation",
    "Evenness.lowest": "thinnest over mean",
    "Evenness.highest": "thickest over mean",
    "FaceVelocity.average": "average velocity",
    "FaceVelocity.least_m_s": "held against",
    "FilmStatistics.mean": "mean film",
    "FilmStatistics.everywhere": "anywhere",
    "MinimumAir.least": "least air",
    "MinimumAir.averaged": "averaged over pauses",
    "OverlapChoice.overlap_fraction": "most even overlap",
    "RequiredExhaust.least": "least exhaust",
    "RunStatistics.reported_s": "reported as",
    "RunStatistics.spread_fraction": "spread over mean",
    "Solvent.lel_percent": "lower explosive limit",
    "HoldTime.worst_s": "trigger held from the cut-in",
    "HoldTime.best_s": "from a full receiver",
    "HoldTime.rest_s": "then rest",
    "HoldTime.duty": "compressor runs",
}

_TOOTH = quantity(shapes.FILM)
_TEETH = readers.group(
    (Part("wetted", _TOOTH, True), Part("dry", _TOOTH, True)),
    film_between_teeth,
    lambda film: (film.low_um or None, film.high_um if math.isfinite(film.high_um) else None),
)


def _blended(
    name: str, share: float, density: float | None, molar_mass: float | None, lel: float | None
) -> tuple[Solvent, float]:
    """Give a solvent of the lists with its share; with three figures, one of its own data sheet."""
    if density is None and molar_mass is None and lel is None:
        return solvent(name), share
    if density is None or molar_mass is None or lel is None:
        raise BadInput(
            f"{name}: density, molar mass and lower explosive limit of its data sheet are wanted, "
            "all three."
        )
    return solvent_from_data_sheet(name, density, molar_mass, lel), share


_BLENDED = readers.group(
    (
        Part("solvent", readers.WORD),
        Part("share", quantity(shapes.SHARE)),
        Part("density", quantity(shapes.DENSITY), True),
        Part("molar-mass", quantity(shapes.MOLAR_MASS), True),
        Part("lel", quantity(shapes.PERCENT), True),
    ),
    _blended,
    lambda made: (made[0].name, made[1], None, None, None),
)
#: Readers, by the type of a parameter and by its name.
TYPES: Mapping[Any, Reader] = {
    AirBase: named(air_base, ", ".join(base.name for base in AIR_BASES)),
    readers.Amount: readers.AMOUNT,
    Cup: named(cup_named, "a cup by family and size, as 'Ford #4', 'Zahn 2', 'ISO 4 mm'"),
    Efficiency: readers.EFFICIENCY,
    FanProfile: readers.PROFILE,
    Fault: named(fault_named, ", ".join(fault.name for fault in FAULTS.values())),
    FilmInterval: _TEETH,
    Solvent: named(solvent, "a solvent by its name; the subject solvent-names lists them"),
    tuple[Solvent, float]: _BLENDED,
    bool: readers.YES_NO,
    int: readers.WHOLE,
    str: readers.WORD,
}
READERS: Mapping[str, Reader] = {
    **dict.fromkeys(("amount", "left", "wanted"), readers.AMOUNT),
    "large": readers.choice({"large": True, "small": False}),
    "zones": readers.ZONES,
}
#: What one typed word stands for, by the name of the parameter.
EXPANDED = {"blend": readers.whole_words, "components": readers.ratio_words}
#: What is assumed by type, where a function assumes nothing.
ASSUMED: Mapping[Any, Any] = {Efficiency: HVLP_LARGE_PARTS, Measure: Measure.VOLUME}
#: Names, and so units, of what is in a tuple, by the name of the parameter.
GROUPS = {"rows": ("temperature_c", "time_s")}
