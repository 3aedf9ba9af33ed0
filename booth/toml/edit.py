"""Changes a TOML text so that it says something else: only what differs is touched, comments and order stay.

What a text says is handed in as plain tables, before and after. ``tomlkit`` stands here and nowhere
else, and is loaded only when something is changed.
"""

from __future__ import annotations

from typing import Any

Plain = dict[str, Any]


class CannotEdit(ValueError):
    """The text has a shape that cannot be changed in place."""


def edited(text: str, before: Plain, after: Plain) -> str:
    """Give `text`, which says `before`, so that it says `after`; new tables stand at the end.

    Raises CannotEdit. Whether the result says so is for the caller to see: there are more ways to
    write a table than are told apart here.
    """
    import tomlkit

    mark = "\ufeff" if text.startswith("\ufeff") else ""
    ending = "\r\n" if "\r\n" in text else "\n"
    text = text.removeprefix(mark).replace("\r\n", "\n")
    if not text.endswith("\n"):
        text += "\n"
    try:
        document = tomlkit.parse(text)
        new = {
            name: value
            for name, value in after.items()
            if isinstance(value, (dict, list)) and name not in document
        }
        _change(document, before, {name: after[name] for name in after if name not in new})
        parts = [tomlkit.dumps(document)]
    except (AttributeError, LookupError, TypeError, ValueError) as fault:
        raise CannotEdit(str(fault)) from fault
    parts += [tomlkit.dumps({name: value}) for name, value in new.items()]
    return mark + "\n".join(parts).replace("\n", ending)


def _change(table: Any, before: Plain, after: Plain) -> None:
    for name in before.keys() - after.keys():
        _remove(table, name)
    for name, value in after.items():
        if isinstance(value, dict):
            _change(table[name], before.get(name, {}), value)
        elif isinstance(value, list):
            _change_list(table[name], before.get(name, []), value)
        elif name in table and value != before.get(name):
            table[name] = value
        elif name not in table:
            # Below the other keys, above the comments that lead over to what follows.
            tail = _cut_tail(table)
            table[name] = value
            _body(table).extend(tail)


def _change_list(tables: Any, before: list[Plain], after: list[Plain]) -> None:
    """Change a list of tables: those alike at both ends stay, those between are changed in turn."""
    start = _alike(before, after)
    # What is new stands at the end: then none behind it is left as it is.
    end = _alike(before[start:][::-1], after[start:][::-1]) if len(after) < len(before) else 0
    both = min(len(before), len(after)) - end
    for number in range(start, both):
        _change(tables[number], before[number], after[number])
    for number in reversed(range(both, len(before) - end)):
        _remove(tables, number)
    for value in after[len(before) :]:
        tail = _cut_tail(tables[-1])
        tables.append(value)
        if hasattr(tables, "body"):
            tables[-1].trivia.indent = "\n"
        _body(tables[-1]).extend(tail)


def _alike(before: list[Plain], after: list[Plain]) -> int:
    """How many are the same from the beginning on."""
    count = 0
    while count < min(len(before), len(after)) and before[count] == after[count]:
        count += 1
    return count


def _remove(holder: Any, at: str | int) -> None:
    """Take out a key, or a table with the comments above its last key; those below it stay."""
    from tomlkit import ws

    gone = holder[at]
    tables = gone.body if hasattr(gone, "body") else [gone]
    tail = "".join(item.as_string() for table in tables for _, item in _cut_tail(table, own=True))
    if isinstance(at, int):
        del holder[at]
        if tail and at < len(holder):
            holder[at].trivia.indent = tail + holder[at].trivia.indent
        elif tail:
            _body(holder[-1]).append((None, ws(tail)))
        return
    body = _body(holder)
    place = next(n for n, (key, _) in enumerate(body) if key is not None and key.key == at)
    holder.remove(at)
    if tail:
        body[place] = (None, ws(tail))


def _body(table: Any) -> list[Any]:
    """What stands in a table: (key, item), the key None for comments and blanks."""
    body = table.body if hasattr(table, "body") else table.value.body
    assert isinstance(body, list)
    return body


def _cut_tail(table: Any, own: bool = False) -> list[Any]:
    """Take the comments that lead over to what follows out of the end of a ``[table]``.

    They begin at the first blank line below the last key; those above it are the table's `own`.
    """
    from tomlkit.items import Table, Whitespace

    body = _body(table) if isinstance(table, Table) else []
    start = len(body)
    while start and body[start - 1][0] is None:
        start -= 1
    blanks = [n for n in range(start, len(body)) if isinstance(body[n][1], Whitespace)]
    if blanks and not own:
        start = blanks[0]
    tail = body[start:]
    del body[start:]
    return tail
