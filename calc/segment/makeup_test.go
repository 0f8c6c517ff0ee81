package segment_test

import (
	"encoding/json"
	"math/rand"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/basis"
	"gaugewright/calc/published"
	. "gaugewright/calc/segment"
)

const m = 10000 // a metre

func TestMakeupByHand(t *testing.T) {
	stock := []Piece{{Length: 12 * m, Count: Unlimited}, {Length: 9 * m, Count: Unlimited}, {Length: 6 * m, Count: Unlimited}}
	terms := Terms{JointPrice: 1 * m, MaxPieces: 10}

	// 17.2 m: 12 + 6 = 18 leaves 0.8 and one joint: 1.8; 9 + 9 is the same
	// length, also two pieces, but takes fewer of the first line.
	best, err := Best(172000, stock, terms)
	require.NoError(t, err)
	assert.Equal(t, []int{1, 0, 1}, best.Counts)
	assert.Equal(t, []int64{180000, 8000, 0, 18000}, []int64{best.Total, best.OffCut, best.Extra, best.Cost})
	whole(t, byHand, "17.2 m of 12, 9 and 6 m: cost [0.1 mm]", 18000, best.Cost)
	assert.Equal(t, 2, best.Pieces)

	// Two of 12 only: 24 leaves 6.8.
	best, err = Best(172000, []Piece{{Length: 12 * m, Count: 2}}, terms)
	require.NoError(t, err)
	whole(t, byHand, "17.2 m of two 12 m: off-cut [0.1 mm]", 68000, best.OffCut)

	// 13.0 m of 12 and 7 and 6.5 m: two 6.5 leave nothing and cost one joint.
	best, err = Best(130000, []Piece{{Length: 12 * m, Count: Unlimited}, {Length: 7 * m, Count: Unlimited}, {Length: 65000, Count: Unlimited}}, terms)
	require.NoError(t, err)
	assert.Equal(t, []int{0, 0, 2}, best.Counts)
	whole(t, byHand, "13.0 m of 12, 7 and 6.5 m: cost [0.1 mm]", 10000, best.Cost)
	// One of them left: 7 + 6.5 leaves 0.5.
	best, err = Best(130000, []Piece{{Length: 12 * m, Count: Unlimited}, {Length: 7 * m, Count: Unlimited}, {Length: 65000, Count: 1}}, terms)
	require.NoError(t, err)
	assert.Equal(t, []int{0, 1, 1}, best.Counts)
	// An extra cost of 0.6 m on the 6.5 turns it to two of 7: 1.0 against 0.5 + 0.6.
	best, err = Best(130000, []Piece{{Length: 12 * m, Count: Unlimited}, {Length: 7 * m, Count: Unlimited}, {Length: 65000, Count: 1, Extra: 6000}}, terms)
	require.NoError(t, err)
	assert.Equal(t, []int{0, 2, 0}, best.Counts)

	// Equal cost by another way: 10.0 m of one 11 (1.0 over) or two 5 (one
	// joint at 1.0): the fewer joints.
	best, err = Best(100000, []Piece{{Length: 5 * m, Count: Unlimited}, {Length: 11 * m, Count: Unlimited}}, terms)
	require.NoError(t, err)
	assert.Equal(t, []int{0, 1}, best.Counts)
}

func TestAlternatives(t *testing.T) {
	// 20.0 m of 12, 7 and 4 m; a joint is worth 1 m.
	//   two pieces: 12 + 12 = 24, over 4.0, cost 5.0
	//   three: 12 + 4 + 4 = 20, over 0, cost 2.0
	// Fewest joints: 12 + 12. Least off-cut: 12 + 4 + 4 (also 4 x 5, more joints).
	stock := []Piece{{Length: 12 * m, Count: Unlimited}, {Length: 7 * m, Count: Unlimited}, {Length: 4 * m, Count: Unlimited}}
	c, err := Alternatives(20*m, stock, Terms{JointPrice: m, MaxPieces: 8})
	require.NoError(t, err)
	assert.Equal(t, []int{1, 0, 2}, c.Best.Counts)
	assert.Equal(t, []int{2, 0, 0}, c.FewestJoints.Counts)
	assert.Equal(t, int64(5*m), c.FewestJoints.Cost, "counted by the stated prices")
	assert.True(t, c.LeastOffCut.Same(c.Best))
	assert.False(t, c.FewestJoints.Same(c.Best))

	// With a joint at 5 m the two pieces win: 4 + 5 = 9 against 0 + 10; an
	// extra cost of 3 m on each 4 m piece is counted in the third.
	stock[2].Extra = 3 * m
	c, err = Alternatives(20*m, stock, Terms{JointPrice: 5 * m, MaxPieces: 8})
	require.NoError(t, err)
	assert.True(t, c.FewestJoints.Same(c.Best))
	assert.Equal(t, []int{1, 0, 2}, c.LeastOffCut.Counts)
	assert.Equal(t, int64(6*m), c.LeastOffCut.Extra)
	assert.Equal(t, int64(16*m), c.LeastOffCut.Cost)
}

