"""Faults: the handbooks' causes are found by their figures; what nobody measured keeps its place."""

from __future__ import annotations

import math
from dataclasses import fields, replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.special import softmax

from booth.trade.faults import evidence as evidence_module
from booth.trade.faults import ranked_causes
from booth.trade.faults.evidence import _GAUGES, Evidence, Sign, read_sign
from booth.trade.faults.fault_table import FAULTS
from booth.trade.faults.questions import QUESTIONS, Reply
from booth.trade.faults.ranked_causes import RankedCause, Standing, next_question, rank_causes
from booth.trade.faults.remedies import REMEDIES
from booth.trade.result import BadInput
from tests.trade.outside import Kind, outside

#: One figure past its limit for each sign, as plainly as a job could show it.
SHOWN: dict[Sign, Evidence] = {
    Sign.EFFLUX_HIGH: Evidence(efflux_s=30.0, efflux_high_s=22.0),
    Sign.EFFLUX_LOW: Evidence(efflux_s=14.0, efflux_low_s=18.0),
    Sign.INLET_HIGH: Evidence(inlet_kpa=350.0, inlet_high_kpa=200.0),
    Sign.INLET_LOW: Evidence(inlet_kpa=100.0, inlet_low_kpa=180.0),
    Sign.DELIVERY_HIGH: Evidence(delivery_ml_min=300.0, delivery_high_ml_min=200.0),
    Sign.DELIVERY_LOW: Evidence(delivery_ml_min=90.0, delivery_low_ml_min=160.0),
    Sign.WET_HIGH: Evidence(wet_um=120.0, wet_high_um=70.0),
    Sign.WET_LOW: Evidence(wet_um=25.0, wet_low_um=50.0),
    Sign.TOO_EARLY: Evidence(early_s=400.0, flash_off_s=600.0),
    Sign.TOO_LATE: Evidence(late_s=7200.0),
    Sign.DEW_NEAR: Evidence(dew_margin_c=0.5, dew_margin_low_c=3.0),
    Sign.AIR_HOT: Evidence(air_c=38.0, air_high_c=30.0),
    Sign.AIR_COLD: Evidence(air_c=5.0, air_low_c=15.0),
    Sign.HUMID: Evidence(humidity_percent=92.0, humidity_high_percent=75.0),
    Sign.DRY_AIR: Evidence(humidity_percent=10.0, humidity_low_percent=30.0),
    Sign.PART_HOT: Evidence(part_c=45.0, part_high_c=35.0),
    Sign.PART_COLD: Evidence(part_c=4.0, part_low_c=12.0),
    Sign.SPEED_SLOW: Evidence(speed_m_s=0.2, speed_wanted_m_s=0.5),
    Sign.SPEED_FAST: Evidence(speed_m_s=0.9, speed_wanted_m_s=0.5),
    Sign.GUN_NEAR: Evidence(distance_mm=80.0, distance_low_mm=150.0),
    Sign.GUN_FAR: Evidence(distance_mm=400.0, distance_high_mm=200.0),
    Sign.OVERLAP_LOW: Evidence(overlap_fraction=0.2, overlap_wanted_fraction=0.5),
    Sign.OVERLAP_HIGH: Evidence(overlap_fraction=0.85, overlap_wanted_fraction=0.5),
    Sign.UNEVEN: Evidence(unevenness_fraction=0.3, unevenness_high_fraction=0.1),
    Sign.THINNER_OVER: Evidence(thinner_percent=40.0, thinner_high_percent=20.0),
    Sign.THINNER_UNMEASURED: Evidence(thinner_unmeasured=True),
    Sign.POT_LIFE_OVER: Evidence(pot_life_used=1.6),
    Sign.INDUCTION_SHORT: Evidence(induction_left_s=900.0),
    Sign.COATS_FEW: Evidence(coats_laid=1.0, coats_wanted=3.0),
}

