package rig

import (
	"math"

	"gaugewright/calc/basis"
	"gaugewright/calc/calibration"
	"gaugewright/calc/quantity"
)

// CertificateKind is what a certificate of calibration was made of.
type CertificateKind byte

// The kinds.
const (
	GaugeAlone   CertificateKind = 'g' // pressure against pressure; the jacks are not calibrated
	OneCylinder  CertificateKind = 'c' // one cylinder on a bench, load against reading
	WholeCircuit CertificateKind = 'w' // all cylinders in the rig, a load cell under the grip
)

// Ram says who pushed whom while the certificate was made.
type Ram byte

// The states of the ram.
const (
	RamNotSaid Ram = 0
	Active     Ram = 'a' // the ram pushed, as in pressing
	Passive    Ram = 'p' // a machine pushed the ram back: friction works the other way
)

// Head says whether the reference load of a whole circuit holds the weight that
// rides on the pile head.
type Head byte

// The answers.
const (
	HeadNotSaid Head = 0
	HeadInside  Head = 'i' // the cell carried W as well: F = f(p)
	HeadBeside  Head = 'b' // the cell was set to zero with W on it: F = f(p) + W
)

// Pair is one line of a certificate: what the gauge showed and what the
// reference said, kPa for a gauge alone and kN for the others.
type Pair struct {
	Reading   quantity.Pressure
	Reference float64
}

// Certificate is what a certificate says.
type Certificate struct {
	Kind      CertificateKind
	Reference quantity.Dimension // of the reference column: pressures or forces
	// ReferenceSet says that the reference was set to round values and the
	// gauge read; else readings were set and the reference was read.
	ReferenceSet    bool
	Ram             Ram
	Head            Head // of a whole circuit
	Cylinders       int  // of the circuit, where one of them was on the bench
	Degree          calibration.Degree
	Rising, Falling []Pair
}

// Calibrated is a certificate with the curve through its rising run.
type Calibrated struct {
	Certificate
	Curve calibration.Curve // of the observed on the set quantity
	// Share is the slope, reference over reading, as a share of what theory
	// says: the area of the cylinders that were calibrated, or 1 for a gauge. 0
	// where no area is known.
	Share      quantity.Ratio
	Hysteresis *calibration.Hysteresis // nil without a falling run to compare
	Flags      []Flag
}

// Flag is something about a certificate that a person must look at. It refuses
// nothing.
//
// The codes, with their Value and Limit:
//
//	certificate.twoPoints      number of points; 3
//	certificate.slopeAbove     share of the theoretical area; 1: active or passive?
//	certificate.slopeBelow     the same; 0.80
//	certificate.unitsMixed     the same, so far off that the units may be mixed up
//	certificate.outlier        t of the point [Flag.Point]; the quantile it passes
//	certificate.lackOfFit      P of the test for lack of fit; 0.05
//	certificate.quadraticTerm  P of the quadratic term beside a line; 0.05
//	certificate.exact          largest residual: the points lie on the curve to the
//	                           last digit, as if they had been computed
type Flag struct {
	Code         string
	Value, Limit float64
	Point        int // of the rising run, from 0; -1 where it is none
}

// Calibrate fits the rising run of a certificate. theory is the area on which
// the oil acted: of the one cylinder, or of the whole circuit; 0 where it is not
// known. Only the rising run is fitted, for pressing goes that way; the falling
// run gives the hysteresis.
//
// Errors are [*calibration.Fault]: those of [calibration.Fit], and
//
//	certificate.kind        no kind
//	certificate.kindMixed   a gauge's reference is a pressure, the others' a load
//	certificate.ramNotSaid  was the ram active or passive? (not of a gauge)
//	certificate.passive     made with a passive ram: not for pressing
//	certificate.headNotSaid was W in the reference load? (of a whole circuit)
//	certificate.cylinders   of how many cylinders is the one on the bench? 1 or more
//	certificate.noPoints    no point at all
//	certificate.fallingOnly a falling run alone: not for pressing
//	certificate.negative    a reading or reference below zero
func Calibrate(c Certificate, theory quantity.Area) (Calibrated, error) {
	k := Calibrated{Certificate: c}
	if fault := c.fault(); fault != nil {
		return k, fault
	}
	curve, err := calibration.Fit(c.points(c.Rising), c.Degree)
	k.Curve = curve
	if err != nil {
		return k, c.dimensioned(err)
	}
	if h, ok := curve.Compare(c.points(c.Falling)); ok {
		k.Hysteresis = &h
	}
	if slope := k.meanSlope(); c.Kind == GaugeAlone {
		k.Share = quantity.Ratio(slope)
	} else if theory > 0 {
		k.Share = quantity.Ratio(slope / float64(theory))
	}
	k.flag()
	return k, nil
}

