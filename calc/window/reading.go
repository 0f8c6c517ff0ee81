package window

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/rig"
	"gaugewright/calc/working"
)

// Circuit is what a reading depends on, for one jack circuit with its gauge.
type Circuit struct {
	Area     quantity.Area     // A > 0 [m2]
	OnHead   quantity.Force    // W, weight riding on the pile head, >= 0 [kN]
	Low      quantity.Ratio    // eta_lo, serves the set; 0 < eta_lo <= eta_hi
	High     quantity.Ratio    // eta_hi, serves the limits; <= 1
	Division quantity.Pressure // d > 0, one division of the gauge [kPa]
}

// SetReading returns the smallest whole number of divisions at which the load
// reaches F_set with the low efficiency:
//
//	p_set = up[(F_set - W)/(eta_lo A)]
//
// F_set [kN]. It is zero or negative when the weight on the head alone is
// enough; then there is no set to read.
func (c Circuit) SetReading(set quantity.Force) quantity.Pressure {
	return quantity.Pressure(quantity.RoundUp(float64(rig.Reading(set, c.OnHead, c.Low, c.Area)), float64(c.Division)))
}

// LimitReading returns the largest whole number of divisions at which the load
// stays within F_lim with the high efficiency:
//
//	p_lim = down[(F_lim - W)/(eta_hi A)]
//
// F_lim [kN]. It is negative when the weight on the head alone exceeds F_lim.
func (c Circuit) LimitReading(limit quantity.Force) quantity.Pressure {
	return quantity.Pressure(quantity.RoundDown(float64(rig.Reading(limit, c.OnHead, c.High, c.Area)), float64(c.Division)))
}

// PressureReading returns the largest whole number of divisions within a limit
// that is itself a pressure [kPa].
func (c Circuit) PressureReading(limit quantity.Pressure) quantity.Pressure {
	return quantity.Pressure(quantity.RoundDown(float64(limit), float64(c.Division)))
}

// Use returns which part of a load limit is used at a reading, with the high
// efficiency: (eta_hi A p + W)/F_lim. F_lim > 0 [kN].
func (c Circuit) Use(p quantity.Pressure, limit quantity.Force) quantity.Ratio {
	return quantity.Ratio(float64(rig.Load(c.High, c.Area, p, c.OnHead)) / float64(limit))
}

var (
	symbolSet      = working.Symbol{Name: "F_set", Dim: quantity.Forces, Key: "setLoad"}
	symbolLimit    = working.Symbol{Name: "F_lim", Dim: quantity.Forces, Key: "limit"}
	symbolOnHead   = working.Symbol{Name: "W", Dim: quantity.Forces, Key: "onHead"}
	symbolLow      = working.Symbol{Name: "eta_lo", Dim: quantity.Dimensionless, Key: "efficiencyLow"}
	symbolHigh     = working.Symbol{Name: "eta_hi", Dim: quantity.Dimensionless, Key: "efficiencyHigh"}
	symbolArea     = working.Symbol{Name: "A", Dim: quantity.Areas, Key: "area"}
	symbolDivision = working.Symbol{Name: "d", Dim: quantity.Pressures, Key: "division"}
	symbolReading  = working.Symbol{Name: "p", Dim: quantity.Pressures, Key: "reading"}
	symbolPressure = working.Symbol{Name: "p_max", Dim: quantity.Pressures, Key: "pressureLimit"}
)

// SetReadingRule is the formula of [Circuit.SetReading]; its inputs are F_set,
// W, eta_lo, A and d.
var SetReadingRule = working.Rule{
	Key: "window.set", Symbol: "p_set", Formula: "roundup((F_set - W)/(eta_lo*A), d)", Dim: quantity.Pressures, Decimals: 3, Basis: "window.set",
	Inputs: []working.Symbol{symbolSet, symbolOnHead, symbolLow, symbolArea, symbolDivision},
}

// SetProof states that the set reading reaches the set load and that one
// division less does not; its inputs are eta_lo, A, p, W, F_set and d.
var SetProof = working.Rule{
	Key: "window.set.proof", Formula: "eta_lo*A*p + W >= F_set and eta_lo*A*(p - d) + W < F_set", Basis: "window.set",
	Inputs: []working.Symbol{symbolLow, symbolArea, symbolReading, symbolOnHead, symbolSet, symbolDivision},
}

// LimitReadingRule is the formula of [Circuit.LimitReading]; its inputs are
// F_lim, W, eta_hi, A and d.
var LimitReadingRule = working.Rule{
	Key: "window.limit", Symbol: "p_lim", Formula: "rounddown((F_lim - W)/(eta_hi*A), d)", Dim: quantity.Pressures, Decimals: 3, Basis: "window.limit",
	Inputs: []working.Symbol{symbolLimit, symbolOnHead, symbolHigh, symbolArea, symbolDivision},
}

// LimitProof states that the limit reading keeps the limit and that one
// division more does not; its inputs are eta_hi, A, p, W, F_lim and d.
var LimitProof = working.Rule{
	Key: "window.limit.proof", Formula: "eta_hi*A*p + W <= F_lim and eta_hi*A*(p + d) + W > F_lim", Basis: "window.limit",
	Inputs: []working.Symbol{symbolHigh, symbolArea, symbolReading, symbolOnHead, symbolLimit, symbolDivision},
}

// PressureReadingRule is the formula of [Circuit.PressureReading]; its inputs
// are p_max and d.
var PressureReadingRule = working.Rule{
	Key: "window.pressure", Symbol: "p_lim", Formula: "rounddown(p_max, d)", Dim: quantity.Pressures, Decimals: 3, Basis: "window.limit",
	Inputs: []working.Symbol{symbolPressure, symbolDivision},
}

// UseRule is the formula of [Circuit.Use]; its inputs are eta_hi, A, p, W and
// F_lim.
var UseRule = working.Rule{
	Key: "window.use", Symbol: "use", Formula: "(eta_hi*A*p + W)/F_lim", Dim: quantity.Dimensionless, Decimals: 3, Basis: "window.use",
	Inputs: []working.Symbol{symbolHigh, symbolArea, symbolReading, symbolOnHead, symbolLimit},
}

// PressureUseRule is the part of a pressure limit used at a reading; its
// inputs are p and p_max.
var PressureUseRule = working.Rule{
	Key: "window.use", Symbol: "use", Formula: "p/p_max", Dim: quantity.Dimensionless, Decimals: 3, Basis: "window.use",
	Inputs: []working.Symbol{symbolReading, symbolPressure},
}
