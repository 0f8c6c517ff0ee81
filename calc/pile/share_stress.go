package pile

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// ShareStress returns the stress limit of steel or timber, a share of its
// strength:
//
//	sigma_lim = c f_y       steel
//	sigma_lim = c f_c0k     timber
//
// c: 0.8 or 0.9 of steel, two choices with names; 0.8 of timber [-],
// 0 < c <= 1; strength [kPa], above zero: the yield strength for the thickness
// ([SteelFigure]), or the characteristic strength along the grain
// ([TimberFigures]). The error is an [*InputError]. Source: basis
// "steel.stress" and "timber.stress".
func ShareStress(c quantity.Ratio, strength quantity.Pressure) (quantity.Pressure, error) {
	if err := first(ratio("c", c, "0.8").share(), stress("f", strength, "355 MPa").positive()); err != nil {
		return 0, err
	}
	return quantity.Pressure(float64(c) * float64(strength)), nil
}

// The rules of [ShareStress]. Inputs: c, f_y of steel; c, f_c0k of timber. The
// shares are the figures "steel.share.low" and "steel.share.high", and
// "timber.share".
var (
	SteelStressRule = working.Rule{Key: "pile.steel.stress", Symbol: "sigma_lim", Formula: "c*f_y",
		Inputs: []working.Symbol{strengthShare, yieldStrength}, Dim: quantity.Pressures, Decimals: 1, Basis: "steel.stress"}
	TimberStressRule = working.Rule{Key: "pile.timber.stress", Symbol: "sigma_lim", Formula: "c*f_c0k",
		Inputs: []working.Symbol{strengthShare, {Name: "f_c0k", Dim: quantity.Pressures, Key: "timberStrength"}},
		Dim:    quantity.Pressures, Decimals: 1, Basis: "timber.stress"}

	yieldStrength = working.Symbol{Name: "f_y", Dim: quantity.Pressures, Key: "yieldStrength"}
)