func TestMakeupRefusals(t *testing.T) {
	terms := Terms{JointPrice: m, MaxPieces: 3}
	good := []Piece{{Length: 6 * m, Count: Unlimited}}
	for _, c := range []struct {
		code         string
		need         int64
		stock        []Piece
		terms        Terms
		line         int
		value, limit float64
	}{
		{"segment.need", 0, good, terms, -1, 0, 0},
		{"segment.need", -5 * m, good, terms, -1, -5, 0},
		{"segment.tooLong", 1001 * m, good, terms, 0, 1001, 1000},
		{"segment.stockEmpty", m, nil, terms, -1, 0, 0},
		{"segment.stockEmpty", m, []Piece{{Length: 6 * m, Count: 0}}, terms, -1, 0, 0},
		{"segment.stockTooMany", m, make([]Piece, 61), terms, -1, 61, 60},
		{"segment.pieceLength", m, []Piece{{Length: 6 * m, Count: 1}, {Length: 0, Count: 1}}, terms, 1, 0, 100},
		{"segment.pieceLength", m, []Piece{{Length: -6 * m, Count: 1}}, terms, 0, -6, 100},
		{"segment.pieceLength", m, []Piece{{Length: 101 * m, Count: 1}}, terms, 0, 101, 100},
		{"segment.pieceCount", m, []Piece{{Length: 6 * m, Count: -2}}, terms, 0, -2, 0},
		{"segment.extra", m, []Piece{{Length: 6 * m, Count: 1, Extra: -m}}, terms, 0, -1, 100000},
		{"segment.jointPrice", m, good, Terms{-m, 3}, -1, -1, 100000},
		{"segment.jointPrice", m, good, Terms{100001 * m, 3}, -1, 100001, 100000},
		{"segment.maxPieces", m, good, Terms{m, 0}, -1, 0, 40},
		{"segment.maxPieces", m, good, Terms{m, 41}, -1, 41, 40},
		// 2 x 6 + 1 x 4 = 16 m is all there is
		{"segment.stockShort", 170000, []Piece{{Length: 4 * m, Count: 1}, {Length: 6 * m, Count: 2}}, terms, -1, 17, 16},
		// 4 x 6 = 24 >= 18.1
		{"segment.tooManyPieces", 181000, good, terms, -1, 4, 3},
		// 6 + 6 + 4 x 1.5 = 18 needs six pieces
		{"segment.tooManyPieces", 180000, []Piece{{Length: 15000, Count: 9}, {Length: 6 * m, Count: 2}}, terms, -1, 6, 3},
	} {
		_, err := Best(c.need, c.stock, c.terms)
		expect(t, err, c.code)
		e := err.(*InputError)
		assert.Equal(t, []float64{c.value, c.limit}, []float64{e.Value, e.Limit}, e.Error())
		if c.line >= 0 && e.Symbol == "" {
			assert.Equal(t, c.line, e.Line)
		}
		_, err = Alternatives(c.need, c.stock, c.terms)
		expect(t, err, c.code)
	}
}

// byTrying finds what Best promises by trying all counts.
func byTrying(need int64, stock []Piece, terms Terms) (counts []int, cost int64) {
	var at []int
	pieces := 0
	var try func(i, k int, total, extra int64)
	try = func(i, k int, total, extra int64) {
		if i == len(stock) {
			if total < need || k == 0 {
				return
			}
			c := total - need + terms.JointPrice*int64(k-1) + extra
			better := counts == nil || c < cost || c == cost && k < pieces
			if counts != nil && c == cost && k == pieces {
				for j := range at {
					if at[j] != counts[j] {
						better = at[j] > counts[j]
						break
					}
				}
			}
			if better {
				counts, cost, pieces = append([]int(nil), at...), c, k
			}
			return
		}
		for n := 0; k+n <= terms.MaxPieces && (stock[i].Count == Unlimited || n <= stock[i].Count); n++ {
			at = append(at, n)
			try(i+1, k+n, total+int64(n)*stock[i].Length, extra+int64(n)*stock[i].Extra)
			at = at[:len(at)-1]
		}
	}
	try(0, 0, 0, 0)
	return counts, cost
}

