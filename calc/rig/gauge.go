package rig

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// GaugeLimit returns the highest reading at which a gauge should be worked,
// a share of its full scale: 75 % unless entered (basis "gauge.share",
// recalled from memory).
func GaugeLimit(share quantity.Ratio, fullScale quantity.Pressure) quantity.Pressure {
	return quantity.Pressure(float64(share) * float64(fullScale))
}

// GaugeRule is the formula of [GaugeLimit]; its inputs are c and p_full.
var GaugeRule = working.Rule{
	Key: "rig.gauge", Symbol: "p_gauge", Formula: "c*p_full", Dim: quantity.Pressures, Decimals: 1, Basis: "gauge.share",
	Inputs: []working.Symbol{
		{Name: "c", Dim: quantity.Dimensionless, Key: "gaugeShare"},
		{Name: "p_full", Dim: quantity.Pressures, Key: "fullScale"},
	},
}
