"""The wall chart of a shelf.

    chart        the whole chart
    chart_words  what it takes for granted
    chart_bars   which bores each mandrel takes and where they touch, and the gaps between
    chart_cells  the deepest cut that holds at an outside
    chart_hub    the hub it is worked with

May import questions, taper, shop, weighing and all below planning.
"""
