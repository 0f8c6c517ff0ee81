package pile

import (
	"math"

	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// SecondMoment is a second moment of area about a centroidal axis [m4].
type SecondMoment float64

// SecondMoments is the dimension of [SecondMoment].
var SecondMoments = quantity.Dimension{L: 4}

// Section is the cross-section of a pile, the same about both axes.
type Section struct {
	Area    quantity.Area   // A: area of the material [m2]
	Moment  SecondMoment    // I: second moment of area about any centroidal axis [m4]
	Surface quantity.Length // s: outer surface per metre of pile [m2/m], the outer perimeter
}

// Ring returns the section of a hollow circle: a steel tube or a spun concrete
// pile.
//
//	A = pi (D - t) t
//	I = pi/64 (D^4 - (D - 2t)^4)
//	s = pi D
//
// D is the outer diameter [m], D > 0; t the wall [m], 0 < t <= D/2, where
// t = D/2 is the full circle. The error is an [*InputError].
// Source: geometry; the same formulas stand in EN 10210-2 Annex B (from
// memory). The inner surface is not counted: a plug is not assumed to move.
func Ring(outer, wall quantity.Length) (Section, error) {
	if err := positive("D", float64(outer), "0.508 m"); err != nil {
		return Section{}, err
	}
	if err := positive("t", float64(wall), "0.0125 m"); err != nil {
		return Section{}, err
	}
	if 2*wall > outer {
		return Section{}, &InputError{Code: "pile.wallTooThick", Symbol: "t", Value: float64(wall),
			Limit: float64(outer) / 2, Example: "0.0125 m"}
	}
	D, t := float64(outer), float64(wall)
	d := D - float64(2*t)
	return Section{
		Area:    quantity.Area(math.Pi * (D - t) * t),
		Moment:  SecondMoment(math.Pi / 64 * (float64(D*D*D*D) - float64(d*d*d*d))),
		Surface: quantity.Length(math.Pi * D),
	}, nil
}

// Square returns the section of a full square with the side b [m], b > 0.
//
//	A = b^2
//	I = b^4/12
//	s = 4 b
//
// The error is an [*InputError]. Source: geometry. Corners are taken as sharp.
func Square(side quantity.Length) (Section, error) {
	if err := positive("b", float64(side), "0.35 m"); err != nil {
		return Section{}, err
	}
	b := float64(side)
	return Section{
		Area:    quantity.Area(b * b),
		Moment:  SecondMoment(b * b * b * b / 12),
		Surface: quantity.Length(4 * b),
	}, nil
}

// Circle returns the section of a full circle with the diameter D [m], D > 0.
//
//	A = pi D^2/4
//	I = pi D^4/64
//	s = pi D
//
// The error is an [*InputError]. Source: geometry. The taper of a timber pile
// is not covered: give the diameter of the section that is looked at.
func Circle(diameter quantity.Length) (Section, error) {
	if err := positive("D", float64(diameter), "0.30 m"); err != nil {
		return Section{}, err
	}
	D := float64(diameter)
	return Section{
		Area:    quantity.Area(math.Pi * D * D / 4),
		Moment:  SecondMoment(math.Pi * D * D * D * D / 64),
		Surface: quantity.Length(math.Pi * D),
	}, nil
}

var (
	outerDiameter = working.Symbol{Name: "D", Dim: quantity.Lengths, Key: "outerDiameter"}
	wallThickness = working.Symbol{Name: "t", Dim: quantity.Lengths, Key: "wallThickness"}
	sideLength    = working.Symbol{Name: "b", Dim: quantity.Lengths, Key: "side"}
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
)
