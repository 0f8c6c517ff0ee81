// Package pile holds what a pile is made of: sections, densities, masses.
//
// Lengths are in m, areas in m2, second moments of area in m4, masses in t,
// densities in t/m3 (1 t/m3 is 1000 kg/m3).
//
// Covered: the plain geometry of a hollow circle, a full circle and a full
// square; mass per metre and mass of a segment. Not covered: rounded or
// chamfered corners, reinforcement counted as transformed area, shoes, splice
// plates and end plates, tapered timber, H and sheet sections, corrosion
// allowances. Where a maker states an area or a mass, the maker's figure is the
// better one; this package is for checking it and for when there is none.
package pile
