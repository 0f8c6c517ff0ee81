package rig_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/calibration"
	"gaugewright/calc/published"
	"gaugewright/calc/quantity"
	. "gaugewright/calc/rig"
)

// pairs makes a run from readings in MPa and references.
func pairs(readings, references []float64) (list []Pair) {
	for i, p := range readings {
		list = append(list, Pair{Reading: quantity.Pressure(p * 1000), Reference: references[i]})
	}
	return list
}

// circuitCertificate is invented: four cylinders 200 mm, A = 0.1256637 m2, at
// about 0.96 of theory. It proves nothing by itself; what is checked with it is
// computed by hand or from definitions.
func circuitCertificate() Certificate {
	return Certificate{Kind: WholeCircuit, Reference: quantity.Forces, Ram: Active, Head: HeadInside, Degree: calibration.Line,
		Rising:  pairs([]float64{5, 10, 15, 20, 25, 30, 35}, []float64{627, 1236, 1833, 2441, 3040, 3649, 4252}),
		Falling: pairs([]float64{30, 20, 10}, []float64{3690, 2475, 1262})}
}

func circuitArea() quantity.Area {
	a, _ := Area([]Group{{Number: 4, Bore: 0.2, Side: BoreSide}})
	return a
}

func TestCertificateRefusals(t *testing.T) {
	for code, change := range map[string]func(*Certificate){
		"certificate.kind":            func(c *Certificate) { c.Kind = 0 },
		"certificate.kindMixed":       func(c *Certificate) { c.Reference = quantity.Pressures },
		"certificate.ramNotSaid":      func(c *Certificate) { c.Ram = RamNotSaid },
		"certificate.passive":         func(c *Certificate) { c.Ram = Passive },
		"certificate.headNotSaid":     func(c *Certificate) { c.Head = HeadNotSaid },
		"certificate.cylinders":       func(c *Certificate) { c.Kind = OneCylinder },
		"certificate.noPoints":        func(c *Certificate) { c.Rising, c.Falling = nil, nil },
		"certificate.fallingOnly":     func(c *Certificate) { c.Rising = nil },
		"certificate.negative":        func(c *Certificate) { c.Rising[0].Reading = -1 },
		"calibration.tooFew":          func(c *Certificate) { c.Rising = c.Rising[:1] },
		"calibration.setEqual":        func(c *Certificate) { c.Rising = pairs([]float64{5, 5, 5}, []float64{1, 2, 3}) },
		"calibration.observedEqual":   func(c *Certificate) { c.Rising = pairs([]float64{5, 6, 7}, []float64{2, 2, 2}) },
		"calibration.decreasing":      func(c *Certificate) { c.Rising = pairs([]float64{5, 6, 7}, []float64{9, 7, 6}) },
		"calibration.quadraticTooFew": func(c *Certificate) { c.Degree, c.Rising = calibration.Quadratic, c.Rising[:5] },
		"calibration.turns": func(c *Certificate) {
			c.Degree, c.Rising = calibration.Quadratic, pairs([]float64{5, 10, 15, 20, 25, 30}, []float64{100, 800, 1300, 1600, 1700, 1600})
		},
	} {
		c := circuitCertificate()
		change(&c)
		_, err := Calibrate(c, circuitArea())
		var fault *calibration.Fault
		require.ErrorAs(t, err, &fault, code)
		assert.Equal(t, code, fault.Code)
	}
}

