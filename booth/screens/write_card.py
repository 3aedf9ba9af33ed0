"""Writes the card of a job as a page to print, and says where it is."""

from __future__ import annotations

import os
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from booth.clock import local_date, local_hhmm
from booth.files.places import cards_dir
from booth.files.safe_text import visible
from booth.log.store import read_log
from booth.screens.dialog import Sheet

if TYPE_CHECKING:
    from booth.log.summary import JobSummary
    from booth.screens.host import Host

NOT_WRITTEN = "NOT WRITTEN"
PRINT = "Open it in a web browser and print it from there: one sheet, A4 or US letter."
OTHERWISE = "booth sheet writes the same as text, Markdown or a table: booth sheet --help"


def folder_of(host: Host) -> Path:
    """Where cards go: as the shop file says, else among the painter's documents."""
    named = host.shop.cards.strip()
    if named:
        return host.places.shop_file.parent / os.path.expanduser(named)
    return cards_dir(host.places.jobs_dir)


async def write_card_of(host: Host, chosen: JobSummary) -> None:
    """Write the card of a job of the list."""
    if chosen.opened is None or chosen.fault:
        told = (chosen.fault, f"The file is left as it is: {chosen.path}")
        await host.show(Sheet(NOT_WRITTEN, told, grave=True))
        return
    await write_card_at(host, chosen.path, chosen.name, chosen.copies)


async def write_card_at(host: Host, log: Path, name: str, copies: Sequence[str] = ()) -> None:
    """Write the card of the job whose log is at `log`, in the units shown now. copies: what is to be said
    of other files that hold it."""
    from booth.card.forms import in_form, write_card

    path = folder_of(host) / f"{log.stem}.html"
    try:
        content = read_log(log)
        said = (*copies, *content.said)
        text = in_form("html", content.events, host.system, local_hhmm, local_date, said, name)
        written = write_card(path, text, "html")
    except OSError as fault:
        why = fault.strerror or type(fault).__name__
        where = visible(str(fault.filename or path))
        await host.show(Sheet(NOT_WRITTEN, (f"{where}: {why}.",), grave=True))
        return
    # Its name alone on a line: a path is broken where the sheet is narrow.
    told = [visible(written.path.name), f"in {visible(str(written.path.parent))}", PRINT]
    if written.before is not None:
        told.append(f"What stood there before is in {visible(written.before.name)}, beside it.")
    await host.show(Sheet("The card is written", (*told, OTHERWISE)))
