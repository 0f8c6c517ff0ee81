package pile

import (
	"math"

	"gaugewright/calc/basis"
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// ConcreteStiffness returns the secant modulus of elasticity of concrete,
//
//	E_cm = 22 GPa (f_cm/10 MPa)^0.3
//
// f_cm: mean strength [kPa], above zero, at most 98 MPa: that of 28 days
// ([MeanStrength]), or that of an age, f_ck(t) + 8 MPa, which gives the same
// as E_cm(t) = (f_cm(t)/f_cm)^0.3 E_cm. The error is an [*InputError].
// Source: EN 1992-1-1:2004, Table 3.1 and 3.1.3 (3), which prints whole GPa.
// It is for quartzite aggregate: limestone has 10 per cent and sandstone 30
// per cent less, basalt 20 per cent more (3.1.3 (2)). Creep and cracking are
// not in it.
func ConcreteStiffness(mean quantity.Pressure) (quantity.Pressure, error) {
	highest := float64(classes[len(classes)-1].Cylinder) + basis.Figure("concrete.meanMargin")
	n := stress("f_cm", mean, "48 MPa")
	if err := first(n.positive(), n.within(0, highest)); err != nil {
		return 0, err
	}
	return quantity.Pressure(basis.Figure("concrete.stiffness.base") * math.Pow(float64(mean)/basis.Figure("concrete.stiffness.strength"), 0.3)), nil
}

// ConcreteStiffnessRule has the inputs E_0, f_cm, f_0; E_0 and f_0 are the
// figures "concrete.stiffness.base" and "concrete.stiffness.strength".
var ConcreteStiffnessRule = working.Rule{Key: "pile.concrete.stiffness", Symbol: "E", Formula: "E_0*(f_cm/f_0)^0.3",
	Inputs: []working.Symbol{
		{Name: "E_0", Dim: quantity.Pressures, Key: "stiffnessBase"}, symbolMean,
		{Name: "f_0", Dim: quantity.Pressures, Key: "stiffnessStrength"},
	}, Dim: quantity.Pressures, Decimals: 0, Basis: "concrete.stiffness"}
