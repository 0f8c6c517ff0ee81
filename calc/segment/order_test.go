package segment_test

import (
	"math/rand"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/published"
	. "gaugewright/calc/segment"
)

// ways lists every make-up of a pile by trying: its counts and the least cost.
func ways(p JobPile, stock []Piece, terms JobTerms) (list []laidByTrying) {
	counts := make([]int, len(stock))
	var sequence []int
	seen := map[string]bool{}
	var lay func(sum, extra int64)
	lay = func(sum, extra int64) {
		if sum >= p.Need {
			key := ""
			for _, n := range counts {
				key += string(rune('a' + n))
			}
			if !seen[key] && brokenOn(p.Rules, stock, sequence) == "" {
				seen[key] = true
				list = append(list, laidByTrying{counts: slices.Clone(counts), cost: sum - p.Need + extra + terms.JointPrice*int64(len(sequence)-1)})
			}
			return
		}
		if len(sequence) == p.MaxPieces {
			return
		}
		for i, s := range stock {
			counts[i]++
			sequence = append(sequence, i)
			lay(sum+s.Length, extra+s.Extra)
			sequence = sequence[:len(sequence)-1]
			counts[i]--
		}
	}
	lay(0, 0)
	return list
}

// brokenOn is [broken] for the rest of a pile, which stands on a piece of no length
// where it is begun.
func brokenOn(r JointRules, stock []Piece, sequence []int) string {
	if !r.Begun {
		return broken(r, stock, sequence)
	}
	return brokenAbove(1, r, append(slices.Clone(stock), Piece{}), append([]int{len(stock)}, sequence...))
}

// jobByTrying tries all make-ups of all piles together: the fewest missing
// pieces, and the least cost among those.
func jobByTrying(piles []JobPile, stock []Piece, terms JobTerms) (missing int, cost int64) {
	each := make([][]laidByTrying, len(piles))
	for i, p := range piles {
		each[i] = ways(p, stock, terms)
	}
	left := make([]int, len(stock))
	for i, s := range stock {
		left[i] = s.Count
	}
	missing = 1 << 30
	var try func(i int, spent int64)
	try = func(i int, spent int64) {
		short := 0
		for line, s := range stock {
			if s.Count != Unlimited {
				short += max(0, -left[line])
			}
		}
		if short > missing || short == missing && spent >= cost {
			return
		}
		if i == len(piles) {
			missing, cost = short, spent
			return
		}
		for _, w := range each[i] {
			for line, n := range w.counts {
				left[line] -= n
			}
			try(i+1, spent+w.cost)
			for line, n := range w.counts {
				left[line] += n
			}
		}
	}
	try(0, 0)
	return missing, cost
}

func smallJob(rnd *rand.Rand) (piles []JobPile, stock []Piece, terms JobTerms) {
	const d = m / 10
	stock = make([]Piece, 1+rnd.Intn(4))
	for i := range stock {
		stock[i] = Piece{Length: int64(10+rnd.Intn(30)) * d, Count: rnd.Intn(6) - 1}
		if i > 0 && rnd.Intn(4) == 0 {
			stock[i].Length = stock[i-1].Length
		}
		if rnd.Intn(4) == 0 {
			stock[i].Extra = int64(rnd.Intn(4)) * d
		}
		if rnd.Intn(4) == 0 {
			stock[i].Role = Role(rnd.Intn(int(EitherEnd) + 1))
		}
	}
	terms.JointPrice = int64(rnd.Intn(3)) * m / 2
	for range 1 + rnd.Intn(5) {
		p := JobPile{Need: int64(10+rnd.Intn(50)) * d, MaxPieces: 1 + rnd.Intn(4)}
		if len(piles) > 0 && rnd.Intn(3) == 0 {
			p = piles[rnd.Intn(len(piles))]
		} else if rnd.Intn(2) == 0 {
			p.Rules = JointRules{Cutoff: Metres(p.Need - d*int64(rnd.Intn(5)))}
			p.Rules.Last = Metres(int64(rnd.Intn(12)) * d)
			b := Metres(int64(rnd.Intn(40)) * d)
			p.Rules.NoJoint = []Stratum{{Top: b + Metres(int64(rnd.Intn(8))*d), Bottom: b}}
		}
		piles = append(piles, p)
	}
	return piles, stock, terms
}

