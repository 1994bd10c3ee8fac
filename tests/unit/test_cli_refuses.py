"""Everything the command line refuses: exit 2, nothing on stdout, one line that says what to do."""

from __future__ import annotations

from pathlib import Path

import pytest
from tests.cli_run import CUT, FIT, ran, refused, words

ROOT = Path(__file__).parents[2]
JOB = str(ROOT / "examples" / "hollow-brook-drive-wheel.toml")

FIT_REFUSED = {
    "no bore": ({"bore": None}, "--bore: found nothing"),
    "a bare bore": ({"bore": "18"}, "--bore: found 18, which could be 18 mm"),
    "a bore in words": ({"bore": "wide"}, "--bore: found"),
    "a bore of nothing": ({"bore": "0mm"}, "--bore: found"),
    "a bore below nothing": ({"bore": "-18mm"}, "--bore: found"),
    "a bore that is not a number": ({"bore": "nan mm"}, "--bore: found"),
    "a bore without end": ({"bore": "1e999mm"}, "--bore: found"),
    "a force for a bore": ({"bore": "18N"}, "--bore: found"),
    "no outside": ({"outside": None}, "--outside: found nothing"),
    "an outside inside the bore": ({"outside": "10mm"}, "--outside: found 10mm; allowed is more"),
    "an outside that is the bore": ({"outside": "18.01mm"}, "--outside: found"),
    "no length": ({"length": None}, "--length: found nothing"),
    "no mandrel": ({"mandrel": None}, "--mandrel: found nothing"),
    "no material": ({"material": None}, "--material: found nothing"),
    "an unknown material": ({"material": "gray-irn-30"}, "allowed is 'gray-iron-30' or one of"),
    "no setting": ({"travel": None}, "--travel, --position, --push: found none of them"),
    "two settings": ({"push": "1kN"}, "--travel, --position, --push: found --travel and --push"),
    "three settings": (
        {"push": "1kN", "position": "60mm"},
        "found --travel and --position and --push",
    ),
    "travel below nothing": ({"travel": "-3mm"}, "--travel: found"),
    "push as a length": ({"travel": None, "push": "3mm"}, "--push: found"),
    "a bare push": ({"travel": None, "push": "300"}, "--push: found"),
    "no push at all": ({"travel": None, "push": "0N"}, "--push: found"),
    "a taper of nothing": ({"taper": "0"}, "--taper: found"),
    "a taper that leans back": ({"taper": "-0.0005"}, "--taper: found"),
    "a steep taper": ({"taper": "3"}, "--taper: found"),
    "friction below nothing": ({"friction": "-0.1"}, "--friction: found"),
    "friction past belief": ({"friction": "40"}, "--friction: found"),
    "friction with a unit": ({"friction": "0.1mm"}, "--friction: found"),
    "a ratio of half and more": ({"work_poisson": "0.6"}, "--work-poisson: found"),
    "a modulus of nothing": ({"work_modulus": "0GPa"}, "--work-modulus: found"),
    "a modulus as a force": ({"mandrel_modulus": "207kN"}, "--mandrel-modulus: found"),
    "roughness below nothing": ({"roughness": "-1um"}, "--roughness: found"),
    "ground length of nothing": ({"ground_length": "0mm"}, "--ground-length: found"),
    "a small end in words": ({"small_end": "small"}, "--small-end: found"),
    "a model not known": (
        {"model": "cubes"},
        "--model: found 'cubes'; allowed is rings or contact",
    ),
    "units we do not know": ({"units": "cubits"}, "--units: found 'cubits'; allowed is inch or mm"),
    "outline beside a length": (
        {"outline": "0,30mm,40mm"},
        "--outline: found --outside or --length beside it",
    ),
}
OUTLINE_REFUSED = {
    "nothing": ("", "--outline: found nothing"),
    "only separators": (" ; ;", "--outline: found nothing"),
    "two values": ("0mm,30mm", "--outline piece 1: found 2 values"),
    "five values": ("0mm,30mm,40mm,20mm,1mm", "--outline piece 1: found 5 values"),
    "a bare number": ("0,30,40mm", "--outline piece 1 to: found 30"),
    "an empty value": ("0mm,,40mm", "--outline piece 1 to: found"),
    "an end before its start": ("20mm,10mm,40mm", "--outline"),
    "an outside in the bore": ("0mm,30mm,10mm", "--outline"),
    "an inside past its outside": ("0mm,30mm,40mm; 0mm,30mm,50mm,60mm", "--outline"),
    "nothing on the bore": ("0mm,30mm,40mm,30mm", "--outline"),
}
CUT_REFUSED = {
    "no diameter": ({"diameter": None}, "--diameter: found nothing"),
    "no depth": ({"depth": None}, "--depth: found nothing"),
    "no feed": ({"feed": None}, "--feed: found nothing"),
    "no speed": ({"speed": None}, "--speed: found nothing"),
    "no material": ({"material": None}, "--material: found nothing"),
    "an unknown material": ({"material": "cheese"}, "found 'cheese'; allowed is one of"),
    "a cut past the middle": ({"depth": "31mm"}, "--depth: found 31mm; allowed is less than half"),
    "a cut to the middle": ({"depth": "30mm"}, "--depth: found 30mm"),
    "a bare speed": ({"speed": "90"}, "--speed: found"),
    "no speed at all": ({"speed": "0rpm"}, "--speed: found"),
    "an edge angle of nothing": ({"edge_angle": "0deg"}, "--edge-angle: found"),
    "an edge past square": ({"edge_angle": "95deg"}, "--edge-angle: found 95deg; allowed is above"),
    "a bare edge angle": ({"edge_angle": "90"}, "--edge-angle: found"),
    "a nose below nothing": ({"nose_radius": "-1mm"}, "--nose-radius: found"),
}
WORDS_REFUSED = {
    "no such command": (["fitt"], "command: found 'fitt'; allowed is 'fit' or one of"),
    "no such option": (["--verbose"], "--verbose: found no such option; allowed is one of"),
    "no such option of fit": (["fit", "--bor", "1in"], "--bor: found no such option"),
    "an option with nothing after it": (["fit", "--bore"], "--bore: found nothing after it"),
    "one word too many": (["reference", "friction", "x"], "arguments: found unexpected extra"),
    "fit with nothing": (["fit"], "--bore: found nothing"),
    "cut with nothing": (["cut"], "found nothing"),
    "plan with nothing": (["plan"], "JOB_FILE: found nothing"),
    "a table we do not have": (["reference", "frictoin"], "allowed is 'friction' or one of"),
    "a job that is not there": (["plan", "not-there.toml"], "not-there.toml: found no such file"),
    "a shelf that is not there": (["plan", JOB, "--shelf", "none.toml"], "none.toml: found"),
    "a folder for a job": (["plan", str(ROOT / "examples")], "examples: found"),
    "a paper we do not know": (["plan", JOB, "--paper", "b5"], "--paper: found 'b5'"),
    "a way we do not know": (["plan", JOB, "--use", "magic glue"], "magic glue"),
    "a sheet in no folder": (["plan", JOB, "--sheet", "no/such/folder/a.pdf"], "a.pdf: found"),
    "a drawing in no folder": (["plan", JOB, "--drawing", "no/such/folder/a.svg"], "a.svg: found"),
    "hostile letters": (["fit", "--bore", "18\x1b[31mmm\n\r\x00"], "--bore: found"),
    "letters that are not text": (["fit", "--bore", "18\udcff"], "--bore: found"),
}
ASK_REFUSED = {
    "a bore in words": ("wide\n", "bore: found"),
    "a bare bore": ("16\n", "bore: found 16, which could be"),
    "an unknown gauge": ("16mm by eyesight\n", "found 'eyesight'"),
    "a bare outside": ("16mm\n60\n", "outside: found 60"),
    "an outside inside the bore": ("16mm\n10mm\n\n\n\n\n", "outside: found"),
    "an unknown material": ("16mm\n60mm\n20mm\ncheese\n", "found 'cheese'"),
    "neither bar nor casting": ("16mm\n60mm\n20mm\nbrass\nforging\n", "bar or casting: found"),
    "a bare mandrel": ("16mm\n60mm\n20mm\nbrass\nbar\n16\n", "mandrels: found 16"),
}


