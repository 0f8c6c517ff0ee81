package segment_test

import (
	"math"
	"math/rand"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/quantity"
	. "gaugewright/calc/segment"
	"gaugewright/calc/working"
)

// near is what counts as equal where levels are compared in m: far below the
// slack of the package, far above the last bits.
const near = 1e-8

// joints returns the joint levels of a sequence of stock lines, from the toe up.
func joints(toe quantity.Length, stock []Piece, sequence []int) (levels []float64) {
	z := float64(toe)
	for _, line := range sequence[:len(sequence)-1] {
		z += float64(stock[line].Length) / m
		levels = append(levels, z)
	}
	return levels
}

// broken says by the words of the rules, level by level, what a sequence breaks:
// "" for nothing. It shares nothing with the search.
func broken(r JointRules, stock []Piece, sequence []int) string {
	return brokenAbove(0, r, stock, sequence)
}

// brokenAbove asks only the pieces above so many, and the joints above those.
func brokenAbove(pressed int, r JointRules, stock []Piece, sequence []int) string {
	for at, line := range sequence {
		if at < pressed {
			continue
		}
		first, last := at == 0, at == len(sequence)-1
		switch stock[line].Role {
		case Starter:
			if !first {
				return "roles"
			}
		case Top:
			if !last {
				return "roles"
			}
		case Middle:
			if first || last {
				return "roles"
			}
		case EitherEnd:
			if !first && !last {
				return "roles"
			}
		}
	}
	cut := float64(r.Cutoff)
	for at, z := range joints(r.Toe, stock, sequence) {
		if at < pressed {
			continue
		}
		toe := float64(r.SpliceAt) - (z - float64(r.Toe))
		switch {
		case math.Abs(z-cut) < float64(r.Clear)-near:
			return "clear"
		case z < cut-near && cut-z < float64(r.Last)-near:
			return "last"
		case z > cut-near && z < cut+float64(r.Bars)-near:
			return "bars"
		}
		for _, s := range r.NoJoint {
			if z > float64(s.Bottom)-near && z < float64(s.Top)+near {
				return "noJoint"
			}
		}
		for _, s := range r.NoStop {
			if toe > float64(s.Bottom)-near && toe < float64(s.Top)+near {
				return "noStop"
			}
		}
		for _, n := range r.Neighbours {
			if math.Abs(z-float64(n)) < float64(r.Stagger)-near {
				return "stagger"
			}
		}
	}
	return ""
}

// laidByTrying tries every sequence of pieces.
type laidByTrying struct {
	counts, sequence []int
	cost             int64
}

func byLaying(need int64, stock []Piece, terms Terms, r JointRules) *laidByTrying {
	return byLayingOn(nil, need, stock, terms, r)
}

// byLayingOn lays the rest of a pile on pieces that are in the ground; counts,
// sequence and cost are those of the rest.
func byLayingOn(pressed []int, need int64, stock []Piece, terms Terms, r JointRules) (best *laidByTrying) {
	counts := make([]int, len(stock))
	sequence, below := slices.Clone(pressed), int64(0)
	for _, line := range pressed {
		below += stock[line].Length
	}
	var lay func(sum, extra int64)
	lay = func(sum, extra int64) {
		if sum >= need {
			if brokenAbove(len(pressed), r, stock, sequence) != "" {
				return
			}
			rest := slices.Clone(sequence[len(pressed):])
			c := laidByTrying{slices.Clone(counts), rest, sum - need + extra + terms.JointPrice*int64(len(rest)-1)}
			better := best == nil
			if best != nil {
				order := []int{int(best.cost - c.cost), len(best.sequence) - len(c.sequence), slices.Compare(c.counts, best.counts), slices.Compare(best.sequence, c.sequence)}
				for _, o := range order {
					if o != 0 {
						better = o > 0
						break
					}
				}
			}
			if better {
				best = &c
			}
			return
		}
		if len(sequence)-len(pressed) == terms.MaxPieces {
			return
		}
		for i, p := range stock {
			if p.Count != Unlimited && counts[i] == p.Count {
				continue
			}
			counts[i]++
			sequence = append(sequence, i)
			lay(sum+p.Length, extra+p.Extra)
			sequence = sequence[:len(sequence)-1]
			counts[i]--
		}
	}
	lay(below, 0)
	return best
}

