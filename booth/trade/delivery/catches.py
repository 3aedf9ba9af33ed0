"""Timed catches of what leaves the gun: delivery by volume or weight, and how long a cup lasts.

What water tells about paint is in ``water``, what the needle's turns tell in ``needle``.
"""

from __future__ import annotations

import statistics
from collections.abc import Sequence
from dataclasses import dataclass

from booth.trade.delivery.water import water_density_kg_m3
from booth.trade.result import BadInput, require


@dataclass(frozen=True, slots=True)
class CatchStatistics:
    """Several catches at one setting.

    count; mean_ml_min, least_ml_min, most_ml_min, spread_ml_min (most less least) [ml/min];
    sd_ml_min: sample standard deviation [ml/min], None for a single catch;
    cv: the same as a share of the mean [1], None for a single catch.
    """

    count: int
    mean_ml_min: float
    least_ml_min: float
    most_ml_min: float
    spread_ml_min: float
    sd_ml_min: float | None
    cv: float | None


def delivery_from_volume(volume_ml: float, duration_s: float) -> float:
    """Give the delivery from a timed catch measured by volume.

    Args:
        volume_ml: what was caught [ml], 0 or more.
        duration_s: how long the trigger was held [s], above 0.

    Returns: delivery [ml/min]: ``volume / time``.
    Range: any duration. A hand is late by about 0.2 s at either end, so a catch of 10 s can be
        wrong by 4 % where one of 60 s is wrong by less than 1 %; no correction is made.
    Source: definition of volumetric flow rate (ISO 80000-4); the catch itself is common practice,
        no source.

    >>> delivery_from_volume(100.0, 30.0)
    200.0
    """
    require("The volume caught", volume_ml, 0.0, unit="ml")
    require("The duration of the catch", duration_s, above=0.0, unit="s")
    return volume_ml * 60.0 / duration_s


def delivery_from_weight(weight_g: float, density_g_ml: float, duration_s: float) -> float:
    """Give the delivery from a timed catch put on a scale.

    Args:
        weight_g: weight caught, without the vessel [g], 0 or more.
        density_g_ml: density of what was sprayed [g/ml], above 0: of the thinned mix, from its
            data sheet or weighed.
        duration_s: how long the trigger was held [s], above 0.

    Returns: delivery [ml/min]: ``weight / density / time``.
    Range: any duration. The buoyancy of air is left out (about 0.1 % for a liquid like water), and
        so is what evaporates between gun and scale: cover the vessel.
    Source: definitions of density and volumetric flow rate (ISO 80000-4).

    >>> delivery_from_weight(120.0, 1.2, 30.0)
    200.0
    """
    require("The weight caught", weight_g, 0.0, unit="g")
    require("The density", density_g_ml, above=0.0, unit="g/ml")
    return delivery_from_volume(weight_g / density_g_ml, duration_s)


def delivery_of_water(weight_g: float, duration_s: float, water_c: float = 20.0) -> float:
    """Give the delivery from a timed catch of water put on a scale.

    Args:
        weight_g: weight of water caught [g], 0 or more.
        duration_s: how long the trigger was held [s], above 0.
        water_c: temperature of the water [degC], 0 to 40.

    Returns: delivery of water [ml/min]: ``weight / density of water / time``. It is not the
        delivery of paint: see paint_from_water.
    Range: water between 0 and 40 C.
    Source: density of water: Tanaka et al., Metrologia 38 (2001) 301-309.

    >>> round(delivery_of_water(200.0, 60.0, 20.0), 2)
    200.36
    """
    return delivery_from_weight(weight_g, water_density_kg_m3(water_c) / 1000.0, duration_s)


def catch_statistics(deliveries_ml_min: Sequence[float]) -> CatchStatistics:
    """Give the mean and the spread of several catches made at the same setting.

    Args:
        deliveries_ml_min: delivery of each catch [ml/min], one or more, each 0 or more.

    Returns: CatchStatistics: ``mean = sum / n; sd^2 = sum (x - mean)^2 / (n - 1)``; no scatter for
        a single catch.
    Range: one catch or more; the scatter means little below three.
    Source: arithmetic mean and sample standard deviation (ISO 3534-1).

    >>> s = catch_statistics([180.0, 184.0, 176.0])
    >>> s.mean_ml_min, s.spread_ml_min, s.sd_ml_min
    (180.0, 8.0, 4.0)
    """
    if not deliveries_ml_min:
        raise BadInput("No catch was given; at least one is needed.")
    caught = [require("A delivery", each, 0.0, unit="ml/min") for each in deliveries_ml_min]
    least, mean, most = min(caught), statistics.fmean(caught), max(caught)
    sd = statistics.stdev(caught) if len(caught) > 1 else None
    cv = sd / mean if sd is not None and mean > 0 else None
    return CatchStatistics(len(caught), mean, least, most, most - least, sd, cv)


def time_to_empty_s(volume_ml: float, delivery_ml_min: float) -> float:
    """Give how long a volume lasts with the trigger held: a full cup, or the whole batch.

    Args:
        volume_ml: what can be sprayed [ml], 0 or more.
        delivery_ml_min: delivery of the gun [ml/min], above 0.

    Returns: time with the trigger pulled [s]: ``volume / delivery``.
    Range: constant delivery. A gravity cup slows a little as it empties, and the last of it spits:
        refill before it is empty.
    Source: definition of volumetric flow rate (ISO 80000-4).

    >>> round(time_to_empty_s(20 * 29.5735295625, 6 * 29.5735295625), 9)
    200.0
    """
    require("The volume", volume_ml, 0.0, unit="ml")
    require("The delivery", delivery_ml_min, above=0.0, unit="ml/min")
    return volume_ml / delivery_ml_min * 60.0