#: What the handbooks name, fault by fault, as the figure that would show it. TM 43-0139 and the
#: table of Corrosion Engineering, with the first lines of FAA-H-8083-31, were seen; the rest of
#: the FAA's list is recalled.
FAA = [
    ("runs", Sign.WET_HIGH),  # too much paint applied
    ("runs", Sign.GUN_NEAR),  # gun too close
    ("runs", Sign.SPEED_SLOW),  # gun moved too slowly
    ("runs", Sign.EFFLUX_LOW),  # too much reducer
    ("orange-peel", Sign.EFFLUX_HIGH),  # not enough reducer
    ("orange-peel", Sign.TOO_EARLY),  # little flash time between coats
    ("orange-peel", Sign.AIR_HOT),
    ("orange-peel", Sign.PART_COLD),
    ("blush", Sign.HUMID),  # seen: humidity above 80 percent
    ("blush", Sign.AIR_COLD),  # seen: below 60 F
    ("blush", Sign.AIR_HOT),  # seen: above 95 F
    ("blush", Sign.INLET_HIGH),  # seen: excessively high air pressure at the gun
    ("pinholes", Sign.WET_HIGH),  # seen: excessively heavy or wet coats
    ("wrinkling", Sign.WET_HIGH),
    ("wrinkling", Sign.TOO_EARLY),
    ("poor-adhesion", Sign.THINNER_OVER),  # seen: improper thinning
    ("dry-spray", Sign.GUN_FAR),
    ("dry-spray", Sign.INLET_HIGH),
]
TM_43_0139 = [
    ("orange-peel", Sign.INLET_LOW),  # insufficient atomization
    ("orange-peel", Sign.GUN_FAR),
    ("orange-peel", Sign.GUN_NEAR),
    ("orange-peel", Sign.EFFLUX_HIGH),
    ("orange-peel", Sign.DRY_AIR),  # low humidity
    ("runs", Sign.WET_HIGH),
    ("runs", Sign.SPEED_SLOW),
    ("dry-spray", Sign.INLET_HIGH),  # mist or fog: atomizing pressure too high
    ("dry-spray", Sign.DELIVERY_LOW),  # mist or fog: fluid pressure too low
    ("dry-spray", Sign.GUN_FAR),
    ("mottling", Sign.UNEVEN),  # streaks: improper spraying pattern
]
CORROSION = [
    ("runs", Sign.GUN_NEAR),
    ("runs", Sign.EFFLUX_LOW),  # too much thinner
    ("orange-peel", Sign.EFFLUX_HIGH),
    ("orange-peel", Sign.GUN_NEAR),
    ("orange-peel", Sign.INLET_LOW),
    ("dry-spray", Sign.GUN_FAR),
    ("dry-spray", Sign.INLET_HIGH),  # atomization too high
]

#: How a reading that is kept to its limit stands to it.
KEPT = ("at most", "at least", "about")


@outside(
    ranked_causes.rank_causes,
    evidence_module.read_sign,
    kind=Kind.COPIED,
    source="FAA-H-8083-31 ch. 8; TM 43-0139 p. 5-12; Corrosion Engineering, table 14.1",
)
@pytest.mark.parametrize(("fault", "sign"), [*FAA, *TM_43_0139, *CORROSION])
def test_a_cause_of_the_handbooks_comes_first_when_its_figure_alone_shows_it(
    fault: str, sign: Sign
) -> None:
    first, second, *_rest = rank_causes(fault, SHOWN[sign])
    assert first.standing is Standing.SHOWN and sign in first.cause.signs
    assert len(first.figures_for) == 1 and first.figures_for[0].side not in KEPT
    assert first.weight > second.weight or sign in second.cause.signs
    assert first.cause.now and first.cause.next_time and first.cause.source


@outside(
    ranked_causes.rank_causes,
    evidence_module.read_sign,
    kind=Kind.COPIED,
    source="FAA-H-8083-31 ch. 8: blush above 80 % humidity, below 60 F, above 95 F",
)
@pytest.mark.parametrize(
    ("job", "shown"),
    [
        (Evidence(humidity_percent=82.0), True),
        (Evidence(humidity_percent=78.0), False),
        (Evidence(air_c=15.0), True),  # 59 F
        (Evidence(air_c=16.0), False),  # 60.8 F
        (Evidence(air_c=35.6), True),  # 96 F
        (Evidence(air_c=34.4), False),  # 94 F
    ],
)
def test_blush_uses_the_handbooks_limits_where_the_profile_has_none(
    job: Evidence, shown: bool
) -> None:
    found = [each for each in rank_causes("blush", job) if each.standing is Standing.SHOWN]
    assert bool(found) is shown
    if shown:
        assert "FAA" in found[0].figures_for[0].limit_source
    # The profile's own limit wins over the handbook's.
    damp = rank_causes("blush", Evidence(humidity_percent=82.0, humidity_high_percent=85.0))
    assert not any(each.standing is Standing.SHOWN for each in damp)


