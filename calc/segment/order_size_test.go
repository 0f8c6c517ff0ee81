package segment_test

import (
	"encoding/json"
	"maps"
	"math/rand"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/published"
	"gaugewright/calc/quantity"
	. "gaugewright/calc/segment"
)

// bigJob is a job at the size of a site, with a stock that can do it.
type bigJob struct {
	name         string
	piles, kinds int     // kinds: different needs among them
	lines        int     // of stock, 5 to 15 m
	deep         int64   // needs are between half of it and it
	grid         int64   // of the lengths
	spare        float64 // how much of each length there is beyond one way of making all piles
	rules        bool
}

func bigJobs() []bigJob {
	return []bigJob{
		{"24 piles/5 lengths", 24, 24, 5, 40 * m, m / 2, 1.2, false},
		{"24 piles/8 lengths/rules", 24, 24, 8, 60 * m, m / 2, 1.1, true},
		{"60 piles/4 needs", 60, 4, 6, 40 * m, m / 2, 1.05, false},
		{"200 piles/6 lengths", 200, 200, 6, 40 * m, m / 2, 1.1, false},
		{"200 piles/6 lengths/rules", 200, 200, 6, 40 * m, m / 10, 1.05, true},
		{"200 piles/12 lengths/rules", 200, 200, 12, 60 * m, m / 2, 1.05, true},
		{"200 piles/6 odd lengths/rules", 200, 200, 6, 60 * m, 1, 1.1, true},
		{"5000 piles/4 needs", 5000, 4, 6, 40 * m, m / 2, 1.05, false},
		{"5000 piles/40 needs/rules", 5000, 40, 8, 60 * m, m / 10, 1.02, true},
		{"5000 piles/40 needs/odd/not a piece to spare", 5000, 40, 12, 60 * m, 1, 1, true},
		{"5000 piles/all different", 5000, 5000, 8, 60 * m, m / 10, 1.05, true},
		{"24 piles/too few pieces", 24, 24, 5, 40 * m, m / 2, 0.9, false},
		{"200 piles/too few pieces/rules", 200, 200, 8, 60 * m, m / 10, 0.97, true},
		{"5000 piles/40 needs/too few pieces/rules", 5000, 40, 8, 60 * m, m / 10, 0.9, true},
		{"5000 piles/all different/too few pieces/rules", 5000, 5000, 8, 60 * m, m / 10, 0.8, true},
		{"200 piles/not a piece to spare", 200, 200, 8, 60 * m, m / 2, 1, false},
	}
}

// draw makes each pile up once with random costs of the pieces; the stock is what
// that takes, and some more.
func (b bigJob) draw(seed int64) ([]JobPile, []Piece, JobTerms) {
	rnd := rand.New(rand.NewSource(seed))
	stock := make([]Piece, b.lines)
	for i := range stock {
		stock[i] = Piece{Length: (5*m + rnd.Int63n(10*m)) / b.grid * b.grid}
	}
	kinds := make([]JobPile, b.kinds)
	for i := range kinds {
		p := JobPile{Need: b.deep/2 + rnd.Int63n(b.deep/2), MaxPieces: 12}
		if b.rules {
			p.Rules = JointRules{Toe: -10, Cutoff: Metres(p.Need) - 11, Clear: 0.5, Last: 2, NoJoint: []Stratum{{Top: -5, Bottom: -7}}}
		}
		kinds[i] = p
	}
	piles := make([]JobPile, b.piles)
	for i := range piles {
		p := kinds[rnd.Intn(b.kinds)]
		dear := make([]Piece, b.lines)
		for i := range dear {
			dear[i] = Piece{Length: stock[i].Length, Count: Unlimited, Extra: rnd.Int63n(3 * m)}
		}
		some, err := p.Rules.Best(p.Need, dear, Terms{JointPrice: m, MaxPieces: 12})
		if err != nil {
			panic(err)
		}
		for line, n := range some.Counts {
			stock[line].Count += n
		}
		piles[i] = p
	}
	for i := range stock {
		stock[i].Count = int(float64(stock[i].Count) * b.spare)
	}
	return piles, stock, JobTerms{JointPrice: m}
}

// At the size of a site the order cannot be checked by trying; the bound says how
// good it is. A stock that can do it is not found wanting, and one that is too
// small is.
func TestOrderAtRealSizes(t *testing.T) {
	for _, b := range bigJobs() {
		piles, stock, terms := b.draw(1)
		o, err := OrderList(piles, stock, terms)
		require.NoError(t, err)
		assert.Equal(t, b.spare < 1, o.Missing > 0, b.name)
		assert.Equal(t, b.spare < 1, o.Lacking, b.name)
		if b.spare >= 1 {
			assert.LessOrEqual(t, float64(o.Gap()), 0.02, b.name)
		}
		t.Logf("%s: cost %.1f m, bound %.1f m, gap %.2f %%", b.name, float64(o.Cost)/m, float64(o.Bound)/m, 100*float64(o.Gap()))
		taken := make([]int, len(stock))
		for i, p := range o.Piles {
			require.NoError(t, p.Err)
			require.GreaterOrEqual(t, p.Makeup.Total, piles[i].Need)
			require.Empty(t, broken(piles[i].Rules, stock, p.Makeup.Sequence))
			for line, n := range p.Makeup.Counts {
				taken[line] += n
			}
		}
		missing := 0
		for line, n := range taken {
			require.Equal(t, n, o.Lines[line].Taken)
			missing += max(0, n-stock[line].Count)
		}
		require.Equal(t, missing, o.Missing)
	}
}

