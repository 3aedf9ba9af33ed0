"""What a window has room for besides the figure: one rule, so that it is the same in every step. Pure."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from booth.widgets.tables import MOST_SHARE
from booth.words.shown import Gallery, Lines, Page, Paper, Parts, Picture, Section, Timeline

#: From these on what was tried stands beside words and rows.
BESIDE_FROM = 96, 28
#: From these on it stands there always, and the list of steps is followed by the log.
ALL_FROM = 140, 36
#: The list of steps beside the figure, where it stands there all the time.
RAIL = 44
#: Text is read in columns no wider than this.
MOST_TEXT = 90


class Room(NamedTuple):
    """What there is room for.

    below: rows for words, rows to fill and what stands beside them, 0 where those take what they
    need; beside: columns of what stands there; always: also where nothing was tried yet; log: the
    last entries under the steps.
    """

    below: int = 0
    beside: int = 0
    always: bool = False
    log: bool = False


NONE = Room()
#: So many rows are for what is below, where there are rows to fill; without them so many fewer; in
#: fewer than the least nothing can be read.
LEAST_BELOW, NO_ROWS, LEAST_ROWS = 10, 3, 6
#: Beside a long list the field keeps so much of the window; status and keys stand around it.
FIELD, FRAME = 0.4, 2
#: Pictures that take what a window of middling height has beside the figure.
TALL = (Page, Paper, Section, Timeline)
CHOSEN_FROM = (Gallery, Lines)


def room_in(
    width: int, height: int, pictures: Iterable[Picture] = (), has_rows: bool = True
) -> Room:
    """Give it for a window of so many columns and rows, what stands beneath the figure anyway, and
    whether there are rows to fill.

    A third of the height is for what is below; the field of the figure keeps its own share before.
    """
    if width < BESIDE_FROM[0] or height < BESIDE_FROM[1]:
        return NONE
    everything = width >= ALL_FROM[0] and height >= ALL_FROM[1]
    pictures = tuple(pictures)
    if any(isinstance(each, CHOSEN_FROM) for each in pictures):
        return Room(log=everything)  # what is chosen from takes all there is
    if not everything and any(isinstance(each, TALL) for each in pictures):
        return NONE
    has_page = any(isinstance(each, Page) for each in pictures)
    below = max(LEAST_BELOW, height // 3) - NO_ROWS * (not has_rows and not has_page)
    for each in pictures:
        if isinstance(each, Parts):
            listed = min(len(each.rows), int(height * MOST_SHARE))
            below = min(below, height - FRAME - listed - int(height * FIELD))
    if below < LEAST_ROWS:
        return Room(log=everything)
    own = width - (RAIL if width >= ALL_FROM[0] else 0)
    beside = max(own * 9 // 20, own - MOST_TEXT)
    return Room(below, beside, everything, everything)
