package window_test

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/quantity"
	. "gaugewright/calc/window"
	"gaugewright/calc/working"
)

// By hand, divisions of 500 kPa: 14994.3 kPa is reached at 15000 and not passed at
// 14500; a reading on a division is that division.
func TestReadingsByACertificate(t *testing.T) {
	assert.Equal(t, quantity.Pressure(15000), SetBy(14994.3, 500))
	assert.Equal(t, quantity.Pressure(14500), LimitBy(14994.3, 500))
	assert.Equal(t, quantity.Pressure(15000), SetBy(15000, 500))
	assert.Equal(t, quantity.Pressure(15000), LimitBy(15000, 500))
	rnd := rand.New(rand.NewSource(5))
	for range 5000 {
		p, d := quantity.Pressure(rnd.Float64()*40000), quantity.Pressure([]float64{100, 200, 500, 689.4757}[rnd.Intn(4)])
		up, down := SetBy(p, d), LimitBy(p, d)
		require.True(t, up >= p*(1-1e-9) && up < p+d, "%v %v", p, d)
		require.True(t, down <= p*(1+1e-9) && down > p-d, "%v %v", p, d)
	}
}

// Without a certificate the way there and back is that of the two formulas.
func TestACircuitIsAWayFromReadingToLoad(t *testing.T) {
	c := handCase(t)
	g := c.By(nil, c.Low)
	load, err := g.Load(15000)
	require.NoError(t, err)
	assert.InDelta(t, 1820.7, float64(load), 0.05)
	p, err := g.Reading(load)
	require.NoError(t, err)
	assert.InDelta(t, 15000, float64(p), 1e-9)
}

func TestRulesOfCertifiedReadings(t *testing.T) {
	b := working.NewBook("")
	in := func(list ...float64) (all []working.In) {
		for _, v := range list {
			all = append(all, working.In{V: v})
		}
		return all
	}
	set := working.Put(b, SetByRule, "set", SetBy(14994.3, 500), in(14994.3, 500)...)
	limit := working.Put(b, LimitByRule, "limit", LimitBy(14994.3, 500), in(14994.3, 500)...)
	working.Put(b, LessRule, "less", set.V-500, in(15000, 500)...)
	working.Put(b, MoreRule, "more", limit.V+500, in(14500, 500)...)
	working.Prove(b, SetByProof, "set.proof", set.Ref, in(1800.7, 1740.7, 1800)...)
	working.Prove(b, LimitByProof, "limit.proof", limit.Ref, in(1740.7, 1800.7, 1800)...)
	working.Put(b, UseByRule, "use", quantity.Ratio(0.75), in(1500, 2000)...)
	working.Put(b, MidRule, "mid", quantity.Ratio(0.975), in(0.95, 1)...)
	working.Put(b, GuardedSetRule, "guarded", quantity.Pressure(15500), in(15000, 1, 500)...)
	working.Put(b, GuardedLimitRule, "kept", quantity.Pressure(16500), in(17000, 1, 500)...)
	for _, s := range b.Steps() {
		difference, err := s.Check()
		require.NoError(t, err, s.ID)
		assert.Less(t, difference, 1e-12, s.ID)
	}
}
