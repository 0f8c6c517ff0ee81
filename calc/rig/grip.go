package rig

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Grip returns the load that friction of the grip carries,
//
//	F_lim = mu n N
//
// mu: friction between jaw and pile, above zero [-]; n: gripped faces; N:
// normal force of each face [kN]. The weight on the head is not counted on.
// Source: Coulomb's friction, elementary statics; mu is the person's, for wet
// faces, mud and worn jaws. Not covered: jaws that bite or key into the pile.
func Grip(mu quantity.Ratio, faces int, normal quantity.Force) quantity.Force {
	return quantity.Force(float64(mu) * float64(faces) * float64(normal))
}

// FacePressure returns the pressure of a jaw on a face, p = N/(b h) [kPa], with
// the width b and height h of the jaw, above zero [m].
func FacePressure(normal quantity.Force, width, height quantity.Length) quantity.Pressure {
	return quantity.Pressure(float64(normal) / (float64(width) * float64(height)))
}

var symbolNormal = working.Symbol{Name: "N", Dim: quantity.Forces, Key: "gripForce"}

// GripRule has the inputs mu, n, N; FacePressureRule N, b, h.
var (
	GripRule = working.Rule{Key: "rig.grip", Symbol: "F_grip", Formula: "mu*n*N", Dim: quantity.Forces, Decimals: 1, Basis: "rig.grip",
		Inputs: []working.Symbol{{Name: "mu", Dim: quantity.Dimensionless, Key: "friction"}, {Name: "n", Dim: quantity.Dimensionless, Key: "gripFaces"}, symbolNormal}}
	FacePressureRule = working.Rule{Key: "rig.facePressure", Symbol: "p_face", Formula: "N/(b*h)", Dim: quantity.Pressures, Decimals: 0, Basis: "rig.grip",
		Inputs: []working.Symbol{symbolNormal, {Name: "b", Dim: quantity.Lengths, Key: "jawWidth"}, {Name: "h", Dim: quantity.Lengths, Key: "jawHeight"}}}
)
