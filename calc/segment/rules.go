package segment

import (
	"strconv"

	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Used returns the numbers of the stock lines from which the make-up takes
// pieces, in the order of the stock: the n1, l1, n2, l2 of [TotalRule].
func (m Makeup) Used() []int {
	var used []int
	for i, n := range m.Counts {
		if n > 0 {
			used = append(used, i)
		}
	}
	return used
}

// TotalRule is the length of a make-up of so many different stock lines,
//
//	L = n1*l1 + n2*l2 + ...
//
// with the inputs n1, l1, n2, l2 and so on; n_i pieces of the length l_i [m].
// lines must be at least 1. Source: arithmetic.
func TotalRule(lines int) working.Rule {
	r := working.Rule{Key: "segment.total", Symbol: "L", Dim: quantity.Lengths, Decimals: 4, Basis: "arithmetic"}
	for i := 1; i <= lines; i++ {
		n := strconv.Itoa(i)
		if i > 1 {
			r.Formula += " + "
		}
		r.Formula += "n" + n + "*l" + n
		r.Inputs = append(r.Inputs,
			working.Symbol{Name: "n" + n, Key: "pieces"},
			working.Symbol{Name: "l" + n, Dim: quantity.Lengths, Key: "pieceLength"})
	}
	return r
}

// CostRule is the cost of a make-up of so many different stock lines as metres
// of pile,
//
//	K = L - L_n + j*(n1 + n2 + ... - 1) + n1*e1 + n2*e2 + ...
//
// with the inputs L, L_n, j, n1, n2 and so on, and with extras also e1, e2 and
// so on. L total length, L_n needed length in whole steps, j price of a joint,
// n_i pieces, e_i extra cost of a piece, all but n_i in m. lines must be at
// least 1. Source: our own choice of what a make-up is judged by.
func CostRule(lines int, extras bool) working.Rule {
	r := working.Rule{Key: "segment.cost", Symbol: "K", Dim: quantity.Lengths, Decimals: 4, Basis: "segment.cost",
		Inputs: []working.Symbol{totalLength, steppedNeed, {Name: "j", Dim: quantity.Lengths, Key: "jointPrice"}}}
	pieces, dear := "", ""
	for i := 1; i <= lines; i++ {
		n := strconv.Itoa(i)
		pieces += "n" + n + " + "
		dear += " + n" + n + "*e" + n
		r.Inputs = append(r.Inputs, working.Symbol{Name: "n" + n, Key: "pieces"})
	}
	r.Formula = "L - L_n + j*(" + pieces[:len(pieces)-3] + " - 1)"
	if !extras {
		return r
	}
	r.Formula += dear
	for i := 1; i <= lines; i++ {
		r.Inputs = append(r.Inputs, working.Symbol{Name: "e" + strconv.Itoa(i), Dim: quantity.Lengths, Key: "extraCost"})
	}
	return r
}

var totalLength = working.Symbol{Name: "L", Dim: quantity.Lengths, Key: "totalLength"}

var (
	// ReachesRule states that a make-up is long enough. Inputs: L, L_n.
	ReachesRule = working.Rule{Key: "segment.reaches", Formula: "L >= L_n",
		Inputs: []working.Symbol{totalLength, steppedNeed}, Basis: "segment.need", Statement: true}
	// OffCutRule is the length that is cut off. Inputs: L, L_n.
	OffCutRule = working.Rule{Key: "segment.offCut", Symbol: "o", Formula: "L - L_n",
		Inputs: []working.Symbol{totalLength, steppedNeed}, Dim: quantity.Lengths, Decimals: 4, Basis: "arithmetic"}
)
