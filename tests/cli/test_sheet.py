"""``booth sheet`` as a shell sees it: forms, files, names; an old file is never lost."""

from __future__ import annotations

import csv
import io
import os
from pathlib import Path

import pytest
from msgspec.structs import replace

from booth.card.forms import FORMS, form_of, write_card
from booth.log.store import create_log
from tests.card.jobs import HOSTILE, whole
from tests.cli.test_endings import run
from tests.job.make import opened


@pytest.fixture
def a_job(own_home: Path) -> Path:
    first, *more = whole()
    with create_log(own_home / "booth" / "jobs", first) as log:  # type: ignore[arg-type]
        for n, event in enumerate(more, 2):
            log.append(type(event)(**{**_fields(event), "n": n}))
        return log.path


def _fields(event: object) -> dict[str, object]:
    return {name: getattr(event, name) for name in event.__struct_fields__}  # type: ignore[attr-defined]


def text_of(*arguments: str) -> str:
    done = run(["sheet", *arguments], env={"PYTHONIOENCODING": "utf-8"})
    assert (done.returncode, done.stderr) == (0, b""), done.stderr
    return done.stdout.decode("utf-8")


def test_the_last_job_as_text_where_nothing_is_said(a_job: Path) -> None:
    told = text_of()
    assert "Verdict      usable" in told and "slower at the edge" in told
    assert told == text_of(a_job.stem) == text_of(str(a_job)) == text_of("hood")
    log = run(["log", a_job.stem], env={"PYTHONIOENCODING": "utf-8"}).stdout.decode("utf-8")
    assert log.strip() == told.strip(), "the same card stands over the log"


def test_each_form_on_the_terminal(a_job: Path) -> None:
    assert text_of("--as", "markdown").startswith("# Trial clear")
    assert text_of("--as", "html").startswith("<!DOCTYPE html>")
    table = text_of("--as", "csv")
    assert table.startswith("job,row,number,") and "\r\n" in table
    assert len(list(csv.DictReader(io.StringIO(table, newline="")))) > len(whole())


def test_units(a_job: Path) -> None:
    assert "28 psi" in text_of("--units", "us") and "1.90 bar" in text_of("--units", "metric")
    assert "28 psi" in text_of(), "as the job was worked"


@pytest.mark.parametrize(
    ("name", "begins"),
    [("a.html", b"<!DOCTYPE"), ("a.MD", b"# Trial"), ("a.csv", b"\xef\xbb\xbfjob,"), ("a", b"Job")],
)
def test_the_ending_of_the_file_says_the_form(
    a_job: Path, tmp_path: Path, name: str, begins: bytes
) -> None:
    path = tmp_path / "new folder" / name
    assert text_of("-o", str(path)) == f"Written: {path}\n"
    assert path.read_bytes().startswith(begins)
    assert text_of("-o", str(path)) == f"Written: {path}\n", "the same again keeps no copy"
    assert [each.name for each in path.parent.iterdir()] == [name]


def test_an_old_file_keeps_its_content_beside_the_new_one(a_job: Path, tmp_path: Path) -> None:
    path = tmp_path / "card.html"
    path.write_text("written by somebody", "utf-8")
    assert "What stood there before is in card.before.html, beside it." in text_of("-o", str(path))
    assert path.read_bytes().startswith(b"<!DOCTYPE")
    assert (tmp_path / "card.before.html").read_text("utf-8") == "written by somebody"
    text_of("-o", str(path), "--as", "text")
    text_of("-o", str(path), "--as", "csv")
    kept = sorted(each.name for each in tmp_path.iterdir())
    assert kept == ["card.before-2.html", "card.before-3.html", "card.before.html", "card.html"]


def test_no_job_no_such_job_and_several_of_them(own_home: Path, a_job: Path) -> None:
    none = run(["sheet", "nothing-like-it"])
    assert none.returncode == 2 and b"booth sheet: no job by the name" in none.stderr
    with create_log(a_job.parent, replace(opened(), job="")):
        pass
    several = run(["sheet", a_job.stem[:8]])
    assert several.returncode == 2 and b"2 jobs by the name" in several.stderr
    assert run(["sheet", ""]).returncode == 2


def test_an_empty_folder_and_a_folder_that_cannot_be_written(own_home: Path, a_job: Path) -> None:
    done = run(["sheet", "-o", str(a_job / "card.html")])
    assert done.returncode == 1 and b"Traceback" not in done.stderr and done.stderr
    for path in a_job.parent.iterdir():
        path.unlink()
    done = run(["sheet"])
    assert done.returncode == 2 and b"no jobs yet" in done.stderr


def test_bad_words_are_refused(a_job: Path) -> None:
    for arguments in (["--as", "pdf"], ["--units", "imperial"]):
        assert run(["sheet", *arguments]).returncode == 2


def test_hostile_names_do_nothing(own_home: Path) -> None:
    text = HOSTILE[1] + HOSTILE[3]
    with create_log(own_home / "booth" / "jobs", opened((text,))):
        pass
    for form in FORMS:
        told = text_of("--as", form)
        assert "\x1b" not in told and "\x07" not in told
        assert "<script" not in told.replace("\\<", "") or form in ("text", "csv")


def test_form_of_a_name() -> None:
    assert [form_of(Path(name)) for name in ("a.htm", "a.markdown", "a.CSV", "a.txt", "a.pdf")] == [
        *("html", "markdown", "csv", "text", "text")
    ]


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="no pipes with names")
def test_what_is_no_file_is_not_written_over(a_job: Path, tmp_path: Path) -> None:
    pipe = tmp_path / "pipe.html"
    os.mkfifo(pipe)
    done = run(["sheet", "-o", str(pipe)])
    assert done.returncode == 1 and b"no file that a card can take the place of" in done.stderr
    assert pipe.is_fifo() and list(tmp_path.iterdir()) == [pipe]


def test_a_card_that_cannot_be_kept_leaves_what_was_there(tmp_path: Path) -> None:
    path = tmp_path / "a.html"
    path.mkdir()
    with pytest.raises(OSError):
        write_card(path, "x", "html")
    assert path.is_dir() and list(tmp_path.iterdir()) == [path]


def test_jobs_side_by_side(a_job: Path) -> None:
    told = text_of(a_job.stem, "--beside", a_job.stem, "--units", "metric")
    assert "1.90 bar" in told and "= same" in told and "differs" not in told
    table = text_of(a_job.stem, "--beside", a_job.stem, "--as", "markdown")
    assert table.startswith("|  |  | ") and "| Verdict | \\= same | usable | usable |" in table
    for wrong in (("--as", "csv"), ("--beside", "no-such-job")):
        done = run(["sheet", a_job.stem, "--beside", a_job.stem, *wrong])
        assert done.returncode == 2 and done.stdout == b""
