package rig

import (
	"errors"
	"math"

	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// ErrOffFeet says that the resultant leaves the feet: the rig would tip.
var ErrOffFeet = errors.New("rig: the resultant leaves the feet")

// Resultant returns where the weight that is left on the feet acts while a pile
// is pressed, and how much it is:
//
//	V = G - F,  e = (G x_g - F x_p)/(G - F)
//
// G: weight of rig and ballast [kN] at x_g; F: what the pile pushes the rig up
// with [kN] at x_p; both places from the middle between the two lines of feet,
// positive to the pile's side [m]. The error is [ErrOffFeet] where no weight is
// left. Source: statics, moments about the middle.
func Resultant(g, f quantity.Force, at Place) (v quantity.Force, e quantity.Length, err error) {
	if f >= g {
		return 0, 0, ErrOffFeet
	}
	v = g - f
	return v, quantity.Length((float64(float64(g)*float64(at.Mass)) - float64(float64(f)*float64(at.Pile))) / float64(v)), nil
}

// FootLine returns the load on the more heavily loaded of the two lines of
// feet, R = V (a + |e|)/(2 a) [kN]. The error is [ErrOffFeet] where |e| > a.
func FootLine(v quantity.Force, e, half quantity.Length) (quantity.Force, error) {
	if math.Abs(float64(e)) > float64(half) {
		return 0, ErrOffFeet
	}
	return quantity.Force(float64(v) * (float64(half) + math.Abs(float64(e))) / (2 * float64(half))), nil
}

// FootPressure returns the greatest pressure under the feet of one line [kPa],
//
//	q = R/(n L B) (1 + 6 t/L)       t <= L/6: the whole foot presses
//	q = 2 R/(3 n B (L/2 - t))       L/6 < t < L/2: no tension, a part presses
//
// R: load on the line [kN]; n: feet in it; L, B: length along the travel and
// width of a foot [m]; t: how far the resultant lies from the middle of the
// feet along the travel [m], half of the body's travel while the rig walks. The
// error is [ErrOffFeet] for t >= L/2. Source: statics of a stiff foot on ground
// that takes no tension. Not covered: soft spots, slopes, impact; the
// platform's designer decides.
func FootPressure(r quantity.Force, n int, length, width, t quantity.Length) (quantity.Pressure, error) {
	l, b, off := float64(length), float64(width), math.Abs(float64(t))
	switch {
	case off >= l/2:
		return 0, ErrOffFeet
	case off <= l/6:
		return quantity.Pressure(float64(r) / (float64(n) * l * b) * (1 + 6*off/l)), nil
	}
	return quantity.Pressure(2 * float64(r) / (3 * float64(n) * b * (l/2 - off))), nil
}

var (
	symbolWeight = working.Symbol{Name: "G", Dim: quantity.Forces, Key: "weight"}
	symbolUp     = working.Symbol{Name: "F_up", Dim: quantity.Forces, Key: "upOnRig"}
	symbolOnFeet = working.Symbol{Name: "V", Dim: quantity.Forces, Key: "onFeet"}
	symbolOff    = working.Symbol{Name: "e", Dim: quantity.Lengths, Key: "offMiddle"}
	symbolLine   = working.Symbol{Name: "R", Dim: quantity.Forces, Key: "footLine"}
	footSymbols  = []working.Symbol{symbolLine, {Name: "n", Dim: quantity.Dimensionless, Key: "feetOfLine"},
		{Name: "L", Dim: quantity.Lengths, Key: "footLength"}, {Name: "B", Dim: quantity.Lengths, Key: "footWidth"}, {Name: "t", Dim: quantity.Lengths, Key: "alongTravel"}}
)

// The rules of the ground. WeightRule has the inputs M, m, g and, where W is
// not part of the mass, W; UpRule F, W; OnFeetRule G, F_up; OffRule G, x_g,
// F_up, x_p, V; FootLineRule V, a, e; FeetOfLineRule N; AlongRule the body's
// travel; the pressures R, n, L, B, t.
var (
	UpRule = working.Rule{Key: "rig.up", Symbol: "F_up", Formula: "F - W", Dim: quantity.Forces, Decimals: 1, Basis: "rig.ground",
		Inputs: []working.Symbol{{Name: "F", Dim: quantity.Forces, Key: "load"}, {Name: "W", Dim: quantity.Forces, Key: "onHead"}}}
	OnFeetRule = working.Rule{Key: "rig.onFeet", Symbol: "V", Formula: "G - F_up", Dim: quantity.Forces, Decimals: 1, Basis: "rig.ground",
		Inputs: []working.Symbol{symbolWeight, symbolUp}}
	OffRule = working.Rule{Key: "rig.off", Symbol: "e", Formula: "(G*x_g - F_up*x_p)/V", Dim: quantity.Lengths, Decimals: 4, Basis: "rig.ground",
		Inputs: []working.Symbol{symbolWeight, symbolMass, symbolUp, symbolPile, symbolOnFeet}}
	FootLineRule = working.Rule{Key: "rig.footLine", Symbol: "R", Formula: "V*(a + abs(e))/(2*a)", Dim: quantity.Forces, Decimals: 1, Basis: "rig.ground",
		Inputs: []working.Symbol{symbolOnFeet, symbolHalf, symbolOff}}
	FeetOfLineRule = working.Rule{Key: "rig.feetOfLine", Symbol: "n", Formula: "N/2", Dim: quantity.Dimensionless, Decimals: 0, Basis: "rig.ground",
		Inputs: []working.Symbol{{Name: "N", Dim: quantity.Dimensionless, Key: "feet"}}}
	AlongRule = working.Rule{Key: "rig.along", Symbol: "t", Formula: "s_b/2", Dim: quantity.Lengths, Decimals: 3, Basis: "rig.ground",
		Inputs: []working.Symbol{{Name: "s_b", Dim: quantity.Lengths, Key: "bodyTravel"}}}
	WholeFootRule = working.Rule{Key: "rig.foot.whole", Symbol: "q", Formula: "R/(n*L*B)*(1 + 6*t/L)", Dim: quantity.Pressures, Decimals: 1, Basis: "rig.ground", Inputs: footSymbols}
	PartFootRule  = working.Rule{Key: "rig.foot.part", Symbol: "q", Formula: "2*R/(3*n*B*(L/2 - t))", Dim: quantity.Pressures, Decimals: 1, Basis: "rig.ground", Inputs: footSymbols}
)

// GroundUseRule is the part of a bearing value that is used; its inputs are q
// and q_b.
var GroundUseRule = working.Rule{Key: "rig.groundUse", Symbol: "use", Formula: "q/q_b", Dim: quantity.Dimensionless, Decimals: 3, Basis: "rig.ground",
	Inputs: []working.Symbol{{Name: "q", Dim: quantity.Pressures, Key: "footPressure"}, {Name: "q_b", Dim: quantity.Pressures, Key: "bearing"}}}

// WeightRule: see above.
func WeightRule(wInMass bool) working.Rule {
	r := working.Rule{Key: "rig.weight", Symbol: "G", Formula: "(M + m)*g", Dim: quantity.Forces, Decimals: 1, Basis: "rig.ground",
		Inputs: []working.Symbol{{Name: "M", Dim: quantity.Masses, Key: "rigMass"}, {Name: "m", Dim: quantity.Masses, Key: "ballast"}, {Name: "g", Dim: quantity.Accelerations, Key: "gravity"}}}
	if !wInMass {
		r.Formula += " + W"
		r.Inputs = append(r.Inputs, working.Symbol{Name: "W", Dim: quantity.Forces, Key: "onHead"})
	}
	return r
}