func TestOrderAgainstTryingAll(t *testing.T) {
	rnd := rand.New(rand.NewSource(21))
	proven, lacking, failed, bound := 0, 0, 0, 0
	const rounds = 2000
	for range rounds {
		piles, stock, terms := smallJob(rnd)
		o, err := OrderList(piles, stock, terms)
		require.NoError(t, err)
		var made []JobPile
		for i, p := range o.Piles {
			has := len(ways(piles[i], stock, terms)) > 0
			require.Equal(t, has, p.Err == nil, "%v %v: %v", piles[i], stock, p.Err)
			if has {
				made = append(made, piles[i])
				require.Empty(t, broken(piles[i].Rules, stock, p.Makeup.Sequence))
			} else {
				failed++
			}
		}
		missing, cost := jobByTrying(made, stock, terms)
		if len(made) == 0 {
			continue
		}
		require.LessOrEqual(t, o.Bound, o.Cost)
		require.Equal(t, missing, o.Missing, "%v %v %v", piles, stock, terms)
		require.Equal(t, missing > 0, o.Lacking)
		if missing > 0 {
			lacking++
		} else {
			require.LessOrEqual(t, o.Bound, cost)
			require.Equal(t, cost, o.Cost, "%v %v %v", piles, stock, terms)
		}
		if o.Bound == o.Cost {
			proven++
		}
		for i, l := range o.Lines {
			taken := 0
			for _, p := range o.Piles {
				if p.Err == nil {
					taken += p.Makeup.Counts[i]
				}
			}
			require.Equal(t, taken, l.Taken)
			if stock[i].Count != Unlimited && o.Missing == 0 {
				require.LessOrEqual(t, l.Taken, stock[i].Count)
				if l.Taken == stock[i].Count {
					bound++
				}
			}
		}
	}
	t.Log(proven, lacking, failed, bound)
	assert.Greater(t, proven, rounds*4/5)
	assert.Greater(t, lacking, rounds/10)
	assert.Greater(t, failed, rounds/10)
	assert.Greater(t, bound, rounds/10)
}

// fill asks for as many bins of a length as piles, filled as full as they can be
// with items of the widths w, of which there are d. It is our covering turned
// round: with M = L + 1 an item is a piece of M - w, an empty place a piece of M,
// of which there are any number, and a bin of at most K places is a pile of
// K M - L: fewer than K pieces do not reach it, and what K pieces of items leave
// over is L - sum of w, the free room of the bin. So the cost of the order is the
// free room of all bins, and all items are in when it is bins L - sum of d w. The
// unit of the data is taken so that a bin is about 10 m.
func fill(t *testing.T, bins int, L int64, w []int64, d []int) (o Order, all int64) {
	unit := 10 * m / L
	K, L, w := int64(0), L*unit, slices.Clone(w)
	for i := range w {
		w[i] *= unit
		K = max(K, L/w[i])
	}
	M := L + unit
	stock := []Piece{{Length: M, Count: Unlimited}}
	all = int64(bins) * L
	for i, v := range w {
		stock = append(stock, Piece{Length: M - v, Count: d[i]})
		all -= v * int64(d[i])
	}
	piles := make([]JobPile, bins)
	for i := range piles {
		piles[i] = JobPile{Need: K*M - L, MaxPieces: int(K)}
	}
	o, err := OrderList(piles, stock, JobTerms{})
	require.NoError(t, err)
	require.Zero(t, o.Missing)
	for i, p := range o.Piles {
		room := L
		for line, n := range p.Makeup.Counts {
			if line > 0 {
				room -= int64(n) * w[line-1]
			}
		}
		require.GreaterOrEqual(t, room, int64(0), "bin %d", i)
		require.Equal(t, room, p.Makeup.OffCut)
	}
	return o, all
}

