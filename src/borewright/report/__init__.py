"""Paper, terminal and JSON: a plan in words.

    words         words that the others share: figures, sources, cuts
    sheet_data    a plan as the words of the bench sheet
    sheet_ways    what a way needs and what else would hold the work, as the sheet says it
    sheet_before  its second page: the first hold of a casting, how the bore gets its size
    sheet_cutting the page of the cutting: every cut in order, and the charts
    taken_words   how the cuts are taken, in words that sheet and terminal share
    sheet_trim    what goes from the sheet when room is short, and in which order
    sheet_picture the picture on a sheet that prints it smaller, with the scale it then has
    bench_sheet   the PDF of one to three pages;  bench_sheet.typ, sheet_before.typ,
                  sheet_cutting.typ: its templates
    strip_sheet   a drawing that fills its page (strip, picture);  strip_sheet.typ: its template
    pictured_json the picture of a pressed joint as JSON
    chart_sheet   the wall chart of a shelf, one page;  chart_sheet.typ: its template
    chart_data    a wall chart as words and places;  chart_json: the same as JSON
    papers_text   the papers of something to be made as plain text
    papers_sheet  the same as one PDF with its drawings;  papers_sheet.typ: its template
    one_page      a template and words to one page of PDF
    record_keys   how records become JSON keys
    plan_json     a plan as stable JSON
    schema        the JSON schemas of a plan, a wall chart and a rescue: import from there
    bore_route_words  a bore route as lines of text, and its figures
    terminal      a plan as plain text, sentences first
    change_words  a change to the part as a sentence
    first_hold_words  the first hold of a casting as sentences
    rescue_text   every way out of a wrong bore as plain text;  rescue_json: the same as JSON
    explain       every figure as one pencil line: rule, numbers in, number out, source, weakness

May import answer, job, mechanics, reference, quantities, errors; never `drawing`.
"""

from borewright.report.bench_sheet import bench_sheet
from borewright.report.explain import explain_text
from borewright.report.plan_json import plan_json
from borewright.report.terminal import plan_text

__all__ = [
    "bench_sheet",
    "explain_text",
    "plan_json",
    "plan_text",
]
