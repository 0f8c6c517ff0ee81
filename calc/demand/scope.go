package demand

import (
	"gaugewright/calc/basis"
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Note is something to be known about a set load. Values are the arguments of
// its sentence.
type Note struct {
	Code   string
	Values []Value
}

// Value is a number with its dimension and the place where it stands.
type Value struct {
	working.In
	Dim quantity.Dimension
}

// Pile is what the notes ask of a pile; zero is not known.
type Pile struct {
	WorkingLoad     force  // P
	Embedded, Width length // length in the ground, side or diameter
}

// Notes says what bounds a set load that was computed, and puts what it needs
// for that. A group of piles is never stated about.
//
//	note.setUpHigh      k is above 1.5
//	note.testsShort     R_ck of the tests is below gamma_t F_cd: R_ck
//	note.ratingsUnused  phi_gb is typed, the risk ratings beside it are not used
//	note.unloading      digging out unloads what remains: said, not computed
//	note.neutralPlane   the pile's material carries P + D at the neutral plane: P + D
//	note.neutralPlaneOpen  the same where P is not known
//	note.shortPile      short in the ground: length, bound
//	note.slender        shorter than 37 widths at a factor not above 2.5: length, bound
//	note.noGroup        a set says nothing of the group
//
// The factor of a scheme that has none is R/P. Sources: basis "scope.short",
// "scope.slender", "scope.slender.factor", "setUp.high".
func Notes(b *working.Book, s Scheme, g Ground, r Result, pile Pile) []Note {
	b = b.Under("demand/")
	var list []Note
	add := func(code string, values ...Value) { list = append(list, Note{code, values}) }
	if float64(r.SetUp.V) > basis.Figure("setUp.high") {
		add("note.setUpHigh", Value{r.SetUp.In(), quantity.Dimensionless})
	}
	if r.Short {
		add("note.testsShort", Value{r.Characteristic.In(), quantity.Forces})
	}
	if r.RatingsUnused {
		add("note.ratingsUnused")
	}
	if g.DugAway.V != 0 {
		add("note.unloading")
	}
	if g.Drag.V != 0 {
		if pile.WorkingLoad.V == 0 {
			add("note.neutralPlaneOpen")
		} else {
			n := working.Put(b, NeutralPlaneRule, "neutralPlane", pile.WorkingLoad.V+g.Drag.V, pile.WorkingLoad.In(), g.Drag.In())
			add("note.neutralPlane", Value{n.In(), quantity.Forces})
		}
	}
	if pile.Embedded.V != 0 {
		l := Value{pile.Embedded.In(), quantity.Lengths}
		if short := basis.Figure("scope.short"); float64(pile.Embedded.V) < short {
			add("note.shortPile", l, Value{working.In{V: short, Ref: "basis:scope.short"}, quantity.Lengths})
		}
		if pile.Width.V != 0 {
			c := figure("scope.slender")
			if bound := quantity.Length(float64(c.V) * float64(pile.Width.V)); pile.Embedded.V < bound && !above(b, s, r, pile) {
				of := working.Put(b, SlenderRule, "slender", bound, c.In(), pile.Width.In())
				add("note.slender", l, Value{of.In(), quantity.Lengths})
			}
		}
	}
	add("note.noGroup")
	return list
}

// above says that the factor on the working load is known to be above that of
// the rule of 37 widths.
func above(b *working.Book, s Scheme, r Result, pile Pile) bool {
	least := basis.Figure("scope.slender.factor")
	if single, ok := s.(Single); ok {
		return float64(single.Factor.V) > least
	}
	if pile.WorkingLoad.V == 0 {
		return false
	}
	f := working.Put(b, EquivalentRule, "factor", quantity.Ratio(float64(r.Demanded.V)/float64(pile.WorkingLoad.V)), r.Demanded.In(), pile.WorkingLoad.In())
	return float64(f.V) > least
}

var symbolWorkingLoad = load("P", "workingLoad")

// The rules of [Notes]. EmbeddedRule is the length in the ground of a plumb pile
// from the platform down: Z_p, level of the platform, and Z_toe, of the toe.
var (
	EmbeddedRule = working.Rule{Key: "demand.embedded", Symbol: "L_e", Formula: "Z_p - Z_toe", Dim: quantity.Lengths, Decimals: 4, Basis: "geometry",
		Inputs: []working.Symbol{{Name: "Z_p", Dim: quantity.Lengths, Key: "platformLevel"}, {Name: "Z_toe", Dim: quantity.Lengths, Key: "toeLevel"}}}
	NeutralPlaneRule = working.Rule{Key: "demand.neutralPlane", Symbol: "N_np", Formula: "P + D", Dim: quantity.Forces, Decimals: 1, Basis: "demand.neutralPlane",
		Inputs: []working.Symbol{symbolWorkingLoad, symbolDrag[1]}}
	EquivalentRule = working.Rule{Key: "demand.equivalent", Symbol: "FS", Formula: "R/P", Decimals: 3, Basis: "arithmetic",
		Inputs: []working.Symbol{symbolDemanded, symbolWorkingLoad}}
	SlenderRule = working.Rule{Key: "demand.slender", Symbol: "L_s", Formula: "c*B", Dim: quantity.Lengths, Decimals: 2, Basis: "demand.slender",
		Inputs: []working.Symbol{
			plain("c", "slenderFactor"),
			{Name: "B", Dim: quantity.Lengths, Key: "pileWidth"},
		}}
)
