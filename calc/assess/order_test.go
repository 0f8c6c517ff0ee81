package assess_test

import (
	"math/rand"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/working"
)

// jobOf is the hand job with so many more piles of two types on a stock of
// which some lines are of one type and some of any, in random numbers.
func jobOf(r *rand.Rand, piles int) []string {
	values := append([]string(nil), ruled...)
	values = append(values, "/pileTypes/u/name", "U", "/pileTypes/u/bars", "0 m")
	for i, line := range []struct{ length, pileType string }{{"9.0 m", "t"}, {"7.5 m", "u"}, {"5.0 m", ""}, {"3.0 m", ""}} {
		at := "/stock/x" + strconv.Itoa(i)
		values = append(values, at+"/length", line.length, at+"/type", line.pileType, at+"/count", strconv.Itoa(r.Intn(4*piles)))
	}
	for _, line := range []string{"s8", "s6", "s4"} {
		values = append(values, "/stock/"+line+"/count", strconv.Itoa(r.Intn(piles)))
	}
	for i := range piles {
		at := "/piles/q" + strconv.Itoa(i)
		values = append(values, at+"/mark", "Q"+strconv.Itoa(i), at+"/type", []string{"t", "u"}[i%2], at+"/rig", "r", at+"/circuit", "c", at+"/criterion", "k",
			at+"/platform", "12.60 m", at+"/cutoff", "11.20 m", at+"/founding", "-"+strconv.Itoa(3+r.Intn(9))+"."+strconv.Itoa(10+r.Intn(90))+" m")
	}
	return values
}

// Whatever the stock: each pile's pieces reach its need, nobody gets a piece of
// another type, and what all take together is there or said to be missing.
func TestTheOrderNeverHasFewerPiecesThanNeeded(t *testing.T) {
	r := rand.New(rand.NewSource(20261125))
	short := 0
	for range 40 {
		j := judge(with(t, jobOf(r, 2+r.Intn(7))...))
		b := working.NewBook("")
		o := j.Order(b)
		require.Equal(t, len(j.Piles()), len(o.Piles)+len(o.Left)+o.Done)
		taken := map[string]int{}
		for _, p := range o.Piles {
			a, ok := j.Pile(p.ID, nil)
			require.True(t, ok)
			sum := 0.0
			for _, piece := range p.Pieces {
				sum += float64(piece.Count) * piece.Length.V
				taken[piece.Length.Ref] += piece.Count
			}
			assert.GreaterOrEqual(t, sum, a.Segments.Need.V-1e-9, p.Mark)
			assert.InDelta(t, sum-a.Segments.Need.V, float64(p.OffCut), 1e-9, p.Mark)
		}
		missing := 0
		for _, l := range o.Lines {
			assert.Equal(t, l.Taken, taken[l.Length.Ref])
			assert.Equal(t, l.Taken, int(l.Ordered.V), "no spares are asked for")
			if l.Count >= 0 {
				missing += max(0, l.Taken-l.Count)
				assert.Equal(t, max(0, l.Taken-l.Count), int(l.Missing.V))
			}
		}
		assert.GreaterOrEqual(t, o.Missing, missing)
		if o.Missing > 0 {
			short++
		}
		for _, s := range b.Steps() {
			d, err := s.Check()
			require.NoError(t, err, s.ID)
			assert.LessOrEqual(t, d, 1e-12, s.ID)
		}
		if o.Bound != nil && o.Missing == 0 {
			assert.LessOrEqual(t, o.Bound.V, o.Cost.V+1e-9)
		}
	}
	assert.Positive(t, short, "some of the stocks are too small")
}

// Sums of lengths are what the piles' own numbers add up to, however many parts
// they are added in.
func TestLengthsAddUp(t *testing.T) {
	r := rand.New(rand.NewSource(7))
	values := jobOf(r, 90)
	for _, line := range []string{"x0", "x1", "x2", "x3", "s8", "s6", "s4"} {
		values = append(values, "/stock/"+line+"/count", "")
	}
	j := judge(with(t, values...))
	b := working.NewBook("")
	list, left := j.Lengths(b)
	require.Zero(t, left)
	pitched := map[string]float64{}
	for _, id := range j.Piles() {
		a, _ := j.Pile(id, nil)
		p, _ := j.Job.Pile(id)
		pitched[p.Type] += a.Segments.Total.V
		// Pressed below platform less below cut-off is platform less cut-off: 1.40 m.
		assert.InDelta(t, 1.40, a.Head.Pressed.V-a.Head.Below.V, 1e-9)
	}
	for _, l := range list {
		assert.InDelta(t, pitched[l.Type], l.Pitched.V, 1e-6)
	}
	for _, s := range b.Steps() {
		d, err := s.Check()
		require.NoError(t, err, s.ID)
		assert.LessOrEqual(t, d, 1e-12, s.ID)
		assert.LessOrEqual(t, len(s.Inputs), 40)
	}
}
