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

// budgetKeys are the names of the symbols of budgets.
var budgetKeys = [][2]string{{"u", "contribution"}, {"u_c", "combined"}, {"nu", "freedom"}, {"k", "studentCoverage"}, {"U", "expanded"}, {"s", "share"}}

const combine = "calibration.combine"

// Work puts a budget on paper. contributions are the steps of c u of its terms,
// of dimension d, and freedoms those of their degrees of freedom, looked at only
// where these are finite. U must not be zero.
func (b Budget) Work(book *working.Book, name string, d quantity.Dimension, contributions, freedoms []working.In) WorkedBudget {
	sheet := NewSheet(book, budgetKeys)
	for i, p := range b.Parts {
		n := strconv.Itoa(i + 1)
		sheet.Know("u"+n, d, contributions[i])
		if !math.IsInf(p.DF, 1) {
			sheet.Know("nu"+n, quantity.Dimensionless, freedoms[i])
		}
	}
	w := b.workWhole(sheet, name, d, -1)
	for i, p := range b.Parts {
		sheet.Know("u", d, contributions[i])
		sheet.Know("u_c", d, w.Uc.In())
		n := strconv.Itoa(i + 1)
		w.Shares = append(w.Shares, sheet.Put(name+".share/"+n, working.Rule{Key: "calibration.share", Symbol: "s", Formula: "(u/u_c)^2", Decimals: 6, Basis: combine}, p.Share))
		without := Of{}
		if p.Without > 0 {
			without = b.workWhole(sheet, name+".without/"+n, d, i).U
		}
		w.Without = append(w.Without, without)
	}
	return w
}

// workWhole leaves out one term, none at -1. Terms that bring nothing are left
// out of the formulas.
func (b Budget) workWhole(sheet *Sheet, name string, d quantity.Dimension, out int) (w WorkedBudget) {
	var squares, fourths []string
	terms := make([]Term, len(b.Parts))
	for i, p := range b.Parts {
		terms[i] = p.Term
		if i == out || p.Contribution == 0 {
			continue
		}
		n := strconv.Itoa(i + 1)
		squares = append(squares, "u"+n+"^2")
		if !math.IsInf(p.DF, 1) {
			fourths = append(fourths, "u"+n+"^4/nu"+n)
		}
	}
	whole := combined(terms, out, b.Level)
	w.Uc = sheet.Put(name+".combined", working.Rule{Key: "calibration.combined", Symbol: "u_c", Formula: "sqrt(" + strings.Join(squares, " + ") + ")", Dim: d, Decimals: decimals(whole.Uc), Basis: combine}, whole.Uc)
	w.DF = Of{V: whole.DF}
	if !math.IsInf(whole.DF, 1) {
		w.DF = sheet.Put(name+".freedom", working.Rule{Key: "calibration.effective", Symbol: "nu", Formula: "u_c^4/(" + strings.Join(fourths, " + ") + ")", Decimals: 6, Basis: combine}, whole.DF)
	}
	w.K = WorkCoverage(sheet.book, name+".k", b.Level, whole.DF, w.DF.In())
	sheet.Know("k", quantity.Dimensionless, w.K.In())
	w.U = sheet.Put(name, working.Rule{Key: "calibration.expanded", Symbol: "U", Formula: "k*u_c", Dim: d, Decimals: max(0, decimals(whole.U)-3), Basis: combine}, whole.U)
	return w
}
