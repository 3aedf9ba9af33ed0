"""Parts by weight beside parts by volume: mass is volume times density (ISO 80000-4); what rounding of
the digits explains is no difference."""

from __future__ import annotations

from hypothesis import assume, given
from hypothesis import strategies as st

from booth.files.faults import Fault, Faults
from booth.profile.model import Hardener, Mix, MixPart
from booth.profile.weight_consistency import judge_weights


def notes(*parts: MixPart, hardeners: tuple[Hardener, ...] = (), by: str = "volume") -> list[Fault]:
    faults = Faults("x.toml", "a coating profile")
    judge_weights(Mix(parts=parts, by=by, hardeners=hardeners), faults)
    assert not faults
    return faults.notes


BASE = MixPart("base", 4, 1.45, 100)


def test_what_rounding_explains_is_no_difference() -> None:
    # 4 x 1.45 : 1 x 0.98 is 100 : 16.90; 17 may have been 16.5 to 17.5.
    assert notes(BASE, MixPart("hardener", 1, 0.98, 17)) == []
    assert notes(BASE, MixPart("hardener", 1, 0.98, 16.9)) == []


def test_what_it_does_not_explain_is_noted_with_what_it_comes_to() -> None:
    (note,) = notes(BASE, MixPart("hardener", 1, 0.98, 18))
    assert note.note and "100 : 18 by weight" in note.text
    assert "about 100 : 16.9, which 4 : 1 by volume come to with these densities" in note.text
    # More digits, less room: 100 +- 0.5 of 1.45 +- 0.005 leave 16.7 to 17.1.
    assert notes(BASE, MixPart("hardener", 1, 0.98, 17.3)) != []
    # The weights written as volumes: 100 : 25 for 4 : 1.
    assert notes(BASE, MixPart("hardener", 1, 0.98, 25)) != []


def test_a_hardener_of_its_own_is_compared_with_what_it_takes_over() -> None:
    # 1.2 x 1.07 on 4 x 1.45 is 22.1 to 100.
    wrong, right = (
        Hardener("slow", parts=1.2, parts_by_weight=30),
        Hardener("fast", parts=1.2, parts_by_weight=22),
    )
    told = notes(BASE, MixPart("medium", 1, 1.07, 18.4), hardeners=(right, wrong))
    assert [each.text.partition(":")[0] for each in told] == ["mix.hardeners[2].parts_by_weight"]


def test_without_every_density_or_weight_there_is_nothing_to_compare() -> None:
    assert notes(BASE, MixPart("hardener", 1, None, 50)) == []
    assert notes(BASE, MixPart("hardener", 1, 0.98)) == []
    assert notes(MixPart("base", 4, 1.45, 100)) == []
    assert notes(BASE, MixPart("hardener", 1, 0.98, 50), by="weight") == []


def test_a_density_in_pounds_per_gallon_has_the_digits_it_was_typed_with() -> None:
    # 12.1 lb/gal is 1.4499 g/ml, and may have been 12.05 to 12.15: 0.4 % either way.
    pounds = 12.1 * 453.59237 / 3785.411784
    base = MixPart("base", 4, pounds, 100)
    assert notes(base, MixPart("hardener", 1, 0.98, 16.9)) == []
    assert notes(base, MixPart("hardener", 1, 0.98, 17.5)) != []


@given(
    st.integers(1, 10),
    st.floats(0.8, 2.5),
    st.floats(0.8, 2.5),
    st.integers(0, 2),
    st.integers(1, 3),
)
def test_a_sheet_that_rounds_what_is_true_is_never_noted(
    parts: int, one: float, other: float, weight_digits: int, density_digits: int
) -> None:
    weight = round(100 * other / (parts * one), weight_digits)
    assume(weight > 0)
    dense = [round(each, density_digits) for each in (one, other)]
    assert notes(MixPart("a", parts, dense[0], 100), MixPart("b", 1, dense[1], weight)) == []
