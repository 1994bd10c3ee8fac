"""Plug gauges for a bore window: go and not-go, or stepped.

    asked       what is asked of a gauge
    worth       how true it is made, its zones, what they take of the window
    form        lengths, necks, handle, marks
    steps       a stepped plug: sizes, and what is read off it
    shown       gauge sizes as words, limits never wider than meant
    drawn       either as a workshop drawing
    route       how it is turned, lapped, measured and marked, as words
    papers      route, acceptance, what is read off, cautions
    figures     its numbers as figures with their rules, and as JSON

May import what `making` may, and its neighbours cannot, facts, cautioned, center_holes, shop_sizes.
"""
