// Package pile holds the pile while it is pressed: its section, its mass, the
// strength of its material, and the loads that it stands at the grip, along
// its free length and at its splices.
//
// Units are coherent: lengths in m, areas in m2, section moduli in m3, second
// moments of area in m4, forces in kN, stresses in kPa (1 MPa is 1000 kPa),
// masses in t, densities in t/m3. The age of concrete is a plain number of
// days. Figures of documents are not in this package but in calc/basis; the
// functions here take them as arguments, and the rules show them as inputs.
//
// A limit is built in steps, each with a rule of its own:
//
//	stress limit   sigma_lim from the material       [PressingStress], [DrivingStress], [ShareStress]
//	section limit  N_0 = A sigma_lim                  [SectionLimit]
//	off the axis   F = sigma_lim/(1/A + e/W_el)       [OffAxisLimit]
//	free length    steel by a buckling curve,         [Strut.Steel]
//	               concrete and timber combined       [Strut.Combined]
//	weakest        the least of all that are entered  [Weakest]
//
// All limits are compression along the axis of the pile, with the ram still or
// moving slowly. Not covered: reinforcement counted as transformed area,
// rounded or chamfered corners, the fillets of rolled sections, sheet pile
// sections, corrosion allowances, local buckling of thin walls, tension on the
// far side of a grip off the axis, bending by a crooked pile or by moving the
// rig, impact. Where a maker states a figure, the maker's is the better one.
package pile