def test_tm_43_0139_contradicts_itself_about_sags_and_is_not_followed_there() -> None:
    """Its list of sags repeats 'generally high' viscosity from orange peel; the others say thin."""
    thick, thin = (SHOWN[sign] for sign in (Sign.EFFLUX_HIGH, Sign.EFFLUX_LOW))
    assert not any(each.standing is Standing.SHOWN for each in rank_causes("runs", thick))
    assert rank_causes("runs", thin)[0].standing is Standing.SHOWN


@pytest.mark.parametrize("key", sorted(FAULTS))
def test_without_figures_nothing_is_claimed(key: str) -> None:
    ranked = rank_causes(key, Evidence())
    assert {each.standing for each in ranked} == {Standing.OPEN}
    usual = [each.cause.usual for each in ranked]
    assert usual == sorted(usual, reverse=True)
    assert [each.weight for each in ranked] == [3.0 ** (each - 1) for each in usual]
    assert all(not each.figures_for and not each.figures_against for each in ranked)
    assert len({each.cause.words for each in ranked}) == len(ranked)


def test_figures_in_range_speak_against() -> None:
    good = Evidence(
        efflux_s=20.0,
        efflux_low_s=18.0,
        efflux_high_s=22.0,
        wet_um=60.0,
        wet_low_um=50.0,
        wet_high_um=70.0,
        early_s=0.0,
        pot_life_used=0.5,
        speed_m_s=0.5,
        speed_wanted_m_s=0.5,
    )
    ranked = rank_causes("runs", good)
    assert not any(each.standing is Standing.SHOWN for each in ranked)
    cleared = [each.cause.words for each in ranked if each.standing is Standing.CLEARED]
    assert "Too much was laid in one coat." in cleared
    assert "A coat was laid on one that had not flashed off." in cleared
    # What nothing measured can show stays open, and above what was cleared.
    assert ranked[0].standing is Standing.OPEN


def test_a_figure_without_its_limit_says_nothing() -> None:
    for job in (Evidence(wet_um=500.0), Evidence(wet_high_um=70.0), Evidence(efflux_s=90.0)):
        assert all(each.standing is Standing.OPEN for each in rank_causes("runs", job))


def test_every_sign_can_be_shown_and_serves_a_fault() -> None:
    assert set(SHOWN) == set(Sign)
    used = {sign for fault in FAULTS.values() for cause in fault.causes for sign in cause.signs}
    assert used == set(Sign)
    for sign, job in SHOWN.items():
        read = read_sign(sign, job)
        assert read is not None and read[1] > 0.0


def test_all_faults_of_the_trade_are_here() -> None:
    assert set(FAULTS) == {
        *("runs", "orange-peel", "dry-spray", "mottling", "solvent-pop", "pinholes"),
        *("fisheyes", "dust", "blush", "poor-adhesion", "wrinkling", "bleeding"),
        *("hiding", "gloss", "soft", "amine-blush", "sand-scratches", "water-spots"),
        *("colour", "banding", "spitting"),
    }
    for fault in FAULTS.values():
        others = [
            n for each in FAULTS.values() if each is not fault for n in (each.key, *each.also)
        ]
        assert not {fault.key, *fault.also} & set(others)
        assert len({cause.key for cause in fault.causes}) == len(fault.causes)
        assert any(cause.usual == 3 for cause in fault.causes)
        assert fault.looks.endswith(".") and fault.film.endswith(".")
        for cause in fault.causes:
            assert cause.words.endswith(".") and cause.now.endswith(".")
            assert cause.next_time.endswith(".") and cause.usual in (1, 2, 3)
            assert "safe" not in f"{cause.now} {cause.next_time}".lower().split()


