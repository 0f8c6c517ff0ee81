package window

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// The rules of a gauge read both ways, for any load and any reading; the
// functions are [Circuit.SetReading] and [Circuit.LimitReading].

var symbolLoad = working.Symbol{Name: "F", Dim: quantity.Forces, Key: "load"}

// ReachRule is the smallest division at which a load is there with the low
// efficiency; its inputs are F, W, eta_lo, A and d.
var ReachRule = working.Rule{
	Key: "window.reach", Symbol: "p", Formula: "roundup((F - W)/(eta_lo*A), d)", Dim: quantity.Pressures, Decimals: 3, Basis: "window.set",
	Inputs: []working.Symbol{symbolLoad, symbolOnHead, symbolLow, symbolArea, symbolDivision},
}

// WithinRule is the largest division at which a load is not passed with the
// high efficiency; its inputs are F, W, eta_hi, A and d.
var WithinRule = working.Rule{
	Key: "window.within", Symbol: "p", Formula: "rounddown((F - W)/(eta_hi*A), d)", Dim: quantity.Pressures, Decimals: 3, Basis: "window.limit",
	Inputs: []working.Symbol{symbolLoad, symbolOnHead, symbolHigh, symbolArea, symbolDivision},
}
