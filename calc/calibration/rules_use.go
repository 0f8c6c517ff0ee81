package calibration

import (
	"strconv"

	"gaugewright/calc/basis"
	"gaugewright/calc/working"
)

// Figure is a borrowed figure on its way into a step.
func Figure(id string) working.In { return working.In{V: basis.Figure(id), Ref: "basis:" + id} }

// On puts f(x) = b_0 + b_1 x + b_2 x^2 on paper; x is of the dimension of what
// was set.
func (w Worked) On(name string, x working.In) Of {
	w.know("x", inX, x)
	return w.put(name, predict, "on", "y", w.polynomial(), forShow, w.Curve.At(x.V))
}

// High puts the largest set value on paper.
func (w Worked) High(name string) Of {
	return w.put(name, fitted, "high", "x_high", "max("+w.over("x#")+")", inX, w.Curve.High)
}

// MeanSlope puts the slope of the chord over the range on paper; for a line it
// is b_1 itself.
func (w Worked) MeanSlope(name string) Of {
	if w.Curve.Degree == Line {
		return w.B[1]
	}
	w.know("x_high", inX, w.High(name+".high").In())
	low := w.put(name+".low", fitted, "low", "x_low", "min("+w.over("x#")+")", inX, w.Curve.Low)
	w.know("x_low", inX, low.In())
	return w.put(name, fitted, "meanSlope", "b", "b_1 + b_2*(x_low + x_high)", slopes, w.Curve.B[1]+float64(w.Curve.B[2]*(w.Curve.Low+w.Curve.High)))
}

// polynomial is f of x.
func (w *Worked) polynomial() string {
	if w.Curve.Degree == Line {
		return "b_0 + b_1*x"
	}
	return "b_0 + b_1*x + b_2*x^2"
}

// SlopeAt puts f'(x) on paper; for a line it is b_1 itself.
func (w Worked) SlopeAt(name string, x working.In) Of {
	if w.Curve.Degree == Line {
		return w.B[1]
	}
	w.know("x", inX, x)
	return w.put(name, predict, "slope", "b", "b_1 + 2*b_2*x", slopes, w.Curve.Slope(x.V))
}

// LeverAt puts h(x) on paper, with z and q before it.
func (w Worked) LeverAt(name string, x working.In) Of {
	w.place(name, x)
	formula := "1/" + strconv.Itoa(len(w.Curve.Points)) + " + z^2/S_1"
	if w.Curve.Degree == Line {
		return w.put(name, predict, "lever.line", "h", formula, number, w.Curve.Lever(x.V))
	}
	w.put(name+".bend", fitted, "bend", "q", bendFormula, number, w.Curve.q(x.V))
	return w.put(name, predict, "lever.curve", "h", formula+" + q^2/S_2", number, w.Curve.Lever(x.V))
}

func (w *Worked) place(name string, x working.In) {
	w.know("x", inX, x)
	w.put(name+".place", fitted, "place", "z", "(x - x_m)/r", number, w.Curve.z(x.V))
}

// DoubtAt puts s sqrt(1/m + h(x)) on paper, with h before it. The doubt must be
// known.
func (w Worked) DoubtAt(name string, x working.In, m int) Of {
	w.LeverAt(name+".lever", x)
	return w.put(name, predict, "doubt", "u", "s*sqrt("+once(m)+"h)", inY, w.Curve.Doubt(x.V, m))
}

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
	return w.fit("freedom", "nu", strconv.Itoa(n)+" - "+strconv.Itoa(b), number, float64(n-b))
}

// WorkedInterval is an interval whose steps stand in a book.
type WorkedInterval struct{ Value, Low, High, K Of }

func (w *Worked) coverage(name string, level float64) Of {
	k := WorkCoverage(w.sheet.book, name+".k", level, float64(w.Curve.DF), w.Freedom().In())
	w.know("k", number, k.In())
	return k
}

// Ahead puts [Curve.Predict] at x on paper, with its limits where known says
// that there are any. in is what it gave, asked with m.
func (w Worked) Ahead(name string, x working.In, in Interval, m int, known bool) WorkedInterval {
	out := WorkedInterval{Value: w.On(name, x)}
	if known {
		w.DoubtAt(name+".doubt", x, m)
		out.K = w.coverage(name, in.Level)
		out.Low = w.put(name+".low", predict, "ahead.low", "y_low", "y - k*u", forShow, in.Low)
		out.High = w.put(name+".high", predict, "ahead.high", "y_high", "y + k*u", forShow, in.High)
	}
	return out
}

// Back puts the inverse at y on paper: the value and, where known says that
// there are any, its limits, each with the proof by substitution that the band
// about the curve just holds y there. in is what [Curve.Inverse] gave, asked
// with m.
func (w Worked) Back(name string, y working.In, in Interval, m int, known bool) WorkedInterval {
	c := w.Curve
	w.know("y", inY, y)
	formula := "(y - b_0)/b_1"
	switch {
	case c.Degree == Line || c.B[2] == 0:
	case c.B[1] >= 0:
		formula = "2*(y - b_0)/(b_1 + sqrt(b_1^2 + 4*b_2*(y - b_0)))"
	default:
		formula = "(sqrt(b_1^2 + 4*b_2*(y - b_0)) - b_1)/(2*b_2)"
	}
	out := WorkedInterval{Value: w.put(name, inverse, "back", "x", formula, inX, in.Value)}
	if !known {
		return out
	}
	out.K = w.coverage(name, in.Level)
	away := [2]working.In{{V: in.Value - in.Low, Ref: "search:"}, {V: in.High - in.Value, Ref: "search:"}}
	if c.Degree == Line {
		away = w.fieller(name, in, m, out.Value)
	}
	out.Low = w.limit(name+".low", "back.low", "x_low", "x - a", in.Low, out.Value, away[0], m)
	out.High = w.limit(name+".high", "back.high", "x_high", "x + a", in.High, out.Value, away[1], m)
	return out
}

// fieller puts on paper how far the limits of a line lie from the value.
func (w *Worked) fieller(name string, in Interval, m int, x Of) [2]working.In {
	w.put(name+".g", inverse, "g", "g", "(k*s/c_1)^2/S_1", number, in.G)
	w.place(name, x.In())
	count := "1/" + strconv.Itoa(len(w.Curve.Points))
	if m != CurveItself {
		count = "(" + count + " + 1/" + strconv.Itoa(m) + ")"
	}
	root := "k*s/c_1*sqrt(z^2/S_1 + (1 - g)*" + count + ")"
	down, up := w.Curve.fieller(in, m)
	return [2]working.In{
		w.put(name+".away.low", inverse, "away", "a", "r*("+root+" - z*g)/(1 - g)", inX, down).In(),
		w.put(name+".away.high", inverse, "away", "a", "r*("+root+" + z*g)/(1 - g)", inX, up).In(),
	}
}

// limit puts a limit on paper and proves that the band about the curve just
// holds y there, to [Tolerance] of y.
func (w *Worked) limit(id, key, symbol, formula string, v float64, x Of, away working.In, m int) Of {
	w.know("x", inX, x.In())
	w.know("a", inX, away)
	of := w.put(id, inverse, key, symbol, formula, inX, v)
	if w.sheet.book.On() {
		w.LeverAt(id+".lever", of.In())
		w.sheet.Prove(id+".proof", of.Ref, working.Rule{Key: "calibration.touches", Basis: inverse,
			Formula: "abs(abs(y - (" + w.polynomial() + ")) - k*s*sqrt(" + once(m) + "h)) <= tau*abs(y)"})
	}
	return of
}
