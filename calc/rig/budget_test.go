package rig_test

import (
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/basis"
	"gaugewright/calc/calibration"
	"gaugewright/calc/published"
	"gaugewright/calc/quantity"
	. "gaugewright/calc/rig"
	"gaugewright/calc/working"
)

// doubts are of a gauge of class 1.0 to 40 MPa in divisions of 0.5 MPa, 10 K
// warmer than 20 C, zero within 0.1 MPa; a reference of 0.5 % at k = 2, efficiency
// 0.90 to 1.00 and a weight within 1.5 kN.
func doubts() Terms {
	return Terms{Gauge: Doubtful{Class: 0.01, Span: 40000, Division: 500, Warmth: 10, PerKelvin: 0.0004, Zero: 100}, WithClass: true,
		Reference: 0.005, Coverage: 2, EtaHalf: 0.05, HeadHalf: 1.5}
}

func share(b calibration.Budget, key string) (float64, bool) {
	for _, p := range b.Parts {
		if p.Key == key {
			return p.Contribution, true
		}
	}
	return 0, false
}

// Without a certificate, by hand at 15 MPa with A = 0.125664 m2 and eta = 0.95:
// b = 0.119381 m2. Class 0.119381 x 400/sqrt 3 = 27.570 kN, temperature 0.119381
// x 160/sqrt 3 = 11.028, zero 6.892, half a division 17.231; efficiency 0.125664 x
// 15000 x 0.05/sqrt 3 = 54.414; weight 0.8660. The root of the sum of squares is
// 64.713; all are certain, so k = 1.95996 and U = 126.835 kN. The efficiency makes
// 70.7 % of the whole.
func TestBudgetByHand(t *testing.T) {
	g := Gauging{Eta: 0.95, Area: circuitArea(), OnHead: 30}
	b, err := g.Budget(15000, doubts(), 0.95)
	require.NoError(t, err)
	want := map[string]string{"class": "27.570", "temperature": "11.028", "zero": "6.892", "division": "17.231", "efficiency": "54.414", "onHead": "0.8660"}
	assert.Len(t, b.Parts, len(want))
	for key, v := range want {
		got, ok := share(b, key)
		require.True(t, ok, key)
		published.Check(t, byHand, "budget without a certificate, "+key+" [kN]", v, got, published.Printed)
	}
	published.Check(t, byHand, "budget without a certificate, u_c [kN]", "64.713", b.Uc, published.Printed)
	assert.True(t, math.IsInf(b.DF, 1))
	published.Check(t, byHand, "budget without a certificate, U [kN]", "126.835", b.U, published.Within(0.002, "rounded on the way"))
	for _, p := range b.Parts {
		if p.Key == "efficiency" {
			assert.InDelta(t, 0.707, p.Share, 0.0005)
			// Without it: 1.95996 sqrt(64.713^2 - 54.414^2) = 68.65.
			assert.InDelta(t, 68.65, p.Without, 0.005)
		}
	}

	// The doubt in the reading alone, by hand in MPa: (0.4^2 + 0.25^2 + 0.16^2 +
	// 0.1^2)/3 = 0.0860333, its root 0.293314.
	reading := 0.0
	for _, key := range []string{"class", "temperature", "zero", "division"} {
		v, _ := share(b, key)
		reading += v * v
	}
	assert.InDelta(t, 293.314, math.Sqrt(reading)/(0.95*float64(g.Area)), 0.001)
	whole, err := g.Whole(15000, doubts(), 0.95)
	require.NoError(t, err)
	assert.Equal(t, []float64{b.U, b.Uc, b.K}, []float64{whole.U, whole.Uc, whole.K})
}