@given(
    st.sampled_from(sorted(FAULTS)),
    st.fixed_dictionaries(
        {},
        optional={
            field.name: st.floats(-5.0, 400.0)
            for field in fields(Evidence)
            if field.name != "thinner_unmeasured"
        },
    ),
)
def test_none_is_claimed_without_a_figure(key: str, figures: dict[str, float]) -> None:
    ranked = rank_causes(key, Evidence(**figures))
    assert {id(each.cause) for each in ranked} == {id(cause) for cause in FAULTS[key].causes}
    weights = [each.weight for each in ranked]
    assert weights == sorted(weights, reverse=True)
    for each in ranked:
        assert (each.standing is Standing.SHOWN) == bool(each.figures_for)
        assert (each.evidence > 0.0) == bool(each.figures_for) and each.evidence <= 1.0
        for reading in each.figures_for:
            assert reading.measured is not None and reading.limit is not None
            past = reading.measured > reading.limit
            assert reading.side == ("above" if past else "below")
        assert all(reading.side in KEPT for reading in each.figures_against)
        if not each.is_measured:  # whatever was measured of the others
            assert each.weight == 3.0 ** (each.cause.usual - 1)
        elif not each.figures_for:
            assert each.weight < 3.0 ** (each.cause.usual - 1)


def place(ranked: tuple[RankedCause, ...], cause: str) -> int:
    return [each.cause.key for each in ranked].index(cause)


#: Fault, cause, what is measured or answered, its weight. By hand: usual 9, common 3, now and then
#: 1; times 10^0.5 = 3.162 for a figure at its limit, 10 for one all the way past it, 10^(0.5 + 0.5 x)
#: for a share x of the way; 10^-0.5 = 0.316 within its limit, 10^-0.25 = 0.562 where only one of the
#: two signs was read; 10 or a tenth for an answer.
BY_HAND = [
    ("runs", "wet-high", {}, {}, 9.0),
    ("runs", "wet-high", {"wet_um": 120.0, "wet_high_um": 70.0}, {}, 90.0),
    ("runs", "wet-high", {"wet_um": 70.0001, "wet_high_um": 70.0}, {}, 28.46),
    ("runs", "wet-high", {"wet_um": 87.5, "wet_high_um": 70.0}, {}, 50.61),  # half of 35 um
    ("runs", "wet-high", {"wet_um": 60.0, "wet_high_um": 70.0}, {}, 2.846),
    ("runs", "air-cold", {"air_c": 20.0, "air_low_c": 15.0}, {}, 1.687),
    (
        "runs",
        "air-cold",
        {"air_c": 20.0, "air_low_c": 15.0, "part_c": 20.0, "part_low_c": 15.0},
        {},
        0.949,
    ),
    (
        "runs",
        "air-cold",
        {"air_c": 20.0, "air_low_c": 15.0, "part_c": 4.0, "part_low_c": 12.0},
        {},
        30.0,
    ),
    ("runs", "thinner-unmeasured", {"thinner_unmeasured": True}, {}, 9.487),
    ("runs", "tilted", {}, {"where": "yes"}, 30.0),
    ("runs", "tilted", {}, {"where": "no"}, 0.3),
    ("runs", "efflux-low", {}, {"where": "yes"}, 0.9),
    ("runs", "tilted", {}, {"where": "yes", "tilted": "yes"}, 300.0),
    ("runs", "tilted", {}, {"where": "cannot tell", "a later one": "yes"}, 3.0),
    ("fisheyes", "dew-near", {"dew_margin_c": 0.9, "dew_margin_low_c": 3.0}, {}, 7.079),
]


@outside(
    ranked_causes.rank_causes, kind=Kind.DEFINITION, source="Bayes' theorem in odds, worked by hand"
)
@pytest.mark.parametrize(("fault", "cause", "figures", "answers", "weight"), BY_HAND)
def test_the_weights_are_odds_worked_by_hand(
    fault: str, cause: str, figures: dict[str, float], answers: dict[str, str], weight: float
) -> None:
    ranked = rank_causes(fault, Evidence(**figures), answers)
    # The hand-worked figures have four digits.
    assert ranked[place(ranked, cause)].weight == pytest.approx(weight, rel=5e-4)


@outside(
    ranked_causes.rank_causes,
    kind=Kind.LIBRARY,
    source="scipy.special.softmax (Bayes' theorem over logarithms)",
)
def test_shares_are_those_of_a_softmax_of_prior_and_evidence() -> None:
    job = Evidence(wet_um=90.0, wet_high_um=70.0, efflux_s=20.0, efflux_low_s=18.0)
    ranked = rank_causes("runs", job, {"where": "no", "slick": "no"})
    logs = [
        math.log(3.0) * (each.cause.usual - 1) + math.log(10.0) * each.evidence for each in ranked
    ]
    total = sum(each.weight for each in ranked)
    # Both work in double precision, the softmax through an exponential of a difference.
    assert [each.weight / total for each in ranked] == pytest.approx(list(softmax(logs)), rel=1e-12)