func TestMakeupAgainstTryingAll(t *testing.T) {
	rnd := rand.New(rand.NewSource(3))
	solved, refused := 0, map[string]int{}
	for range 20000 {
		stock := make([]Piece, 1+rnd.Intn(5))
		grid := []int64{1, 1, 3, 10}[rnd.Intn(4)]
		shift := int64(rnd.Intn(2)) * int64(rnd.Intn(5))
		dear := rnd.Intn(3) == 0
		for i := range stock {
			stock[i] = Piece{Length: grid*int64(1+rnd.Intn(12)) + shift, Count: rnd.Intn(5) - 1}
			if dear {
				stock[i].Extra = int64(rnd.Intn(8))
			}
			if i > 0 && rnd.Intn(4) == 0 { // the same length on two lines
				stock[i].Length = stock[i-1].Length
			}
		}
		terms := Terms{JointPrice: int64(rnd.Intn(4)) * int64(rnd.Intn(10)), MaxPieces: 1 + rnd.Intn(7)}
		need := 1 + int64(rnd.Intn(int(grid)*50))
		counts, cost := byTrying(need, stock, terms)
		got, err := Best(need, stock, terms)
		if counts == nil {
			var e *InputError
			require.ErrorAs(t, err, &e)
			refused[e.Code]++
			total := int64(0)
			for _, p := range stock {
				if p.Count == Unlimited {
					total = need
					break
				}
				total += int64(p.Count) * p.Length
			}
			switch {
			case total == 0:
				require.Equal(t, "segment.stockEmpty", e.Code)
			case total < need:
				require.Equal(t, "segment.stockShort", e.Code)
				require.Equal(t, float64(Metres(total)), e.Limit)
			default:
				require.Equal(t, "segment.tooManyPieces", e.Code)
			}
			continue
		}
		solved++
		require.NoError(t, err, "%d %v %v", need, stock, terms)
		require.Equal(t, counts, got.Counts, "%d %v %v", need, stock, terms)
		require.Equal(t, cost, got.Cost)
		pieces, total, extra := 0, int64(0), int64(0)
		for i, n := range got.Counts {
			pieces, total, extra = pieces+n, total+int64(n)*stock[i].Length, extra+int64(n)*stock[i].Extra
			require.True(t, stock[i].Count == Unlimited || n <= stock[i].Count)
		}
		require.Equal(t, []int64{int64(pieces), total, total - need, extra},
			[]int64{int64(got.Pieces), got.Total, got.OffCut, got.Extra})
		require.GreaterOrEqual(t, got.OffCut, int64(0))

		c, err := Alternatives(need, stock, terms)
		require.NoError(t, err)
		require.Equal(t, got.Counts, c.Best.Counts)
		free := append([]Piece(nil), stock...)
		for i := range free {
			free[i].Extra = 0
		}
		least, _ := byTrying(need, free, Terms{0, terms.MaxPieces})
		require.Equal(t, least, c.LeastOffCut.Counts)
		few, _ := byTrying(need, stock, Terms{1000000, terms.MaxPieces}) // dearer than all of it
		require.Equal(t, few, c.FewestJoints.Counts)
	}
	assert.Greater(t, solved, 9000)
	assert.Greater(t, refused["segment.tooManyPieces"], 100)
	assert.Greater(t, refused["segment.stockShort"], 100)
	assert.Greater(t, refused["segment.stockEmpty"], 100)
}

