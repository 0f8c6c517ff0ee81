package segment_test

import (
	"testing"

	"gaugewright/calc/published"
	"gaugewright/calc/segment"
)

// By hand: platform 12.60, splices 1.00 m above it at 13.60; a pile of 18 m to a
// founding level of -6.00. Its head is at 13.60 when the toe is at -4.40, with
// 1.60 m to go; at the founding level the head is 0.60 m below platform.
func TestWhenTheHeadPassesTheSpliceLevel(t *testing.T) {
	exactly := published.Within(1e-12, "")
	published.Check(t, byHand, "toe when the head of 18 m is at 13.60 [m]", "-4.40", float64(segment.DecideAt(13.60, 18)), exactly)
	published.Check(t, byHand, "left to press then [m]", "1.60", float64(segment.ToeLeft(-4.40, -6)), exactly)
	published.Check(t, byHand, "head above platform of 18 m [m]", "-0.60", float64(segment.StickUp(-6, 18, 12.60)), exactly)
	published.Check(t, byHand, "head above platform of 21 m [m]", "2.40", float64(segment.StickUp(-6, 21, 12.60)), exactly)
}
