"""A job from the disk onto the bench, or the sentence why it cannot be opened."""

from __future__ import annotations

from pathlib import Path

from booth.log.errors import LogBusy, NotKept
from booth.log.fold import NoJob
from booth.moment import Moment
from booth.screens.dialog import Sheet
from booth.screens.host import Host


async def take_up(host: Host, path: Path, reopened_at: Moment | None = None) -> None:
    """Put the job at `path` on the bench. reopened_at: where given, a closed job is reopened."""
    try:
        session = host.jobs.take_up(path, reopened_at)
    except (LogBusy, NotKept, NoJob, OSError) as fault:
        await host.show(Sheet("This job cannot be opened", (str(fault),), grave=True))
        return
    await host.take_up(session)
