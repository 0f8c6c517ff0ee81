package calibration

import (
	"math"
	"strconv"
	"strings"

	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Places says where the points of a certificate stand, and their dimensions.
type Places struct {
	X, Y       []string // the place of each set and each observed value
	DimX, DimY quantity.Dimension
}

// Worked is a curve whose steps stand in a book.
type Worked struct {
	Curve        Curve
	DimX, DimY   quantity.Dimension
	MeanX, MeanY Of
	Half, S1, C1 Of
	Alpha, Beta  Of // of a quadratic
	S2, C2       Of // of a quadratic
	B            [3]Of
	SD           Of    // none where the doubt is not known
	SE           [3]Of // likewise
	Residuals    []Of
	sheet        *Sheet
	name         string
}

// curveKeys are the names of the symbols of curves.
var curveKeys = [][2]string{
	{"x", "setValue"}, {"y", "observedValue"}, {"x_m", "meanSet"}, {"y_m", "meanObserved"}, {"r", "halfRange"}, {"z", "place"}, {"S_1", "sumSquares"},
	{"S_2", "sumBends"}, {"c_1", "firstCoefficient"}, {"c_2", "secondCoefficient"}, {"alpha", "alpha"}, {"beta", "beta"}, {"q", "bend"}, {"l", "lineResidual"},
	{"e", "residual"}, {"b_0", "coefficient0"}, {"b_1", "coefficient1"}, {"b_2", "coefficient2"}, {"b", "curveSlope"}, {"s", "scatter"}, {"s_0", "standardError"},
	{"s_1", "standardError"}, {"s_2", "standardError"}, {"tau", "tolerance"}, {"h", "lever"}, {"u", "curveDoubt"}, {"nu", "freedom"}, {"k", "studentCoverage"},
	{"g", "fiellerG"}, {"a", "limitAway"}, {"x_low", "setValue"}, {"x_high", "setValue"}, {"y_low", "observedValue"}, {"y_high", "observedValue"},
}

// significant is how many digits the largest of a kind of numbers is printed
// with; plain is how many decimals a plain number is.
const (
	significant = 10
	plain       = 9
)

// decimals gives a number of the size of v that many digits.
func decimals(v float64) int {
	if v == 0 || v-v != 0 {
		return plain
	}
	return max(0, significant-1-int(math.Floor(math.Log10(math.Abs(v)))))
}

// kind is what a number of a curve is measured in.
type kind byte

const (
	number  kind = iota // a plain number
	inX                 // as what was set
	inY                 // as what was observed
	slopes              // y over x
	bends               // y over x squared
	forShow             // as what was observed, with fewer digits
)

func (w *Worked) of(k kind) (d quantity.Dimension, digits int) {
	c := w.Curve
	switch k {
	case inX:
		return w.DimX, decimals(math.Max(math.Abs(c.High), math.Abs(c.Low)))
	case inY, forShow:
		digits = decimals(math.Max(math.Abs(c.At(c.High)), math.Abs(c.At(c.Low))))
		if k == forShow {
			digits = max(0, digits-3)
		}
		return w.DimY, digits
	case slopes:
		return w.DimY.Over(w.DimX), decimals(c.C1 / c.Half)
	case bends:
		return w.DimY.Over(w.DimX).Over(w.DimX), decimals(c.C1 / c.Half / c.Half)
	}
	return quantity.Dimensionless, plain
}

// Bases of the rules of a curve.
const (
	fitted  = "calibration.fit"
	predict = "calibration.predict"
	inverse = "calibration.inverse"
)

// put makes a step, calibration. + key its rule. Like fit it is kept out of its
// many callers, which keeps the page smaller.
//
//go:noinline
func (w *Worked) put(id, basis, key, symbol, formula string, k kind, v float64) Of {
	d, digits := w.of(k)
	return w.sheet.Put(id, working.Rule{Key: "calibration." + key, Symbol: symbol, Formula: formula, Dim: d, Decimals: digits, Basis: basis}, v)
}

// fit makes a step of the fit, named as its rule.
//
//go:noinline
func (w *Worked) fit(key, symbol, formula string, k kind, v float64) Of {
	return w.put(w.name+key, fitted, key, symbol, formula, k, v)
}

func (w *Worked) know(symbol string, k kind, in working.In) {
	d, _ := w.of(k)
	w.sheet.Know(symbol, d, in)
}

// over writes a formula for each point, # standing for its number.
func (w *Worked) over(each string) string {
	var parts []string
	for i := range w.Curve.Points {
		parts = append(parts, strings.ReplaceAll(each, "#", strconv.Itoa(i+1)))
	}
	return strings.Join(parts, ", ")
}

func (w *Worked) sum(each string) string { return "sum(" + w.over(each) + ")" }

// each makes a step for each point from x, y and what is known by number under
// the symbols of uses, and makes it known by number.
func (w *Worked) each(key, symbol, formula string, k kind, of func(i int) float64, uses string) []Of {
	all := make([]Of, len(w.Curve.Points))
	for i := range all {
		n := strconv.Itoa(i + 1)
		for _, u := range uses {
			w.sheet.same(string(u), string(u)+n)
		}
		all[i] = w.put(w.name+key+"/"+n, fitted, key, symbol, formula, k, of(i))
		w.know(symbol+n, k, all[i].In())
	}
	return all
}

// same makes a symbol known by the value of another.
func (s *Sheet) same(symbol, as string) {
	for i := len(s.known) - 1; i >= 0; i-- {
		if s.known[i].Name == as {
			s.Know(symbol, s.known[i].Dim, s.known[i].in)
			return
		}
	}
}

// Work makes the steps of the fit: means, sums, coefficients, residuals,
// scatter and standard errors; and the proof that the normal equations hold: the
// residuals add up to nothing, alone and times what they were fitted on, to
// [Tolerance].
func (c Curve) Work(b *working.Book, name string, at Places) Worked {
	w := Worked{Curve: c, DimX: at.DimX, DimY: at.DimY, sheet: NewSheet(b, curveKeys), name: name}
	count := strconv.Itoa(len(c.Points))
	for i, p := range c.Points {
		n := strconv.Itoa(i + 1)
		w.know("x"+n, inX, working.In{V: p.X, Ref: at.X[i]})
		w.know("y"+n, inY, working.In{V: p.Y, Ref: at.Y[i]})
	}
	w.know("tau", number, Figure(Tolerance))
	w.MeanX = w.fit("meanX", "x_m", w.sum("x#")+"/"+count, inX, c.MeanX)
	w.MeanY = w.fit("meanY", "y_m", w.sum("y#")+"/"+count, inY, c.MeanY)
	w.Half = w.fit("half", "r", "(max("+w.over("x#")+") - min("+w.over("x#")+"))/2", inX, c.Half)
	w.each("place", "z", "(x - x_m)/r", number, func(i int) float64 { return c.z(c.Points[i].X) }, "x")
	w.S1 = w.fit("squares", "S_1", w.sum("z#^2"), number, c.S1)
	w.C1 = w.fit("first", "c_1", w.sum("z#*(y# - y_m)")+"/S_1", inY, c.C1)
	if c.Degree == Line {
		w.Residuals = w.each("residual.line", "e", "y - y_m - c_1*z", inY, func(i int) float64 { return c.Residuals[i] }, "yz")
		w.line()
	} else {
		w.quadratic(count)
	}
	return w
}

func (w *Worked) line() {
	c := w.Curve
	w.B[0] = w.fit("b.zero.line", "b_0", "y_m - c_1*(x_m/r)", inY, c.B[0])
	w.B[1] = w.fit("b.one.line", "b_1", "c_1/r", slopes, c.B[1])
	w.proof(w.C1.Ref, "")
	if w.scatter() {
		w.SE[0] = w.fit("error.zero.line", "s_0", "s*sqrt(1/"+strconv.Itoa(len(c.Points))+" + (x_m/r)^2/S_1)", inY, c.SE[0])
		w.SE[1] = w.fit("error.one.line", "s_1", "s/(r*sqrt(S_1))", slopes, c.SE[1])
	}
}

func (w *Worked) quadratic(count string) {
	c := w.Curve
	w.each("residual.beside", "l", "y - y_m - c_1*z", inY, func(i int) float64 { return c.besideLine(c.Points[i]) }, "yz")
	w.Alpha = w.fit("alpha", "alpha", w.sum("z#^3")+"/S_1", number, c.Alpha)
	w.Beta = w.fit("beta", "beta", "S_1/"+count, number, c.Beta)
	w.each("bend", "q", bendFormula, number, func(i int) float64 { return c.q(c.Points[i].X) }, "z")
	w.S2 = w.fit("bends", "S_2", w.sum("q#^2"), number, c.S2)
	w.C2 = w.fit("second", "c_2", w.sum("q#*l#")+"/S_2", inY, c.C2)
	w.Residuals = w.each("residual.curve", "e", "l - c_2*q", inY, func(i int) float64 { return c.Residuals[i] }, "lq")
	const none, first = "((x_m/r)^2 + alpha*(x_m/r) - beta)", "(alpha + 2*(x_m/r))"
	w.B[0] = w.fit("b.zero.curve", "b_0", "y_m - c_1*(x_m/r) + c_2*"+none, inY, c.B[0])
	w.B[1] = w.fit("b.one.curve", "b_1", "(c_1 - c_2*"+first+")/r", slopes, c.B[1])
	w.B[2] = w.fit("b.two", "b_2", "c_2/r^2", bends, c.B[2])
	w.proof(w.C2.Ref, " and abs("+w.sum("e#*x#^2")+") <= tau*"+w.sum("abs(x#^2*y#)"))
	if w.scatter() {
		w.SE[0] = w.fit("error.zero.curve", "s_0", "s*sqrt(1/"+count+" + (x_m/r)^2/S_1 + "+none+"^2/S_2)", inY, c.SE[0])
		w.SE[1] = w.fit("error.one.curve", "s_1", "s/r*sqrt(1/S_1 + "+first+"^2/S_2)", slopes, c.SE[1])
		w.SE[2] = w.fit("error.two", "s_2", "s/(r^2*sqrt(S_2))", bends, c.SE[2])
	}
}

const bendFormula = "z^2 - alpha*z - beta"

// scatter is s, where it is known.
func (w *Worked) scatter() bool {
	if w.Curve.Known() {
		w.SD = w.fit("scatter", "s", "sqrt("+w.sum("e#^2")+"/"+strconv.Itoa(w.Curve.DF)+")", inY, w.Curve.SD)
	}
	return w.Curve.Known()
}

// Tolerance is the id of the figure to which the normal equations must hold,
// a part of the sum of the sizes of what is added.
const Tolerance = "calibration.tolerance"

// proof states the normal equations.
func (w *Worked) proof(of, more string) {
	w.sheet.Prove(w.name+"normal", of, working.Rule{Key: "calibration.normal", Basis: fitted,
		Formula: "abs(" + w.sum("e#") + ") <= tau*" + w.sum("abs(y#)") + " and abs(" + w.sum("e#*x#") + ") <= tau*" + w.sum("abs(x#*y#)") + more})
}
