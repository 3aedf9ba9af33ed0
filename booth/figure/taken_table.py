"""Which argument is found where in a coating profile and in the shop file: tables, and what reads them.

Of a range the middle is taken where one number is wanted, the careful end where something hangs on it.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from booth.figure.readers import BANDS
from booth.profile.model import Profile, Range, WaitRule
from booth.shop.model import Gun, Shop
from booth.trade.cups.cup_names import cup_named
from booth.trade.mixing.components import Component, Measure
from booth.trade.result import BadInput
from booth.trade.ventilation.dilution import volatile_fraction
from booth.trade.ventilation.solvents import solvent

#: What is found: a value, and words for which of several it is; None where nothing is said.
Found = tuple[Any, str] | None
MIDDLE, LOW, HIGH = "the middle of its range", "the low end", "the high end"
MOST_THINNER = "with the most thinner it allows"
M3_MIN = 60.0


def _middle(span: Range | None, scale: float = 1.0) -> Found:
    if span is None:
        return None
    return span.middle * scale, MIDDLE if span.low != span.high and None not in (
        span.low,
        span.high,
    ) else ""


def _low(span: Range | None, scale: float = 1.0) -> Found:
    return None if span is None or span.low is None else (span.low * scale, "")


def _high(span: Range | None, scale: float = 1.0) -> Found:
    return None if span is None or span.high is None else (span.high * scale, "")


def _said(value: Any) -> Found:
    return None if value is None else (value, "")


def _whole(span: Range | None) -> Found:
    exact = span is not None and span.low == span.high and span.low is not None
    return (int(span.low or 0), "") if exact and span is not None else None


def _one_time(rule: WaitRule | None, *, closes: bool = False) -> Found:
    """Give the one time of a data sheet: of a range its careful end. None for a table."""
    if rule is None or len(rule.rows) != 1:
        return None
    (row,) = rule.rows
    if row.to_s is None:
        return row.time_s, ""
    return (row.time_s, LOW) if closes else (row.most_s, HIGH)


def _one_at(rule: WaitRule | None) -> Found:
    return None if rule is None or len(rule.rows) != 1 else _said(rule.rows[0].at_c)


def _one_humidity(rule: WaitRule | None) -> Found:
    return None if rule is None or len(rule.rows) != 1 else _said(rule.rows[0].at_percent)


def _components(profile: Profile) -> Found:
    parts = profile.mix.parts if profile.mix else ()
    return (
        (tuple(Component(each.name, each.parts, each.density_g_ml) for each in parts), "")
        if parts
        else None
    )


def _thinner_share(profile: Profile) -> float:
    """The most thinner the profile allows, by volume of the coating [1]: the careful end for fire."""
    thinner = profile.mix.thinner if profile.mix else None
    if thinner is None or (profile.waterborne and not thinner.solvent):
        return 0.0
    return (thinner.most_percent or 0.0) / 100


def _solvent_share(profile: Profile) -> float | None:
    film = profile.film
    if film.solvent_percent is not None:
        return film.solvent_percent / 100
    if film.volume_solids_percent is None or profile.waterborne:
        return None
    return volatile_fraction((film.volume_solids_percent.low or 0.0) / 100)


def _volatile(profile: Profile) -> Found:
    coating, thinner = _solvent_share(profile), _thinner_share(profile)
    return None if coating is None else ((coating + thinner) / (1 + thinner), MOST_THINNER)


def _solvents(profile: Profile) -> Found:
    coating, thinner = _solvent_share(profile), _thinner_share(profile)
    other = profile.mix.thinner.solvent if profile.mix and profile.mix.thinner else None
    named = [(profile.film.solvent, coating or 0.0), (other, thinner)]
    whole = sum(share for _, share in named)
    try:
        shares = [(solvent(name or ""), share / whole) for name, share in named if share]
    except BadInput:
        return None  # one that no list has: its data sheet tells, and it is typed
    blend: dict[str, tuple[Any, float]] = {}
    for each, share in shares:
        blend[each.name] = each, blend.get(each.name, (each, 0.0))[1] + share
    return (tuple(blend.values()), MOST_THINNER if thinner else "") if blend else None


def _thinner(profile: Profile, name: str, scale: float = 1.0) -> Found:
    thinner = profile.mix.thinner if profile.mix else None
    value = getattr(thinner, name, None)
    return None if value is None else (value * scale, "")


def _wait(find: Callable[[Profile], WaitRule | None], *, closes: bool = False) -> dict[str, Any]:
    return {
        "time": lambda p: _one_time(find(p), closes=closes),
        "at": lambda p: _one_at(find(p)),
        "reference-air": lambda p: _one_at(find(p)),
        "reference-humidity": lambda p: _one_humidity(find(p)),
    }


def _end(table: str, key: str, end: str) -> Callable[[Profile], Found]:
    return lambda profile: _said(getattr(getattr(getattr(profile, table), key), end, None))


_WEATHER = {"air": "air_c", "part": "part_c", "humidity": "humidity_percent"}
_LIMITS: dict[str, Callable[[Profile], Found]] = {
    **{
        f"{name}-{end}": _end("limits", key, end)
        for name, key in _WEATHER.items()
        for end in ("low", "high")
    },
    "margin": lambda p: _said(p.limits.dew_margin_c),
}
_OF_JOB: dict[str, Callable[[Profile], Found]] = {
    **{name: find for name, find in _LIMITS.items() if name != "margin"},
    **{
        f"{name}-{end}": _end(table, key, end)
        for name, table, key in (
            ("inlet", "gun", "inlet_kpa"),
            ("delivery", "gun", "delivery_ml_min"),
            ("wet", "film", "wet_um"),
            ("distance", "gun", "distance_mm"),
        )
        for end in ("low", "high")
    },
    "dew-margin-low": _LIMITS["margin"],
    "efflux-low": lambda p: _low(p.efflux.target_s if p.efflux else None),
    "efflux-high": lambda p: _high(p.efflux.target_s if p.efflux else None),
    "overlap-wanted": lambda p: _middle(p.gun.overlap_percent, 0.01),
    "thinner-high": lambda p: _thinner(p, "most_percent"),
    "flash-off": lambda p: _one_time(p.waits.flash_off),
}
#: Subjects that ask what was measured: what a data sheet says must not stand for it.
MEASURED = ("efficiency", "fault", "sign")
#: By subject and argument; '' for any subject but those.
FROM_PROFILE: Mapping[str, Mapping[str, Callable[[Profile], Found]]] = {
    "": {
        "components": _components,
        "parts-by": lambda p: (Measure(p.mix.by), "") if p.mix and p.mix.parts else None,
        "solids": lambda p: _middle(p.film.volume_solids_percent, 0.01),
        "least-solids": lambda p: _low(p.film.volume_solids_percent, 0.01),
        "most-solids": lambda p: _high(p.film.volume_solids_percent, 0.01),
        "fan": lambda p: _middle(p.gun.fan_mm),
        "overlap": lambda p: _middle(p.gun.overlap_percent, 0.01),
        "efficiency": lambda p: (BANDS["hvlp"], "") if p.gun.hvlp else None,
        "wet-most": lambda p: _high(p.film.wet_um),
    },
    "speed": {
        "wet": lambda p: _middle(p.film.wet_um),
        "delivery": lambda p: _middle(p.gun.delivery_ml_min),
    },
    "mean-wet-film": {"delivery": lambda p: _middle(p.gun.delivery_ml_min)},
    "time-to-empty": {"delivery": lambda p: _middle(p.gun.delivery_ml_min)},
    "turns-for-delivery": {"delivery": lambda p: _middle(p.gun.delivery_ml_min)},
    "material": {"wet": lambda p: _middle(p.film.wet_um), "coats": lambda p: _whole(p.film.coats)},
    "coats-to-dry-film": {"dry": lambda p: _middle(p.film.dry_total_um)},
    "gauge": {"low": lambda p: _low(p.film.wet_um), "high": lambda p: _high(p.film.wet_um)},
    "delivery": {"density": lambda p: _said(p.film.density_g_ml)},
    "fresh-air": {
        "delivery": lambda p: _high(p.gun.delivery_ml_min),
        "volatile": _volatile,
        "solvents": _solvents,
    },
    "dilution-air-of-blend": {"solvents": _solvents},
    "receiver-needed": {"inlet": lambda p: _high(p.gun.inlet_kpa)},
    "volatile": {"solids": lambda p: _low(p.film.volume_solids_percent, 0.01)},
    "sieve-number": {"strainer": lambda p: _said(p.gun.strainer_um)},
    "viscosity": {"cup": lambda p: (cup_named(p.efflux.cup), "") if p.efflux else None},
    "efflux": {"cup": lambda p: (cup_named(p.efflux.cup), "") if p.efflux else None},
    "runs": {"cup": lambda p: (cup_named(p.efflux.cup), "") if p.efflux else None},
    "same-cup": {
        "low": lambda p: _low(p.efflux.target_s if p.efflux else None),
        "high": lambda p: _high(p.efflux.target_s if p.efflux else None),
        "at": lambda p: _said(p.efflux.at_c if p.efflux else None),
        "limit": lambda p: _thinner(p, "most_percent", 0.01),
    },
    "thinner": {
        "limit": lambda p: _thinner(p, "most_percent", 0.01),
        "thinner": lambda p: _thinner(p, "viscosity_mm2_s"),
    },
    "thinner-fit": {"limit": lambda p: _thinner(p, "most_percent", 0.01)},
    "thinner-room": {"limit": lambda p: _thinner(p, "most_percent", 0.01)},
    "mix-thinner": {"thinner": lambda p: _thinner(p, "start_percent")},
    "pot-life": _wait(lambda p: p.mix.pot_life if p.mix else None, closes=True),
    "flash-off": _wait(lambda p: p.waits.flash_off),
    "waterborne-flash-off": _wait(lambda p: p.waits.flash_off),
    "recoat-opens": _wait(lambda p: p.waits.recoat_opens),
    "recoat-closes": _wait(lambda p: p.waits.recoat_closes, closes=True),
    "closes-waterborne": _wait(lambda p: p.waits.recoat_closes, closes=True),
    "weather": _LIMITS,
    "fault": _OF_JOB,
    "sign": _OF_JOB,
}
#: By argument; a subject that says the same word of something else is named with it.
FROM_GUN: Mapping[str, Callable[[Gun], Found]] = {
    "efficiency": lambda gun: (
        (BANDS["hvlp"], "") if gun.hvlp else (BANDS["conventional"], "not said to be HVLP")
    ),
    "demand": lambda gun: _said(gun.air_l_min),
    "inlet": lambda gun: _said(gun.inlet_kpa),
    "cups-to-fill cup": lambda gun: _said(gun.cup_ml),
    "time-to-empty volume": lambda gun: None if gun.cup_ml is None else (gun.cup_ml, "a full cup"),
}


def _of(table: str, name: str, scale: float = 1.0) -> Callable[[Shop], Found]:
    def find(shop: Shop) -> Found:
        value = getattr(getattr(shop, table), name, None)
        return None if value is None else (value * scale, "")

    return find


FROM_SHOP: Mapping[str, Callable[[Shop], Found]] = {
    "receiver": _of("compressor", "receiver_l"),
    "cut-in": _of("compressor", "cut_in_kpa"),
    "cut-out": _of("compressor", "cut_out_kpa"),
    "supply": _of("compressor", "flow_l_min"),
    "rated-duty": _of("compressor", "duty_percent", 0.01),
    "longest-trigger full": _of("compressor", "cut_out_kpa"),
    "recovery full": _of("compressor", "cut_out_kpa"),
    "exhaust": _of("room", "exhaust_m3_min", M3_MIN),
    "air-changes room": _of("room", "volume_m3"),
    "time-to-clear room": _of("room", "volume_m3"),
    "face": _of("room", "face_m2"),
}
