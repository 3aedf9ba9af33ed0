"""The settings that worked become a new coating profile: a name is asked for, the old file stays."""

from __future__ import annotations

from booth.bench.act import Act, Ask, Context, Say
from booth.job.settings import NotAProfile, profile_from, settings_lines
from booth.profile.save import NotSaved, save_new
from booth.screens.bench_desk import BenchDesk

NOTHING_YET = "Nothing was measured yet that a profile keeps: cup, air, catch or fan first."
REHEARSED = "This is a rehearsal: what was set with water is no setting for a coating."


def save_profile(desk: BenchDesk) -> Act:
    """Ask for a name and save the settings of this job under it."""
    system = desk.host.system
    if desk.job.opened.rehearsal:
        return Act("", (Say(REHEARSED, fault=True),))
    taken = settings_lines(desk.job, system)
    if not taken:
        return Act("", (Say(NOTHING_YET, fault=True),))

    def named(now: Context, name: str) -> Act:
        try:
            path = save_new(profile_from(desk.job, name), desk.host.places.own_profiles_dir, system)
        except (NotAProfile, NotSaved) as fault:
            return Act("", (Say(f"NOT SAVED: {fault}", fault=True),))
        said = f"Saved as {path.name}. It is on the list of profiles from the next job on."
        return Act("", (Say(said),))

    why = f"Taken over from this job: {', '.join(taken)}. All else stays as it was."
    return Act("", (Ask("Save as a new profile. Its name:", named, why=why, needed=True),))
