package segment_test

import (
	"math/rand"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	. "gaugewright/calc/segment"
)

// At the size of real piles all counts cannot be tried. Here the lengths are
// whole decimetres, and a table of what is cheapest from each line on, for each
// number of pieces and each missing length, gives the answer that is promised,
// ties included. It shares nothing with the search.
func TestRealSizesAgainstATable(t *testing.T) {
	const grid, never = m / 10, int64(1) << 60
	rnd := rand.New(rand.NewSource(5))
	solved := 0
	for round := range 400 {
		n := 1 + rnd.Intn(12)
		stock := make([]Piece, n)
		for i := range stock {
			units := 20 + rnd.Intn(130)
			if round%2 == 0 && i < n-2 { // most lines in whole metres
				units -= units % 10
			}
			stock[i] = Piece{Length: grid * int64(units), Count: rnd.Intn(6) - 1}
			if round%3 == 0 {
				stock[i].Extra = int64(rnd.Intn(20000))
			}
		}
		terms := Terms{JointPrice: int64(rnd.Intn(3) * rnd.Intn(15000)), MaxPieces: 1 + rnd.Intn(20)}
		need := 1 + rnd.Int63n(100*m)
		R, K := int((need+grid-1)/grid), terms.MaxPieces // sums are whole units

		rest := make([][][]int64, n+1) // [line][pieces][missing units]
		for i := n; i >= 0; i-- {
			rest[i] = make([][]int64, K+1)
			for k := range rest[i] {
				rest[i][k] = make([]int64, R+1)
				for r := range rest[i][k] {
					best := never
					if i == n && k == 0 && r == 0 {
						best = 0
					}
					for a := 0; i < n && a <= k && (a <= stock[i].Count || stock[i].Count == Unlimited); a++ {
						left := max(0, r-a*int(stock[i].Length/grid))
						best = min(best, int64(a)*(stock[i].Length+stock[i].Extra)+rest[i+1][k-a][left])
					}
					rest[i][k][r] = min(best, never)
				}
			}
		}
		least, pieces := never, 0
		for k := 1; k <= K; k++ {
			if rest[0][k][R] < never && rest[0][k][R]-need+terms.JointPrice*int64(k-1) < least {
				least, pieces = rest[0][k][R]-need+terms.JointPrice*int64(k-1), k
			}
		}
		got, err := Best(need, stock, terms)
		if least == never {
			require.Error(t, err)
			continue
		}
		counts, k, r := make([]int, n), pieces, R
		for i := range stock { // the highest count from which the rest is still cheapest
			for a := k; a >= 0; a-- {
				left := max(0, r-a*int(stock[i].Length/grid))
				if (a <= stock[i].Count || stock[i].Count == Unlimited) &&
					int64(a)*(stock[i].Length+stock[i].Extra)+rest[i+1][k-a][left] == rest[i][k][r] {
					counts[i], k, r = a, k-a, left
					break
				}
			}
		}
		require.NoError(t, err)
		require.Equal(t, least, got.Cost, "%d %v %v", need, stock, terms)
		require.Equal(t, counts, got.Counts, "%d %v %v", need, stock, terms)
		table, err := BestByTable(need, stock, terms)
		require.NoError(t, err)
		require.Equal(t, counts, table.Counts, "%d %v %v", need, stock, terms)
		solved++
	}
	assert.Greater(t, solved, 150)
}

// The search's effort is counted in states, which are the same on every
// machine. Twelve lengths, needs to 150 m, lengths chosen to be hard.
func TestEffortStaysSmall(t *testing.T) {
	for kind, c := range map[string]struct {
		terms  Terms
		length func(*rand.Rand, int) int64
	}{
		"any tenth":             {Terms{m, 20}, func(r *rand.Rand, _ int) int64 { return 3*m + r.Int63n(12*m) }},
		"any tenth, free":       {Terms{0, 40}, func(r *rand.Rand, _ int) int64 { return 3*m + r.Int63n(12*m) }},
		"half metres, one off":  {Terms{m, 20}, func(r *rand.Rand, i int) int64 { return 3*m + r.Int63n(24)*5000 + int64(i/11)*37 }},
		"decimetres, two off":   {Terms{0, 20}, func(r *rand.Rand, i int) int64 { return 3*m + r.Int63n(120)*1000 + int64(i/10) }},
		"nearly alike":          {Terms{m, 20}, func(r *rand.Rand, _ int) int64 { return 12*m + r.Int63n(200) }},
		"one remainder, so big": {Terms{m, 20}, func(r *rand.Rand, _ int) int64 { return 3*m + r.Int63n(12)*10007 }},
	} {
		rnd, most := rand.New(rand.NewSource(6)), 0
		for range 8 {
			stock := make([]Piece, 12)
			for i := range stock {
				stock[i] = Piece{Length: c.length(rnd, i), Count: Unlimited}
				if rnd.Intn(2) == 0 {
					stock[i].Count = 1 + rnd.Intn(4)
				}
			}
			for need := int64(20*m + 1); need < 150*m; need += 31*m/10 + 7 {
				best, err := Best(need, stock, c.terms)
				if err != nil {
					expect(t, err, "segment.tooManyPieces")
					continue
				}
				most = max(most, best.Steps)
			}
		}
		t.Log(kind, most, "states at most")
		assert.Less(t, most, 300000, kind)
		assert.Greater(t, most, 10, kind)
	}
}

// misfit is a stock of many single pieces of 3 to 8 m in whole millimetres, and
// a last one that is 0.7 mm off. A need that ends in 0.1 mm can be met to 0.6 mm
// with the last piece and to 0.9 mm without it, but only trying shows it.
func misfit() []Piece {
	rnd := rand.New(rand.NewSource(7))
	stock := make([]Piece, MostLines)
	for i := range stock {
		stock[i] = Piece{Length: 3*m + rnd.Int63n(5000)*10, Count: 1}
	}
	stock[MostLines-1].Length += 7
	return stock
}

// What cannot be proven within the effort is refused, never answered by the
// best so far.
func TestEffortLimit(t *testing.T) {
	_, err := Best(90*m+1, misfit(), Terms{JointPrice: 0, MaxPieces: 40})
	expect(t, err, "segment.effort")
}

// An alternative that cannot be proven leaves the best alone: the need is just
// short of the eleven longest, which leaves the best hardly a choice.
func TestAlternativeBeyondTheEffort(t *testing.T) {
	stock, need := misfit(), int64(0)
	longest := make([]int64, len(stock))
	for i, p := range stock {
		longest[i] = p.Length
	}
	slices.Sort(longest)
	for _, l := range longest[len(longest)-11:] {
		need += l
	}
	c, err := Alternatives(need-9, stock, Terms{JointPrice: 10 * m, MaxPieces: 40})
	require.NoError(t, err)
	assert.Equal(t, 11, c.Best.Pieces)
	assert.Equal(t, int64(9), c.Best.OffCut)
	assert.True(t, c.FewestJoints.Same(c.Best))
	assert.Equal(t, Makeup{}, c.LeastOffCut)
	assert.False(t, c.LeastOffCut.Same(c.Best))
}
