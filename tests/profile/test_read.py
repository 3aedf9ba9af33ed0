"""Every kind of fault, each with its line, its key, what was found, what was expected."""

from __future__ import annotations

import pytest

from booth.files.faults import Fault
from booth.profile.model import AtTemperature, Profile, Range, WaitRule
from booth.profile.read import read_text
from booth.profile.save import write

TOP = 'name = "A"\nsource = "sheet"\n'
FILM = "[film]\ncoats = 2\n"


def faults(text: str) -> tuple[Fault, ...]:
    answer = read_text(text, "x.toml")
    assert not isinstance(answer, Profile), "read without a fault"
    return answer


def one(text: str) -> Fault:
    found = faults(text)
    assert len(found) == 1, [str(each) for each in found]
    return found[0]


def profile(text: str) -> Profile:
    answer = read_text(text, "folder/x.toml")
    assert isinstance(answer, Profile), [str(each) for each in answer]
    return answer


def test_the_least_profile() -> None:
    read = profile(TOP + FILM)
    assert (read.key, read.name, read.source, read.film.coats) == ("x", "A", "sheet", Range(2, 2))
    assert read.mix is None
    assert read.steps == ()


def test_quantities_come_in_base_units() -> None:
    read = profile(
        TOP
        + FILM
        + 'wet = "2 to 2.5 mil"\n'
        + '[gun]\ndelivery = { low = "6 oz/min", high = "250 ml/min" }\ninlet_pressure = "2 bar"\n'
        + 'fan = "at least 10 in"\n[limits]\ndew_margin = "5 F"\nhumidity = { high = 85 }\n'
        + 'air = "-5 to 30 C"\n[waits]\nflash_off = { time = "1 h 30 min", at = "68 F" }\n'
        + 'handle.table = [{ at = "10 C", time = "2 d" }, { at = "20 C", time = "24 h" }]\n'
    )
    # A mil is 25.4 um and an inch 25.4 mm by definition; the US fluid ounce is 29.5735295625 ml
    # (NIST HB 44 App. C); a difference of 9 F is one of 5 K.
    assert read.film.wet_um == Range(50.8, 63.5)
    assert read.gun.delivery_ml_min == Range(177.441177375, 250.0)
    assert read.gun.inlet_kpa == Range(200.0, 200.0)
    assert read.gun.fan_mm == Range(254.0, None)
    assert read.limits.dew_margin_c == pytest.approx(25 / 9)
    assert read.limits.humidity_percent == Range(None, 85.0)
    assert read.limits.air_c == Range(-5.0, 30.0)
    assert read.waits.flash_off == WaitRule((AtTemperature(20.0, 5400.0),))
    assert read.waits.handle == WaitRule(
        (AtTemperature(10.0, 172800.0), AtTemperature(20.0, 86400.0))
    )


@pytest.mark.parametrize("spelling", ["Ford #4", "ford 4", "FORD4", "ford cup 4"])
def test_a_cup_is_understood_however_it_is_spelled(spelling: str) -> None:
    read = profile(f'{TOP}{FILM}[efflux]\ncup = "{spelling}"\ntarget = "20 to 22 s"\n')
    assert read.efflux is not None
    assert read.efflux.cup == "Ford #4"


