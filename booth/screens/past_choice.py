"""What narrows the list of past jobs: letters, one product, one gun; and the menu of all that can be done."""

from __future__ import annotations

from collections.abc import Awaitable, Callable, Sequence
from typing import TYPE_CHECKING, NamedTuple, TypeVar

from booth.files.faults import counted
from booth.forms.key import Key
from booth.screens.base import Deed
from booth.screens.menu import Menu, Taken
from booth.words.job_search import NO_GUN, Wanted, guns_in, products_in
from booth.words.shown import PickLine

if TYPE_CHECKING:
    from booth.screens.history import History
    from booth.screens.host import Host

T = TypeVar("T")
Then = Callable[[], Awaitable[object] | None]


class Choice(NamedTuple):
    """A line of the menu of all that can be done: its words, the key that does the same, the doing."""

    words: str
    key: str
    do: Then


def narrowing(screen: History, key: Key) -> Deed | None:
    """What a key does to the list as a whole: letters narrow it, F4 and F5 keep to a product, a gun."""
    jobs = screen.list
    wanted = jobs.wanted
    if key.name == "escape" and wanted.in_words:
        return Deed("all jobs", lambda: jobs.want(Wanted()))
    if key.name == "backspace" and wanted.asked:
        return Deed("erase", lambda: jobs.want(wanted._replace(asked=wanted.asked[:-1])))
    if key.name == "f4" and jobs.every:
        return Deed("product", lambda: ask_product(screen))
    if key.name == "f5" and jobs.every:
        return Deed("gun", lambda: ask_gun(screen))
    letter = key.character or ""
    # A space parts two words; before the first one it is no letter. '?' asks for help everywhere.
    if (
        not letter.isprintable()
        or not letter.strip(" " if not wanted.asked else "")
        or letter == "?"
    ):
        return None
    return Deed("", lambda: jobs.want(wanted._replace(asked=f"{wanted.asked}{letter}")))


async def ask_product(screen: History) -> None:
    """List the jobs of one product only, or of all."""

    def taken(product: tuple[str, str] | None) -> None:
        screen.list.want(screen.list.wanted._replace(product=product))
        screen.draw(screen.host.clock.now())

    found = products_in(screen.list.every)
    known = [(each, each[1], count) for each, count in found.items()]
    await _ask(screen.host, "Jobs of which product?", "all products", known, taken)


async def ask_gun(screen: History) -> None:
    """List the jobs with one gun only, or with all."""

    def taken(gun: str | None) -> None:
        screen.list.want(screen.list.wanted._replace(gun=gun))
        screen.draw(screen.host.clock.now())

    found = guns_in(screen.list.every)
    known = [(each, each or NO_GUN, count) for each, count in found.items()]
    await _ask(screen.host, "Jobs with which gun?", "all guns", known, taken)


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
