package demand

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// ResistanceFactor divides the factored load by a resistance factor,
//
//	R = Q/phi
//
// Q: factored load on the pile [kN]; phi: resistance factor, above zero, at
// most 1 [-]. Source: AASHTO LRFD Bridge Design Specifications, 10.5.5.2.3, from
// memory (basis "demand.resistance"). The value of phi belongs to how the piles
// are proven; one that rests on a test needs a person and a reason. Errors: see
// [InputError].
type ResistanceFactor struct {
	Load   force
	Factor ratio
	Test   string // "none" or blank, "static", "dynamic"
	Credit Credit
}

// ResistanceRule is the formula of [ResistanceFactor].
var ResistanceRule = working.Rule{
	Key: "demand.resistance", Symbol: "F_set", Formula: "Q/phi", Dim: quantity.Forces, Decimals: 1, Basis: "demand.resistance",
	Inputs: []working.Symbol{
		load("Q", "factoredLoad"),
		plain("phi", "resistanceFactor"),
	},
}

func (s ResistanceFactor) demand(p *pass) (force, error) {
	if err := first(ofLoad("Q", s.Load).positive(), ofRatio("phi", s.Factor, "0.65").upTo(1)); err != nil {
		return force{}, err
	}
	if tested(s.Test) {
		if err := s.Credit.For(s.Test); err != nil {
			return force{}, err
		}
	}
	p.Factor = s.Factor
	return p.last(ResistanceRule, quantity.Force(float64(s.Load.V)/float64(s.Factor.V)), s.Load.In(), s.Factor.In()), nil
}

func tested(test string) bool { return test != "" && test != "none" }
