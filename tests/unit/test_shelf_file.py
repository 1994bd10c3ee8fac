"""The whole shelf file: what it says is read, and what cannot stand is refused where it stands."""

from __future__ import annotations

import json
import math
import re
from pathlib import Path

import pytest
from tests.unit.job_texts import SMALL

from borewright.errors import RefusedInput, UnknownName
from borewright.job import (
    Machine,
    OwnDog,
    OwnGauge,
    OwnHammer,
    OwnPress,
    OwnReamer,
    OwnVice,
    Shelf,
    merge_shelf,
    parse_job,
    parse_shelf,
)
from borewright.job.schema import shelf_schema

ROOT = Path(__file__).parents[2]
TWO_LATHES = """
[[lathe]]
name = "The small lathe"
speeds = ["120rpm", "300rpm"]
power_by_gear = ["300W", "550W"]
dial = "radius"

[[lathe]]
name = "the larger lathe"
use = true
speeds = ["60rpm"]
swing_over_cross_slide = "240mm"
dial = "diameter"
"""
TWO_PRESSES = """
[[press]]
name = "the lever press"
kind = "arbor press 1 ton"
daylight = "10in"
table_slot = "1 1/2in"

[[press]]
name = "the jack press"
kind = "hydraulic shop press"
force = "100kN"
throat = "150mm"
ram_travel = "200mm"
"""
TOOLS = """
units = "mm"
[[mandrel]]
size = 16
marks = "H2"
hardness = "soft"
flats = "large"
condition = "worn"
place = "drawer 2"
[vice]
opening = 150
force = "9kN"
[hammer]
mass = "0.9kg"
face = "hide"
[[dog]]
name = "bent"
smallest = "1/4in"
largest = 19.05
tail = "bent"
[[reamer]]
name = "hand"
size = "5/8in"
cuts = "-0.0002in"
[[reamer]]
size = 12
cuts = 0
[[gauge]]
kind = "bore gauge"
uncertainty = 0.005
range = [18, 35]
"""


def shelf(text: str) -> Shelf:
    return parse_shelf(text, "shelf.toml")


def refusal(text: str, kind: type[RefusedInput] = RefusedInput) -> str:
    with pytest.raises(kind) as caught:
        shelf(text)
    message = str(caught.value)
    assert message.startswith("shelf.toml: ")
    assert message.isprintable()
    return message.removeprefix("shelf.toml: ")


def test_the_lathe_that_says_so_is_used() -> None:
    read = shelf(TWO_LATHES)
    assert [m.name for m in read.lathes] == ["The small lathe", "the larger lathe"]
    assert read.machine is read.lathes[1]
    assert read.lathes[0].power_by_gear == (300.0, 550.0)
    assert [m.dial for m in read.lathes] == ["radius", "diameter"]


def test_else_the_first_lathe_is_used() -> None:
    read = shelf(TWO_LATHES.replace("use = true", "use = false"))
    assert read.machine is read.lathes[0]


def test_a_single_machine_stays_the_single_lathe() -> None:
    read = shelf('[machine]\nname = "one"\nspeeds = ["60rpm"]')
    assert (read.machine, read.lathes) == (Machine("one", (1.0,)), ())


def test_the_first_press_is_used_by_the_name_that_the_tables_know() -> None:
    read = shelf(TWO_PRESSES)
    assert (read.press, read.press_force) == ("arbor press 1 ton", None)
    assert read.presses[0] == OwnPress(
        "the lever press", "arbor press 1 ton", daylight=0.254, table_slot=0.0381
    )
    assert read.presses[1].throat == 0.15
    assert read.presses[1].ram_travel == 0.2


def test_a_single_press_is_the_shelfs_own_until_it_says_more() -> None:
    plain = shelf('[press]\nname = "arbor press"\nforce = "5kN"')
    assert (plain.press, plain.press_force, plain.presses) == ("arbor press", 5000.0, ())
    more = shelf('[press]\nname = "arbor press"\ndaylight = "250mm"')
    assert more.presses == (OwnPress("arbor press", daylight=0.25),)
    assert more.press == "arbor press"