@pytest.mark.parametrize(("changes", "says"), FIT_REFUSED.values(), ids=FIT_REFUSED)
def test_fit_refuses(changes: dict[str, str | None], says: str) -> None:
    assert says in refused("fit", *words(FIT, **changes))


@pytest.mark.parametrize(("outline", "says"), OUTLINE_REFUSED.values(), ids=OUTLINE_REFUSED)
def test_fit_refuses_an_outline_of(outline: str, says: str) -> None:
    asked = words(FIT, outside=None, length=None, outline=outline)
    assert says in refused("fit", *asked)


@pytest.mark.parametrize(("changes", "says"), CUT_REFUSED.values(), ids=CUT_REFUSED)
def test_cut_refuses(changes: dict[str, str | None], says: str) -> None:
    assert says in refused("cut", *words(CUT, **changes))


@pytest.mark.parametrize(("asked", "says"), WORDS_REFUSED.values(), ids=WORDS_REFUSED)
def test_the_command_line_refuses(
    asked: list[str], says: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    assert says in refused(*asked)
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(("answers", "says"), ASK_REFUSED.values(), ids=ASK_REFUSED)
def test_ask_refuses_at_once_where_nobody_can_answer_again(
    answers: str, says: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    assert says in refused("ask", stdin=answers)
    assert list(tmp_path.iterdir()) == []


def test_a_json_refusal_is_the_same_line() -> None:
    assert refused("fit", "--json", "--bore", "18") == refused("fit", "--bore", "18")


@pytest.mark.parametrize("command", ["fit", "cut"])
def test_a_bare_number_is_taken_with_units(command: str) -> None:
    base, name = (FIT, "bore") if command == "fit" else (CUT, "diameter")
    number = base[f"--{name}"].removesuffix("mm")
    plain = ran(command, *words(base), "--json")
    bare = ran(command, *words(base, **{name: number, "units": "mm"}), "--json")
    assert (bare.code, bare.out) == (0, plain.out)


def test_a_bare_number_in_inches_is_not_one_in_millimetres() -> None:
    asked = words(CUT, diameter="2", units="inch")
    assert ran("cut", *asked, "--json").out == ran("cut", *words(CUT, diameter="2in"), "--json").out
    assert ran("cut", *asked, "--json").out != ran("cut", *words(CUT, diameter="2mm"), "--json").out
