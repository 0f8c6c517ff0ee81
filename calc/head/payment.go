package head

import (
	"strconv"

	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Pressed returns the length of a pile that was pressed below platform,
//
//	Z_p - (Z_h - L)
//
// Z_p: platform level; Z_h: level of the head; L: length of all its pieces [m].
// Negative where the toe stays above platform. Source: geometry.
func Pressed(platform, head, length quantity.Length) quantity.Length {
	return platform - (head - length)
}

// BelowCutoff returns the length that stays, from the toe to cut-off,
//
//	Z_c - (Z_h - L)
//
// with the symbols of [Pressed]; Z_c: cut-off level [m]. Source: geometry.
func BelowCutoff(cutoff, head, length quantity.Length) quantity.Length {
	return cutoff - (head - length)
}

// The rules of lengths for payment. PressedRule has the inputs Z_p, Z_h, L,
// BelowRule Z_c, Z_h, L.
var (
	totalLength = length("L", "totalLength")
	PressedRule = working.Rule{Key: "head.pressed", Symbol: "L_p", Formula: "Z_p - (Z_h - L)",
		Inputs: []working.Symbol{platformLevel, headLevel, totalLength}, Dim: quantity.Lengths, Decimals: 3, Basis: "geometry"}
	BelowRule = working.Rule{Key: "head.below", Symbol: "L_c", Formula: "Z_c - (Z_h - L)",
		Inputs: []working.Symbol{cutoffLevel, headLevel, totalLength}, Dim: quantity.Lengths, Decimals: 3, Basis: "geometry"}
)

// SumRule adds so many lengths, v1 to vn. n >= 1.
func SumRule(n int) working.Rule {
	r := working.Rule{Key: "head.sum", Symbol: "S", Dim: quantity.Lengths, Decimals: 3, Basis: "arithmetic"}
	for i := 1; i <= n; i++ {
		name := "v" + strconv.Itoa(i)
		if i > 1 {
			r.Formula += ", "
		}
		r.Formula += name
		r.Inputs = append(r.Inputs, length(name, "summand"))
	}
	r.Formula = "sum(" + r.Formula + ")"
	return r
}