# Lines put below TOP + FILM (so the first stands in line 5): line, key, found, expected or advice.
WRONG = [
    ("volume_solids = true", 5, "film.volume_solids", "found true", "a range"),
    ("volume_solids = nan", 5, "film.volume_solids", "nan", "from 1 to 100"),
    ("volume_solids = inf", 5, "film.volume_solids", "inf", "from 1 to 100"),
    ("volume_solids = 142", 5, "film.volume_solids", "142", "from 1 to 100"),
    (f"volume_solids = 1{'0' * 400}", 5, "film.volume_solids", "more than fifteen", "100"),
    ('volume_solids = "42 mil"', 5, "film.volume_solids", '"42 mil"', "measures a length"),
    ("wet = 60", 5, "film.wet", "bare number 60", "A bare number stands only where"),
    ('wet = "60"', 5, "film.wet", "without a unit", "Write the unit"),
    ('wet = "60 g"', 5, "film.wet", '"60 g"', "measures a weight"),
    ('wet = "60 umm"', 5, "film.wet", '"60 umm"', "is not a unit known here"),
    ('wet = "70 to 60 um"', 5, "film.wet", "upside down", "the lower value first"),
    ('wet = "60-70 um"', 5, "film.wet", '"60-70 um"', '"60 to 70 um"'),
    ('wet = "60 mm"', 5, "film.wet", '"60 mm"', "Check number and unit"),
    ('wet = "60 m"', 5, "film.wet", '"60 m"', "the most taken here"),
    ("wet = {}", 5, "film.wet", "neither low nor high", "a range"),
    ('wet = { low = "60 um", hig = "7 um" }', 5, "film.wet.hig", "hig", "Did you mean high?"),
    ("wet = [1]", 5, "film.wet", "a list of 1", "a range"),
    ("wet = 2024-01-02", 5, "film.wet", "the date", "a range"),
    ("wet = 07:30:00", 5, "film.wet", "the time of day", "a range"),
    (f'wet = "{"6" * 200} um"', 5, "film.wet", "203 characters", "a number and its unit"),
    ('dryy_total = "60 um"', 5, "film.dryy_total", "unknown key", "Did you mean dry_total?"),
    ('wft = "60 um"', 5, "film.wft", "unknown key", "Did you mean wet?"),
    ('delivery = "200 ml/min"', 5, "film.delivery", "unknown key", "delivery under [gun]"),
    ('reducer = "x"', 5, "film.reducer", "unknown key", "mix.thinner"),
    ('[gun]\nhvlp = "yes"', 6, "gun.hvlp", '"yes"', "true or false"),
    ('[gun]\ntip = "1.3 m"', 6, "gun.tip", '"1.3 m"', "1.4 mm"),
    ('[waits]\nflash_off = "10 min"', 6, "waits.flash_off", '"10 min"', "which temperature"),
    ('[waits]\nflash_off = { time = "10 min" }', 6, "waits.flash_off", "no at", "temperature"),
    (
        '[waits]\nflash_off.table = [\n{ at = "20 C", time = "1 h" },\n'
        '{ at = "10 C", time = "2 h" }]',
        8,
        "waits.flash_off.table[2].at",
        "colder row",
        "coldest first",
    ),
    (
        '[waits]\nflash_off.table = [\n{ at = "50 F", time = "1 h" },\n'
        '{ at = "10 C", time = "2 h" }]',
        8,
        "waits.flash_off.table[2].at",
        "same temperature again",
        "each temperature once",
    ),
    ("[waits]\nflash_off.table = []", 6, "waits.flash_off.table", "an empty list", "coldest"),
    ('[limits]\nair = "60 F"', 6, "limits.air", '"60 F"', 'Say "at least" or "at most"'),
    ('[limits]\nhumidity = "up to 85 %"', 6, "limits.humidity", "up to", '"at most 85 %"'),
    ("[limits]\nhumidity = 85", 6, "limits.humidity", "85", 'Say "at least" or "at most"'),
    ('[limits]\nhumidity = "at most 101 %"', 6, "limits.humidity", "101", "to 100"),
    ('[efflux]\ncup = "Ford #9"\ntarget = "20 s"', 6, "efflux.cup", "Ford #9", "Did you mean"),
    ('[efflux]\ncup = "4 mm"\ntarget = "20 s"', 6, "efflux.cup", "4 mm", "flow cup"),
    ('[efflux]\ncup = "Ford 4"\ntarget = "1:30"', 7, "efflux.target", "1:30", "90 s"),
    ('[efflux]\ncup = "Ford 4"', 5, "efflux.target", "found nothing", 'target = "20 to 24 s"'),
    ("[mix]\nparts = 3", 6, "mix.parts", "bare number 3", "[[mix.parts]]"),
    ('[mix]\nparts = [\n{ name = "A",\nparts = 0 }]', 0, "mix.parts[1].parts", "0", "10000"),
    ("[[mix]]", 5, "mix", "a list of 1", "[mix]"),
    ('[mix]\nby = "wieght"', 6, "mix.by", "wieght", 'Did you mean "weight"?'),
    ('[[steps]]\nkind = "effluks"', 6, "steps[1].kind", "effluks", 'Did you mean "efflux"?'),
    ('[[steps]]\nkind = "mix"\nhow = "Stir"', 7, "steps[1].how", "Stir", "square brackets"),
    ("[film.x]\ny = 1", 5, "film.x", "unknown key", "coats"),
    ("[gun]\noverlap = 0.5", 6, "gun.overlap", "0.5", "percent, not a share. Write 50."),
    ('[limits]\ntemperature = "60 to 80 F"', 6, "limits.temperature", "unknown", "mean air?"),
    (
        '[waits]\nflash_off = "4 hours at 70F"',
        6,
        "waits.flash_off",
        '"4 hours at 70F"',
        'Write { time = "4 hours", at = "70F" }.',
    ),
    (
        '[waits]\nflash_off = "soon"',
        6,
        "waits.flash_off",
        '"soon"',
        '{ time = "10 min", at = "70 F" }',
    ),
    ('[waits]\nflash_off = "10"', 6, "waits.flash_off", '"10"', '{ time = "10 min", at = "70 F" }'),
    ("[waits]\nflash_off.tabel = []", 6, "waits.flash_off.tabel", "unknown", "mean table?"),
    ('[efflux]\ncup = "Ford 4"\ntraget = "20 s"', 7, "efflux.traget", "unknown", "mean target?"),
]