// Which terms a budget has, by kind: brief rules of the trade.
func TestTermsByKind(t *testing.T) {
	all := gaugings(t, calibration.Line)
	for name, want := range map[string]string{
		"none":                   "class temperature zero division efficiency onHead",
		"gauge":                  "temperature zero division fit reference efficiency onHead",
		"cylinder":               "temperature zero division fit reference onHead",
		"circuit":                "temperature zero division fit reference",
		"circuit without W":      "temperature zero division fit reference onHead",
		"circuit, reference set": "temperature zero division fit reference",
	} {
		g, d := all[name], doubts()
		d.WithClass = ClassCounts(g.By, true)
		b, err := g.Budget(15000, d, 0.95)
		require.NoError(t, err)
		var keys []string
		for _, p := range b.Parts {
			keys = append(keys, p.Key)
			assert.Contains(t, TermKeys, p.Key)
		}
		assert.Equal(t, want, strings.Join(keys, " "), name)
	}
	assert.True(t, ClassCounts(all["circuit"].By, false), "another gauge brings its class back")
	assert.True(t, ClassCounts(nil, true))

	// One of four cylinders: four times the doubt of one, not twice.
	g := all["cylinder"]
	b, err := g.Budget(15000, doubts(), 0.95)
	require.NoError(t, err)
	fit, _ := share(b, "fit")
	assert.InEpsilon(t, 4*g.By.Curve.Doubt(15000, 1), fit, 1e-12)
	// The reference goes with the load and is not thinned out by the points.
	reference, _ := share(b, "reference")
	assert.InEpsilon(t, 4*g.By.Curve.At(15000)*0.0025, reference, 1e-12)

	// Two points: not known, which is not zero.
	c := circuitCertificate()
	c.Rising = c.Rising[:2]
	k, err := Calibrate(c, 0)
	require.NoError(t, err)
	_, err = Gauging{By: &k}.Budget(7000, doubts(), 0.95)
	var fault *calibration.Fault
	require.ErrorAs(t, err, &fault)
	assert.Equal(t, "calibration.doubtNotKnown", fault.Code)
	_, err = all["circuit"].Budget(40000, doubts(), 0.95)
	require.ErrorAs(t, err, &fault)
	assert.Equal(t, "certificate.outside", fault.Code)

	// A doubted term has finite degrees of freedom: a quarter gives 8.
	d := doubts()
	d.Doubted = map[string]float64{"class": 0.25}
	b, err = all["none"].Budget(15000, d, 0.95)
	require.NoError(t, err)
	assert.InDelta(t, 8, b.Parts[0].DF, 1e-12)
	assert.False(t, math.IsInf(b.DF, 1))
}

// A budget is what drawing every doubt anew shows, to the first order: the
// standard deviation of 60,000 draws lies within 1 %.
func TestBudgetAgainstDraws(t *testing.T) {
	rnd := rand.New(rand.NewPCG(2, 11))
	even := func(half float64) float64 { return (2*rnd.Float64() - 1) * half }
	for name, g := range gaugings(t, calibration.Quadratic) {
		d := doubts()
		d.WithClass = g.By == nil
		const p = 20000
		b, err := g.Budget(p, d, 0.95)
		require.NoError(t, err, name)
		fit, _ := share(b, "fit")
		sum, squares := 0.0, 0.0
		const draws = 60000
		for range draws {
			at := p + even(160) + even(100) + even(250)
			if d.WithClass {
				at += even(400)
			}
			h := g
			h.Eta += quantity.Ratio(even(0.05))
			if g.By != nil && g.By.Kind != GaugeAlone {
				h.Eta = g.Eta
			}
			if g.HeadCounts() {
				h.OnHead += quantity.Force(even(1.5))
			}
			f, err := h.Load(quantity.Pressure(at))
			require.NoError(t, err)
			x := float64(f) + fit*rnd.NormFloat64()
			if g.By != nil {
				rest := float64(h.OnHead)
				if !g.HeadCounts() {
					rest = 0
				}
				x += (float64(f) - rest) * 0.0025 * rnd.NormFloat64()
			}
			sum, squares = sum+x, squares+x*x
		}
		sd := math.Sqrt(squares/draws - sum/draws*sum/draws)
		require.InEpsilon(t, b.Uc, sd, 0.01, name)
	}
}

func TestGuardedByCertificate(t *testing.T) {
	rnd := rand.New(rand.NewPCG(8, 8))
	for name, g := range gaugings(t, calibration.Line) {
		d := doubts()
		low, high := g.Range()
		if g.By == nil {
			low, high = 5000, 33000
		}
		for range 200 {
			division := quantity.Pressure([]float64{100, 200, 500}[rnd.IntN(3)])
			p := low + (high-low)*quantity.Pressure(0.1+0.7*rnd.Float64())
			bound, err := g.Load(p)
			require.NoError(t, err)
			plain, err := g.Reading(bound)
			require.NoError(t, err)
			up, down := quantity.RoundUp(float64(plain), float64(division)), quantity.RoundDown(float64(plain), float64(division))
			set, err := g.GuardedSet(bound, quantity.Pressure(up), division, d, 0.95)
			if err == nil {
				require.GreaterOrEqual(t, float64(set.Load)-set.Budget.U, float64(bound)-1e-8, name)
				// Whole divisions, and one less does not do.
				require.InDelta(t, math.Round(float64(set.P/division)), float64(set.P/division), 1e-9)
				if less := set.P - division; less >= low {
					f, err := g.Load(less)
					require.NoError(t, err)
					b, err := g.Budget(less, d, 0.95)
					require.NoError(t, err)
					require.Less(t, float64(f)-b.U, float64(bound), name)
				}
				// At its own reading the chance that the load is not there is what is left.
				require.LessOrEqual(t, set.Budget.Short(float64(set.Load), float64(bound)), 0.0250001, name)
			}
			limit, err := g.GuardedLimit(bound, quantity.Pressure(down), division, d, 0.95)
			if err == nil {
				require.LessOrEqual(t, float64(limit.Load)+limit.Budget.U, float64(bound)+1e-8, name)
				require.LessOrEqual(t, limit.Budget.Passed(float64(limit.Load), float64(bound)), 0.0250001, name)
				if more := limit.P + division; more <= high {
					f, _ := g.Load(more)
					b, err := g.Budget(more, d, 0.95)
					require.NoError(t, err)
					require.Greater(t, float64(f)+b.U, float64(bound), name)
				}
			}
			if err == nil && set.P > 0 {
				require.Greater(t, set.P, limit.P-division, "set above limit for one bound")
			}
		}
		if g.By == nil {
			continue
		}
		most, _ := g.Load(high)
		var fault *calibration.Fault
		_, err := g.GuardedSet(most*0.9999, quantity.Pressure(quantity.RoundUp(float64(high), 500)), 500, d, 0.95)
		require.ErrorAs(t, err, &fault, "its doubt reaches out of the certificate")
		assert.Equal(t, "certificate.outside", fault.Code)
	}
	g := Gauging{Eta: 0.5, Area: 0.1}
	d := doubts()
	d.EtaHalf = 0.5
	_, err := g.GuardedSet(1000, 20000, 500, d, 0.95)
	var fault *calibration.Fault
	require.ErrorAs(t, err, &fault)
	assert.Equal(t, "certificate.noReading", fault.Code, "the doubt grows as fast as the load")
}

