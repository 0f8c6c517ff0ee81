package demand

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Ground is what the ground adds to what a scheme demands, and the set-up of the
// part that stays:
//
//	F_set = (R + gamma_D D)/k + T + N
//	F_set = (R + gamma_D D + T + N)/k     whole pile, long-term T and N
//
// D: long-term drag load [kN]; gamma_D: factor on it, chosen in view [-]; T:
// shaft resistance felt while pressing in ground that will be dug away [kN]; N:
// the same in a zone that will settle [kN]; k: set-up ratio, long-term
// resistance over resistance while pressing, above zero [-]. Zero D, T or N add
// nothing; zero k is none entered, which is k = 1. The second form is used only
// where k was measured on a whole pile from the same platform and T and N are
// long-term values.
//
// Source: equilibrium of the pile while pressing and later (basis
// "demand.ground", "demand.wholePile"). Errors: see [InputError]. Not covered: what
// digging out takes from the ground that remains, relaxation unless k says so.
type Ground struct {
	Drag              force
	DragFactor        ratio
	DugAway, Settling force
	SetUp             SetUp
}

// SetUp is the set-up ratio with its evidence. Above 1 it needs a named test,
// who tested and when; below it is always allowed.
type SetUp struct {
	Ratio ratio
	// WholePile: measured on a whole pile from the same platform. LongTerm: T
	// and N are long-term values. "yes", "no" or blank, which is asked where it
	// makes a difference.
	WholePile, LongTerm string
	Test, By, On        string
}

// plain says that nothing is added and no set-up entered.
func (g Ground) plain() bool {
	return g.Drag.V == 0 && g.DugAway.V == 0 && g.Settling.V == 0 && g.SetUp.Ratio.V == 0
}

func (g Ground) check() error {
	if err := first(ofLoad("D", g.Drag).from(0), ofLoad("T", g.DugAway).from(0), ofLoad("N", g.Settling).from(0)); err != nil {
		return err
	}
	if g.Drag.V != 0 {
		if g.DragFactor.V == 0 {
			return refuse("demand.dragFactor", "")
		}
		if err := ofRatio("gamma_D", g.DragFactor, "1.0").positive(); err != nil {
			return err
		}
	}
	if g.SetUp.Ratio.V == 0 {
		return nil
	}
	if err := ofRatio("k", g.SetUp.Ratio, "0.8").positive(); err != nil || g.SetUp.Ratio.V <= 1 {
		return err
	}
	return g.SetUp.evidence("k")
}

// evidence refuses a set-up above 1 without test, person and date.
func (s SetUp) evidence(symbol string) error {
	switch "" {
	case s.Test:
		return refuse("demand.setUp.test", symbol)
	case s.By:
		return refuse("demand.setUp.by", symbol)
	case s.On:
		return refuse("demand.setUp.on", symbol)
	}
	return nil
}

// within says which of the two forms holds. It is asked only where k and T or N
// meet.
func (g Ground) within(k ratio) (bool, error) {
	if k.V == 0 || g.DugAway.V == 0 && g.Settling.V == 0 || g.SetUp.WholePile == "no" {
		return false, nil
	}
	if g.SetUp.WholePile == "" || g.SetUp.LongTerm == "" {
		return false, refuse("demand.setUp.which", "")
	}
	return g.SetUp.LongTerm == "yes", nil
}

// add puts the set load of what is demanded on this ground.
func (p *pass) add() (err error) {
	g, k := p.ground, p.SetUp
	if p.Within, err = g.within(k); err != nil {
		return err
	}
	r := working.Rule{Key: "demand.setLoad", Symbol: "F_set", Formula: "R", Dim: quantity.Forces, Decimals: 1, Basis: "demand.ground",
		Inputs: []working.Symbol{symbolDemanded}}
	in, v, sums := []working.In{p.Demanded.In()}, float64(p.Demanded.V), false
	term := func(formula string, value float64, symbols []working.Symbol, inputs ...working.In) {
		r.Formula += " + " + formula
		r.Inputs, in = append(r.Inputs, symbols...), append(in, inputs...)
		v, sums = v+value, true
	}
	lost := func() {
		if g.DugAway.V != 0 {
			term("T", float64(g.DugAway.V), symbolDugAway, g.DugAway.In())
		}
		if g.Settling.V != 0 {
			term("N", float64(g.Settling.V), symbolSettling, g.Settling.In())
		}
	}
	if g.Drag.V != 0 {
		term("gamma_D*D", float64(float64(g.DragFactor.V)*float64(g.Drag.V)), symbolDrag, g.DragFactor.In(), g.Drag.In())
	}
	if p.Within {
		r.Basis = "demand.wholePile"
		lost()
	}
	if k.V != 0 {
		if sums {
			r.Formula = "(" + r.Formula + ")"
		}
		r.Formula += "/k"
		r.Inputs, in = append(r.Inputs, symbolSetUp), append(in, k.In())
		v /= float64(k.V)
	}
	if !p.Within {
		lost()
	}
	p.SetLoad = working.Put(p.outer, r, "setLoad", quantity.Force(v), in...)
	return nil
}

var (
	symbolDemanded = load("R", "demanded")
	symbolDrag     = []working.Symbol{plain("gamma_D", "dragFactor"), load("D", "dragLoad")}
	symbolDugAway  = []working.Symbol{load("T", "dugAwayResistance")}
	symbolSettling = []working.Symbol{load("N", "settlingResistance")}
	symbolSetUp    = plain("k", "setUpRatio")
)
