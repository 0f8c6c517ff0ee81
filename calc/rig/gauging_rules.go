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

// certificateKeys are the names of the symbols of loads by a certificate and of
// their doubt.
var certificateKeys = [][2]string{
	{"F", "load"}, {"eta", "efficiency"}, {"A", "area"}, {"p", "reading"}, {"W", "onHead"}, {"p_t", "truePressure"}, {"f", "certificateLoad"}, {"n", "cylinders"},
	{"U", "expanded"}, {"F_b", "bound"}, {"b", "loadSlope"}, {"f_1", "curveSlope"}, {"c", "gaugeClass"}, {"S", "fullScale"}, {"d", "division"},
	{"tau", "perKelvin"}, {"dT", "warmth"}, {"z", "zeroError"}, {"u", "curveDoubt"}, {"U_r", "referenceExpanded"}, {"k", "referenceCoverage"},
	{"eta_lo", "efficiencyLow"}, {"eta_hi", "efficiencyHigh"}, {"w", "onHeadLimit"}, {"r", "doubtOfDoubt"}, {"nu", "freedom"}, {"s", "slopeShare"},
}

// OneCylinderRule is the area of one of n equal cylinders; its inputs are A, n.
var OneCylinderRule = working.Rule{Key: "rig.oneCylinder", Symbol: "A_1", Formula: "A/n", Dim: quantity.Areas, Decimals: 9, Basis: "rig.area",
	Inputs: []working.Symbol{{Name: "A", Dim: quantity.Areas, Key: "area"}, {Name: "n", Dim: quantity.Dimensionless, Key: "cylinders"}}}

// WorkShare puts the slope, reference over reading, as a share of what theory
// says on paper: of theory, an area, or of 1 for a gauge.
func (k Calibrated) WorkShare(b *working.Book, name string, fit calibration.Worked, theory working.In) calibration.Of {
	rise := fit.MeanSlope(name + ".slope")
	s := calibration.NewSheet(b, certificateKeys)
	s.Know("f_1", k.ObservedDim().Over(k.SetDim()), rise.In())
	s.Know("A", quantity.Areas, theory)
	formula := "f_1"
	switch {
	case k.Kind != GaugeAlone && k.ReferenceSet:
		formula = "1/(f_1*A)"
	case k.Kind != GaugeAlone:
		formula = "f_1/A"
	case k.ReferenceSet:
		formula = "1/f_1"
	default:
		return rise
	}
	return s.Put(name, working.Rule{Key: "rig.share", Symbol: "s", Formula: formula, Decimals: 6, Basis: "rig.load"}, float64(k.Share))
}

// sheet makes known on a new sheet what loads are computed from.
func (g Gauging) sheet(b *working.Book, at Placed) *calibration.Sheet {
	s := calibration.NewSheet(b, certificateKeys)
	s.Know("eta", quantity.Dimensionless, at.Eta)
	s.Know("A", quantity.Areas, at.Area)
	s.Know("W", quantity.Forces, at.OnHead)
	s.Know("n", quantity.Dimensionless, at.N)
	return s
}

// said is the symbol of what the certificate says: a true pressure or a load.
func (g Gauging) said() string {
	switch {
	case g.By == nil:
		return "p"
	case g.By.Kind == GaugeAlone:
		return "p_t"
	}
	return "f"
}

// factor is what it is multiplied by in a formula, nothing for a whole circuit.
func (g Gauging) factor() string {
	switch {
	case !g.JacksCalibrated():
		return "eta*A"
	case g.By.Kind == OneCylinder:
		return "n"
	}
	return ""
}

// rule is one of its formula: the beginning of the key, and what it gives.
func (g Gauging) rule(begins, symbol, formula string, d quantity.Dimension, decimals int) working.Rule {
	end := ".circuit"
	switch {
	case g.By == nil:
		end = ""
	case g.By.Kind == GaugeAlone:
		end = ".gauge"
	case g.By.Kind == OneCylinder:
		end = ".cylinder"
	}
	return working.Rule{Key: begins + end, Symbol: symbol, Formula: formula, Dim: d, Decimals: decimals, Basis: "rig.load" + end}
}

