package head

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Expected returns the level of the head of a pile of length L [m] pressed
// just to a toe level Z_toe [m].
//
//	Z_h = Z_toe + L
//
// Geometry of a plumb pile; the shortening of the pile under load and the
// rebound after it are left out. It is what a crew is told before the head is
// surveyed, and never takes the place of a survey.
func Expected(toe, total quantity.Length) quantity.Length { return toe + total }

// ExpectedRule has the inputs Z_toe, L.
var ExpectedRule = working.Rule{Key: "head.expected", Symbol: "Z_h", Formula: "Z_toe + L",
	Inputs: []working.Symbol{length("Z_toe", "toeLevel"), length("L", "totalLength")}, Dim: quantity.Lengths, Decimals: 4, Basis: "segment.need"}