// Few different lengths on many lines with one or two pieces each: what a later
// line may take hangs on the earlier one of its length, also when the same state
// is met again by another way.
func TestEqualLinesAgainstTryingAll(t *testing.T) {
	rnd := rand.New(rand.NewSource(9))
	for range 600 {
		stock, all := make([]Piece, 6+rnd.Intn(2)), int64(0)
		for i := range stock {
			stock[i] = Piece{Length: int64(5 + rnd.Intn(4)), Count: 1 + rnd.Intn(2), Extra: int64(rnd.Intn(2))}
			all += stock[i].Length * int64(stock[i].Count)
		}
		terms := Terms{JointPrice: int64(rnd.Intn(3)), MaxPieces: 7}
		need := 1 + rnd.Int63n(min(all, 49))
		counts, _ := byTrying(need, stock, terms)
		got, err := BestByTable(need, stock, terms)
		if counts == nil {
			require.Error(t, err)
			continue
		}
		require.NoError(t, err)
		require.Equal(t, counts, got.Counts, "%d %v %v", need, stock, terms)
	}
}

// A stock of as many lines as there are pieces, each of its own.
func TestManyAlikeLines(t *testing.T) {
	stock := make([]Piece, MostLines)
	for i := range stock {
		stock[i] = Piece{Length: []int64{6 * m, 9 * m, 121000}[i%3], Count: 1}
	}
	// 100.0 m: nine pieces at least (9 x 12.1 = 108.9); 12.1 a + 9 b + 6 c with
	// a + b + c = 9 is least at or above 100 with 6 x 12.1 + 3 x 9 = 99.6 too
	// short, 7 x 12.1 + 9 + 6 = 99.7 too short, 7 x 12.1 + 2 x 9 = 102.7, and
	// 8 x 12.1 + 6 = 102.8.
	best, err := Best(100*m, stock, Terms{m, 40})
	require.NoError(t, err)
	assert.Equal(t, int64(27000), best.OffCut)
	for i, n := range best.Counts {
		want := 0
		if i%3 == 2 && i < 7*3 || i == 1 || i == 4 {
			want = 1 // the earliest of each length
		}
		assert.Equal(t, want, n, "line %d", i)
	}
	assert.Less(t, best.Steps, 20000)
}

func TestSearchIsTheSameEveryTime(t *testing.T) {
	need, stock, terms := awkward(12, 150)
	first, err := Best(need, stock, terms)
	require.NoError(t, err)
	for range 3 {
		again, err := Best(need, stock, terms)
		require.NoError(t, err)
		require.Equal(t, first, again)
	}
}

type packing struct {
	Knapsack []struct {
		ID  string  `json:"id"`
		C   int64   `json:"c"`
		W   []int64 `json:"w"`
		P   []int64 `json:"p"`
		Opt int64   `json:"opt"`
		X   []int   `json:"x"`
	} `json:"knapsack01"`
	Bins []struct {
		ID  string  `json:"id"`
		C   int64   `json:"c"`
		W   []int64 `json:"w"`
		Opt int     `json:"opt"`
	} `json:"bin_packing"`
	Cutting []struct {
		ID  string  `json:"id"`
		L   int64   `json:"L"`
		W   []int64 `json:"w"`
		D   []int   `json:"d"`
		Opt int     `json:"opt"`
	} `json:"cutting_stock"`
}

var (
	martelloToth = published.Source{Document: "Martello & Toth, Knapsack Problems (1990), as Burkardt's data sets", Mark: basis.Seen}
	cuttingStock = published.Source{Document: "Chvatal, and an encyclopaedia, on the cutting stock problem", Mark: basis.SecondHand}
	// byHand are values that were worked out apart from the code.
	byHand = published.Worked("make-ups and orders, by hand")
)

// whole compares whole numbers.
func whole[T int | int64](t *testing.T, s published.Source, what string, want, got T) {
	t.Helper()
	published.Check(t, s, what, strconv.FormatInt(int64(want), 10), float64(got), published.Exact)
}

// The cases of testdata/packing.json; their source stands in the file.
func packings(t *testing.T) (p packing) {
	text, err := os.ReadFile("../../testdata/packing.json")
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(text, &p))
	require.Len(t, p.Knapsack, 4)
	require.Len(t, p.Bins, 2)
	require.Len(t, p.Cutting, 3)
	return p
}

func sum(list []int64) (s int64) {
	for _, v := range list {
		s += v
	}
	return s
}

