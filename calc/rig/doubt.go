package rig

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Doubtful is what is known about the doubt in a reading. Each is a limit that
// is not passed, taken as evenly likely inside (rectangular: JCGM 100:2008,
// 4.3.7); half a division is what a careful eye may miss. Not covered: drift
// since the last check, a needle that sticks, parallax.
type Doubtful struct {
	Class     quantity.Ratio    // c: limit of error of the gauge, part of its span [-]
	Span      quantity.Pressure // S: full scale [kPa]
	Division  quantity.Pressure // d [kPa]
	Warmth    float64           // dT: difference of the gauge from the temperature it was made for, or calibrated at [K]
	PerKelvin quantity.Ratio    // tau: error a kelvin, part of span
	Zero      quantity.Pressure // z: error of zero, both ways [kPa]
}

// WarmthRule is how far the gauge is from the temperature it was made for, or
// calibrated at; its inputs are T and T_0 [C], the latter of the certificate or
// the figure "doubt.warmthFrom".
var WarmthRule = working.Rule{Key: "rig.warmth", Symbol: "dT", Formula: "T - T_0", Dim: quantity.Dimensionless, Decimals: 1, Basis: "rig.budget",
	Inputs: []working.Symbol{{Name: "T", Dim: quantity.Dimensionless, Key: "celsius"}, {Name: "T_0", Dim: quantity.Dimensionless, Key: "celsiusFrom"}}}
