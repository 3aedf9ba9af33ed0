"""Menus over the list of past jobs: which product, which gun, what can be done."""

from __future__ import annotations

from collections.abc import Awaitable, Callable, Sequence
from typing import TYPE_CHECKING, NamedTuple, TypeVar

from booth.files.faults import counted
from booth.screens.menu import Menu, Taken
from booth.words.job_search import NO_GUN, Searched, guns_in, products_in
from booth.words.shown import PickLine

if TYPE_CHECKING:
    from booth.screens.host import Host

T = TypeVar("T")
Then = Callable[[], Awaitable[object] | None]


class Choice(NamedTuple):
    """A line of the menu of all that can be done: its words, the key that does the same, the doing."""

    words: str
    key: str
    do: Then


async def ask_product(
    host: Host,
    every: Sequence[Searched],
    then: Callable[[tuple[str, str] | None], None],
) -> None:
    """Let one product be chosen, or all of them."""
    found = products_in(every)
    await _ask(
        host,
        "Jobs of which product?",
        "all products",
        [(each, each[1], n) for each, n in found.items()],
        then,
    )


async def ask_gun(
    host: Host, every: Sequence[Searched], then: Callable[[str | None], None]
) -> None:
    """Let one gun be chosen, or all of them."""
    found = guns_in(every)
    await _ask(
        host,
        "Jobs with which gun?",
        "all guns",
        [(each, each or NO_GUN, n) for each, n in found.items()],
        then,
    )


async def _ask(
    host: Host,
    question: str,
    every: str,
    known: Sequence[tuple[T, str, int]],
    then: Callable[[T | None], None],
) -> None:
    lines = (
        PickLine(every),
        *(PickLine(name, counted(count, "job"), must=True) for _, name, count in known),
    )

    def taken(chosen: Taken | None) -> None:
        if chosen is not None:
            then(known[chosen.line - 1][0] if chosen.line else None)

    await host.show(Menu(question, lines), taken)


async def ask_what(host: Host, choices: Sequence[Choice]) -> None:
    """List all that can be done, each with its key, and do what is chosen."""
    lines = tuple(PickLine(each.words, each.key, must=True) for each in choices)

    async def taken(chosen: Taken | None) -> None:
        if chosen is not None:
            done = choices[chosen.line].do()
            if done is not None:
                await done

    await host.show(Menu("What is to be done?", lines), taken)