// The slopes of a certificate against its area: 0.96, above one, below 0.80, and
// readings that were typed in bar for MPa.
func TestCertificateFlags(t *testing.T) {
	codes := func(c Certificate, theory quantity.Area) (list []string, share float64) {
		k, err := Calibrate(c, theory)
		require.NoError(t, err)
		for _, f := range k.Flags {
			list = append(list, f.Code)
		}
		return list, float64(k.Share)
	}
	a := circuitArea()
	list, share := codes(circuitCertificate(), a)
	assert.Empty(t, list)
	// By hand: -15 x 627 - 10 x 1236 - 5 x 1833 + 5 x 3040 + 10 x 3649 + 15 x 4252 =
	// 84540, over 700 MPa2 it is 120.7714 kN/MPa, and over A 0.961068.
	published.Check(t, byHand, "slope of a certificate over A", "0.961068", share, published.Printed)
	k, err := Calibrate(circuitCertificate(), a)
	require.NoError(t, err)
	require.NotNil(t, k.Hysteresis)
	assert.InDelta(t, 41, k.Hysteresis.Largest, 1e-9)
	assert.InDelta(t, 41.0/4252, k.Hysteresis.Share, 1e-9)

	list, _ = codes(circuitCertificate(), a*0.95)
	assert.Equal(t, []string{"certificate.slopeAbove"}, list)
	list, _ = codes(circuitCertificate(), a*1.3)
	assert.Equal(t, []string{"certificate.slopeBelow"}, list)
	list, _ = codes(circuitCertificate(), a*10)
	assert.Equal(t, []string{"certificate.unitsMixed"}, list)
	list, share = codes(circuitCertificate(), 0)
	assert.Empty(t, list)
	assert.Zero(t, share)

	c := circuitCertificate()
	c.Rising = c.Rising[:2]
	list, _ = codes(c, a)
	assert.Equal(t, []string{"certificate.twoPoints"}, list)

	c = circuitCertificate()
	c.Rising[3].Reference += 300
	k, err = Calibrate(c, a)
	require.NoError(t, err)
	require.NotEmpty(t, k.Flags)
	assert.Equal(t, "certificate.outlier", k.Flags[0].Code)
	assert.Equal(t, 3, k.Flags[0].Point)
	assert.Len(t, k.Curve.Points, 7, "shown, never dropped")

	for i := range c.Rising {
		c.Rising[i].Reference = 0.12 * float64(c.Rising[i].Reading)
	}
	list, _ = codes(c, a)
	assert.Equal(t, []string{"certificate.exact"}, list)

	for i := range c.Rising {
		p := float64(c.Rising[i].Reading)
		c.Rising[i].Reference = 0.12*p - 4e-7*p*p + []float64{1, -1, 0.5, -0.5, 1, -1, 0.2}[i]
	}
	list, _ = codes(c, a)
	assert.Equal(t, []string{"certificate.quadraticTerm"}, list)

	// Repeated points show a lack of fit.
	rising := c.Rising
	for _, p := range rising {
		p.Reference += 0.7
		c.Rising = append(c.Rising, p)
	}
	list, _ = codes(c, a)
	assert.Contains(t, list, "certificate.lackOfFit")
}

// gaugings are all ways from reading to load, by the same rig.
func gaugings(t *testing.T, degree calibration.Degree) map[string]Gauging {
	a := circuitArea()
	all := map[string]Gauging{"none": {Eta: 0.95, Area: a, OnHead: 30}}
	rnd := rand.New(rand.NewPCG(4, 4))
	for name, c := range map[string]Certificate{
		"gauge":                   {Kind: GaugeAlone, Reference: quantity.Pressures},
		"cylinder":                {Kind: OneCylinder, Reference: quantity.Forces, Ram: Active, Cylinders: 4},
		"circuit":                 {Kind: WholeCircuit, Reference: quantity.Forces, Ram: Active, Head: HeadInside},
		"circuit without W":       {Kind: WholeCircuit, Reference: quantity.Forces, Ram: Active, Head: HeadBeside},
		"gauge, reference set":    {Kind: GaugeAlone, Reference: quantity.Pressures, ReferenceSet: true},
		"cylinder, reference set": {Kind: OneCylinder, Reference: quantity.Forces, Ram: Active, Cylinders: 4, ReferenceSet: true},
		"circuit, reference set":  {Kind: WholeCircuit, Reference: quantity.Forces, Ram: Active, Head: HeadInside, ReferenceSet: true},
	} {
		c.Degree = degree
		slope := 1.004
		switch c.Kind {
		case OneCylinder:
			slope = 0.96 * float64(a) / 4
		case WholeCircuit:
			slope = 0.96 * float64(a)
		}
		for i := range 8 {
			p := 5000 + 4000*float64(i)
			f := slope * (p - 1e-7*p*p)
			if noise := 0.003 * rnd.NormFloat64() * 20000; c.ReferenceSet {
				p += noise
			} else {
				f += slope * noise
			}
			c.Rising = append(c.Rising, Pair{quantity.Pressure(p), f})
		}
		k, err := Calibrate(c, 0)
		require.NoError(t, err, name)
		all[name] = Gauging{By: &k, Eta: 0.95, Area: a, OnHead: 30}
	}
	return all
}