// someRules draws a small pile with each rule in turn or together, all on a grid
// of 0.1 m.
func someRules(rnd *rand.Rand) (need int64, stock []Piece, terms Terms, r JointRules) {
	at := func(low, high int) quantity.Length { return quantity.Length(float64(low+rnd.Intn(high-low)) / 10) }
	need = int64(10+rnd.Intn(60)) * m / 10
	stock = make([]Piece, 1+rnd.Intn(4))
	dear := rnd.Intn(3) == 0
	roles := rnd.Intn(3) == 0
	for i := range stock {
		stock[i] = Piece{Length: int64(5+rnd.Intn(30)) * m / 10, Count: rnd.Intn(5) - 1}
		if i > 0 && rnd.Intn(5) == 0 {
			stock[i].Length = stock[i-1].Length
		}
		if dear {
			stock[i].Extra = int64(rnd.Intn(4)) * m / 10
		}
		if roles {
			stock[i].Role = Role(rnd.Intn(int(EitherEnd) + 1))
		}
	}
	terms = Terms{JointPrice: int64(rnd.Intn(3)) * m / 2, MaxPieces: 1 + rnd.Intn(5)}
	r.Toe = at(-50, 50)
	r.Cutoff = r.Toe + quantity.Length(float64(need)/m) - at(0, 15)
	r.SpliceAt = r.Cutoff + at(-10, 30)
	for kind := range 6 {
		if rnd.Intn(3) > 0 {
			continue
		}
		switch kind {
		case 0:
			r.Clear = at(1, 12)
		case 1:
			r.Last = at(1, 25)
		case 2:
			r.Bars = at(1, 10)
		case 3:
			for range 1 + rnd.Intn(2) {
				bottom := r.Toe + at(0, 60)
				r.NoJoint = append(r.NoJoint, Stratum{Top: bottom + at(0, 15), Bottom: bottom})
			}
		case 4:
			bottom := r.Toe + at(-10, 60)
			r.NoStop = append(r.NoStop, Stratum{Top: bottom + at(0, 15), Bottom: bottom})
		case 5:
			r.Stagger = at(1, 12)
			for range rnd.Intn(4) {
				r.Neighbours = append(r.Neighbours, r.Toe+at(0, 60))
			}
		}
	}
	return need, stock, terms, r
}

func TestRulesAgainstTryingAll(t *testing.T) {
	rnd := rand.New(rand.NewSource(11))
	solved, refused := 0, map[string]int{}
	for range 30000 {
		need, stock, terms, r := someRules(rnd)
		want := byLaying(need, stock, terms, r)
		got, err := r.Best(need, stock, terms)
		if want == nil {
			var e *InputError
			require.ErrorAs(t, err, &e)
			refused[e.Code]++
			for _, s := range e.Stops {
				require.NotEmpty(t, s.Makeup.Sequence, "%v", s)
			}
			_, err = r.BestByTable(need, stock, terms)
			require.Error(t, err)
			continue
		}
		solved++
		require.NoError(t, err, "%d %v %v %+v: %v", need, stock, terms, r, want)
		require.Equal(t, want.counts, got.Counts, "%d %v %v %+v", need, stock, terms, r)
		require.Equal(t, want.sequence, got.Sequence, "%d %v %v %+v", need, stock, terms, r)
		require.Equal(t, want.cost, got.Cost)
		table, err := r.BestByTable(need, stock, terms)
		require.NoError(t, err)
		require.Equal(t, want.sequence, table.Sequence, "%d %v %v %+v", need, stock, terms, r)

		c, err := r.Alternatives(need, stock, terms)
		require.NoError(t, err)
		require.Equal(t, got.Sequence, c.Best.Sequence)
		free := slices.Clone(stock)
		for i := range free {
			free[i].Extra = 0
		}
		require.Equal(t, byLaying(need, free, Terms{MaxPieces: terms.MaxPieces}, r).sequence, c.LeastOffCut.Sequence)
		require.Equal(t, byLaying(need, stock, Terms{JointPrice: 1000 * m, MaxPieces: terms.MaxPieces}, r).sequence, c.FewestJoints.Sequence)
	}
	t.Log(solved, refused)
	assert.Greater(t, solved, 8000)
	for _, rule := range []string{"clear", "last", "bars", "noJoint", "noStop", "stagger", "most", "roles", "several"} {
		assert.Greater(t, refused["segment.stopped."+rule], 5, rule)
	}
}

