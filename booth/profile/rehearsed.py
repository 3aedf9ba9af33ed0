"""A rehearsal with water and cardboard: which steps of a job make sense with water, and how.

The steps are those of the real job, in its order and under its keys, with the same instruments: what is
practised is what is done later. Left out are those about the coating: weather, fresh air, amount, plan,
mix, thin, wet film, faults, after care; and the flow cup, since water runs out of every cup for paint
faster than that cup can be read (``trade.cups`` refuses it). Trade lore: common practice, no source.
"""

from __future__ import annotations

from msgspec.structs import replace

from booth.profile.model import Profile, Step
from booth.profile.steps import DEFAULT_STEPS, steps_for

#: Said where the coating is not waterborne.
THINNER = "Rinse with thinner in the real job, after its cautions."
#: The kinds that are rehearsed, with their words; without any they are the ones of the real job.
WITH_WATER: dict[str, tuple[str, ...]] = {
    "cautions": (
        "What holds with water too; Enter says that you read it.",
        "The coating has more: they come before the real job.",
    ),
    "prepare": (
        "A clean gun: nothing of an earlier job left in it.",
        "Cardboard, as large as the part, upright, as it stands.",
        "Clean water in the cup, as full as you will spray it.",
        "A marker, and a measuring cup or a scale.",
        "Drain the receiver and the trap; look at the filters.",
    ),
    "air": (),
    "catch": (
        "Shut the air at the gun, unless its book says otherwise.",
        "Measuring cup under the tip; pull fully when it says 0.",
        "Let go at the end. Enter how much water was caught.",
        "Type the turns of the needle too: that is what is kept.",
        "Water runs faster than a coating; by how much varies.",
    ),
    "fan": (),
    "pattern": (),
    "pace": (
        "Mark strips on the cardboard, as far apart as Fan said.",
        "Move from the shoulder; keep the wrist still.",
        "Go along with the moving bar until the arm knows it.",
        "Then choose 'your own pass, timed': five of them.",
        "Begin to move before the trigger, let go after the end.",
    ),
    "coats": (
        "The trigger as in the real job: strip after strip.",
        "Space as a coat begins, Space as it ends.",
        "Start off the board, end off it; edges first.",
        "Aim the middle of the fan at the edge of the last pass.",
        "Water teaches no wait: how long it will be is said.",
    ),
    "clean": (
        "Shut the air, let the pressure out, empty the cup.",
        "Air on: blow the gun empty. Air off, pressure out.",
        "Cap and tip off: dry both, and the needle to its point.",
        "Put a drop of oil on the needle seal (packing).",
        THINNER,
    ),
    "result": (
        "What to change before the real can stands here.",
        "Add what you saw yourself, in your own words.",
        "Closing it keeps it: the real job begins with it.",
    ),
}
#: What every rehearsal has, whatever the profile lists.
ALWAYS = ("prepare", "clean", "result")


def steps_with_water(profile: Profile) -> tuple[Step, ...]:
    """Give the steps of a rehearsal of a job with `profile`: of its steps those that make sense with
    water; what is got ready, cleaned and learnt is in all."""
    steps = [step for step in steps_for(profile) if step.kind in WITH_WATER]
    missing = {kind for kind in ALWAYS if all(step.kind != kind for step in steps)}
    added = [step for step in DEFAULT_STEPS if step.kind in missing]
    at = next(n for n, step in enumerate(steps) if step.kind == "cautions") + 1
    first, last = steps[:at], steps[at:]
    first += [step for step in added if step.kind == "prepare"]
    last += [step for step in added if step.kind != "prepare"]
    return tuple(
        replace(step, how=_how(step, profile), must=step.kind == "cautions")
        for step in (*first, *last)
    )


def _how(step: Step, profile: Profile) -> tuple[str, ...]:
    how = WITH_WATER[step.kind] or step.how
    return tuple(line for line in how if line != THINNER or not profile.waterborne)