// The three kinds by hand, with certificates that are straight by construction.
func TestLoadsByTheThreeKinds(t *testing.T) {
	exact := func(kind CertificateKind, dim quantity.Dimension, slope float64, head Head) *Calibrated {
		c := Certificate{Kind: kind, Reference: dim, Ram: Active, Head: head, Cylinders: 4, Degree: calibration.Line,
			Rising: pairs([]float64{5, 15, 25, 35}, []float64{5000 * slope, 15000 * slope, 25000 * slope, 35000 * slope})}
		k, err := Calibrate(c, 0)
		require.NoError(t, err)
		return &k
	}
	for name, c := range map[string]struct {
		g    Gauging
		want float64
	}{
		"none":     {Gauging{Eta: 0.95, Area: 0.125, OnHead: 30}, 0.95*0.125*16000 + 30},
		"gauge":    {Gauging{By: exact(GaugeAlone, quantity.Pressures, 1.01, 0), Eta: 0.95, Area: 0.125, OnHead: 30}, 0.95*0.125*16160 + 30},
		"cylinder": {Gauging{By: exact(OneCylinder, quantity.Forces, 0.03, 0), OnHead: 30}, 4*480 + 30},
		"inside":   {Gauging{By: exact(WholeCircuit, quantity.Forces, 0.12, HeadInside), OnHead: 30}, 1920},
		"beside":   {Gauging{By: exact(WholeCircuit, quantity.Forces, 0.12, HeadBeside), OnHead: 30}, 1950},
	} {
		f, err := c.g.Load(16000)
		require.NoError(t, err, name)
		assert.InDelta(t, c.want, float64(f), 1e-9, name)
		p, err := c.g.Reading(f)
		require.NoError(t, err, name)
		assert.InDelta(t, 16000, float64(p), 1e-8, name)
		assert.Equal(t, name == "cylinder" || name == "inside" || name == "beside", c.g.JacksCalibrated(), name)
		if name == "none" {
			continue
		}
		f, err = c.g.Load(36000)
		var fault *calibration.Fault
		require.ErrorAs(t, err, &fault, "outside the certificate")
		assert.Equal(t, "certificate.outside", fault.Code)
		assert.InDelta(t, (c.want-map[bool]float64{true: 30}[c.g.HeadCounts()])/16*36+map[bool]float64{true: 30}[c.g.HeadCounts()], float64(f), 1e-8, "for information")
		_, err = c.g.Reading(f)
		require.ErrorAs(t, err, &fault)
		assert.Equal(t, "certificate.outside", fault.Code)
	}
}

func TestGaugingProperties(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 1))
	for _, degree := range []calibration.Degree{calibration.Line, calibration.Quadratic} {
		for name, g := range gaugings(t, degree) {
			low, high := g.Range()
			if g.By == nil {
				low, high = 5000, 33000
			}
			for range 300 {
				p := low + (high-low)*quantity.Pressure(rnd.Float64())
				f, err := g.Load(p)
				require.NoError(t, err, name)
				more, err := g.Load(p + 0.001*(high-p))
				require.NoError(t, err)
				require.Greater(t, more, f, name)
				back, err := g.Reading(f)
				require.NoError(t, err, name)
				require.InEpsilon(t, float64(p), float64(back), 1e-9, name)

				// The slope is that of the load.
				h := quantity.Pressure(0.5)
				if p-h < low || p+h > high {
					continue
				}
				after, _ := g.Load(p + h)
				before, _ := g.Load(p - h)
				require.InEpsilon(t, float64(after-before), g.Slope(p), 1e-6, name)
				if g.By != nil {
					in, err := g.Limits(f, 0.95)
					require.NoError(t, err, name)
					require.InEpsilon(t, float64(p), in.Value, 1e-9, name)
					require.Less(t, in.Low, in.Value)
					require.Greater(t, in.High, in.Value)
				}
			}
		}
	}
}

// Readings in MPa and loads in MN are the same certificate.
func TestCertificateInOtherUnits(t *testing.T) {
	c := circuitCertificate()
	k, err := Calibrate(c, circuitArea())
	require.NoError(t, err)
	mega := circuitCertificate()
	for i := range mega.Rising {
		mega.Rising[i].Reading /= 1000
		mega.Rising[i].Reference /= 1000
	}
	m, err := Calibrate(mega, circuitArea())
	require.NoError(t, err)
	assert.InEpsilon(t, float64(k.Share), float64(m.Share), 1e-12)
	assert.InEpsilon(t, k.Curve.SD, 1000*m.Curve.SD, 1e-9)
	a, err := Gauging{By: &k}.Limits(2000, 0.95)
	require.NoError(t, err)
	b, err := Gauging{By: &m}.Limits(2, 0.95)
	require.NoError(t, err)
	assert.InEpsilon(t, a.Low, 1000*b.Low, 1e-9)
	assert.InEpsilon(t, a.High, 1000*b.High, 1e-9)
	assert.True(t, math.Abs(a.G-b.G) < 1e-12)
}
