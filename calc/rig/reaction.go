package rig

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Reaction returns the largest load that the rig can press against its own
// weight, with the pile under the centre of mass:
//
//	F_lim = s (M + m) g           W is part of the rig's mass M
//	F_lim = s ((M + m) g + W)     W is not part of it
//
// s: usable share of the weight, 0.90 unless entered [-]; M: mass of the rig
// [t]; m: ballast on board [t]; W: weight riding on the pile head [kN].
// Source: rules for jacked piles, quoted by others (basis "rig.reaction").
// A pile off the centre of mass, and side or corner pressing, have lower
// limits and are not covered here.
func Reaction(share quantity.Ratio, rig, ballast quantity.Mass, w quantity.Force, wInMass bool) quantity.Force {
	weight := float64(float64(rig)+float64(ballast)) * quantity.Gravity
	if !wInMass {
		weight += float64(w)
	}
	return quantity.Force(float64(share) * weight)
}

// ReactionRule is the formula of [Reaction]; its inputs are s, M, m, g and,
// where W is not part of the mass, W.
func ReactionRule(wInMass bool) working.Rule {
	r := working.Rule{
		Key: "rig.reaction", Symbol: "F_reaction", Formula: "s*(M + m)*g", Dim: quantity.Forces, Decimals: 1, Basis: "rig.reaction",
		Inputs: []working.Symbol{
			{Name: "s", Dim: quantity.Dimensionless, Key: "reactionShare"},
			{Name: "M", Dim: quantity.Masses, Key: "rigMass"},
			{Name: "m", Dim: quantity.Masses, Key: "ballast"},
			{Name: "g", Dim: quantity.Accelerations, Key: "gravity"},
		},
	}
	if !wInMass {
		r.Formula = "s*((M + m)*g + W)"
		r.Inputs = append(r.Inputs, working.Symbol{Name: "W", Dim: quantity.Forces, Key: "onHead"})
	}
	return r
}

// BallastFor returns the ballast that must be added so that the reaction
// limit reaches F, in whole steps d_m:
//
//	dm = up[(F - F_lim)/(s g)]
//
// F: load at the set reading [kN]; F_lim: the present [Reaction] limit [kN];
// s: usable share of the weight [-]; step: d_m > 0 [t]. It is zero or negative
// when none is needed. Source: [Reaction] solved for the mass.
func BallastFor(f quantity.Force, limit quantity.Force, share quantity.Ratio, step quantity.Mass) quantity.Mass {
	dm := (float64(f) - float64(limit)) / (float64(share) * quantity.Gravity)
	return quantity.Mass(quantity.RoundUp(dm, float64(step)))
}

// BallastRule is the formula of [BallastFor]; its inputs are F, F_reaction, s,
// g and d_m.
var BallastRule = working.Rule{
	Key: "rig.ballast", Symbol: "dm", Formula: "roundup((F - F_reaction)/(s*g), d_m)", Dim: quantity.Masses, Decimals: 2, Basis: "rig.reaction",
	Inputs: []working.Symbol{
		{Name: "F", Dim: quantity.Forces, Key: "load"},
		{Name: "F_reaction", Dim: quantity.Forces, Key: "reactionLimit"},
		{Name: "s", Dim: quantity.Dimensionless, Key: "reactionShare"},
		{Name: "g", Dim: quantity.Accelerations, Key: "gravity"},
		{Name: "d_m", Dim: quantity.Masses, Key: "ballastStep"},
	},
}
