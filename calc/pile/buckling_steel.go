package pile

import (
	"math"
	"strings"

	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

var curves = []string{"a0", "a", "b", "c", "d"}

// CurveFigure returns the id in calc/basis of the imperfection factor alpha of
// a buckling curve: "a0", "a", "b", "c" or "d". The error is an [*InputError]
// with the code "pile.curveUnknown".
// Source: EN 1993-1-1:2005, Table 6.1; Table 6.2 says which curve belongs to
// which section: hot-finished tubes a (S235 to S420), cold-formed tubes c,
// rolled H sections about their weak axis c up to a flange of 100 mm where h/b
// is at most 1.2 (from memory). The curve is stated, not chosen here.
func CurveFigure(curve string) (string, error) {
	for _, c := range curves {
		if c == curve {
			return "steel.curve." + c, nil
		}
	}
	return "", &InputError{Code: "pile.curveUnknown", Text: curve, Allowed: strings.Join(curves, ", "), Example: "c"}
}

// Slenderness returns the slenderness of a steel strut, without dimension,
//
//	lambda = sqrt(A f_y/N_cr)
//
// A: area [m2]; f_y: yield strength [kPa]; N_cr: load of Euler [kN]; all above
// zero. The error is an [*InputError]. Source: EN 1993-1-1:2005, 6.3.1.2 (1),
// sections of class 1 to 3. Thin walls of class 4 are not covered: of tubes
// D/t above 90 (235 MPa/f_y) (Table 5.2, from memory).
func Slenderness(a quantity.Area, fy quantity.Pressure, euler quantity.Force) (quantity.Ratio, error) {
	if err := first(area(a).positive(), stress("f_y", fy, "355 MPa").positive(), force("N_cr", euler).positive()); err != nil {
		return 0, err
	}
	return quantity.Ratio(math.Sqrt(float64(a) * float64(fy) / float64(euler))), nil
}

// Reduction returns the reduction by a buckling curve,
//
//	Phi = 0.5 (1 + alpha (lambda - 0.2) + lambda^2)
//	chi = min(1, 1/(Phi + sqrt(Phi^2 - lambda^2)))
//
// alpha: imperfection factor, above zero, at most 1 [-] ([CurveFigure]);
// lambda: slenderness, from zero [-]. Up to lambda = 0.2 chi is 1. The error is
// an [*InputError]. Source: EN 1993-1-1:2005, 6.3.1.2 (1).
func Reduction(alpha, lambda quantity.Ratio) (phi, chi quantity.Ratio, err error) {
	if err := first(ratio("alpha", alpha, "0.49").share(), ratio("lambda", lambda, "0.8").fromZero()); err != nil {
		return 0, 0, err
	}
	l := float64(lambda)
	p := 0.5 * (1 + float64(float64(alpha)*(l-0.2)) + float64(l*l))
	return quantity.Ratio(p), quantity.Ratio(min(1, 1/(p+math.Sqrt(float64(p*p)-float64(l*l))))), nil
}

// Steel returns what a free length of steel pile stands,
//
//	N = chi N_0
//
// section: N_0, the section limit [kN]; A: area [m2]; f_y: yield strength
// [kPa]; alpha: imperfection factor of the curve [-]; all above zero. With no
// free length it is the section limit. The error is an [*InputError].
// Source: EN 1993-1-1:2005, 6.3.1.1 (3), with the section limit, which keeps
// its own distance from yielding, in place of A f_y/gamma_M1. Not covered: a
// grip off the axis together with a free length (6.3.3), torsional buckling.
func (s Strut) Steel(section quantity.Force, a quantity.Area, fy quantity.Pressure, alpha quantity.Ratio) (Buckling, error) {
	if err := force("N_0", section).positive(); err != nil {
		return Buckling{}, err
	}
	if s.Length == 0 {
		return Buckling{Chi: 1, Limit: section}, nil
	}
	euler, err := s.Euler()
	if err != nil {
		return Buckling{}, err
	}
	lambda, err := Slenderness(a, fy, euler)
	if err != nil {
		return Buckling{}, err
	}
	phi, chi, err := Reduction(alpha, lambda)
	if err != nil {
		return Buckling{}, err
	}
	return Buckling{Euler: euler, Slenderness: lambda, Phi: phi, Chi: chi, Limit: quantity.Force(float64(chi) * float64(section))}, nil
}

var (
	sectionLimit = working.Symbol{Name: "N_0", Dim: quantity.Forces, Key: "sectionLimit"}
	slenderness  = working.Symbol{Name: "lambda", Dim: quantity.Dimensionless, Key: "slenderness"}
)

// The rules of a steel strut. Inputs: A, f_y, N_cr for the slenderness; alpha,
// lambda for Phi; Phi, lambda for chi; chi, N_0 for the limit.
var (
	SlendernessRule = working.Rule{Key: "pile.slenderness", Symbol: "lambda", Formula: "sqrt(A*f_y/N_cr)",
		Inputs: []working.Symbol{sectionArea, yieldStrength, eulerLoad}, Dim: quantity.Dimensionless, Decimals: 4, Basis: "steel.slenderness"}
	PhiRule = working.Rule{Key: "pile.phi", Symbol: "Phi", Formula: "0.5*(1 + alpha*(lambda - 0.2) + lambda^2)",
		Inputs: []working.Symbol{{Name: "alpha", Dim: quantity.Dimensionless, Key: "imperfection"}, slenderness},
		Dim:    quantity.Dimensionless, Decimals: 5, Basis: "steel.reduction"}
	ChiRule = working.Rule{Key: "pile.chi", Symbol: "chi", Formula: "min(1, 1/(Phi + sqrt(Phi^2 - lambda^2)))",
		Inputs: []working.Symbol{{Name: "Phi", Dim: quantity.Dimensionless, Key: "bucklingPhi"}, slenderness},
		Dim:    quantity.Dimensionless, Decimals: 4, Basis: "steel.reduction"}
	SteelFreeRule = working.Rule{Key: "pile.steel.free", Symbol: "N", Formula: "chi*N_0",
		Inputs: []working.Symbol{{Name: "chi", Dim: quantity.Dimensionless, Key: "bucklingChi"}, sectionLimit},
		Dim:    quantity.Forces, Decimals: 1, Basis: "steel.reduction"}
)
