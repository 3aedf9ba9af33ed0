"""The waits that run in a job, and what should ring. Pure: now is handed in.

How long each lasts is known, estimated, bounded or not known (``lasting``).
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial, reduce
from typing import Any

import msgspec

from booth.job import lasting
from booth.job.coat_plan import coat_named, coats_wanted
from booth.job.lasting import Lasting
from booth.job.mix_choice import hardener_unknown, mixed_with, sprayed
from booth.job.pouring import open_batches
from booth.job.products import last_coat
from booth.job.racks import first_piece_s, of_rows
from booth.job.readings import over_time
from booth.job.steps import coming
from booth.job.wait import Alarm, Standing, State, Wait, What, standing
from booth.log.events import BatchMixed, CoatEnded
from booth.log.fold import Coat, Job, kept_by
from booth.moment import Moment, elapsed, later
from booth.profile.model import NextProduct, Profile, WaitRule
from booth.profile.next_product import next_window
from booth.trade.waits.wait_by_rule import recoat_opens_at
from booth.trade.waits.wait_time import Certainty

#: After a touch that came away wet: a quarter of the wait again before the next try.
TOUCH_AGAIN_FRACTION = 0.25
WHICH_HARDENER = "which hardener it was is not in the log: note the batch at the step Mix"


def waits(job: Job) -> tuple[Wait, ...]:
    """Give every wait that runs in this job, in the order of the log."""
    # They change with an entry, not with a second: each Job keeps its own.
    found: tuple[Wait, ...] = kept_by(job, "waits", None, lambda: tuple(_waits(job)))
    return found


def _waits(job: Job) -> Iterator[Wait]:
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
    key = more.pop("key", what.name.lower())
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
    waits = sprayed(job, ended.n).waits
    for what, rule in (
        (What.DUST_FREE, waits.dust_free),
        (What.TAPE, waits.tape),
        (What.HANDLE, waits.handle),
        (What.BEFORE_BAKE, waits.before_bake),
        (What.SAND, waits.sand),
        (What.POLISH, waits.polish),
        (What.CURE, waits.cure),
    ):
        opened = _opens(job, ended, rule)
        if opened is not None:
            yield _wait(
                what, ended.n, ended.at, coat.part, opened, part=coat.part, coat=coat.number
            )


def between_coats(job: Job, coat: Coat, ended: CoatEnded) -> Wait:
    """The wait from the end of `coat` to a further one, planned or not."""
    profile = sprayed(job, ended.n)
    rule, scaled = lasting.between_coats(profile, coat_named(job, coat.number, coat.part).plan)
    opened = _opens(job, ended, rule, scaled) or lasting.NOT_GIVEN
    return _wait(
        What.NEXT_COAT,
        ended.n,
        ended.at,
        coat.part,
        _touched(coat, ended, opened),
        _window_closes(job, ended, profile),
        key="coat",
        part=coat.part,
        coat=coat.number,
        touched_dry=bool(coat.touches) and coat.touches[-1].result == "dry",
    )


def _window_closes(job: Job, ended: CoatEnded, profile: Profile) -> Lasting | None:
    """When the recoat window closes; the soonest of all hardeners where it is not known which it was."""
    rules = [profile.waits.recoat_closes]
    if profile.mix is not None and hardener_unknown(job, ended.n):
        own = (each.waits for each in profile.mix.hardeners)
        rules += [each.recoat_closes for each in own if each is not None]
    found = [each for rule in rules if (each := _closes(job, ended, rule)) is not None]
    return reduce(lasting.shorter, found) if found else None


def next_products(job: Job, coat: Coat, ended: CoatEnded) -> Iterator[Wait]:
    """The windows of the products that may follow; of the one that is to, where the job says which."""
    profile, following = sprayed(job, ended.n), coming(job)
    if following is not None:
        window = next_window(profile, following) or NextProduct()
        window = msgspec.structs.replace(window, name=following.name)
        yield _next_product(job, coat, ended, 0, window)
        return
    fallback = next_window(profile, None)
    windows = profile.next_products or ((fallback,) if fallback is not None else ())
    for place, window in enumerate(windows):
        yield _next_product(job, coat, ended, place, window)


def _next_product(job: Job, coat: Coat, ended: CoatEnded, place: int, product: NextProduct) -> Wait:
    again, abrade = _opens(job, ended, product.or_after), _closes(job, ended, product.abrade_after)
    opened = _opens(job, ended, product.opens)
    return _wait(
        What.NEXT_PRODUCT,
        ended.n,
        ended.at,
        coat.part,
        opened or lasting.not_known("the profile does not say when it opens"),
        _closes(job, ended, product.closes),
        key=f"next_product{place or ''}",
        part=coat.part,
        coat=coat.number,
        product=product.name,
        again_s=again.seconds if again else None,
        abrade_s=abrade.seconds if abrade else None,
    )


def _opens(
    job: Job,
    ended: CoatEnded,
    rule: WaitRule | None,
    scaled: lasting.Scaled = recoat_opens_at,
) -> Lasting | None:
    """When it is over. A later reading, while it runs, may only lengthen it."""
    if rule is not None and hardener_unknown(job, ended.n):
        return lasting.not_known(WHICH_HARDENER)
    lasts = partial(lasting.opens, rule, job.profile, scaled=scaled)
    return over_time(job, ended, lasts, lasting.longer, "lengthened")


def _closes(job: Job, ended: CoatEnded, rule: WaitRule | None) -> Lasting | None:
    """When it closes. A later reading, until then, may only shorten it; of a rack it closes on the
    piece that was sprayed first."""
    lasts = partial(lasting.closes, rule, job.profile)
    found, first_s = over_time(job, ended, lasts, lasting.shorter, "shortened"), 0.0
    if found is not None and found.seconds is not None:
        first_s = first_piece_s(job, ended)
    if found is None or found.seconds is None or not first_s:
        return found
    return msgspec.structs.replace(found, seconds=max(found.seconds - first_s, 0.0))


def _touched(coat: Coat, ended: CoatEnded, opens: Lasting) -> Lasting:
    """A touch test always decides: dry opens the wait at once, wet or tacky puts it off."""
    if not coat.touches:
        return opens
    touch = coat.touches[-1]
    when_s = elapsed(ended.at, touch.at).seconds
    if touch.result == "dry":
        seconds = when_s if opens.seconds is None else min(opens.seconds, when_s)
        return Lasting(seconds, Certainty.KNOWN, f"{opens.rule}; touched dry")
    if opens.seconds is None:
        return msgspec.structs.replace(opens, why=f"touched {touch.result}: try again")
    again_s = when_s + max(opens.seconds * TOUCH_AGAIN_FRACTION, 60.0)
    rule = f"{opens.rule}; touched {touch.result}: try again"
    return msgspec.structs.replace(opens, seconds=max(opens.seconds, again_s), rule=rule)


def _pot_waits(job: Job) -> Iterator[Wait]:
    if job.profile.mix is None:
        return
    stood = partial(lasting.induction, job.profile)
    for batch in open_batches(job):
        title = f"batch {batch.batch}"
        stands = over_time(job, batch, stood, lasting.longer, "lengthened")
        if stands is not None:
            yield _wait(What.INDUCTION, batch.n, batch.at, title, stands)
        keeps = [
            (each.at, lasts)
            for each in poured_together(job, batch)
            if (lasts := _pot_life(job, each)) is not None
        ]
        if keeps:
            mixed, lasts = min(keeps, key=lambda each: _left_s(job, batch, *each))
            yield _wait(What.POT_LIFE, batch.n, mixed, title, None, lasts)


def _pot_life(job: Job, batch: BatchMixed) -> Lasting | None:
    lasts = partial(lasting.pot_life, mixed_with(job.profile, batch.hardener))
    return over_time(job, batch, lasts, lasting.shorter, "shortened")


def _left_s(job: Job, batch: BatchMixed, mixed: Moment, lasts: Lasting) -> float:
    """How much of it was left when `batch` was mixed [s]."""
    return (lasts.seconds or 0.0) - elapsed(mixed, batch.at, job.boots).seconds


def poured_together(job: Job, batch: BatchMixed) -> tuple[BatchMixed, ...]:
    """A batch and all on whose rest it was poured, the oldest first.

    The pot life that is over first rules: the oldest one's, unless a newer one has a faster hardener.
    """
    by_number = {each.batch: each for each in job.batches}
    found = [batch]
    while (older := by_number.get(batch.onto or 0)) is not None and older not in found:
        found.insert(0, older)
        batch = older
    return tuple(found)
