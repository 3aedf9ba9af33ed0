"""Writes a profile as TOML, each quantity in units that a painter would type."""

from __future__ import annotations

from typing import Any

import tomli_w

from booth.profile.model import AtTemperature, Profile, Range, WaitRule
from booth.profile.quantity_text import typed, typed_range
from booth.profile.step_kinds import MUST
from booth.units import Kind, System

__all__ = ["write"]

HEADER = "# Coating profile. `booth check --keys` tells every key.\n\n"

Table = dict[str, Any]


def write(profile: Profile, system: System = System.US) -> str:
    """Give `profile` as the text of a TOML file; read back, it is the same within rounding.

    Each quantity stands in the unit in which its number is shortest, the units of `system` first:
    what was typed as 6.5 fl oz/min comes out as that, though it is kept in ml/min.
    """
    table: Table = {
        "name": profile.name,
        "product": profile.product,
        "source": profile.source,
        "demo": profile.demo,
        "waterborne": profile.waterborne,
        "notes": list(profile.notes),
        "hazards": [str(each) for each in profile.hazards],
        "cautions": list(profile.cautions),
        "mix": _mix(profile, system),
        "efflux": _efflux(profile, system),
        "gun": _gun(profile, system),
        "film": _film(profile, system),
        "waits": _waits(profile, system),
        "limits": _limits(profile, system),
        "steps": _steps(profile),
    }
    return HEADER + tomli_w.dumps(_said(table))


def _said(table: Table) -> Table:
    """Leave out what the profile does not say: missing, false and empty mean the same there."""
    return {
        key: value
        for key, value in table.items()
        if value is not None and value is not False and value not in ("", [], {})
    }


def _mix(profile: Profile, system: System) -> Table | None:
    mix = profile.mix
    if mix is None:
        return None
    table = {
        "by": mix.by,
        "induction": typed(mix.induction_s, Kind.TIME, system),
        "pot_life": _at(mix.pot_life, system),
        "parts": [
            _said(
                {
                    "name": part.name,
                    "parts": _bare(part.parts),
                    "density": typed(part.density_g_ml, Kind.DENSITY, system),
                }
            )
            for part in mix.parts
        ],
    }
    thinner = mix.thinner
    if thinner is not None:
        table["thinner"] = _said(
            {
                "name": thinner.name,
                "usual": _bare(thinner.usual_percent),
                "limit": _bare(thinner.limit_percent),
                "viscosity": typed(thinner.viscosity_mm2_s, Kind.VISCOSITY, system),
                "density": typed(thinner.density_g_ml, Kind.DENSITY, system),
                "solvent": thinner.solvent,
            }
        )
    return _said(table)


def _efflux(profile: Profile, system: System) -> Table | None:
    efflux = profile.efflux
    if efflux is None:
        return None
    return _said(
        {
            "cup": efflux.cup,
            # Efflux times are told in seconds, however long they are.
            "target": typed_range(efflux.target_s, Kind.TIME, system, only="s"),
            "at": typed(efflux.at_c, Kind.TEMPERATURE, system),
        }
    )


def _gun(profile: Profile, system: System) -> Table:
    gun = profile.gun
    return _said(
        {
            "tip": typed_range(gun.tip_mm, Kind.TIP, system),
            "inlet_pressure": typed_range(gun.inlet_kpa, Kind.PRESSURE, system),
            "distance": typed_range(gun.distance_mm, Kind.LENGTH, system),
            "fan": typed_range(gun.fan_mm, Kind.LENGTH, system),
            "overlap": _bare(gun.overlap_percent),
            "delivery": typed_range(gun.delivery_ml_min, Kind.DELIVERY, system),
            "hvlp": gun.hvlp,
            "coarse_metallic": gun.coarse_metallic,
            "strainer": typed(gun.strainer_um, Kind.THICKNESS, system, only="um"),
        }
    )


def _film(profile: Profile, system: System) -> Table:
    film = profile.film
    return _said(
        {
            "coats": film.coats,
            "volume_solids": _bare(film.volume_solids_percent),
            "wet": typed_range(film.wet_um, Kind.THICKNESS, system),
            "dry_total": typed_range(film.dry_total_um, Kind.THICKNESS, system),
            "density": typed(film.density_g_ml, Kind.DENSITY, system),
            "solvent_percent": _bare(film.solvent_percent),
            "solvent": film.solvent,
        }
    )


def _waits(profile: Profile, system: System) -> Table:
    waits = profile.waits
    names = ("flash_off", "recoat_opens", "recoat_closes", "dust_free", "handle")
    return _said({name: _wait(getattr(waits, name), system) for name in names})


def _wait(rule: WaitRule | None, system: System) -> Table | None:
    if rule is None:
        return None
    if not rule.is_table:
        return _at(rule.rows[0], system)
    return {"table": [_row(row, system) for row in rule.rows]}


def _row(row: AtTemperature, system: System) -> Table:
    """A row of a table begins with its temperature, as on a data sheet."""
    return {
        "at": typed(row.at_c, Kind.TEMPERATURE, system),
        "time": typed(row.time_s, Kind.TIME, system),
    }


def _at(row: AtTemperature | None, system: System) -> Table | None:
    if row is None:
        return None
    return {
        "time": typed(row.time_s, Kind.TIME, system),
        "at": typed(row.at_c, Kind.TEMPERATURE, system),
    }


def _limits(profile: Profile, system: System) -> Table:
    limits = profile.limits
    return _said(
        {
            "air": _limit(limits.air_c, Kind.TEMPERATURE, system),
            "part": _limit(limits.part_c, Kind.TEMPERATURE, system),
            "humidity": _limit(limits.humidity_percent, Kind.PERCENT, system),
            "dew_margin": typed(limits.dew_margin_c, Kind.TEMPERATURE_DIFFERENCE, system),
        }
    )


def _limit(limit: Range | None, kind: Kind, system: System) -> str | None:
    return typed_range(limit, kind, system, single=False)


def _steps(profile: Profile) -> list[Table]:
    return [
        {
            **_said({"kind": step.kind, "name": step.name, "how": list(step.how)}),
            **({"must": step.must} if step.must != (step.kind in MUST) else {}),
        }
        for step in profile.steps
    ]


def _bare(number: float | None) -> int | float | None:
    """Give a count, parts or a percentage as a painter writes it: 2, not 2.0."""
    if number is None:
        return None
    rounded = float(f"{number:.5g}")
    return int(rounded) if rounded == int(rounded) else rounded