// The published numbers of bins are enough for all items, and the bound proves
// that one bin fewer is not.
func TestOrderAgainstPublishedPackings(t *testing.T) {
	ask := func(s published.Source, L int64, w []int64, d []int, opt int) {
		o, all := fill(t, opt, L, w, d)
		id := s.Place
		assert.Equal(t, all, o.Cost, "%s: all items are in", id)
		assert.Equal(t, o.Cost, o.Bound, id)
		for i := range w {
			assert.Equal(t, d[i], o.Lines[i+1].Taken, "%s item %d", id, i)
		}
		fewest := opt
		if o, all = fill(t, opt-1, L, w, d); o.Bound <= all {
			fewest = 0 // not proven
		}
		whole(t, s, "fewest bins, proven", opt, fewest)
	}
	p := packings(t)
	for _, c := range p.Cutting {
		s := cuttingStock.At(c.ID)
		if strings.Contains(c.ID, "constructed") {
			s = published.Worked("cutting stock, constructed and proven by an integer programme").At(c.ID)
		}
		ask(s, c.L, c.W, c.D, c.Opt)
	}
	for _, b := range p.Bins {
		one := make([]int, len(b.W))
		for i := range one {
			one[i] = 1
		}
		ask(martelloToth.At("bin packing "+b.ID), b.C, b.W, one, b.Opt)
	}
}

func pile(metres float64) JobPile {
	return JobPile{Need: int64(metres*m + 0.5), MaxPieces: 10}
}

// Three piles of 17.2 m and one of 11.5 m from two 12, four 9 and two 6 m; a
// joint is worth 1 m.
//
//	17.2: 12 + 6 (0.8 + 1 = 1.8) or 9 + 9 (the same); 12 + 9 (3.8 + 1 = 4.8)
//	11.5: 12 (0.5), 6 + 6 (0.5 + 1 = 1.5), 9 + 6 (4.5)
//
// A 12 for the short pile, 12 + 6 and twice 9 + 9: 0.5 + 3 x 1.8 = 5.9.
func TestOrderByHand(t *testing.T) {
	stock := []Piece{{Length: 12 * m, Count: 2}, {Length: 9 * m, Count: 4}, {Length: 6 * m, Count: 2}}
	piles := []JobPile{pile(17.2), pile(17.2), pile(11.5), pile(17.2)}
	terms := JobTerms{JointPrice: m, Spares: 0.1}
	o, err := OrderList(piles, stock, terms)
	require.NoError(t, err)
	whole(t, byHand, "three of 17.2 and one of 11.5 m from few pieces: cost [0.1 mm]", 59000, o.Cost)
	assert.Equal(t, o.Cost, o.Bound)
	assert.Zero(t, o.Gap())
	assert.Equal(t, []int{0}, o.Piles[2].Makeup.Sequence)
	assert.Equal(t, []int64{29000, 3}, []int64{o.OffCut, int64(o.Joints)})
	whole(t, byHand, "the same: pieces", 7, o.Pieces)
	whole(t, byHand, "the same: total length [0.1 mm]", 660000, o.Total)
	// Spares of 10 %: one more of each length that is taken, of which there is
	// none for the 12 and the 9.
	assert.Equal(t, []OrderLine{
		{Taken: 2, Spares: 1, Ordered: 3, Short: 1}, {Taken: 4, Spares: 1, Ordered: 5, Short: 1}, {Taken: 1, Spares: 1, Ordered: 2},
	}, o.Lines)

	// One 9 fewer: two 17.2 from 12 + 6, one 9 + 9, and the short one from what
	// is left, a 9: too short. With 12 for the short one: 12 + 6, 9 + 9, and
	// 9 + 6 = 15 is too short. So a piece is missing: with a 9 it is the above.
	stock[1].Count = 3
	o, err = OrderList(piles, stock, terms)
	require.NoError(t, err)
	assert.Equal(t, 1, o.Missing)
	assert.True(t, o.Lacking)
	assert.Equal(t, int64(59000), o.Cost)
	assert.Equal(t, o.Cost, o.Bound)
	missing := 0
	for i, l := range o.Lines {
		missing += l.Missing
		assert.Equal(t, max(0, l.Taken-stock[i].Count), l.Missing)
	}
	assert.Equal(t, 1, missing)

	// Nothing there at all: all is missing.
	for i := range stock {
		stock[i].Count = 0
	}
	o, err = OrderList(piles, stock, terms)
	require.NoError(t, err)
	assert.Equal(t, 7, o.Missing, "the short pile from one 12, the others of two")
	assert.True(t, o.Lacking)
}

