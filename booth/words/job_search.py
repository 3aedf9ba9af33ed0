"""Past jobs found by words: every word asked for has to stand somewhere in what is known of a job. Pure.

How a moment is written is handed in, since only the clock knows the time zone.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from typing import NamedTuple

from booth.log.summary import JobSummary
from booth.moment import Moment
from booth.words.last_good_words import fault_name

When = Callable[[Moment], str]
#: Words of a note that stand on either side of the one that was found.
AROUND = 3
NO_GUN = "not named"
NEXT_TIME = "next time"


class Place(NamedTuple):
    """Where a word stands that the row itself does not show: 'fault', 'dust'."""

    where: str
    text: str

    @property
    def in_words(self) -> str:
        return f"{self.where}: {self.text}"


def verdict_word(summary: JobSummary) -> str:
    """How a job stands, in a word."""
    return "open" if summary.is_open else summary.verdict or "closed"


class Searched(NamedTuple):
    """One job as it is searched. row: what its row shows; places: all else; text: both, folded."""

    job: JobSummary
    row: str
    places: tuple[Place, ...]
    text: str


def searched(job: JobSummary, when: When, day: When) -> Searched:
    """Make a job ready to be searched. when: date and time as its row has them; day: 'Sunday 15 June 2025'."""
    opened = job.opened
    row = (
        when(opened) if opened is not None else job.path.name,
        verdict_word(job) if opened is not None else job.fault,
        job.profile_name,
        job.product,
        job.sprayed,
        job.name,
    )
    places = [Place("gun", job.gun)] if job.gun else []
    places += [Place("fault", fault_name(each)) for each in job.faults]
    places += [Place(NEXT_TIME, job.next_time)] if job.next_time else []
    places += [Place("verdict", each) for each in job.said]
    places += [Place("note", each) for each in job.notes]
    places += [Place("was", job.first_verdict)] if job.first_verdict != job.verdict else []
    places += [Place("product", name) for _, name in job.products]
    places += [Place("part", each) for each in job.parts]
    places += [Place("day", day(opened))] if opened is not None else []
    places += [Place("file", job.path.name)]
    places += [Place("file", job.fault)] if job.fault else []
    told = "\n".join((*row, *(each.text for each in places)))
    return Searched(job, "\n".join(row).casefold(), tuple(places), told.casefold())


class Wanted(NamedTuple):
    """Which jobs are listed. asked: words; product: key and name, gun: its name, where only those are."""

    asked: str = ""
    product: tuple[str, str] | None = None
    gun: str | None = None

    @property
    def in_words(self) -> str:
        said = [f"product {self.product[1]}"] if self.product is not None else []
        said += [f"gun {self.gun or NO_GUN}"] if self.gun is not None else []
        said += [f"with {self.asked}"] if self.asked else []
        return ", ".join(said)

    def fits(self, job: JobSummary) -> bool:
        """Whether it is of the product and the gun."""
        if job.rehearsal and (self.product is not None or self.gun is not None):
            return False
        product = self.product is None or self.product[0] in (key for key, _ in job.products)
        return product and self.gun in (None, job.gun)


def matching(every: Iterable[Searched], wanted: Wanted) -> tuple[Searched, ...]:
    """The jobs of the product and the gun that hold every word asked for."""
    words = wanted.asked.casefold().split()
    only = wanted.product is not None or wanted.gun is not None
    among = (each for each in every if wanted.fits(each.job)) if only else every
    return tuple(each for each in among if all(word in each.text for word in words))


def products_in(every: Iterable[Searched]) -> Counter[tuple[str, str]]:
    """Key and name of each product, by the latest of its names, with how many jobs it has; rehearsals are
    none."""
    names: dict[str, str] = {}
    count: Counter[str] = Counter()
    for each in every:
        if each.job.rehearsal:
            continue
        for key, name in dict(each.job.products).items():
            names.setdefault(key, name)
            count[key] += 1
    return Counter({(key, names[key]): number for key, number in count.items()})


def guns_in(every: Iterable[Searched]) -> Counter[str]:
    """Each gun with how many jobs it has; empty for those that name none."""
    return Counter(each.job.gun for each in every if each.job.opened and not each.job.rehearsal)


def found_in(job: Searched, asked: str) -> tuple[Place, ...]:
    """Where the words asked for stand that the row of the job does not show, each place once."""
    found: dict[Place, None] = {}
    for word in asked.casefold().split():
        if word in job.row:
            continue
        place = next((each for each in job.places if word in each.text.casefold()), None)
        if place is not None:
            found.setdefault(Place(place.where, about(place.text, word)))
    return tuple(found)


def about(text: str, word: str) -> str:
    """Of a long text the words around the one that was found; word: folded.

    >>> about("wet the floor, hang the door higher and wait for the dust to settle", "higher")
    '… hang the door higher and wait for …'
    """
    words = text.split()
    at = next((at for at, each in enumerate(words) if word in each.casefold()), 0)
    first, last = max(at - AROUND, 0), at + AROUND + 1
    kept = " ".join(words[first:last])
    return f"{'… ' if first else ''}{kept}{' …' if last < len(words) else ''}"


def nothing_found(every: Sequence[Searched], wanted: Wanted) -> str:
    """What to say where no job is left: how many each word finds alone, and what to do."""
    words = list(dict.fromkeys(wanted.asked.split()))
    among = wanted._replace(asked="").in_words
    said = f"No job{f' of {among}' if among else ''} holds {' and '.join(words)}."
    if not words:
        return f"There is no job of {among}. Esc shows all jobs."
    if len(words) > 1:
        counts = (len(matching(every, wanted._replace(asked=word))) for word in words)
        alone = (f"{word} {count or 'none'}" for word, count in zip(words, counts, strict=True))
        said += f" Jobs with one of them: {', '.join(alone)}."
    return f"{said} Bksp takes a letter back, Esc shows all jobs."
