"""``booth figure``: every computation reachable, every figure right, no entry a traceback."""

from __future__ import annotations

import importlib
import inspect
import io
import json
import math
import pkgutil
import shlex
import subprocess
import sys
from collections.abc import Iterator
from contextlib import redirect_stderr, redirect_stdout
from pathlib import Path
from types import CodeType, FrameType, FunctionType
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import booth.trade
from booth.figure import main
from booth.figure.catalogue import subjects
from booth.figure.subject import Subject
from tests.figure_cases import CASES, Case
from tests.trade.walk import published

SUBJECTS = subjects()
#: Words that no answer may use of a job or its air: a figure permits nothing.
NEVER = (" safe ", "safely", "harmless")


def run(words: list[str]) -> tuple[int, str, str]:
    """Give exit code, standard output and standard error of a call."""
    out, err = io.StringIO(), io.StringIO()
    with redirect_stdout(out), redirect_stderr(err):
        code = main(words)
    return code, out.getvalue(), err.getvalue()


def refuse(constant: str) -> None:
    raise AssertionError(f"{constant} is no JSON")


def ask(words: str, *options: str) -> dict[str, Any]:
    """Give the JSON of an answer."""
    code, out, err = run([*shlex.split(words), "--json", *options])
    assert (code, err) == (0, "")
    found: dict[str, Any] = json.loads(out, parse_constant=refuse)
    return found


def examples() -> Iterator[tuple[Subject, str]]:
    for subject in SUBJECTS.values():
        for example in subject.examples:
            yield subject, f"{subject.name} {example}".strip()


EXAMPLES = list(examples())
LINES = [line for _, line in EXAMPLES]


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case.words} {case.figure}")
def test_figures_are_those_of_the_outside_world(case: Case) -> None:
    values = {each["name"]: each["value"] for each in ask(case.words)["values"]}
    assert abs(values[case.figure] - case.expected) <= case.within, case.source


@pytest.mark.parametrize("words", LINES)
def test_each_example_is_answered_in_one_line_with_rule_and_source(words: str) -> None:
    for option in ("--us", "--metric"):
        code, out, err = run([*shlex.split(words), option])
        assert (code, err) == (0, "")
        assert out.endswith("\n")
        assert out.count("\n") == 1
        assert " | rule: " in out
        assert " | source: " in out
        assert out.partition(" | source: ")[2].strip()
        assert not any(word in out for word in NEVER)


@pytest.mark.parametrize(("subject", "words"), EXAMPLES, ids=LINES)
def test_json_says_what_the_line_says(subject: Subject, words: str) -> None:
    code, out, _ = run(shlex.split(words))
    found = ask(words)
    assert found["subject"] == subject.name
    assert found["rule"]
    assert found["source"]
    assert found["outside"] == out.startswith("no figure: ")
    assert found["estimate"] == any(each["estimate"] for each in found["values"])
    for value in found["values"]:
        assert value["shown"] in out
        assert ("estimate " in value["shown"]) == value["estimate"]
        if value["estimate"] and "low" in value:
            assert value["low"] <= value["value"] <= value["high"]
        if isinstance(value["value"], float):
            assert value["unit"]
    if found["outside"]:
        assert found["values"] == []
        assert found["reason"] in out
        assert found["advice"] in out
    assert code == 0


@pytest.mark.parametrize("words", LINES)
def test_json_numbers_do_not_depend_on_the_units_shown(words: str) -> None:
    us, metric = ask(words, "--us"), ask(words, "--metric")

    def bare(found: dict[str, Any]) -> list[tuple[Any, ...]]:
        keys = ("name", "unit", "value", "low", "high")
        return [tuple(each.get(key) for key in keys) for each in found["values"]]

    # A bare number takes the shown unit: the examples that have one have it without a unit.
    assert bare(us) == bare(metric)


def public_functions() -> dict[str, FunctionType]:
    found = {}
    for module in pkgutil.walk_packages(booth.trade.__path__, "booth.trade."):
        loaded = importlib.import_module(module.name)
        for name in published(loaded):
            public = getattr(loaded, name)
            if inspect.isfunction(public):
                found[f"{public.__module__}.{public.__qualname__}"] = public
    return found


#: Public functions that no subject answers, with the reason.
NOT_ASKED = {
    "booth.trade.result.require": "it checks a number, and computes nothing",
}


def test_every_public_function_of_the_trade_is_reached_by_an_example() -> None:
    called: set[CodeType] = set()

    def note(frame: FrameType, event: str, _: object) -> None:
        if event == "call":
            called.add(frame.f_code)

    before = sys.getprofile()
    sys.setprofile(note)
    try:
        for words in LINES:
            run(shlex.split(words))
    finally:
        sys.setprofile(before)
    functions = public_functions()
    reached = {name for name, function in functions.items() if function.__code__ in called}
    named = {
        f"{function.__module__}.{function.__qualname__}"
        for subject in SUBJECTS.values()
        for function in subject.functions
    }
    assert set(functions) - reached - set(NOT_ASKED) == set()
    assert set(functions) - named - set(NOT_ASKED) == set()
    assert reached & set(NOT_ASKED) == set(NOT_ASKED) & set(functions)


