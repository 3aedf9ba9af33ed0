"""What one row of a form asks for, and how what is typed there is understood."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable

import msgspec
from msgspec.structs import replace

from booth.files.safe_text import visible
from booth.units import (
    EntryError,
    Kind,
    Quantity,
    System,
    read,
    read_amount,
    show,
    shown_unit,
)

#: What a row gives: a quantity, a chosen or typed text, or None where it was left empty.
Given = Quantity | str | None
#: Units that are turned through besides those that a kind is shown in.
MORE_UNITS = {Kind.TIME: ("min", "h")}


class Field(msgspec.Struct, frozen=True):
    """One row.

    kind: a quantity of this kind; None with `choices`: one of them (value, words); None without: words.
    amount: volume or weight, either; a bare number is a volume, with the kind mass a weight.
    optional: may be left empty. default: taken where the row is left empty, shown dim; a number is
    in base units, of an amount in ml. assumed: stands in the quiet line of what is assumed until it is opened, and may be left empty. hidden:
    never in sight. asks: a choice to be made: "" among its values is none yet. digits: takes digits
    only, and says what is wrong with them.
    """

    key: str
    label: str
    kind: Kind | None = None
    choices: tuple[tuple[str, str], ...] = ()
    amount: bool = False
    optional: bool = False
    default: Given | float = None
    hint: str = ""
    assumed: bool = False
    hidden: bool = False
    asks: bool = False
    digits: Callable[[str], str] | None = None

    @property
    def is_quantity(self) -> bool:
        return self.kind is not None or self.amount

    @property
    def is_words(self) -> bool:
        return not (self.choices or self.is_quantity or self.digits)

    @property
    def is_needed(self) -> bool:
        """Whether something has to be typed or chosen here."""
        if self.choices:
            return self.asks and not self.optional
        return not (self.optional or self.assumed) and self.default is None

    @property
    def offered(self) -> Given:
        """What is taken where the row is left empty."""
        if not isinstance(self.default, float | int):
            return self.default
        kind = Kind.VOLUME if self.kind is None or self.amount else self.kind
        return Quantity(self.default, kind.base, "")

    def kind_of(self, given: Quantity) -> Kind:
        """The kind of a quantity that was given here."""
        if self.kind is not None and not self.amount:
            return self.kind
        return Kind.MASS if given.unit == "g" else Kind.VOLUME


def same(names: Iterable[str]) -> tuple[tuple[str, str], ...]:
    """Choices that are told by their own names."""
    return tuple((name, visible(name)) for name in names)


def only(keys: Collection[str], fields: tuple[Field, ...]) -> tuple[Field, ...]:
    """The fields, of which these alone are in sight."""
    return tuple(replace(each, hidden=each.key not in keys) for each in fields)


def shown(given: Quantity, field: Field, system: System) -> str:
    return show(given.value, field.kind_of(given), system)


def understood(text: str, field: Field, system: System) -> Quantity:
    """Read what was typed for a field. Raises EntryError with a sentence."""
    if field.kind is Kind.MASS and field.amount:
        try:
            return read(text, Kind.MASS, system)
        except EntryError:
            pass
    if field.amount or field.kind is None:
        return read_amount(text, system)
    return read(text, field.kind, system)


def units_of(field: Field, system: System) -> tuple[str, ...]:
    """The units that an arrow turns through, the one of a bare number first."""
    order = (system, system.other)
    if field.amount:
        kinds = (Kind.MASS, Kind.VOLUME) if field.kind is Kind.MASS else (Kind.VOLUME, Kind.MASS)
        return tuple(dict.fromkeys(shown_unit(kind, each) for each in order for kind in kinds))
    assert field.kind is not None
    usual = [shown_unit(field.kind, each) for each in order]
    return tuple(dict.fromkeys((*usual, *MORE_UNITS.get(field.kind, ()))))


def in_system(text: str, field: Field, before: System, now: System) -> str:
    """Give `text` so that it means what it meant: a bare number keeps the unit it was typed in."""
    try:
        was = understood(text, field, before)
        if understood(text, field, now).value != was.value:
            return f"{text} {shown_unit(field.kind_of(was), before)}"
    except EntryError:
        pass
    return text
