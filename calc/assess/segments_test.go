package assess_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/assess"
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// opened is the answer for the hand job's pile with its working.
func opened(t *testing.T, values ...string) assess.Answer {
	t.Helper()
	a, ok := judge(with(t, values...)).Whole("p", working.NewBook(""))
	require.True(t, ok)
	return a
}

// The hand job's pile needs 12.20 + 0.60 - (-5.40) = 18.20 m or so; here its
// levels are stated anew so that every figure below is by hand: platform 12.60,
// cut-off 11.20, founding -5.40, no bars, a grip of 0.60 m: head at 13.20, need
// 18.60 m. Of pieces of 8, 6 and 4 m.
var ruled = []string{"/piles/p/platform", "12.60 m", "/piles/p/cutoff", "11.20 m", "/piles/p/founding", "-5.40 m", "/pileTypes/t/bars", "0 m",
	"/rigs/r/gripHeight", "0.60 m", "/rigs/r/followerTravel", "0 m", "/rigs/r/spliceHeight", "1.00 m"}

func levelsOf(a assess.Answer) (levels, stops []string) {
	for _, j := range a.Segments.Laid {
		levels = append(levels, j.Level.Text(quantity.Point))
		if j.Stop != nil {
			stops = append(stops, j.Stop.Text(quantity.Point))
		}
	}
	return levels, stops
}

func TestJointsLieWhereTheSumsSay(t *testing.T) {
	a := opened(t, ruled...)
	require.NotNil(t, a.Segments.Total, "%v %v", a.Segments.Needs, a.Segments.Notes)
	require.Equal(t, "18.60 m", a.Segments.Need.Text(quantity.Point))
	levels, stops := levelsOf(a)
	require.Len(t, levels, a.Segments.Joints)
	// Joint level and toe at the stop add up to toe level and splice level: Z_j + Z_t = -5.40 + 13.60.
	for i := range a.Segments.Laid {
		j := a.Segments.Laid[i]
		assert.InDelta(t, -5.40+13.60, j.Level.V+j.Stop.V, 1e-9)
	}
	assert.Len(t, stops, len(levels))

	// A stratum round the first joint moves it, and the stop keeps out of one for stops.
	first := a.Segments.Laid[0].Level.V
	z := func(v float64) string { return quantity.Print(v, 2, quantity.Point) + " m" }
	moved := opened(t, append(append([]string(nil), ruled...), "/strata/s/name", "fill", "/strata/s/top", z(first+0.05), "/strata/s/bottom", z(first-0.05), "/strata/s/noJoint", "yes")...)
	for _, j := range moved.Segments.Laid {
		assert.Greater(t, abs(j.Level.V-first), 0.05)
	}
	stop := a.Segments.Laid[0].Stop.V
	other := opened(t, append(append([]string(nil), ruled...), "/strata/s/name", "sand", "/strata/s/top", z(stop+0.05), "/strata/s/bottom", z(stop-0.05), "/strata/s/noStop", "yes")...)
	for _, j := range other.Segments.Laid {
		assert.Greater(t, abs(j.Stop.V-stop), 0.05)
	}
	// Without a splice height the rule cannot be asked: it says so.
	lacks := opened(t, append(append([]string(nil), ruled...), "/rigs/r/spliceHeight", "", "/strata/s/name", "sand", "/strata/s/top", z(stop+0.05), "/strata/s/bottom", z(stop-0.05), "/strata/s/noStop", "yes")...)
	assert.Contains(t, lacks.Segments.Needs, "field.rigs.spliceHeight")
}

func abs(v float64) float64 { return max(v, -v) }

func TestJointsKeepAwayFromCutOff(t *testing.T) {
	free := opened(t, ruled...)
	for _, x := range []string{"0.50 m", "1.50 m", "3.00 m"} {
		a := opened(t, append(append([]string(nil), ruled...), "/criteria/k/joints/clear", x)...)
		if a.Segments.Total == nil {
			require.NotEmpty(t, a.Segments.Notes)
			continue
		}
		s, err := quantity.ParseStated(x, quantity.Lengths)
		require.NoError(t, err)
		for _, j := range a.Segments.Laid {
			assert.GreaterOrEqual(t, abs(j.Level.V-11.20), s.Value-1e-9)
		}
		assert.GreaterOrEqual(t, a.Segments.Cost.V, free.Segments.Cost.V, "a rule never makes it cheaper")
	}
	none := opened(t, append(append([]string(nil), ruled...), "/criteria/k/joints/most", "0")...)
	require.Nil(t, none.Segments.Total)
	assert.Equal(t, "segment.tooManyPieces", none.Segments.Notes[0].Code)
}

