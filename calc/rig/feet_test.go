package rig_test

import (
	"math"
	"math/rand"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/published"
	"gaugewright/calc/quantity"
	. "gaugewright/calc/rig"
	"gaugewright/calc/working"
)

// Rigid-body statics by hand: 180 t and 40 t weigh 2157.463 kN; feet 3.1 m from
// the middle, weight at +0.15 m, pile at +0.80 m. About the far foot 2157.463 x
// 3.25 = F x 3.90, F = 1797.886 kN; nine tenths 1618.097. About the near foot
// 2157.463 x 2.95 = F x 2.30, F = 2767.181; nine tenths 2490.463.
func TestFeetByHand(t *testing.T) {
	at := Place{Half: 3.1, Mass: 0.15, Pile: 0.80}
	require.True(t, at.Stands())
	published.Check(t, byHand, "near foot unloads at [kN]", "1618.097", float64(NearFoot(0.9, 180, 40, 30, true, at)), published.Printed)
	published.Check(t, byHand, "far foot unloads at [kN]", "2490.463", float64(FarFoot(0.9, 180, 40, 30, true, at)), published.Printed)
	assert.InDelta(t, 1618.097+27, float64(NearFoot(0.9, 180, 40, 30, false, at)), 1e-3)
	assert.True(t, math.IsInf(float64(FarFoot(0.9, 180, 40, 30, true, Place{3.1, 0, 3.4})), 1))
	for _, bad := range []Place{{0, 0, 0}, {3, 3, 0}, {3, -3.2, 0}, {3, 0, -3}} {
		assert.False(t, bad.Stands())
	}
}

// At the limit with the whole share the forces and moments of the rig balance
// with no load on the foot that unloads, found here from the equations of
// equilibrium.
func TestFeetAreInEquilibrium(t *testing.T) {
	rnd := rand.New(rand.NewSource(8))
	for range 5000 {
		a := 1 + 4*rnd.Float64()
		at := Place{quantity.Length(a), quantity.Length((rnd.Float64() - 0.5) * a), quantity.Length((rnd.Float64()*1.8 - 0.8) * a)}
		m, ballast, w := quantity.Mass(50+rnd.Float64()*300), quantity.Mass(rnd.Float64()*200), quantity.Force(rnd.Float64()*60)
		inMass := rnd.Intn(2) == 0
		G := float64(m+ballast) * quantity.Gravity
		up := float64(NearFoot(1, m, ballast, w, inMass, at))
		if !inMass {
			up -= float64(w) // what the rig itself is pushed up with
		}
		far := G - up // with nothing on the near foot
		require.InDelta(t, G*float64(at.Mass), up*float64(at.Pile)-far*a, 1e-8*G*a, "moments about the middle")

		// Mirrored, near and far foot change places.
		mirror := Place{at.Half, -at.Mass, -at.Pile}
		if mirror.Stands() && at.Pile < at.Half {
			require.InEpsilon(t, float64(NearFoot(0.9, m, ballast, w, inMass, at)), float64(FarFoot(0.9, m, ballast, w, inMass, mirror)), 1e-12)
		}
		centred := Place{Half: at.Half}
		require.InEpsilon(t, float64(Reaction(0.9, m, ballast, w, inMass)), float64(NearFoot(0.9, m, ballast, w, inMass, centred)), 1e-12)

	}
}

// By hand: 0.35 x 4 x 1600 = 2240 kN; 1600/(0.28 x 0.60) = 9524 kPa.
func TestGrip(t *testing.T) {
	published.Check(t, byHand, "friction of four faces [kN]", "2240", float64(Grip(0.35, 4, 1600)), published.Within(1e-9, ""))
	published.Check(t, byHand, "pressure on a gripped face [kPa]", "9523.81", float64(FacePressure(1600, 0.28, 0.60)), published.Printed)
}

func TestRulesOfFeetAndGrip(t *testing.T) {
	b := working.NewBook("")
	in := func(list ...float64) (all []working.In) {
		for _, v := range list {
			all = append(all, working.In{V: v})
		}
		return all
	}
	at := Place{3.1, 0.15, 0.8}
	g := quantity.Gravity
	for _, inMass := range []bool{true, false} {
		common := in(0.9, 180, 40, g, 3.1, 0.15, 0.8)
		if !inMass {
			common = append(common, in(30)...)
		}
		name := strconv.FormatBool(inMass)
		working.Put(b, NearFootRule(inMass), "near"+name, NearFoot(0.9, 180, 40, 30, inMass, at), common...)
		working.Put(b, FarFootRule(inMass), "far"+name, FarFoot(0.9, 180, 40, 30, inMass, at), common...)
		hold := in(0.9, 180, 40, g, 3.1, 0.15, 0.8, 60, -1.2, 1700)
		if !inMass {
			hold = append(hold, in(30)...)
		}
		working.Prove(b, FeetHold("+", inMass), "near.hold"+name, "near"+name, hold...)
		working.Prove(b, FeetHold("-", inMass), "far.hold"+name, "far"+name, hold...)
	}
	working.Put(b, LeastReactionRule("F_near", "F_far"), "least", quantity.Force(1500), in(1500, 1700)...)
	working.Put(b, WholePiecesRule, "pieces", quantity.Mass(20), in(4, 5)...)
	working.Put(b, GripRule, "grip", Grip(0.35, 4, 1600), in(0.35, 4, 1600)...)
	working.Put(b, FacePressureRule, "face", FacePressure(1600, 0.28, 0.6), in(1600, 0.28, 0.6)...)
	for _, s := range b.Steps() {
		difference, err := s.Check()
		require.NoError(t, err, s.ID)
		assert.Less(t, difference, 1e-12, s.ID)
	}
}
