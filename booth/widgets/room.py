"""What a window has room for besides the figure: one rule, so that it is the same in every step. Pure."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from booth.words.shown import Gallery, Lines, Page, Paper, Picture, Section, Timeline

#: From these on what was tried stands beside words and rows.
BESIDE_FROM = 96, 28
#: From these on it stands there always, and the list of steps is followed by the log.
ALL_FROM = 140, 36
#: The list of steps beside the figure, where it stands there all the time.
RAIL = 34
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
#: Pictures that take what a window of middling height has beside the figure.
TALL = (Gallery, Page, Paper, Section, Timeline)


def room_in(width: int, height: int, pictures: Iterable[Picture] = ()) -> Room:
    """Give it for a window of so many columns and rows, and what stands beneath the figure anyway.

    The field of the figure keeps more than half of the height: a third is for what is below.
    """
    if width < BESIDE_FROM[0] or height < BESIDE_FROM[1]:
        return NONE
    everything = width >= ALL_FROM[0] and height >= ALL_FROM[1]
    pictures = tuple(pictures)
    if any(isinstance(each, Lines) for each in pictures):
        return Room(log=everything)  # a list to choose from takes all there is
    if not everything and any(isinstance(each, TALL) for each in pictures):
        return NONE
    own = width - (RAIL if width >= ALL_FROM[0] else 0)
    beside = max(own * 9 // 20, own - MOST_TEXT)
    return Room(max(10, height // 3), beside, everything, everything)