// fault looks at what was said before anything is fitted.
func (c Certificate) fault() error {
	wanted := quantity.Forces
	switch c.Kind {
	case GaugeAlone:
		wanted = quantity.Pressures
	case OneCylinder, WholeCircuit:
	default:
		return &calibration.Fault{Code: "certificate.kind"}
	}
	switch {
	case c.Reference != wanted:
		return &calibration.Fault{Code: "certificate.kindMixed"}
	case c.Kind != GaugeAlone && c.Ram == RamNotSaid:
		return &calibration.Fault{Code: "certificate.ramNotSaid"}
	case c.Kind != GaugeAlone && c.Ram == Passive:
		return &calibration.Fault{Code: "certificate.passive"}
	case c.Kind == WholeCircuit && c.Head == HeadNotSaid:
		return &calibration.Fault{Code: "certificate.headNotSaid"}
	case c.Kind == OneCylinder && c.Cylinders < 1:
		return &calibration.Fault{Code: "certificate.cylinders", Value: float64(c.Cylinders), Low: 1, High: 64}
	case len(c.Rising)+len(c.Falling) == 0:
		return &calibration.Fault{Code: "certificate.noPoints"}
	case len(c.Rising) == 0:
		return &calibration.Fault{Code: "certificate.fallingOnly", Value: float64(len(c.Falling))}
	}
	for _, p := range c.Rising {
		switch {
		case p.Reading < 0:
			return &calibration.Fault{Code: "certificate.negative", Value: float64(p.Reading), Dim: quantity.Pressures, Decimals: 3}
		case p.Reference < 0:
			return &calibration.Fault{Code: "certificate.negative", Value: p.Reference, Dim: c.Reference, Decimals: 3}
		}
	}
	return nil
}

// points turns pairs about so that the set quantity comes first.
func (c Certificate) points(pairs []Pair) (list []calibration.Point) {
	for _, p := range pairs {
		if c.ReferenceSet {
			list = append(list, calibration.Point{X: p.Reference, Y: float64(p.Reading)})
		} else {
			list = append(list, calibration.Point{X: float64(p.Reading), Y: p.Reference})
		}
	}
	return list
}

// SetDim and ObservedDim are the dimensions of x and y of the curve.
func (c Certificate) SetDim() quantity.Dimension {
	if c.ReferenceSet {
		return c.Reference
	}
	return quantity.Pressures
}

// ObservedDim is the dimension of y; see [Certificate.SetDim].
func (c Certificate) ObservedDim() quantity.Dimension {
	if c.ReferenceSet {
		return quantity.Pressures
	}
	return c.Reference
}

// dimensioned tells a fault of the fit which unit it speaks of.
func (c Certificate) dimensioned(err error) error {
	fault, ok := err.(*calibration.Fault)
	if !ok {
		return err
	}
	switch fault.Code {
	case "calibration.setEqual", "calibration.turns":
		fault.Dim, fault.Decimals = c.SetDim(), 3
	case "calibration.observedEqual":
		fault.Dim, fault.Decimals = c.ObservedDim(), 3
	}
	return fault
}

// meanSlope is that of the chord over the range, reference over reading.
func (k *Calibrated) meanSlope() float64 {
	c := k.Curve
	slope := (c.At(c.High) - c.At(c.Low)) / (c.High - c.Low)
	if k.ReferenceSet {
		return 1 / slope
	}
	return slope
}

func (k *Calibrated) flag() {
	c := k.Curve
	k.flagSlope()
	if !c.Known() {
		k.add("certificate.twoPoints", float64(len(c.Points)), 3, -1)
		return
	}
	if largest, exact := largestResidual(c); exact {
		k.add("certificate.exact", largest, 0, -1)
	}
	if list, limit, ok := c.Outliers(); ok {
		for i, d := range list {
			if d.Outlier {
				k.add("certificate.outlier", d.T, limit, i)
			}
		}
	}
	least := basis.Figure("certificate.significance")
	if t, ok := c.LackOfFit(); ok && t.P < least {
		k.add("certificate.lackOfFit", t.P, least, -1)
	}
	if t, ok := calibration.QuadraticTerm(c.Points); ok && c.Degree == calibration.Line && t.P < least {
		k.add("certificate.quadraticTerm", t.P, least, -1)
	}
}

func (k *Calibrated) add(code string, value, limit float64, point int) {
	k.Flags = append(k.Flags, Flag{Code: code, Value: value, Limit: limit, Point: point})
}

// flagSlope holds the slope against theory. Of a gauge only the units are
// questioned.
func (k *Calibrated) flagSlope() {
	share := float64(k.Share)
	for _, q := range []struct {
		code, figure string
		above        bool
	}{
		{"certificate.unitsMixed", "certificate.unitsMost", true}, {"certificate.unitsMixed", "certificate.unitsLeast", false},
		{"certificate.slopeAbove", "certificate.slopeMost", true}, {"certificate.slopeBelow", "certificate.slopeLeast", false},
	} {
		limit := basis.Figure(q.figure)
		beyond := q.above && share > limit || !q.above && share < limit
		if share > 0 && beyond && (k.Kind != GaugeAlone || q.code == "certificate.unitsMixed") {
			k.add(q.code, share, limit, -1)
			return
		}
	}
}

// largestResidual says whether all residuals are nothing but rounding.
func largestResidual(c calibration.Curve) (largest float64, exact bool) {
	y := 0.0
	for i, e := range c.Residuals {
		largest, y = math.Max(largest, math.Abs(e)), math.Max(y, math.Abs(c.Points[i].Y))
	}
	return largest, largest <= 1e-9*y
}
