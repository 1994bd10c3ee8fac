"""Use cases, one small function each: the only vocabulary of the doors.

    planned       plan: a job, and perhaps a shelf -> the whole plan
    rescued       rescue: a bore that came out wrong -> every way out, ranked
    picture       picture: pressure along the bore and tension in the work -> numbers, SVG, PNG
    fitted        fit: one bore on one mandrel -> position, force, stress, window
    fit_records   what it is given and what it answers
    fit_words     what the readings of that mandrel say, in sentences
    cut_forces    cut: one turning cut -> forces, torque, power
    load_forces   load: one grinding or gear-cutting pass -> forces, torque, power
    mandrel_read  mandrel: diameters along a mandrel -> taper, straightness, the bores it takes
    mandrel_words the same in sentences
    runout_split  runout split: two readings half a turn apart -> mandrel's share and work's
    runout_find   runout find: what is out of true -> likely causes, the next check
    parallel_set  parallel: two test bands -> the tailstock's set-over
    balanced      balance: wax on work that is heavy on one side -> a hole or a weight
    making        make: mandrels, stubs, blanks, gauges, strips
    crowned       crown: a flat-belt pulley -> every rule's crown, its setting, its stairs
    crown_told    the same in sentences and tables;  crown_template: as SVG, DXF or PDF
    sums          sums over a shop's own tables: one that fails is refused
    answers       ask: six plain answers -> a job, with what had to be assumed
    files         a plan's sheet, drawing and charts, written whole or not at all
    charts_drawn  a plan's charts as SVG
    shelf_read    a shelf file with its units;  shelf_import: a spreadsheet to a shelf file
    shelf_shown   shelf show: what is on it, and what is missing;  shelf_words: each tool in a line
    shelf_doubts  shelf check: what can hardly be true;  shelf_units: sizes typed in another unit
    parts_planned shelf parts: a list of parts against one shelf
    shelf_chart   shelf chart: which bore goes where, how deep a cut holds, on one page
    tables_shown  the reference tables, with their sources

May import every room below. Nothing heavy is loaded until a use case is called.
"""
