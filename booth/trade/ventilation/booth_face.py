"""The open front of a spray booth: how fast the air should go in, and what exhaust that takes.

Air that goes in fast enough keeps overspray and vapour in the booth. It does not make the air in
the booth fit to breathe.
"""

from __future__ import annotations

from dataclasses import dataclass

from booth.trade.result import Outside, Said, Value, require

FT_MIN_PER_M_S = 60.0 / 0.3048
#: An exhaust worked out for exactly the least velocity does not fall short by a last digit.
ROUNDING = 1e-9

#: Average over the open front of a dry booth: 100 ft/min, 29 CFR 1910.107(b)(5)(i).
FACE_FT_MIN = 100.0
FACE_M_S = FACE_FT_MIN / FT_MIN_PER_M_S
FACE_RULE = "100 ft/min average over the open front of a dry booth, 29 CFR 1910.107(b)(5)(i)"

#: Air-operated guns: crossdraft up to [ft/min] -> design velocity [ft/min] of a large booth and of
#: a small one. WAC 296-62-11019, Table 14, the same as 29 CFR 1910.94(c), Table G-10 (from
#: memory, not checked).
DESIGN_FT_MIN = ((50.0, (100.0, 150.0)), (100.0, (150.0, 200.0)))
DESIGN_RULE = "minimum maintained velocities, WAC 296-62-11019 Table 14 (29 CFR 1910.94(c))"

CAUTION = (
    "A minimum that keeps overspray and vapour in the booth, measured over the whole front with "
    "clean filters. It is not a permission to breathe the air in the booth: wear what the data "
    "sheet asks for. Local codes may ask for more."
)


@dataclass(frozen=True, slots=True)
class RequiredExhaust:
    """The least exhaust for an open front [m3/h], with the caution that goes with it."""

    least: Value
    caution: str = CAUTION


@dataclass(frozen=True, slots=True)
class FaceVelocity:
    """What an exhaust makes at the open front.

    average: average velocity [m/s]; least_m_s: what it is held against; falls_short: whether it is
    below that; caution: the sentences that go with it. Not falling short proves nothing more.
    """

    average: Value
    least_m_s: float
    falls_short: bool
    caution: str = CAUTION


def required_exhaust(open_face_m2: float, least_m_s: float = FACE_M_S) -> RequiredExhaust:
    """Give the exhaust that draws air through an open front at a velocity.

    Args:
        open_face_m2: open area of the face [m2], above 0.
        least_m_s: average velocity over it [m/s], above 0; 100 ft/min unless given.

    Returns: RequiredExhaust [m3/h].
    Range: air of one density, the exhaust as measured with the filters in place.
    Source: 29 CFR 1910.107(b)(5)(i), 100 ft/min; area times velocity, Organic Finishing Guidebook
        2012, spray booths.

    >>> round(required_exhaust(4.0).least.value)
    7315
    """
    require("The open front", open_face_m2, above=0.0, unit="m2")
    require("The velocity at the front", least_m_s, above=0.0, unit="m/s")
    rule = FACE_RULE if least_m_s == FACE_M_S else "open area times velocity"
    return RequiredExhaust(Value(open_face_m2 * least_m_s * 3600.0, "m3/h", rule))


def face_velocity(
    exhaust_m3_h: float, open_face_m2: float, least_m_s: float = FACE_M_S
) -> FaceVelocity:
    """Give the average velocity that an exhaust makes at an open front, held against the least.

    Args:
        exhaust_m3_h: what the fan moves, filters in place [m3/h], 0 or more.
        open_face_m2: open area of the face [m2], above 0.
        least_m_s: velocity to hold it against [m/s], above 0; 100 ft/min unless given.

    Returns: FaceVelocity [m/s]: the average, and whether it falls short.
    Range: an average; corners may stand still. A fan's plate is its free flow, not what it moves.
    Source: 29 CFR 1910.107(b)(5)(i); area times velocity, Organic Finishing Guidebook 2012.

    >>> found = face_velocity(5000.0, 4.0)
    >>> round(found.average.value, 2), found.falls_short
    (0.35, True)
    """
    require("The exhaust", exhaust_m3_h, 0.0, unit="m3/h")
    require("The open front", open_face_m2, above=0.0, unit="m2")
    require("The velocity at the front", least_m_s, above=0.0, unit="m/s")
    average = exhaust_m3_h / 3600.0 / open_face_m2
    short = average < least_m_s * (1.0 - ROUNDING)
    return FaceVelocity(Value(average, "m/s", "exhaust over open area"), least_m_s, short)


def design_velocity_m_s(crossdraft_m_s: float, *, large: bool) -> Value | Outside:
    """Give the face velocity to design a booth for, with an air-operated gun and a crossdraft.

    Args:
        crossdraft_m_s: air movement across the face in the room [m/s], 0 or more.
        large: whether the booth is a large one.

    Returns: Value [m/s]; Outside for a crossdraft above 100 ft/min.
    Range: objects completely inside the booth; crossdraft up to 100 ft/min (0.508 m/s).
    Source: WAC 296-62-11019, Table 14 (29 CFR 1910.94(c), Table G-10, from memory, not checked).

    >>> round(design_velocity_m_s(0.2, large=False).value, 3)  # 150 ft/min
    0.762
    """
    require("The crossdraft", crossdraft_m_s, 0.0, unit="m/s")
    for up_to_ft_min, (in_large, in_small) in DESIGN_FT_MIN:
        if crossdraft_m_s * FT_MIN_PER_M_S <= up_to_ft_min * (1.0 + ROUNDING):
            return Value((in_large if large else in_small) / FT_MIN_PER_M_S, "m/s", DESIGN_RULE)
    return Outside(
        f"The crossdraft is above {Said(FACE_M_S, 'm/s')}: it carries vapour out of any booth.",
        "Close doors, turn fans away, or turn the booth.",
        DESIGN_RULE,
    )