// Where nothing binds, every pile has its own best make-up.
func TestOrderOfEnoughIsTheBestOfEach(t *testing.T) {
	rnd := rand.New(rand.NewSource(22))
	for range 300 {
		piles, stock, terms := smallJob(rnd)
		for i := range stock {
			if stock[i].Count != Unlimited {
				stock[i].Count = 100
			}
		}
		o, err := OrderList(piles, stock, terms)
		require.NoError(t, err)
		cost := int64(0)
		for i, p := range piles {
			best, err := p.Rules.Best(p.Need, stock, Terms{JointPrice: terms.JointPrice, MaxPieces: p.MaxPieces})
			require.Equal(t, err, o.Piles[i].Err)
			cost += best.Cost
			if err == nil {
				require.Equal(t, best.Cost, o.Piles[i].Makeup.Cost)
			}
		}
		require.Equal(t, cost, o.Cost)
		require.Equal(t, cost, o.Bound)
	}
}

// More stock never costs more, a rule left away never costs more, and the same
// piles in another order cost the same; on jobs so small that the order is proven.
func TestOrderIsMonotone(t *testing.T) {
	rnd := rand.New(rand.NewSource(23))
	compared := 0
	for range 300 {
		piles, stock, terms := smallJob(rnd)
		o, err := OrderList(piles, stock, terms)
		require.NoError(t, err)
		failed := func(o Order) (n int) {
			for _, p := range o.Piles {
				if p.Err != nil {
					n++
				}
			}
			return n
		}
		more := slices.Clone(stock)
		for i := range more {
			if more[i].Count != Unlimited {
				more[i].Count += rnd.Intn(2)
			}
		}
		p, err := OrderList(piles, more, terms)
		require.NoError(t, err)
		require.LessOrEqual(t, p.Missing, o.Missing)
		if o.Missing == 0 {
			require.LessOrEqual(t, p.Cost, o.Cost)
			compared++
		}
		less := slices.Clone(piles)
		for i := range less {
			less[i].Rules = JointRules{}
		}
		p, err = OrderList(less, stock, terms)
		require.NoError(t, err)
		if o.Missing == 0 && failed(o) == failed(p) {
			require.LessOrEqual(t, p.Cost, o.Cost)
			require.Zero(t, p.Missing)
		}
		turned := slices.Clone(piles)
		slices.Reverse(turned)
		p, err = OrderList(turned, stock, terms)
		require.NoError(t, err)
		require.Equal(t, o.Missing, p.Missing)
		if o.Missing == 0 {
			require.Equal(t, o.Cost, p.Cost)
		}
	}
	assert.Greater(t, compared, 90)
}

