package demand

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Reduction divides the design action by a reduction factor on the strength of
// the ground,
//
//	R     = E_d/phi_g
//	phi_g = max(phi_gb, phi_gb + (phi_tf - phi_gb) K), phi_gb without a test
//
// E_d: design action [kN]; phi_gb: basic factor, typed or by [Risk]; phi_tf:
// factor of the kind of test; K: [TestBenefit] of the share of piles tested. All
// factors are above zero and at most 1 [-]. A basic factor that is typed goes
// before the risk.
//
// Source: AS 2159-2009, 4.3, from memory, but for the first row of the table
// and three weights, which were seen. Credit for watching every pile lies in the
// risk ratings, which the designer sets. Errors: see [InputError]. Not covered:
// the structural strength of the pile, and serviceability.
type Reduction struct {
	Action force
	Basic  ratio
	Risk   Risk
	Test   string // "none" or blank, "static", "dynamic"
	Tested ratio  // phi_tf; zero takes that of the kind of test
	Share  ratio  // p, of the piles, above zero, at most 1
	Credit Credit
}

func (s Reduction) demand(p *pass) (force, error) {
	if err := ofLoad("E_d", s.Action).positive(); err != nil {
		return force{}, err
	}
	p.Basic, p.RatingsUnused = s.Basic, s.Basic.V != 0 && (s.Risk.Average.V != 0 || len(s.Risk.Ratings) > 0)
	row := -1
	if s.Basic.V == 0 {
		var err error
		if row, err = s.Risk.basic(p); err != nil {
			return force{}, err
		}
	}
	if err := ofRatio("phi_gb", p.Basic, "0.56").upTo(1); err != nil {
		return force{}, err
	}
	p.Factor = p.Basic
	if tested(s.Test) {
		if err := s.credit(p); err != nil {
			return force{}, err
		}
	}
	r := p.last(ReductionRule, quantity.Force(float64(s.Action.V)/float64(p.Factor.V)), s.Action.In(), p.Factor.In())
	if row >= 0 {
		uses := r.Ref
		if tested(s.Test) {
			uses = p.Factor.Ref
		}
		proof, bounds := RowProof(row)
		working.Prove(p.book, proof, "row", uses, append([]working.In{p.Average.In()}, bounds...)...)
	}
	return r, nil
}

// credit raises the factor by what the tests earn.
func (s Reduction) credit(p *pass) error {
	if err := s.Credit.For(s.Test); err != nil {
		return err
	}
	phi := s.Tested
	if phi.V == 0 {
		phi = figure("reduction.tested." + s.Test)
	}
	if err := first(ofRatio("phi_tf", phi, "0.80").upTo(1), ofRatio("p", s.Share, "0.05").upTo(1)); err != nil {
		return err
	}
	c, q := figure("reduction.benefit."+s.Test), figure("reduction.benefit.offset")
	k := working.Put(p.book, TestBenefitRule, "K", TestBenefit(c.V, s.Share.V, q.V), c.In(), s.Share.In(), q.In())
	p.Factor = working.Put(p.book, TestedFactorRule, "phi_g", TestedFactor(p.Basic.V, phi.V, k.V), p.Basic.In(), phi.In(), k.In())
	return nil
}

// TestBenefit returns how much of the way from the basic factor to that of the
// tests is earned,
//
//	K = min(1, c p/(p + q))
//
// c: 1.33 for static tests, 1.13 for dynamic ones (basis
// "reduction.benefit.static", "reduction.benefit.dynamic") [-]; p: share of the
// piles tested [-]; q: 3.3 % (basis "reduction.benefit.offset"). Source: AS
// 2159-2009, 4.3.1, from memory.
func TestBenefit(c, p, q quantity.Ratio) quantity.Ratio { return min(1, c*p/(p+q)) }

// TestedFactor returns the factor with tests,
//
//	phi_g = max(phi_gb, phi_gb + (phi_tf - phi_gb) K)
//
// Source: AS 2159-2009, 4.3.1, from memory. A test never lowers the factor.
func TestedFactor(basic, tested, k quantity.Ratio) quantity.Ratio {
	return max(basic, basic+quantity.Ratio(float64(tested-basic)*float64(k)))
}

var symbolBasic = plain("phi_gb", "basicReduction")

// The rules of [Reduction].
var (
	ReductionRule = working.Rule{Key: "demand.reduction", Symbol: "F_set", Formula: "E_d/phi_g", Dim: quantity.Forces, Decimals: 1, Basis: "demand.reduction",
		Inputs: []working.Symbol{load("E_d", "designAction"), plain("phi_g", "reduction")}}
	TestBenefitRule = working.Rule{Key: "demand.benefit", Symbol: "K", Formula: "min(1, c*p/(p + q))", Decimals: 4, Basis: "demand.benefit",
		Inputs: []working.Symbol{plain("c", "benefitFactor"), plain("p", "shareTested"), plain("q", "benefitOffset")}}
	TestedFactorRule = working.Rule{Key: "demand.tested", Symbol: "phi_g", Formula: "max(phi_gb, phi_gb + (phi_tf - phi_gb)*K)", Decimals: 4, Basis: "demand.tested",
		Inputs: []working.Symbol{symbolBasic, plain("phi_tf", "testedReduction"), plain("K", "testBenefit")}}
)