def test_the_small_tools_are_read_in_si() -> None:
    read = shelf(TOOLS)
    note = read.mandrels[0]
    said = (note.marks, note.hardness, note.flats, note.condition, note.place)
    assert said == ("H2", "soft", "large", "worn", "drawer 2")
    assert read.vice == OwnVice(0.15, 9000.0)
    assert read.hammer == OwnHammer(0.9, "hide")
    assert read.dogs == (OwnDog("bent", 0.00635, 0.01905, "bent"),)
    assert read.reamers == (OwnReamer(0.015875, "hand", -5.08e-06), OwnReamer(0.012, cuts=0.0))
    assert read.gauges == (OwnGauge("bore gauge", 5e-06, 0.018, 0.035),)


def test_a_tool_that_is_only_there_is_there() -> None:
    read = shelf("[vice]\n[hammer]\n[[dog]]\n[[press]]\n[[lathe]]")
    assert (read.vice, read.hammer, read.dogs) == (OwnVice(), OwnHammer(), (OwnDog(),))
    assert (read.presses, read.lathes) == ((OwnPress(),), (Machine(),))


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("[[lathe]]\nspeed = 3", "[lathe[1]] speed: found 'speed'; allowed is 'speeds' or one of"),
        ("[[press]]\ndaylit = 3", "[press[1]] daylit: found 'daylit'; allowed is 'daylight' or"),
        ("[press]\ndaylit = 3", "[press] daylit: found 'daylit'; allowed is 'daylight' or"),
        ("[vice]\nopens = 3", "[vice] opens: found 'opens'; allowed is 'opening' or"),
        ("[hammer]\nmas = 3", "[hammer] mas: found 'mas'; allowed is 'mass' or"),
        ("[[dog]]\nlargets = 3", "[dog[1]] largets: found 'largets'; allowed is 'largest' or"),
        ("[[reamer]]\nsise = 3", "[reamer[1]] sise: found 'sise'; allowed is 'size' or"),
        ("[[gauge]]\nrang = 3", "[gauge[1]] rang: found 'rang'; allowed is 'range' or"),
        ("[[latch]]\n", "latch: found 'latch'; allowed is 'lathe' or"),
        ('[[mandrel]]\nsize = "5mm"\nmark = "x"', "[mandrel[1]] mark: found 'mark'; allowed is 'm"),
    ],
)
def test_an_unknown_key_is_refused_with_the_nearest(text: str, says: str) -> None:
    assert refusal(text, UnknownName).startswith(says)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("press = 3", "press: found 3; allowed is a table of keys"),
        ("lathe = 3", "lathe: found 3; allowed is a list in square brackets"),
        ("dog = {}", "dog: found a table; allowed is a list in square brackets"),
        ("vice = 'yes'", "vice: found 'yes'; allowed is a table of keys"),
        ("[[lathe]]\nuse = 'yes'", "lathe[1].use: found 'yes'; allowed is true or false"),
        ("[[lathe]]\nuse = 1", "lathe[1].use: found 1; allowed is true or false"),
        ("[[lathe]]\ndial = 'both'", "lathe[1].dial: found 'both'; allowed is 'radius', 'diam"),
        ("[machine]\ndial = 2", "machine.dial: found 2; allowed is 'radius', 'diameter' or"),
        ("[[dog]]\ntail = 'long'", "dog[1].tail: found 'long'; allowed is 'bent', 'straight' or"),
        ("mandrel = [{size = '5mm', flats = 'two'}]", "mandrel[1].flats: found 'two'; allowed is"),
        ("mandrel = [{size = '5mm', hardness = '60'}]", "mandrel[1].hardness: found '60'; allowe"),
        ("mandrel = [{size = '5mm', marks = 5}]", "mandrel[1].marks: found 5; allowed is one line"),
        ('mandrel = [{size = "5mm", place = "a\\nb"}]', "mandrel[1].place: found"),
        ("[[reamer]]\nname = 'x'", "reamer[1].size: found nothing; allowed is a value here, it is"),
        ("[[gauge]]\nrange = ['1mm', '2mm']", "gauge[1].kind: found nothing; allowed is a value"),
        ("[[gauge]]\nkind = 'x'\nrange = ['1mm']", "gauge[1].range: found a list of 1; allowed is"),
        ("[[gauge]]\nkind = 'x'\nrange = [1, 2, 3]", "gauge[1].range: found a list of 3; allowed"),
        ("[[press]]\nforce = '5mm'", "press[1].force: found 5mm, which is a length"),
        ("[[press]]\n[[press]]\nthroat = 'x'", "press[2].throat: found x; allowed is a length"),
        ("[[press]]\nram_travel = 5", "press[1].ram_travel: found 5, which could be 5 mm"),
        ("[[press]]\ntable_slot = '0mm'", "press[1].table_slot: found 0mm"),
        ("[[press]]\ndaylight = '-1mm'", "press[1].daylight: found -1mm"),
        ("[vice]\nopening = '5N'", "vice.opening: found 5N, which is a force"),
        ("[vice]\nforce = '5kg'", "vice.force: found 5kg, which is a mass"),
        ("[hammer]\nmass = '5N'", "hammer.mass: found 5N, which is a force"),
        ("[[dog]]\nsmallest = 'x'", "dog[1].smallest: found x"),
        ("[[lathe]]\nspeeds = ['60rpm', 'x']", "lathe[1].speeds[2]: found x"),
        ("[[lathe]]\nfeeds = ['5N']", "lathe[1].feeds[1]: found 5N"),
        ("[[lathe]]\nbetween_centres = 'x'", "lathe[1].between_centres: found x"),
        ("[[lathe]]\nspeeds = ['1rpm']\npower_by_gear = ['x']", "lathe[1].power_by_gear[1]: fou"),
        ("[[reamer]]\nsize = '5mm'\ncuts = '5kN'", "reamer[1].cuts: found 5kN"),
        ("[[gauge]]\nkind = 'x'\nuncertainty = '0mm'", "gauge[1].uncertainty: found 0mm"),
    ],
)
def test_a_value_of_the_wrong_kind_is_refused_where_it_stands(text: str, says: str) -> None:
    assert refusal(text).startswith(says)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        (
            "[[dog]]\nsmallest = '20mm'\nlargest = '20mm'",
            "dog[1]: found 20.000 mm (0.7874 in) to 20.000 mm (0.7874 in); allowed is a range from",
        ),
        (
            "[[gauge]]\nkind = 'x'\nrange = ['35mm', '18mm']",
            "gauge[1].range: found 35.000 mm (1.3780 in) to 18.000 mm",
        ),
        (
            "[[reamer]]\nsize = '12mm'\ncuts = '12.01mm'",
            "reamer[1].cuts: found 12.01mm; allowed is how far over (+) or under (-) its size",
        ),
        (
            "[[lathe]]\nspeeds = ['60rpm']\npower_by_gear = ['1kW', '2kW']",
            "lathe[1].power_by_gear: found 2 powers beside 1 speeds; allowed is one power for each",
        ),
        (
            "[machine]\npower_by_gear = ['1kW']",
            "machine.power_by_gear: found 1 powers beside 0 speeds; allowed is one power for each",
        ),
        (
            "[machine]\n[[lathe]]",
            "machine: found both [machine] and [[lathe]]; allowed is [machine] for one lathe",
        ),
        (
            "[[lathe]]\nuse = true\n[[lathe]]\n[[lathe]]\nuse = true",
            "lathe[3].use: found use = true on 2 lathes; allowed is use = true on one lathe",
        ),
        (
            "[[lathe]]\nbetween_centers = '1m'\nbetween_centres = '1m'",
            "lathe[1]: found both `between_centers` and `between_centres`; allowed is one of the",
        ),
    ],
)
def test_what_contradicts_itself_is_refused(text: str, says: str) -> None:
    assert refusal(text).startswith(says)