// While the job goes on, it is planned anew: a piece breaks, the next is pressed,
// and what is left is made up at the least cost, by trying all.
func TestOrderIsPlannedAnew(t *testing.T) {
	rnd := rand.New(rand.NewSource(26))
	planned := 0
	for range 300 {
		piles, stock, terms := smallJob(rnd)
		o, err := OrderList(piles, stock, terms)
		require.NoError(t, err)
		var rest []JobPile // without the piles that cannot be made
		for i, p := range o.Piles {
			if p.Err == nil {
				rest = append(rest, piles[i])
			}
		}
		use := func(line int) {
			if stock[line].Count > 0 {
				stock[line].Count--
			}
		}
		for len(rest) > 0 {
			o, err := OrderList(rest, stock, terms)
			require.NoError(t, err)
			missing, cost := jobByTrying(rest, stock, terms)
			require.Equal(t, missing, o.Missing)
			if o.Piles[0].Err != nil || missing > 0 {
				break
			}
			require.Equal(t, cost, o.Cost)
			planned++
			line := o.Piles[0].Makeup.Sequence[0]
			use(line)
			if rnd.Intn(4) == 0 {
				continue // it broke
			}
			p := &rest[0]
			p.Need, p.MaxPieces, p.Rules = p.Need-stock[line].Length, p.MaxPieces-1, p.Rules.Pressed(stock[line].Length)
			if p.Need <= 0 {
				rest = rest[1:]
			}
		}
	}
	assert.Greater(t, planned, 400)
}

// Lines that nothing tells apart are one supply, handed out from the first.
func TestOrderSharesEqualLines(t *testing.T) {
	stock := []Piece{{Length: 12 * m, Count: 1}, {Length: 9 * m, Count: Unlimited}, {Length: 12 * m, Count: 2}, {Length: 12 * m, Count: 1, Role: Top}}
	o, err := OrderList([]JobPile{pile(12), pile(11.9), pile(24)}, stock, JobTerms{JointPrice: m})
	require.NoError(t, err)
	assert.Equal(t, int64(11000), o.Cost) // 0 + 0.1 + one joint
	assert.Equal(t, o.Cost, o.Bound)
	assert.Equal(t, []int{1, 0, 2, 1}, []int{o.Lines[0].Taken, o.Lines[1].Taken, o.Lines[2].Taken, o.Lines[3].Taken})
	for _, p := range o.Piles {
		taken := make([]int, len(stock))
		for _, line := range p.Makeup.Sequence {
			taken[line]++
		}
		assert.Equal(t, taken, p.Makeup.Counts)
	}
}

// Piles of 19 m in a row, from 12, 9, 7 and 4 m: 12 + 7 has its joint at +2.00
// from a toe at -10.00, 7 + 12 at -3.00.
func TestOrderStaggers(t *testing.T) {
	stock := lengths(Unlimited, 12, 9, 7, 4)
	piles := make([]JobPile, 4)
	for i := range piles {
		piles[i] = pile(19)
		piles[i].Rules = JointRules{Toe: -10, Cutoff: 8, Stagger: 0.5}
		if i > 0 {
			piles[i].Beside = []int{i - 1}
		}
	}
	o, err := OrderList(piles, stock, JobTerms{JointPrice: m})
	require.NoError(t, err)
	assert.Empty(t, o.Close)
	assert.Equal(t, int64(4*m), o.Cost)
	for i := range piles {
		assert.Equal(t, [][]int{{0, 2}, {2, 0}}[i%2], o.Piles[i].Makeup.Sequence)
	}

	// It is enough that one of two says how far.
	piles[1].Rules.Stagger, piles[3].Rules.Stagger = 0, 0
	less, err := OrderList(piles, stock, JobTerms{JointPrice: m})
	require.NoError(t, err)
	assert.Equal(t, o.Piles, less.Piles)

	// The third beside both others: neither order of 12 and 7 will do. 9 + 12
	// has its joint at -1.00, costs 2.0 + 1 = 3.0.
	piles[3].Beside, piles[2].Beside = nil, []int{0, 1}
	o, err = OrderList(piles, stock, JobTerms{JointPrice: m})
	require.NoError(t, err)
	assert.Empty(t, o.Close)
	assert.Equal(t, []int{1, 0}, o.Piles[2].Makeup.Sequence)
	assert.Equal(t, int64(6*m), o.Cost)
	assert.Equal(t, int64(4*m), o.Bound, "which knows nothing of neighbours")
	assert.InDelta(t, 2./6, float64(o.Gap()), 1e-12)

	// From 12 and 7 alone the lowest joint is at one of the two levels, whatever
	// is on top: the pile is named.
	o, err = OrderList(piles, []Piece{stock[0], stock[2]}, JobTerms{JointPrice: m})
	require.NoError(t, err)
	assert.Equal(t, []int{2}, o.Close)
}

