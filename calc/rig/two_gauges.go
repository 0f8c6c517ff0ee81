package rig

import (
	"math"

	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// TwoGauges compares two gauges on one circuit that read p_1 and p_2 at the
// same moment,
//
//	E_n = |p_1 - p_2|/sqrt(U_1^2 + U_2^2)
//
// with U_1 and U_2 their expanded uncertainties at 95 % [kPa], not both zero.
// Above 1 at least one of them is not what it is said to be: stop. Only doubts
// that the two do not share belong into U: temperature, say, but not a
// reference that calibrated both.
//
// Source: ISO/IEC 17043, E_n number (from memory).
func TwoGauges(p1, p2, u1, u2 quantity.Pressure) quantity.Ratio {
	return quantity.Ratio(math.Abs(float64(p1)-float64(p2)) / math.Sqrt(float64(u1*u1)+float64(u2*u2)))
}

// TwoGaugesRule is the formula of [TwoGauges]; its inputs are p_1, p_2, U_1, U_2.
var TwoGaugesRule = working.Rule{Key: "rig.twoGauges", Symbol: "E_n", Formula: "abs(p_1 - p_2)/sqrt(U_1^2 + U_2^2)", Dim: quantity.Dimensionless, Decimals: 3, Basis: "rig.twoGauges",
	Inputs: []working.Symbol{
		{Name: "p_1", Dim: quantity.Pressures, Key: "reading"}, {Name: "p_2", Dim: quantity.Pressures, Key: "readingOther"},
		{Name: "U_1", Dim: quantity.Pressures, Key: "readingExpanded"}, {Name: "U_2", Dim: quantity.Pressures, Key: "readingExpandedOther"},
	}}
