package pile

import (
	"math"

	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// SecondMoment is a second moment of area about a centroidal axis [m4].
type SecondMoment float64

// Modulus is an elastic section modulus [m3].
type Modulus float64

// SecondMoments and Moduli are the dimensions of [SecondMoment] and [Modulus].
var (
	SecondMoments = quantity.Dimension{L: 4}
	Moduli        = quantity.Volumes
)

// Section is the cross-section of a pile. Where its two axes differ, the
// weaker one counts: the least second moment and the least modulus.
type Section struct {
	Area    quantity.Area   // A: area of the material [m2]
	Moment  SecondMoment    // I: least second moment of area [m4]
	Modulus Modulus         // W_el: least elastic modulus [m3]; 0 where it is not known
	Surface quantity.Length // s: outer surface per metre of pile [m2/m]; 0 where it is not known
}

// Gyration returns the least radius of gyration i = sqrt(I/A) [m].
func (s Section) Gyration() quantity.Length {
	return quantity.Length(math.Sqrt(float64(s.Moment) / float64(s.Area)))
}

// Ring returns the section of a hollow circle: a steel tube or a spun concrete
// pile.
//
//	A    = pi (D - t) t
//	I    = pi/64 (D^4 - (D - 2t)^4)
//	W_el = 2 I/D
//	s    = pi D
//
// D is the outer diameter [m], D > 0; t the wall [m], 0 < t <= D/2, where
// t = D/2 is the full circle. The error is an [*InputError].
// Source: geometry; the same formulas stand in EN 10210-2 Annex B (from
// memory). The inner surface is not counted: a plug is not assumed to move.
func Ring(outer, wall quantity.Length) (Section, error) {
	t := length("t", wall, "0.0125 m")
	if err := first(length("D", outer, "0.508 m").positive(), t.positive()); err != nil {
		return Section{}, err
	}
	if 2*wall > outer {
		return Section{}, t.fault("pile.wallTooThick", float64(outer)/2)
	}
	D, inner := float64(outer), float64(outer)-float64(2*wall)
	I := math.Pi / 64 * (float64(D*D*D*D) - float64(inner*inner*inner*inner))
	return Section{
		Area:    quantity.Area(math.Pi * (D - float64(wall)) * float64(wall)),
		Moment:  SecondMoment(I),
		Modulus: Modulus(2 * I / D),
		Surface: quantity.Length(math.Pi * D),
	}, nil
}

// Square returns the section of a full square with the side b [m], b > 0.
//
//	A    = b^2
//	I    = b^4/12
//	W_el = 2 I/b, for bending along a side
//	s    = 4 b
//
// The error is an [*InputError]. Source: geometry. Corners are taken as sharp.
// Not covered: bending along the diagonal, where W_el is smaller by sqrt(2).
func Square(side quantity.Length) (Section, error) {
	if err := length("b", side, "0.35 m").positive(); err != nil {
		return Section{}, err
	}
	b := float64(side)
	I := b * b * b * b / 12
	return Section{
		Area:    quantity.Area(b * b),
		Moment:  SecondMoment(I),
		Modulus: Modulus(2 * I / b),
		Surface: quantity.Length(4 * b),
	}, nil
}

// Circle returns the section of a full circle with the diameter D [m], D > 0.
//
//	A    = pi D^2/4
//	I    = pi D^4/64
//	W_el = 2 I/D
//	s    = pi D
//
// The error is an [*InputError]. Source: geometry. For a tapered pile give the
// diameter of the section that is looked at, see [Taper].
func Circle(diameter quantity.Length) (Section, error) {
	if err := length("D", diameter, "0.30 m").positive(); err != nil {
		return Section{}, err
	}
	D := float64(diameter)
	I := math.Pi * D * D * D * D / 64
	return Section{
		Area:    quantity.Area(math.Pi * D * D / 4),
		Moment:  SecondMoment(I),
		Modulus: Modulus(2 * I / D),
		Surface: quantity.Length(math.Pi * D),
	}, nil
}

var (
	outerDiameter = working.Symbol{Name: "D", Dim: quantity.Lengths, Key: "outerDiameter"}
	wallThickness = working.Symbol{Name: "t", Dim: quantity.Lengths, Key: "wallThickness"}
	sideLength    = working.Symbol{Name: "b", Dim: quantity.Lengths, Key: "side"}
	sectionArea   = working.Symbol{Name: "A", Dim: quantity.Areas, Key: "sectionArea"}
	leastMoment   = working.Symbol{Name: "I", Dim: SecondMoments, Key: "leastMoment"}
	extent        = working.Symbol{Name: "d", Dim: quantity.Lengths, Key: "sectionExtent"}
)

// The rules of the sections. Inputs: D, t for the ring, b for the square, D
// for the circle.
var (
	RingAreaRule = working.Rule{Key: "pile.ring.area", Symbol: "A", Formula: "pi*(D - t)*t",
		Inputs: []working.Symbol{outerDiameter, wallThickness}, Dim: quantity.Areas, Decimals: 7, Basis: "geometry"}
	RingMomentRule = working.Rule{Key: "pile.ring.moment", Symbol: "I", Formula: "pi/64*(D^4 - (D - 2*t)^4)",
		Inputs: []working.Symbol{outerDiameter, wallThickness}, Dim: SecondMoments, Decimals: 9, Basis: "geometry"}
	SquareAreaRule = working.Rule{Key: "pile.square.area", Symbol: "A", Formula: "b^2",
		Inputs: []working.Symbol{sideLength}, Dim: quantity.Areas, Decimals: 7, Basis: "geometry"}
	SquareMomentRule = working.Rule{Key: "pile.square.moment", Symbol: "I", Formula: "b^4/12",
		Inputs: []working.Symbol{sideLength}, Dim: SecondMoments, Decimals: 9, Basis: "geometry"}
	SquareSurfaceRule = working.Rule{Key: "pile.square.surface", Symbol: "s", Formula: "4*b",
		Inputs: []working.Symbol{sideLength}, Dim: quantity.Lengths, Decimals: 5, Basis: "geometry"}
	CircleAreaRule = working.Rule{Key: "pile.circle.area", Symbol: "A", Formula: "pi*D^2/4",
		Inputs: []working.Symbol{outerDiameter}, Dim: quantity.Areas, Decimals: 7, Basis: "geometry"}
	CircleMomentRule = working.Rule{Key: "pile.circle.moment", Symbol: "I", Formula: "pi*D^4/64",
		Inputs: []working.Symbol{outerDiameter}, Dim: SecondMoments, Decimals: 9, Basis: "geometry"}
	// RoundSurfaceRule serves the ring and the full circle. Input: D.
	RoundSurfaceRule = working.Rule{Key: "pile.round.surface", Symbol: "s", Formula: "pi*D",
		Inputs: []working.Symbol{outerDiameter}, Dim: quantity.Lengths, Decimals: 5, Basis: "geometry"}
	// ModulusRule serves every section that is symmetrical about the axis of I.
	// Inputs: I, d; d is the extent of the section across that axis: D of a
	// ring or circle, b of a square.
	ModulusRule = working.Rule{Key: "pile.modulus", Symbol: "W_el", Formula: "2*I/d",
		Inputs: []working.Symbol{leastMoment, extent}, Dim: Moduli, Decimals: 8, Basis: "geometry"}
	// GyrationRule has the inputs I, A.
	GyrationRule = working.Rule{Key: "pile.gyration", Symbol: "i", Formula: "sqrt(I/A)",
		Inputs: []working.Symbol{leastMoment, sectionArea}, Dim: quantity.Lengths, Decimals: 5, Basis: "geometry"}
)