def test_a_rare_cause_weakly_shown_never_stands_above_a_usual_one_that_nobody_measured() -> None:
    ranked = rank_causes("fisheyes", Evidence(dew_margin_c=0.9, dew_margin_low_c=3.0))
    assert [each.cause.key for each in ranked[:3]] == ["greasy", "line-dirt", "dew-near"]
    assert ranked[2].standing is Standing.SHOWN and ranked[0].standing is Standing.OPEN


@given(
    st.sampled_from(sorted(FAULTS)),
    st.data(),
    st.fixed_dictionaries(
        {}, optional={field.name: st.floats(0.0, 400.0) for field in fields(Evidence)[:-2]}
    ),
)
def test_more_evidence_for_a_cause_never_lowers_its_rank(
    key: str, data: st.DataObject, figures: dict[str, float]
) -> None:
    figures.pop("thinner_unmeasured", None)
    before = Evidence(**figures)
    signs = {sign for cause in FAULTS[key].causes for sign in cause.signs} & set(_GAUGES)
    sign = data.draw(st.sampled_from(sorted(signs)), "sign")
    gauge, cause = _GAUGES[sign], next(c.key for c in FAULTS[key].causes if sign in c.signs)
    measured = getattr(before, gauge.measured)
    further = data.draw(st.floats(0.0, 300.0), "further") * (1.0 if gauge.above else -1.0)
    if measured is not None:
        after = replace(before, **{gauge.measured: measured + further})
        old, new = rank_causes(key, before), rank_causes(key, after)
        assert new[place(new, cause)].weight >= old[place(old, cause)].weight
        assert place(new, cause) <= place(old, cause)
    ranked = rank_causes(key, before)
    # What was never measured, shown all the way now; and a yes to what asks of this cause alone.
    answered = rank_causes(key, before, {cause: "yes"})
    assert place(answered, cause) <= place(ranked, cause)
    denied = rank_causes(key, before, {cause: "no"})
    assert place(denied, cause) >= place(ranked, cause)
    if read_sign(sign, before) is None:
        shown = SHOWN[sign]
        given_now = {f.name: v for f in fields(shown) if (v := getattr(shown, f.name)) is not None}
        now = rank_causes(key, replace(before, **given_now))
        assert now[place(now, cause)].weight >= ranked[place(ranked, cause)].weight


@outside(ranked_causes.next_question, kind=Kind.DEFINITION, source="common practice, no source")
@pytest.mark.parametrize(
    ("fault", "answers", "asked", "then_first"),
    [
        ("fisheyes", {}, "wiped", {"yes": "line-dirt", "no": "greasy"}),
        ("runs", {}, "wet-high", {"yes": "wet-high", "no": "efflux-low"}),
        ("runs", {"wet-high": "no"}, "efflux-low", {"yes": "efflux-low", "no": "thinner-over"}),
        ("dust", {}, "on-top", {"yes": "dusty", "no": "unstrained"}),
        ("orange-peel", {}, "more-air", {"yes": "inlet-low", "no": "efflux-high"}),
        ("soft", {}, "warm-panel", {"yes": "bad-ratio", "no": "air-cold"}),
        ("hiding", {}, "stick", {"yes": "unstirred", "no": "coats-few"}),
    ],
)
def test_the_question_parts_the_first_two_and_its_answer_changes_the_rank(
    fault: str, answers: dict[str, str], asked: str, then_first: dict[str, str]
) -> None:
    question = next_question(rank_causes(fault, Evidence(), answers), answers)
    assert question is not None and question.key == asked and question.words.endswith("?")
    for reply, first in then_first.items():
        assert rank_causes(fault, Evidence(), {**answers, asked: reply})[0].cause.key == first