// The rest of a pile on what is in the ground: what all orders of the whole pile
// give that begin with these pieces.
func TestPressedAgainstTryingAll(t *testing.T) {
	rnd := rand.New(rand.NewSource(17))
	solved, ruled := 0, 0
	for range 20000 {
		need, stock, terms, r := someRules(rnd)
		var pressed []int
		length := int64(0)
		for range 1 + rnd.Intn(2) {
			line := rnd.Intn(len(stock))
			pressed, length = append(pressed, line), length+stock[line].Length
		}
		if length >= need {
			continue
		}
		want := byLayingOn(pressed, need, stock, terms, r)
		got, err := r.Pressed(length).Best(need-length, stock, terms)
		table, failed := r.Pressed(length).BestByTable(need-length, stock, terms)
		if want == nil {
			require.Error(t, err, "%v on %v: %d %v %v %+v", got, pressed, need, stock, terms, r)
			require.Error(t, failed)
			continue
		}
		require.NoError(t, err, "%v on %v: %d %v %v %+v", want, pressed, need, stock, terms, r)
		require.NoError(t, failed)
		require.Equal(t, want.sequence, got.Sequence, "on %v: %d %v %v %+v", pressed, need, stock, terms, r)
		require.Equal(t, want.sequence, table.Sequence)
		require.Equal(t, want.cost, got.Cost)
		for _, c := range r.Pressed(length).Checks(stock, got) {
			hold(t, c.Rule, 1, c.Inputs...)
		}
		solved++
		if free, _ := Best(need-length, stock, terms); !slices.Equal(free.Sequence, got.Sequence) {
			ruled++
		}
	}
	assert.Greater(t, solved, 3000)
	assert.Greater(t, ruled, 500)
}

// Every rule at its edges: a starter of which the joint is meant, and a top of
// 20 m. The joint is asked just at the edge, a tenth of a millimetre to either
// side, with the datum so that all levels are above it, all below, and between.
// By hand: toe 0, cut-off 10, head 11 m.
func TestEveryRuleAtItsEdges(t *testing.T) {
	for _, c := range []struct {
		rule  string
		joint float64 // height of the edge above the toe
		r     JointRules
		below string // which of below, at and above the edge are kept
	}{
		{"clear", 9.5, JointRules{Clear: 0.5}, "yyn"},
		{"clear", 10.5, JointRules{Clear: 0.5}, "nyy"},
		{"last", 8, JointRules{Last: 2}, "yyn"},
		{"last", 10, JointRules{Last: 2}, "nyy"}, // goes with the cut
		{"bars", 10, JointRules{Bars: 0.6}, "ynn"},
		{"bars", 10.6, JointRules{Bars: 0.6}, "nyy"},
		{"noJoint", 4, JointRules{NoJoint: []Stratum{{Top: 5, Bottom: 4}}}, "ynn"},
		{"noJoint", 5, JointRules{NoJoint: []Stratum{{Top: 5, Bottom: 4}}}, "nny"},
		{"noJoint", 5, JointRules{NoJoint: []Stratum{{Top: 5, Bottom: 5}}}, "yny"},
		// Splices at 12: with 7 m in the ground the toe is at 5, with 8 at 4.
		{"noStop", 7, JointRules{SpliceAt: 12, NoStop: []Stratum{{Top: 5, Bottom: 4}}}, "ynn"},
		{"noStop", 8, JointRules{SpliceAt: 12, NoStop: []Stratum{{Top: 5, Bottom: 4}}}, "nny"},
		{"stagger", 5.5, JointRules{Stagger: 0.5, Neighbours: []quantity.Length{6}}, "yyn"},
		{"stagger", 6.5, JointRules{Stagger: 0.5, Neighbours: []quantity.Length{6}}, "nyy"},
		{"stagger", 6.5, JointRules{Stagger: 0.5, Neighbours: []quantity.Length{6, 7}}, "nyn"}, // between two
	} {
		for _, datum := range []quantity.Length{0, -5, -10, -200, 200, 0.3} {
			r := c.r
			r.Cutoff = 10
			for _, z := range []*quantity.Length{&r.Toe, &r.Cutoff, &r.SpliceAt} {
				*z += datum
			}
			shift := func(list []Stratum) (moved []Stratum) {
				for _, s := range list {
					moved = append(moved, Stratum{Top: s.Top + datum, Bottom: s.Bottom + datum})
				}
				return moved
			}
			r.NoJoint, r.NoStop, r.Neighbours = shift(r.NoJoint), shift(r.NoStop), slices.Clone(r.Neighbours)
			for i := range r.Neighbours {
				r.Neighbours[i] += datum
			}
			got := ""
			for _, off := range []int64{-1, 0, 1} {
				stock := []Piece{{Length: int64(c.joint*m+0.5) + off, Count: 1, Role: Starter}, {Length: 20 * m, Count: 1, Role: Top}}
				stock[1].Length = 11*m + 5000 - stock[0].Length // not without the starter
				_, err := r.Best(11*m, stock, Terms{MaxPieces: 2})
				if err == nil {
					got += "y"
					continue
				}
				got += "n"
				expect(t, err, "segment.stopped."+c.rule)
			}
			assert.Equal(t, c.below, got, "%s at %v, datum %v", c.rule, c.joint, datum)
		}
	}
}

