package rig_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"

	"gaugewright/calc/calibration"
	"gaugewright/calc/quantity"
	. "gaugewright/calc/rig"
)

// A world is what is true behind simulated certificates of a whole circuit:
// seven points from 5 to 35 MPa up and seven down, load 0.12 kN a kPa or, with a
// quadratic, less a small bend, errors of one reading normal with 10 kN.
type world struct {
	degree       calibration.Degree
	referenceSet bool
	hysteresis   float64 // by which part of the largest load the falling run lies above the rising one, at its widest
	reference    float64 // standard deviation of the error of the reference, part of its value, one for all points
}

const worldScatter = 10.0

func (w world) load(p float64) float64 {
	switch {
	case w.degree == calibration.Line:
		return 15 + 0.12*p
	case w.referenceSet:
		// p = 8 F + 0.0002 F^2: a quadratic in what was set.
		return (math.Sqrt(64+0.0008*p) - 8) / 0.0004
	}
	return 15 + 0.12*p - 4e-7*p*p
}

// coverages are how often, in per cent, the truth lies inside what is said.
type coverages struct {
	load    float64 // the load of a new reading on the way up, in the budget's U
	reading float64 // the true reading, in the limits of the inverse
	falling float64 // the load of a new reading on the way down
	bare    float64 // the load, with the doubt of the reference left out
	fitted  int
}

func (w world) simulate(seed uint64, trials int) (c coverages) {
	rnd := rand.New(rand.NewPCG(seed, 2026))
	hits := [4]int{}
	for range trials {
		off := 1 + w.reference*rnd.NormFloat64()
		observe := func(p, aside float64) Pair {
			truth, error := w.load(p), worldScatter*rnd.NormFloat64()
			if w.referenceSet {
				// The gauge is read at a load that the reference says.
				return Pair{quantity.Pressure(p + error/0.12), (truth + aside) * off}
			}
			return Pair{quantity.Pressure(p), (truth + aside + error) * off}
		}
		certificate := Certificate{Kind: WholeCircuit, Reference: quantity.Forces, Ram: Active, Head: HeadInside, Degree: w.degree, ReferenceSet: w.referenceSet}
		width := w.hysteresis * w.load(35000)
		loop := func(p float64) float64 { return width * 4 * (p / 35000) * (1 - p/35000) }
		for i := range 7 {
			p := 5000 * float64(i+1)
			certificate.Rising = append(certificate.Rising, observe(p, 0))
			certificate.Falling = append(certificate.Falling, observe(p, loop(p)))
		}
		k, err := Calibrate(certificate, 0)
		if err != nil {
			continue
		}
		g := Gauging{By: &k}
		p := 8000 + 24000*rnd.Float64()
		error := worldScatter * rnd.NormFloat64()
		// What the gauge shows, and the load that is there.
		shown, truth := p, w.load(p)+error
		if w.referenceSet {
			shown, truth = p+error/0.12, w.load(p)
		}
		terms := Terms{Reference: quantity.Ratio(2 * w.reference), Coverage: 2}
		b, err := g.Budget(quantity.Pressure(shown), terms, 0.95)
		if err != nil {
			continue
		}
		f, _ := g.Load(quantity.Pressure(shown))
		in, err := g.Limits(quantity.Force(truth), 0.95)
		if err != nil {
			continue
		}
		c.fitted++
		inside := func(i int, holds bool) {
			if holds {
				hits[i]++
			}
		}
		within := func(value, truth, half float64) bool { return truth >= value-half && truth <= value+half }
		inside(0, within(float64(f), truth, b.U))
		inside(1, in.Low <= shown && shown <= in.High)
		inside(2, within(float64(f), truth+loop(p), b.U))
		fit := b.Parts[len(b.Parts)-2]
		inside(3, within(float64(f), truth, calibration.Coverage(0.95, float64(k.Curve.DF))*fit.Contribution))
	}
	per := func(i int) float64 { return 100 * float64(hits[i]) / float64(c.fitted) }
	c.load, c.reading, c.falling, c.bare = per(0), per(1), per(2), per(3)
	return c
}

// With normal errors a new reading lies within the limits of 95 % in 94 to 96 of
// a hundred cases, both ways, whichever quantity was set.
func TestCoverage(t *testing.T) {
	for seed, w := range []world{{degree: calibration.Line}, {degree: calibration.Line, referenceSet: true}, {degree: calibration.Quadratic}, {degree: calibration.Quadratic, referenceSet: true}} {
		c := w.simulate(uint64(seed), 4000)
		assert.Greater(t, c.fitted, 3600)
		for _, v := range []float64{c.load, c.reading} {
			assert.InDelta(t, 95, v, 1, "%+v: %+v", w, c)
		}
	}
}

// BenchmarkCoverage prints how often, of 10,000 simulated certificates of seven
// points up and down, the truth lies inside the limits of 95 %: with normal
// errors, with a hysteresis of 0.5 % of the largest load, and with an error of
// the reference of 0.25 % that all points share. Whatever comes out is printed.
func BenchmarkCoverage(b *testing.B) {
	report := func(name string, w world) {
		b.Run(name, func(b *testing.B) {
			var c coverages
			for range b.N {
				c = w.simulate(1, 10000)
			}
			b.ReportMetric(c.load, "%load")
			b.ReportMetric(c.reading, "%reading")
			b.ReportMetric(c.falling, "%load-falling")
			b.ReportMetric(c.bare, "%load-without-reference-term")
		})
	}
	report("normal/line", world{degree: calibration.Line})
	report("normal/line-loads-set", world{degree: calibration.Line, referenceSet: true})
	report("normal/quadratic", world{degree: calibration.Quadratic})
	report("hysteresis/line", world{degree: calibration.Line, hysteresis: 0.005})
	report("hysteresis/quadratic", world{degree: calibration.Quadratic, hysteresis: 0.005})
	report("reference/line", world{degree: calibration.Line, reference: 0.0025})
	report("reference/quadratic", world{degree: calibration.Quadratic, reference: 0.0025})
}
