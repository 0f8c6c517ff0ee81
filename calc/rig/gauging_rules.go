package rig

import (
	"gaugewright/calc/calibration"
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Placed says where the numbers of a [Gauging] stand. Those that its formula
// does not need may be left out.
type Placed struct {
	Fit                  calibration.Worked // the certificate's curve, by [calibration.Curve.Work]
	Eta, Area, OnHead, N working.In         // efficiency, area, W, number of cylinders
}

// Symbols of loads by a certificate.
var (
	symbolEta      = LoadRule.Inputs[0]
	symbolArea     = LoadRule.Inputs[1]
	symbolP        = LoadRule.Inputs[2]
	symbolOnHead   = LoadRule.Inputs[3]
	symbolTrue     = working.Symbol{Name: "p_t", Dim: quantity.Pressures, Key: "truePressure"}
	symbolCurve    = working.Symbol{Name: "f", Dim: quantity.Forces, Key: "certificateLoad"}
	symbolN        = working.Symbol{Name: "n", Dim: quantity.Dimensionless, Key: "cylinders"}
	symbolF        = working.Symbol{Name: "F", Dim: quantity.Forces, Key: "load"}
	symbolExpanded = working.Symbol{Name: "U", Dim: quantity.Forces, Key: "expanded"}
	symbolBound    = working.Symbol{Name: "F_b", Dim: quantity.Forces, Key: "bound"}
)

// The rules of loads by a certificate.
var (
	// GaugeAloneRule has the inputs eta, A, p_t, W.
	GaugeAloneRule = working.Rule{Key: "rig.load.gauge", Symbol: "F", Formula: "eta*A*p_t + W", Dim: quantity.Forces, Decimals: 1, Basis: "rig.load.gauge",
		Inputs: []working.Symbol{symbolEta, symbolArea, symbolTrue, symbolOnHead}}
	// OneCylinderRule has the inputs n, f, W.
	OneCylinderRule = working.Rule{Key: "rig.load.cylinder", Symbol: "F", Formula: "n*f + W", Dim: quantity.Forces, Decimals: 1, Basis: "rig.load.cylinder",
		Inputs: []working.Symbol{symbolN, symbolCurve, symbolOnHead}}
	// WholeCircuitRule has the inputs f, W. Where W is in the reference load
	// there is no rule: the value of the curve is the load.
	WholeCircuitRule = working.Rule{Key: "rig.load.circuit", Symbol: "F", Formula: "f + W", Dim: quantity.Forces, Decimals: 1, Basis: "rig.load.circuit",
		Inputs: []working.Symbol{symbolCurve, symbolOnHead}}

	// GaugeAloneWanted is the true pressure for a load; inputs F, W, eta, A.
	GaugeAloneWanted = working.Rule{Key: "rig.wanted.gauge", Symbol: "p_t", Formula: "(F - W)/(eta*A)", Dim: quantity.Pressures, Decimals: 3, Basis: "rig.load.gauge",
		Inputs: []working.Symbol{symbolF, symbolOnHead, symbolEta, symbolArea}}
	// OneCylinderWanted is the load of one cylinder; inputs F, W, n.
	OneCylinderWanted = working.Rule{Key: "rig.wanted.cylinder", Symbol: "f", Formula: "(F - W)/n", Dim: quantity.Forces, Decimals: 3, Basis: "rig.load.cylinder",
		Inputs: []working.Symbol{symbolF, symbolOnHead, symbolN}}
	// WholeCircuitWanted is the reference load; inputs F, W.
	WholeCircuitWanted = working.Rule{Key: "rig.wanted.circuit", Symbol: "f", Formula: "F - W", Dim: quantity.Forces, Decimals: 3, Basis: "rig.load.circuit",
		Inputs: []working.Symbol{symbolF, symbolOnHead}}
)

// WorkLoad puts the load at a reading on paper.
func (g Gauging) WorkLoad(b *working.Book, name string, p working.In, at Placed) working.Of[quantity.Force] {
	f, _ := g.Load(quantity.Pressure(p.V))
	if g.By == nil {
		return working.Put(b, LoadRule, name, f, at.Eta, at.Area, p, at.OnHead)
	}
	reference := g.workReference(name+".reference", p, at)
	switch {
	case g.By.Kind == GaugeAlone:
		return working.Put(b, GaugeAloneRule, name, f, at.Eta, at.Area, reference, at.OnHead)
	case g.By.Kind == OneCylinder:
		return working.Put(b, OneCylinderRule, name, f, at.N, reference, at.OnHead)
	case g.HeadCounts():
		return working.Put(b, WholeCircuitRule, name, f, reference, at.OnHead)
	}
	return working.Of[quantity.Force]{V: quantity.Force(reference.V), Ref: reference.Ref}
}

// workReference puts what the certificate says at a reading on paper.
func (g Gauging) workReference(name string, p working.In, at Placed) working.In {
	if !g.By.ReferenceSet {
		return at.Fit.On(name, p).In()
	}
	v, _ := g.reference(quantity.Pressure(p.V))
	return at.Fit.Back(name, p, calibration.Interval{Value: v}, 1, false).Value.In()
}

// WorkReading puts the reading for a load on paper, with the limits that
// [Gauging.Limits] gives where known says that it gave some. There must be a
// certificate, and the load must lie in its range.
func (g Gauging) WorkReading(b *working.Book, name string, f working.In, in calibration.Interval, known bool, at Placed) calibration.WorkedInterval {
	wanted := f
	switch v := g.wanted(quantity.Force(f.V)); {
	case g.By.Kind == GaugeAlone:
		wanted = working.Put(b, GaugeAloneWanted, name+".wanted", v, f, at.OnHead, at.Eta, at.Area).In()
	case g.By.Kind == OneCylinder:
		wanted = working.Put(b, OneCylinderWanted, name+".wanted", v, f, at.OnHead, at.N).In()
	case g.HeadCounts():
		wanted = working.Put(b, WholeCircuitWanted, name+".wanted", v, f, at.OnHead).In()
	}
	if g.By.ReferenceSet {
		return at.Fit.Ahead(name, wanted, in, 1, known)
	}
	return at.Fit.Back(name, wanted, in, 1, known)
}

// The proofs of guarded readings, statements about the load F and its
// uncertainty U at one reading: each has the inputs F, U and the bound F_b.
var (
	ReachesRule = working.Rule{Key: "rig.guard.reaches", Basis: "window.guard", Formula: "F - U >= F_b", Inputs: []working.Symbol{symbolF, symbolExpanded, symbolBound}}
	FailsRule   = working.Rule{Key: "rig.guard.fails", Basis: "window.guard", Formula: "F - U < F_b", Inputs: ReachesRule.Inputs}
	KeepsRule   = working.Rule{Key: "rig.guard.keeps", Basis: "window.guard", Formula: "F + U <= F_b", Inputs: ReachesRule.Inputs}
	PassesRule  = working.Rule{Key: "rig.guard.passes", Basis: "window.guard", Formula: "F + U > F_b", Inputs: ReachesRule.Inputs}
)
