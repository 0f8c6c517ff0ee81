package calibration

import (
	"strconv"

	"gaugewright/calc/basis"
	"gaugewright/calc/working"
)

// Figure is a borrowed figure on its way into a step.
func Figure(id string) working.In { return working.In{V: basis.Figure(id), Ref: "basis:" + id} }

const (
	predict = "calibration.predict"
	inverse = "calibration.inverse"
)

// On puts f(x) = b_0 + b_1 x + b_2 x^2 on paper; x is of the dimension of what
// was set.
func (w Worked) On(name string, x working.In) Of {
	formula, entries := w.polynomial()
	return w.put(name, working.Rule{Key: "calibration.on", Symbol: "y", Formula: formula, Dim: w.DimY, Decimals: w.placesY() - 3, Basis: predict},
		w.Curve.At(x.V), list([]entry{w.x(x)}, entries...)...)
}

// polynomial is f of x, with its coefficients.
func (w *Worked) polynomial() (string, []entry) {
	if w.Curve.Degree == Line {
		return "b_0 + b_1*x", []entry{w.b(0), w.b(1)}
	}
	return "b_0 + b_1*x + b_2*x^2", []entry{w.b(0), w.b(1), w.b(2)}
}

// SlopeAt puts f'(x) on paper; for a line it is b_1 itself.
func (w Worked) SlopeAt(name string, x working.In) Of {
	if w.Curve.Degree == Line {
		return w.B[1]
	}
	return w.put(name, working.Rule{Key: "calibration.slope", Symbol: "b", Formula: "b_1 + 2*b_2*x", Dim: w.b(1).Dim, Decimals: decimals(w.Curve.B[1]), Basis: predict},
		w.Curve.Slope(x.V), w.b(1), w.b(2), w.x(x))
}

// LeverAt puts h(x) on paper, with z and q before it.
func (w Worked) LeverAt(name string, x working.In) Of {
	z := w.place(name+".place", x)
	r := working.Rule{Key: "calibration.lever.line", Symbol: "h", Formula: "1/" + strconv.Itoa(len(w.Curve.Points)) + " + z^2/S_1", Decimals: plain, Basis: predict}
	entries := []entry{zOf(z), w.s1()}
	if w.Curve.Degree == Quadratic {
		r.Key = "calibration.lever.curve"
		r.Formula += " + q^2/S_2"
		entries = append(entries, bendOf(w.bend(name+".bend", z, w.Curve.q(x.V))), w.s2())
	}
	return w.put(name, r, w.Curve.Lever(x.V), entries...)
}

// DoubtAt puts s sqrt(1/m + h(x)) on paper, with h before it. The doubt must be
// known.
func (w Worked) DoubtAt(name string, x working.In, m int) Of {
	h := w.LeverAt(name+".lever", x)
	return w.put(name, working.Rule{Key: "calibration.doubt", Symbol: "u", Formula: "s*sqrt(" + once(m) + "h)", Dim: w.DimY, Decimals: w.placesY(), Basis: predict},
		w.Curve.Doubt(x.V, m), w.sd(), leverOf(h))
}

func leverOf(h Of) entry { return entry{working.Symbol{Name: "h", Key: "lever"}, h.In()} }

// once is the part of a new observation in a formula.
func once(m int) string {
	switch m {
	case CurveItself:
		return ""
	case 1:
		return "1 + "
	}
	return "1/" + strconv.Itoa(m) + " + "
}

// Freedom puts the degrees of freedom of the scatter on paper.
func (w Worked) Freedom() Of {
	n, b := len(w.Curve.Points), int(w.Curve.Degree)+1
	return w.put(w.name+"freedom", working.Rule{Key: "calibration.freedom", Symbol: "nu", Formula: strconv.Itoa(n) + " - " + strconv.Itoa(b)}, float64(n-b))
}

// Ahead puts [Curve.Predict] at x on paper, with its limits where known says
// that there are any. in is what it gave, asked with m.
func (w Worked) Ahead(name string, x working.In, in Interval, m int, known bool) WorkedInterval {
	out := WorkedInterval{Value: w.On(name, x)}
	if !known {
		return out
	}
	u := w.DoubtAt(name+".doubt", x, m)
	out.K = WorkCoverage(w.book, name+".k", in.Level, float64(w.Curve.DF), w.Freedom().In())
	limit := func(key, sign string, v float64) Of {
		return w.put(name+"."+key, working.Rule{Key: "calibration.ahead." + key, Symbol: "y_" + key, Formula: "y " + sign + " k*u", Dim: w.DimY, Decimals: w.placesY() - 3, Basis: predict}, v,
			w.y(out.Value.In()), coverageEntry(out.K), entry{working.Symbol{Name: "u", Dim: w.DimY, Key: "curveDoubt"}, u.In()})
	}
	out.Low, out.High = limit("low", "-", in.Low), limit("high", "+", in.High)
	return out
}

