"""Workshop drawings of turned parts: one DrawnPart becomes one scene on one page.

    look          units, projection and paper of a drawing
    limits_text   a size with its limits, as words
    sheet_frame   where the part stands on paper, and at which scale
    bands         the part as rings between places along its axis
    side          the part from the side, or in section
    details       center holes, flats, slits and threads on it
    spokes        spokes in both views
    from_end      the view from its end
    lengths       dimensions along, in rows under it
    diameters     dimensions across: in columns beside it, or on it with words over it
    overhead      words over the part on upright lines, kept apart
    title_block   title, material, scale, projection, blanks to sign
    page          all of these on one page

May import the rest of drawing, answer, quantities, errors.
"""