// By hand, levels in m: toe -10.00, cut-off +8.00, need 19.0 m (head at +9.00).
// Stock 12, 9, 7 and 4 m; a joint is worth 1 m.
func TestRulesByHand(t *testing.T) {
	stock := lengths(Unlimited, 12, 9, 7, 4)
	terms := Terms{JointPrice: m, MaxPieces: 5}
	plain := JointRules{Toe: -10, Cutoff: 8}
	at := func(r JointRules) ([]int, float64) {
		best, err := r.Best(190000, stock, terms)
		require.NoError(t, err)
		return best.Sequence, float64(Metres(best.OffCut))
	}
	// Without rules 12 + 7 = 19 exactly, joint at +2.00.
	seq, off := at(plain)
	assert.Equal(t, []int{0, 2}, seq)
	assert.Zero(t, off)

	// Joint at +2.00 is 6.00 below cut-off. With 6.50 to keep, 7 + 12 does:
	// joint at -3.00.
	r := plain
	r.Last = 6.5
	seq, _ = at(r)
	assert.Equal(t, []int{2, 0}, seq)
	r.Last = 6 // kept exactly
	seq, _ = at(r)
	assert.Equal(t, []int{0, 2}, seq)
	r.Last, r.Clear = 0, 6
	seq, _ = at(r)
	assert.Equal(t, []int{0, 2}, seq)
	r.Clear = 6.01
	seq, _ = at(r)
	assert.Equal(t, []int{2, 0}, seq)

	// Both joints out: a stratum over -3.00, one over +2.00. Then 9 + 12 = 21:
	// joint at -1.00, 2.0 over. 12 + 9 has its joint at +2.00 too. Three pieces
	// cost one more joint: 4 + 7 + 9 = 20 (joints -6.00, +1.00) is 1.0 over and
	// 3.0 in all, as dear as 2.0 + 1.0, and has more joints.
	r = plain
	r.NoJoint = []Stratum{{Top: -3, Bottom: -4}, {Top: 3, Bottom: 2}} // boundaries belong to it
	seq, off = at(r)
	assert.Equal(t, []int{1, 0}, seq)
	assert.Equal(t, 2.0, off)

	// Splices at +3.00: with 12 in the ground the toe is at -9.00, with 7 at
	// -4.00.
	r = plain
	r.SpliceAt, r.NoStop = 3, []Stratum{{Top: -8.5, Bottom: -9.5}}
	seq, _ = at(r)
	assert.Equal(t, []int{2, 0}, seq)
	r.NoStop = append(r.NoStop, Stratum{Top: -4, Bottom: -4})
	seq, _ = at(r)
	assert.Equal(t, []int{1, 0}, seq) // toe at -6.00

	// A neighbour with a joint at +1.60: 0.40 away. Stagger 0.5 m turns the pile.
	r = plain
	r.Neighbours, r.Stagger = []quantity.Length{1.6}, 0.5
	seq, _ = at(r)
	assert.Equal(t, []int{2, 0}, seq)
	r.Stagger = 0.4 // kept exactly
	seq, _ = at(r)
	assert.Equal(t, []int{0, 2}, seq)

	// Bars of 1.2 m above cut-off, head at +10.00, need 20 m: 9 + 9 + 4 = 22
	// would have its upper joint at +8.00, in the bars; 12 + 9 = 21 costs 2.0.
	r = plain
	r.Bars = 1.2
	best, err := r.Best(20*m, stock[1:2], terms)
	assert.Equal(t, Makeup{}, best)
	expect(t, err, "segment.stopped.bars")

	// The 12 is a top: 7 + 12. The 7 is the only starter, the 12 a middle
	// piece: nothing may stand last but 9 and 4.
	roles := slices.Clone(stock)
	roles[0].Role = Top
	best, err = plain.Best(190000, roles, terms)
	require.NoError(t, err)
	assert.Equal(t, []int{2, 0}, best.Sequence)
	roles[0].Role, roles[2].Role = Middle, Starter
	best, err = plain.Best(190000, roles, terms)
	require.NoError(t, err)
	// 9 + 9 = 18 is short; 7 + 12 needs a last piece, and its joint would be at
	// the head. 4 + 12 + 4 and 7 + 9 + 4 are 20 and cost 3.0; the former takes
	// more of the first line. 7 + 4 + 4 + 4 = 19 costs 3.0 with a joint more.
	assert.Equal(t, []int{3, 0, 3}, best.Sequence)
	whole(t, byHand, "19 m with a middle 12 and a starter 7: cost [0.1 mm]", 30000, best.Cost)
	assert.Equal(t, []int64{40000, 160000}, best.Heights(roles))
	assert.Equal(t, quantity.Length(-6), plain.Level(40000))
}

