"""A form: rows of which one is marked, what was typed and chosen in them, what it comes to.

Every form of the program is one of these: the instruments', the shop's, a new job's. Plain data:
keys change it in ``edit``, a widget draws it.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Mapping
from functools import lru_cache
from typing import NamedTuple

import msgspec
from msgspec.structs import replace

from booth.files.safe_text import visible
from booth.units import (
    EntryError,
    Kind,
    Quantity,
    System,
    echo,
    read,
    read_amount,
    show,
    shown_unit,
)
from booth.units.durations import spelled

#: What a row gives: a quantity, a chosen or typed text, or None where it was left empty.
Given = Quantity | str | None
Values = Mapping[str, Given]
#: Under this key the values say which row is marked.
MARKED = "the marked row"


class Field(msgspec.Struct, frozen=True):
    """One row.

    kind: a quantity of this kind; None with `choices`: one of them (value, words); None without: words.
    amount: volume or weight, either; a bare number is a volume, with the kind mass a weight.
    optional: may be left empty. default: taken where it is left empty, shown dim; a number is in base
    units, of an amount in ml. assumed: in the quiet line until that is opened; may be left empty.
    hidden: never in sight. asks: a choice to be made, "" is none yet. digits: says what is wrong.
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


def told(given: Quantity, field: Field, system: System) -> str:
    """As `shown`; a time as 1 min 30 s, which is no time of day."""
    return spelled(given.value) if field.kind is Kind.TIME else shown(given, field, system)


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


class Form(msgspec.Struct, frozen=True):
    """What the painter has put into the rows, by their keys.

    marked: the row that keys go to, "" for where it begins; cursor: in its text, from its end;
    opened: the assumed rows are in sight; erased: the last key erased the last character.
    """

    texts: Mapping[str, str] = msgspec.field(default_factory=dict)
    chosen: Mapping[str, str] = msgspec.field(default_factory=dict)
    marked: str = ""
    cursor: int = 0
    opened: bool = False
    erased: bool = False

    def typed(self, key: str, text: str, cursor: int = 0) -> Form:
        """The form with this text in a row, which is marked."""
        texts = {**self.texts, key: text}
        if not text:
            del texts[key]
        return replace(self, texts=texts, marked=key, cursor=cursor, erased=False)

    def choosing(self, key: str, value: str) -> Form:
        return replace(self, chosen={**self.chosen, key: value}, erased=False)

    def marking(self, key: str) -> Form:
        return replace(self, marked=key, cursor=0, erased=False)


#: A form that nobody has touched.
BLANK = Form()


class Row(NamedTuple):
    """One row as it stands: its field, what was typed, what it gives, what is wrong with it."""

    field: Field
    text: str
    given: Given
    echo: str = ""
    fault: str = ""

    @property
    def key(self) -> str:
        return self.field.key

    @property
    def is_empty(self) -> bool:
        """Whether nothing was typed, nor chosen where a choice is to be made."""
        if self.field.choices:
            return self.field.asks and not self.given
        return not self.text.strip()

    @property
    def holds(self) -> bool:
        return not self.is_empty and (self.field.asks or not self.field.choices)

    @property
    def lacks(self) -> bool:
        """Whether the row has to be filled before anything can be kept."""
        return bool(self.fault) or (self.field.is_needed and self.is_empty)


