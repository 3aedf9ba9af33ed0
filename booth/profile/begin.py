"""The text of a new profile: a changed copy of another, comments and all, or every key to be filled in."""

from __future__ import annotations

import tomllib

from booth.profile.keys import PROFILE
from booth.toml.document import table_of
from booth.toml.edit import edited
from booth.toml.table import Many

__all__ = ["copy_text", "empty_text"]

FILL_IN = "to be filled in: which data sheet, which issue"
INTRO = """\
# A new coating profile. Take the # off each line that your data sheet answers, put its own figure
# in, delete the rest. What is not said is taken as not known. Then: booth check FILE

"""
#: What a profile cannot do without; the rest stands as a comment.
LEAST = {"film.coats": "1"}


def copy_text(text: str, name: str, key: str) -> str:
    """Give the text of another profile under a new name: no demo, its source to be filled in.

    Raises CannotEdit where the text has a shape that cannot be changed in place.
    """
    before = tomllib.loads(text.removeprefix("\ufeff"))
    after = {each: value for each, value in before.items() if each != "demo"}
    after |= {"name": name, "source": f"copied from {key}; {FILL_IN}"}
    return edited(text, before, after)


def empty_text(name: str) -> str:
    """Give a profile of this name in which every key waits as a comment."""
    top: list[str] = []
    tables: list[str] = []
    written = {"name": f'"{_escaped(name)}"', "source": f'"{FILL_IN}"'}
    for path, key in PROFILE.keys.items():
        table, _, last = path.rpartition(".")
        if table_of(key):
            header = f"[[{path}]]" if path.endswith("[]") else f"[{path}]"
            mark = "" if any(least.startswith(f"{path}.") for least in LEAST) else "# "
            tables += ["", f"# {key.says}", f"{mark}{header.replace('[]', '')}"]
            continue
        value = written.get(path) or LEAST.get(path)
        says = (key.one.says if isinstance(key, Many) else "") or key.says
        line = f"{last} = {value}" if value else f"# {last} = {key.example}"
        (tables if table else top).append(f"{line}  # {says}")
    return INTRO + "\n".join([*top, *tables]) + "\n"


def _escaped(name: str) -> str:
    return name.replace("\\", "\\\\").replace('"', '\\"')
