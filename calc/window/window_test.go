package window_test

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/published"
	"gaugewright/calc/quantity"
	"gaugewright/calc/rig"
	. "gaugewright/calc/window"
	"gaugewright/calc/working"
)

var byHand = published.Worked("the case on top of the README, by hand from statics")

// The hand case: four cylinders of 200 mm bore, bore side, efficiency 0.95 for
// the set and 1.00 for limits, 30 kN on the head, divisions of 0.5 MPa,
// working load 900 kN with the factor 2.0. Worked by hand from statics:
// A = 4 pi 0.2^2/4 = 0.12566371 m2; (1800 - 30)/(0.95 A) = 14826.5 kPa, up to
// 15.0 MPa; 0.95 A 15000 + 30 = 1820.7 kN.
func handCase(t *testing.T) Circuit {
	area, err := rig.Area([]rig.Group{{Number: 4, Bore: 0.2, Side: rig.BoreSide}})
	require.NoError(t, err)
	return Circuit{Area: area, OnHead: 30, Low: 0.95, High: 1, Division: 500}
}

func TestHandCaseSetReading(t *testing.T) {
	c := handCase(t)
	published.Check(t, byHand, "reading for 1800 kN [kPa]", "14826.5", float64(rig.Reading(1800, 30, 0.95, c.Area)), published.Printed)
	published.Check(t, byHand, "set reading [kPa]", "15000", float64(c.SetReading(1800)), published.Exact)
	published.Check(t, byHand, "load at the set reading [kN]", "1820.7", float64(rig.Load(0.95, c.Area, 15000, 30)), published.Printed)
	published.Check(t, byHand, "load one division below [kN]", "1761.0", float64(rig.Load(0.95, c.Area, 14500, 30)), published.Printed)
}

// The same rig with a pile limit of 1,850 kN: (1850 - 30)/A = 14.483 MPa at
// efficiency 1.00, down to 14.0 MPa, which is below the set reading.
func TestHandCaseWithoutAWindow(t *testing.T) {
	c := handCase(t)
	exact := rig.Reading(1850, 30, 1, c.Area)
	published.Check(t, byHand, "reading for a limit of 1850 kN [kPa]", "14483", float64(exact), published.Printed)
	published.Check(t, byHand, "its limit reading [kPa]", "14000", float64(c.LimitReading(1850)), published.Exact)

	v := Judge(rig.Reading(1800, 30, 0.95, c.Area), c.SetReading(1800), true, []Limit{
		{CircuitPressure, Entered, 25000, 25000},
		{Pile, Entered, exact, c.LimitReading(1850)},
		{Reaction, Entered, 20000, 20000},
		{Gauge, Entered, 30000, 30000},
	})
	assert.False(t, v.Open)
	assert.Equal(t, 1, v.Governs)
	assert.Equal(t, 14000.0, float64(v.Never))
	assert.False(t, v.Rounding, "14.83 is above 14.48 before any rounding")
}

func TestRoundingAloneClosesAWindow(t *testing.T) {
	all := func(exact, reading quantity.Pressure) []Limit {
		var list []Limit
		for _, k := range Kinds {
			list = append(list, Limit{k, Entered, exact, reading})
		}
		return list
	}
	v := Judge(14600, 15000, true, all(14900, 14500))
	assert.False(t, v.Open)
	assert.True(t, v.Rounding)
	v = Judge(14600, 15000, true, all(15000, 15000))
	assert.True(t, v.Open)
	assert.Equal(t, 0, v.Governs, "of equal readings the first governs")
}

func TestAMissingLimitIsNotMadeUpFromTheRest(t *testing.T) {
	limits := []Limit{
		{CircuitPressure, Entered, 25000, 25000}, {Pile, Missing, 0, 0}, {Reaction, Waived, 0, 0}, {Gauge, Entered, 30000, 30000},
	}
	v := Judge(14600, 15000, true, limits)
	assert.Equal(t, []Kind{Pile}, v.Missing)
	assert.Equal(t, -1, v.Governs)
	assert.False(t, v.Open)
	assert.Zero(t, v.Never)

	limits[1].State = Waived
	v = Judge(14600, 15000, true, limits)
	assert.Empty(t, v.Missing)
	assert.Equal(t, 0, v.Governs)
	assert.True(t, v.Open)

	for i := range limits {
		limits[i].State = Waived
	}
	v = Judge(14600, 15000, true, limits)
	assert.Equal(t, -1, v.Governs, "with every limit waived no reading is known")
	assert.False(t, v.Open)
}

