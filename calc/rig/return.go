package rig

import (
	"errors"
	"math"
	"strconv"

	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// ErrJoinedReturn: with the sides joined the oil of the ring runs to the bore,
// and no other side has a return pressure.
var ErrJoinedReturn = errors.New("rig: joined sides have no return pressure of their own")

// ReturnArea returns the area A_r [m2] of the other side of the pistons, on
// which the returning oil acts while the ram moves: the ring where the bore side
// pushes, the bore where the rod side does.
//
//	n pi (D^2 - d^2)/4   or   n pi D^2/4
//
// The rod must be stated on the bore side, too. Source: geometry. A rod on both
// ends is not covered.
func ReturnArea(groups []Group) (quantity.Area, error) {
	if _, err := Area(groups); err != nil {
		return 0, err
	}
	total := 0.0
	for _, g := range groups {
		d, rod := float64(g.Bore), float64(g.Rod)
		switch {
		case g.Side == Joined:
			return 0, ErrJoinedReturn
		case !(rod > 0 && rod < d):
			return 0, ErrRod
		}
		square := d * d
		if g.Side == BoreSide {
			square = (d - rod) * (d + rod)
		}
		total += float64(g.Number) * math.Pi / 4 * square
	}
	return quantity.Area(total), nil
}

// MovingLoad returns the load on the pile head while the ram moves down
// against a return pressure,
//
//	F = eta (A p - A_r p_r) + W
//
// with A_r by [ReturnArea] [m2] and p_r the return pressure [kPa]; the others as
// in [Load]. Source: statics of the piston. A set is read with the ram still.
// Not covered: acceleration, loss of pressure between gauge and cylinder, and
// A_r p_r above A p, where friction turns round.
func MovingLoad(eta quantity.Ratio, a quantity.Area, p quantity.Pressure, ar quantity.Area, pr quantity.Pressure, w quantity.Force) quantity.Force {
	net := float64(float64(a)*float64(p)) - float64(float64(ar)*float64(pr))
	return quantity.Force(float64(float64(eta)*net) + float64(w))
}

// ReturnAreaRule is the formula of [ReturnArea] for these groups; see
// [ReturnAreaInputs].
func ReturnAreaRule(groups []Group) working.Rule {
	r := working.Rule{Key: "rig.returnArea", Symbol: "A_r", Dim: quantity.Areas, Decimals: 6, Basis: "rig.area"}
	for i, g := range groups {
		k := strconv.Itoa(i + 1)
		if i > 0 {
			r.Formula += " + "
		}
		r.Formula += "n" + k + "*pi*D" + k + "^2/4"
		r.Inputs = append(r.Inputs, working.Symbol{Name: "n" + k, Dim: quantity.Dimensionless, Key: "cylinders"}, working.Symbol{Name: "D" + k, Dim: quantity.Lengths, Key: "bore"})
		if g.Side == BoreSide {
			r.Formula = r.Formula[:len(r.Formula)-len("D"+k+"^2/4")] + "(D" + k + "^2 - d" + k + "^2)/4"
			r.Inputs = append(r.Inputs, working.Symbol{Name: "d" + k, Dim: quantity.Lengths, Key: "rod"})
		}
	}
	return r
}

// ReturnAreaInputs lists the inputs of [ReturnAreaRule] in its order; ref as in
// [AreaInputs].
func ReturnAreaInputs(groups []Group, ref func(group int, name string) string) []working.In {
	var list []working.In
	for i, g := range groups {
		list = append(list, working.In{V: float64(g.Number), Ref: ref(i, "number")}, working.In{V: float64(g.Bore), Ref: ref(i, "bore")})
		if g.Side == BoreSide {
			list = append(list, working.In{V: float64(g.Rod), Ref: ref(i, "rod")})
		}
	}
	return list
}

// MovingLoadRule is the formula of [MovingLoad]; its inputs are eta, A, p, A_r,
// p_r, W.
var MovingLoadRule = working.Rule{
	Key: "rig.movingLoad", Symbol: "F", Formula: "eta*(A*p - A_r*p_r) + W", Dim: quantity.Forces, Decimals: 1, Basis: "rig.load",
	Inputs: []working.Symbol{LoadRule.Inputs[0], LoadRule.Inputs[1], LoadRule.Inputs[2], {Name: "A_r", Dim: quantity.Areas, Key: "returnArea"},
		{Name: "p_r", Dim: quantity.Pressures, Key: "returnPressure"}, LoadRule.Inputs[3]},
}
