package pile

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Tabled returns a section of which the area A [m2] and the least radius of
// gyration i [m] are typed from a table of sections, both above zero.
//
//	I = A i^2
//
// Modulus and surface stay not known (0); see [ModulusOf]. The error is an
// [*InputError]. Source: definition of the radius of gyration.
func Tabled(a quantity.Area, gyration quantity.Length) (Section, error) {
	if err := first(area(a).positive(), length("i", gyration, "0.0758 m").positive()); err != nil {
		return Section{}, err
	}
	i := float64(gyration)
	return Section{Area: a, Moment: SecondMoment(float64(a) * i * i)}, nil
}

// ModulusOf returns the elastic modulus of a section that is symmetrical about
// the axis of its second moment,
//
//	W_el = 2 I/d
//
// d: extent of the section across that axis [m], above zero: b of an H
// section whose web axis is the weak one. No section has more of its area
// outside its own edge, so sqrt(I/A) is at most d/2; else the width is not
// that of the tabled section. The error is an [*InputError]. Source: geometry.
func ModulusOf(s Section, extent quantity.Length) (Modulus, error) {
	d := length("d", extent, "0.30 m")
	if err := first(area(s.Area).positive(), d.positive()); err != nil {
		return 0, err
	}
	if i := s.Gyration(); i > extent/2 {
		return 0, length("i", i, "0.0758 m").fault("pile.gyrationTooLarge", float64(extent)/2)
	}
	return Modulus(2 * float64(s.Moment) / float64(extent)), nil
}

// TabledMomentRule has the inputs A, i. The modulus of a tabled section is by
// [ModulusRule].
var TabledMomentRule = working.Rule{Key: "pile.tabled.moment", Symbol: "I", Formula: "A*i^2",
	Inputs: []working.Symbol{
		{Name: "A", Dim: quantity.Areas, Key: "sectionArea"},
		{Name: "i", Dim: quantity.Lengths, Key: "gyration"},
	}, Dim: SecondMoments, Decimals: 9, Basis: "geometry"}
