"""A plain taper mandrel that the shop makes itself, ground or turned with the tailstock set over.

    asked         what it is asked to be
    form          its form: proportions of the chart, or sizes that take the bores asked for
    design        the whole of it: form, stock, settings, and whether one takes those bores
    care          why one is made with care, or better not at all
    drawn         its workshop drawing
    route_start   stock, centers, roughing, flats;  route_hard: hardening to lapped centers
    route_finish  ground, or turned and filed
    accepted      the acceptance sheet;  figures: its numbers with their rules
    words         what those share;  papers: all of it as sheets

May import what making may.
"""