func TestWhatStopsByHand(t *testing.T) {
	// Two of 12 m only: joint 12 m above the toe, at +2.00.
	stock := lengths(2, 12)
	terms := Terms{JointPrice: m, MaxPieces: 4}
	r := JointRules{Toe: -10, Cutoff: 8, Last: 7, Clear: 1}
	_, err := r.Best(19*m, stock, terms)
	expect(t, err, "segment.stopped.last")
	e := err.(*InputError)
	assert.Len(t, e.Stops, 1)
	assert.Equal(t, []float64{24, 5}, []float64{e.Value, e.Limit})
	assert.Equal(t, []int{0, 0}, e.Stops[0].Makeup.Sequence)

	r.NoJoint = []Stratum{{Top: 20, Bottom: 19}, {Top: 2.5, Bottom: 1.5}}
	_, err = r.Best(19*m, stock, terms)
	expect(t, err, "segment.stopped.several")
	r.Last = 0
	_, err = r.Best(19*m, stock, terms)
	expect(t, err, "segment.stopped.noJoint")
	assert.Equal(t, 1, err.(*InputError).Line, "the second stratum")

	// Joints at +2.00 and +8.00 or +8.50 with 12, 6 and 6.5 m, 24 m needed: of
	// three pieces the middle one is pinned by the stratum.
	r = JointRules{Toe: -10, Cutoff: 13, NoJoint: []Stratum{{Top: 3, Bottom: -9.5}}}
	_, err = r.Best(24*m, lengths(Unlimited, 14, 9), Terms{JointPrice: m, MaxPieces: 2})
	require.NoError(t, err) // 14 + 14
	_, err = r.Best(24*m, lengths(Unlimited, 12), Terms{JointPrice: m, MaxPieces: 2})
	expect(t, err, "segment.stopped.noJoint")

	// 30 m of 6 and 12 m with 12 m forbidden below the head: with two joints
	// 12 + 12 + 6 in any order has a joint at 12 or 18; 6 x 5 goes by 6, 12 ...
	r = JointRules{Toe: 0, Cutoff: 30, NoJoint: []Stratum{{Top: 12, Bottom: 12}}}
	_, err = r.Best(30*m, lengths(Unlimited, 12, 9, 3), Terms{JointPrice: m, MaxPieces: 3})
	require.NoError(t, err) // 9 + 12 + 9
	r.NoJoint = []Stratum{{Top: 12, Bottom: 9}}
	_, err = r.Best(30*m, lengths(Unlimited, 12, 9, 3), Terms{JointPrice: m, MaxPieces: 3})
	expect(t, err, "segment.stopped.noJoint")
	best, err := r.Best(30*m, lengths(Unlimited, 12, 9, 3), Terms{JointPrice: m, MaxPieces: 4})
	require.NoError(t, err) // 3 + 12 + 12 + 3
	assert.Equal(t, []int{2, 0, 0, 2}, best.Sequence)
	r.NoJoint = []Stratum{{Top: 14, Bottom: 13}, {Top: 12, Bottom: 9}, {Top: 8.5, Bottom: 2}}
	_, err = r.Best(30*m, lengths(Unlimited, 12, 9, 3), Terms{JointPrice: m, MaxPieces: 4})
	expect(t, err, "segment.stopped.noJoint")
}

