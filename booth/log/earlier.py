"""The opening of a job as earlier versions wrote it, brought into the shape of today. Pure.

Version 1 kept single figures where a data sheet may give a range, one pot life at one temperature,
and induction as bare seconds.
"""

from __future__ import annotations

from typing import Any


def as_of_today(opening: dict[str, Any]) -> dict[str, Any]:
    """Give an opening, as read from JSON, with its profile in today's shape; what is so already stays."""
    profile = opening.get("profile")
    if not isinstance(profile, dict):
        return opening
    new = dict(profile)
    _within(new, "gun", overlap_percent=_range)
    _within(new, "film", coats=_range, volume_solids_percent=_range)
    mix = new.get("mix")
    if isinstance(mix, dict):
        mix = dict(mix)
        _within(mix, "thinner", usual_percent=_range)
        if _is_number(mix.get("induction_s")):
            mix.setdefault("induction", {"rows": [{"at_c": None, "time_s": mix["induction_s"]}]})
        mix.pop("induction_s", None)
        if isinstance(mix.get("pot_life"), dict) and "time_s" in mix["pot_life"]:
            mix["pot_life"] = {"rows": [mix["pot_life"]]}
        new["mix"] = mix
    return {**opening, "profile": new}


def _within(table: dict[str, Any], name: str, **changes: Any) -> None:
    inner = table.get(name)
    if isinstance(inner, dict):
        changed = {key: change(inner[key]) for key, change in changes.items() if key in inner}
        table[name] = {**inner, **changed}


def _range(value: Any) -> Any:
    return {"low": value, "high": value} if _is_number(value) else value


def _is_number(value: Any) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)
