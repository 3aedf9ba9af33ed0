"""The pace of the gun: the wet film of one coat from delivery, fan, overlap and speed, and back.

Everything rests on one balance: what lands per second covers speed x pitch per second. How even the
film is between the passes is another matter: see ``pattern.overlap``.
"""

from __future__ import annotations

from booth.trade.film.transfer_efficiency import UM_MM2_PER_ML, Efficiency, _figure_for
from booth.trade.result import Estimate, Value, _whole_up, require

_BALANCE = "wet film = delivery x transfer efficiency / (speed x pitch), conservation of volume"


def pitch_mm(fan_mm: float, overlap_fraction: float) -> float:
    """Give the distance from one pass to the next.

    Args:
        fan_mm: width of the fan at the panel [mm], above 0.
        overlap_fraction: share of the fan that lies on the pass before [1], 0 up to but not 1.

    Returns: pitch [mm]: ``fan x (1 - overlap)``.
    Range: overlap from 0 (edge to edge) to below 1.
    Source: definition, pitch = fan x (1 - overlap); 50 % overlap is usual: MIL-HDBK-1110 (now UFC
        3-190-06) 9.6.8.

    >>> pitch_mm(250.0, 0.5)
    125.0
    """
    require("The width of the fan", fan_mm, above=0.0, unit="mm")
    require("The overlap", overlap_fraction, 0.0, below=1.0)
    return fan_mm * (1.0 - overlap_fraction)


def mean_wet_film_um(
    delivery_ml_min: float,
    fan_mm: float,
    overlap_fraction: float,
    speed_mm_s: float,
    transfer_efficiency: Efficiency,
) -> Value | Estimate:
    """Give the mean wet film of one coat.

    Args:
        delivery_ml_min: delivery of paint [ml/min], 0 or more.
        fan_mm: width of the fan at the panel [mm], above 0.
        overlap_fraction: overlap of the passes [1], 0 up to but not 1.
        speed_mm_s: speed of the gun over the panel [mm/s], above 0.
        transfer_efficiency: share of the paint that lands [1], above 0 to 1; or a band.

    Returns: wet film [um]: a Value for a known efficiency, an Estimate for a band.
    Range: the steady part of a panel large against the fan; how even it is, evenness says.
    Source: conservation of volume; no published worked example was found.

    >>> round(mean_wet_film_um(200.0, 250.0, 0.5, 400.0, 0.65).value, 2)
    43.33
    """
    require("The delivery", delivery_ml_min, 0.0, unit="ml/min")
    require("The speed of the gun", speed_mm_s, above=0.0, unit="mm/s")
    pitch = pitch_mm(fan_mm, overlap_fraction)
    sprayed_um = delivery_ml_min * UM_MM2_PER_ML / (speed_mm_s * 60.0 * pitch)
    return _figure_for(transfer_efficiency, lambda te: sprayed_um * te, "um", _BALANCE)


def speed_for_wet_film_mm_s(
    wet_um: float,
    delivery_ml_min: float,
    fan_mm: float,
    overlap_fraction: float,
    transfer_efficiency: Efficiency,
) -> Value | Estimate:
    """Give the speed of the gun that lays a wanted mean wet film in one coat.

    Args:
        wet_um: wet film wanted [um], above 0.
        delivery_ml_min: delivery of paint [ml/min], above 0.
        fan_mm: width of the fan at the panel [mm], above 0.
        overlap_fraction: overlap of the passes [1], 0 up to but not 1.
        transfer_efficiency: share of the paint that lands [1], above 0 to 1; or a band.

    Returns: speed [mm/s]: a Value for a known efficiency, an Estimate for a band.
    Range: as for mean_wet_film_um. A hand holds roughly 200 to 800 mm/s (common practice, no
        source): a figure far from it asks for another delivery, not for another arm.
    Source: conservation of volume; no published worked example was found.

    >>> round(speed_for_wet_film_mm_s(50.0, 200.0, 250.0, 0.5, 0.65).value, 1)
    346.7
    """
    require("The wet film wanted", wet_um, above=0.0, unit="um")
    require("The delivery", delivery_ml_min, above=0.0, unit="ml/min")
    pitch = pitch_mm(fan_mm, overlap_fraction)
    full_speed = delivery_ml_min * UM_MM2_PER_ML / (wet_um * 60.0 * pitch)
    return _figure_for(transfer_efficiency, lambda te: full_speed * te, "mm/s", _BALANCE)


def pass_time_s(length_mm: float, speed_mm_s: float) -> float:
    """Give the time for one pass.

    Args:
        length_mm: length of the pass, with the run-out beyond both edges [mm], 0 or more.
        speed_mm_s: speed of the gun [mm/s], above 0.

    Returns: time [s]: ``length / speed``.
    Range: an even pace; turning at the ends is not counted.
    Source: definition of speed (ISO 80000-3).

    >>> pass_time_s(1200.0, 400.0)
    3.0
    """
    require("The length of the pass", length_mm, 0.0, unit="mm")
    require("The speed of the gun", speed_mm_s, above=0.0, unit="mm/s")
    return length_mm / speed_mm_s


def speed_of_pass_mm_s(length_mm: float, duration_s: float) -> float:
    """Give the speed of a pass that was timed.

    Args:
        length_mm: length of the pass [mm], 0 or more.
        duration_s: time it took [s], above 0.

    Returns: speed [mm/s]: ``length / time``.
    Range: an even pace. A hand is late by about 0.2 s at either end: time several passes.
    Source: definition of speed (ISO 80000-3).

    >>> speed_of_pass_mm_s(1200.0, 3.0)
    400.0
    """
    require("The length of the pass", length_mm, 0.0, unit="mm")
    require("The duration of the pass", duration_s, above=0.0, unit="s")
    return length_mm / duration_s


def passes_for_width(width_mm: float, fan_mm: float, overlap_fraction: float) -> int:
    """Give the passes that put the full film on the whole width of a panel.

    Args:
        width_mm: width of the panel across the passes [mm], above 0.
        fan_mm: width of the fan at the panel [mm], above 0.
        overlap_fraction: overlap of the passes [1], 0 up to but not 1.

    Returns: passes, 1 or more: ``n passes lay the full film over (n + 1) pitch - fan``. At 50 %
        the first is aimed with its middle on the edge.
    Range: straight parallel passes. Banding the edges first saves a pass, and is not counted.
    Source: geometry of equal strips at equal pitch; aiming the first pass at the edge is common
        practice, no source.

    >>> passes_for_width(500.0, 250.0, 0.5)  # at 0, 125, 250, 375 and 500 mm
    5
    """
    require("The width of the panel", width_mm, above=0.0, unit="mm")
    pitch = pitch_mm(fan_mm, overlap_fraction)
    return max(1, _whole_up((width_mm + fan_mm) / pitch) - 1)