// The rule that is named is one without which there is a make-up, the make-up
// beside it is the best then, and no rule without which there is one is missed.
func TestWhatStopsAgainstTryingAll(t *testing.T) {
	rnd := rand.New(rand.NewSource(12))
	seen := map[string]int{}
	for range 20000 {
		need, stock, terms, r := someRules(rnd)
		_, err := r.Best(need, stock, terms)
		e, ok := err.(*InputError)
		if !ok || e.Stops == nil {
			continue
		}
		listed := map[string]*Makeup{}
		for i, s := range e.Stops {
			listed[s.Rule+string(rune('a'+s.Stratum+1))] = &e.Stops[i].Makeup
			seen[s.Rule]++
			require.GreaterOrEqual(t, s.Makeup.Cost, e.Stops[0].Makeup.Cost)
		}
		require.Equal(t, e.Stops[0].Rule, e.Code)
		ask := func(rule string, stratum int, without JointRules, stock []Piece, by Terms) bool {
			want := byLaying(need, stock, by, without)
			got := listed[rule+string(rune('a'+stratum+1))]
			if want == nil {
				require.Nil(t, got, rule)
				return false
			}
			require.NotNil(t, got, "%s %d %v %v %+v %v", rule, need, stock, terms, r, e)
			require.Equal(t, want.sequence, got.Sequence)
			return true
		}
		any := false
		for _, c := range []struct {
			rule string
			lift func(*JointRules)
		}{
			{"clear", func(r *JointRules) { r.Clear = 0 }}, {"last", func(r *JointRules) { r.Last = 0 }},
			{"bars", func(r *JointRules) { r.Bars = 0 }}, {"stagger", func(r *JointRules) { r.Stagger = 0 }},
		} {
			w := r
			c.lift(&w)
			any = ask("segment.stopped."+c.rule, -1, w, stock, terms) || any
		}
		one := false
		for i := range r.NoJoint {
			w := r
			w.NoJoint = slices.Delete(slices.Clone(r.NoJoint), i, i+1)
			one = ask("segment.stopped.noJoint", i, w, stock, terms) || one
		}
		if w := r; !one && len(r.NoJoint) > 1 {
			w.NoJoint = nil
			one = ask("segment.stopped.noJoint", -1, w, stock, terms)
		}
		if w := r; len(r.NoStop) > 0 {
			w.NoStop = nil
			any = ask("segment.stopped.noStop", 0, w, stock, terms) || any
		}
		free := slices.Clone(stock)
		for i := range free {
			free[i].Role = Anywhere
		}
		any = ask("segment.stopped.roles", -1, r, free, terms) || one || any
		if len(stock) < 4 && need < 4*m { // 20 pieces are many to try
			more := Terms{terms.JointPrice, DefaultPieces}
			any = ask("segment.stopped.most", -1, r, stock, more) || any
			require.Equal(t, !any, e.Code == "segment.stopped.several")
		}
	}
	assert.Len(t, seen, 9, "%v", seen)
}

// Every statement that is shown about a make-up is true, by the evaluator of
// package working, and is not true of the joint one step into what is banned.
func TestChecksAreTrue(t *testing.T) {
	rnd := rand.New(rand.NewSource(13))
	kinds := map[string]int{}
	for range 5000 {
		need, stock, terms, r := someRules(rnd)
		// Off the grid of 0.1 mm, as levels in feet are.
		for _, z := range []*quantity.Length{&r.Toe, &r.Cutoff, &r.Clear, &r.Last, &r.SpliceAt} {
			*z *= 0.99937
		}
		best, err := r.Best(need, stock, terms)
		if err != nil {
			continue
		}
		require.Empty(t, broken(r, stock, best.Sequence))
		hold(t, MostRule, 1, float64(best.Pieces), float64(terms.MaxPieces-1))
		var sum []float64
		for at, line := range best.Sequence[:best.Pieces-1] {
			sum = append(sum, float64(Metres(stock[line].Length)))
			height := best.Heights(stock)[at]
			hold(t, JointLevelRule(at+1), float64(r.Level(height)), append([]float64{float64(r.Toe)}, sum...)...)
			hold(t, StopToeRule(at+1), float64(r.ToeAtStop(height)), append([]float64{float64(r.SpliceAt)}, sum...)...)
		}
		for _, c := range r.Checks(stock, best) {
			kinds[c.Rule.Key]++
			hold(t, c.Rule, 1, c.Inputs...)
		}
	}
	require.Len(t, kinds, 7, "%v", kinds)
	hold(t, SpliceLevelRule, 13.4, 12.6, 0.8)
	hold(t, ShiftRule, 17.7, 17.2, 0.5)
	hold(t, ShiftRule, 16.2, 17.2, -1)

	for _, c := range []struct {
		rule   working.Rule
		inputs []float64
	}{
		{ClearRule, []float64{7.5001, 8, 0.5}}, {ClearRule, []float64{8.4999, 8, 0.5}}, {LastRule, []float64{8, 6.0001, 2}},
		{BelowBarsRule, []float64{8, 8}}, {AboveBarsRule, []float64{8.5999, 8, 0.6}}, {NoJointRule, []float64{-3, -3, -4}},
		{NoJointRule, []float64{-4, -3, -4}}, {NoStopRule, []float64{-3.5, -3, -4}}, {StaggerRule, []float64{1.9999, 1.5, 0.5}},
		{MostRule, []float64{5, 3}},
	} {
		require.Equal(t, 1.0, differs(t, c.rule, 1, c.inputs...), "%s is not true", c.rule.Key)
	}
}