// A 0/1 knapsack asks for the items of most profit whose weights sum to at most
// c. What is not taken weighs at least sum(w) - c and has the profit
// sum(p) - taken; so the most profit taken is the least profit left out, and
// the two problems have the same solutions, item for item. Leaving out is our
// covering problem: pieces are the items left out, the need is sum(w) - c. Its
// cost counts the weight too; with each unit of profit priced above the sum of
// all weights the weight decides only between equal profits.
func TestSearchAgainstPublishedKnapsacks(t *testing.T) {
	for _, k := range packings(t).Knapsack {
		heavy := sum(k.W) + 1
		stock := make([]Piece, len(k.W))
		for i := range stock {
			stock[i] = Piece{Length: k.W[i], Count: 1, Extra: heavy * k.P[i]}
		}
		left, err := Best(sum(k.W)-k.C, stock, Terms{JointPrice: 0, MaxPieces: MostPieces})
		require.NoError(t, err, k.ID)
		profit, weight := int64(0), int64(0)
		for i, n := range left.Counts {
			profit += int64(1-n) * k.P[i]
			weight += int64(1-n) * k.W[i]
			whole(t, martelloToth.At("knapsack "+k.ID), "item "+strconv.Itoa(i+1)+" taken", k.X[i], 1-n)
		}
		whole(t, martelloToth.At("knapsack "+k.ID), "most profit", k.Opt, profit)
		assert.LessOrEqual(t, weight, k.C, k.ID)
	}
}

// Bins are filled one after another, each as full as the items that are left
// allow. The fullest bin is the least that is left over, again a covering. It
// is checked against trying all subsets. Filling one after another does not
// promise the fewest bins, but never uses fewer than the published optimum; in
// these two cases it meets it.
func TestSearchFillsPublishedBins(t *testing.T) {
	for _, b := range packings(t).Bins {
		items, bins := append([]int64(nil), b.W...), 0
		for len(items) > 0 {
			bins++
			if sum(items) <= b.C {
				break
			}
			fullest := int64(0)
			for set := range 1 << len(items) {
				w := int64(0)
				for i, v := range items {
					if set>>i&1 == 1 {
						w += v
					}
				}
				if w <= b.C {
					fullest = max(fullest, w)
				}
			}
			stock := make([]Piece, len(items))
			for i, w := range items {
				stock[i] = Piece{Length: w, Count: 1}
			}
			rest, err := Best(sum(items)-b.C, stock, Terms{JointPrice: 0, MaxPieces: MostPieces})
			require.NoError(t, err)
			var left []int64
			for i, n := range rest.Counts {
				if n == 1 {
					left = append(left, items[i])
				}
			}
			assert.Equal(t, fullest, sum(items)-sum(left), "%s bin %d", b.ID, bins)
			items = left
		}
		whole(t, martelloToth.At("bin packing "+b.ID), "bins, filled one after another", b.Opt, bins)
	}
}

// A working of a make-up is built by the rules from what the search gave.
func TestRulesOfAMakeup(t *testing.T) {
	stock := []Piece{{Length: 121000, Count: 2}, {Length: 9 * m, Count: Unlimited, Extra: 3000}, {Length: 64500, Count: Unlimited, Extra: 500}}
	terms := Terms{JointPrice: 7500, MaxPieces: 12}
	for need := int64(1234); need < 90*m; need += 7777 {
		best, err := Best(need, stock, terms)
		require.NoError(t, err)
		var total, counts, extras []float64
		for _, i := range best.Used() {
			n := float64(best.Counts[i])
			total = append(total, n, float64(Metres(stock[i].Length)))
			counts = append(counts, n)
			extras = append(extras, float64(Metres(stock[i].Extra)))
		}
		L, N := float64(Metres(best.Total)), float64(Metres(need))
		hold(t, TotalRule(len(counts)), L, total...)
		hold(t, ReachesRule, 1, L, N)
		hold(t, CostRule(len(counts), true), float64(Metres(best.Cost)),
			append(append([]float64{L, N, float64(Metres(terms.JointPrice))}, counts...), extras...)...)
		hold(t, CostRule(len(counts), false), float64(Metres(best.Cost-best.Extra)),
			append([]float64{L, N, float64(Metres(terms.JointPrice))}, counts...)...)
	}
	assert.Equal(t, "n1*l1 + n2*l2", TotalRule(2).Formula)
	assert.Equal(t, "L - L_n + j*(n1 + n2 - 1) + n1*e1 + n2*e2", CostRule(2, true).Formula)
	assert.Equal(t, 1.0, differs(t, ReachesRule, 1, 17.1999, 17.2), "one step short is found")
}