SPARE = '''"""Spare computations: what a newcomer might add."""

from dataclasses import dataclass

from booth.trade.result import BadInput, Estimate, Outside, Value, require

__all__ = ["Bar", "Spared", "spare_film_um", "spare_stock"]


@dataclass(frozen=True)
class Bar:
    turns: float
    delivery_ml_min: float


@dataclass(frozen=True)
class Spared:
    wet_each_um: float
    least: Value
    likely: Estimate
    bare_fraction: float
    glossy: bool
    seen: None
    caution: str
    rule: str


def spare_film_um(dry_um: float, passes: int, air_c: float = 20.0, glossy: bool = False) -> float:
    """Give the film that a spare coat leaves: ``dry x passes``.

    Args:
        dry_um: dry film of one pass [um], above 0.
        passes: how many there are.
        air_c: air temperature [degC].
        glossy: whether it shines.

    Returns: film [um].
    Range: up to 10 passes.
    Source: invented for a test.

    Example:
        >>> spare_film_um(25.4, 3)
        76.2
    """
    require("The dry film", dry_um, above=0.0, unit="um")
    return dry_um * passes * (2 if glossy else 1)


def spare_stock(bars: list[Bar], least_c: float | None = None) -> Spared | Outside:
    """Say what bars do.

    Args:
        bars: turns and delivery of each.
        least_c: the coldest it may be [degC].

    Returns: Spared.
    Range: any.
    Source: made up; and so is this.

    Example:
        >>> spare_stock([Bar(1.0, 100.0)])
    """
    if least_c is not None:
        return Outside("It is cold.", "Wait.", "none")
    whole = sum(bar.delivery_ml_min for bar in bars)
    return Spared(
        wet_each_um=whole, least=Value(whole, "kW", "sum"),
        likely=Estimate(2.0, 1.0, 3.0, "mm2/s", "a guess"), bare_fraction=0.25, glossy=True,
        seen=None, caution="Mind it.", rule="all bars added",
    )
'''