// A rule left away never makes a pile dearer, nor does one more piece in stock.
func TestLessRulesNeverCostMore(t *testing.T) {
	rnd := rand.New(rand.NewSource(14))
	compared := 0
	for range 5000 {
		need, stock, terms, r := someRules(rnd)
		best, err := r.Best(need, stock, terms)
		if err != nil {
			continue
		}
		for _, lift := range []func(*JointRules){
			func(r *JointRules) { r.Clear /= 2 }, func(r *JointRules) { r.Last /= 2 }, func(r *JointRules) { r.Bars = 0 },
			func(r *JointRules) { r.NoJoint = nil }, func(r *JointRules) { r.NoStop = nil }, func(r *JointRules) { r.Stagger /= 2 },
		} {
			w := r
			lift(&w)
			less, err := w.Best(need, stock, terms)
			require.NoError(t, err)
			require.LessOrEqual(t, less.Cost, best.Cost)
			compared++
		}
		more := slices.Clone(stock)
		for i := range more {
			if more[i].Count != Unlimited {
				more[i].Count++
			}
		}
		less, err := r.Best(need, more, terms)
		require.NoError(t, err)
		require.LessOrEqual(t, less.Cost, best.Cost)
	}
	assert.Greater(t, compared, 5000)
}

func TestShifted(t *testing.T) {
	// 19.0 m of 12, 9, 7 and 4 m with cut-off at +8.00, 6.5 m to be kept in the
	// last piece: see TestRulesByHand. The joint moves with the toe.
	stock := lengths(Unlimited, 12, 9, 7, 4)
	terms := Terms{JointPrice: m, MaxPieces: 5}
	r := JointRules{Toe: -10, Cutoff: 8, Last: 6.5}
	list := r.Shifted(19*m, stock, terms)
	require.Len(t, list, 4)
	for i, c := range []struct {
		by  int64
		toe quantity.Length
	}{{-10000, -9}, {-5000, -9.5}, {5000, -10.5}, {10000, -11}} {
		require.Equal(t, c.by, list[i].By)
		w := r
		w.Toe = c.toe
		want, err := w.Best(19*m+c.by, stock, terms)
		require.NoError(t, err)
		require.NoError(t, list[i].Err)
		assert.Equal(t, want, list[i].Makeup)
	}
	// 20 m: 12 + 9 has its joint at -11 + 12 = +1.00, 7.0 m below cut-off; 1.0 over.
	assert.Equal(t, []int{0, 1}, list[3].Makeup.Sequence)
	assert.Equal(t, int64(10000), list[3].Makeup.OffCut)

	list = r.Shifted(6000, stock, terms) // 0.6 m: nothing is left of it 1 m higher
	expect(t, list[0].Err, "segment.need")
	assert.Empty(t, list[0].Makeup.Sequence)
	require.NoError(t, list[1].Err)
}

func TestRulesRefusals(t *testing.T) {
	stock, terms := lengths(Unlimited, 12), Terms{JointPrice: m, MaxPieces: 5}
	nan := quantity.Length(math.NaN())
	for _, c := range []struct {
		code, symbol string
		r            JointRules
	}{
		{"segment.notFinite", "Z_toe", JointRules{Toe: nan}}, {"segment.notFinite", "Z_c", JointRules{Cutoff: nan}},
		{"segment.negative", "x", JointRules{Clear: -0.1}}, {"segment.negative", "y", JointRules{Last: -0.1}},
		{"segment.negative", "l_p", JointRules{Bars: -0.1}}, {"segment.negative", "s", JointRules{Stagger: -0.1}},
		{"segment.tooLong", "Z_n", JointRules{Neighbours: []quantity.Length{10001}}},
		{"segment.tooLong", "Z_1", JointRules{NoJoint: []Stratum{{Top: 20000, Bottom: 1}}}},
		{"segment.stratum", "", JointRules{NoStop: []Stratum{{Top: 1, Bottom: 2}}}},
	} {
		_, err := c.r.Best(20*m, stock, terms)
		expect(t, err, c.code)
		assert.Equal(t, c.symbol, err.(*InputError).Symbol)
		_, err = c.r.Alternatives(20*m, stock, terms)
		expect(t, err, c.code)
	}
	stock[0].Role = EitherEnd + 1
	_, err := Best(20*m, stock, terms)
	expect(t, err, "segment.role")
}

