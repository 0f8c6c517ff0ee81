package rig

import (
	"math"

	"gaugewright/calc/calibration"
	"gaugewright/calc/quantity"
)

// Gauging is the way from a gauge reading to the load on the pile head and
// back, with the ram still:
//
//	F = eta A p + W          no certificate
//	F = eta A p_true(p) + W  gauge alone: the gauge is calibrated, the jacks are not
//	F = n f(p) + W           one of n equal cylinders on a bench
//	F = f(p)                 whole circuit, W in the reference load
//	F = f(p) + W             whole circuit, W not in it
//
// p_true and f are read from the certificate's curve directly where readings
// were set, by its inverse where the reference was. Source: statics. Not
// covered: a moving ram ([MovingLoad]), backing off, and how far the cylinders
// differ from the one that was on the bench.
type Gauging struct {
	By     *Calibrated    // nil: no certificate
	Eta    quantity.Ratio // best estimate of the efficiency; without a certificate of the jacks
	Area   quantity.Area  // of the circuit; likewise
	OnHead quantity.Force // W
}

// JacksCalibrated says whether no efficiency is needed any more.
func (g Gauging) JacksCalibrated() bool { return g.By != nil && g.By.Kind != GaugeAlone }

// HeadCounts says whether W stands in the formula.
func (g Gauging) HeadCounts() bool {
	return g.By == nil || g.By.Kind != WholeCircuit || g.By.Head == HeadBeside
}

// reference is what the certificate says at a reading. Outside its range the
// value comes with the error.
func (g Gauging) reference(p quantity.Pressure) (float64, error) {
	if g.By == nil {
		return float64(p), nil
	}
	c := g.By.Curve
	value, known, inside := c.At(float64(p)), true, c.Inside(float64(p))
	low, high := c.Low, c.High
	if g.By.ReferenceSet {
		value, known = c.Solve(float64(p))
		inside = known && c.Inside(value)
		low, high = c.At(c.Low), c.At(c.High)
	}
	if !known {
		value = math.NaN()
	}
	if !inside {
		return value, &calibration.Fault{Code: "certificate.outside", Value: float64(p), Low: low, High: high, Dim: quantity.Pressures, Decimals: 2}
	}
	return value, nil
}

// scale is how much the load changes with the reference.
func (g Gauging) scale() float64 {
	switch {
	case !g.JacksCalibrated():
		return float64(g.Eta) * float64(g.Area)
	case g.By.Kind == OneCylinder:
		return float64(g.By.Cylinders)
	}
	return 1
}

// Load returns the load on the pile head at a reading. Outside the range of
// the certificate it comes with the error certificate.outside: it may be shown,
// marked, for information, and decides nothing.
func (g Gauging) Load(p quantity.Pressure) (quantity.Force, error) {
	reference, err := g.reference(p)
	f := float64(g.scale() * reference)
	if g.HeadCounts() {
		f += float64(g.OnHead)
	}
	return quantity.Force(f), err
}

// wanted is the reference at a load.
func (g Gauging) wanted(f quantity.Force) float64 {
	over := float64(f)
	if g.HeadCounts() {
		over -= float64(g.OnHead)
	}
	return over / g.scale()
}

// Reading returns the gauge reading at which the load on the pile head is f.
// Outside the range of the certificate there is none: error certificate.outside,
// in loads.
func (g Gauging) Reading(f quantity.Force) (quantity.Pressure, error) {
	reference := g.wanted(f)
	if g.By == nil {
		return quantity.Pressure(reference), nil
	}
	c := g.By.Curve
	if g.By.ReferenceSet {
		if !c.Inside(reference) {
			return 0, g.outside(f)
		}
		return quantity.Pressure(c.At(reference)), nil
	}
	p, ok := c.Solve(reference)
	if !ok || !c.Inside(p) {
		return 0, g.outside(f)
	}
	return quantity.Pressure(p), nil
}

// outside names the loads between which the certificate speaks.
func (g Gauging) outside(f quantity.Force) error {
	low, high := g.Range()
	least, _ := g.Load(low)
	most, _ := g.Load(high)
	return &calibration.Fault{Code: "certificate.outside", Value: float64(f), Low: float64(least), High: float64(most), Dim: quantity.Forces, Decimals: 1}
}

// Range returns the readings between which the certificate speaks; without one
// they are 0 and infinite.
func (g Gauging) Range() (low, high quantity.Pressure) {
	switch {
	case g.By == nil:
		return 0, quantity.Pressure(math.Inf(1))
	case g.By.ReferenceSet:
		c := g.By.Curve
		return quantity.Pressure(c.At(c.Low)), quantity.Pressure(c.At(c.High))
	}
	return quantity.Pressure(g.By.Curve.Low), quantity.Pressure(g.By.Curve.High)
}

// Limits returns the reading for a load with the limits that the scatter of the
// certificate leaves for a single new reading at a level of confidence, 0.95
// say: by the inverse of the curve where readings were set, directly where the
// reference was. Its numbers are pressures [kPa]. The other doubts, and W, are
// not in it; see [Gauging.Budget].
//
// Errors: certificate.outside, and calibration.doubtNotKnown and
// noFiniteInterval with the value filled in. There must be a certificate.
func (g Gauging) Limits(f quantity.Force, level float64) (calibration.Interval, error) {
	if _, err := g.Reading(f); err != nil {
		return calibration.Interval{}, err
	}
	if g.By.ReferenceSet {
		return g.By.Curve.Predict(g.wanted(f), level, 1)
	}
	return g.By.Curve.Inverse(g.wanted(f), level, 1)
}

// Slope returns how much the load changes with the reading there [m2].
func (g Gauging) Slope(p quantity.Pressure) float64 {
	if g.By == nil {
		return g.scale()
	}
	reference, _ := g.reference(p)
	if g.By.ReferenceSet {
		return g.scale() / g.By.Curve.Slope(reference)
	}
	return g.scale() * g.By.Curve.Slope(float64(p))
}