// The example: its piles, from the stock as it stands, which is ample, and from
// ever fewer pieces, down to what no order can do.
func TestOrderOfTheExample(t *testing.T) {
	text, err := os.ReadFile("../../examples/quay-shed.json")
	require.NoError(t, err)
	var file struct {
		Now struct {
			Rigs      map[string]struct{ GripHeight, FollowerTravel string }
			Stock     map[string]struct{ Length, Count string }
			PileTypes map[string]struct{ Bars string }
			Piles     map[string]struct{ Type, Rig, Platform, Founding, Cutoff string }
		}
	}
	require.NoError(t, json.Unmarshal(text, &file))
	length := func(text string) quantity.Length {
		if text == "" {
			return 0
		}
		v, err := strconv.ParseFloat(strings.TrimSuffix(text, " m"), 64)
		require.NoError(t, err)
		return quantity.Length(v)
	}
	var piles []JobPile
	for _, id := range slices.Sorted(maps.Keys(file.Now.Piles)) {
		p := file.Now.Piles[id]
		rig := file.Now.Rigs[p.Rig]
		head, err := HeadAtSet(length(p.Cutoff), length(file.Now.PileTypes[p.Type].Bars), length(p.Platform), length(rig.GripHeight), length(rig.FollowerTravel))
		require.NoError(t, err)
		need, err := Need(head, length(p.Founding))
		require.NoError(t, err)
		tenths, err := NeedTenths(need)
		require.NoError(t, err)
		piles = append(piles, JobPile{Need: tenths, MaxPieces: DefaultPieces})
	}
	require.Len(t, piles, 8)
	var stock []Piece
	for _, id := range slices.Sorted(maps.Keys(file.Now.Stock)) {
		count, err := strconv.Atoi(file.Now.Stock[id].Count)
		require.NoError(t, err)
		tenths, err := PieceTenths(length(file.Now.Stock[id].Length))
		require.NoError(t, err)
		stock = append(stock, Piece{Length: tenths, Count: count})
	}
	terms := JobTerms{JointPrice: DefaultJoint}
	o, err := OrderList(piles, stock, terms)
	require.NoError(t, err)
	cost := int64(0)
	for _, p := range piles {
		best, err := Best(p.Need, stock, Terms{JointPrice: DefaultJoint, MaxPieces: p.MaxPieces})
		require.NoError(t, err)
		cost += best.Cost
	}
	assert.Equal(t, cost, o.Cost, "each has its own best")
	lacking := 0
	for take := 0; take <= 14; take++ {
		less := slices.Clone(stock)
		for i := range less {
			less[i].Count = max(0, less[i].Count-take)
		}
		o, err := OrderList(piles, less, terms)
		require.NoError(t, err)
		assert.True(t, o.Proven(), "%d fewer of each: cost %d, bound %d", take, o.Cost, o.Bound)
		assert.Equal(t, o.Missing > 0, o.Lacking, "%d fewer of each", take)
		if o.Missing == 0 {
			assert.GreaterOrEqual(t, o.Cost, cost, "fewer pieces never cost less")
			cost = o.Cost
		} else {
			lacking++
		}
	}
	assert.Greater(t, lacking, 5)
}

// The least costs of jobs of [bigJob.draw] by an integer programme that lists, for
// each need, every make-up from which no piece can be left, with a variable for
// how many piles take it: proven optima of COIN-OR CBC 2.10.8 (coinor-cbc of
// Debian 12), computed outside and written down here.
func TestOrderAgainstAnIntegerProgramme(t *testing.T) {
	proven := 0
	optima := published.Worked("least costs of orders, proven by COIN-OR CBC 2.10.8")
	for at, c := range []struct {
		job   bigJob
		costs []int64 // of seeds 0, 1, ...; 0: not proven there
	}{
		{bigJob{"", 24, 24, 5, 40 * m, m / 2, 1.2, false}, []int64{579655, 678400, 588953, 0, 516331, 728350}},
		{bigJob{"", 24, 24, 8, 60 * m, m / 2, 1.05, false}, []int64{0, 0, 679252, 0, 810654, 793142}},
		{bigJob{"", 60, 4, 6, 40 * m, m / 2, 1, false}, []int64{1179727, 1743964, 1271152, 1281867, 1471386, 1747682}},
		{bigJob{"", 24, 24, 6, 40 * m, m / 10, 1.02, false}, []int64{540166, 563557, 579786, 541438, 589952, 590683}},
		{bigJob{"", 12, 12, 5, 40 * m, 1, 1, false}, []int64{338577, 423640, 322345, 375641, 312687, 277907}},
		{bigJob{"", 200, 20, 6, 40 * m, m / 10, 1.01, false}, []int64{4284303, 4640559, 0, 4408045, 0, 4928438}},
	} {
		for seed, cost := range c.costs {
			if cost == 0 {
				continue
			}
			piles, stock, terms := c.job.draw(int64(seed))
			o, err := OrderList(piles, stock, terms)
			require.NoError(t, err)
			require.Zero(t, o.Missing)
			assert.LessOrEqual(t, o.Bound, cost, "%v seed %d", c.job, seed)
			assert.GreaterOrEqual(t, o.Cost, cost, "%v seed %d", c.job, seed)
			whole(t, optima.At("job "+strconv.Itoa(at+1)), "seed "+strconv.Itoa(seed)+" [0.1 mm]", cost, o.Cost)
			if o.Proven() {
				proven++
			}
		}
	}
	assert.Greater(t, proven, 18)
}

// The same job gives the same order every time.
func TestOrderIsTheSameEveryTime(t *testing.T) {
	piles, stock, terms := bigJobs()[1].draw(2)
	first, err := OrderList(piles, stock, terms)
	require.NoError(t, err)
	again, err := OrderList(piles, stock, terms)
	require.NoError(t, err)
	assert.Equal(t, first, again)
}
