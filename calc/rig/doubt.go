package rig

import (
	"math"

	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Doubtful is what is known about the doubt in a reading without a certificate.
type Doubtful struct {
	Class     quantity.Ratio    // c: limit of error of the gauge, part of its span [-]
	Span      quantity.Pressure // S: full scale [kPa]
	Division  quantity.Pressure // d [kPa]
	Warmth    float64           // dT: difference of the gauge from 20 C [K]
	PerKelvin quantity.Ratio    // tau: error a kelvin, part of span
	Zero      quantity.Pressure // z: error of zero, both ways [kPa]
}

// ReadingDoubt returns the standard uncertainty of a gauge reading [kPa],
//
//	u_p = sqrt((c S)^2 + (d/2)^2 + (tau dT S)^2 + z^2)/sqrt(3)
//
// each term a limit that is not passed, taken as evenly likely inside
// (rectangular: JCGM 100:2008, 4.3.7) and independent (5.1.2). Half a division
// is what a careful eye may miss. Not covered: drift since the last check, a
// needle that sticks, parallax.
func ReadingDoubt(d Doubtful) quantity.Pressure {
	class, half := float64(d.Class)*float64(d.Span), float64(d.Division)/2
	warmth, zero := float64(d.PerKelvin)*d.Warmth*float64(d.Span), float64(d.Zero)
	return quantity.Pressure(math.Sqrt((float64(class*class) + float64(half*half) + float64(warmth*warmth) + float64(zero*zero)) / 3))
}

// EfficiencyDoubt returns the standard uncertainty of an efficiency of which
// only a range is known, u_eta = (eta_hi - eta_lo)/(2 sqrt 3): evenly likely
// inside (JCGM 100:2008, 4.3.7).
func EfficiencyDoubt(low, high quantity.Ratio) quantity.Ratio {
	return quantity.Ratio(float64(high-low) / (2 * math.Sqrt(3)))
}

// HeadDoubt returns the standard uncertainty of a weight known to within
// +-w [kN], evenly likely inside: u_W = w/sqrt 3 (JCGM 100:2008, 4.3.7).
func HeadDoubt(w quantity.Force) quantity.Force { return quantity.Force(float64(w) / math.Sqrt(3)) }

// WarmthRule is how far the gauge is from the temperature it was made for; its
// inputs are T and T_0 [C], the latter the figure "doubt.warmthFrom".
var WarmthRule = working.Rule{Key: "rig.warmth", Symbol: "dT", Formula: "T - T_0", Dim: quantity.Dimensionless, Decimals: 1, Basis: "doubt.even",
	Inputs: []working.Symbol{{Name: "T", Dim: quantity.Dimensionless, Key: "celsius"}, {Name: "T_0", Dim: quantity.Dimensionless, Key: "celsiusFrom"}}}

// The rules of doubt. ReadingDoubtRule has the inputs c, S, d, tau, dT, z;
// EfficiencyDoubtRule eta_lo, eta_hi; HeadDoubtRule w.
var (
	ReadingDoubtRule = working.Rule{Key: "rig.doubt.reading", Symbol: "u_p", Formula: "sqrt(((c*S)^2 + (d/2)^2 + (tau*dT*S)^2 + z^2)/3)",
		Dim: quantity.Pressures, Decimals: 2, Basis: "doubt.even",
		Inputs: []working.Symbol{
			{Name: "c", Dim: quantity.Dimensionless, Key: "gaugeClass"}, {Name: "S", Dim: quantity.Pressures, Key: "fullScale"},
			{Name: "d", Dim: quantity.Pressures, Key: "division"}, {Name: "tau", Dim: quantity.Dimensionless, Key: "perKelvin"},
			{Name: "dT", Dim: quantity.Dimensionless, Key: "warmth"}, {Name: "z", Dim: quantity.Pressures, Key: "zeroError"},
		}}
	EfficiencyDoubtRule = working.Rule{Key: "rig.doubt.efficiency", Symbol: "u_eta", Formula: "(eta_hi - eta_lo)/(2*sqrt(3))",
		Dim: quantity.Dimensionless, Decimals: 6, Basis: "doubt.even",
		Inputs: []working.Symbol{{Name: "eta_lo", Dim: quantity.Dimensionless, Key: "efficiencyLow"}, {Name: "eta_hi", Dim: quantity.Dimensionless, Key: "efficiencyHigh"}}}
	HeadDoubtRule = working.Rule{Key: "rig.doubt.onHead", Symbol: "u_W", Formula: "w/sqrt(3)", Dim: quantity.Forces, Decimals: 3, Basis: "doubt.even",
		Inputs: []working.Symbol{{Name: "w", Dim: quantity.Forces, Key: "onHeadLimit"}}}
)
