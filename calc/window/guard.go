package window

import (
	"math"

	"gaugewright/calc/quantity"
	"gaugewright/calc/rig"
	"gaugewright/calc/working"
)

// Doubt is what is known about the doubt in a load: standard uncertainties.
type Doubt struct {
	Reading    quantity.Pressure // u_p, of a gauge reading [kPa]
	Efficiency quantity.Ratio    // u_eta, of the efficiency [-]
	OnHead     quantity.Force    // u_W, of the weight on the head [kN]
	Coverage   quantity.Ratio    // k, for 95 % two-sided
}

// Mid is the efficiency in the middle of its range, the best estimate while
// nothing else is known about it.
func (c Circuit) Mid() quantity.Ratio { return (c.Low + c.High) / 2 }

// Expanded returns the expanded uncertainty of the load at a reading,
//
//	U = k sqrt((eta A u_p)^2 + (A p u_eta)^2 + u_W^2)
//
// with eta in the middle of its range. Source: JCGM 100:2008, 5.1.2 and 6.2.1,
// for F = eta A p + W with independent terms. Not covered: terms that go
// together, such as one reference behind several certificates.
func (c Circuit) Expanded(p quantity.Pressure, d Doubt) quantity.Force {
	a, eta := float64(c.Area), float64(c.Mid())
	gauge, efficiency, head := eta*a*float64(d.Reading), a*float64(p)*float64(d.Efficiency), float64(d.OnHead)
	return quantity.Force(float64(d.Coverage) * math.Sqrt(float64(gauge*gauge)+float64(efficiency*efficiency)+float64(head*head)))
}

// guardSteps bounds the search for a guarded reading: no dial has so many
// divisions.
const guardSteps = 20000

// GuardedSet returns the smallest division at which the load less its
// uncertainty is still the set load, F(p) - U(p) >= F_set, with the efficiency
// in the middle of its range; n is how many divisions it lies above the set
// reading without guard. ok is false where the doubt grows as fast as the load,
// so that no reading is certain.
//
// Source: JCGM 106:2012, 8.3.3, guarded acceptance at the lower end.
func (c Circuit) GuardedSet(set quantity.Force, d Doubt) (p quantity.Pressure, n int, ok bool) {
	plain := c.SetReading(set)
	for n := range guardSteps {
		p := plain + quantity.Pressure(float64(n)*float64(c.Division))
		if c.surelyReaches(p, set, d) {
			return p, n, true
		}
	}
	return 0, 0, false
}

// GuardedLimit returns the largest division at which the load with its
// uncertainty still keeps a limit, F(p) + U(p) <= F_lim; n is how many
// divisions it lies below the limit reading without guard. ok is false where
// not even the reading 0 does.
//
// Source: JCGM 106:2012, 8.3.3, guarded acceptance at the upper end.
func (c Circuit) GuardedLimit(limit quantity.Force, d Doubt) (p quantity.Pressure, n int, ok bool) {
	plain := c.LimitReading(limit)
	for n := range guardSteps {
		p := plain - quantity.Pressure(float64(n)*float64(c.Division))
		if p < 0 {
			return 0, 0, false
		}
		if c.surelyKeeps(p, limit, d) {
			return p, n, true
		}
	}
	return 0, 0, false
}

// slack takes up the last bits where a load stands exactly on a bound [kN].
const slack = 1e-9

func (c Circuit) surelyReaches(p quantity.Pressure, set quantity.Force, d Doubt) bool {
	return rig.Load(c.Mid(), c.Area, p, c.OnHead)-c.Expanded(p, d) >= set-slack
}

func (c Circuit) surelyKeeps(p quantity.Pressure, limit quantity.Force, d Doubt) bool {
	return rig.Load(c.Mid(), c.Area, p, c.OnHead)+c.Expanded(p, d) <= limit+slack
}