// By hand: |15.0 - 15.6|/sqrt(0.3^2 + 0.4^2) = 1.2 in MPa: stop.
func TestTwoGauges(t *testing.T) {
	published.Check(t, byHand, "E number of 15.0 and 15.6 MPa", "1.2", float64(TwoGauges(15000, 15600, 300, 400)), published.Within(1e-12, ""))
	assert.Equal(t, TwoGauges(15000, 15600, 300, 400), TwoGauges(15600, 15000, 400, 300))
	b := working.NewBook("")
	working.Put(b, TwoGaugesRule, "E_n", TwoGauges(15000, 15600, 300, 400), working.In{V: 15000}, working.In{V: 15600}, working.In{V: 300}, working.In{V: 400})
	difference, err := b.Steps()[0].Check()
	require.NoError(t, err)
	assert.Less(t, difference, 1e-12)
}

// Every step of loads, readings, budgets and guards by every kind of
// certificate gives what its function gives.
func TestRulesOfCertificates(t *testing.T) {
	steps := 0
	for _, degree := range []calibration.Degree{calibration.Line, calibration.Quadratic} {
		for name, g := range gaugings(t, degree) {
			b := working.NewBook("")
			at := Placed{Eta: working.In{V: 0.95, Ref: "/eta"}, Area: working.In{V: float64(g.Area), Ref: "/A"}, OnHead: working.In{V: 30, Ref: "/W"}, N: working.In{V: 4, Ref: "/n"}}
			if g.By != nil {
				places := calibration.Places{DimX: g.By.SetDim(), DimY: g.By.ObservedDim()}
				for i := range g.By.Curve.Points {
					places.X, places.Y = append(places.X, "/x/"+strconv.Itoa(i)), append(places.Y, "/y/"+strconv.Itoa(i))
				}
				at.Fit = g.By.Curve.Work(b, "fit/", places)
			}
			d := doubts()
			d.WithClass = name == "none"
			d.Doubted = map[string]float64{"zero": 0.25}
			terms := TermsPlaced{Class: working.In{V: 0.01, Ref: "/c"}, Span: working.In{V: 40000, Ref: "/S"}, Division: working.In{V: 500, Ref: "/d"},
				Warmth: working.In{V: 10, Ref: "/dT"}, PerKelvin: working.In{V: 0.0004, Ref: "basis:doubt.perKelvin"}, Zero: working.In{V: 100, Ref: "/z"},
				Reference: working.In{V: 0.005, Ref: "/U_r"}, Coverage: working.In{V: 2, Ref: "/k"}, EtaLow: working.In{V: 0.9, Ref: "/eta_lo"},
				EtaHigh: working.In{V: 1, Ref: "/eta_hi"}, HeadHalf: working.In{V: 1.5, Ref: "/w"}, Doubted: map[string]working.In{"zero": {V: 0.25, Ref: "/r"}}}
			for i, p := range []float64{15000, 21000} {
				in := working.In{V: p, Ref: "/p"}
				key := strconv.Itoa(i)
				f, err := g.Load(quantity.Pressure(p))
				require.NoError(t, err)
				load := g.WorkLoad(b, "load"+key, in, at)
				require.Equal(t, f, load.V, name)
				budget, err := g.Budget(quantity.Pressure(p), d, 0.95)
				require.NoError(t, err)
				w := g.WorkBudget(b, "U"+key, in, budget, at, terms)
				require.Equal(t, budget.U, w.U.V)
				bound := working.In{V: float64(f) - budget.U - 1, Ref: "/F"}
				Reaches.Prove(b, "reaches"+key, load.Ref, load.In(), w.U.In(), bound)
				Passes.Prove(b, "passes"+key, load.Ref, load.In(), w.U.In(), bound)
				above := working.In{V: float64(f) + budget.U + 1, Ref: "/F"}
				Keeps.Prove(b, "keeps"+key, load.Ref, load.In(), w.U.In(), above)
				Fails.Prove(b, "fails"+key, load.Ref, load.In(), w.U.In(), above)
				budget.WorkShort(b, "short"+key, quantity.Forces, load.In(), working.In{V: 1800, Ref: "/F"}, w.Uc.In(), w.DF.In())
				if g.By != nil {
					limits, err := g.Limits(1800, 0.95)
					require.NoError(t, err)
					back := g.WorkReading(b, "set"+key, working.In{V: 1800, Ref: "/F"}, limits, true, at)
					require.Equal(t, limits.Low, back.Low.V)
				}
			}
			for _, s := range b.Steps() {
				difference, err := s.Check()
				require.NoError(t, err, "%s %s", name, s.ID)
				require.LessOrEqual(t, difference, 1e-12, "%s %s: %s", name, s.ID, s.Rule.Formula)
				assert.False(t, working.Bare(s.Rule.Formula), s.ID)
				_, known := basis.Find(s.Rule.Basis)
				assert.True(t, known, s.Rule.Basis)
				var names []string
				for _, in := range s.Rule.Inputs {
					names = append(names, in.Name)
				}
				assert.ElementsMatch(t, names, working.Symbols(s.Rule.Formula), "%s %s", name, s.ID)
				for _, in := range s.Inputs {
					if in.Ref == "search:" || strings.HasPrefix(in.Ref, "/") {
						continue
					}
					if id, ok := strings.CutPrefix(in.Ref, "basis:"); ok {
						assert.Equal(t, basis.Figure(id), in.V)
						continue
					}
					of := b.Find(in.Ref)
					require.NotNil(t, of, "%s %s: no step %q", name, s.ID, in.Ref)
					assert.Equal(t, of.Value, in.V, "%s %s from %s", name, s.ID, in.Ref)
				}
				p := s.Print(quantity.Point)
				v := map[string]working.Measured{}
				for i, text := range p.Inputs {
					x, err := strconv.ParseFloat(text, 64)
					require.NoError(t, err)
					v[s.Rule.Inputs[i].Name] = working.Measured{V: x, Dim: s.Rule.Inputs[i].Dim}
				}
				got, err := working.Evaluate(s.Rule.Formula, v)
				require.NoError(t, err)
				require.Equal(t, p.Result, quantity.Print(got.V, s.Rule.Decimals, quantity.Point), "%s %s", name, s.ID)
				steps++
			}
		}
	}
	require.Greater(t, steps, 2000)
}

