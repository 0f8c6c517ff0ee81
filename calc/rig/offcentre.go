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

// BallastAt returns the ballast that must be added at x_b so that the foot near
// the pile allows the load F:
//
//	dm = (F' (a + x_p)/s' - (M + m) g (a + x_g))/(g (a + x_b))
//
// where W not in the mass is first taken off F/s. It is zero or negative when
// none is needed; ok is false where a + x_b <= 0, for ballast there only lifts
// the near foot. The far foot must be looked at again with the ballast on
// board. Source: [NearFoot] solved for the mass.
func BallastAt(f quantity.Force, share quantity.Ratio, rig, ballast quantity.Mass, w quantity.Force, wInMass bool, at Place, x quantity.Length) (dm quantity.Mass, ok bool) {
	arm := float64(at.Half) + float64(x)
	if arm <= 0 {
		return 0, false
	}
	needed := float64(f) / float64(share)
	if !wInMass {
		needed -= float64(w)
	}
	have := float64(float64(rig)+float64(ballast)) * quantity.Gravity * (float64(at.Half) + float64(at.Mass))
	return quantity.Mass((float64(needed*(float64(at.Half)+float64(at.Pile))) - have) / (quantity.Gravity * arm)), true
}

// BallastAtRule is the formula of [BallastAt]; its inputs are F, s, M, m, g, a,
// x_g, x_p, x_b and, where W is not part of the mass, W.
func BallastAtRule(wInMass bool) working.Rule {
	needed := "F/s"
	r := working.Rule{Key: "rig.ballastAt", Symbol: "dm", Dim: quantity.Masses, Decimals: 3, Basis: "rig.feet",
		Inputs: []working.Symbol{
			{Name: "F", Dim: quantity.Forces, Key: "load"}, {Name: "s", Dim: quantity.Dimensionless, Key: "reactionShare"},
			{Name: "M", Dim: quantity.Masses, Key: "rigMass"}, {Name: "m", Dim: quantity.Masses, Key: "ballast"},
			{Name: "g", Dim: quantity.Accelerations, Key: "gravity"}, symbolHalf, symbolMass, symbolPile,
			{Name: "x_b", Dim: quantity.Lengths, Key: "ballastPlace"},
		}}
	if !wInMass {
		needed = "(F/s - W)"
		r.Inputs = append(r.Inputs, working.Symbol{Name: "W", Dim: quantity.Forces, Key: "onHead"})
	}
	r.Formula = "(" + needed + "*(a + x_p) - (M + m)*g*(a + x_g))/(g*(a + x_b))"
	return r
}

// PiecesRule is the number of whole pieces for a mass; its inputs are dm and
// m_p, the mass of one piece.
var PiecesRule = working.Rule{Key: "rig.pieces", Symbol: "n", Formula: "roundup(dm/m_p, 1)", Dim: quantity.Dimensionless, Decimals: 0, Basis: "arithmetic",
	Inputs: []working.Symbol{{Name: "dm", Dim: quantity.Masses, Key: "ballastNeeded"}, {Name: "m_p", Dim: quantity.Masses, Key: "pieceMass"}}}

// WholePiecesRule is the mass of whole pieces; its inputs are n and m_p.
var WholePiecesRule = working.Rule{Key: "rig.wholePieces", Symbol: "dm", Formula: "n*m_p", Dim: quantity.Masses, Decimals: 2, Basis: "arithmetic",
	Inputs: []working.Symbol{{Name: "n", Dim: quantity.Dimensionless, Key: "pieceCount"}, {Name: "m_p", Dim: quantity.Masses, Key: "pieceMass"}}}

// Pieces returns the least number of whole pieces that give a mass.
func Pieces(dm, piece quantity.Mass) int {
	return int(quantity.Divisions(float64(dm), float64(piece), true))
}
