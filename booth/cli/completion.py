"""Words completed in a shell, by argcomplete: subjects of a figure, their arguments, own names.

Loaded only where a shell asks, or for the line that a shell reads at its start.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from booth.cli.dispatch import parser
from booth.figure.catalogue import subjects
from booth.figure.options import OPTIONS
from booth.figure.search import FIRST_VALUES
from booth.files.places import Places
from booth.log.store import log_files
from booth.profile.library import load_folder
from booth.profile.system import load_systems
from booth.shop.read import read_shop


def script(shell: str) -> str:
    """Give what a shell has to read so that it asks booth."""
    import argcomplete

    return str(argcomplete.shellcode(["booth"], shell=shell))  # type: ignore[no-untyped-call]


def complete() -> None:
    """Answer the shell and end; comes back only where no shell asked."""
    import argcomplete

    argcomplete.autocomplete(parser(COMPLETERS), always_complete_options=False)


def _profiles(**_: Any) -> list[str]:
    return [each.key for each in load_folder(Places.standard().profiles_dirs).profiles]


def _systems(**_: Any) -> list[str]:
    folders = Places.standard().profiles_dirs
    return sorted(file.stem for file in load_systems(folders, load_folder(folders)))


def _guns() -> list[str]:
    return [gun.name for gun in read_shop(Places.standard().shop_file).shop.guns]


def _jobs(**_: Any) -> list[str]:
    return [file.stem for file in log_files(Places.standard().jobs_dir)]


def _either(**_: Any) -> list[str]:
    return [*_profiles(), *_systems()]


#: What follows an option of ``booth figure``.
_AFTER: Mapping[str, Any] = {
    "--units": lambda: ["us", "metric", "both"],
    "--profile": _profiles,
    "--gun": _guns,
}


def figure_words(words: Sequence[str]) -> Iterable[str]:
    """Give the words that may come behind those of ``booth figure ...``.

    >>> "dew-point" in figure_words([])
    True
    >>> "time=" in figure_words(["viscosity"])
    True
    """
    if words and words[-1] in _AFTER:
        return list(_AFTER[words[-1]]())
    plain = [word for word in words if not word.startswith("-")]
    if not plain:
        return [*subjects(), *OPTIONS]
    subject = subjects().get(plain[0])
    if subject is None:
        return OPTIONS
    given = {word.partition("=")[0] for word in words if "=" in word}
    names = [f"{each.name}=" for each in subject.arguments if each.many or each.name not in given]
    first = FIRST_VALUES.get(subject.name, ()) if len(plain) == 1 else ()
    return [*first, *names, *OPTIONS]


def _rest(prefix: str, parsed_args: Any, **_: Any) -> list[str]:
    words = [word for word in parsed_args.rest or [] if word]
    return [word for word in figure_words(words) if word.startswith(prefix)]


COMPLETERS: Mapping[str, Any] = {
    "profile": _profiles,
    "system": _systems,
    "name": _either,
    "rehearse": _either,
    "job": _jobs,
    "beside": _jobs,
    "like": _profiles,
    "rest": _rest,
}
