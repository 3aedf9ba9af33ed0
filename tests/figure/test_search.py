"""Any plain word of the trade finds its subject: the word, and what it should lead to."""

from __future__ import annotations

import pytest

from booth.figure.search import _words, meant_by
from tests.figure.ask import SUBJECTS, ask, run

#: A word one would try, and the subjects of which one is right; the first is the one to be led to
#: first. Written down before the search was made; which is right is common practice, no source.
WORDS = """
dew             dew-point dew-margin
cup             viscosity which-cup
wft             wet-film
dft             dry-film
wet             wet-film
pot             pot-life
air             fresh-air air-changes
cfm             trigger-duty hold
compressor      hold recovery
lel             solvent dilution-air
voc             voc-of-coating volatile
ratio           mix mix-shares
ford            viscosity equivalent
humidity        weather dew-point
ventilation     fresh-air required-exhaust
reducer         thinner same-cup
spreading-rate  coverage
coverage        coverage
thinner         thinner
viscosity       viscosity
zahn            viscosity equivalent
overlap         pitch evenness
speed           speed
pace            speed
fan             pitch passes-for-width
delivery        delivery
catch           delivery
flow            delivery
tack            wait-from-table flash-off
flash           flash-off
recoat          recoat-opens recoat-closes
potlife         pot-life
hardener        mix
activator       mix
mil             wet-film dry-film
microns         wet-film dry-film
solids          dry-film wet-film
waste           efficiency material
transfer        efficiency
efficiency      efficiency
hose            receiver-needed
pressure        receiver-needed hold
inlet           receiver-needed
receiver        hold free-air-stored
tank            hold free-air-stored
exhaust         required-exhaust face-velocity
makeup          fresh-air required-exhaust
booth           required-exhaust face-velocity
face-velocity   face-velocity
temperature     weather dew-point
dewpoint        dew-point
ppm             vapour-by-volume vapour
vapour          vapour
vapor           vapour
solvent         solvent
acetone         solvent
amount          material mix
litres          material mix
gallons         material mix
mix             mix
weight          mix
grams           mix
density         mixed-density
film            wet-film dry-film
thickness       wet-film dry-film
area            rectangle-area sheet-area
"""
PAIRS = [
    (word, [name for name in right if name in SUBJECTS])
    for word, *right in map(str.split, WORDS.strip().splitlines())
]


def test_at_least_sixty_of_sixty_six_words_lead_to_the_right_subject_first() -> None:
    assert len(PAIRS) == 66
    wrong = []
    for word, right in PAIRS:
        meant = meant_by(word, SUBJECTS)
        if not meant.subjects or meant.subjects[0] != right[0] or len(meant.subjects) > 6:
            wrong.append((word, meant.subjects))
    assert len(wrong) <= 6, wrong


@pytest.mark.parametrize(("word", "right"), PAIRS)
def test_each_word_leads_to_a_right_subject(word: str, right: list[str]) -> None:
    code, out, err = run([word])
    if code == 0:  # a solvent's name is a whole question
        assert word in out
        return
    assert (code, out) == (2, "")
    named = set(err.replace("'", " ").replace(":", " ").split())
    assert named & set(right)
    if "may mean" in err:
        assert err.index(right[0]) == min(err.index(each) for each in right if each in err)
        assert f"booth figure {right[0]} " in err


def test_every_word_of_the_table_leads_to_a_subject() -> None:
    for word, names in _words().items():
        assert set(names) & set(SUBJECTS), word
        assert meant_by(word, SUBJECTS).subjects, word


def test_a_word_that_means_one_subject_is_that_subject() -> None:
    assert ask("wft 1.5mil 42%") == ask("wet-film 1.5mil 42%")
    assert ask("dewpoint 72F 60%") == ask("dew-point 72F 60%")
    assert ask("acetone")["values"]["name"] == "acetone"
    assert ask("fisheyes")["subject"] == "fault"
    assert run(["dewpoint", "--help"])[1] == run(["dew-point", "--help"])[1]


def test_a_word_that_may_mean_several_is_refused_with_them() -> None:
    found = ask("dew 72F 60%", code=2)
    assert found["subjects"][:2] == ["dew-point", "dew-margin"]


@pytest.mark.parametrize("word", ["", "-x", "zzz", "☃", "a", "\x1b[2J", "x" * 5000])
def test_a_word_that_means_nothing_is_refused(word: str) -> None:
    code, out, err = run([word])
    assert (code, out) == (2, "")
    assert "\x1b" not in err
    assert "There is no subject" in err
