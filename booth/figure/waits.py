"""Subjects: pot life, recoat window and flash-off at today's temperature."""

from __future__ import annotations

from collections.abc import Callable

from booth.figure import shapes
from booth.figure.answer import Answer, exact, wait
from booth.figure.readers import YES_NO, Group, Quantity
from booth.figure.subject import Argument, Given, Subject, may, need
from booth.trade.result import Outside
from booth.trade.waits import flash_off, wait_by_rule, wait_by_table
from booth.trade.waits.wait_time import WaitTime

_TIME = need("time", shapes.TIME, "from the data sheet")
_AT = need("at", shapes.TEMPERATURE, "the temperature it holds for")


def _carried(
    name: str, rule: Callable[[float, float, float], WaitTime | Outside]
) -> Callable[[Given], Answer]:
    return lambda given: wait(name, rule(given["time"], given["at"], given["today"]))


def _today(whose: str) -> tuple[Argument, ...]:
    return (_TIME, _AT, need("today", shapes.TEMPERATURE, f"of the {whose} today"))


def _waterborne(given: Given) -> Answer:
    return wait(
        "flash-off",
        flash_off.waterborne_flash_off_at(
            given["time"],
            given["air"],
            given["humidity"],
            given["reference-air"],
            given["reference-humidity"],
        ),
    )


def _table(given: Given) -> Answer:
    return wait(
        "wait", wait_by_table.wait_from_table(given["rows"], given["today"], closes=given["closes"])
    )


SUBJECTS = (
    Subject(
        "pot-life",
        "pot life at today's temperature",
        _today("mix"),
        _carried("pot life", wait_by_rule.pot_life_at),
        (wait_by_rule.pot_life_at,),
        ("'4 h' at 21C 31C", "4h at 21C 50C"),
    ),
    Subject(
        "recoat-opens",
        "when the recoat window opens today",
        _today("part"),
        _carried("recoat window opens after", wait_by_rule.recoat_opens_at),
        (wait_by_rule.recoat_opens_at,),
        ("8h at 65F 75F", "8h at 75F 65F"),
    ),
    Subject(
        "recoat-closes",
        "when the recoat window closes today",
        _today("part"),
        _carried("recoat window closes after", wait_by_rule.recoat_closes_at),
        (wait_by_rule.recoat_closes_at,),
        ("24h at 21C 31C",),
    ),
    Subject(
        "flash-off",
        "flash-off today, solvent-borne",
        _today("part"),
        _carried("flash-off", flash_off.flash_off_at),
        (flash_off.flash_off_at,),
        ("10min at 23C 11C", "10min at 23C 50C", "10min at 23C 23C"),
    ),
    Subject(
        "flash-off-waterborne",
        "flash-off today, waterborne",
        (
            _TIME,
            need("air", shapes.TEMPERATURE, "today's air"),
            need("humidity", shapes.PERCENT, "today's relative humidity"),
            may("reference-air", shapes.TEMPERATURE, "of the data sheet's air", default="23C"),
            may("reference-humidity", shapes.PERCENT, "of the data sheet's air", default="50%"),
        ),
        _waterborne,
        (flash_off.waterborne_flash_off_at,),
        ("10min 20C 75%",),
    ),
    Subject(
        "wait-table",
        "a wait today, from the data sheet's own table",
        (
            need("today", shapes.TEMPERATURE, "of the part today"),
            need(
                "rows",
                Group(
                    (
                        ("temperature", Quantity(shapes.TEMPERATURE)),
                        ("time", Quantity(shapes.TIME)),
                    ),
                    2,
                ),
                "of the table, temperatures rising",
                many=True,
            ),
            may("closes", YES_NO, "a window that closes", default="no"),
        ),
        _table,
        (wait_by_table.wait_from_table,),
        ("25C 10C:80min 20C:40min 30C:20min", "20C 10C:80min 20C:40min"),
    ),
    Subject(
        "scaled",
        "a time that halves for each so many degrees warmer",
        (
            _TIME,
            need("from", shapes.TEMPERATURE, "the temperature it holds for"),
            need("to", shapes.TEMPERATURE, "the other temperature"),
            need("halves-per", shapes.DIFFERENCE, "rise that halves the time"),
        ),
        lambda given: exact(
            "time",
            wait_by_rule.scaled_s(given["time"], given["from"], given["to"], given["halves-per"]),
            shapes.TIME,
            "time x 2^((from - to) / halves-per)",
        ),
        (wait_by_rule.scaled_s,),
        ("4h from 21C to 31C 10C",),
    ),
)
