package rig_test

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/published"
	"gaugewright/calc/quantity"
	. "gaugewright/calc/rig"
	"gaugewright/calc/working"
)

// By hand: 220 t weigh 2157.463 kN at +0.15 m; 1,800 kN push up at +0.80 m: 357.463
// kN are left, e = (323.619 - 1440)/357.463 = -3.1231 m, beyond a foot at 3.1 m.
// With 1,500 kN: 657.463 kN, e = (323.619 - 1200)/657.463 = -1.33297 m; the far line
// carries 657.463 x 4.43297/6.2 = 470.083 kN. One foot of 9.6 x 1.4 m: 34.976 kPa.
func TestGroundWhilePressingByHand(t *testing.T) {
	at := Place{3.1, 0.15, 0.80}
	g := quantity.Force(220 * quantity.Gravity)
	v, e, err := Resultant(g, 1800, at)
	require.NoError(t, err)
	published.Check(t, byHand, "left on the feet at 1800 kN [kN]", "357.463", float64(v), published.Printed)
	published.Check(t, byHand, "place of what is left [m]", "-3.1231", float64(e), published.Printed)
	_, err = FootLine(v, e, at.Half)
	assert.ErrorIs(t, err, ErrOffFeet)

	v, e, err = Resultant(g, 1500, at)
	require.NoError(t, err)
	r, err := FootLine(v, e, at.Half)
	require.NoError(t, err)
	published.Check(t, byHand, "far line of feet at 1500 kN [kN]", "470.083", float64(r), published.Within(2e-3, "rounded on the way"))
	q, err := FootPressure(r, 1, 9.6, 1.4, 0)
	require.NoError(t, err)
	published.Check(t, byHand, "pressure under its foot [kPa]", "34.976", float64(q), published.Printed)
	_, _, err = Resultant(1000, 1000, at)
	assert.ErrorIs(t, err, ErrOffFeet)
	_, err = FootPressure(100, 1, 3.2, 1.1, 1.6)
	assert.ErrorIs(t, err, ErrOffFeet)
}

// The pressure is put back: over the part that presses it carries the load, at
// the place of the resultant, found by adding up thin strips.
func TestPressureCarriesTheLoad(t *testing.T) {
	rnd := rand.New(rand.NewSource(12))
	for range 300 {
		l, b, r := 2+8*rnd.Float64(), 0.5+rnd.Float64(), 100+1000*rnd.Float64()
		off := rnd.Float64() * 0.48 * l
		q, err := FootPressure(quantity.Force(r), 1, quantity.Length(l), quantity.Length(b), quantity.Length(off))
		require.NoError(t, err)
		// Straight line from q at the loaded edge; its slope follows from the shape.
		presses, least := l, 0.0
		if off > l/6 {
			presses = 3 * (l/2 - off)
		} else {
			least = 2*r/(l*b) - float64(q)
		}
		load, moment := 0.0, 0.0
		const strips = 4000
		for i := range strips {
			x := (float64(i) + 0.5) / strips * presses // from the loaded edge
			p := float64(q) + (least-float64(q))*x/presses
			load += p * b * presses / strips
			moment += p * b * presses / strips * (l/2 - x)
		}
		require.InEpsilon(t, r, load, 1e-6)
		require.InDelta(t, off, moment/load, 1e-4*l)
		more, err := FootPressure(quantity.Force(r), 1, quantity.Length(l), quantity.Length(b), quantity.Length(math.Min(off*1.01, 0.49*l)))
		require.NoError(t, err)
		require.GreaterOrEqual(t, more, q)
	}
}

func TestRulesOfTheGround(t *testing.T) {
	b := working.NewBook("")
	in := func(list ...float64) (all []working.In) {
		for _, v := range list {
			all = append(all, working.In{V: v})
		}
		return all
	}
	at := Place{3.1, 0.15, 0.80}
	g := 220*quantity.Gravity + 30
	v, e, _ := Resultant(quantity.Force(g), 1470, at)
	r, _ := FootLine(v, e, at.Half)
	whole, _ := FootPressure(r, 1, 9.6, 1.4, 1.2)
	part, _ := FootPressure(r, 1, 3.2, 1.1, 1.2)
	working.Put(b, WeightRule(true), "G", quantity.Force(220*quantity.Gravity), in(180, 40, quantity.Gravity)...)
	working.Put(b, WeightRule(false), "G+W", quantity.Force(g), in(180, 40, quantity.Gravity, 30)...)
	working.Put(b, UpRule, "up", quantity.Force(1470), in(1500, 30)...)
	working.Put(b, OnFeetRule, "V", v, in(g, 1470)...)
	working.Put(b, OffRule, "e", e, in(g, 0.15, 1470, 0.80, float64(v))...)
	working.Put(b, FootLineRule, "R", r, in(float64(v), 3.1, float64(e))...)
	working.Put(b, FeetOfLineRule, "n", quantity.Ratio(1), in(2)...)
	working.Put(b, AlongRule, "t", quantity.Length(1.2), in(2.4)...)
	working.Put(b, WholeFootRule, "whole", whole, in(float64(r), 1, 9.6, 1.4, 1.2)...)
	working.Put(b, PartFootRule, "part", part, in(float64(r), 1, 3.2, 1.1, 1.2)...)
	for _, s := range b.Steps() {
		difference, err := s.Check()
		require.NoError(t, err, s.ID)
		assert.Less(t, difference, 1e-12, s.ID)
	}
}
