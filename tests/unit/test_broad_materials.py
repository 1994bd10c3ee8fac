"""Plain words for materials work in job files, lists of parts, fit, cut and ask, and are said."""

from __future__ import annotations

import json
from typing import Any

import pytest
from tests.cli_run import CUT, FIT, ran, words

from borewright.answer.plan import Plan
from borewright.job import parse_job
from borewright.job.parts_file import parse_parts
from borewright.job.write import job_text
from borewright.reference.library import tables
from borewright.service.planned import plan

WORDS = ["aluminium", "Aluminum", "alloy", "steel", "brass", "cast iron", "Iron", "bronze"]


def text(material: str, blank: str = "unknown") -> str:
    return f"""[work]
material = "{material}"
blank = "{blank}"
bore = {{ size = "16.005mm", measured_with = "bore gauge" }}
outside = "63mm"
length = "25mm"
[hold]
mandrels = ["16mm"]
"""


def planned(material: str, blank: str = "unknown") -> Plan:
    return plan(parse_job(text(material, blank), "job.toml"))


def said_of(answer: Plan) -> list[str]:
    return [a.taken for a in answer.assumed if a.what == "material"]


@pytest.mark.parametrize("word", WORDS)
def test_a_plain_word_plans_and_the_plan_says_what_was_taken_for_it(word: str) -> None:
    (said,) = said_of(planned(word))
    assert said.startswith(f"{word} taken as ")
    assert said.endswith(
        (", because the alloy was not stated", ", because the grade was not stated")
    )


@pytest.mark.parametrize("name", ["al-6061-t6", "6061", "scrap aluminium", "mild steel"])
def test_a_word_that_leaves_nothing_open_is_not_spoken_of(name: str) -> None:
    assert said_of(planned(name)) == []


def test_aluminium_from_bar_is_not_the_aluminium_of_a_casting_or_of_an_unknown_blank() -> None:
    assert "wrought aluminium 6061-T6" in said_of(planned("aluminium", "bar"))[0]
    for blank in ("casting", "unknown"):
        assert "cast aluminium of unknown scrap" in said_of(planned("aluminium", blank))[0]


def test_a_broad_word_gives_the_answer_of_the_material_taken() -> None:
    word, named = planned("aluminium", "bar"), planned("al-6061-t6", "bar")
    assert word.questions == named.questions
    assert (word.headline, word.echo) == (named.headline, named.echo)
    assert word.assumed[1:] == named.assumed


def test_the_job_keeps_the_word_that_was_typed() -> None:
    job = parse_job(text("aluminium"), "job.toml")
    assert job.work.material == "aluminium"
    assert parse_job(job_text(job), "again.toml") == job


def test_a_list_of_parts_takes_plain_words() -> None:
    found = parse_parts(
        "part,material,outside,length,bore\na,aluminum,2in,1in,5/8in\nb,cast iron,2in,1in,5/8in",
        "parts.csv",
    )
    assert [bool(said_of(plan(part.job))) for part in found.parts] == [True, True]


@pytest.mark.parametrize(("command", "base"), [("fit", FIT), ("cut", CUT)])
def test_fit_and_cut_take_plain_words_and_list_them_as_assumed(
    command: str, base: dict[str, str]
) -> None:
    def answered(material: str) -> dict[str, Any]:
        done = ran(command, "--json", *words(base, material=material))
        assert done.code == 0, done.err
        answer: dict[str, Any] = json.loads(done.out)
        return answer

    broad, named = answered("aluminium"), answered("al-scrap-cast")
    assert broad["assumed"][0] == {
        "what": "material", "taken": "al-scrap-cast", "unit": "", "source": "ours",
    }  # fmt: skip
    assert broad["assumed"][1:] == named["assumed"]
    del broad["assumed"], named["assumed"]
    assert broad == named
    assert "material al-scrap-cast (ours)" in ran(command, *words(base, material="aluminium")).out


def test_every_broad_word_means_materials_that_the_tables_have() -> None:
    known = tables().work_materials()
    for row in tables().table("broad_materials").rows:
        for name in (row.text("id"), *row.names("names")):
            broad = tables().broad_material(name)
            assert broad is not None
            assert {broad.taken(blank) for blank in ("bar", "casting", "unknown")} <= set(known)
            # Where no blank is known, the plain look-up and the broad word mean the same.
            assert tables().material(name).id == broad.taken("unknown")
