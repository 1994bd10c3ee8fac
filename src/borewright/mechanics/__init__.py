"""Pure models on SI numbers. No table, no file, no unit text; only quantities and errors below.

num            the number types that models take and give
allowed        what a model's input may be; the refusal where it may not
outline        pieces of a turned part -> what stands on the bore, interval by interval
chamfer        a chamfer at the bore's edges as steps, and what metal there is for it
taper          where a straight taper touches, the bore window, the inverse
measured       a mandrel as measured: fitted taper, profile, flat stretches
measured_touch where any bore stops on a measured mandrel
measured_rings the rings on a measured mandrel
rings          thick rings on a shaft: pressure, force, hoop tension, growth
revolved       an outline of rings over its bore: checked, healed, its bearing stretches
mesh_lines     mesh lines and strips: fine where the pressure is
body_mesh      strips along the bore, mesh lines of work and mandrel
elastic_body   the compliance of a body by finite elements (heavy: loaded to build a shape only)
endless_bar    the compliance of an endless solid bar, in closed form
compliance     what a body gives way, per unit of modulus; tensions from pressures
tension_place  where the greatest tension of a pressed work is
tension_field  the stress in the whole section (heavy: loaded to draw only)
bands          bounds in round numbers for the tints of a field
contours       where a field is above a level: outlines and lines
rectangle      nine-node rectangles: stiffness and strains of all cells at once (heavy)
travel_path    every state of a contact as the overlap grows, exactly
travel_curve   what a joint does against its overlap: one curve for all travels
contact        where two elastic bodies press, and how hard; where contact ends
turned_down    a ring that loses metal from its outside on the shaft: grip and tension
press          pushing on and off, and the force behind a push
grip_of_fit    an even fit: its axial force and torque, the least interference for them
warm_fit       how warm work must be to slide on or come off
expanding_sleeve  a slit sleeve on a cone: push, what is left for the bore, release, torque
sleeve_fingers  a sleeve slit from one end: what opens it, what its fingers stand
sleeve_strips  a sleeve slit from either end in turn: the same
ring_lobes     a thin ring pressed outward in a few places: lobes, bending
bonded_joint   work stuck on: torque and force of a bonded face or gap; warming
roughness      peaks that flatten; the ridge a nose radius leaves
notch          what a keyway takes from bearing and wall
strength       brittle and ductile margins at a bore
plate          a web dishing when the rim is held and the hub pushed;  spokes: the same of spokes
clamp_plate    a round plate with a hole, pressed there by a bolt: how thick
kienzle        cutting force from chip size, edge angle and nose radius
shear_plane    cutting force from shear strength, by one shear plane
drilling       torque of a drill from the solid
turning        spindle speed, power, metal removed
milling        a disc cutter in one tooth space: arc, chip, force, power
gear_teeth     sizes of spur gear teeth and of the space between two
tooth_measures what a finished tooth measures: chord, its height, span over several
grinding       wheel forces and heat from the energy of the metal ground away
slip           torque and axial force carried by friction; slip radius; proof load
rock           the moment that lifts one end of the grip
tilt           how stiffly work tilts on its grip; the moment at which a fifth of the grip lifts
tilt_path      lift-off round the bore followed as a tilting moment grows
tilt_shape     what a body's bore line gives under cos φ; turned and moved as compliances are
tilt_body      what tilts the bore line of a body, by finite elements (heavy: to build a shape only)
warmth         heat from the cut in a lumped body; what it takes from a fit
two_bodies     work and mandrel that pass heat to each other, through heating and waiting
rim            hoop tension of a turning rim
cast_metal     a casting's pattern by shrinkage, draft, metal of cone rings, what cools a section
spares         how many to make so that enough are good
bore_sizes     the size that drill, bar and reamer leave; its chance of landing in a window
measurement    a length at 20 °C; combined uncertainty
face_friction  torque of clamped faces; several side by side, and in a gang
nut_preload    clamp force of a nut from its torque, and back; tension in the thread
tilted_nut     a mandrel bent by a nut on faces out of parallel
screw_torque   a screw turned on and off under an axial force
cone_drive     a cone in the mouth of a bore: torque, lift, hoop pull; a driver stud
ring_ovality   a ring squeezed by jaws: out of round, bending, what is left after release
key_shear      what shears or crushes a key or a pin; its torque
set_screw      torque of set screws, on a flat too; how far they throw the work over
unbalance      a heavy side: counterweight, the force it turns with, the speed for a force
drilled_balance  wax that balances, turned into a hole on the heavy side; the least that shows
runout         shares of a runout: clearance, lean; worst case, root-sum-square, as arrows
reversal       two readings half a turn apart: the mandrel's share and the work's
mandrel_zone   what the limits of a mandrel let through, and the bores that all of them take
parallel       two bands at one setting: taper, the set-over that takes it out
beam           a stepped bar between sprung centres
influence      what the same bar gives at many places at once; under a tool along its cut
vibration      the first natural frequency of a bar with its masses, and two bounds on it
springing      the size that a cut leaves on work that gives; what a spring pass leaves of it
chatter        how wide a chip may be before the work itself chatters in one mode
center_loads   what the two centers carry: a force, and the push of a bar that warms
axial_swell    how much the outside of a ring grows while its faces are clamped
fitted_moment  a moment across a close fit, taken by pressure at its two ends
overhang       a stepped stub held at one end: deflection, stiffness, slope at the tool
fine_angle     the top slide set over: fine feed, slight tapers, a staircase of cuts
plug_gauge     go and not-go: zones, what they take of a window, a stepped plug
crown          a pulley's crown: double taper, arc, the angle and radius that make them
crown_steps    a crown stepped off by hand in divisions of a dial
inverse        the input that gives a wanted output of a rising curve
spread         ranges turned into draws; likely, low and high of a set of draws
"""