// times writes a product; a factor of nothing is left out.
func times(factor, symbol string) string {
	if factor == "" {
		return symbol
	}
	return factor + "*" + symbol
}

// WorkLoad puts the load at a reading on paper. By a whole circuit with W in the
// reference load it is what the curve says.
func (g Gauging) WorkLoad(b *working.Book, name string, p working.In, at Placed) working.Of[quantity.Force] {
	f, _ := g.Load(quantity.Pressure(p.V))
	formula := times(g.factor(), g.said())
	if g.HeadCounts() {
		formula += " + W"
	}
	if working.Bare(formula) {
		return working.Of[quantity.Force]{V: f, Ref: g.workReference(name, p, at).Ref}
	}
	said := g.workReference(name+".reference", p, at)
	s := g.sheet(b, at)
	s.Know(g.said(), g.saidDim(), said)
	of := s.Put(name, g.rule("rig.load", "F", formula, quantity.Forces, 1), float64(f))
	return working.Of[quantity.Force]{V: f, Ref: of.Ref}
}

func (g Gauging) saidDim() quantity.Dimension {
	if g.By == nil {
		return quantity.Pressures
	}
	return g.By.Reference
}

// workReference puts what the certificate says at a reading on paper.
func (g Gauging) workReference(name string, p working.In, at Placed) working.In {
	switch {
	case g.By == nil:
		return p
	case !g.By.ReferenceSet:
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
	formula := "F"
	if g.HeadCounts() {
		formula += " - W"
	}
	switch factor := g.factor(); factor {
	case "":
	case "n":
		formula = "(" + formula + ")/n"
	default:
		formula = "(" + formula + ")/(" + factor + ")"
	}
	if !working.Bare(formula) {
		s := g.sheet(b, at)
		s.Know("F", quantity.Forces, f)
		wanted = s.Put(name+".wanted", g.rule("rig.wanted", g.said(), formula, g.By.Reference, 3), g.wanted(quantity.Force(f.V))).In()
	}
	if g.By.ReferenceSet {
		return at.Fit.Ahead(name, wanted, in, 1, known)
	}
	return at.Fit.Back(name, wanted, in, 1, known)
}

// WorkEnd puts the highest reading of the certificate on paper.
func (g Gauging) WorkEnd(name string, at Placed) calibration.Of {
	if g.By.ReferenceSet {
		return at.Fit.On(name, at.Fit.High(name+".reference").In())
	}
	return at.Fit.High(name)
}

// GuardProof is a statement about the load at one reading and its uncertainty
// against a bound.
type GuardProof string

// The proofs of guarded readings: the set division reaches and the one below it
// fails; the limit's division keeps and the one above it passes.
const (
	Reaches GuardProof = "reaches" // F - U >= F_b
	Fails   GuardProof = "fails"   // F - U < F_b
	Keeps   GuardProof = "keeps"   // F + U <= F_b
	Passes  GuardProof = "passes"  // F + U > F_b
)

// Prove puts the statement on paper as a proof of the step of.
func (p GuardProof) Prove(b *working.Book, name, of string, load, u, bound working.In) {
	s := calibration.NewSheet(b, certificateKeys)
	s.Know("F", quantity.Forces, load)
	s.Know("U", quantity.Forces, u)
	s.Know("F_b", quantity.Forces, bound)
	formula := map[GuardProof]string{Reaches: "F - U >= F_b", Fails: "F - U < F_b", Keeps: "F + U <= F_b", Passes: "F + U > F_b"}[p]
	s.Prove(name, of, working.Rule{Key: "rig.guard." + string(p), Basis: "window.guard", Formula: formula})
}
