package rig

import (
	"errors"
	"math"
	"strconv"

	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Side is the side of the piston on which the oil acts while pressing.
type Side byte

// The three ways in which a cylinder is plumbed for pressing.
const (
	BoreSide Side = 'b' // full bore: pi D^2/4
	RodSide  Side = 'r' // ring around the rod: pi (D^2 - d^2)/4
	Joined   Side = 'j' // bore and rod sides joined: the rod's area pi d^2/4 remains
)

// Group is a number of equal cylinders of a circuit that act the same way.
type Group struct {
	Number    int             // >= 1
	Bore, Rod quantity.Length // D > d >= 0 [m]; the bore side needs no rod
	Side      Side
}

// Errors of [Area].
var (
	ErrNoGroups = errors.New("rig: a circuit needs at least one cylinder")
	ErrBore     = errors.New("rig: a bore must be larger than zero")
	ErrRod      = errors.New("rig: a rod must be thicker than zero and thinner than its bore")
	ErrSide     = errors.New("rig: the acting side is bore, rod or joined")
)

// Area returns the area A [m2] on which the oil of a circuit acts: the sum over
// its groups of n pi D^2/4 (bore side), n pi (D^2 - d^2)/4 (rod side) or
// n pi d^2/4 (sides joined, the oil of the ring returning to the bore).
//
// Source: geometry; sizes of ISO 3320 cylinders in the tests.
func Area(groups []Group) (quantity.Area, error) {
	if len(groups) == 0 {
		return 0, ErrNoGroups
	}
	total := 0.0
	for _, g := range groups {
		d, rod := float64(g.Bore), float64(g.Rod)
		switch {
		case g.Number < 1:
			return 0, ErrNoGroups
		case !(d > 0):
			return 0, ErrBore
		case g.Side != BoreSide && !(rod > 0 && rod < d):
			return 0, ErrRod
		}
		square := 0.0
		switch g.Side {
		case BoreSide:
			square = d * d
		case RodSide:
			square = (d - rod) * (d + rod)
		case Joined:
			square = rod * rod
		default:
			return 0, ErrSide
		}
		total += float64(g.Number) * math.Pi / 4 * square
	}
	return quantity.Area(total), nil
}

// AreaRule is the formula of [Area] for these groups. Its symbols are n1, D1
// and d1 for the first group and so on; see [AreaInputs].
func AreaRule(groups []Group) working.Rule {
	r := working.Rule{Key: "rig.area", Symbol: "A", Dim: quantity.Areas, Decimals: 6, Basis: "rig.area"}
	for i, g := range groups {
		k := strconv.Itoa(i + 1)
		if i > 0 {
			r.Formula += " + "
		}
		n := working.Symbol{Name: "n" + k, Dim: quantity.Dimensionless, Key: "cylinders"}
		bore := working.Symbol{Name: "D" + k, Dim: quantity.Lengths, Key: "bore"}
		rod := working.Symbol{Name: "d" + k, Dim: quantity.Lengths, Key: "rod"}
		switch g.Side {
		case BoreSide:
			r.Formula += "n" + k + "*pi*D" + k + "^2/4"
			r.Inputs = append(r.Inputs, n, bore)
		case RodSide:
			r.Formula += "n" + k + "*pi*(D" + k + "^2 - d" + k + "^2)/4"
			r.Inputs = append(r.Inputs, n, bore, rod)
		case Joined:
			r.Formula += "n" + k + "*pi*d" + k + "^2/4"
			r.Inputs = append(r.Inputs, n, rod)
		}
	}
	return r
}

// AreaInputs lists the inputs of [AreaRule] in its order. ref gives the place
// of a value: group number from 0, and "number", "bore" or "rod".
func AreaInputs(groups []Group, ref func(group int, name string) string) []working.In {
	var list []working.In
	for i, g := range groups {
		list = append(list, working.In{V: float64(g.Number), Ref: ref(i, "number")})
		if g.Side != Joined {
			list = append(list, working.In{V: float64(g.Bore), Ref: ref(i, "bore")})
		}
		if g.Side != BoreSide {
			list = append(list, working.In{V: float64(g.Rod), Ref: ref(i, "rod")})
		}
	}
	return list
}
