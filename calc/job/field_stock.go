package job

import "gaugewright/calc/quantity"

// stockFields describe the segments in the yard: a length of which there are
// many, or one marked piece.
var stockFields = join([]Field{
	words("/stock/*/name"),
	{Pattern: "/stock/*/length", Kind: Quantity, Dim: quantity.Lengths, Unit: "m", MinOpen: true, Max: 60},
	counted("/stock/*/count", 0, 100000),
	words("/stock/*/mark"), reference("/stock/*/type", "pileTypes"),
	choice("/stock/*/role", "starter", "middle", "top"),
	ratio("/stock/*/cost", "", 0, 1e9, false), mass("/stock/*/mass", true), date("/stock/*/cast"),
	// A test of these very segments, which may stand before the class.
	strength("/stock/*/tested/strength"), choice("/stock/*/tested/specimen", "cube", "cylinder"), date("/stock/*/tested/on"),
	force("/stock/*/pressingLimit", true),
	choice("/stock/*/splice/kind", spliceKinds...),
	duration("/stock/*/splice/time", "min", false, 86400), duration("/stock/*/splice/cooling", "min", false, 86400),
	reference("/stock/*/cutFrom", "piles"),
	counted("/stock/*/rank", 0, 100000),
}, struck("/stock/*"))

var spliceKinds = []string{"weld", "bolts", "pins", "sleeve", "adhesive"}