@pytest.mark.parametrize(("lines", "line", "key", "found", "more"), WRONG)
def test_a_wrong_value_is_told(lines: str, line: int, key: str, found: str, more: str) -> None:
    if not line:  # newlines within { } are no TOML before its edition 1.1
        lines, line = lines.replace(",\nparts", ", parts"), 7
    fault = one(TOP + FILM + lines + "\n")
    assert (fault.file, fault.line, fault.key) == ("x.toml", line, key)
    assert found in f"found {fault.found}"
    assert more in f"{fault.expected}. {fault.advice}"


SYNTAX = [
    ("tip = 1.3 mm", "1.3 mm without quotation marks", 'tip = "1.3 mm"'),
    ("tip = 60 to 70 um", "60 to 70 um without quotation marks", 'tip = "60 to 70 um"'),
    ("tip = wide", "the words wide without quotation marks", 'tip = "wide"'),
    ("tip = 1,5", "1,5 with a comma", "a point"),
    ("tip = True", "True", "true or false, in small letters"),
    ("tip = ", "nothing after its =", "delete the line"),
    ('tip: "1.3 mm"', "a colon", "an equals sign"),
    ('tip "1.3 mm"', "no = after the key", "key = value"),
    ("tip = “1.3 mm”", "a curly quotation mark", "plain text editor"),
    ('tip = "1.3 mm', "does not end in this line", "a closing quotation mark"),
    ('tip = "1.3 mm" wide', "something more", "one key = value"),
    ('tip = "c:\\data"', "a backslash", "no backslash"),
    ('tip = "a\x07b"', "a control character", "Delete it"),
    ("just some words here", "no = after the key", "A comment begins with #"),
    ("tip = { low = 1 low = 2 }", "is not closed", "in one line"),
    ("tip = { low = 1, low = 2 }", "this key a second time", "Delete one"),
]


@pytest.mark.parametrize(("line", "found", "more"), SYNTAX)
def test_a_syntax_fault_is_told_in_a_painters_words(line: str, found: str, more: str) -> None:
    fault = one(f"{TOP}{FILM}{line}\n[gun]\nhvlp = true\n")
    assert fault.line == 5
    assert found in fault.found
    assert more in fault.expected + fault.advice


def test_syntax_faults_do_not_hide_the_rest() -> None:
    found = faults(
        'name = "A"\nsorce = "x"\n[gun]\ntip = 1.3 mm\nfan = "12 psi"\nhvlp = yes\n'
        'fan = "12 in"\n[film]\ncoats = 0\n[gun]\n'
    )
    assert [(each.line, each.key) for each in found] == [
        (2, "sorce"),
        (4, ""),
        (5, "gun.fan"),
        (6, ""),
        (7, "gun.fan"),
        (9, "film.coats"),
        (10, "gun"),
    ]
    assert "line 5" in found[4].expected
    assert "line 3" in found[6].expected


def test_all_faults_of_a_file_come_at_once_in_the_order_of_the_file() -> None:
    found = faults("[film]\ncoats = 0\n[gun]\ntip = 3\nfan = 4\n")
    assert [(each.line, each.key) for each in found] == [
        (None, "name"),
        (None, "source"),
        (2, "film.coats"),
        (4, "gun.tip"),
        (5, "gun.fan"),
    ]


