"""The settings that worked become a new coating profile: a name is asked for, the old file stays."""

from __future__ import annotations

from typing import TYPE_CHECKING

from booth.job.settings import NotAProfile, profile_from, settings_lines
from booth.profile.save import NotSaved, save_new
from booth.screens.ask import Ask
from booth.screens.sheet import Sheet

if TYPE_CHECKING:
    from booth.screens.bench_desk import BenchDesk

__all__ = ["save_profile"]


def save_profile(desk: BenchDesk) -> None:
    """Ask for a name and save the settings of this job under it."""
    system = desk.system
    taken = settings_lines(desk.job, system)
    if not taken:
        desk.say(
            "Nothing was measured yet that a profile keeps: cup, air, catch or fan first.",
            fault=True,
        )
        return

    def named(name: str | None) -> None:
        if name is None:
            desk.say("Not saved.")
            return
        try:
            path = save_new(profile_from(desk.job, name), desk.profiles_dir, system)
        except NotAProfile as fault:
            desk.say(str(fault), fault=True)
        except NotSaved as fault:
            desk.app.push_screen(Sheet("NOT SAVED", (str(fault),), grave=True))
        else:
            desk.say(f"Saved as {path.name}. It is on the list of profiles from the next job on.")

    why = f"Taken over from this job: {', '.join(taken)}. All else stays as it was."
    desk.app.push_screen(Ask("Save as a new profile. Its name:", why, needed=True), named)
