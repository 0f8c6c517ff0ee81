package calibration

import (
	"math"
	"strconv"
	"strings"

	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Student's t in the language of formulas, which has no beta function: with w =
// t/(sqrt nu + sqrt(nu + t^2)), the tangent of half the angle whose tangent is
// t/sqrt nu, the chance to stay within -t and t is
//
//	c = (R(nu)/(sqrt pi/2)) int_0^w ((1 - v^2)/(1 + v^2))^(nu - 1) 2/(1 + v^2) dv
//
// with R(nu) = gamma((nu + 1)/2)/gamma(nu/2). The integral is Gauss's sum over
// the nodes below; R by eight steps of its recurrence R(nu) = R(nu + 2) nu/(nu + 1)
// and the first terms of its expansion for large nu. Both together are good to 1e-5 for
// every nu from 1 and every t up to 30 (tested), enough for a proof; the
// values themselves come from [Coverage] and [Beyond].
var (
	gaussNodes   = [...]string{"0.0130467357", "0.0674683167", "0.1602952159", "0.2833023029", "0.4255628305", "0.5744371695", "0.7166976971", "0.8397047841", "0.9325316833", "0.9869532643"}
	gaussWeights = [...]string{"0.0333356722", "0.0747256746", "0.1095431813", "0.1346333597", "0.1477621124", "0.1477621124", "0.1346333597", "0.1095431813", "0.0747256746", "0.0333356722"}
)

// gauss is the mean of a function over 0 to 1, # standing for the place.
func gauss(of string) string {
	parts := make([]string, len(gaussNodes))
	for i, node := range gaussNodes {
		parts[i] = gaussWeights[i] + "*" + strings.ReplaceAll(of, "#", node)
	}
	return "sum(" + strings.Join(parts, ", ") + ")"
}

// studentWithin is c as a formula of w and nu. Beyond 3.2/sqrt nu, a t of more
// than 6.4, nothing is left that would show, and the sum over ten nodes would no
// longer see the narrow top.
func studentWithin() string {
	const within = "min(w, 3.2/sqrt(nu))"
	steps := "nu/(nu + 1)"
	for i := 2; i < 16; i += 2 {
		steps += "*(nu + " + strconv.Itoa(i) + ")/(nu + " + strconv.Itoa(i+1) + ")"
	}
	far := "(nu + 16)"
	r := steps + "*sqrt(" + far + "/2)*(1 - 1/(4*" + far + ") + 1/(32*" + far + "^2) + 5/(128*" + far + "^3))"
	v := "(" + within + "*#)^2"
	return "4/sqrt(pi)*" + r + "*" + within + "*" + gauss("((1 - "+v+")/(1 + "+v+"))^(nu - 1)/(1 + "+v+")")
}

// normalWithin is the chance that a normal variable stays within -t and t.
func normalWithin() string {
	return "sqrt(2/pi)*min(t, 6)*" + gauss("2.718281828459045^(-(min(t, 6)*#)^2/2)")
}

// studentKeys are the names of the symbols of chances.
var studentKeys = [][2]string{{"nu", "freedom"}, {"w", "halfTangent"}, {"c", "within"}, {"t", "margin"}, {"k", "studentCoverage"}, {"F_1", "higher"}, {"F_2", "lower"},
	{"u_c", "combined"}, {"P", "chance"}}

// studentProof and normalProof state that c is the chance to stay within.
func studentProof() working.Rule {
	return working.Rule{Key: "calibration.student", Basis: student, Formula: "abs(" + studentWithin() + " - c) <= 0.00001"}
}

func normalProof() working.Rule {
	return working.Rule{Key: "calibration.normalLaw", Basis: student, Formula: "abs(" + normalWithin() + " - c) <= 0.00001"}
}

// LevelFigure and NormalFigure are the ids of the figures for the two-sided
// level, 0.95, and for the coverage factor of a normal distribution there.
const (
	LevelFigure  = "calibration.level"
	NormalFigure = "calibration.normalCoverage"

	student = "calibration.student"
	chance  = "calibration.chance"
)

// WorkCoverage puts the coverage factor k for a level on paper, with the proof
// that Student's distribution with nu degrees of freedom has so much within -k
// and k. Where nu is infinite, k is the figure of the normal distribution; then
// the level must be that of [LevelFigure].
func WorkCoverage(b *working.Book, name string, level, nu float64, at working.In) Of {
	if math.IsInf(nu, 1) {
		in := Figure(NormalFigure)
		return Of{V: in.V, Ref: in.Ref}
	}
	k := Coverage(level, nu)
	sheet := newStudent(b)
	sheet.plain("nu", at)
	sheet.plain("w", working.In{V: halfTangent(k, nu), Ref: "search:"})
	sheet.plain("c", working.In{V: level, Ref: "search:"})
	if figure := Figure(LevelFigure); figure.V == level {
		sheet.plain("c", figure)
	}
	of := sheet.put(name, "coverage", "k", "2*w*sqrt(nu)/(1 - w^2)", student, k)
	sheet.Prove(name+".proof", of.Ref, studentProof())
	return of
}

func halfTangent(t, nu float64) float64 { return t / (math.Sqrt(nu) + math.Sqrt(nu+float64(t*t))) }

// studentSheet is a sheet of plain numbers.
type studentSheet struct{ *Sheet }

func newStudent(b *working.Book) studentSheet { return studentSheet{NewSheet(b, studentKeys)} }

func (s studentSheet) plain(symbol string, in working.In) { s.Know(symbol, quantity.Dimensionless, in) }

func (s studentSheet) put(id, key, symbol, formula, basis string, v float64) Of {
	return s.Put(id, working.Rule{Key: "calibration." + key, Symbol: symbol, Formula: formula, Decimals: plain, Basis: basis}, v)
}

// WorkShort and WorkPassed put the chances [Budget.Short] and [Budget.Passed] on
// paper; value, bound and uc are forces, say, of one dimension d, and uc is
// above zero.
func (b Budget) WorkShort(book *working.Book, name string, d quantity.Dimension, value, bound, uc, nu working.In) Of {
	return b.workChance(book, name, d, value, bound, uc, nu)
}

// WorkPassed is the working of [Budget.Passed]; see [Budget.WorkShort].
func (b Budget) WorkPassed(book *working.Book, name string, d quantity.Dimension, value, bound, uc, nu working.In) Of {
	return b.workChance(book, name, d, bound, value, uc, nu)
}

func (b Budget) workChance(book *working.Book, name string, d quantity.Dimension, high, low, uc, nu working.In) Of {
	sheet := newStudent(book)
	sheet.Know("F_1", d, high)
	sheet.Know("F_2", d, low)
	sheet.Know("u_c", d, uc)
	t := (high.V - low.V) / uc.V
	sheet.put(name+".margin", "margin", "t", "(F_1 - F_2)/u_c", chance, t)
	sheet.plain("c", working.In{V: b.within(t), Ref: "search:"})
	formula, proof := "(1 - c)/2", normalProof
	if t < 0 {
		formula = "(1 + c)/2"
	}
	of := sheet.put(name, "chance", "P", formula, chance, b.chance(high.V-low.V))
	if math.IsInf(b.DF, 1) {
		sheet.put(name+".size", "size", "t", "abs(t)", chance, math.Abs(t))
	} else {
		sheet.plain("nu", nu)
		sheet.put(name+".w", "halfTangent", "w", "abs(t)/(sqrt(nu) + sqrt(nu + t^2))", student, halfTangent(math.Abs(t), b.DF))
		proof = studentProof
	}
	sheet.Prove(name+".proof", of.Ref, proof())
	return of
}
