package calibration

import "math"

// Shape is the distribution that stands behind a standard uncertainty.
type Shape byte

// The shapes.
const (
	Rectangular Shape = 'r' // a limit on both sides, evenly likely inside: half-width over sqrt 3
	Normal      Shape = 'n' // an expanded uncertainty with its coverage factor
	Student     Shape = 't' // scatter of finitely many observations
)

// Certain is the number of degrees of freedom of an uncertainty that is not
// itself in doubt (JCGM 100:2008, G.4.2 and G.4.3).
func Certain() float64 { return math.Inf(1) }

// Doubted returns the degrees of freedom of an uncertainty that may be off by
// the part r of itself, nu = 1/(2 r^2), r > 0. A quarter gives 8.
//
// Source: JCGM 100:2008, G.4.2, formula (G.3).
func Doubted(r float64) float64 { return 1 / float64(float64(2*r)*r) }

// Even returns the standard uncertainty of what lies within -a and a, evenly
// likely, u = a/sqrt 3. Source: JCGM 100:2008, 4.3.7.
func Even(a float64) float64 { return a / math.Sqrt(3) }

// Term is one input of a budget.
type Term struct {
	Key         string  // names it
	Shape       Shape   // its distribution
	Half        float64 // half-width or expanded uncertainty that U was made from, in the input's unit
	U           float64 // standard uncertainty of the input, in its unit
	Sensitivity float64 // change of the result for one unit of the input
	DF          float64 // degrees of freedom, [Certain] unless doubted
}

// Part is a term with what it brings to the result.
type Part struct {
	Term
	Contribution float64 // standard uncertainty of the result from it, |c| u
	Share        float64 // of the combined variance; 0 where that is 0
	Without      float64 // expanded uncertainty with this term set to zero
}

// Budget is the doubt of a result by its terms.
type Budget struct {
	Parts []Part
	U     float64 // expanded uncertainty k u_c
	Uc    float64 // combined standard uncertainty
	DF    float64 // effective degrees of freedom, a real number or infinite
	K     float64 // coverage factor of Student's t for DF
	Level float64 // two-sided, 0.95
}

// Combine puts independent terms together,
//
//	u_c^2 = sum (c u)^2,  nu = u_c^4/sum ((c u)^4/nu_i),  U = k u_c
//
// with k the two-sided quantile of Student's t for level. The effective degrees
// of freedom stay a real number and k is the quantile at it, which G.4.1 leaves
// open beside cutting nu down to a whole number, as its examples do; at small nu
// that gives a slightly smaller U (H.1: 92.1 for 92.6). From 10^8 on they count as
// infinite. With a term of few degrees of freedom U may rise when another term is
// set to zero, for k grows faster than u_c falls.
//
// Source: JCGM 100:2008, 5.1.2, formula (10); G.4.1, formula (G.2b); 6.2.1. Not
// covered: terms that go together other than wholly inside one term, and second
// order (5.1.2, note).
func Combine(terms []Term, level float64) Budget {
	b := combined(terms, -1, level)
	for i, t := range terms {
		p := Part{Term: t, Contribution: math.Abs(t.Sensitivity) * t.U}
		if b.Uc > 0 {
			p.Share = float64(p.Contribution*p.Contribution) / float64(b.Uc*b.Uc)
		}
		p.Without = combined(terms, i, level).U
		b.Parts = append(b.Parts, p)
	}
	return b
}

// Whole is [Combine] without the parts: for a search, which asks many times.
func Whole(terms []Term, level float64) Budget { return combined(terms, -1, level) }

// combined leaves out one term, none at -1.
func combined(terms []Term, out int, level float64) Budget {
	squares, fourths := 0.0, 0.0
	for i, t := range terms {
		if i == out {
			continue
		}
		c := math.Abs(t.Sensitivity) * t.U
		square := float64(c * c)
		squares += square
		if !math.IsInf(t.DF, 1) {
			fourths += float64(square*square) / t.DF
		}
	}
	b := Budget{Uc: math.Sqrt(squares), DF: Certain(), Level: level}
	if df := float64(squares*squares) / fourths; fourths > 0 && df < asNormal {
		b.DF = df
	}
	b.K = Coverage(level, b.DF)
	b.U = b.K * b.Uc
	return b
}

// Short returns the chance that a quantity with the best estimate value lies
// below a bound, and [Budget.Passed] that it lies above one,
//
//	P(T > (value - bound)/u_c),  P(T > (bound - value)/u_c)
//
// with T of Student with the budget's degrees of freedom: one-sided. Without
// doubt it is 0, 1 or, on the bound itself, 0.
//
// Source: JCGM 106:2012, clause 7 (from memory), with the scaled and shifted t
// of JCGM 100:2008, annex G.
func (b Budget) Short(value, bound float64) float64 { return b.chance(value - bound) }

// Passed is the chance that the quantity lies above the bound; see
// [Budget.Short].
func (b Budget) Passed(value, bound float64) float64 { return b.chance(bound - value) }

// chance is that of an error larger than the margin.
func (b Budget) chance(margin float64) float64 {
	switch {
	case b.Uc > 0:
		within := b.within(margin / b.Uc)
		if margin < 0 {
			return (1 + within) / 2
		}
		return (1 - within) / 2
	case margin < 0:
		return 1
	}
	return 0
}

// within is the chance of an error of at most t standard uncertainties in size.
func (b Budget) within(t float64) float64 { return 1 - 2*Beyond(math.Abs(t), b.DF) }
