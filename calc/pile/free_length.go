package pile

import (
	"math"

	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// FreeLength returns the length of pile that nothing holds to its sides,
//
//	l = h_g + h_s + z
//
// h_g: lowest height above platform at which the head can still be held [m];
// h_s: stroke left, by which the grip stands higher now [m]; z: depth below the
// platform over which the ground gives no support ([Unheld]) [m]; none
// negative. It is longest with the whole stroke left, at full load as well as
// when a pile is pitched and has no ground to its sides yet. The error is an
// [*InputError]. Source: our own choice of what counts. Water beside the pile,
// and a void below a mat, are soft depth too.
func FreeLength(grip, stroke, unheld quantity.Length) (quantity.Length, error) {
	if err := first(length("h_g", grip, "1.5 m").fromZero(), length("h_s", stroke, "1.8 m").fromZero(),
		length("z", unheld, "2 m").fromZero()); err != nil {
		return 0, err
	}
	return grip + stroke + unheld, nil
}

// Unheld returns the depth below the platform over which the ground gives no
// support to the sides, the greater of the very soft depth and the pre-bored
// depth [m], both measured from the platform, none negative: z = max(z_s, z_b).
// Where only one is stated it is that one. The error is an [*InputError].
// Source: our own choice. Soft ground below a firm crust is not covered.
func Unheld(soft, preBored quantity.Length) (quantity.Length, error) {
	if err := first(length("z_s", soft, "2 m").fromZero(), length("z_b", preBored, "2 m").fromZero()); err != nil {
		return 0, err
	}
	return max(soft, preBored), nil
}

// Strut is a length of pile without support to its sides.
type Strut struct {
	Stiffness    quantity.Pressure // E: modulus of elasticity [kPa], above zero
	Moment       SecondMoment      // I: least second moment along it [m4], above zero
	LengthFactor quantity.Ratio    // k: buckling length over free length [-], above zero; 1.0 unless entered
	Length       quantity.Length   // l: free length [m], from zero
}

// Euler returns the load at which an ideal strut buckles,
//
//	N_cr = pi^2 E I/(k l)^2
//
// with the symbols of [Strut]; l must be above zero here. The error is an
// [*InputError]. Source: Euler, in every textbook of the strength of
// materials. k = 1 holds for two ends that cannot move sideways but may turn;
// k = 2 for a head that may sway. A taper is not covered: take the smallest
// section of the free length.
func (s Strut) Euler() (quantity.Force, error) {
	if err := first(stress("E", s.Stiffness, "35000 MPa").positive(), number{"I", float64(s.Moment), SecondMoments, "0.00125 m4"}.positive(),
		ratio("k", s.LengthFactor, "1.0").positive(), length("l", s.Length, "4.5 m").positive()); err != nil {
		return 0, err
	}
	kl := float64(s.LengthFactor) * float64(s.Length)
	n := math.Pi * math.Pi * float64(s.Stiffness) * float64(s.Moment) / (kl * kl)
	return quantity.Force(n), force("N_cr", quantity.Force(n)).finite()
}

// Buckling is what a strut stands, with the steps to it.
type Buckling struct {
	Euler quantity.Force // N_cr; 0 where the free length is 0 and nothing buckles
	// Of steel with a free length: slenderness and the auxiliary value. Chi is
	// the reduction of steel, 1 without a free length.
	Slenderness, Phi, Chi quantity.Ratio
	Limit                 quantity.Force // N [kN]
}

var eulerLoad = working.Symbol{Name: "N_cr", Dim: quantity.Forces, Key: "eulerLoad"}

// The rules of the free length. Inputs: h_g, h_s, z for the length; z_s, z_b for
// the unheld depth; E, I, k, l for the load of Euler.
var (
	FreeLengthRule = working.Rule{Key: "pile.freeLength", Symbol: "l", Formula: "h_g + h_s + z",
		Inputs: []working.Symbol{
			{Name: "h_g", Dim: quantity.Lengths, Key: "gripHeight"},
			{Name: "h_s", Dim: quantity.Lengths, Key: "strokeLeft"},
			{Name: "z", Dim: quantity.Lengths, Key: "unheldDepth"},
		}, Dim: quantity.Lengths, Decimals: 3, Basis: "pile.freeLength"}
	UnheldRule = working.Rule{Key: "pile.unheld", Symbol: "z", Formula: "max(z_s, z_b)",
		Inputs: []working.Symbol{
			{Name: "z_s", Dim: quantity.Lengths, Key: "softDepth"},
			{Name: "z_b", Dim: quantity.Lengths, Key: "preBoredDepth"},
		}, Dim: quantity.Lengths, Decimals: 3, Basis: "pile.freeLength"}
	EulerRule = working.Rule{Key: "pile.euler", Symbol: "N_cr", Formula: "pi^2*E*I/(k*l)^2",
		Inputs: []working.Symbol{
			{Name: "E", Dim: quantity.Pressures, Key: "stiffness"}, leastMoment,
			{Name: "k", Dim: quantity.Dimensionless, Key: "lengthFactor"},
			{Name: "l", Dim: quantity.Lengths, Key: "freeLength"},
		}, Dim: quantity.Forces, Decimals: 1, Basis: "pile.euler"}
)
