// Package demand computes the load that must be reached: the set load F_set
// that a design asks for.
//
// A [Scheme] says what the pile must show: [Single], [Reduction], [Tests] or
// [ResistanceFactor]. [Ground] says what the ground adds to it or takes from
// it. [Compute] puts both together and leaves every step in a book. What none of
// it covers stands in [Notes].
//
// A set hold is no test: the schemes that give credit for tests ask for a
// person and a reason, and refuse a hold by name.
//
// Quantities come in as [working.Of], with the place where they stand. A value
// of zero is one that is not entered; it is an error where the scheme needs it.
package demand

import (
	"gaugewright/calc/basis"
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

type (
	force  = working.Of[quantity.Force]
	ratio  = working.Of[quantity.Ratio]
	length = working.Of[quantity.Length]
)

// Scheme is one of the four schemes of this package.
type Scheme interface {
	demand(p *pass) (force, error)
}

// Result is the set load with what led to it. What a scheme does not have is
// zero.
type Result struct {
	SetLoad  force // F_set
	Demanded force // R; the same as SetLoad where nothing is added

	SetUp  ratio // k, or k_d of the tests; zero where none is entered
	Within bool  // T and N are divided by k too

	Average, Basic, Factor ratio // average risk rating, phi_gb, phi_g or phi
	Characteristic         force // R_ck of the tests
	Governs                int   // the worst combination, from 0
	Short                  bool  // the tests do not carry the worst combination
	RatingsUnused          bool  // a basic factor is typed beside risk ratings
}

// pass is one computation on its way.
type pass struct {
	outer, book *working.Book
	ground      Ground
	Result
}

// last puts the step that gives what the scheme demands. It is the set load
// itself where the ground adds nothing and there is no set-up.
func (p *pass) last(rule working.Rule, v quantity.Force, in ...working.In) force {
	if p.ground.plain() && p.SetUp.V == 0 {
		return working.Put(p.outer, rule, "setLoad", v, in...)
	}
	rule.Symbol, rule.Key = "R", "demand.part"
	return working.Put(p.book, rule, "R", v, in...)
}

// Compute returns the set load of a scheme on this ground. The last step is
// "setLoad" in the book, those before it stand under "demand/". The error is an
// [*InputError].
func Compute(b *working.Book, s Scheme, g Ground) (Result, error) {
	p := &pass{outer: b, book: b.Under("demand/"), ground: g}
	if err := g.check(); err != nil {
		return Result{}, err
	}
	p.SetUp = g.SetUp.Ratio
	demanded, err := s.demand(p)
	if err != nil {
		return Result{}, err
	}
	p.Demanded, p.SetLoad = demanded, demanded
	if !g.plain() || p.SetUp.V != 0 {
		err = p.add()
	}
	return p.Result, err
}

func figure(id string) ratio {
	return ratio{V: quantity.Ratio(basis.Figure(id)), Ref: "basis:" + id}
}

func plain(name, key string) working.Symbol {
	return working.Symbol{Name: name, Dim: quantity.Dimensionless, Key: key}
}

func load(name, key string) working.Symbol {
	return working.Symbol{Name: name, Dim: quantity.Forces, Key: key}
}
