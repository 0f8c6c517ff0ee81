package pile

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// PressingStress returns the stress that pressing may add to a concrete pile,
//
//	sigma_lim = alpha f_ck/gamma - f_pe
//
// alpha, gamma: coefficients on the strength of concrete under a short load,
// 0.85 and 1.2 unless entered [-], 0 < alpha <= 1, gamma >= 1; f_ck:
// characteristic strength of a cylinder at the time of pressing [kPa], by
// [StrengthAt] or by a test, above zero; f_pe: effective prestress [kPa], 0
// where there is none. The error is an [*InputError], with the code
// "pile.prestressTooHigh" where f_pe leaves nothing. Source: our own choice
// (basis "concrete.pressing"). Reinforcement takes no share.
func PressingStress(alpha quantity.Ratio, fck quantity.Pressure, gamma quantity.Ratio, prestress quantity.Pressure) (quantity.Pressure, error) {
	g := ratio("gamma", gamma, "1.2")
	if err := first(ratio("alpha", alpha, "0.85").share(), stress("f_ck", fck, "40 MPa").positive(), g.finite()); err != nil {
		return 0, err
	}
	if gamma < 1 {
		return 0, g.fault("pile.below", 1)
	}
	return net(float64(alpha)*float64(fck)/float64(gamma), prestress)
}

// DrivingStress returns the stress that may be added to a concrete pile by the
// limit for driven piles,
//
//	sigma_lim = c f_ck - f_pe
//
// c: share of the strength, 0.8 unless entered [-], 0 < c <= 1; f_ck and f_pe
// as in [PressingStress], the prestress being part of the limited stress. The
// error is an [*InputError] as there. Source: EN 12699:2000, 7.7, stresses
// while driving. It is a limit for the short blows of a hammer; a pressed set
// is held for longer.
func DrivingStress(c quantity.Ratio, fck, prestress quantity.Pressure) (quantity.Pressure, error) {
	if err := first(ratio("c", c, "0.8").share(), stress("f_ck", fck, "40 MPa").positive()); err != nil {
		return 0, err
	}
	return net(float64(float64(c)*float64(fck)), prestress)
}

// net takes the prestress off a stress limit.
func net(limit float64, prestress quantity.Pressure) (quantity.Pressure, error) {
	n := stress("f_pe", prestress, "5 MPa")
	if err := n.fromZero(); err != nil {
		return 0, err
	}
	if float64(prestress) >= limit {
		return 0, n.fault("pile.prestressTooHigh", limit)
	}
	return quantity.Pressure(limit - float64(prestress)), nil
}

var (
	strengthNow     = working.Symbol{Name: "f_ck", Dim: quantity.Pressures, Key: "strengthNow"}
	symbolPrestress = working.Symbol{Name: "f_pe", Dim: quantity.Pressures, Key: "prestress"}
	strengthShare   = working.Symbol{Name: "c", Dim: quantity.Dimensionless, Key: "strengthShare"}
)

// The rules of the stress limits of concrete. Inputs: alpha, f_ck, gamma, f_pe
// while pressing; c, f_ck, f_pe by the driving limit.
var (
	PressingStressRule = working.Rule{Key: "pile.concrete.pressing", Symbol: "sigma_lim", Formula: "alpha*f_ck/gamma - f_pe",
		Inputs: []working.Symbol{
			{Name: "alpha", Dim: quantity.Dimensionless, Key: "concreteAlpha"}, strengthNow,
			{Name: "gamma", Dim: quantity.Dimensionless, Key: "concreteGamma"}, symbolPrestress,
		}, Dim: quantity.Pressures, Decimals: 1, Basis: "concrete.pressing"}
	DrivingStressRule = working.Rule{Key: "pile.concrete.driving", Symbol: "sigma_lim", Formula: "c*f_ck - f_pe",
		Inputs: []working.Symbol{strengthShare, strengthNow, symbolPrestress}, Dim: quantity.Pressures, Decimals: 1, Basis: "concrete.driving"}
)
