"""The waits that run in a job, and what should ring. Pure: now is handed in.

How long each lasts is known, estimated, bounded or not known (``lasting``).
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from operator import attrgetter
from typing import Any

import msgspec

from booth.job import lasting
from booth.job.coat_plan import coat_named, coats_wanted
from booth.job.lasting import Lasting
from booth.job.mix_choice import mixed_with
from booth.job.openings import felt, touched, window_opens
from booth.job.pouring import open_batches
from booth.job.products import last_coat
from booth.job.racks import first_piece_s, of_rows
from booth.job.readings import over_time
from booth.job.steps import coming
from booth.job.together import (
    closes_first,
    every_mix,
    hardener_unknown,
    mixes_sprayed,
    opens_last,
    poured_together,
)
from booth.job.wait import AFTER, Alarm, Standing, State, Wait, What, standing
from booth.log.events import AgeTold, BatchMixed, CoatEnded, WeatherRead
from booth.log.fold import Coat, Job, kept_by
from booth.moment import Moment, elapsed, later
from booth.profile.model import NextProduct, Profile, WaitRule
from booth.profile.next_product import next_window, not_by_name
from booth.trade.waits.wait_time import Certainty

WHICH_HARDENER = "which hardener it was is not in the log: note the batch at the step Mix"

Ruled = Callable[[Profile], WaitRule | None]
Today = Callable[[Profile, WeatherRead | None], Lasting | None]


def waits(job: Job) -> tuple[Wait, ...]:
    """Give every wait that runs in this job, in the order of the log."""
    # They change with an entry, not with a second: each Job keeps its own.
    found: tuple[Wait, ...] = kept_by(job, "waits", None, lambda: tuple(_waits(job)))
    return found


def _waits(job: Job) -> Iterator[Wait]:
    if job.opened.rehearsal:
        return  # of water nothing dries: no wait of it is known, counted or rung
    if job.closed is None:
        yield from _pot_waits(job)
    yield from _part_waits(job)


def standings(job: Job, now: Moment) -> tuple[Standing, ...]:
    """Give every running wait at `now`, the most urgent first."""

    def found() -> tuple[Standing, ...]:
        every = [standing(wait, now, job.boots) for wait in waits(job)]
        return tuple(sorted(of_rows(job, every), key=_urgency))

    # What is drawn at one moment asks for them a dozen times.
    kept: tuple[Standing, ...] = kept_by(job, "standings", now, found)
    return kept


def _urgency(each: Standing) -> tuple[int, float]:
    left_s = each.remaining_s if each.remaining_s is not None else 1e12
    return list(State).index(each.state), -each.past_s if each.state is State.LATE else left_s


def alarms(job: Job, now: Moment) -> tuple[Alarm, ...]:
    """Give what should ring at `now`: every change reached and not yet acknowledged."""
    found = []
    for each in standings(job, now):
        wait, key = each.wait, f"{each.wait.key}:{each.state}"
        if key in job.acknowledged or not _rings(each):
            continue
        opened_s = (
            wait.opens_s if wait.again_s is None or each.elapsed_s < wait.again_s else wait.again_s
        )
        since_s = {State.READY: opened_s, State.CLOSING: wait.closing_from_s}.get(
            each.state, wait.closes_s
        )
        found.append(Alarm(key, each, later(wait.start, since_s or 0.0)))
    return tuple(found)


def _rings(each: Standing) -> bool:
    if each.state is State.READY:
        # Whoever has just touched it dry stands before it and needs no calling.
        # And while the clock is in doubt it may have closed again: what is ready is not known.
        opened = (each.wait.opens_s or 0.0) > 0 or each.wait.again_s is not None
        return opened and not each.wait.touched_dry and not each.doubtful
    return each.state not in (State.WAIT, State.UNKNOWN)


def began(job: Job, event: CoatEnded | BatchMixed) -> Moment:
    """When what an entry began is counted from: as told last, where its clock was in doubt."""
    told = [each for each in job.of(AgeTold) if each.target == event.n]
    return later(told[-1].at, -max(told[-1].ago_s, 0.0)) if told else event.at


def _wait(
    what: What,
    n: int,
    start: Moment,
    title: str,
    opens: Lasting | None,
    closes: Lasting | None = None,
    **more: Any,
) -> Wait:
    """The wait that entry `n` starts."""
    given = [each for each in (opens, closes) if each is not None]
    key, since_n = more.pop("key", what.name.lower()), more.pop("since_n", n)
    return Wait(
        key=f"{key}:{n}",
        what=what,
        title=title,
        start=start,
        opens_s=opens.seconds if opens else 0.0,
        closes_s=closes.seconds if closes else None,
        certainty=given[0].certainty if given else Certainty.KNOWN,
        rule="; ".join(dict.fromkeys(each.rule for each in given)) or "the profile gives no wait",
        why="; ".join(dict.fromkeys(each.why for each in given if each.why)),
        since_n=since_n,
        **more,
    )


def _part_waits(job: Job) -> Iterator[Wait]:
    for part in job.parts:
        owner, coat = last_coat(job, part) or (job, None)
        if coat is not None and coat.ended is not None:
            yield from _after_coat(owner, coat, coat.ended, is_over=owner is not job)


def _after_coat(job: Job, coat: Coat, ended: CoatEnded, is_over: bool) -> Iterator[Wait]:
    """What `coat` starts. is_over: a later product was begun; no coat of this one follows."""
    if coat.number < coats_wanted(job, coat.part) and not is_over:
        if job.closed is None:
            yield between_coats(job, coat, ended)
        return
    yield from next_products(job, coat, ended)
    for what, name in AFTER.items():
        opened = _opens(job, ended, attrgetter(f"waits.{name}"))
        if opened is not None:
            yield _wait(
                what,
                ended.n,
                began(job, ended),
                coat.part,
                opened,
                part=coat.part,
                coat=coat.number,
            )


def between_coats(job: Job, coat: Coat, ended: CoatEnded) -> Wait:
    """The wait from the end of `coat` to a further one, planned or not."""
    plan = coat_named(job, coat.number, coat.part).plan
    opened = _longest(job, ended, lambda mix, read: lasting.after_coat(mix, plan, read))
    opened = lasting.touchable(opened, *lasting.between_coats(job.profile, plan))
    return _wait(
        What.NEXT_COAT,
        ended.n,
        began(job, ended),
        coat.part,
        touched(coat, ended, opened),
        _closes(job, ended, attrgetter("waits.recoat_closes")),
        key="coat",
        part=coat.part,
        coat=coat.number,
        **felt(coat, opened),
    )


def next_products(job: Job, coat: Coat, ended: CoatEnded) -> Iterator[Wait]:
    """The windows of the products that may follow; of the one that is to, where the job says which."""
    following, listed = coming(job), job.profile.next_products
    if following is not None:
        window = partial(next_window, coming=following)
        said = not_by_name(job.profile, following)
        yield _next_product(job, coat, ended, 0, following.name, window, said)
    elif listed:
        for place, each in enumerate(listed):
            yield _next_product(job, coat, ended, place, each.name, _always(each))
    elif any(next_window(mix, None) is not None for mix in mixes_sprayed(job, ended.n)):
        yield _next_product(job, coat, ended, 0, "", partial(next_window, coming=None))


def _always(window: NextProduct) -> Callable[[Profile], NextProduct]:
    return lambda mix: window


def _next_product(
    job: Job,
    coat: Coat,
    ended: CoatEnded,
    place: int,
    name: str,
    window: Callable[[Profile], NextProduct | None],
    said: str = "",
) -> Wait:
    """said: what is to be known of this window."""

    def rule(of: str) -> Ruled:
        return lambda mix: getattr(window(mix) or NextProduct(), of)

    again, abrade = _opens(job, ended, rule("or_after")), _closes(job, ended, rule("abrade_after"))
    opened = window_opens(_opens(job, ended, rule("opens")), rule("opens")(job.profile), said)
    return _wait(
        What.NEXT_PRODUCT,
        ended.n,
        began(job, ended),
        coat.part,
        touched(coat, ended, opened),
        _closes(job, ended, rule("closes")),
        key=f"next_product{place or ''}",
        part=coat.part,
        coat=coat.number,
        product=name,
        again_s=again.seconds if again else None,
        abrade_s=abrade.seconds if abrade else None,
        **felt(coat, opened),
    )


def _opens(job: Job, ended: CoatEnded, rule: Ruled) -> Lasting | None:
    """When what the rule of the mix says is over."""
    return _longest(job, ended, lambda mix, read: lasting.opens(rule(mix), mix, read))


def _longest(job: Job, ended: CoatEnded, opens: Today) -> Lasting | None:
    """When it is over, with every hardener in the mix. A later reading, while it runs, may only
    lengthen it."""

    def lasts(mix: Profile) -> Lasting | None:
        return over_time(job, ended, partial(opens, mix), lasting.longer, "lengthened")

    found = opens_last(mixes_sprayed(job, ended.n), lasts)
    if found is not None and hardener_unknown(job, ended.n):
        return lasting.not_known(WHICH_HARDENER)
    return found


def _closes(job: Job, ended: CoatEnded, rule: Ruled) -> Lasting | None:
    """When it closes; the soonest of all hardeners in the mix, and of all there are where it is not
    known which it was. A later reading, until then, may only shorten it; of a rack it closes on the
    piece that was sprayed first."""

    def lasts(mix: Profile) -> Lasting | None:
        closes = partial(lasting.closes, rule(mix), mix)
        return over_time(job, ended, closes, lasting.shorter, "shortened")

    unknown = hardener_unknown(job, ended.n)
    mixes = every_mix(job.profile) if unknown else mixes_sprayed(job, ended.n)
    found, first_s = closes_first(mixes, lasts), 0.0
    if found is not None and found.seconds is not None:
        first_s = first_piece_s(job, ended)
    if found is None or found.seconds is None or not first_s:
        return found
    return msgspec.structs.replace(found, seconds=max(found.seconds - first_s, 0.0))


def _pot_waits(job: Job) -> Iterator[Wait]:
    if job.profile.mix is None:
        return
    stood = partial(lasting.induction, job.profile)
    for batch in open_batches(job):
        title = f"batch {batch.batch}"
        stands = over_time(job, batch, stood, lasting.longer, "lengthened")
        if stands is not None:
            yield _wait(What.INDUCTION, batch.n, began(job, batch), title, stands)
        keeps = [
            (each, lasts)
            for each in poured_together(job, batch)
            if (lasts := _pot_life(job, each)) is not None
        ]
        if keeps:
            mixed, lasts = min(keeps, key=lambda each: _left_s(job, batch, *each))
            start = began(job, mixed)
            yield _wait(What.POT_LIFE, batch.n, start, title, None, lasts, since_n=mixed.n)


def _pot_life(job: Job, batch: BatchMixed) -> Lasting | None:
    lasts = partial(lasting.pot_life, mixed_with(job.profile, batch.hardener))
    return over_time(job, batch, lasts, lasting.shorter, "shortened")


def _left_s(job: Job, batch: BatchMixed, mixed: BatchMixed, lasts: Lasting) -> float:
    """How much of it was left when `batch` was mixed [s]."""
    return (lasts.seconds or 0.0) - elapsed(mixed.at, batch.at, job.boots).seconds