// Drawing the doubts anew a hundred thousand times, the load at a guarded
// reading falls short of the set load, or passes the limit, about as often as is
// promised on one side (2.5 %): evenly likely terms are fewer in the tails.
func TestGuardHoldsWhatItPromises(t *testing.T) {
	area := circuitArea()
	g := Gauging{Eta: 0.975, Area: area, OnHead: 30}
	d := Terms{Gauge: Doubtful{Class: 0.01, Span: 40000, Division: 1}, WithClass: true, EtaHalf: 0.025}
	reading := func(f quantity.Force) quantity.Pressure {
		p, err := g.Reading(f)
		require.NoError(t, err)
		return quantity.Pressure(math.Round(float64(p)))
	}
	// Hardly any rounding, the hardest case.
	set, err := g.GuardedSet(1800, reading(1800), 1, d, 0.95)
	require.NoError(t, err)
	limit, err := g.GuardedLimit(2200, reading(2200), 1, d, 0.95)
	require.NoError(t, err)
	rnd := rand.New(rand.NewPCG(4, 4))
	short, passed := 0, 0
	const draws = 100000
	even := func(half float64) float64 { return (2*rnd.Float64() - 1) * half }
	for range draws {
		eta := quantity.Ratio(0.975 + even(0.025))
		off := quantity.Pressure(even(400) + even(0.5))
		if Load(eta, area, set.P+off, 30) < 1800 {
			short++
		}
		if Load(eta, area, limit.P+off, 30) > 2200 {
			passed++
		}
	}
	assert.Less(t, float64(short)/draws, 0.03)
	assert.Less(t, float64(passed)/draws, 0.03)
	assert.Positive(t, short, "the guard is not wider than it needs to be by an order of magnitude")
}
