"""Which keys go with which kind of cut, and what a grinding or gear cut cannot be."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.unit.job_refused import refusal
from tests.unit.job_texts import SMALL

from borewright.errors import RefusedInput
from borewright.job import CutWish, parse_job
from borewright.job.write import job_text
from borewright.reference.library import Tables
from borewright.service.planned import plan

GEAR = {"kind": '"gear"', "teeth": "24", "module": '"2mm"'}
GRIND = {"kind": '"grind"'}
TURN = {"kind": '"turn"'}


def with_cut(base: dict[str, str], **changes: str | None) -> str:
    keys: dict[str, str | None] = {**base, **changes}
    lines = "\n".join(f"{key} = {value}" for key, value in keys.items() if value is not None)
    return f"{SMALL}\n[[cut]]\n{lines}\n"


@pytest.mark.parametrize(
    ("base", "key", "value", "says"),
    [
        (TURN, "teeth", "24", "cut[1].teeth: found teeth in a cut of kind turn; allowed is one of"),
        (TURN, "wheel_speed", '"30m/s"', "cut[1].wheel_speed: found wheel_speed in a cut of kind"),
        (TURN, "coolant", "true", "cut[1].coolant: found coolant in a cut of kind turn"),
        (GRIND, "edge_angle", '"90deg"', "cut[1].edge_angle: found edge_angle in a cut of kind gr"),
        (GRIND, "module", '"2mm"', "cut[1].module: found module in a cut of kind grind; allowed"),
        (GRIND, "cutter_teeth", "12", "cut[1].cutter_teeth: found cutter_teeth in a cut of kind"),
        (GEAR, "nose_radius", '"0mm"', "cut[1].nose_radius: found nose_radius in a cut of kind ge"),
        (GEAR, "wheel_speed", '"30m/s"', "cut[1].wheel_speed: found wheel_speed in a cut of kind"),
        (GEAR, "teeth", None, "cut[1].teeth: found nothing; allowed is the number of teeth"),
        (GEAR, "module", None, "cut[1]: found neither module nor pitch; allowed is one of module"),
        (GEAR, "diametral_pitch", "10", "cut[1]: found both module and diametral_pitch; allowed"),
        (GEAR, "teeth", "5", "cut[1].teeth: found 5; allowed is 6 or more"),
        (GEAR, "teeth", "24.5", "cut[1].teeth: found 24.5; allowed is a whole number"),
        (GEAR, "teeth", "true", "cut[1].teeth: found true; allowed is a whole number"),
        (GEAR, "module", '"30mm"', "cut[1].module: found 30mm; allowed is a module from 0.2mm"),
        (GEAR, "module", '"2kN"', "cut[1].module: found 2kN, which is a force"),
        (GEAR, "cutter_teeth", "2", "cut[1].cutter_teeth: found 2; allowed is 4 or more"),
        (GRIND, "wheel_speed", '"1500rpm"', "cut[1].wheel_speed: found 1500rpm; allowed is the s"),
        (GRIND, "wheel_speed", '"100m/s"', "cut[1].wheel_speed: found 100m/s; allowed is the spe"),
        (GRIND, "coolant", '"yes"', "cut[1].coolant: found 'yes'; allowed is true or false"),
    ],
)
def test_a_key_of_another_kind_or_a_value_no_cut_has_is_refused(
    base: dict[str, str], key: str, value: str | None, says: str
) -> None:
    assert refusal(with_cut(base, **{key: value})).startswith(f"job.toml: {says}")


@pytest.mark.parametrize("pitch", ["nan", "1.5", "true", '"10"', "200"])
def test_a_pitch_is_a_number_that_a_shop_has_cutters_for(pitch: str) -> None:
    text = with_cut(GEAR, module=None, diametral_pitch=pitch)
    assert refusal(text).startswith("job.toml: cut[1].diametral_pitch: found ")


def test_a_bare_module_is_in_millimetres_whatever_the_units() -> None:
    text = 'units = "inch"\n' + with_cut(GEAR, module="2")
    assert parse_job(text, "job.toml").cuts[0].module == pytest.approx(0.002)


def gear_on(outside: str, finished: str = "", **changes: str) -> str:
    """A blank of mild steel, 16 mm bore."""
    done = f'finished = {{outside = "{finished}"}}\n' if finished else ""
    work = f'[work]\nmaterial = "mild steel"\nbore = "16.006mm"\noutside = "{outside}"\nlength = "25mm"\n'
    keys = {**GEAR, **changes}
    cut = "\n".join(f"{key} = {value}" for key, value in keys.items())
    return f'{work}{done}[hold]\nmandrels = ["16mm"]\n[[cut]]\n{cut}\n'


@pytest.mark.parametrize(
    ("text", "says"),
    [
        (gear_on("51mm"), "cut[1].teeth: found 24 teeth of module 2 on an outside of 51 mm"),
        (gear_on("60mm", "55mm"), "cut[1].teeth: found 24 teeth of module 2 on an outside of 55"),
        (gear_on("52mm", cutter_diameter='"12mm"'), "cut[1].cutter_diameter: found 12 mm"),
        (gear_on("52mm", depth='"6mm"'), "cut[1].depth: found 6 mm"),
        (gear_on("52mm", feed='"2mm"'), "cut[1].feed: found 2 mm"),
        (
            gear_on("52mm").replace("mild steel", "o1 hardened"),
            "cut[1].kind: found a form cutter in",
        ),
        (
            gear_on("52mm").replace(GEAR["kind"], '"grind"').replace('teeth = 24\nmodule = "2mm"', "")
            .replace("mild steel", "maple"),
            "cut[1].kind: found grinding of hard maple",
        ),
        (
            gear_on("52mm").replace(GEAR["kind"], '"grind"')
            .replace('teeth = 24\nmodule = "2mm"', 'depth = "0.5mm"'),
            "cut[1].depth: found 0.5 mm",
        ),
        (
            gear_on("52mm").replace(GEAR["kind"], '"grind"').replace('teeth = 24\nmodule = "2mm"', "")
            .replace("mild steel", "az31"),
            "cut[1].kind: found grinding of wrought magnesium",
        ),
    ],
)  # fmt: skip
def test_a_cut_that_cannot_be_on_this_blank_is_refused_with_its_place(text: str, says: str) -> None:
    with pytest.raises(RefusedInput) as caught:
        plan(parse_job(text, "job.toml"), source_tables=Tables())
    assert str(caught.value).startswith(says)


SIZES = st.floats(1e-6, 1e-4)
GRINDS = st.builds(
    CutWish,
    kind=st.just("grind"),
    depth=st.none() | SIZES,
    feed=st.none() | SIZES,
    speed=st.none() | st.floats(0.1, 2.0),
    wheel_speed=st.none() | st.floats(5.0, 60.0),
    coolant=st.none() | st.booleans(),
)
GEARS = st.builds(
    CutWish,
    kind=st.just("gear"),
    depth=st.none() | SIZES,
    feed=st.none() | SIZES,
    spindle_speed=st.none() | st.floats(0.1, 10.0),
    teeth=st.integers(6, 400),
    cutter_diameter=st.none() | st.floats(0.03, 0.2),
    cutter_teeth=st.none() | st.integers(4, 60),
)
PITCHES = st.one_of(
    st.floats(0.0002, 0.013).map(lambda m: (m, None)), st.floats(2, 120).map(lambda p: (None, p))
)


@given(GRINDS, GEARS, PITCHES)
def test_a_written_load_reads_back_as_the_equal_one(
    grind: CutWish, gear: CutWish, pitch: tuple[float | None, float | None]
) -> None:
    gear = replace(gear, module=pitch[0], diametral_pitch=pitch[1])
    job = replace(parse_job(SMALL, "job.toml"), cuts=(grind, gear))
    assert parse_job(job_text(job), "again.toml") == job
