package demand

import (
	"strconv"

	"gaugewright/calc/basis"
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// RiskKeys are the nine things that are rated, in the order of the table. Each
// has a weight in basis, "risk.weight." and the key.
var RiskKeys = basis.RiskKeys

// riskRows is the number of rows of the table of basic factors.
const riskRows = 8

// Risk gives the basic factor phi_gb by the average risk rating,
//
//	ARR = (w_1 r_1 + w_2 r_2 + ...)/(w_1 + w_2 + ...)
//
// r: individual rating, 1 (very low) to 5 (very high) [-]; w: weight, above
// zero [-]; rows of the table include their upper bound, and a rating within
// 1e-9 of a bound is that bound. Source: AS 2159-2009, Tables 4.3.2, from memory
// but for the first three weights and the first row. Errors: see [InputError].
type Risk struct {
	Average    ratio // typed: goes before the ratings
	Ratings    []Rating
	Redundancy string // of the system of piles: "low" or "high"
}

// Rating is one thing that is rated.
type Rating struct {
	Key            string // one of [RiskKeys]
	Weight, Rating ratio
}

// basic puts the average and sets the basic factor; row is that of the table.
func (s Risk) basic(p *pass) (row int, err error) {
	if s.Redundancy != "low" && s.Redundancy != "high" {
		return 0, &InputError{Code: "demand.redundancy", Text: s.Redundancy, Allowed: "low, high", Example: "low"}
	}
	p.Average = s.Average
	if p.Average.V == 0 {
		if p.Average, err = s.average(p.book); err != nil {
			return 0, err
		}
	}
	if err := rating("ARR", p.Average); err != nil {
		return 0, err
	}
	row = RiskRow(p.Average.V)
	p.Basic = figure("reduction." + s.Redundancy + "." + strconv.Itoa(row+1))
	return row, nil
}

func rating(symbol string, v ratio) error {
	n := ofRatio(symbol, v, "2")
	return first(n.from(1), n.upTo(5))
}

func (s Risk) average(b *working.Book) (ratio, error) {
	if len(s.Ratings) == 0 {
		return ratio{}, refuse("demand.ratings", "")
	}
	var sum, weights float64
	var both, of []working.In
	for i, r := range s.Ratings {
		n := strconv.Itoa(i + 1)
		if err := first(rating("r_"+n, r.Rating), ofRatio("w_"+n, r.Weight, "2").positive()); err != nil {
			return ratio{}, err
		}
		sum += float64(float64(r.Weight.V) * float64(r.Rating.V))
		weights += float64(r.Weight.V)
		both, of = append(both, r.Weight.In(), r.Rating.In()), append(of, r.Weight.In())
	}
	rules := riskRules(s.Ratings)
	a := working.Put(b, rules[0], "risk.sum", quantity.Ratio(sum), both...)
	w := working.Put(b, rules[1], "risk.weights", quantity.Ratio(weights), of...)
	return working.Put(b, rules[2], "risk.average", quantity.Ratio(sum/weights), a.In(), w.In()), nil
}

// riskRules are the weighted sum, the sum of the weights, and the average.
func riskRules(list []Rating) (rules [3]working.Rule) {
	for i, key := range []string{"sum", "weights", "average"} {
		rules[i] = working.Rule{Key: "demand.risk." + key, Symbol: []string{"S", "W", "ARR"}[i], Decimals: []int{2, 2, 3}[i], Basis: "demand.risk"}
	}
	for i, r := range list {
		n, join := strconv.Itoa(i+1), ""
		if i > 0 {
			join = " + "
		}
		weight := plain("w_"+n, "riskWeight."+r.Key)
		rules[0].Formula += join + "w_" + n + "*r_" + n
		rules[0].Inputs = append(rules[0].Inputs, weight, plain("r_"+n, "riskRating."+r.Key))
		rules[1].Formula += join + "w_" + n
		rules[1].Inputs = append(rules[1].Inputs, weight)
	}
	if len(list) == 1 {
		rules[1].Formula = "sum(w_1)"
	}
	rules[2].Formula = "S/W"
	rules[2].Inputs = []working.Symbol{plain("S", "riskSum"), plain("W", "riskWeights")}
	return rules
}

// RiskRow returns the row of the table of basic factors in which an average
// risk rating lies, from 0.
func RiskRow(average quantity.Ratio) int {
	row := 0
	for row < riskRows-1 && float64(average) > basis.Figure(upper(row))*(1+quantity.Slack) {
		row++
	}
	return row
}

func upper(row int) string { return "risk.upper." + strconv.Itoa(row+1) }

// RowProof is the statement that an average lies in a row, and its bounds. The
// inputs are ARR and then the bounds.
func RowProof(row int) (working.Rule, []working.In) {
	r := working.Rule{Key: "demand.risk.row", Basis: "demand.risk.row", Statement: true, Inputs: []working.Symbol{plain("ARR", "riskAverage")}}
	var bounds []working.In
	if row > 0 {
		r.Formula = "ARR > a_1"
		r.Inputs = append(r.Inputs, plain("a_1", "riskLower"))
		bounds = append(bounds, figure(upper(row-1)).In())
	}
	if row < riskRows-1 {
		if row > 0 {
			r.Formula += " and "
		}
		r.Formula += "ARR <= a_2"
		r.Inputs = append(r.Inputs, plain("a_2", "riskUpper"))
		bounds = append(bounds, figure(upper(row)).In())
	}
	return r, bounds
}
