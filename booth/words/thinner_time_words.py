"""When the thinner goes in, said at the mix, at the cup and where it is thinned. Pure."""

from __future__ import annotations

from booth.files.safe_text import visible
from booth.job.recipe import thinner_of
from booth.job.thinner_time import ThinnerTime, thinner_time
from booth.profile.model import Profile

#: Never a guess: what is usual is said as such, and the sheet is asked.
UNSAID = (
    "The sheet does not say whether {name} goes in before or after the induction. Usual for many "
    "epoxies: after it (common practice, no source). Ask the data sheet."
)
AT_MIX = {
    ThinnerTime.BEFORE: "{name} goes in before the induction: now, with the rest.",
    ThinnerTime.AFTER: "{name} goes in after the induction: mix without it, then step Thin.",
    ThinnerTime.UNSAID: UNSAID,
}
WHILE_IT_STANDS = {
    ThinnerTime.BEFORE: "The sheet has {name} go in before the induction, which runs: ask it whether "
    "the induction counts anew.",
    ThinnerTime.AFTER: "{name} goes in after the induction, which lasts {left}: thin and time it then.",
    ThinnerTime.UNSAID: UNSAID,
}
LATER = {
    ThinnerTime.BEFORE: "The sheet has {name} go in before the induction: what goes in now has not "
    "stood. Ask it whether the induction counts anew.",
    ThinnerTime.UNSAID: UNSAID,
}


def _said(profile: Profile, words: dict[ThinnerTime, str], left: str = "") -> str:
    time, thinner = thinner_time(profile), thinner_of(profile)
    if time is None or thinner is None:
        return ""
    return words.get(time, "").format(name=visible(thinner.name), left=left)


def at_mix(profile: Profile) -> str:
    """What the mix says of it; "" where there is nothing to say."""
    return _said(profile, AT_MIX)


def at_thin(profile: Profile, left: str) -> str:
    """What is said where it is thinned. left: how long the induction lasts, "another 12 min"; "" where
    none runs."""
    return _said(profile, WHILE_IT_STANDS if left else LATER, left)


def at_cup(profile: Profile, left: str) -> str:
    """What the cup says of it while the mix stands: not whether to thin, but when."""
    time = thinner_time(profile)
    if time is ThinnerTime.AFTER:
        return f"Induction for another {left}, then thin: time it again then."
    again = f"Induction for another {left}: time it again then."
    return f"{again} {_said(profile, {ThinnerTime.UNSAID: UNSAID})}".strip()