@pytest.fixture
def spare(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    (tmp_path / "spare.py").write_text(SPARE, "utf-8")
    monkeypatch.setattr(booth.trade, "__path__", [*booth.trade.__path__, str(tmp_path)])
    yield
    sys.modules.pop("booth.trade.spare", None)


@pytest.mark.usefixtures("spare")
def test_a_new_function_of_the_trade_has_its_subject_with_no_further_line() -> None:
    found = ask("spare-film 1mil 3")
    assert found["values"] == [
        {
            "name": "spare film",
            "value": pytest.approx(76.2),
            "unit": "um",
            "estimate": False,
            "shown": "spare film 3.00 mil",
        }
    ]
    assert found["rule"] == "dry x passes"
    assert found["source"] == "invented for a test"
    assert found["given"] == [
        "dry 1.00 mil",
        "passes 3",
        "air 68.0 °F (assumed)",
        "glossy no (assumed)",
    ]
    assert ask("spare-film 1mil 3 glossy=yes")["values"][0]["value"] == pytest.approx(152.4)
    assert "must be above 0" in run(["spare-film", "0um", "3"])[2]
    assert "passes is missing" in run(["spare-film", "1mil"])[2]
    about = run(["spare-film", "--help"])[1]
    assert "The film that a spare coat leaves: dry x passes." in about
    assert "dry film of one pass" in about
    assert "Limits: up to 10 passes" in about
    assert "booth figure spare-film 1mil 3" in about
    listed = run([])[1]
    assert "Spare computations:" in listed
    assert "  spare-film " in listed


@pytest.mark.usefixtures("spare")
def test_a_new_type_of_argument_or_result_is_read_and_told_by_its_fields() -> None:
    found = ask("spare-stock 1:100ml/min 2:50ml/min")
    told = [
        (each["name"], each["value"], each.get("unit"), each["estimate"])
        for each in found["values"]
    ]
    assert told == [
        ("wet each", 150.0, "um", False),
        ("least", 150.0, "kW", False),
        ("likely", 2.0, "mm2/s", True),
        ("bare", 0.25, "1", False),
        ("glossy", True, None, False),
    ]
    assert found["notes"] == ["Mind it."]
    assert found["rule"] == "all bars added"
    assert ask("spare-stock 1:100ml/min least=5C")["reason"] == "It is cold."
    assert "TURNS:DELIVERY" in run(["spare-stock", "1"])[2]
    assert "booth figure spare-stock 1:100ml/min" in run(["spare-stock", "--help"])[1]


def test_the_list_names_every_subject_with_an_example() -> None:
    code, out, err = run([])
    assert (code, err) == (0, "")
    for subject in SUBJECTS.values():
        assert f"  {subject.name} " in out
        assert f"booth figure {subject.name} {subject.examples[0]}".rstrip() in out
    assert run(["--help"])[1] == out


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
        ask("time-to-empty 20 6", option)["values"][0]["value"] for option in ("--us", "--metric")
    )
    assert us == pytest.approx(200.0, rel=1e-12)
    assert metric == pytest.approx(200.0, rel=1e-12)
    # 20 fl oz at 100 ml/min: the unit of a bare number is that of the system.
    value = ask("time-to-empty 20 100ml/min", "--us")["values"][0]["value"]
    assert value == pytest.approx(20 * 29.5735295625 / 100 * 60, rel=1e-9)


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ("viscosty 'Ford #4' 30s", "Did you mean viscosity"),
        ("zzz", "'booth figure' lists them"),
        ("viscosity 'Ford #4'", "time is missing"),
        ("viscosity", "cup, time are missing"),
        ("time-to-empty 20oz 6oz/min 5", "'5' is one word too many"),
        ("time-to-empty 20 oz 6oz/min", "'20 oz' or 20oz"),
        ("time-to-empty volume=20oz volume=10oz 6oz/min", "volume was given twice"),
        ("time-to-empty 20oz 6oz/min delivry=3", "Did you mean delivery?"),
        ("time-to-empty 20oz 6oz/min --density", "Known are volume, delivery"),
        ("time-to-empty 20oz --delivery", "--delivery needs a value"),
        ("viscosity 'Ford #4' 30F", "measures a temperature"),
        ("viscosity 'Ford 9' 30s", "Cups of that family"),
        ("viscosity 'Ford #4' 30s correction=9", "must be 2 or less"),
        ("dew-point 72F 0%", "must be above 0"),
        ("dew-point 72F 145%", "must be 100 % or less"),
        ("dew-point 72F nan", "does not begin with a number"),
        ("turns-for-delivery 160ml/min 1", "TURNS:DELIVERY"),
        ("evenness parabel 50%", "There is no fan profile"),
        ("section even 50% points=100000", "are enough"),
        ("delivery 120g 30s", "density=1.2g/ml"),
        ("delivery 4oz 30s density=1.2g/ml", "only needed where"),
        ("mix-top-up 100g 600ml base:4", "should be a volume"),
        ("solvent kerosine", "No solvent is called"),
        ("weather 20C 50% 20C air-low=30C air-high=20C", "upside down"),
        ("pattern stripes", "not among the words"),
    ],
)
def test_bad_input_is_a_sentence_on_standard_error_and_exit_code_2(words: str, says: str) -> None:
    code, out, err = run(shlex.split(words))
    assert (code, out) == (2, "")
    assert says in err
    assert err.startswith("booth figure")
    assert err.rstrip().endswith((".", "?"))
    assert err.count("\n") == 1


@pytest.mark.parametrize(
    "words",
    [
        "viscosity --cup 'Ford #4' 30s",
        "viscosity 30s --cup='Ford #4'",
        "viscosity cup='Ford #4' time=30s",
        "viscosity 'Ford #4' --time 30s",
        "--metric viscosity 'Ford #4' 30s",
        "VISCOSITY 'Ford #4' 30s",
    ],
)
def test_arguments_stand_in_place_or_after_their_name(words: str) -> None:
    values = ask(words)["values"]
    assert values[0]["value"] == pytest.approx(3.85 * (30 - 4.49), rel=1e-12)  # ASTM D1200 11.2


def test_a_word_before_a_value_names_it_whatever_the_order() -> None:
    one = ask("pot-life 4h at 21C 31C")["values"]
    assert one == ask("pot-life at 21C 4h 31C")["values"]
    assert one == ask("pot-life 4h today=31C at=21C")["values"]


def test_what_is_outside_is_no_failure_and_advises() -> None:
    code, out, err = run(["viscosity", "Zahn 2", "18s"])
    assert (code, err) == (0, "")
    assert out.startswith("no figure: 18 s is below the 20 s")
    assert "Use Zahn #1" in out


def test_what_is_infinite_is_null_in_json() -> None:
    found = ask("gauge 3mil:-")
    assert next(value["value"] for value in found["values"] if value["name"] == "to") is None
    assert ask("evenness even 0%")["values"][0]["value"] is not None
    bare = ask("evenness 0,9,0 0%")["values"][0]
    assert bare["value"] is None or math.isfinite(bare["value"])