def test_more_than_a_shelf_can_hold_is_refused() -> None:
    assert refusal("[[dog]]\n" * 201).startswith("dog: found a list of 201; allowed is at most 200")


# Under a job


def job(more: str) -> str:
    return f"{SMALL}\n{more}"


def under(more: str, text: str) -> Shelf:
    return merge_shelf(parse_job(job(more), "job.toml"), shelf(text)).shelf


def test_a_job_that_says_nothing_gets_the_whole_shelf() -> None:
    text = TOOLS + TWO_LATHES + TWO_PRESSES
    assert under("", text) == shelf(text)


def test_a_job_that_names_a_lathe_gets_that_one() -> None:
    machine = under('[machine]\nname = "the SMALL  lathe"', TWO_LATHES).machine
    assert machine.speeds == (2.0, 5.0)
    assert machine.power_by_gear == (300.0, 550.0)
    assert machine.dial == "radius"


def test_a_lathe_that_the_shelf_does_not_list_borrows_nothing() -> None:
    machine = under('[machine]\nname = "a friend\'s lathe"', TWO_LATHES).machine
    assert machine == Machine("a friend's lathe")


def test_a_job_with_speeds_of_its_own_borrows_no_powers_for_them() -> None:
    machine = under('[machine]\nname = "the small lathe"\nspeeds = ["90rpm"]', TWO_LATHES).machine
    assert (machine.speeds, machine.power_by_gear) == ((1.5,), ())


