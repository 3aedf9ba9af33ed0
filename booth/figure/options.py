"""What stands on the command line beside the question itself."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from booth.figure.answer import Manner
from booth.figure.heard import Heard
from booth.units import System

_BOTH = (System.US, System.METRIC)
_UNITS = {"us": (System.US,), "metric": (System.METRIC,), "both": _BOTH}
_FLAGS = {
    "--json": "as_json",
    "--why": "why",
    "--schema": "schema",
    "--shop": "shop",
    "--help": "help",
    "-h": "help",
}
_VALUES = {"--units": "units", "--profile": "profile", "--gun": "gun"}
#: Every option, for those that complete words.
OPTIONS = (*(name for name in _FLAGS if name != "-h"), *_VALUES, "--us", "--metric")


class BadOption(ValueError):
    """An option without its value, or one that is not known; the message is a sentence."""


class Options(msgspec.Struct, frozen=True):
    """units: us, metric, both, or '' for those that were typed; the others as they are called."""

    words: tuple[str, ...] = ()
    as_json: bool = False
    why: bool = False
    schema: bool = False
    help: bool = False
    units: str = ""
    profile: str = ""
    gun: str = ""
    shop: bool = False

    @property
    def system(self) -> System | None:
        """The system of bare numbers; None where the units beside them decide."""
        return _UNITS[self.units][0] if self.units in ("us", "metric") else None

    def manner(self, heard: Heard) -> Manner:
        """How to show figures: in the units that were typed, unless others are asked for."""
        systems = _UNITS.get(self.units) or tuple(each for each in _BOTH if each in heard.systems)
        return Manner(systems or (heard.system,), heard.significant)


def options_of(arguments: Sequence[str], before: Options | None = None) -> Options:
    """Read the options among the words. before: those that hold for every question. Raises BadOption."""
    before = before or Options()
    found: dict[str, object] = {
        name: getattr(before, name) for name in (*_FLAGS.values(), *_VALUES.values())
    }
    words, rest = [], list(arguments)
    while rest:
        word = rest.pop(0)
        name, equals, value = word.partition("=")
        if word in _FLAGS:
            found[_FLAGS[word]] = True
        elif word in ("--us", "--metric"):
            found["units"] = word.removeprefix("--")
        elif name in _VALUES:
            if not equals and not rest:
                raise BadOption(f"{name} needs a value after it.")
            found[_VALUES[name]] = value if equals else rest.pop(0)
        else:
            words.append(word)
    if found["units"] not in ("", *_UNITS):
        raise BadOption(f"--units {found['units']}: the units are us, metric or both.")
    return Options(tuple(words), **found)  # type: ignore[arg-type]
