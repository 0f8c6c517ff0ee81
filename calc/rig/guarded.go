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
	Budget calibration.Budget
	// AtEnd says that the bound lies above the loads of the certificate, so that
	// the largest division inside its range was taken: the reading that the
	// bound itself allows is not known.
	AtEnd bool
}

// GuardedSet returns the smallest division at which the load less its
// uncertainty still reaches the set load, F(p) - U(p) >= F_set. With U at 95 %
// two-sided the risk left is 2.5 %. Divisions are counted from zero.
//
// Errors: certificate.outside where the set load, or every reading that is
// certain to reach it, lies outside the certificate; certificate.noReading
// where the doubt grows as fast as the load; those of [Gauging.Budget].
//
// Source: JCGM 106:2012, 8.3.3, guarded acceptance at the lower end.
func (g Gauging) GuardedSet(set quantity.Force, division quantity.Pressure, t Terms, level float64) (GuardedReading, error) {
	plain, err := g.Reading(set)
	if err != nil {
		return GuardedReading{}, err
	}
	first := math.Max(0, quantity.Divisions(float64(plain), float64(division), true))
	return g.guard(set, first, 1, division, t, level)
}

// GuardedLimit returns the largest division at which the load with its
// uncertainty still keeps a limit, F(p) + U(p) <= F_lim; see
// [Gauging.GuardedSet]. A limit above the loads of the certificate gives the
// largest division inside its range, with AtEnd set.
func (g Gauging) GuardedLimit(limit quantity.Force, division quantity.Pressure, t Terms, level float64) (GuardedReading, error) {
	plain, err := g.Reading(limit)
	end := false
	if _, high := g.Range(); err != nil {
		if most, _ := g.Load(high); limit < most {
			return GuardedReading{}, err
		}
		plain, end = high, true
	}
	first := quantity.Divisions(float64(plain), float64(division), false)
	r, err := g.guard(limit, first, -1, division, t, level)
	r.AtEnd = end && r.N == 0
	return r, err
}

const (
	// guardedMost bounds the search: no dial has so many divisions.
	guardedMost = 20000
	// slack takes up the last bits where a load stands exactly on a bound [kN].
	slack = 1e-9
)

// guard goes division by division from the first one away from the bound: up
// with side 1, down with -1.
func (g Gauging) guard(bound quantity.Force, first, side float64, division quantity.Pressure, t Terms, level float64) (GuardedReading, error) {
	for n := range guardedMost {
		p := quantity.Pressure((first + side*float64(n)) * float64(division))
		if p < 0 {
			break
		}
		load, err := g.Load(p)
		if err != nil {
			return GuardedReading{}, g.outside(bound)
		}
		budget, err := g.Budget(p, t, level)
		if err != nil {
			return GuardedReading{}, err
		}
		if float64(side*float64(load-bound))-budget.U >= -slack {
			return GuardedReading{P: p, N: n, Load: load, Budget: budget}, nil
		}
	}
	return GuardedReading{}, &calibration.Fault{Code: "certificate.noReading", Value: float64(bound), Dim: quantity.Forces, Decimals: 1}
}
