"""The verdict of a job: the one of the closing, and the later ones. All values are invented."""

from __future__ import annotations

from pathlib import Path

import pytest

from booth.job.past import last_good
from booth.job.verdicts import finished, judgements, next_time, seen_later, verdict
from booth.log import codec
from booth.log import events as ev
from booth.log.fold import Job, fold
from booth.log.summary import summarise
from tests.log.logs import PROFILE, closed, moment, opened, restored, timed, voided, write


def again(verdict: str = "", next_time: str = "", seconds: float = 90_000) -> ev.JudgedAgain:
    return ev.JudgedAgain(n=0, at=moment(seconds), verdict=verdict, next_time=next_time)


def job(folder: Path, *events: ev.Event) -> tuple[Job, Path]:
    from booth.log.store import read_log

    path = write(folder, "20250615-1506-demo-0001", opened(), *events)
    return fold(read_log(path).events), path


@pytest.mark.parametrize(
    ("events", "counts", "lesson"),
    [
        ((), "", ""),
        ((closed("good", next_time="slower"),), "good", "slower"),
        ((closed("good", next_time="slower"), again("redo")), "redo", "slower"),
        ((closed("redo"), again("usable"), again("good", "wetter")), "good", "wetter"),
        # One without a verdict leaves it, and may say what to change all the same.
        ((closed("good"), again("", "wetter")), "good", "wetter"),
        # Void it and the first counts; restored it counts again.
        ((closed("good"), again("redo"), voided(3)), "good", ""),
        ((closed("good"), again("redo"), voided(3), restored(3)), "redo", ""),
        # Of a job that was opened again, nothing counts; closed anew, only what came behind that.
        ((closed("good"), again("redo"), voided(2)), "", ""),
        ((closed("good"), again("redo"), voided(2), closed("usable")), "usable", ""),
    ],
)
def test_the_latest_verdict_behind_the_closing_counts(
    tmp_path: Path, events: tuple[ev.Event, ...], counts: str, lesson: str
) -> None:
    found, path = job(tmp_path, *events)
    assert (verdict(found), next_time(found)) == (counts, lesson)
    assert summarise(path).verdict == counts, "the list says the same from the bytes alone"
    assert summarise(path).is_open == (found.closed is None)


def test_both_verdicts_are_there_to_be_told(tmp_path: Path) -> None:
    found, path = job(tmp_path, closed("good"), again("redo"))
    assert [each.verdict for each in judgements(found)] == ["good", "redo"]
    assert (summarise(path).first_verdict, summarise(path).verdict) == ("good", "redo")


def test_faults_and_work_behind_the_closing(tmp_path: Path) -> None:
    early = ev.FaultSeen(n=0, at=moment(10), fault="runs")
    late = ev.FaultSeen(n=0, at=moment(90_000), fault="gloss", part="hood")
    polished = ev.FinishedLater(n=0, at=moment(90_100), work="polished", part="hood")
    found, _ = job(tmp_path, early, closed(), late, polished)
    assert [each.fault for each in found.faults] == ["runs", "gloss"]
    assert [each.fault for each in seen_later(found)] == ["gloss"]
    assert [(each.work, each.part) for each in finished(found)] == [("polished", "hood")]


def test_last_good_goes_by_the_later_verdict(tmp_path: Path) -> None:
    job(tmp_path, timed(20), closed("good"), again("redo"))
    assert last_good(tmp_path, PROFILE.key) is None
    job(tmp_path, timed(20), closed("redo"), again("good", "a little wetter"))
    found = last_good(tmp_path, PROFILE.key)
    assert found is not None and found.next_time == "a little wetter"


def test_an_earlier_version_keeps_them_though_it_does_not_understand_them() -> None:
    """What it does not know it carries through, as an entry of a later version."""
    line = (
        codec.encode(again("redo"))
        .replace(b'"n":0', b'"n":7')
        .replace(b"judged again", b"judged x")
    )
    event = codec.decode(line)
    assert isinstance(event, ev.UnknownEvent) and event.n == 7
