package demand_test

import (
	"encoding/json"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/basis"
	. "gaugewright/calc/demand"
	"gaugewright/calc/published"
	"gaugewright/calc/quantity"
)

// asRecalled is what the recalled formulas of AS 2159-2009 give, computed by
// another program.
var asRecalled = published.Worked("AS 2159-2009 as recalled, arithmetic recomputed")

func ratings(values, weights []float64) []Rating {
	list := make([]Rating, len(values))
	for i := range values {
		list[i] = Rating{RiskKeys[i], r(weights[i]), r(values[i])}
	}
	return list
}

func TestRiskRatingWorkedThrough(t *testing.T) {
	f := factors(t).Risk
	c := f.Constructed
	var weights []float64
	for i, w := range f.Weights {
		preset(t, "risk.weight."+RiskKeys[i], w)
		weights = append(weights, value(w))
	}
	s := Reduction{Action: kN(1000), Risk: Risk{Ratings: ratings(c.Ratings, weights), Redundancy: "low"},
		Test: "dynamic", Share: r(c.Share / 100), Credit: person}
	got, b := compute(t, s, Ground{})
	again := asRecalled.At("constructed case")
	published.Check(t, again, "sum of weights and ratings", c.SumOfProducts.String(), b.Find("demand/risk.sum").Value, published.Exact)
	published.Check(t, again, "sum of weights", f.Sum.String(), b.Find("demand/risk.weights").Value, published.Exact)
	published.Check(t, again, "average risk rating", c.Average.String(), float64(got.Average.V), published.Printed)
	assert.Equal(t, value(f.Low[2]), float64(got.Basic.V))
	assert.Equal(t, "basis:reduction.low.3", got.Basic.Ref)
	assert.Equal(t, c.Tested, basis.Figure("reduction.tested.dynamic"))
	published.Check(t, again, "phi_g of 5 % dynamic tests, low redundancy", c.FactorLow.String(), float64(got.Factor.V), published.Within(1e-15, "sixteen digits, float64 arithmetic"))
	assert.InDelta(t, 1000/value(c.FactorLow), float64(got.SetLoad.V), 1e-9)
	assert.Equal(t, []string{"demand/row"}, b.Find("demand/phi_g").Proofs)

	s.Risk.Redundancy = "high"
	got, _ = compute(t, s, Ground{})
	assert.Equal(t, value(f.High[2]), float64(got.Basic.V))

	// Without a test the basic factor is the factor, and the row is proven at
	// the step that uses it.
	s.Test = "none"
	got, b = compute(t, s, Ground{})
	assert.Equal(t, got.Basic, got.Factor)
	assert.Equal(t, []string{"demand/row"}, b.Find("setLoad").Proofs)

	// One rating is its own average; a typed average goes before ratings, a
	// typed basic factor before both.
	s.Risk.Ratings = s.Risk.Ratings[:1]
	got, _ = compute(t, s, Ground{})
	assert.Equal(t, 3.0, float64(got.Average.V))
	s.Risk.Average = r(1.2)
	got, _ = compute(t, s, Ground{})
	assert.Equal(t, value(f.High[0]), float64(got.Basic.V))
	s.Basic = r(0.5)
	got, _ = compute(t, s, Ground{})
	assert.Equal(t, 2000.0, float64(got.SetLoad.V))
	assert.True(t, got.RatingsUnused)
}

// Rows include their upper bound, from the table recalled of AS 2159-2009.
func TestRowsIncludeTheirUpperBound(t *testing.T) {
	f := factors(t).Risk
	for i, upper := range f.Upper {
		preset(t, "risk.upper."+strconv.Itoa(i+1), upper)
		bound := value(upper)
		assert.Equal(t, i, RiskRow(quantity.Ratio(bound)), "%v", bound)
		assert.Equal(t, i, RiskRow(quantity.Ratio(bound*(1+1e-12))), "the arithmetic of an average does not push it over a bound")
		assert.Equal(t, i+1, RiskRow(quantity.Ratio(bound+1e-6)))
		for _, v := range []float64{bound, bound * (1 + 1e-12), bound + 1e-6} {
			compute(t, Reduction{Action: kN(1000), Risk: Risk{Average: r(v), Redundancy: "low"}}, Ground{})
		}
	}
	for _, c := range []struct {
		redundancy string
		want       []json.Number
	}{{"low", f.Low}, {"high", f.High}} {
		for i, want := range c.want {
			average := 5.0
			if i < len(f.Upper) {
				average = value(f.Upper[i])
			}
			got, _ := compute(t, Reduction{Action: kN(1000), Risk: Risk{Average: r(average), Redundancy: c.redundancy}}, Ground{})
			preset(t, "reduction."+c.redundancy+"."+strconv.Itoa(i+1), want)
			assert.Equal(t, value(want), float64(got.Basic.V))
		}
	}
	assert.Equal(t, 0, RiskRow(1))
}

func TestTestBenefit(t *testing.T) {
	for kind, c := range factors(t).Benefit {
		for i, p := range c.Share {
			k := TestBenefit(quantity.Ratio(basis.Figure("reduction.benefit."+kind)), quantity.Ratio(p/100), quantity.Ratio(basis.Figure("reduction.benefit.offset")))
			published.Check(t, asRecalled.At("4.3.1"), "K of "+quantity.Digits(p)+" % "+kind+" tests", c.K[i].String(), float64(k), published.Within(1e-14, "sixteen digits, float64 arithmetic"))
		}
	}
	assert.Equal(t, 0.6, float64(TestedFactor(0.6, 0.5, 0.8)), "a test never lowers the factor")
	assert.InDelta(t, 0.9, float64(TestedFactor(0.6, 0.9, 1)), 1e-15)
	assert.Equal(t, 0.6, float64(TestedFactor(0.6, 0.9, 0)))
}

func TestReductionRefuses(t *testing.T) {
	good := func() Reduction { return Reduction{Action: kN(1000), Basic: r(0.5)} }
	for _, c := range []struct {
		code   string
		change func(s *Reduction)
	}{
		{"demand.notPositive", func(s *Reduction) { s.Action = kN(0) }},
		{"demand.above", func(s *Reduction) { s.Basic = r(1.2) }},
		{"demand.redundancy", func(s *Reduction) { s.Basic = r(0) }},
		{"demand.ratings", func(s *Reduction) { s.Basic, s.Risk.Redundancy = r(0), "low" }},
		{"demand.above", func(s *Reduction) { s.Basic, s.Risk = r(0), Risk{Average: r(5.5), Redundancy: "low"} }},
		{"demand.below", func(s *Reduction) { s.Basic, s.Risk = r(0), Risk{Average: r(0.5), Redundancy: "low"} }},
		{"demand.below", func(s *Reduction) {
			s.Basic, s.Risk = r(0), Risk{Ratings: []Rating{{"data", r(2), r(0)}}, Redundancy: "low"}
		}},
		{"demand.notPositive", func(s *Reduction) {
			s.Basic, s.Risk = r(0), Risk{Ratings: []Rating{{"data", r(0), r(2)}}, Redundancy: "low"}
		}},
		{"demand.notPositive", func(s *Reduction) { s.Test, s.Credit = "static", person }},
		{"demand.above", func(s *Reduction) { s.Test, s.Credit, s.Share = "static", person, r(1.5) }},
	} {
		s := good()
		c.change(&s)
		refused(t, c.code, s, Ground{})
	}
	require.NotPanics(t, func() { compute(t, good(), Ground{}) })
}
