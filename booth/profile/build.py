"""From the values of a file without faults to a Profile; judges nothing."""

from __future__ import annotations

from typing import Any

from booth.profile.model import (
    Efflux,
    Film,
    Gun,
    Hazard,
    Limits,
    Mix,
    MixPart,
    Profile,
    Thinner,
    Waits,
)
from booth.profile.step_list import step_list

__all__ = ["build"]


def build(key: str, values: dict[str, Any]) -> Profile:
    """Build the profile of the file called `key` from values as ``read`` gives them."""
    return Profile(
        key=key,
        name=values["name"],
        product=values.get("product", ""),
        source=values["source"],
        demo=values.get("demo", False),
        waterborne=values.get("waterborne", False),
        notes=values.get("notes", ()),
        hazards=tuple(Hazard(each) for each in values.get("hazards", ())),
        cautions=values.get("cautions", ()),
        mix=_mix(values.get("mix")),
        efflux=_efflux(values.get("efflux")),
        gun=_gun(values.get("gun", {})),
        film=_film(values["film"]),
        waits=Waits(**values.get("waits", {})),
        limits=_limits(values.get("limits", {})),
        steps=step_list(values.get("steps", ())),
    )


def _mix(values: dict[str, Any] | None) -> Mix | None:
    if values is None:
        return None
    return Mix(
        parts=tuple(
            MixPart(each["name"], each["parts"], each.get("density"))
            for each in values.get("parts", ())
        ),
        by=values.get("by", "volume"),
        thinner=_thinner(values.get("thinner")),
        induction_s=values.get("induction"),
        pot_life=values.get("pot_life"),
    )


def _thinner(values: dict[str, Any] | None) -> Thinner | None:
    if values is None:
        return None
    return Thinner(
        name=values["name"],
        usual_percent=values.get("usual"),
        limit_percent=values.get("limit"),
        viscosity_mm2_s=values.get("viscosity"),
        density_g_ml=values.get("density"),
        solvent=values.get("solvent"),
    )


def _efflux(values: dict[str, Any] | None) -> Efflux | None:
    if values is None:
        return None
    return Efflux(values["cup"], values["target"], values.get("at"))


def _gun(values: dict[str, Any]) -> Gun:
    return Gun(
        tip_mm=values.get("tip"),
        inlet_kpa=values.get("inlet_pressure"),
        distance_mm=values.get("distance"),
        fan_mm=values.get("fan"),
        overlap_percent=values.get("overlap"),
        delivery_ml_min=values.get("delivery"),
        hvlp=values.get("hvlp", False),
        coarse_metallic=values.get("coarse_metallic", False),
        strainer_um=values.get("strainer"),
    )


def _film(values: dict[str, Any]) -> Film:
    return Film(
        coats=values["coats"],
        volume_solids_percent=values.get("volume_solids"),
        wet_um=values.get("wet"),
        dry_total_um=values.get("dry_total"),
        density_g_ml=values.get("density"),
        solvent_percent=values.get("solvent_percent"),
        solvent=values.get("solvent"),
    )


def _limits(values: dict[str, Any]) -> Limits:
    return Limits(
        air_c=values.get("air"),
        part_c=values.get("part"),
        humidity_percent=values.get("humidity"),
        dew_margin_c=values.get("dew_margin"),
    )
