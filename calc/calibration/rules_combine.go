package calibration

import (
	"math"
	"strconv"
	"strings"

	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// WorkedBudget is a budget whose steps stand in a book.
type WorkedBudget struct {
	U, Uc, DF, K Of   // DF has no place where it is infinite
	Shares       []Of // of the terms, in their order
	Without      []Of // U with one term set to zero
}

// Work puts a budget on paper. contributions are the steps of c u of its terms,
// of dimension d, and freedoms those of their degrees of freedom, looked at only
// where these are finite. U must not be zero.
func (b Budget) Work(book *working.Book, name string, d quantity.Dimension, contributions, freedoms []working.In) WorkedBudget {
	w := b.workWhole(book, name, d, contributions, freedoms, -1)
	for i, p := range b.Parts {
		id := name + ".share/" + strconv.Itoa(i+1)
		w.Shares = append(w.Shares, working.Put(book, working.Rule{Key: "calibration.share", Symbol: "s", Formula: "(u/u_c)^2", Decimals: 6, Basis: "calibration.combine",
			Inputs: []working.Symbol{{Name: "u", Dim: d, Key: "contribution"}, {Name: "u_c", Dim: d, Key: "combined"}}},
			id, p.Share, contributions[i], w.Uc.In()))
		without := Of{}
		if p.Without > 0 {
			without = b.workWhole(book, name+".without/"+strconv.Itoa(i+1), d, contributions, freedoms, i).U
		}
		w.Without = append(w.Without, without)
	}
	return w
}

// workWhole leaves out one term, none at -1. Terms that bring nothing are left
// out of the formulas.
func (b Budget) workWhole(book *working.Book, name string, d quantity.Dimension, contributions, freedoms []working.In, out int) (w WorkedBudget) {
	var squares, fourths []string
	var us, finite []working.Symbol
	var uIns, nuIns []working.In
	terms := make([]Term, len(b.Parts))
	for i, p := range b.Parts {
		terms[i] = p.Term
		if i == out || p.Contribution == 0 {
			continue
		}
		n := strconv.Itoa(i + 1)
		squares = append(squares, "u"+n+"^2")
		us, uIns = append(us, working.Symbol{Name: "u" + n, Dim: d, Key: "contribution"}), append(uIns, contributions[i])
		if !math.IsInf(p.DF, 1) {
			fourths = append(fourths, "u"+n+"^4/nu"+n)
			finite = append(finite, working.Symbol{Name: "u" + n, Dim: d, Key: "contribution"}, working.Symbol{Name: "nu" + n, Key: "freedom"})
			nuIns = append(nuIns, contributions[i], freedoms[i])
		}
	}
	whole := combined(terms, out, b.Level)
	combinedU := working.Symbol{Name: "u_c", Dim: d, Key: "combined"}
	w.Uc = working.Put(book, working.Rule{Key: "calibration.combined", Symbol: "u_c", Formula: "sqrt(" + strings.Join(squares, " + ") + ")", Inputs: us, Dim: d, Decimals: decimals(whole.Uc), Basis: "calibration.combine"},
		name+".combined", whole.Uc, uIns...)
	w.DF = Of{V: whole.DF}
	if !math.IsInf(whole.DF, 1) {
		w.DF = working.Put(book, working.Rule{Key: "calibration.effective", Symbol: "nu", Formula: "u_c^4/(" + strings.Join(fourths, " + ") + ")",
			Inputs: list([]working.Symbol{combinedU}, finite...), Decimals: 6, Basis: "calibration.combine"}, name+".freedom", whole.DF, list([]working.In{w.Uc.In()}, nuIns...)...)
	}
	w.K = WorkCoverage(book, name+".k", b.Level, whole.DF, w.DF.In())
	w.U = working.Put(book, working.Rule{Key: "calibration.expanded", Symbol: "U", Formula: "k*u_c", Dim: d, Decimals: decimals(whole.U) - 3, Basis: "calibration.combine",
		Inputs: []working.Symbol{{Name: "k", Key: "studentCoverage"}, combinedU}}, name, whole.U, w.K.In(), w.Uc.In())
	return w
}
