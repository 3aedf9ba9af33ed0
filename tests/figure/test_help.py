"""The help: how to ask on one screen, every subject in the list, and each explained without code."""

from __future__ import annotations

import json
import re

import pytest

from booth.figure.subject import Subject
from tests.figure.ask import SUBJECTS, ask, run


def test_how_to_ask_is_read_to_the_end() -> None:
    code, out, err = run(["--help"])
    assert (code, err) == (0, "")
    assert len(out.splitlines()) <= 36  # one screen and a little
    assert max(map(len, out.splitlines())) <= 96
    for option in ("--why", "--units", "--profile", "--gun", "--json", "--schema"):
        assert option in out
    assert "0 answered, 2 " in out


def test_the_word_help_is_taken_too() -> None:
    assert run(["help"]) == run(["--help"])
    assert run(["help", "dew-point"]) == run(["dew-point", "--help"])


def test_the_list_names_every_subject() -> None:
    code, out, err = run([])
    assert (code, err) == (0, "")
    for subject in SUBJECTS.values():
        assert f"\n  {subject.name} " in out
    code, out, err = run(["--json"])
    assert (code, err) == (0, "")
    listed = {each["subject"]: each for each in json.loads(out)}
    assert set(listed) == set(SUBJECTS)
    for name, subject in SUBJECTS.items():
        assert f"booth figure {name} {subject.examples[0]}".rstrip() in listed[name]["examples"]


@pytest.mark.parametrize("subject", SUBJECTS.values(), ids=lambda subject: subject.name)
def test_help_of_a_subject_explains_arguments_limits_and_source(subject: Subject) -> None:
    code, out, err = run([subject.name, "--help"])
    assert (code, err) == (0, "")
    for argument in subject.arguments:
        typed = f"{argument.name}=VALUE" if argument.optional else argument.name.upper()
        assert f"  {typed} " in out
        assert argument.meaning.split()[0] in out
    assert "Limits: " in out
    assert "Source: " in out
    assert "not at hand" not in out
    assert max(map(len, out.splitlines())) <= 110
    for example in subject.examples:
        assert f"booth figure {subject.name} {example}".rstrip() in out


def test_help_names_the_unit_of_a_bare_number() -> None:
    assert "a bare number is in fl oz" in run(["time-to-empty", "--help"])[1]
    assert "a bare number is in ml" in run(["time-to-empty", "--help", "--metric"])[1]
    us, metric = (
        ask("time-to-empty 20 6", option)["values"]["time_to_empty"]["value"]
        for option in ("--us", "--metric")
    )
    assert us == pytest.approx(200.0, rel=1e-12)
    assert metric == pytest.approx(200.0, rel=1e-12)
    # 20 fl oz at 100 ml/min: the unit of a bare number is that of the system.
    value = ask("time-to-empty 20 100ml/min", "--us")["values"]["time_to_empty"]["value"]
    assert value == pytest.approx(20 * 29.5735295625 / 100 * 60, rel=1e-9)
    # Where the other unit is metric, so is the bare number, unless told otherwise.
    value = ask("time-to-empty 20 100ml/min")["values"]["time_to_empty"]["value"]
    assert value == pytest.approx(20 / 100 * 60, rel=1e-9)


#: What no painter should have to read: names and types of the code.
CODE = re.compile(
    r"\b[A-Z][a-z]+[A-Z]\w*"  # FilmInterval
    r"|\w+_\w+"  # low_s
    r"|\b[a-z]+\.(?!org\b)[a-z]\w*"  # receiver.free
    r"|`|\(\)|\[\]"
    r"|\b(?:BadInput|Outside|None|True|False|tuple|float|dataclass|enum|docstring)\b"
    r"|\bone of [A-Z]\w+:"
)
#: What looks like a name of the code and is none: what an example types.
PLAIN = re.compile(r"^  booth figure .*$", re.MULTILINE)


@pytest.mark.parametrize("subject", SUBJECTS.values(), ids=lambda subject: subject.name)
def test_no_help_speaks_of_the_code(subject: Subject) -> None:
    for option in ("--us", "--metric"):
        text = PLAIN.sub("", run([subject.name, "--help", option])[1])
        assert not CODE.findall(text)
        assert "as for " not in text  # another function, which nobody can look up
    for argument in subject.arguments:
        assert "one or more, one or more" not in text
        assert len(argument.meaning) > 3, argument.name


@pytest.mark.parametrize("subject", SUBJECTS.values(), ids=lambda subject: subject.name)
def test_arguments_of_one_subject_are_told_apart(subject: Subject) -> None:
    meanings = [each.meaning for each in subject.arguments]
    assert len(set(meanings)) == len(meanings)


@pytest.mark.parametrize("subject", SUBJECTS.values(), ids=lambda subject: subject.name)
def test_no_answer_and_no_refusal_speaks_of_the_code(subject: Subject) -> None:
    for words in ([], ["0"], ["-1C"], ["nonsense"], *(["1"] * n for n in range(2, 6))):
        _, out, err = run([subject.name, *words])
        assert not CODE.findall(PLAIN.sub("", out + err)), words


def test_the_list_does_not_speak_of_the_code() -> None:
    assert not CODE.findall(run([])[1])
