package rig

import (
	"math"

	"gaugewright/calc/calibration"
	"gaugewright/calc/quantity"
)

// Terms are the doubts behind a load, in the order of [TermKeys].
type Terms struct {
	Gauge Doubtful // class, span, division, temperature, zero
	// WithClass says that the class of the gauge counts; see [ClassCounts].
	WithClass bool
	Reference quantity.Ratio // expanded uncertainty of the reference device, part of its value
	Coverage  quantity.Ratio // its coverage factor, 2 say
	EtaHalf   quantity.Ratio // half the range of the efficiency; without a certificate of the jacks
	HeadHalf  quantity.Force // how far W may be off
	// Doubted holds by the key of a term by which part of itself its standard
	// uncertainty may be off. Terms that are not in it are certain.
	Doubted map[string]float64
}

// TermKeys are the terms of a budget in their order.
var TermKeys = [...]string{"class", "temperature", "zero", "division", "fit", "reference", "efficiency", "onHead"}

// ClassCounts says whether the class of a gauge is a doubt of its own. A
// certificate made with this very gauge, alone or together with the jacks,
// corrects the error that the class is the limit of; counting both would count
// one doubt twice (JCGM 100:2008, 4.3.10). Without a certificate, or with
// another gauge than the one on it, the class counts.
func ClassCounts(by *Calibrated, sameGauge bool) bool { return by == nil || !sameGauge }

// Budget returns the doubt in the load at a reading by JCGM 100:2008, with U at
// a two-sided level, 0.95 say. The terms, each with its distribution:
//
//	class        limit of error, part of span; rectangular (4.3.7)
//	temperature  error a kelvin times kelvins; rectangular
//	zero         rectangular
//	division     half a division; rectangular
//	fit          scatter about the certificate's curve for a single new reading,
//	             and the doubt of the curve; Student, n - 2 or n - 3 degrees of
//	             freedom. Times n for one of n cylinders: wholly correlated
//	reference    expanded uncertainty over its coverage factor; normal. It is one
//	             doubt of all points together, not thinned out by their number
//	efficiency   half its range; rectangular. Only while the jacks are not
//	             calibrated
//	onHead       how far W may be off; rectangular. Not where W is in the
//	             reference load
//
// A term that does not apply is left out. Rectangular and normal terms have
// infinite degrees of freedom unless doubted (G.4.2). Where the reference was
// set, the doubt of the fit is carried over by the slope, to the first order;
// [Gauging.Limits] has the exact limits beside it.
//
// Errors: certificate.outside; calibration.doubtNotKnown with two points.
//
// Not covered: drift since the certificate, parallax, a needle that sticks,
// differences between n cylinders. The scatter of the certificate holds the
// rounding of its own readings, so the division is counted a little twice, on
// the safe side.
func (g Gauging) Budget(p quantity.Pressure, t Terms, level float64) (calibration.Budget, error) {
	terms, err := g.terms(p, t)
	if err != nil {
		return calibration.Budget{}, err
	}
	return calibration.Combine(terms, level), nil
}

// Whole is [Gauging.Budget] without its parts.
func (g Gauging) Whole(p quantity.Pressure, t Terms, level float64) (calibration.Budget, error) {
	terms, err := g.terms(p, t)
	if err != nil {
		return calibration.Budget{}, err
	}
	return calibration.Whole(terms, level), nil
}

func (g Gauging) terms(p quantity.Pressure, t Terms) ([]calibration.Term, error) {
	reference, err := g.reference(p)
	if err != nil {
		return nil, err
	}
	l := termList{doubted: t.Doubted}
	slope, scale, span := g.Slope(p), g.scale(), float64(t.Gauge.Span)
	if t.WithClass {
		l.even("class", float64(t.Gauge.Class)*span, slope)
	}
	l.even("temperature", math.Abs(float64(t.Gauge.PerKelvin)*t.Gauge.Warmth)*span, slope)
	l.even("zero", float64(t.Gauge.Zero), slope)
	l.even("division", float64(t.Gauge.Division)/2, slope)
	if g.By != nil {
		c := g.By.Curve
		if !c.Known() {
			return nil, &calibration.Fault{Code: "calibration.doubtNotKnown", Value: float64(len(c.Points)), Low: 3, High: math.Inf(1)}
		}
		x, sensitivity := float64(p), scale
		if g.By.ReferenceSet {
			x, sensitivity = reference, scale/c.Slope(reference)
		}
		l.add("fit", calibration.Student, math.NaN(), c.Doubt(x, 1), sensitivity, float64(c.DF))
		half := float64(t.Reference) * reference
		l.add("reference", calibration.Normal, half, half/float64(t.Coverage), scale, calibration.Certain())
	}
	if !g.JacksCalibrated() {
		l.even("efficiency", float64(t.EtaHalf), float64(g.Area)*reference)
	}
	if g.HeadCounts() {
		l.even("onHead", float64(t.HeadHalf), 1)
	}
	return l.list, nil
}

// termList gathers the terms of a budget.
type termList struct {
	list    []calibration.Term
	doubted map[string]float64
}

// add is kept out of its callers, as is even, which keeps the page smaller.
//
//go:noinline
func (l *termList) add(key string, shape calibration.Shape, half, u, sensitivity, df float64) {
	if r := l.doubted[key]; r > 0 {
		df = calibration.Doubted(r)
	}
	l.list = append(l.list, calibration.Term{Key: key, Shape: shape, Half: half, U: u, Sensitivity: sensitivity, DF: df})
}

//go:noinline
func (l *termList) even(key string, half, sensitivity float64) {
	l.add(key, calibration.Rectangular, half, calibration.Even(half), sensitivity, calibration.Certain())
}
