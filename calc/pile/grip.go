package pile

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// SectionLimit returns the load that a section stands, pressed along its axis,
//
//	N_0 = A sigma_lim
//
// A: area [m2]; sigma_lim: stress limit, net of prestress [kPa]; both above
// zero. The error is an [*InputError]. Source: statics. Of a tapered pile it
// is the smallest section that carries the load.
func SectionLimit(a quantity.Area, sigma quantity.Pressure) (quantity.Force, error) {
	if err := first(area(a).positive(), stress("sigma_lim", sigma, "28 MPa").positive()); err != nil {
		return 0, err
	}
	return quantity.Force(float64(a) * float64(sigma)), nil
}

// OffAxisLimit returns the load that a section stands, gripped at the distance
// e from its axis. From the stress at the edge, F/A + F e/W_el = sigma_lim:
//
//	F_lim = sigma_lim/(1/A + e/W_el)
//
// sigma_lim: stress limit, net of prestress, so that prestressed concrete is
// treated alike [kPa]; A: area [m2]; e: distance of the grip from the axis
// [m], e >= 0, where e = 0 gives [SectionLimit] and needs no modulus; W_el:
// elastic modulus for bending in that direction [m3]; all but e above zero.
// The error is an [*InputError]. Source: statics, straight-line stress over an
// uncracked section. Not covered: e along both axes at once, tension on the
// far side, which begins in a pile without prestress at e = W_el/A, and the
// growth of e along a free length ([Strut.Combined] says more).
func OffAxisLimit(sigma quantity.Pressure, a quantity.Area, e quantity.Length, w Modulus) (quantity.Force, error) {
	if err := length("e", e, "0.02 m").fromZero(); err != nil {
		return 0, err
	}
	if e == 0 {
		return SectionLimit(a, sigma)
	}
	if err := first(stress("sigma_lim", sigma, "28 MPa").positive(), area(a).positive(),
		number{"W_el", float64(w), Moduli, "0.0071 m3"}.positive()); err != nil {
		return 0, err
	}
	return quantity.Force(float64(sigma) / (1/float64(a) + float64(e)/float64(w))), nil
}

var stressLimit = working.Symbol{Name: "sigma_lim", Dim: quantity.Pressures, Key: "stressLimit"}

// The rules of the loads at the grip. Inputs: A, sigma_lim on the axis;
// sigma_lim, A, e, W_el off it, for e above zero.
var (
	SectionLimitRule = working.Rule{Key: "pile.sectionLimit", Symbol: "N_0", Formula: "A*sigma_lim",
		Inputs: []working.Symbol{sectionArea, stressLimit}, Dim: quantity.Forces, Decimals: 1, Basis: "pile.section"}
	OffAxisRule = working.Rule{Key: "pile.offAxis", Symbol: "F_lim", Formula: "sigma_lim/(1/A + e/W_el)",
		Inputs: []working.Symbol{stressLimit, sectionArea,
			{Name: "e", Dim: quantity.Lengths, Key: "offAxis"},
			{Name: "W_el", Dim: Moduli, Key: "elasticModulus"},
		}, Dim: quantity.Forces, Decimals: 1, Basis: "pile.offAxis"}
)
