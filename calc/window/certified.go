package window

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/rig"
	"gaugewright/calc/working"
)

// The rules of readings by a certificate. What the certificate says exactly is
// a step of package rig; here it is rounded to whole divisions, away from what
// must be reached or kept, and proved by the loads at that division and at the
// next one.

// SetBy is the smallest division at or above an exact reading, LimitBy the
// largest at or below one; d > 0, all [kPa].
func SetBy(exact, division quantity.Pressure) quantity.Pressure {
	return quantity.Pressure(quantity.RoundUp(float64(exact), float64(division)))
}

// LimitBy is the largest division at or below an exact reading; see [SetBy].
func LimitBy(exact, division quantity.Pressure) quantity.Pressure {
	return quantity.Pressure(quantity.RoundDown(float64(exact), float64(division)))
}

// By returns the circuit as a way from reading to load with an efficiency, by
// a certificate where there is one.
func (c Circuit) By(k *rig.Calibrated, eta quantity.Ratio) rig.Gauging {
	return rig.Gauging{By: k, Eta: eta, Area: c.Area, OnHead: c.OnHead}
}

var (
	symbolExact = working.Symbol{Name: "p", Dim: quantity.Pressures, Key: "exactReading"}
	symbolHere  = working.Symbol{Name: "F_1", Dim: quantity.Forces, Key: "loadHere"}
	symbolNext  = working.Symbol{Name: "F_2", Dim: quantity.Forces, Key: "loadNext"}
)

func pressed(key, symbol, formula string, exact working.Symbol) working.Rule {
	return working.Rule{Key: key, Symbol: symbol, Formula: formula, Dim: quantity.Pressures, Decimals: 3, Basis: "window.certified",
		Inputs: []working.Symbol{exact, symbolDivision}}
}

// SetByRule and LimitByRule round an exact reading; LessRule and MoreRule are
// the divisions beside one. Their inputs are p, d.
var (
	SetByRule   = pressed("window.certified.set", "p_set", "roundup(p, d)", symbolExact)
	LimitByRule = pressed("window.certified.limit", "p_lim", "rounddown(p, d)", symbolExact)
	LessRule    = pressed("window.less", "p", "p - d", symbolReading)
	MoreRule    = pressed("window.more", "p", "p + d", symbolReading)
)

// SetByProof states that the load at the set reading reaches the set load and
// that at one division less does not; LimitByProof that a limit is kept and
// passed. Their inputs are F_1, F_2, and F_set or F_lim.
var (
	SetByProof = working.Rule{Key: "window.set.proof", Formula: "F_1 >= F_set and F_2 < F_set", Basis: "window.certified",
		Inputs: []working.Symbol{symbolHere, symbolNext, symbolSet}}
	LimitByProof = working.Rule{Key: "window.limit.proof", Formula: "F_1 <= F_lim and F_2 > F_lim", Basis: "window.certified",
		Inputs: []working.Symbol{symbolHere, symbolNext, symbolLimit}}
)

// UseByRule is the part of a load limit used at a reading; its inputs are F and
// F_lim.
var UseByRule = working.Rule{Key: "window.use", Symbol: "use", Formula: "F/F_lim", Dim: quantity.Dimensionless, Decimals: 3, Basis: "window.use",
	Inputs: []working.Symbol{symbolLoad, symbolLimit}}
