package rig

import (
	"math"

	"gaugewright/calc/basis"
	"gaugewright/calc/calibration"
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

// Expanded returns the expanded uncertainty of a reading by itself, 95 %
// two-sided,
//
//	U = k sqrt(((c S)^2 + (d/2)^2 + z^2)/3)
//
// without the temperature, which gauges side by side share. Terms are evenly
// likely and certain, so k is that of the normal distribution. Source: JCGM
// 100:2008, 4.3.7, 5.1.2 and table G.2.
func (d Doubtful) Expanded() quantity.Pressure {
	class, half, zero := float64(d.Class)*float64(d.Span), float64(d.Division)/2, float64(d.Zero)
	k := basis.Figure(calibration.NormalFigure)
	return quantity.Pressure(k * math.Sqrt((float64(class*class)+float64(half*half)+float64(zero*zero))/3))
}

// ReadingExpandedRule is the formula of [Doubtful.Expanded]; its inputs are k, c,
// S, d, z.
var ReadingExpandedRule = working.Rule{Key: "rig.readingExpanded", Symbol: "U", Formula: "k*sqrt(((c*S)^2 + (d/2)^2 + z^2)/3)", Dim: quantity.Pressures, Decimals: 2, Basis: "rig.budget",
	Inputs: []working.Symbol{
		{Name: "k", Dim: quantity.Dimensionless, Key: "studentCoverage"}, {Name: "c", Dim: quantity.Dimensionless, Key: "gaugeClass"},
		{Name: "S", Dim: quantity.Pressures, Key: "fullScale"}, {Name: "d", Dim: quantity.Pressures, Key: "division"}, {Name: "z", Dim: quantity.Pressures, Key: "zeroError"},
	}}
