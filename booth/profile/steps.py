"""The steps of a job for a profile: its own list, or the whole job from can to cleaned gun.

The words say how each step is done to someone doing it for the first time; what a product needs
otherwise (coarse metallic, no components to mix, water, high volume and low pressure) is said in
its place. Trade lore throughout: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from typing import Any

import msgspec

from booth.files.slug import slug
from booth.profile.model import Care, Hazard, Profile, Step
from booth.profile.step_kinds import MUST, NAMES
from booth.profile.step_words import AFTER, BETWEEN, FIRST_TIME, HOW, PREPARE


def _default(kind: str) -> Step:
    return Step(key=kind, kind=kind, name=NAMES[kind], how=HOW.get(kind, ()), must=kind in MUST)


#: The whole job, for a product of which nothing special is known.
DEFAULT_STEPS: tuple[Step, ...] = tuple(_default(kind) for kind in NAMES if kind != "plain")


def listed_steps(lines: Iterable[Mapping[str, Any]]) -> tuple[Step, ...]:
    """Make the steps that a profile's file lists, from their kind, name, how and must.

    What is not said follows from the kind; the key of a step follows from kind and name.
    """
    steps: list[Step] = []
    for line in lines:
        kind = line["kind"]
        usual = {"name": NAMES[kind], "must": kind in MUST, **line}
        taken = {step.key for step in steps}
        steps.append(Step(key=_key(kind, usual["name"], taken), **usual))
    return tuple(steps)


def _key(kind: str, name: str, taken: set[str]) -> str:
    """Give the key of a step: its kind, or its name for a plain one; numbered where it repeats."""
    base = slug(name) if kind == "plain" else kind
    if kind == "plain" and base in NAMES:
        # The keys of the other kinds are theirs, whether or not they are in the list.
        base = f"plain-{base}"
    key, number = base, 1
    while key in taken:
        number += 1
        key = f"{base}-{number}"
    return key


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


def between_products(step: Step, profile: Profile) -> Step:
    """Give `step` as it is where another product follows: unmasking, handling, polishing and the look
    next morning come after the last one. What a profile's own list says of it stays."""
    own = any(each.kind == "after" and each.how for each in profile.steps)
    if step.kind != "after" or own:
        return step
    return msgspec.structs.replace(step, name="Between products", how=BETWEEN)


def _suited(step: Step, profile: Profile) -> Step:
    """Give `step` as this product needs it."""
    if step.kind in CARE:
        lines, said_in = CARE[step.kind]
        said = said_in(profile)
        own = (_care_line(key, line, getattr(said, key, None)) for key, line in lines.items())
        return msgspec.structs.replace(step, how=tuple(own))
    if step.kind == "mix" and not _is_mixed(profile):
        if _is_thinned(profile):
            return msgspec.structs.replace(step, name="Stir and thin", how=FIRST_TIME["stir"])
        return Step(key="stir", kind="plain", name="Stir", how=FIRST_TIME["stir"])
    for words, applies in OTHERWISE.items():
        if words.startswith(f"{step.kind},") and applies(profile):
            return msgspec.structs.replace(step, how=FIRST_TIME[words])
    return step


def _care_line(key: str, usual: str, said: str | None) -> str:
    """A line of preparation or after care: as the profile has it, else the usual one."""
    return f"{key.replace('_', ' ').capitalize()}: {said.removesuffix('.')}." if said else usual


def _is_mixed(profile: Profile) -> bool:
    return profile.mix is not None and len(profile.mix.parts) > 1


def _is_thinned(profile: Profile) -> bool:
    """Whether one can and a known amount of thinner make the mix: that is poured to marks, too."""
    thinner = profile.mix.thinner if profile.mix is not None else None
    usual = thinner.usual_percent if thinner is not None else None
    return usual is not None and bool(usual.high or usual.low)


#: The usual lines of these steps, and where a profile says more of them.
CARE: dict[str, tuple[dict[str, str], Callable[[Profile], Care]]] = {
    "prepare": (PREPARE, lambda profile: profile.preparation),
    "after": (AFTER, lambda profile: profile.after),
}
#: For which products a step has other words; of two that suit one step the first counts.
OTHERWISE: dict[str, Callable[[Profile], bool]] = {
    "fresh-air, isocyanate": lambda profile: Hazard.ISOCYANATE in profile.hazards,
    "fresh-air, waterborne": lambda profile: profile.waterborne,
    "mix, by weight": lambda profile: profile.mix is not None and profile.mix.by == "weight",
    "mix, induction": lambda profile: profile.mix is not None and profile.mix.induction is not None,
    "efflux, no target": lambda profile: profile.efflux is None,
    "thin, no thinner": lambda profile: profile.mix is None or profile.mix.thinner is None,
    "thin, waterborne": lambda profile: profile.waterborne,
    "strain, coarse metallic": lambda profile: profile.gun.coarse_metallic,
    "air, hvlp": lambda profile: profile.gun.hvlp,
    "coats, coarse metallic": lambda profile: profile.gun.coarse_metallic,
    "coats, waterborne": lambda profile: profile.waterborne,
    "clean, waterborne": lambda profile: profile.waterborne,
    "clean, mixed": _is_mixed,
}