// At the size of real piles not every order can be tried. Lengths are whole
// decimetres and unlimited here; then a table of what is cheapest for each
// height and number of pieces below gives the least cost. It shares nothing
// with the search.
func TestRealSizesWithRulesAgainstATable(t *testing.T) {
	const grid, never = m / 10, int64(1) << 60
	rnd := rand.New(rand.NewSource(15))
	solved, none := 0, 0
	for round := range 600 {
		stock := make([]Piece, 1+rnd.Intn(12))
		for i := range stock {
			stock[i] = Piece{Length: grid * int64(30+rnd.Intn(120)), Count: Unlimited}
			if round%3 == 0 {
				stock[i].Extra = int64(rnd.Intn(20000))
			}
			if round%4 == 0 {
				stock[i].Role = Role(rnd.Intn(int(EitherEnd) + 1))
			}
		}
		terms := Terms{JointPrice: int64(rnd.Intn(3) * rnd.Intn(15000)), MaxPieces: 1 + rnd.Intn(12)}
		need := 1 + rnd.Int63n(min(150, int64(terms.MaxPieces)*12)*m)
		r := heavyRules(rnd, need)

		free := func(h int) bool { return broken(r, []Piece{{Length: int64(h) * grid}}, []int{0, 0}) == "" }
		R := int((need + grid - 1) / grid) // heights below it are below the need
		cost := make([][]int64, terms.MaxPieces)
		least := never
		for k := range cost {
			cost[k] = make([]int64, R)
			for h := range cost[k] {
				cost[k][h] = never
			}
			for _, p := range stock {
				l := int(p.Length / grid)
				stands := func(first, last bool) bool {
					switch p.Role {
					case Starter:
						return first
					case Top:
						return last
					case Middle:
						return !first && !last
					case EitherEnd:
						return first || last
					}
					return true
				}
				for h := range R {
					below := never
					switch {
					case k == 0 && h == 0:
						below = 0
					case k > 0:
						below = cost[k-1][h]
					}
					if below == never {
						continue
					}
					if h+l >= R {
						if stands(k == 0, true) {
							least = min(least, below+p.Extra+int64(h+l)*grid-need+terms.JointPrice*int64(k))
						}
					} else if stands(k == 0, false) && free(h+l) {
						cost[k][h+l] = min(cost[k][h+l], below+p.Extra)
					}
				}
			}
		}
		got, err := r.Best(need, stock, terms)
		if least == never {
			require.Error(t, err)
			none++
			continue
		}
		require.NoError(t, err)
		require.Equal(t, least, got.Cost, "%d %v %v %+v", need, stock, terms, r)
		require.Empty(t, broken(r, stock, got.Sequence))
		solved++
	}
	assert.Greater(t, solved, 200)
	assert.Greater(t, none, 50)
}

// heavyRules puts every rule on a pile at once: two strata for joints, one for
// stops, and sixteen joints of neighbours.
func heavyRules(rnd *rand.Rand, need int64) JointRules {
	length := float64(need) / m
	somewhere := func() quantity.Length { return quantity.Length(-10 + rnd.Float64()*length) }
	head := quantity.Length(length - 10)
	r := JointRules{Toe: -10, Cutoff: head - 1, Clear: 0.5, Last: 2, Bars: 0.6, SpliceAt: head - 0.5, Stagger: 0.3}
	for range 2 {
		bottom := somewhere()
		r.NoJoint = append(r.NoJoint, Stratum{Top: bottom + quantity.Length(1+4*rnd.Float64()), Bottom: bottom})
	}
	bottom := somewhere()
	r.NoStop = append(r.NoStop, Stratum{Top: bottom + quantity.Length(1+2*rnd.Float64()), Bottom: bottom})
	for range 16 {
		r.Neighbours = append(r.Neighbours, somewhere())
	}
	return r
}

// Many lines with one or two pieces each and rules that few orders keep: states
// are met again by other ways, and make-ups without an order among them.
func TestRulesByTableAgainstTryingAll(t *testing.T) {
	rnd := rand.New(rand.NewSource(16))
	solved, laid := 0, 0
	for range 400 {
		stock := make([]Piece, 5+rnd.Intn(2))
		for i := range stock {
			stock[i] = Piece{Length: int64(5+rnd.Intn(5)) * m / 10, Count: 1 + rnd.Intn(2), Extra: int64(rnd.Intn(2)) * m / 10, Role: Role(rnd.Intn(9) / 5 * rnd.Intn(5))}
		}
		terms := Terms{JointPrice: int64(rnd.Intn(2)) * m / 10, MaxPieces: 6}
		need := int64(20+rnd.Intn(15)) * m / 10
		r := JointRules{}
		for range 8 {
			at := Metres(int64(5+rnd.Intn(30)) * m / 10)
			r.NoJoint = append(r.NoJoint, Stratum{Top: at, Bottom: at})
		}
		want := byLaying(need, stock, terms, r)
		got, err := r.BestByTable(need, stock, terms)
		if want == nil {
			require.Error(t, err)
			continue
		}
		require.NoError(t, err)
		require.Equal(t, want.sequence, got.Sequence, "%d %v %v %+v", need, stock, terms, r)
		solved++
		if free, _ := Best(need, stock, terms); free.Cost < got.Cost {
			laid++
		}
	}
	assert.Greater(t, solved, 100)
	assert.Greater(t, laid, 30)
}
