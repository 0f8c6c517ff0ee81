package rig_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/published"
	. "gaugewright/calc/rig"
	"gaugewright/calc/working"
)

// By hand: four cylinders 200/140 mm, bore side: A = 0.125664 m2, the ring A_r =
// 4 pi (0.2^2 - 0.14^2)/4 = 0.0640885 m2. At 15 MPa against 0.4 MPa with 0.95: 0.95 x
// (1884.956 - 25.635) + 30 = 1796.35 kN; still it is 1820.71.
func TestWhileTheRamMoves(t *testing.T) {
	groups := []Group{{4, 0.2, 0.14, BoreSide}}
	a, err := Area(groups)
	require.NoError(t, err)
	ar, err := ReturnArea(groups)
	require.NoError(t, err)
	published.Check(t, byHand, "ring area of four cylinders 200/140 mm [m2]", "0.0640885", float64(ar), published.Printed)
	published.Check(t, byHand, "load at 15 MPa against 0.4 MPa while the ram moves [kN]", "1796.35", float64(MovingLoad(0.95, a, 15000, ar, 400, 30)), published.Printed)
	assert.Equal(t, Load(0.95, a, 15000, 30), MovingLoad(0.95, a, 15000, ar, 0, 30))
	_, err = ReturnArea([]Group{{1, 0.2, 0.14, Joined}})
	assert.ErrorIs(t, err, ErrJoinedReturn)
	_, err = ReturnArea([]Group{{1, 0.2, 0, BoreSide}})
	assert.ErrorIs(t, err, ErrRod)

	mixed := []Group{{4, 0.2, 0.14, BoreSide}, {2, 0.25, 0.18, RodSide}}
	ar, err = ReturnArea(mixed)
	require.NoError(t, err)
	b := working.NewBook("")
	working.Put(b, ReturnAreaRule(mixed), "A_r", ar, ReturnAreaInputs(mixed, func(int, string) string { return "" })...)
	working.Put(b, MovingLoadRule, "F", MovingLoad(0.95, 0.2, 15000, ar, 400, 30), working.In{V: 0.95}, working.In{V: 0.2}, working.In{V: 15000}, working.In{V: float64(ar)}, working.In{V: 400}, working.In{V: 30})
	for _, s := range b.Steps() {
		difference, err := s.Check()
		require.NoError(t, err, s.ID)
		assert.Less(t, difference, 1e-12, s.ID)
	}
}
