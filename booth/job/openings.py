"""What is said of the opening of a wait, and what a touch test does to it. Pure."""

from __future__ import annotations

import msgspec

from booth.job.lasting import Lasting, not_known
from booth.log.coats import Coat
from booth.log.events import CoatEnded
from booth.moment import elapsed
from booth.profile.model import WaitRule
from booth.trade.waits.wait_time import Certainty

#: After a touch that came away wet: a quarter of the wait again before the next try, a minute at
#: least (this program's own choice).
TOUCH_AGAIN_FRACTION, TOUCH_AGAIN_S = 0.25, 60.0
NO_OPENING = not_known("the profile does not say when it opens")


def window_opens(opens: Lasting | None, rule: WaitRule | None, said: str = "") -> Lasting:
    """When the window for another product opens. A touch may open it only where the data sheet gives
    a sign instead of a time. said: what else is to be known of it."""
    if opens is None:
        return not_known(said) if said else NO_OPENING
    why = "; ".join(filter(None, (said, opens.why)))
    is_sign = rule is not None and not rule.rows
    return msgspec.structs.replace(opens, why=why, by_touch=is_sign)


def touched(coat: Coat, ended: CoatEnded, opens: Lasting) -> Lasting:
    """Dry opens what a touch may open, at once; wet or tacky puts off whatever opens."""
    if not coat.touches:
        return opens
    touch = coat.touches[-1]
    when_s = elapsed(ended.at, touch.at).seconds
    if touch.result == "dry":
        if not opens.by_touch:
            return opens
        seconds = when_s if opens.seconds is None else min(opens.seconds, when_s)
        return Lasting(seconds, Certainty.KNOWN, f"{opens.rule}; touched dry")
    if opens.seconds is None:
        why = "; ".join(filter(None, (f"touched {touch.result}: try again", opens.why)))
        return msgspec.structs.replace(opens, why=why)
    again_s = when_s + max(opens.seconds * TOUCH_AGAIN_FRACTION, TOUCH_AGAIN_S)
    rule = f"{opens.rule}; touched {touch.result}: try again"
    return msgspec.structs.replace(opens, seconds=max(opens.seconds, again_s), rule=rule)


def felt(coat: Coat, opens: Lasting) -> dict[str, bool]:
    """What a touch says of a wait: whether it may open it, and whether it did."""
    dry = bool(coat.touches) and coat.touches[-1].result == "dry"
    return {"by_touch": opens.by_touch, "touched_dry": dry and opens.by_touch}