def test_estimates_say_so_with_their_band() -> None:
    out = run(["mean-wet-film", "200ml/min", "250mm", "50%", "0.4m/s", "--metric"])[1]
    assert out.startswith("mean wet film estimate 43.3 µm, 40.0 µm to 46.7 µm")
    known = run(["mean-wet-film", "200ml/min", "250mm", "50%", "0.4m/s", "efficiency=65%"])[1]
    assert "estimate" not in known.partition("|")[0]


def test_cautions_come_with_figures_of_fire_and_air() -> None:
    for words in (
        "fresh-air 200ml/min 60% xylene:100%",
        "dilution-air 30.4 1.4",
        "required-exhaust 100ft2",
    ):
        out = run(shlex.split(words))[1]
        assert "not a permission to breathe" in out


def test_user_text_never_acts_on_the_terminal() -> None:
    evil = "base\x1b[2J\x07\u202e"
    for words in (
        ["mix", "600ml", f"{evil}:4"],
        [evil],
        ["viscosity", evil, "30s"],
        ["time-to-empty", evil],
    ):
        _, out, err = run(words)
        assert not set("\x1b\x07\u202e") & set(out + err)


def test_a_terminal_without_the_signs_of_the_trade_gets_an_answer() -> None:
    raw = io.BytesIO()
    narrow = io.TextIOWrapper(raw, encoding="ascii", errors="strict")
    with redirect_stdout(narrow):
        assert main(["viscosity", "Ford #4", "30s"]) == 0
    narrow.flush()
    assert raw.getvalue().startswith(b"viscosity 98.2 mm2/s")


def test_without_docstrings_no_figure_loses_its_unit_unsaid() -> None:
    code = (
        "from booth.figure import main\n"
        "main(['wet-film', '1.5mil', '42%', '--metric']); main(['solids-after-thinning', '50%', '25%'])"
    )
    done = subprocess.run(
        [sys.executable, "-OO", "-c", code], capture_output=True, text=True, timeout=60, check=True
    )
    film, solids = done.stdout.splitlines()
    assert film.startswith("wet film 90.7 µm")  # 1.5 mil / 0.42
    assert solids.startswith("no figure: Python was told to drop the docstrings")


def test_the_command_answers_without_loading_a_screen() -> None:
    code = (
        "import sys; from booth.cli.command import main\n"
        "done = main(['figure', 'dew-point', '72F', '45%'])\n"
        "print([m for m in ('textual', 'numpy', 'rich') if m in sys.modules]); sys.exit(done)"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, timeout=60, check=False
    )
    assert done.returncode == 0
    answer, loaded = done.stdout.splitlines()
    assert answer.startswith("dew point 49.5 °F")  # 9.7 C by psychrolib
    assert loaded == "[]"


# Words as a hurried hand types them: real values, names, stray words, rubbish.
POOL = [
    *(word for line in LINES for word in shlex.split(line)),
    *(
        f"{each.name}={value}"
        for subject in SUBJECTS.values()
        for each in subject.arguments
        for value in ("0", "-1", "1e9", "50%", "1:2:3", "")
    ),
    *[
        "0",
        "-5C",
        "999999",
        "nan",
        "inf",
        "-",
        ":",
        "::",
        "=",
        "--",
        "--=",
        "at",
        "from",
        "to",
        "1:1",
        "--json",
        "--us",
        "--metric",
        "--help",
        "-h",
    ],
    *[
        "½",
        "1/0",
        "hvlp",
        "yes",
        "0ml:0ml",
        "0s:0s",
        "0%:0cSt",
        "1e308",
        "100%",
        "95%",
        "1",
        "1000000",
        "-:-",
    ],
    *("\x00", "١٢ s"),
]


@settings(max_examples=400, deadline=None)
@given(
    st.sampled_from(sorted(SUBJECTS)),
    st.lists(st.one_of(st.sampled_from(POOL), st.text(max_size=12)), max_size=7),
)
def test_no_words_end_in_a_traceback(name: str, words: list[str]) -> None:
    check(*run([name, *words]), "--json" in words)


@settings(max_examples=400, deadline=None)
@given(st.sampled_from(LINES), st.data())
def test_an_example_with_one_word_changed_is_answered_or_refused(line: str, data: Any) -> None:
    words = shlex.split(line)
    if len(words) > 1:
        place = data.draw(st.integers(1, len(words) - 1))
        words[place] = data.draw(st.one_of(st.sampled_from(POOL), st.text(max_size=12)))
    check(*run([*words, "--json"]), "--help" not in words and "-h" not in words)


def check(code: int, out: str, err: str, as_json: bool) -> None:
    assert code in {0, 2}
    assert (code == 0) == bool(out)
    assert (code == 2) == bool(err)
    if code == 2:
        assert err.startswith("booth figure")
        assert err.count("\n") == 1
        assert "Traceback" not in err
    elif as_json and out.startswith("{"):
        json.loads(out, parse_constant=refuse)
