package rig

import (
	"math"

	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Place says where weight and pile stand between the two lines of feet, which
// lie at -a and +a. Distances are from the middle, positive to the pile's side.
type Place struct {
	Half quantity.Length // a: half the foot spacing, above zero [m]
	Mass quantity.Length // x_g: centre of mass of rig and ballast [m]
	Pile quantity.Length // x_p: the pile [m]
}

// Stands says whether the geometry can stand at all: the weight lies between
// the feet, and the pile not beyond the far one.
func (p Place) Stands() bool {
	return p.Half > 0 && math.Abs(float64(p.Mass)) < float64(p.Half) && p.Pile > -p.Half
}

// NearFoot returns the load at which the foot near the pile has lost all but
// the unused share of its load. Moments about the far foot, with G = (M + m) g
// at x_g and the pile pushing up at x_p:
//
//	R_near 2a = G (a + x_g) - F (a + x_p)          W is part of the mass
//	R_near 2a = G (a + x_g) - (F - W)(a + x_p)     it is not
//
// R_near = 0 solved for F, times the usable share s. M, m: masses of rig and
// ballast [t]; w: W, weight riding on the pile head [kN]. [Place.Stands] must
// hold. The same from the balance of forces: R_near + R_far = G - F with R_near
// = 0 puts all of G - F on the far foot, and its moment about the middle is
// G x_g - F x_p. Source: statics, feet as two lines; a rig on three or four
// corner feet is not covered.
func NearFoot(share quantity.Ratio, rig, ballast quantity.Mass, w quantity.Force, wInMass bool, at Place) quantity.Force {
	return foot(share, rig, ballast, w, wInMass, float64(at.Half)+float64(at.Mass), float64(at.Half)+float64(at.Pile))
}

// FarFoot is the mirror image of [NearFoot]: moments about the near foot. It is
// infinite where the pile stands at or beyond the near foot, which only loads
// the far one.
func FarFoot(share quantity.Ratio, rig, ballast quantity.Mass, w quantity.Force, wInMass bool, at Place) quantity.Force {
	if at.Pile >= at.Half {
		return quantity.Force(math.Inf(1))
	}
	return foot(share, rig, ballast, w, wInMass, float64(at.Half)-float64(at.Mass), float64(at.Half)-float64(at.Pile))
}

func foot(share quantity.Ratio, rig, ballast quantity.Mass, w quantity.Force, wInMass bool, ofMass, ofPile float64) quantity.Force {
	limit := float64(float64(rig)+float64(ballast)) * quantity.Gravity * ofMass / ofPile
	if !wInMass {
		limit += float64(w)
	}
	return quantity.Force(float64(share) * limit)
}

var (
	symbolHalf = working.Symbol{Name: "a", Dim: quantity.Lengths, Key: "halfSpacing"}
	symbolMass = working.Symbol{Name: "x_g", Dim: quantity.Lengths, Key: "massCentre"}
	symbolPile = working.Symbol{Name: "x_p", Dim: quantity.Lengths, Key: "pilePlace"}
)

// NearFootRule is the formula of [NearFoot]; its inputs are s, M, m, g, a, x_g,
// x_p and, where W is not part of the mass, W.
func NearFootRule(wInMass bool) working.Rule { return footRule("rig.nearFoot", "F_near", "+", wInMass) }

// FarFootRule is the formula of [FarFoot], with the same inputs.
func FarFootRule(wInMass bool) working.Rule { return footRule("rig.farFoot", "F_far", "-", wInMass) }

func footRule(key, symbol, sign string, wInMass bool) working.Rule {
	arm := "(M + m)*g*(a " + sign + " x_g)/(a " + sign + " x_p)"
	r := ReactionRule(true)
	r.Key, r.Symbol, r.Basis, r.Formula = key, symbol, "rig.feet", "s*"+arm
	r.Inputs = append(r.Inputs[:len(r.Inputs):len(r.Inputs)], symbolHalf, symbolMass, symbolPile)
	if !wInMass {
		r.Formula = "s*(" + arm + " + W)"
		r.Inputs = append(r.Inputs, working.Symbol{Name: "W", Dim: quantity.Forces, Key: "onHead"})
	}
	return r
}

// LeastReactionRule is the least of the reaction limits that apply: near foot,
// far foot, and the stated limit of a side or corner. names are their symbols.
func LeastReactionRule(names ...string) working.Rule {
	r := working.Rule{Key: "rig.leastReaction", Symbol: "F_reaction", Dim: quantity.Forces, Decimals: 1, Basis: "rig.feet"}
	for i, name := range names {
		if i > 0 {
			r.Formula += ", "
		}
		r.Formula += name
		r.Inputs = append(r.Inputs, working.Symbol{Name: name, Dim: quantity.Forces, Key: "reactionOf." + name})
	}
	r.Formula = "min(" + r.Formula + ")"
	return r
}

// FeetHold states that a foot allows a load with more ballast dm at x_b: the near
// one (sign "+") or the far one ("-"); its inputs are s, M, m, g, a, x_g, x_p,
// dm, x_b, F and, where W is not part of the mass, W.
func FeetHold(sign string, wInMass bool) working.Rule {
	key, load := map[string]string{"+": "rig.feetHold.near", "-": "rig.feetHold.far"}[sign], "F"
	r := ReactionRule(true)
	r.Key, r.Symbol, r.Basis, r.Dim, r.Statement = key, "", "rig.feet", quantity.Dimensionless, true
	r.Inputs = append(r.Inputs[:len(r.Inputs):len(r.Inputs)], symbolHalf, symbolMass, symbolPile,
		working.Symbol{Name: "dm", Dim: quantity.Masses, Key: "ballastNeeded"}, working.Symbol{Name: "x_b", Dim: quantity.Lengths, Key: "ballastPlace"},
		working.Symbol{Name: "F", Dim: quantity.Forces, Key: "load"})
	if !wInMass {
		load = "(F - s*W)"
		r.Inputs = append(r.Inputs, working.Symbol{Name: "W", Dim: quantity.Forces, Key: "onHead"})
	}
	r.Formula = "s*g*((M + m)*(a " + sign + " x_g) + dm*(a " + sign + " x_b)) >= " + load + "*(a " + sign + " x_p)"
	return r
}

// WholePiecesRule is the mass of whole pieces; its inputs are n and m_p.
var WholePiecesRule = working.Rule{Key: "rig.wholePieces", Symbol: "dm", Formula: "n*m_p", Dim: quantity.Masses, Decimals: 2, Basis: "arithmetic",
	Inputs: []working.Symbol{{Name: "n", Dim: quantity.Dimensionless, Key: "pieceCount"}, {Name: "m_p", Dim: quantity.Masses, Key: "pieceMass"}}}
