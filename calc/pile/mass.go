package pile

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// LineMass returns the mass per metre m = rho A [t/m] of a section with the
// area A [m2] and the density rho [t/m3], both more than zero. The error is an
// [*InputError]. Not covered: end plates, shoes, soil in a hollow pile.
func LineMass(rho quantity.Density, a quantity.Area) (quantity.LineMass, error) {
	if err := first(number{"rho", float64(rho), quantity.Densities, "2.5 t/m3"}.positive(), area(a).positive()); err != nil {
		return 0, err
	}
	return quantity.LineMass(float64(rho) * float64(a)), nil
}

// SegmentMass returns the mass M = m L [t] of a segment with the mass per
// metre m [t/m], m > 0, and the length L [m], L >= 0. The error is an
// [*InputError]. Lifting gear and end plates are not in it.
func SegmentMass(m quantity.LineMass, l quantity.Length) (quantity.Mass, error) {
	if err := first(number{"m", float64(m), quantity.LineMasses, "0.306 t/m"}.positive(), length("L", l, "12 m").fromZero()); err != nil {
		return 0, err
	}
	return quantity.Mass(float64(m) * float64(l)), nil
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