@given(st.sampled_from(sorted(FAULTS)), st.lists(st.sampled_from(list(Reply)), min_size=80))
def test_questions_come_to_an_end_and_none_comes_twice(key: str, replies: list[Reply]) -> None:
    answers: dict[str, str] = {}
    for reply in replies:
        ranked = rank_causes(key, Evidence(), answers)
        question = next_question(ranked, answers)
        if question is None:
            return
        assert question.key not in answers
        assert {each.cause.key for each in ranked} & (question.yes | question.no)
        answers[question.key] = reply
    raise AssertionError(f"{key} asks for ever: {answers}")


def test_what_was_measured_is_not_asked() -> None:
    heavy = Evidence(wet_um=120.0, wet_high_um=70.0)
    ranked = rank_causes("solvent-pop", heavy)
    assert ranked[0].cause.key == "wet-high"
    question = next_question(ranked)
    assert question is not None and question.key == "edges"  # it parts it from the thinner
    assert next_question(ranked, {"edges": Reply.CANNOT_TELL}).key != "wet-high"  # type: ignore[union-attr]


def test_every_question_speaks_of_a_cause_and_every_cause_has_one() -> None:
    causes = {cause.key for fault in FAULTS.values() for cause in fault.causes}
    assert causes == set(REMEDIES)
    assert not {key for key in QUESTIONS if key not in causes} & causes
    for question in QUESTIONS.values():
        assert (question.yes | question.no) <= causes and not question.yes & question.no
        assert question.words.endswith("?") and question.yes
        assert all(question.speaks(each, "yes") == -question.speaks(each, "no") for each in causes)


@given(st.floats(70.1, 300.0), st.floats(0.0, 200.0))
def test_further_past_the_limit_is_never_weaker(wet_um: float, more_um: float) -> None:
    def strength(wet: float) -> float:
        read = read_sign(Sign.WET_HIGH, Evidence(wet_um=wet, wet_high_um=70.0))
        assert read is not None
        return read[1]

    assert strength(wet_um) <= strength(wet_um + more_um)


@outside(
    ranked_causes.fault_named,
    kind=Kind.COPIED,
    source="FAA-H-8083-31 ch. 8: its names of the troubles",
)
@pytest.mark.parametrize(
    ("texts", "key"),
    [
        ("Poor Adhesion", "poor-adhesion"),
        ("Blushing", "blush"),
        ("Pinholes", "pinholes"),
        ("runs, Runs and sags, sags", "runs"),
        ("orange peel", "orange-peel"),
        ("Fisheyes, fisheye", "fisheyes"),
        ("Wrinkling", "wrinkling"),
        ("Spray dust", "dry-spray"),
        ("mottling and striping", "mottling"),
    ],
)
def test_names_of_the_trade(texts: str, key: str) -> None:
    for text in texts.split(", "):
        assert ranked_causes.fault_named(text).key == key
        assert rank_causes(text, Evidence())[0].cause in FAULTS[key].causes


@pytest.mark.parametrize("text", ["", "nonsense", "p"])
def test_an_unknown_fault_gets_a_sentence(text: str) -> None:
    with pytest.raises(BadInput, match=r"Did you mean one of: .+\?"):
        ranked_causes.fault_named(text)


def test_bad_figures_get_a_sentence() -> None:
    for bad in (float("nan"), float("inf")):
        with pytest.raises(BadInput, match="finite"):
            Evidence(wet_um=bad)
    with pytest.raises(BadInput):
        Evidence(thinner_unmeasured=2)  # type: ignore[arg-type]


def test_what_is_kept_to_says_at_most_or_at_least() -> None:
    """'Within 20 s' was said of an efflux time that has to be 20 s or more."""
    evidence = Evidence(
        efflux_s=21.0,
        efflux_low_s=20.0,
        efflux_high_s=24.0,
        speed_m_s=0.41,
        speed_wanted_m_s=0.42,
    )
    said = {}
    for sign in (Sign.EFFLUX_LOW, Sign.EFFLUX_HIGH, Sign.SPEED_SLOW, Sign.SPEED_FAST):
        found = read_sign(sign, evidence)
        assert found is not None and found[1] == 0.0
        said[sign] = (found[0].side, found[0].limit)
    assert said[Sign.EFFLUX_LOW] == ("at least", 20.0)
    assert said[Sign.EFFLUX_HIGH] == ("at most", 24.0)
    assert said[Sign.SPEED_SLOW] == said[Sign.SPEED_FAST] == ("about", 0.42)