// Off-cuts of an earlier stage stand first or last in a later pile.
func TestOrderReusesOffCuts(t *testing.T) {
	// 20.5 m is made of 12 + 9 = 21 and cut at 16.0 above the toe: 5.0 m are cut
	// off. The next pile needs 11 m: a 12 costs 1.0. The off-cut of 5.0 with a 9
	// costs (14 - 11) + 1 - 5 = -1.0: 2.0 less.
	stock := []Piece{{Length: 12 * m, Count: 2}, {Length: 9 * m, Count: 2}}
	first, second := pile(20.5), pile(11)
	first.Saw, second.Stage = 16*m, 1
	terms := JobTerms{JointPrice: m, Reuse: Reuse{On: true}}
	o, err := OrderList([]JobPile{first, second}, stock, terms)
	require.NoError(t, err)
	plain, err := OrderList([]JobPile{first, second}, stock, JobTerms{JointPrice: m})
	require.NoError(t, err)
	assert.Empty(t, plain.Reused, "off by default")
	assert.Equal(t, []Reused{{From: 0, To: 1, Line: 2, Length: 5 * m}}, o.Reused)
	whole(t, byHand, "saved by an off-cut of 5 m [0.1 mm]", 20000, o.Saved)
	assert.Equal(t, plain.Cost, o.Cost+o.Saved)
	assert.Equal(t, plain.Bound, o.Bound)
	assert.Equal(t, []int{1, 2}, o.Piles[1].Makeup.Sequence)
	assert.Equal(t, []int{0, 1, 1}, o.Piles[1].Makeup.Counts)
	assert.Equal(t, Piece{Length: 5 * m, Count: 1, Role: EitherEnd}, o.Stock[2])
	assert.Equal(t, 3, o.Pieces)
	hold(t, OffCutKeptRule, 5, 21, 16, 9, 0)

	for _, change := range []func(*JobPile, *JobPile, *JobTerms){
		func(_, second *JobPile, _ *JobTerms) { second.Stage = 0 },           // not cut yet
		func(first, _ *JobPile, _ *JobTerms) { first.Saw = 0 },               // not known where it is cut
		func(_, _ *JobPile, terms *JobTerms) { terms.Reuse.Least = 5*m + 1 }, // too short to keep
		func(_, _ *JobPile, terms *JobTerms) { terms.Reuse.Loss = 3*m + 1 },  // 9 + 1.9999 is too short
		func(_, second *JobPile, _ *JobTerms) { second.MaxPieces = 1 },       // no joint allowed
		func(_, _ *JobPile, terms *JobTerms) { terms.JointPrice = 3 * m },    // 3 - 5 + 3 = 1.0: nothing saved
		func(_, second *JobPile, _ *JobTerms) {
			second.Rules = JointRules{NoJoint: []Stratum{{Top: 9, Bottom: 5}}}
		}, // joint at 5 or 9
	} {
		f, s, terms := first, second, terms
		change(&f, &s, &terms)
		o, err := OrderList([]JobPile{f, s}, stock, terms)
		require.NoError(t, err)
		assert.Empty(t, o.Reused)
		assert.Zero(t, o.Saved)
	}

	// What is cut off is the last piece at most: cut at 8.0, below the joint at
	// 12.0, a 9 is left.
	first.Saw = 8 * m
	o, err = OrderList([]JobPile{first, second}, stock, terms)
	require.NoError(t, err)
	require.Len(t, o.Reused, 1)
	assert.Equal(t, int64(9*m), o.Reused[0].Length)
}

