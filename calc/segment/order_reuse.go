package segment

import (
	"slices"
	"sort"
)

// Reuse says whether off-cuts are used again, and how. It is off unless asked for,
// which for prestressed piles a caller should not do by itself: their strands let
// go at a cut.
//
// An off-cut has a splice at one end at most, the head of the pile it was cut
// from, so it stands first or last in its next pile, never between ([EitherEnd]).
// It is there once its pile is cut: it goes into a pile of a later stage only. It
// is used once.
type Reuse struct {
	On    bool
	Least int64 // the shortest off-cut that is kept [0.1 mm]
	Loss  int64 // of each, for the saw and a sound end [0.1 mm]
}

// Reused is an off-cut that is used again.
type Reused struct {
	From, To int   // piles
	Line     int   // of [Order.Stock]
	Length   int64 // [0.1 mm]
}

// How many off-cuts are tried: different lengths in one pile, the longest first;
// and in all piles, each try counted by the words of its reach, which take the time.
const (
	mostTried   = 24
	reuseEffort = 150000000
	eachTry     = 20000
)

// reuse takes the piles stage by stage and lets each use the one off-cut of
// earlier stages that saves most: with the off-cut in it, and the rest of it from
// the pieces that are left, it costs less than before by more than nothing, the
// off-cut itself being paid for already. It returns the off-cuts and what they
// save. It is quick and safe, not exact: an off-cut might do better elsewhere, and
// on a large job the last piles may not be tried.
func (y *yard) reuse(lines int) (list []Reused, saved int64) {
	turn := make([]int, 0, len(y.piles))
	for i := range y.piles {
		if y.order[i] != nil {
			turn = append(turn, i)
		}
	}
	sort.SliceStable(turn, func(i, j int) bool { return y.piles[turn[i]].Stage < y.piles[turn[j]].Stage })

	var kept []Reused // off-cuts at hand, the longest first
	cut := 0          // so many piles of turn are cut
	for _, i := range turn {
		for ; y.piles[turn[cut]].Stage < y.piles[i].Stage; cut++ {
			if length := y.offCut(turn[cut]); length >= max(1, y.terms.Reuse.Least) {
				kept = append(kept, Reused{From: turn[cut], Length: length})
			}
		}
		sort.SliceStable(kept, func(i, j int) bool { return kept[j].Length < kept[i].Length })
		best, order, most := -1, []int(nil), int64(0)
		y.move(y.order[i], 1)
		for at, tried := 0, 0; at < len(kept) && tried < mostTried && y.effort > 0; at++ {
			if at > 0 && kept[at].Length == kept[at-1].Length {
				continue
			}
			tried++
			if o, saves := y.withOffCut(i, kept[at].Length); saves > most {
				best, order, most = at, o, saves
			}
		}
		if best >= 0 {
			used := kept[best]
			kept = slices.Delete(kept, best, best+1)
			used.To, used.Line = i, lines+len(list)
			list, saved = append(list, used), saved+most
			y.order[i] = order
			y.stock = append(y.stock, Piece{Length: used.Length, Count: 1, Role: EitherEnd})
		}
		y.move(y.order[i], -1)
	}
	return list, saved
}

// offCut is what is left of the last piece of a pile above the saw cut, 0 where
// that is not known or the last piece is an off-cut itself.
func (y *yard) offCut(i int) int64 {
	order := y.order[i]
	last := order[len(order)-1]
	if y.piles[i].Saw <= 0 || last >= len(y.left) {
		return 0
	}
	return min(y.makeup(i).Total-y.piles[i].Saw, y.stock[last].Length) - y.terms.Reuse.Loss
}

// withOffCut makes a pile up with an off-cut in it, and returns the order, in
// which the off-cut is the next line of the stock, and what is saved. Where both
// ends will do, it stands last, with its sawn end up.
func (y *yard) withOffCut(i int, length int64) (order []int, saves int64) {
	stock := append(y.rest(), Piece{Length: length, Count: 1, Role: EitherEnd})
	r, _ := y.rules(i, func(int) bool { return true })
	t, err := r.task(y.piles[i].Need, stock, y.own(i))
	if err != nil {
		return nil, 0
	}
	t.place.must = true
	m, err := solve(t.need, stock, t.terms, t.terms, t.place, longSearch)
	y.effort -= eachTry
	if r := t.place.reached; r != nil {
		y.effort -= len(r.layers) * len(r.free) * len(r.place.length)
	}
	if err != nil {
		return nil, 0
	}
	for at, line := range m.Sequence {
		if line == len(y.left) {
			m.Sequence[at] = len(y.stock)
		}
	}
	return m.Sequence, y.makeup(i).Cost - (m.Cost - length)
}