def test_a_file_of_nothing_but_syntax_faults_is_given_up_with_a_word() -> None:
    found = faults("x y z\n" * 100)
    assert len(found) == 31
    assert "and more" in found[0].found
    assert [each.line for each in found[1:]] == list(range(1, 31))


def test_an_open_list_is_told_where_it_shows_and_invents_no_other_fault() -> None:
    # Seen where a key stands in place of an item; nothing after it can be told apart.
    fault = one(TOP + '[mix]\nparts = [\n  { name = "A", parts = 1 },\n[film]\ncoats = 2\n')
    assert fault.line == 6
    assert "[film] inside a list that is not closed" in fault.found
    fault = one(TOP + '[mix]\nparts = [\n  { name = "A", parts = 1 }\nby = "weight"\n')
    assert fault.line == 6
    assert "not closed" in fault.found
    assert "lines above" in fault.advice


def test_a_byte_order_mark_is_no_fault() -> None:
    assert profile("\ufeff" + TOP + FILM).name == "A"


def test_control_characters_are_kept_as_data_and_shown_in_faults() -> None:
    read = profile('name = "A\\u001b[2J"\nsource = "s"\n' + FILM)
    assert read.name == "A\x1b[2J"
    fault = one(f'{TOP}hazards = ["\\u001b[2J\\u202e"]\n{FILM}')
    assert "\x1b" not in str(fault)
    assert "\u202e" not in str(fault)
    assert "␛[2J" in str(fault)


def test_a_key_with_control_characters_is_shown() -> None:
    fault = one(f'"\\u001b]0;x\\u0007" = 1\n{TOP}{FILM}')
    assert fault.line == 1
    assert "\x1b" not in str(fault)


TOGETHER = [
    (
        '[mix]\npot_life = { time = "1 h", at = "20 C" }\n',
        "mix.pot_life",
        "no parts",
    ),
    ('[mix]\ninduction = "15 min"\n', "mix.induction", "no parts"),
    (
        '[mix]\nparts = [{ name = "A", parts = 1 }, { name = "a", parts = 2 }]\n',
        "mix.parts[2].name",
        "the same component as number 1",
    ),
    (
        '[mix.thinner]\nname = "t"\nusual = 20\nlimit = 10\n',
        "mix.thinner.usual",
        "usually 20 % with a limit of 10 %",
    ),
    (
        '[waits]\nrecoat_opens = { time = "2 h", at = "70 F" }\n'
        'recoat_closes = { time = "1 h", at = "70 F" }\n',
        "waits.recoat_closes",
        "closes before it opens",
    ),
    (
        # At 20 C the table lies on the line between its rows: (4 h + 2 h) / 2 = 3 h, above 150 min.
        '[waits]\nrecoat_closes = { time = "150 min", at = "20 C" }\n'
        'recoat_opens.table = [{ at = "10 C", time = "4 h" }, { at = "30 C", time = "2 h" }]\n',
        "waits.recoat_closes",
        "at 20 C: 3 h and 2.5 h",
    ),
    (
        '[waits]\nflash_off = { time = "2 h", at = "70 F" }\n'
        'recoat_closes = { time = "1 h", at = "70 F" }\n',
        "waits.recoat_closes",
        "before the flash-off is over",
    ),
    (
        '[waits]\ndust_free = { time = "2 h", at = "70 F" }\n'
        'handle = { time = "1 h", at = "70 F" }\n',
        "waits.handle",
        "before it is dust-free",
    ),
    ("volume_solids = 60\nsolvent_percent = 41\n", "film.solvent_percent", "60 % solids"),
    # Two coats of 100 um at 50 % leave 100 um dry; without solids no more than the wet 200 um.
    (
        'volume_solids = 50\nwet = "80 to 100 um"\ndry_total = "110 to 130 um"\n',
        "film.dry_total",
        "more dry film than 2 coats can leave, 100 um",
    ),
    (
        'wet = "80 to 100 um"\ndry_total = "at least 220 um"\n',
        "film.dry_total",
        "more dry film than 2 coats can leave, 200 um",
    ),
    # DFT = 2 x 80 um x 0.50 / 1.25 = 64 um with all the thinner there may be.
    (
        'volume_solids = 50\nwet = "80 to 100 um"\ndry_total = "50 to 60 um"\n'
        '[mix.thinner]\nname = "t"\nlimit = 25\n',
        "film.dry_total",
        "less dry film than 2 coats will leave, 64 um",
    ),
    ('[[steps]]\nkind = "cautions"\nmust = false\n', "steps[1].must", "without a word"),
]


