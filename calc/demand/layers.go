package demand

import (
	"strconv"

	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Layer is a layer of ground along the shaft.
type Layer struct {
	Thickness  length                        // h, above zero
	Resistance working.Of[quantity.Pressure] // q, unit shaft resistance while pressing, above zero
}

// Shaft returns the shaft resistance of layers, the T or N of [Ground],
//
//	T = U (h_1 q_1 + h_2 q_2 + ...)
//
// symbol: "T" or "N"; U: perimeter of the pile [m]; h: thickness [m]; q: unit
// shaft resistance [kPa]; all above zero. No layer is no resistance. The error is
// an [*InputError]. Source: statics (basis "demand.shaft"). The unit resistance
// is that felt while pressing; for the second form of [Ground] it is the
// long-term one. Not covered: tapered piles.
func Shaft(b *working.Book, symbol string, layers []Layer, perimeter length) (force, error) {
	if len(layers) == 0 {
		return force{}, nil
	}
	if err := (input{"U", float64(perimeter.V), quantity.Lengths, "1.40 m"}).positive(); err != nil {
		return force{}, err
	}
	rule := working.Rule{Key: "demand.shaft", Symbol: symbol, Formula: "U*(", Dim: quantity.Forces, Decimals: 1, Basis: "demand.shaft",
		Inputs: []working.Symbol{symbolPerimeter}}
	in, sum := []working.In{perimeter.In()}, 0.0
	for i, l := range layers {
		n := strconv.Itoa(i + 1)
		if err := first(input{"h_" + n, float64(l.Thickness.V), quantity.Lengths, "3.0 m"}.positive(),
			input{"q_" + n, float64(l.Resistance.V), quantity.Pressures, "0.02 MPa"}.positive()); err != nil {
			return force{}, err
		}
		if i > 0 {
			rule.Formula += " + "
		}
		rule.Formula += "h_" + n + "*q_" + n
		rule.Inputs = append(rule.Inputs, layerThickness(n), layerResistance(n))
		in = append(in, l.Thickness.In(), l.Resistance.In())
		sum += float64(float64(l.Thickness.V) * float64(l.Resistance.V))
	}
	rule.Formula += ")"
	return working.Put(b.Under("demand/"), rule, symbol, quantity.Force(float64(perimeter.V)*sum), in...), nil
}

var symbolPerimeter = working.Symbol{Name: "U", Dim: quantity.Lengths, Key: "perimeter"}

func layerThickness(n string) working.Symbol {
	return working.Symbol{Name: "h_" + n, Dim: quantity.Lengths, Key: "layerThickness"}
}

func layerResistance(n string) working.Symbol {
	return working.Symbol{Name: "q_" + n, Dim: quantity.Pressures, Key: "unitShaftResistance"}
}
