"""Which coating is rehearsed with water: profiles and systems, as on the first screen."""

from __future__ import annotations

from collections.abc import Sequence

from booth.moment import Moment
from booth.profile.model import Profile
from booth.profile.system import CoatingSystem
from booth.screens.base import Deed
from booth.screens.home_list import REHEARSE, HomeRow
from booth.screens.list_screen import Listed, ListScreen
from booth.words.shown import PickLine


class Rehearse(ListScreen[Profile | CoatingSystem | None, HomeRow]):
    """Gives what was chosen. whats: the rows of profiles and systems."""

    LEAVES = ("escape", "f9", "backspace")

    def __init__(self, whats: Sequence[HomeRow]) -> None:
        super().__init__()
        self.listed = Listed((row.section, row.id, row) for row in whats)
        self.picked = self.listed.line(None)

    def heading(self) -> str:
        return "REHEARSAL with water: of which coating?"

    def line(self, item: HomeRow, now: Moment) -> PickLine:
        return PickLine(item.title, item.behind, must=True)

    def about(self, now: Moment) -> tuple[str, ...]:
        """What a rehearsal is stays beside the list, whatever is picked."""
        return REHEARSE.about[:-2]

    def enter(self) -> Deed | None:
        row = self.chosen
        return Deed("rehearse it", lambda: self.close(row.profile)) if row is not None else None
