package rig

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Load returns the load on the pile head with the ram still,
//
//	F = eta A p + W
//
// eta: efficiency, 0 < eta <= 1 [-]; A: area [m2]; p: gauge reading [kPa];
// W: weight riding on the pile head [kN]. Source: statics. It does not hold
// while the ram moves against a return pressure, nor while backing off.
func Load(eta quantity.Ratio, a quantity.Area, p quantity.Pressure, w quantity.Force) quantity.Force {
	return quantity.Force(float64(float64(eta)*float64(a)*float64(p)) + float64(w))
}

// Reading returns the gauge reading at which the load on the pile head is F,
// the inverse of [Load]:
//
//	p = (F - W)/(eta A)
//
// It is negative when the weight on the head alone exceeds F: no reading
// gives so small a load.
func Reading(f quantity.Force, w quantity.Force, eta quantity.Ratio, a quantity.Area) quantity.Pressure {
	return quantity.Pressure((float64(f) - float64(w)) / (float64(eta) * float64(a)))
}

// LoadRule is the formula of [Load]; its inputs are eta, A, p, W.
var LoadRule = working.Rule{
	Key: "rig.load", Symbol: "F", Formula: "eta*A*p + W", Dim: quantity.Forces, Decimals: 1, Basis: "rig.load",
	Inputs: []working.Symbol{
		{Name: "eta", Dim: quantity.Dimensionless, Key: "efficiency"},
		{Name: "A", Dim: quantity.Areas, Key: "area"},
		{Name: "p", Dim: quantity.Pressures, Key: "reading"},
		{Name: "W", Dim: quantity.Forces, Key: "onHead"},
	},
}

// ReadingRule is the formula of [Reading]; its inputs are F, W, eta, A.
var ReadingRule = working.Rule{
	Key: "rig.reading", Symbol: "p", Formula: "(F - W)/(eta*A)", Dim: quantity.Pressures, Decimals: 1, Basis: "rig.reading",
	Inputs: []working.Symbol{
		{Name: "F", Dim: quantity.Forces, Key: "load"},
		{Name: "W", Dim: quantity.Forces, Key: "onHead"},
		{Name: "eta", Dim: quantity.Dimensionless, Key: "efficiency"},
		{Name: "A", Dim: quantity.Areas, Key: "area"},
	},
}
