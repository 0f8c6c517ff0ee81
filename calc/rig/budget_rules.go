package rig

import (
	"gaugewright/calc/calibration"
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// TermsPlaced says where the numbers of [Terms] stand. Those that no term
// needs may be left out.
type TermsPlaced struct {
	Class, Span, Division, Warmth, PerKelvin, Zero working.In
	Reference, Coverage                            working.In
	EtaLow, EtaHigh, HeadHalf                      working.In
	Doubted                                        map[string]working.In // r of a term, by its key
}

// WorkedBudget is a budget on paper: the contributions of its terms beside the
// whole.
type WorkedBudget struct {
	Contributions []working.In
	calibration.WorkedBudget
}

// WorkBudget puts [Gauging.Budget] at a reading on paper: the slope of the load,
// the contribution of each term, what they give together, the share of each and
// U without it. budget is what it gave; U must not be zero. The names of steps
// begin with name.
func (g Gauging) WorkBudget(b *working.Book, name string, p working.In, budget calibration.Budget, at Placed, terms TermsPlaced) WorkedBudget {
	w := budgetWork{Gauging: g, s: g.sheet(b, at), name: name, at: at, x: p}
	w.know(terms)
	w.slope(p)
	var out WorkedBudget
	var freedoms []working.In
	for _, t := range budget.Parts {
		out.Contributions = append(out.Contributions, w.contribution(t))
		freedom := working.In{V: t.DF}
		if r, doubted := terms.Doubted[t.Key]; doubted {
			w.s.Know("r", quantity.Dimensionless, r)
			freedom = w.s.Put(name+".freedom/"+t.Key, working.Rule{Key: "rig.term.freedom", Symbol: "nu", Formula: "1/(2*r^2)", Decimals: 6, Basis: "rig.budget"}, t.DF).In()
		} else if t.Key == "fit" {
			freedom = at.Fit.Freedom().In()
		}
		freedoms = append(freedoms, freedom)
	}
	out.WorkedBudget = budget.Work(b, name, quantity.Forces, out.Contributions, freedoms)
	return out
}

type budgetWork struct {
	Gauging
	s    *calibration.Sheet
	name string
	at   Placed
	x    working.In // where the certificate's curve is used, of what was set
}

func (w *budgetWork) know(t TermsPlaced) {
	for _, k := range []struct {
		symbol string
		d      quantity.Dimension
		in     working.In
	}{
		{"c", quantity.Dimensionless, t.Class}, {"S", quantity.Pressures, t.Span}, {"d", quantity.Pressures, t.Division}, {"dT", quantity.Dimensionless, t.Warmth},
		{"tau", quantity.Dimensionless, t.PerKelvin}, {"z", quantity.Pressures, t.Zero}, {"U_r", quantity.Dimensionless, t.Reference},
		{"k", quantity.Dimensionless, t.Coverage}, {"eta_lo", quantity.Dimensionless, t.EtaLow}, {"eta_hi", quantity.Dimensionless, t.EtaHigh}, {"w", quantity.Forces, t.HeadHalf},
	} {
		w.s.Know(k.symbol, k.d, k.in)
	}
}

// slope puts on paper what the certificate says at the reading, the slope of
// its curve there, and that of the load.
func (w *budgetWork) slope(p working.In) {
	said := w.workReference(w.name+".reference", p, w.at)
	w.s.Know(w.said(), w.saidDim(), said)
	formula := w.factor()
	if w.By != nil {
		if w.By.ReferenceSet {
			w.x = said
		}
		rise := w.at.Fit.SlopeAt(w.name+".rise", w.x).In()
		w.s.Know("f_1", w.By.ObservedDim().Over(w.By.SetDim()), rise)
		switch {
		case w.By.ReferenceSet && formula == "":
			formula = "1/f_1"
		case w.By.ReferenceSet:
			formula += "/f_1"
		default:
			formula = times(formula, "f_1")
		}
		if working.Bare(formula) {
			w.s.Know("b", quantity.Areas, rise)
			return
		}
	}
	w.s.Put(w.name+".slope", working.Rule{Key: "rig.slope", Symbol: "b", Formula: formula, Dim: quantity.Areas, Decimals: 9, Basis: "rig.budget"}, w.Slope(quantity.Pressure(p.V)))
}

// contribution puts c u of a term on paper.
func (w *budgetWork) contribution(t calibration.Part) working.In {
	formula := ""
	switch t.Key {
	case "class":
		formula = "b*c*S/sqrt(3)"
	case "temperature":
		formula = "b*abs(tau*dT)*S/sqrt(3)"
	case "zero":
		formula = "b*z/sqrt(3)"
	case "division":
		formula = "b*d/2/sqrt(3)"
	case "fit":
		formula = times(w.factor(), "u")
		if w.By.ReferenceSet {
			formula += "/f_1"
		}
		if working.Bare(formula) {
			return w.at.Fit.DoubtAt(w.name+".term/fit", w.x, 1).In() // that of the load already
		}
		w.s.Know("u", w.By.ObservedDim(), w.at.Fit.DoubtAt(w.name+".curve", w.x, 1).In())
	case "reference":
		formula = times(w.factor(), w.said()) + "*U_r/k"
	case "efficiency":
		formula = "A*" + w.said() + "*(eta_hi - eta_lo)/2/sqrt(3)"
	case "onHead":
		formula = "w/sqrt(3)"
	}
	return w.s.Put(w.name+".term/"+t.Key, working.Rule{Key: "rig.term." + t.Key, Symbol: "u", Formula: formula, Dim: quantity.Forces, Decimals: 4, Basis: "rig.budget"}, t.Contribution).In()
}