var (
	symbolMid        = working.Symbol{Name: "eta", Dim: quantity.Dimensionless, Key: "efficiencyMid"}
	symbolDoubtP     = working.Symbol{Name: "u_p", Dim: quantity.Pressures, Key: "doubtReading"}
	symbolDoubtEta   = working.Symbol{Name: "u_eta", Dim: quantity.Dimensionless, Key: "doubtEfficiency"}
	symbolDoubtW     = working.Symbol{Name: "u_W", Dim: quantity.Forces, Key: "doubtOnHead"}
	symbolCoverage   = working.Symbol{Name: "k", Dim: quantity.Dimensionless, Key: "coverage"}
	symbolStepsOfSet = working.Symbol{Name: "n", Dim: quantity.Dimensionless, Key: "guardSteps"}
)

// expanded is U at a reading as a formula.
func expanded(p string) string {
	return "k*sqrt((eta*A*u_p)^2 + (A*" + p + "*u_eta)^2 + u_W^2)"
}

// guardInputs are the inputs that every guard has behind its own: eta, A, W,
// u_p, u_eta, u_W and k.
var guardInputs = []working.Symbol{symbolMid, symbolArea, symbolOnHead, symbolDoubtP, symbolDoubtEta, symbolDoubtW, symbolCoverage}

func guarded(own ...working.Symbol) []working.Symbol { return append(own, guardInputs...) }

// The rules of the guard.
var (
	// MidRule has the inputs eta_lo, eta_hi.
	MidRule = working.Rule{Key: "window.mid", Symbol: "eta", Formula: "(eta_lo + eta_hi)/2", Dim: quantity.Dimensionless, Decimals: 4, Basis: "window.guard",
		Inputs: []working.Symbol{symbolLow, symbolHigh}}
	// ExpandedRule has the inputs p, eta, A, u_p, u_eta, u_W, k.
	ExpandedRule = working.Rule{Key: "window.expanded", Symbol: "U", Formula: expanded("p"), Dim: quantity.Forces, Decimals: 1, Basis: "window.guard",
		Inputs: []working.Symbol{symbolReading, symbolMid, symbolArea, symbolDoubtP, symbolDoubtEta, symbolDoubtW, symbolCoverage}}
	// GuardedSetRule has the inputs p (the set reading without guard), n, d.
	GuardedSetRule = working.Rule{Key: "window.guard.set", Symbol: "p_set_U", Formula: "p + n*d", Dim: quantity.Pressures, Decimals: 3, Basis: "window.guard",
		Inputs: []working.Symbol{symbolReading, symbolStepsOfSet, symbolDivision}}
	// GuardedLimitRule has the inputs p (the limit reading without guard), n, d.
	GuardedLimitRule = working.Rule{Key: "window.guard.limit", Symbol: "p_lim_U", Formula: "p - n*d", Dim: quantity.Pressures, Decimals: 3, Basis: "window.guard",
		Inputs: []working.Symbol{symbolReading, symbolStepsOfSet, symbolDivision}}
	// GuardedSetProof states that the load less its uncertainty reaches the set
	// load; its inputs are p, F_set, then eta, A, W, u_p, u_eta, u_W, k.
	GuardedSetProof = working.Rule{Key: "window.guard.set.proof", Basis: "window.guard", Formula: "eta*A*p + W - " + expanded("p") + " >= F_set",
		Inputs: guarded(symbolReading, symbolSet)}
	// GuardedSetLess states that one division less does not; its inputs are p,
	// F_set, d, then as before.
	GuardedSetLess = working.Rule{Key: "window.guard.set.less", Basis: "window.guard", Formula: "eta*A*(p - d) + W - " + expanded("(p - d)") + " < F_set",
		Inputs: guarded(symbolReading, symbolSet, symbolDivision)}
	// GuardedLimitProof states that the load with its uncertainty keeps the
	// limit; its inputs are p, F_lim, then eta, A, W, u_p, u_eta, u_W, k.
	GuardedLimitProof = working.Rule{Key: "window.guard.limit.proof", Basis: "window.guard", Formula: "eta*A*p + W + " + expanded("p") + " <= F_lim",
		Inputs: guarded(symbolReading, symbolLimit)}
	// GuardedLimitMore states that one division more does not; its inputs are
	// p, F_lim, d, then as before.
	GuardedLimitMore = working.Rule{Key: "window.guard.limit.more", Basis: "window.guard", Formula: "eta*A*(p + d) + W + " + expanded("(p + d)") + " > F_lim",
		Inputs: guarded(symbolReading, symbolLimit, symbolDivision)}
)
