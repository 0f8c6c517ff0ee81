package pile

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Taper returns the diameter of a tapered round timber pile at a distance from
// its tip, for [Circle]:
//
//	d = d_tip + (d_head - d_tip) x/L
//
// d_head, d_tip: diameters at head and tip [m], above zero; L: length of the
// piece [m], above zero; x: distance from the tip [m], 0 <= x <= L. Either end
// may be the thicker one: the smallest section of a stretch is at one of its
// ends. The error is an [*InputError]. Source: geometry, an even taper. The
// natural butt swelling of a trunk is not covered.
func Taper(head, tip, whole, x quantity.Length) (quantity.Length, error) {
	if err := first(length("d_head", head, "0.35 m").positive(), length("d_tip", tip, "0.20 m").positive(),
		length("L", whole, "12 m").positive(), length("x", x, "3 m").within(0, float64(whole))); err != nil {
		return 0, err
	}
	return tip + quantity.Length(float64((head-tip)*x)/float64(whole)), nil
}

// TaperRule has the inputs d_tip, d_head, x, L.
var TaperRule = working.Rule{Key: "pile.taper", Symbol: "d", Formula: "d_tip + (d_head - d_tip)*x/L",
	Inputs: []working.Symbol{
		{Name: "d_tip", Dim: quantity.Lengths, Key: "tipDiameter"},
		{Name: "d_head", Dim: quantity.Lengths, Key: "headDiameter"},
		{Name: "x", Dim: quantity.Lengths, Key: "distanceFromTip"},
		{Name: "L", Dim: quantity.Lengths, Key: "taperLength"},
	}, Dim: quantity.Lengths, Decimals: 4, Basis: "geometry"}
