package rig

import (
	"strings"

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

// part is a symbol of a term with its value.
type part struct {
	symbol working.Symbol
	in     working.In
}

// carried is the factor from the reference to the load, empty for a whole
// circuit.
func (g Gauging) carried(at Placed) (factor string, parts []part) {
	switch {
	case !g.JacksCalibrated():
		return "eta*A", []part{{symbolEta, at.Eta}, {symbolArea, at.Area}}
	case g.By.Kind == OneCylinder:
		return "n", []part{{symbolN, at.N}}
	}
	return "", nil
}

// joined writes factors with * between them.
func joined(factors ...string) string {
	var kept []string
	for _, f := range factors {
		if f != "" {
			kept = append(kept, f)
		}
	}
	return strings.Join(kept, "*")
}

// WorkBudget puts [Gauging.Budget] at a reading on paper: the slope of the load,
// the contribution of each term, what they give together, the share of each and
// U without it. budget is what it gave; U must not be zero. The names of steps
// begin with name.
func (g Gauging) WorkBudget(b *working.Book, name string, p working.In, budget calibration.Budget, at Placed, terms TermsPlaced) WorkedBudget {
	w := &budgetWork{Gauging: g, book: b, name: name, p: p, at: at, terms: terms}
	w.curve()
	var out WorkedBudget
	var freedoms []working.In
	for _, t := range budget.Parts {
		out.Contributions = append(out.Contributions, w.contribution(t))
		freedoms = append(freedoms, w.freedom(t))
	}
	out.WorkedBudget = budget.Work(b, name, quantity.Forces, out.Contributions, freedoms)
	return out
}

type budgetWork struct {
	Gauging
	book             *working.Book
	name             string
	p                working.In
	at               Placed
	terms            TermsPlaced
	reference, slope working.In // what the certificate says; slope of the load
	rise             working.In // slope of its curve
}

// curve puts on paper what all terms need.
func (w *budgetWork) curve() {
	w.reference = w.p
	factor, parts := w.carried(w.at)
	r := working.Rule{Key: "rig.slope", Symbol: "b", Formula: factor, Dim: quantity.Areas, Decimals: 9, Basis: "rig.budget"}
	if w.By != nil {
		w.reference = w.workReference(w.name+".reference", w.p, w.at)
		x := w.p
		if w.By.ReferenceSet {
			x = w.reference
		}
		w.rise = w.at.Fit.SlopeAt(w.name+".rise", x).In()
		switch {
		case w.By.ReferenceSet && factor == "":
			r.Formula = "1/f_1"
		case w.By.ReferenceSet:
			r.Formula += "/f_1"
		case factor == "":
			w.slope = w.rise
			return
		default:
			r.Formula += "*f_1"
		}
		parts = append(parts, w.risePart())
	}
	w.slope = w.put("slope", r, w.Slope(quantity.Pressure(w.p.V)), parts)
}

func (w *budgetWork) risePart() part {
	return part{working.Symbol{Name: "f_1", Dim: w.By.ObservedDim().Over(w.By.SetDim()), Key: "curveSlope"}, w.rise}
}

func (w *budgetWork) put(name string, r working.Rule, v float64, parts []part) working.In {
	ins := make([]working.In, len(parts))
	r.Inputs = nil
	for i, p := range parts {
		r.Inputs, ins[i] = append(r.Inputs, p.symbol), p.in
	}
	return working.Put(w.book, r, w.name+"."+name, v, ins...).In()
}

// contribution puts c u of a term on paper.
func (w *budgetWork) contribution(t calibration.Part) working.In {
	doubt := func(i int, in working.In) part { return part{ReadingDoubtRule.Inputs[i], in} }
	b := part{working.Symbol{Name: "b", Dim: quantity.Areas, Key: "loadSlope"}, w.slope}
	formula, parts := "", []part(nil)
	factor, carried := w.carried(w.at)
	switch t.Key {
	case "class":
		formula, parts = "b*c*S/sqrt(3)", []part{b, doubt(0, w.terms.Class), doubt(1, w.terms.Span)}
	case "temperature":
		formula, parts = "b*abs(tau*dT)*S/sqrt(3)", []part{b, doubt(3, w.terms.PerKelvin), doubt(4, w.terms.Warmth), doubt(1, w.terms.Span)}
	case "zero":
		formula, parts = "b*z/sqrt(3)", []part{b, doubt(5, w.terms.Zero)}
	case "division":
		formula, parts = "b*d/2/sqrt(3)", []part{b, doubt(2, w.terms.Division)}
	case "fit":
		return w.fit(t, factor, carried)
	case "reference":
		what := part{symbolCurve, w.reference}
		if w.By.Kind == GaugeAlone {
			what.symbol = symbolTrue
		}
		formula = joined(factor, what.symbol.Name, "U_r") + "/k"
		parts = append(carried, what, part{working.Symbol{Name: "U_r", Key: "referenceExpanded"}, w.terms.Reference}, part{working.Symbol{Name: "k", Key: "referenceCoverage"}, w.terms.Coverage})
	case "efficiency":
		what := part{symbolP, w.reference}
		if w.By != nil {
			what.symbol = symbolTrue
		}
		formula = "A*" + what.symbol.Name + "*(eta_hi - eta_lo)/2/sqrt(3)"
		parts = []part{{symbolArea, w.at.Area}, what, {EfficiencyDoubtRule.Inputs[1], w.terms.EtaHigh}, {EfficiencyDoubtRule.Inputs[0], w.terms.EtaLow}}
	case "onHead":
		formula, parts = "w/sqrt(3)", []part{{HeadDoubtRule.Inputs[0], w.terms.HeadHalf}}
	}
	return w.term(t, formula, parts)
}

func (w *budgetWork) term(t calibration.Part, formula string, parts []part) working.In {
	return w.put("term/"+t.Key, working.Rule{Key: "rig.term." + t.Key, Symbol: "u", Formula: formula, Dim: quantity.Forces, Decimals: 4, Basis: "rig.budget"}, t.Contribution, parts)
}

// fit carries the doubt of the certificate's curve over to the load. For a
// whole circuit with readings set it is that of the load already.
func (w *budgetWork) fit(t calibration.Part, factor string, parts []part) working.In {
	x := w.p
	if w.By.ReferenceSet {
		x = w.reference
	}
	u := w.at.Fit.DoubtAt(w.name+".curve", x, 1)
	if factor == "" && !w.By.ReferenceSet {
		return u.In()
	}
	formula := joined(factor, "u")
	parts = append(parts, part{working.Symbol{Name: "u", Dim: w.By.ObservedDim(), Key: "curveDoubt"}, u.In()})
	if w.By.ReferenceSet {
		formula += "/f_1"
		parts = append(parts, w.risePart())
	}
	return w.term(t, formula, parts)
}

// freedom puts the degrees of freedom of a term on paper where they are finite.
func (w *budgetWork) freedom(t calibration.Part) working.In {
	if r, doubted := w.terms.Doubted[t.Key]; doubted {
		return w.put("freedom/"+t.Key, working.Rule{Key: "rig.term.freedom", Symbol: "nu", Formula: "1/(2*r^2)", Decimals: 6, Basis: "rig.budget"}, t.DF,
			[]part{{working.Symbol{Name: "r", Key: "doubtOfDoubt"}, r}})
	}
	if t.Key == "fit" {
		return w.at.Fit.Freedom().In()
	}
	return working.In{V: t.DF}
}