def test_a_job_that_names_a_press_gets_that_one() -> None:
    merged = under('[hold]\npress = "the jack press"', TWO_PRESSES)
    assert (merged.press, merged.press_force) == ("the jack press", 100e3)
    lever = under('[hold]\npress = "the lever press"', TWO_PRESSES)
    assert (lever.press, lever.press_force) == ("arbor press 1 ton", None)
    stated = under('[hold]\npress = "the lever press"\npress_force = "4kN"', TWO_PRESSES)
    assert (stated.press, stated.press_force) == ("the lever press", 4000.0)


def test_a_press_of_the_job_does_not_get_the_force_of_another() -> None:
    merged = under('[hold]\npress = "bench vice"', '[press]\nname = "big"\nforce = "90kN"')
    assert (merged.press, merged.press_force) == ("bench vice", None)


# Documents


def test_the_guide_names_every_key_of_the_shelf() -> None:
    guide = (ROOT / "docs" / "job-file.md").read_text(encoding="utf-8")
    shelf_part = guide[guide.index("## A shelf") :]
    tables = [shelf_schema(), *shelf_schema()["$defs"].values()]
    keys = {key for table in tables for key in table["properties"]}
    stations = {"at"}
    unnamed = {k for k in keys - stations if not re.search(rf"\b{k}\b", shelf_part)}
    assert unnamed <= {"between_centres"}


def test_the_example_shelf_has_two_lathes_and_plans_with_the_small_one() -> None:
    text = (ROOT / "examples" / "hollow-brook-shelf.toml").read_text(encoding="utf-8")
    read = shelf(text)
    assert read.machine.name == "the small lathe"
    counts = [len(t) for t in (read.lathes, read.presses, read.dogs, read.reamers, read.gauges)]
    assert counts == [2, 2, 2, 1, 2]
    assert math.isclose(read.lathes[1].power_by_gear[5], 1300.0)


def test_the_published_schema_is_written_as_json_is() -> None:
    text = (ROOT / "docs" / "schemas" / "shelf.schema.json").read_text(encoding="utf-8")
    assert text == json.dumps(shelf_schema(), indent=2, ensure_ascii=False) + "\n"
