"""The steps of a job for a profile: its own list, or the whole job from can to cleaned gun.

The words say how each step is done to someone doing it for the first time; what a product needs
otherwise (coarse metallic, no components to mix, water, high volume and low pressure) is said in
its place. Trade lore throughout: common practice, no source.
"""

from __future__ import annotations

import msgspec

from booth.profile.model import Hazard, Profile, Step
from booth.profile.step_kinds import KINDS, MUST, NAMES
from booth.profile.step_words import FIRST_TIME, HOW

__all__ = ["DEFAULT_STEPS", "KINDS", "MUST", "NAMES", "steps_for"]

#: The order of the job.
ORDER = (
    "cautions", "weather", "fresh-air", "amount", "plan", "mix", "efflux", "thin", "strain",
    "air", "catch", "fan", "pattern", "pace", "coats", "film", "clean", "faults", "result",
)  # fmt: skip


def _default(kind: str) -> Step:
    return Step(key=kind, kind=kind, name=NAMES[kind], how=HOW[kind], must=kind in MUST)


#: The whole job, for a product of which nothing special is known.
DEFAULT_STEPS: tuple[Step, ...] = tuple(_default(kind) for kind in ORDER)


def steps_for(profile: Profile) -> tuple[Step, ...]:
    """Give the steps of a job with `profile`.

    A profile's own list is kept as it is; a step in it that says nothing gets the usual words. The
    cautions come first in every job, whatever the list says.
    """
    usual = {step.kind: _suited(step, profile) for step in DEFAULT_STEPS}
    if not profile.steps:
        return tuple(usual.values())
    steps = tuple(
        step
        if step.how or step.kind not in usual
        else msgspec.structs.replace(step, how=usual[step.kind].how)
        for step in profile.steps
    )
    if all(step.kind != "cautions" for step in steps):
        return (usual["cautions"], *steps)
    return steps


def _suited(step: Step, profile: Profile) -> Step:
    """Give `step` as this product needs it."""
    if step.kind == "mix" and not _is_mixed(profile):
        if _is_thinned(profile):
            return msgspec.structs.replace(step, name="Stir and thin", how=FIRST_TIME["stir"])
        return Step(key="stir", kind="plain", name="Stir", how=FIRST_TIME["stir"])
    special = _special(step.kind, profile)
    return msgspec.structs.replace(step, how=FIRST_TIME[special]) if special else step


def _special(kind: str, profile: Profile) -> str | None:
    """Which other words a step needs, if any."""
    mix = profile.mix
    match kind:
        case "fresh-air" if Hazard.ISOCYANATE in profile.hazards:
            return "fresh-air, isocyanate"
        case "fresh-air" if profile.waterborne:
            return "fresh-air, waterborne"
        case "mix" if mix is not None and mix.by == "weight":
            return "mix, by weight"
        case "mix" if mix is not None and mix.induction_s:
            return "mix, induction"
        case "efflux" if profile.efflux is None:
            return "efflux, no target"
        case "thin" if mix is None or mix.thinner is None:
            return "thin, no thinner"
        case "thin" if profile.waterborne:
            return "thin, waterborne"
        case "strain" if profile.gun.coarse_metallic:
            return "strain, coarse metallic"
        case "air" if profile.gun.hvlp:
            return "air, hvlp"
        case "coats" if profile.gun.coarse_metallic:
            return "coats, coarse metallic"
        case "coats" if profile.waterborne:
            return "coats, waterborne"
        case "clean" if profile.waterborne:
            return "clean, waterborne"
        case "clean" if _is_mixed(profile):
            return "clean, mixed"
    return None


def _is_mixed(profile: Profile) -> bool:
    return profile.mix is not None and len(profile.mix.parts) > 1


def _is_thinned(profile: Profile) -> bool:
    """Whether one can and a known amount of thinner make the mix: that is poured to marks, too."""
    thinner = profile.mix.thinner if profile.mix is not None else None
    return thinner is not None and bool(thinner.usual_percent)