func TestReuseKeepsEverything(t *testing.T) {
	rnd := rand.New(rand.NewSource(24))
	used := 0
	for range 600 {
		piles, stock, terms := smallJob(rnd)
		for i := range piles {
			piles[i].Stage = rnd.Intn(3)
			piles[i].Saw = max(0, piles[i].Need-int64(rnd.Intn(12))*m/10)
			if i > 0 && rnd.Intn(3) == 0 {
				piles[i].Beside, piles[i].Rules.Stagger = []int{rnd.Intn(i)}, 0.2
			}
		}
		plain, err := OrderList(piles, stock, terms)
		require.NoError(t, err)
		terms.Reuse = Reuse{On: true, Least: m / 2, Loss: m / 20}
		o, err := OrderList(piles, stock, terms)
		require.NoError(t, err)
		require.Equal(t, plain.Cost, o.Cost+o.Saved)
		require.LessOrEqual(t, o.Missing, plain.Missing)
		require.Len(t, o.Stock, len(stock)+len(o.Reused))
		from := map[int]bool{}
		for i, r := range o.Reused {
			used++
			require.False(t, from[r.From], "an off-cut is used once")
			from[r.From] = true
			require.Less(t, piles[r.From].Stage, piles[r.To].Stage)
			cut := o.Piles[r.From].Makeup
			last := cut.Sequence[len(cut.Sequence)-1]
			require.Less(t, last, len(stock), "an off-cut's off-cut is not used")
			require.Equal(t, min(cut.Total-piles[r.From].Saw, stock[last].Length)-m/20, r.Length)
			require.GreaterOrEqual(t, r.Length, int64(m/2))
			require.Equal(t, len(stock)+i, r.Line)
			require.Equal(t, 1, o.Piles[r.To].Makeup.Counts[r.Line])
		}
		left := 0
		for i, p := range o.Piles {
			if p.Err != nil {
				continue
			}
			require.Empty(t, broken(piles[i].Rules, o.Stock, p.Makeup.Sequence))
			require.GreaterOrEqual(t, p.Makeup.Total, piles[i].Need)
			require.LessOrEqual(t, p.Makeup.Pieces, piles[i].MaxPieces)
			for _, j := range piles[i].Beside {
				if o.Piles[j].Err != nil || slices.Contains(o.Close, i) || slices.Contains(o.Close, j) {
					continue
				}
				r := piles[i].Rules
				for _, z := range joints(piles[j].Rules.Toe, o.Stock, o.Piles[j].Makeup.Sequence) {
					r.Neighbours = append(r.Neighbours, Metres(int64(z*m+0.5)))
				}
				require.Empty(t, broken(r, o.Stock, p.Makeup.Sequence), "joints beside")
			}
		}
		for i, s := range stock {
			if s.Count != Unlimited {
				left += max(0, o.Lines[i].Taken-s.Count)
			}
		}
		require.Equal(t, o.Missing, left)
	}
	assert.Greater(t, used, 50)
}

// The largest numbers that are let in: nothing overflows, and bound and cost keep
// their order.
func TestOrderOfTheLargestNumbers(t *testing.T) {
	rnd := rand.New(rand.NewSource(27))
	for round := range 8 {
		stock := make([]Piece, 4)
		for i := range stock {
			stock[i] = Piece{Length: 100*m - int64(rnd.Intn(100)), Count: 1 << 62, Extra: 100000*m - int64(rnd.Intn(1000))}
			if round%2 == 0 {
				stock[i].Count = rnd.Intn(10000)
			}
		}
		piles := make([]JobPile, MostPiles)
		for i := range piles {
			piles[i] = JobPile{Need: 1000*m - int64(rnd.Intn(3)), MaxPieces: MostPieces}
		}
		o, err := OrderList(piles, stock, JobTerms{JointPrice: 100000 * m, Spares: 1})
		require.NoError(t, err)
		require.Positive(t, o.Bound)
		require.LessOrEqual(t, o.Bound, o.Cost)
		require.Equal(t, round%2 == 0, o.Missing > 0)
		require.Equal(t, round%2 == 0, o.Lacking)
		require.GreaterOrEqual(t, o.Pieces, 10*MostPiles)
		require.LessOrEqual(t, o.Pieces, 11*MostPiles)
	}
}

