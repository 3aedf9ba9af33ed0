"""A rack: pieces alike, whose sides are parts of a job; what a list of jobs calls parts and racks. Pure."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import msgspec

#: More than any rack has; a log may have been written by hand.
MOST_SIDES = 20


class Rack(msgspec.Struct, frozen=True):
    """Pieces alike that are sprayed together, side by side of the rack: each side is a part of the job."""

    name: str
    pieces: int
    sides: int = 1

    @property
    def parts(self) -> tuple[str, ...]:
        """Its sides as parts: 'doors: side 1'."""
        if self.sides == 1:
            return (self.name,)
        return tuple(f"{self.name}: side {number}" for number in range(1, self.sides + 1))

    @property
    def title(self) -> str:
        """As '24 doors'."""
        return f"{self.pieces} {self.name}" if self.pieces > 1 else self.name

    @property
    def is_real(self) -> bool:
        """Whether any rack can be like this."""
        return self.pieces > 0 and 1 <= self.sides <= MOST_SIDES

    def sided(self, among: Sequence[str]) -> str:
        """It with those of its sides that are among these parts: '24 doors, both sides'."""
        left = [side for side in self.parts if side in among]
        if self.sides == 1 or not left:
            return self.title
        if len(left) == self.sides:
            return f"{self.title}, {'both' if self.sides == 2 else f'all {self.sides}'} sides"
        return f"{self.title}, {', '.join(side.rpartition(': ')[2] for side in left)}"


def named_once(parts: Sequence[str], racks: Iterable[Rack]) -> tuple[str, ...]:
    """The parts in their order, each rack once, with its sides."""
    held = {side: rack for rack in racks if rack.is_real for side in rack.parts}
    every = (held[part].sided(parts) if part in held else part for part in parts)
    return tuple(dict.fromkeys(every))


def in_a_line(parts: Sequence[str], racks: Iterable[Rack]) -> str:
    """All of them in a line: 'hood, fender', or '24 doors, both sides; hood'."""
    names = named_once(parts, racks)
    return ("; " if any(", " in each for each in names) else ", ").join(names)
