package pile

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// LineMass returns the mass per metre m = rho A [t/m] of a section with the
// area A [m2] and the density rho [t/m3], both more than zero. The error is an
// [*InputError]. Not covered: end plates, shoes, soil in a hollow pile.
func LineMass(rho quantity.Density, area quantity.Area) (quantity.LineMass, error) {
	if err := positive("rho", float64(rho), "2.5 t/m3"); err != nil {
		return 0, err
	}
	if err := positive("A", float64(area), "0.1225 m2"); err != nil {
		return 0, err
	}
	return quantity.LineMass(float64(rho) * float64(area)), nil
}

// SegmentMass returns the mass M = m L [t] of a segment with the mass per
// metre m [t/m], m > 0, and the length L [m], L >= 0. The error is an
// [*InputError]. Lifting gear and end plates are not in it.
func SegmentMass(m quantity.LineMass, length quantity.Length) (quantity.Mass, error) {
	if err := positive("m", float64(m), "0.306 t/m"); err != nil {
		return 0, err
	}
	if v := float64(length); v != 0 {
		if err := positive("L", v, "12 m"); err != nil {
			if e := err.(*InputError); e.Code == "pile.notPositive" {
				e.Code = "pile.negative"
			}
			return 0, err
		}
	}
	return quantity.Mass(float64(m) * float64(length)), nil
}

// The rules of masses.
var (
	// LineMassRule has the inputs rho, A.
	LineMassRule = working.Rule{Key: "pile.lineMass", Symbol: "m", Formula: "rho*A",
		Inputs: []working.Symbol{
			{Name: "rho", Dim: quantity.Densities, Key: "density"},
			{Name: "A", Dim: quantity.Areas, Key: "sectionArea"},
		}, Dim: quantity.LineMasses, Decimals: 4, Basis: "mechanics"}
	// SegmentMassRule has the inputs m, L.
	SegmentMassRule = working.Rule{Key: "pile.segmentMass", Symbol: "M", Formula: "m*L",
		Inputs: []working.Symbol{
			{Name: "m", Dim: quantity.LineMasses, Key: "lineMass"},
			{Name: "L", Dim: quantity.Lengths, Key: "segmentLength"},
		}, Dim: quantity.Masses, Decimals: 3, Basis: "mechanics"}
)