func TestReadingProperties(t *testing.T) {
	rnd := rand.New(rand.NewSource(4))
	for range 20000 {
		low := 0.6 + 0.4*rnd.Float64()
		c := Circuit{
			Area: quantity.Area(0.01 + rnd.Float64()/2), OnHead: quantity.Force(rnd.Float64() * 80),
			Low: quantity.Ratio(low), High: quantity.Ratio(low + (1-low)*rnd.Float64()),
			Division: quantity.Pressure([]float64{100, 200, 250, 500, 1000, 2000}[rnd.Intn(6)]),
		}
		f := quantity.Force(100 + rnd.Float64()*5000)
		set, limit := c.SetReading(f), c.LimitReading(f)
		slack := 1e-6
		require.GreaterOrEqual(t, float64(rig.Load(c.Low, c.Area, set, c.OnHead)), float64(f)-slack, "the set load is there")
		require.Less(t, float64(rig.Load(c.Low, c.Area, set-c.Division, c.OnHead)), float64(f)+slack, "and one division less is too little")
		require.LessOrEqual(t, float64(rig.Load(c.High, c.Area, limit, c.OnHead)), float64(f)+slack, "the limit is kept")
		require.Greater(t, float64(rig.Load(c.High, c.Area, limit+c.Division, c.OnHead)), float64(f)-slack)
		require.GreaterOrEqual(t, c.SetReading(f+quantity.Force(rnd.Float64()*100)), set, "more load never needs a lower reading")
		require.LessOrEqual(t, float64(c.Use(limit, f)), 1+1e-9)
		wider := c
		wider.Low *= 0.97
		require.GreaterOrEqual(t, wider.SetReading(f), set, "a wider doubt never widens the window")
	}
}

func TestRulesAgreeWithTheirFunctions(t *testing.T) {
	c := handCase(t)
	in := func(v ...float64) []working.In {
		var list []working.In
		for _, x := range v {
			list = append(list, working.In{V: x})
		}
		return list
	}
	a := float64(c.Area)
	b := working.NewBook("")
	set := working.Put(b, SetReadingRule, "set", c.SetReading(1800), in(1800, 30, 0.95, a, 500)...)
	working.Prove(b, SetProof, "set.proof", set.Ref, in(0.95, a, float64(set.V), 30, 1800, 500)...)
	limit := working.Put(b, LimitReadingRule, "limit", c.LimitReading(1850), in(1850, 30, 1, a, 500)...)
	working.Prove(b, LimitProof, "limit.proof", limit.Ref, in(1, a, float64(limit.V), 30, 1850, 500)...)
	working.Put(b, PressureReadingRule, "pressure", c.PressureReading(25300), in(25300, 500)...)
	working.Put(b, UseRule, "use", c.Use(15000, 1850), in(1, a, 15000, 30, 1850)...)
	working.Put(b, PressureUseRule, "use.pressure", quantity.Ratio(15000.0/25300), in(15000, 25300)...)
	limits := []Limit{{CircuitPressure, Entered, 25300, 25000}, {Pile, Waived, 0, 0}, {Gauge, Entered, 14000, 14000}}
	working.Put(b, NeverRule(limits), "never", Judge(0, 0, false, limits).Never, in(25000, 14000)...)
	require.Len(t, b.Steps(), 8)
	for _, s := range b.Steps() {
		difference, err := s.Check()
		require.NoError(t, err, s.ID)
		assert.Less(t, difference, 1e-12, s.ID)
	}

	// Proofs that are not true are found.
	working.Prove(b, SetProof, "false", set.Ref, in(0.95, a, 15500, 30, 1800, 500)...)
	difference, err := b.Find("false").Check()
	require.NoError(t, err)
	assert.Equal(t, 1.0, difference)
}

// The readings of one pile: set, four limits with their use, and the verdict.
func BenchmarkWindow(b *testing.B) {
	c := Circuit{Area: 0.12566370614359174, OnHead: 30, Low: 0.95, High: 1, Division: 500}
	limits := make([]Limit, len(Kinds))
	for b.Loop() {
		exact, set := rig.Reading(1800, c.OnHead, c.Low, c.Area), c.SetReading(1800)
		for i, k := range Kinds {
			load := quantity.Force(1900 + 50*i)
			limits[i] = Limit{Kind: k, State: Entered, Exact: rig.Reading(load, c.OnHead, c.High, c.Area), Reading: c.LimitReading(load)}
			if c.Use(set, load) <= 0 {
				b.Fatal("no use")
			}
		}
		if v := Judge(exact, set, true, limits); v.Governs != 0 {
			b.Fatal("another limit governs")
		}
	}
}