class Rows(msgspec.Struct, frozen=True):
    """A form's rows as they stand. every: all of them; sight: those that are shown, in order;
    assumed: those of the quiet line; first: the keys of those where it may begin."""

    form: Form
    every: tuple[Row, ...]
    sight: tuple[Row, ...]
    assumed: tuple[Row, ...]
    system: System
    first: tuple[str, ...] = ()

    @property
    def values(self) -> dict[str, Given]:
        """What the rows give, and which is marked; a row that cannot be understood is left out."""
        given: dict[str, Given] = {row.key: row.given for row in self.every if not row.fault}
        return given | {MARKED: self.marked.key if self.marked is not None else ""}

    @property
    def marked(self) -> Row | None:
        """The row that keys go to: the marked one, else where the form begins."""
        by_key = {row.key: row for row in self.sight}
        for key in (self.form.marked, *self.first):
            if key in by_key:
                return by_key[key]
        typing = (row for row in self.sight if not row.field.choices)
        return next(typing, next(iter(self.sight), None))

    @property
    def target(self) -> Row | None:
        """The row that a digit goes into: the marked one, else the next one that can be typed in."""
        marked = self.marked
        at = self.sight.index(marked) if marked is not None else 0
        return next((row for row in self.sight[at:] if not row.field.choices), None)

    @property
    def holds(self) -> bool:
        return any(row.holds for row in self.every)

    @property
    def waiting(self) -> Row | None:
        """The first row in sight that has to be filled or mended, if any."""
        return next((row for row in self.sight if row.lacks), None)

    @property
    def fault(self) -> str:
        """What is wrong with the first row that cannot be understood, in sight or not."""
        return next((row.fault for row in self.every if row.fault), "")

    def emptied(self, *, but: Collection[str] = ()) -> Form:
        """The form for the next entry: texts go, choices stay, but those that were asked for."""
        texts, chosen = self.form.texts, self.form.chosen
        asked = {row.key for row in self.every if row.field.asks}
        return Form(
            texts={key: text for key, text in texts.items() if key in but},
            chosen={key: value for key, value in chosen.items() if key not in asked},
        )

    def after(self, row: Row, by: int = 1) -> Row | None:
        """The row in sight after (or before) this one, if there is one."""
        at = self.sight.index(row) + by
        return self.sight[at] if 0 <= at < len(self.sight) else None

    def row(self, key: str) -> Row:
        """The row of this key. Raises KeyError."""
        return {row.key: row for row in self.every}[key]


def rows_of(
    form: Form, fields: tuple[Field, ...], system: System, first: tuple[str, ...] = ()
) -> Rows:
    """Give the rows of a form. first: the keys of the rows where it may begin."""
    every = tuple(_row(form, each, system) for each in fields)
    shown = [row for row in every if not row.field.hidden]
    quiet = tuple(row for row in shown if row.field.assumed and not form.opened and not row.text)
    sight = tuple(row for row in shown if row not in quiet)
    return Rows(form, every, sight, quiet, system, first)


def _row(form: Form, field: Field, system: System) -> Row:
    if field.choices:
        keys = [key for key, _ in field.choices]
        value = form.chosen.get(field.key)
        if value not in keys:
            value = field.default if field.default in keys else keys[0]
        assert isinstance(value, str)
        return Row(field, "", value, field.hint)
    return _typed(field, form.texts.get(field.key, ""), system)


@lru_cache(maxsize=256)
def _typed(field: Field, text: str, system: System) -> Row:
    """A row that is typed in: kept, since it is asked for at every look while it stands."""
    if not text.strip():
        return Row(field, text, field.offered, field.hint)
    if field.digits is not None and (fault := field.digits(text.strip())):
        return Row(field, text, None, fault=fault)
    if not field.is_quantity:
        return Row(field, text, text.strip())
    try:
        given = understood(text.strip(), field, system)
    except EntryError as fault:
        return Row(field, text, None, fault=str(fault))
    return Row(field, text, given, f"= {echo(given, field.kind_of(given), system)}")


def placeholder(field: Field, system: System) -> str:
    """What stands dim in an empty row: what is taken then, else the unit."""
    if isinstance(field.offered, Quantity):
        return told(field.offered, field, system)
    if isinstance(field.offered, str):
        return visible(field.offered)
    if field.amount:
        return "weight or volume" if field.kind is Kind.MASS else "volume or weight"
    return shown_unit(field.kind, system) if field.kind is not None else ""


def chosen_words(row: Row) -> str:
    return next((words for key, words in row.field.choices if key == row.given), "")
