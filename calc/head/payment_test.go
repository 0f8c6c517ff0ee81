package head_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/head"
	"gaugewright/calc/published"
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// By hand: a pile of 20 m whose head is surveyed at 14.35 has its toe at -5.65;
// below a platform at 12.60 that is 18.25 m, below a cut-off at 11.20 16.85 m. With
// every level below datum, by 30 m, the lengths are the same.
func TestLengthsForPayment(t *testing.T) {
	for _, datum := range []quantity.Length{0, -30} {
		at := ", datum at " + quantity.Digits(float64(datum)) + " [m]"
		published.Check(t, byHand, "pressed below platform"+at, "18.25", float64(head.Pressed(12.60+datum, 14.35+datum, 20)), published.Within(1e-9, ""))
		published.Check(t, byHand, "below cut-off"+at, "16.85", float64(head.BelowCutoff(11.20+datum, 14.35+datum, 20)), published.Within(1e-9, ""))
	}
	published.Check(t, byHand, "pressed, of a pile that only stands on the ground [m]", "-0.40", float64(head.Pressed(12.60, 33, 20)), published.Within(1e-9, ""))
}

func TestSum(t *testing.T) {
	b := working.NewBook("")
	working.Put(b, head.SumRule(3), "s", quantity.Length(6), working.In{V: 1}, working.In{V: 2}, working.In{V: 3})
	d, err := b.Find("s").Check()
	require.NoError(t, err)
	assert.Zero(t, d)
}
