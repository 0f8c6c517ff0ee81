package calibration

import (
	"math"
	"strconv"
	"strings"

	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Of is a number of a curve with the place of its working.
type Of = working.Of[float64]

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
	book         *working.Book
	name         string
	z            []Of
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

// list is head with tail behind it, in memory of its own.
func list[T any](head []T, tail ...T) []T { return append(append([]T(nil), head...), tail...) }

// numbered are symbols of one kind, x1, x2 and so on.
func numbered(n int, prefix, key string, d quantity.Dimension) (all []working.Symbol) {
	for i := 1; i <= n; i++ {
		all = append(all, working.Symbol{Name: prefix + strconv.Itoa(i), Dim: d, Key: key})
	}
	return all
}

// over writes a formula for each of n points, # standing for its number.
func over(n int, each string) string {
	var parts []string
	for i := 1; i <= n; i++ {
		parts = append(parts, strings.ReplaceAll(each, "#", strconv.Itoa(i)))
	}
	return "sum(" + strings.Join(parts, ", ") + ")"
}

// entry is a symbol with its value on the way into a step.
type entry struct {
	working.Symbol
	in working.In
}

// Entries of the numbers of a curve.
func (w *Worked) meanX() entry {
	return entry{working.Symbol{Name: "x_m", Dim: w.DimX, Key: "meanSet"}, w.MeanX.In()}
}
func (w *Worked) meanY() entry {
	return entry{working.Symbol{Name: "y_m", Dim: w.DimY, Key: "meanObserved"}, w.MeanY.In()}
}
func (w *Worked) half() entry {
	return entry{working.Symbol{Name: "r", Dim: w.DimX, Key: "halfRange"}, w.Half.In()}
}
func (w *Worked) s1() entry { return entry{working.Symbol{Name: "S_1", Key: "sumSquares"}, w.S1.In()} }
func (w *Worked) s2() entry { return entry{working.Symbol{Name: "S_2", Key: "sumBends"}, w.S2.In()} }
func (w *Worked) c1() entry {
	return entry{working.Symbol{Name: "c_1", Dim: w.DimY, Key: "firstCoefficient"}, w.C1.In()}
}
func (w *Worked) c2() entry {
	return entry{working.Symbol{Name: "c_2", Dim: w.DimY, Key: "secondCoefficient"}, w.C2.In()}
}
func (w *Worked) alpha() entry {
	return entry{working.Symbol{Name: "alpha", Key: "alpha"}, w.Alpha.In()}
}
func (w *Worked) beta() entry { return entry{working.Symbol{Name: "beta", Key: "beta"}, w.Beta.In()} }
func (w *Worked) sd() entry {
	return entry{working.Symbol{Name: "s", Dim: w.DimY, Key: "scatter"}, w.SD.In()}
}

// coefficients are the keys of the names of b_0, b_1 and b_2.
var coefficients = [...]string{"coefficient0", "coefficient1", "coefficient2"}

func (w *Worked) b(i int) entry {
	dims := [3]quantity.Dimension{w.DimY, w.DimY.Over(w.DimX), w.DimY.Over(w.DimX).Over(w.DimX)}
	return entry{working.Symbol{Name: "b_" + strconv.Itoa(i), Dim: dims[i], Key: coefficients[i]}, w.B[i].In()}
}
func (w *Worked) x(in working.In) entry {
	return entry{working.Symbol{Name: "x", Dim: w.DimX, Key: "setValue"}, in}
}
func (w *Worked) y(in working.In) entry {
	return entry{working.Symbol{Name: "y", Dim: w.DimY, Key: "observedValue"}, in}
}
func zOf(z Of) entry { return entry{working.Symbol{Name: "z", Key: "place"}, z.In()} }

// rows are the entries of one kind for all points.
func rows(prefix, key string, d quantity.Dimension, ins []working.In) (all []entry) {
	for i, s := range numbered(len(ins), prefix, key, d) {
		all = append(all, entry{s, ins[i]})
	}
	return all
}

func insOf(all []Of) (ins []working.In) {
	for _, v := range all {
		ins = append(ins, v.In())
	}
	return ins
}

// put makes a step of a curve.
func (w *Worked) put(name string, r working.Rule, v float64, entries ...entry) Of {
	ins := make([]working.In, len(entries))
	for i, e := range entries {
		r.Inputs = append(r.Inputs, e.Symbol)
		ins[i] = e.in
	}
	if r.Basis == "" {
		r.Basis = "calibration.fit"
	}
	return working.Put(w.book, r, name, v, ins...)
}

// Decimals of what is of the kind of y, and of x.
func (w *Worked) placesY() int {
	return decimals(math.Max(math.Abs(w.Curve.At(w.Curve.High)), math.Abs(w.Curve.At(w.Curve.Low))))
}
func (w *Worked) placesX() int {
	return decimals(math.Max(math.Abs(w.Curve.High), math.Abs(w.Curve.Low)))
}

// Work makes the steps of the fit: means, sums, coefficients, residuals,
// scatter and standard errors; and the proof that the normal equations hold: the
// residuals add up to nothing, alone and times what they were fitted on, to
// [Tolerance].
func (c Curve) Work(b *working.Book, name string, at Places) Worked {
	w := Worked{Curve: c, DimX: at.DimX, DimY: at.DimY, book: b, name: name}
	n := len(c.Points)
	var xs, ys []working.In
	for i, p := range c.Points {
		xs, ys = append(xs, working.In{V: p.X, Ref: at.X[i]}), append(ys, working.In{V: p.Y, Ref: at.Y[i]})
	}
	x, y := rows("x", "setValue", at.DimX, xs), rows("y", "observedValue", at.DimY, ys)
	count, dy := strconv.Itoa(n), w.placesY()

	w.MeanX = w.put(name+"meanX", working.Rule{Key: "calibration.meanX", Symbol: "x_m", Formula: over(n, "x#") + "/" + count, Dim: at.DimX, Decimals: w.placesX()}, c.MeanX, x...)
	w.MeanY = w.put(name+"meanY", working.Rule{Key: "calibration.meanY", Symbol: "y_m", Formula: over(n, "y#") + "/" + count, Dim: at.DimY, Decimals: dy}, c.MeanY, y...)
	w.Half = w.halfRange(x)
	for i, p := range c.Points {
		w.z = append(w.z, w.place(name+"place/"+strconv.Itoa(i+1), working.In{V: p.X, Ref: at.X[i]}))
	}
	z := rows("z", "place", quantity.Dimensionless, insOf(w.z))
	w.S1 = w.put(name+"S1", working.Rule{Key: "calibration.S1", Symbol: "S_1", Formula: over(n, "z#^2"), Decimals: plain}, c.S1, z...)
	w.C1 = w.put(name+"C1", working.Rule{Key: "calibration.C1", Symbol: "c_1", Formula: over(n, "z#*(y# - y_m)") + "/S_1", Dim: at.DimY, Decimals: dy}, c.C1,
		list(list(z, y...), w.meanY(), w.s1())...)
	w.residuals(ys)
	w.coefficients()
	w.scatter()
	w.proof(xs, ys)
	return w
}

func (w *Worked) halfRange(x []entry) Of {
	names := make([]string, len(x))
	for i, e := range x {
		names[i] = e.Name
	}
	all := strings.Join(names, ", ")
	return w.put(w.name+"half", working.Rule{Key: "calibration.half", Symbol: "r", Formula: "(max(" + all + ") - min(" + all + "))/2", Dim: w.DimX, Decimals: w.placesX()}, w.Curve.Half, x...)
}

// place puts z of an x on paper.
func (w *Worked) place(name string, x working.In) Of {
	return w.put(name, working.Rule{Key: "calibration.place", Symbol: "z", Formula: "(x - x_m)/r", Decimals: plain}, w.Curve.z(x.V), w.x(x), w.meanX(), w.half())
}

func (w *Worked) residuals(ys []working.In) {
	c, n, dy := w.Curve, len(ys), w.placesY()
	line := make([]Of, n)
	for i, p := range c.Points {
		line[i] = w.put(w.name+"residual.line/"+strconv.Itoa(i+1), working.Rule{Key: "calibration.residual.line", Symbol: "r", Formula: "y - y_m - c_1*z", Dim: w.DimY, Decimals: dy},
			c.besideLine(p), w.y(ys[i]), w.meanY(), w.c1(), zOf(w.z[i]))
	}
	w.Residuals = line
	if c.Degree == Line {
		return
	}
	z := rows("z", "place", quantity.Dimensionless, insOf(w.z))
	w.Alpha = w.put(w.name+"alpha", working.Rule{Key: "calibration.alpha", Symbol: "alpha", Formula: over(n, "z#^3") + "/S_1", Decimals: plain}, c.Alpha, list(z, w.s1())...)
	w.Beta = w.put(w.name+"beta", working.Rule{Key: "calibration.beta", Symbol: "beta", Formula: "S_1/" + strconv.Itoa(n), Decimals: plain}, c.Beta, w.s1())
	q := make([]Of, n)
	for i := range q {
		q[i] = w.bend(w.name+"bend/"+strconv.Itoa(i+1), w.z[i], c.q(c.Points[i].X))
	}
	qs := rows("q", "bend", quantity.Dimensionless, insOf(q))
	w.S2 = w.put(w.name+"S2", working.Rule{Key: "calibration.S2", Symbol: "S_2", Formula: over(n, "q#^2"), Decimals: plain}, c.S2, qs...)
	w.C2 = w.put(w.name+"C2", working.Rule{Key: "calibration.C2", Symbol: "c_2", Formula: over(n, "q#*r#") + "/S_2", Dim: w.DimY, Decimals: dy}, c.C2,
		list(list(qs, rows("r", "lineResidual", w.DimY, insOf(line))...), w.s2())...)
	w.Residuals = make([]Of, n)
	for i := range line {
		w.Residuals[i] = w.put(w.name+"residual.curve/"+strconv.Itoa(i+1), working.Rule{Key: "calibration.residual.curve", Symbol: "e", Formula: "r - c_2*q", Dim: w.DimY, Decimals: dy},
			c.Residuals[i], entry{working.Symbol{Name: "r", Dim: w.DimY, Key: "lineResidual"}, line[i].In()}, w.c2(), bendOf(q[i]))
	}
}

// bend puts q of a place on paper.
func (w *Worked) bend(name string, z Of, v float64) Of {
	return w.put(name, working.Rule{Key: "calibration.bend", Symbol: "q", Formula: "z^2 - alpha*z - beta", Decimals: plain}, v, zOf(z), w.alpha(), w.beta())
}

func bendOf(q Of) entry { return entry{working.Symbol{Name: "q", Key: "bend"}, q.In()} }

func (w *Worked) coefficients() {
	c, dy := w.Curve, w.placesY()
	if c.Degree == Line {
		w.B[0] = w.put(w.name+"b0", working.Rule{Key: "calibration.b0.line", Symbol: "b_0", Formula: "y_m - c_1*(x_m/r)", Dim: w.DimY, Decimals: dy}, c.B[0], w.meanY(), w.c1(), w.meanX(), w.half())
		w.B[1] = w.put(w.name+"b1", working.Rule{Key: "calibration.b1.line", Symbol: "b_1", Formula: "c_1/r", Dim: w.b(1).Dim, Decimals: decimals(c.B[1])}, c.B[1], w.c1(), w.half())
		return
	}
	w.B[0] = w.put(w.name+"b0", working.Rule{Key: "calibration.b0.curve", Symbol: "b_0", Formula: "y_m - c_1*(x_m/r) + c_2*((x_m/r)^2 + alpha*(x_m/r) - beta)", Dim: w.DimY, Decimals: dy}, c.B[0],
		w.meanY(), w.c1(), w.meanX(), w.half(), w.c2(), w.alpha(), w.beta())
	w.B[1] = w.put(w.name+"b1", working.Rule{Key: "calibration.b1.curve", Symbol: "b_1", Formula: "(c_1 - c_2*(alpha + 2*(x_m/r)))/r", Dim: w.b(1).Dim, Decimals: decimals(c.C1 / c.Half)}, c.B[1],
		w.c1(), w.c2(), w.alpha(), w.meanX(), w.half())
	w.B[2] = w.put(w.name+"b2", working.Rule{Key: "calibration.b2", Symbol: "b_2", Formula: "c_2/r^2", Dim: w.b(2).Dim, Decimals: decimals(c.C1 / c.Half / c.Half)}, c.B[2], w.c2(), w.half())
}

// scatter is s, and the standard errors of the coefficients.
func (w *Worked) scatter() {
	c, n, dy := w.Curve, len(w.Residuals), w.placesY()
	if !c.Known() {
		return
	}
	w.SD = w.put(w.name+"scatter", working.Rule{Key: "calibration.scatter", Symbol: "s", Formula: "sqrt(" + over(n, "e#^2") + "/" + strconv.Itoa(c.DF) + ")", Dim: w.DimY, Decimals: dy}, c.SD,
		rows("e", "residual", w.DimY, insOf(w.Residuals))...)
	per, bent := w.b(1).Dim, w.b(2).Dim
	count := strconv.Itoa(n)
	dSlope := decimals(c.C1 / c.Half)
	if c.Degree == Line {
		w.SE[0] = w.put(w.name+"error0", working.Rule{Key: "calibration.error0.line", Symbol: "s_0", Formula: "s*sqrt(1/" + count + " + (x_m/r)^2/S_1)", Dim: w.DimY, Decimals: dy}, c.SE[0],
			w.sd(), w.meanX(), w.half(), w.s1())
		w.SE[1] = w.put(w.name+"error1", working.Rule{Key: "calibration.error1.line", Symbol: "s_1", Formula: "s/(r*sqrt(S_1))", Dim: per, Decimals: dSlope}, c.SE[1], w.sd(), w.half(), w.s1())
		return
	}
	w.SE[0] = w.put(w.name+"error0", working.Rule{Key: "calibration.error0.curve", Symbol: "s_0", Dim: w.DimY, Decimals: dy,
		Formula: "s*sqrt(1/" + count + " + (x_m/r)^2/S_1 + ((x_m/r)^2 + alpha*(x_m/r) - beta)^2/S_2)"}, c.SE[0],
		w.sd(), w.meanX(), w.half(), w.s1(), w.alpha(), w.beta(), w.s2())
	w.SE[1] = w.put(w.name+"error1", working.Rule{Key: "calibration.error1.curve", Symbol: "s_1", Formula: "s/r*sqrt(1/S_1 + (alpha + 2*(x_m/r))^2/S_2)", Dim: per, Decimals: dSlope}, c.SE[1],
		w.sd(), w.half(), w.s1(), w.alpha(), w.meanX(), w.s2())
	w.SE[2] = w.put(w.name+"error2", working.Rule{Key: "calibration.error2", Symbol: "s_2", Formula: "s/(r^2*sqrt(S_2))", Dim: bent, Decimals: decimals(c.C1 / c.Half / c.Half)}, c.SE[2],
		w.sd(), w.half(), w.s2())
}

// Tolerance is the id of the figure to which the normal equations must hold,
// a part of the sum of the sizes of what is added.
const Tolerance = "calibration.tolerance"

func toleranceEntry() entry {
	return entry{working.Symbol{Name: "tau", Key: "tolerance"}, Figure(Tolerance)}
}

// proof states the normal equations.
func (w *Worked) proof(xs, ys []working.In) {
	if !w.book.On() {
		return
	}
	n := len(xs)
	r := working.Rule{Key: "calibration.normal", Basis: "calibration.fit",
		Formula: "abs(" + over(n, "e#") + ") <= tau*" + over(n, "abs(y#)") + " and abs(" + over(n, "e#*x#") + ") <= tau*" + over(n, "abs(x#*y#)")}
	of := w.C1.Ref
	if w.Curve.Degree == Quadratic {
		r.Formula += " and abs(" + over(n, "e#*x#^2") + ") <= tau*" + over(n, "abs(x#^2*y#)")
		of = w.C2.Ref
	}
	entries := list(list(rows("e", "residual", w.DimY, insOf(w.Residuals)), rows("x", "setValue", w.DimX, xs)...), rows("y", "observedValue", w.DimY, ys)...)
	w.prove(w.name+"normal", of, r, list(entries, toleranceEntry())...)
}

func (w *Worked) prove(name, of string, r working.Rule, entries ...entry) {
	ins := make([]working.In, len(entries))
	for i, e := range entries {
		r.Inputs = append(r.Inputs, e.Symbol)
		ins[i] = e.in
	}
	working.Prove(w.book, r, name, of, ins...)
}