func coverageEntry(k Of) entry {
	return entry{working.Symbol{Name: "k", Key: "studentCoverage"}, k.In()}
}

// WorkedInterval is an interval whose steps stand in a book.
type WorkedInterval struct{ Value, Low, High, K Of }

// Back puts the inverse at y on paper: the value and, where known says that
// there are any, its limits, each with the proof by substitution that the band
// about the curve just holds y there. in is what [Curve.Inverse] gave, asked
// with m.
func (w Worked) Back(name string, y working.In, in Interval, m int, known bool) WorkedInterval {
	c := w.Curve
	r := working.Rule{Key: "calibration.back", Symbol: "x", Formula: "(y - b_0)/b_1", Dim: w.DimX, Decimals: w.placesX(), Basis: inverse}
	_, entries := w.polynomial()
	switch {
	case c.Degree == Line:
	case c.B[2] == 0:
		entries = entries[:2]
	case c.B[1] >= 0:
		r.Formula = "2*(y - b_0)/(b_1 + sqrt(b_1^2 + 4*b_2*(y - b_0)))"
	default:
		r.Formula = "(sqrt(b_1^2 + 4*b_2*(y - b_0)) - b_1)/(2*b_2)"
	}
	out := WorkedInterval{Value: w.put(name, r, in.Value, list([]entry{w.y(y)}, entries...)...)}
	if !known {
		return out
	}
	out.K = WorkCoverage(w.book, name+".k", in.Level, float64(c.DF), w.Freedom().In())
	away := [2]working.In{{V: in.Value - in.Low, Ref: "search:"}, {V: in.High - in.Value, Ref: "search:"}}
	if c.Degree == Line {
		away = w.fieller(name, in, m, out)
	}
	limit := func(key, sign string, v float64, a working.In) Of {
		of := w.put(name+"."+key, working.Rule{Key: "calibration.limit." + key, Symbol: "x_" + key, Formula: "x " + sign + " a", Dim: w.DimX, Decimals: w.placesX(), Basis: inverse}, v,
			w.x(out.Value.In()), entry{working.Symbol{Name: "a", Dim: w.DimX, Key: "limitAway"}, a})
		w.touches(name+"."+key, y, of, out.K, m)
		return of
	}
	out.Low, out.High = limit("low", "-", in.Low, away[0]), limit("high", "+", in.High, away[1])
	return out
}

// fieller puts on paper how far the limits of a line lie from the value.
func (w *Worked) fieller(name string, in Interval, m int, at WorkedInterval) (away [2]working.In) {
	k := coverageEntry(at.K)
	g := w.put(name+".g", working.Rule{Key: "calibration.g", Symbol: "g", Formula: "(k*s/c_1)^2/S_1", Decimals: plain, Basis: inverse}, in.G, k, w.sd(), w.c1(), w.s1())
	z := w.place(name+".place", at.Value.In())
	count := "1/" + strconv.Itoa(len(w.Curve.Points))
	if m != CurveItself {
		count = "(" + count + " + 1/" + strconv.Itoa(m) + ")"
	}
	down, up := w.Curve.fieller(in, m)
	of := func(key, sign string, v float64) working.In {
		return w.put(name+".away."+key, working.Rule{Key: "calibration.away", Symbol: "a", Dim: w.DimX, Decimals: w.placesX(), Basis: inverse,
			Formula: "r*(k*s/c_1*sqrt(z^2/S_1 + (1 - g)*" + count + ") " + sign + " z*g)/(1 - g)"}, v,
			w.half(), k, w.sd(), w.c1(), zOf(z), w.s1(), entry{working.Symbol{Name: "g", Key: "fiellerG"}, g.In()}).In()
	}
	return [2]working.In{of("low", "-", down), of("high", "+", up)}
}

// touches proves that at a limit the band about the curve just holds y, to
// [Tolerance] of y.
func (w *Worked) touches(name string, y working.In, limit, k Of, m int) {
	if !w.book.On() {
		return
	}
	h := w.LeverAt(name+".lever", limit.In())
	formula, entries := w.polynomial()
	w.prove(name+".proof", limit.Ref, working.Rule{Key: "calibration.touches", Basis: inverse, Formula: "abs(abs(y - (" + formula + ")) - k*s*sqrt(" + once(m) + "h)) <= tau*abs(y)"},
		list(entries, w.y(y), w.x(limit.In()), coverageEntry(k), w.sd(), leverOf(h), toleranceEntry())...)
}
