package rig

import (
	"math"

	"gaugewright/calc/calibration"
	"gaugewright/calc/quantity"
)

// GuardedReading is a reading that keeps the doubt of its load away from a
// bound.
type GuardedReading struct {
	P      quantity.Pressure
	N      int // divisions from the reading without guard
	Load   quantity.Force
	Budget calibration.Budget // without its parts
}

// GuardedSet returns the smallest division, from the set reading without guard
// on, at which the load less its uncertainty still reaches the set load, F(p) -
// U(p) >= F_set. With U at 95 % two-sided the risk left is 2.5 %. from is a whole
// division, zero or more.
//
// Errors: certificate.outside where every reading that is certain to reach the
// set load lies outside the certificate; certificate.noReading where the doubt
// grows as fast as the load; those of [Gauging.Budget].
//
// Source: JCGM 106:2012, 8.3.3, guarded acceptance at the lower end.
func (g Gauging) GuardedSet(set quantity.Force, from, division quantity.Pressure, t Terms, level float64) (GuardedReading, error) {
	return g.guard(set, from, 1, division, t, level)
}

// GuardedLimit returns the largest division, from the reading of the limit
// without guard down, at which the load with its uncertainty still keeps the
// limit, F(p) + U(p) <= F_lim; see [Gauging.GuardedSet].
func (g Gauging) GuardedLimit(limit quantity.Force, from, division quantity.Pressure, t Terms, level float64) (GuardedReading, error) {
	return g.guard(limit, from, -1, division, t, level)
}

const (
	// guardedMost bounds the search: no dial has so many divisions.
	guardedMost = 20000
	// slack takes up the last bits where a load stands exactly on a bound [kN].
	slack = 1e-9
)

// guard goes division by division from the first one away from the bound: up
// with side 1, down with -1.
func (g Gauging) guard(bound quantity.Force, from quantity.Pressure, side float64, division quantity.Pressure, t Terms, level float64) (GuardedReading, error) {
	first := math.Round(float64(from) / float64(division))
	for n := range guardedMost {
		p := quantity.Pressure((first + side*float64(n)) * float64(division))
		if p < 0 {
			break
		}
		load, err := g.Load(p)
		if err != nil {
			return GuardedReading{}, g.outside(bound)
		}
		budget, err := g.Whole(p, t, level)
		if err != nil {
			return GuardedReading{}, err
		}
		if float64(side*float64(load-bound))-budget.U >= -slack {
			return GuardedReading{P: p, N: n, Load: load, Budget: budget}, nil
		}
	}
	return GuardedReading{}, &calibration.Fault{Code: "certificate.noReading", Value: float64(bound), Dim: quantity.Forces, Decimals: 1}
}
