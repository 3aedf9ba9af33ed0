"""What keys do to a form: type, erase, mark, choose, turn the unit. Pure.

Enter and Space are not here: what they do is for whoever keeps what the form holds.
"""

from __future__ import annotations

import re
import unicodedata
from contextlib import suppress
from typing import NamedTuple

from msgspec.structs import replace

from booth.files.safe_text import visible
from booth.forms.form import Field, Form, Row, Rows, understood
from booth.forms.key import Key
from booth.units import EntryError, Kind, System, shown_unit

#: What a quantity may begin with, besides a figure: anything else is a shortcut there.
BEGINS = frozenset(".,-+")
#: Units that are turned through besides those that a kind is shown in.
MORE_UNITS = {Kind.TIME: ("min", "h")}
MOST_TYPED = 4000
#: The number of an entry, without its unit.
NUMBER = re.compile(r"[-+]?[\d.,:/ -]*\d")


class Edit(NamedTuple):
    """What a key makes of a form, and the word for it."""

    word: str
    form: Form


def edit(rows: Rows, key: Key) -> Edit | None:
    """Give what a key does to the form; None where it is not for the form."""
    if key.name in ("backspace", "delete"):
        return _erase(rows, key.name)
    if key.name in ("up", "down", "tab", "shift+tab"):
        return _mark(rows, key.name)
    if key.name in ("left", "right", "home", "end"):
        return _sideways(rows, key.name)
    row = types(rows, key.character) if key.character and key.character.isprintable() else None
    if row is None or key.character is None or len(row.text) >= MOST_TYPED:
        return None
    return Edit(row.field.label, _inserted(rows, row, key.character))


def types(rows: Rows, character: str) -> Row | None:
    """The row that this character would be typed into, if it is text at this moment."""
    row = rows.target
    if row is None or not character.isprintable():
        return None
    if row.field.is_words:
        return row if row is rows.marked else None
    if row.field.digits is not None:
        return row if character.isascii() and character.isdigit() else None
    if character == "?" or (character == " " and not row.text):
        return None
    begins = character in BEGINS or unicodedata.category(character) in ("Nd", "No")
    return row if row.text or begins else None


def paste(rows: Rows, text: str) -> Form | None:
    """The form with a pasted text in the row that takes it; lines become one, nothing is lost."""
    row = rows.target
    if row is None or not text.strip():
        return None
    joined = (" / " if row.field.is_words else " ").join(
        line.strip() for line in text.splitlines() if line.strip()
    )
    return _inserted(rows, row, joined[: MOST_TYPED - len(row.text)])


def _inserted(rows: Rows, row: Row, text: str) -> Form:
    cursor = rows.form.cursor if row is rows.marked else 0
    at = len(row.text) - cursor
    return rows.form.typed(row.key, row.text[:at] + visible(text) + row.text[at:], cursor)


def _erase(rows: Rows, name: str) -> Edit | None:
    """A character less; where the row is empty, nothing that a form could do."""
    row, cursor = rows.marked, rows.form.cursor
    if row is not None and row.field.choices and row.holds:
        form = rows.form.choosing(row.key, "").marking(row.key)
        return Edit("erase", replace(form, erased=True))
    if row is None or not row.text:
        return None
    at = len(row.text) - cursor
    if name == "delete":
        if not cursor:
            return None
        text, cursor = row.text[:at] + row.text[at + 1 :], cursor - 1
    elif not at:
        return None
    else:
        text = row.text[: at - 1] + row.text[at:]
    form = rows.form.typed(row.key, text, cursor)
    return Edit("erase", replace(form, erased=not text))


def _mark(rows: Rows, name: str) -> Edit | None:
    row, by = rows.marked, -1 if name in ("up", "shift+tab") else 1
    other = rows.after(row, by) if row is not None else None
    if other is not None:
        return Edit("rows", rows.form.marking(other.key))
    if by > 0 and rows.assumed:
        form = replace(rows.form.marking(rows.assumed[0].key), opened=True)
        return Edit("what is assumed", form)
    return None


def _sideways(rows: Rows, name: str) -> Edit | None:
    row, cursor = rows.marked, rows.form.cursor
    if row is None:
        return None
    if row.field.choices and name in ("left", "right"):
        keys = [key for key, _ in row.field.choices]
        value = keys[(keys.index(str(row.given)) + (1 if name == "right" else -1)) % len(keys)]
        form = rows.form.choosing(row.key, value).marking(row.key)
        return Edit(row.field.label.lower(), form)
    if not row.text:
        return None
    if name == "right" and not cursor and row.field.is_quantity:
        return _other_unit(rows, row)
    to = {"left": cursor + 1, "right": cursor - 1, "home": len(row.text), "end": 0}[name]
    to = min(max(to, 0), len(row.text))
    if to == cursor:
        return None
    return Edit("move", replace(rows.form, cursor=to, marked=row.key, erased=False))


def _other_unit(rows: Rows, row: Row) -> Edit | None:
    """The same number in the next unit: a glove cannot type its letters."""
    found, units = NUMBER.match(row.text), list(filter(None, units_of(row.field, rows.system)))
    unit = row.text[found.end() :].strip() if found else ""
    if found is None or len(units) < 2 or (unit and unit not in units):
        return None
    following = units[(units.index(unit or units[0]) + 1) % len(units)]
    return Edit("unit", rows.form.typed(row.key, f"{found[0]} {following}"))


def units_of(field: Field, system: System) -> tuple[str, ...]:
    """The units that an arrow turns through, the one of a bare number first."""
    order = (system, system.other)
    if field.amount:
        kinds = (Kind.MASS, Kind.VOLUME) if field.kind is Kind.MASS else (Kind.VOLUME, Kind.MASS)
        return tuple(dict.fromkeys(shown_unit(kind, each) for each in order for kind in kinds))
    assert field.kind is not None
    usual = [shown_unit(field.kind, each) for each in order]
    return tuple(dict.fromkeys((*usual, *MORE_UNITS.get(field.kind, ()))))


def other_units(form: Form, fields: tuple[Field, ...], before: System, now: System) -> Form:
    """The form under the other system of units: a bare number keeps the unit it was typed in."""
    by_key = {each.key: each for each in fields if each.is_quantity}
    texts = dict(form.texts)
    for key in by_key.keys() & texts.keys():
        field = by_key[key]
        with suppress(EntryError):
            was = understood(texts[key], field, before)
            if understood(texts[key], field, now).value != was.value:
                texts[key] += f" {shown_unit(field.kind_of(was), before)}"
    return replace(form, texts=texts)