func TestOrderRefusals(t *testing.T) {
	good := []Piece{{Length: 12 * m, Count: Unlimited}}
	for _, c := range []struct {
		code  string
		piles []JobPile
		stock []Piece
		terms JobTerms
	}{
		{"segment.order.tooMany", make([]JobPile, MostPiles+1), good, JobTerms{}},
		{"segment.order.spares", nil, good, JobTerms{Spares: 1.01}},
		{"segment.order.spares", nil, good, JobTerms{Spares: -0.01}},
		{"segment.order.beside", []JobPile{{Beside: []int{0}}}, good, JobTerms{}},
		{"segment.order.beside", []JobPile{{Beside: []int{1}}}, good, JobTerms{}},
		{"segment.negative", nil, good, JobTerms{Reuse: Reuse{Loss: -1}}},
		{"segment.stockEmpty", nil, nil, JobTerms{}},
		{"segment.pieceLength", nil, []Piece{{Length: -1, Count: 1}}, JobTerms{}},
		{"segment.jointPrice", nil, good, JobTerms{JointPrice: -1}},
	} {
		_, err := OrderList(c.piles, c.stock, c.terms)
		expect(t, err, c.code)
	}

	// A pile of its own that cannot be made is left out; the others stand.
	deep, none, odd := pile(17.2), pile(0), pile(17.2)
	deep.MaxPieces = 1
	odd.Rules.Clear = -1
	o, err := OrderList([]JobPile{pile(12), deep, none, odd}, good, JobTerms{})
	require.NoError(t, err)
	require.NoError(t, o.Piles[0].Err)
	expect(t, o.Piles[1].Err, "segment.tooManyPieces")
	expect(t, o.Piles[2].Err, "segment.need")
	expect(t, o.Piles[3].Err, "segment.negative")
	assert.Equal(t, 1, o.Pieces)
	o, err = OrderList(nil, good, JobTerms{})
	require.NoError(t, err)
	assert.Zero(t, o.Pieces)
}

func TestOrderRules(t *testing.T) {
	rnd := rand.New(rand.NewSource(25))
	for range 200 {
		piles, stock, terms := smallJob(rnd)
		terms.Spares = 0.15
		o, err := OrderList(piles, stock, terms)
		require.NoError(t, err)
		at := func(v int64) float64 { return float64(Metres(v)) }
		hold(t, JobCostRule, at(o.Cost), at(o.OffCut), at(terms.JointPrice), float64(o.Joints), at(o.Extra))
		hold(t, BoundRule, 1, at(o.Cost), at(o.Bound))
		if o.Cost > 0 {
			hold(t, GapRule, float64(o.Gap()), at(o.Cost), at(o.Bound))
		}
		for i, l := range o.Lines {
			hold(t, OrderedRule, float64(l.Ordered), float64(l.Taken), 0.15)
			if stock[i].Count != Unlimited {
				hold(t, MissingRule, float64(l.Missing), float64(l.Taken), float64(stock[i].Count))
			}
		}
	}
	assert.Equal(t, 1.0, differs(t, BoundRule, 1, 5.9, 6.0), "a bound above the cost is not true")
	// 20 x 1.05 is 21.0, whatever the last bit says.
	assert.Equal(t, []int{0, 2, 21, 22, 10}, []int{Ordered(0, 0.5), Ordered(1, 0.01), Ordered(20, 0.05), Ordered(20, 0.0501), Ordered(10, 0)})
}