// Stock of another pile type is not taken.
func TestStockOfAnotherTypeIsLeftAlone(t *testing.T) {
	a := opened(t, append(append([]string(nil), ruled...), "/stock/z/length", "19.00 m", "/stock/z/type", "other")...)
	b := opened(t, append(append([]string(nil), ruled...), "/stock/z/length", "19.00 m", "/stock/z/type", "t")...)
	assert.NotEqual(t, "19.00 m", a.Segments.Total.Text(quantity.Point))
	assert.Equal(t, "19.00 m", b.Segments.Total.Text(quantity.Point))
}

// One piece of 17.00 m from a toe at -5.40: its head ends at 11.60, a metre below
// the platform; it passes the splice level 13.60 with the toe at -3.40, 2.00 m to go.
func TestALowHeadSaysWhenToDecide(t *testing.T) {
	low := append(append([]string(nil), ruled...), "/rigs/r/followerTravel", "2.00 m", "/stock/z/length", "17.00 m", "/stock/z/type", "t", "/rigs/r/walkOver", "0.50 m")
	a := opened(t, low...)
	require.Equal(t, "17.00 m", a.Segments.Total.Text(quantity.Point), "%v", a.Segments.Notes)
	assert.Equal(t, "-1.00 m", a.Segments.StickUp.Text(quantity.Point))
	assert.Equal(t, "-3.40 m", a.Segments.Decide.Text(quantity.Point))
	assert.Equal(t, "2.00 m", a.Segments.ToeLeft.Text(quantity.Point))
	assert.Contains(t, a.Segments.Notes, assess.Note{Code: "note.decide", Args: []string{"-3.40 m", "2.00 m"}})

	high := opened(t, append(append([]string(nil), ruled...), "/rigs/r/walkOver", "0.50 m", "/stock/z/length", "19.00 m", "/stock/z/type", "t")...)
	assert.Equal(t, "1.00 m", high.Segments.StickUp.Text(quantity.Point))
	assert.Contains(t, high.Segments.Notes, assess.Note{Code: "note.stickUp", Args: []string{"1.00 m", "0.50 m"}})
	assert.Nil(t, opened(t, append(append([]string(nil), ruled...), "/stock/z/length", "21.00 m", "/stock/z/type", "t", "/stock/s6/count", "0", "/stock/s8/count", "0", "/stock/s12/count", "0")...).Segments.Decide)
}

// The expected toe counts for the make-up; one that is not as deep as the least
// toe level is said. What half a metre and a metre would do is as if that toe had
// been stated.
func TestExpectedAndLeastToe(t *testing.T) {
	a := opened(t, append(append([]string(nil), ruled...), "/piles/p/expectedToe", "-6.40 m", "/piles/p/leastToe", "-7.00 m")...)
	assert.Equal(t, "19.60 m", a.Segments.Need.Text(quantity.Point))
	assert.Contains(t, a.Segments.Notes, assess.Note{Code: "note.leastToe", Args: []string{"-6.40 m", "-7.00 m"}})

	base := opened(t, ruled...)
	require.Len(t, base.Segments.Shifts, 4)
	for i, toe := range []string{"-4.40 m", "-4.90 m", "-5.90 m", "-6.40 m"} {
		stated := opened(t, append(append([]string(nil), ruled...), "/piles/p/founding", toe)...)
		require.Nil(t, base.Segments.Shifts[i].Problem)
		assert.Equal(t, stated.Segments.Total.V, base.Segments.Shifts[i].Total.V, toe)
		assert.InDelta(t, stated.Segments.OffCut.V, base.Segments.Shifts[i].OffCut.V, 1e-9, toe)
	}
}

func TestLevelsInTheWrongOrderAreSaid(t *testing.T) {
	for code, values := range map[string][]string{
		"note.cutoffBelowToe":   {"/piles/p/cutoff", "-6.00 m"},
		"note.toeAbovePlatform": {"/piles/p/founding", "12.60 m", "/piles/p/cutoff", "14.00 m"},
	} {
		a := opened(t, append(append([]string(nil), ruled...), values...)...)
		assert.Nil(t, a.Segments.Total, code)
		require.NotEmpty(t, a.Segments.Notes, code)
		assert.Equal(t, code, a.Segments.Notes[0].Code)
	}
}
