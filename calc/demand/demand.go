// Package demand computes the load that must be reached: the set load F_set
// that a design asks for.
//
// Covered so far: the single factor on the working load. Not covered yet:
// strength reduction, characteristic values from static tests, resistance
// factors, drag load, set-up, and shaft resistance that will be lost.
//
// A set load is a short proof under the rig. It is not the long-term capacity
// of a pile; set-up, relaxation, downdrag, group settlement and creep are
// outside it.
package demand

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// SetLoad returns the set load of the single-factor scheme,
//
//	F_set = FS P
//
// FS: factor on the working load, >= 1 [-]; P: working load [kN]. Source:
// conventional single-factor design (basis "demand.single"). The factor is the
// designer's; none is assumed.
func SetLoad(factor quantity.Ratio, workingLoad quantity.Force) quantity.Force {
	return quantity.Force(float64(factor) * float64(workingLoad))
}

// SetLoadRule is the formula of [SetLoad]; its inputs are FS and P.
var SetLoadRule = working.Rule{
	Key: "demand.single", Symbol: "F_set", Formula: "FS*P", Dim: quantity.Forces, Decimals: 1, Basis: "demand.single",
	Inputs: []working.Symbol{
		{Name: "FS", Dim: quantity.Dimensionless, Key: "factor"},
		{Name: "P", Dim: quantity.Forces, Key: "workingLoad"},
	},
}