@pytest.mark.parametrize(("lines", "key", "found"), TOGETHER)
def test_what_cannot_be_true_together_is_told(lines: str, key: str, found: str) -> None:
    fault = one(TOP + FILM + lines)
    assert fault.key == key
    assert fault.line is not None
    assert found in fault.found


def test_what_cannot_be_true_together_is_told_beside_the_other_faults() -> None:
    found = faults(
        TOP
        + "[film]\ncoats = 2\nvolume_solids = 60\nsolvent_percent = 41\nwet = 3\n"
        + '[mix]\nparts = [{ name = "A", parts = 1 }, { name = "a", parts = "2" }]\n'
        + 'pot_life = { time = "1 h", at = "20 C" }\n'
        + '[waits]\nrecoat_opens = { time = "2 h", at = "70 F" }\ndust_free = "1 h"\n'
        + 'recoat_closes = { time = "1 h", at = "70 F" }\n'
    )
    # Nothing is told of the number of parts, since one of them could not be read.
    assert [fault.key for fault in found] == [
        "film.solvent_percent",
        "film.wet",
        "mix.parts[2].parts",
        "waits.dust_free",
        "waits.recoat_closes",
    ]


def test_dry_film_is_not_judged_where_the_thinner_could_not_be_read() -> None:
    lines = (
        '[film]\ncoats = 2\nvolume_solids = 50\nwet = "80 to 100 um"\ndry_total = "50 to 60 um"\n'
    )
    assert (
        one(TOP + lines + '[mix.thinner]\nname = "t"\nlimit = "25 um"\n').key == "mix.thinner.limit"
    )


def test_half_a_percent_of_overlap_is_a_slip_however_it_is_written() -> None:
    for text, meant in (("0.5", "50"), ('"0.5 %"', "50"), ('"0.5 to 0.7"', '"50 to 70 %"')):
        fault = one(TOP + FILM + f"[gun]\noverlap = {text}\n")
        assert fault.key == "gun.overlap" and fault.advice == f"Write {meant}."
    assert profile(TOP + FILM + "[gun]\noverlap = 0\n").gun.overlap_percent == Range(0, 0)
    # A thinner of half a percent is nothing odd.
    thin = profile(TOP + FILM + '[mix.thinner]\nname = "t"\nusual = 0.5\n')
    assert thin.mix is not None and thin.mix.thinner is not None
    assert thin.mix.thinner.usual_percent == Range(0.5, 0.5) and "usual = 0.5" in write(thin)


def test_rounded_figures_of_a_data_sheet_are_no_fault() -> None:
    # Printed example (paintcenter.org, Oct 2003): 1.5 mil dry at 42 % solids is 3.57 mil wet,
    # which rounded to 3.5 gives 1.47 mil.
    profile(TOP + '[film]\ncoats = 1\nvolume_solids = 42\nwet = "3.5 mil"\ndry_total = "1.5 mil"\n')
    profile(
        TOP
        + FILM
        + '[waits]\nrecoat_opens = { time = "1 h", at = "70 F" }\n'
        + 'recoat_closes = { time = "30 min", at = "95 F" }\n'
    )


def test_the_text_of_a_fault() -> None:
    fault = one(TOP + FILM + "wet = 60\n")
    assert str(fault) == (
        "x.toml:5: film.wet: found the bare number 60; expected a range with its unit, in quotation"
        ' marks, such as "2 to 2.5 mil". A bare number stands only where a count, parts or a'
        " percentage is meant."
    )


def test_steps_of_the_file_get_keys_names_and_musts() -> None:
    read = profile(
        TOP
        + FILM
        + '[[steps]]\nkind = "weather"\n[[steps]]\nkind = "plain"\nname = "Try its age"\n'
        + '[[steps]]\nkind = "weather"\nname = "Again"\nhow = ["Look."]\nmust = false\n'
    )
    assert [(step.key, step.name, step.must, step.how) for step in read.steps] == [
        ("weather", "Weather", True, ()),
        ("try-its-age", "Try its age", False, ()),
        ("weather-2", "Again", False, ("Look.",)),
    ]
