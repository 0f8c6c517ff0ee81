package window

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Mid is the efficiency in the middle of its range, the best estimate while
// nothing else is known about it.
func (c Circuit) Mid() quantity.Ratio { return (c.Low + c.High) / 2 }

// The rules of the guard; the search itself is [rig.Gauging.GuardedSet] and
// [rig.Gauging.GuardedLimit], with their proofs.
var (
	// MidRule has the inputs eta_lo, eta_hi.
	MidRule = working.Rule{Key: "window.mid", Symbol: "eta", Formula: "(eta_lo + eta_hi)/2", Dim: quantity.Dimensionless, Decimals: 4, Basis: "window.guard",
		Inputs: []working.Symbol{symbolLow, symbolHigh}}
	// GuardedSetRule has the inputs p (the set reading without guard), n, d.
	GuardedSetRule = working.Rule{Key: "window.guard.set", Symbol: "p_set_U", Formula: "p + n*d", Dim: quantity.Pressures, Decimals: 3, Basis: "window.guard",
		Inputs: []working.Symbol{symbolReading, symbolSteps, symbolDivision}}
	// GuardedLimitRule has the inputs p (the limit reading without guard), n, d.
	GuardedLimitRule = working.Rule{Key: "window.guard.limit", Symbol: "p_lim_U", Formula: "p - n*d", Dim: quantity.Pressures, Decimals: 3, Basis: "window.guard",
		Inputs: []working.Symbol{symbolReading, symbolSteps, symbolDivision}}
)

var symbolSteps = working.Symbol{Name: "n", Dim: quantity.Dimensionless, Key: "guardSteps"}
