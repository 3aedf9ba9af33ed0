"""HVLP: what the pressure at the air cap may be, and why the gauge at the inlet shows another."""

from __future__ import annotations

from dataclasses import dataclass

from booth.trade.result import require

#: Kilopascals in a pound per square inch: NIST SP 811 (2008) B.8.
KPA_PER_PSI = 6.894757

#: Air pressure at the cap of an HVLP gun: 0.1 to 10 psig, 40 CFR 63.11180 (the lower end from
#: memory, not checked); above 10 psi at the point of atomisation a gun is a conventional one, 40
#: CFR 63.801.
HVLP_LEAST_KPA = 0.1 * KPA_PER_PSI
HVLP_MOST_KPA = 10.0 * KPA_PER_PSI
#: A gauge that shows exactly 10 psi is within, whatever the last digit of the conversion.
ROUNDING = 1e-6


@dataclass(frozen=True, slots=True)
class CapPressure:
    """Whether a cap pressure is one of HVLP. within: the answer; words: a sentence; rule."""

    within: bool
    words: str
    rule: str


def hvlp_cap_pressure(cap_kpa: float) -> CapPressure:
    """Say whether a pressure measured at the air cap is that of high volume, low pressure.

    Args:
        cap_kpa: dynamic gauge pressure at the air cap, trigger pulled, by a test cap [kPa], 0 or
            more. Not the pressure at the gun's inlet, which is higher.

    Returns: CapPressure: within or not, with a sentence.
    Range: 0.1 to 10 psig is within. Which inlet pressure gives which cap pressure belongs to the
        gun: its instructions or a test cap say it, no formula does.
    Source: 40 CFR 63.11180 (0.1 psi from memory, not checked); 40 CFR 63.801: above 10 psi at the
        point of atomisation is conventional.

    >>> hvlp_cap_pressure(62.0).within
    True
    >>> hvlp_cap_pressure(200.0).words.split(":")[0]
    'Above 10 psi at the cap'
    """
    require("The pressure at the air cap", cap_kpa, 0.0, unit="kPa")
    rule = (
        "0.1 to 10 psig at the air cap (40 CFR 63.11180, the 0.1 from memory, not checked; 63.801)"
    )
    above = cap_kpa > HVLP_MOST_KPA * (1.0 + ROUNDING)
    below = cap_kpa < HVLP_LEAST_KPA * (1.0 - ROUNDING)
    if above:
        words = (
            "Above 10 psi at the cap: the gun works as a conventional one. If this was read at the "
            "inlet, it says nothing about the cap."
        )
    elif below:
        words = "Below 0.1 psi at the cap: hardly any air. Pull the trigger fully and read again."
    else:
        words = "Within the 0.1 to 10 psi at the cap that make a gun HVLP."
    return CapPressure(not (above or below), words, rule)
