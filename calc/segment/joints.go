package segment

import (
	"math"
	"slices"
	"sort"

	"gaugewright/calc/quantity"
)

// JointRules say where the joints of one pile may lie when its toe is at the
// founding level, and where its toe may be while a splice is made. Levels are on
// the job's datum, up positive [m], within 10 km of it; distances [m] are at
// least zero, and zero is no rule. The zero value has no rule at all.
//
// A joint is the plane between two pieces. Joint j, from the toe up, lies at
//
//	Z_j = Z_toe + l_1 + ... + l_j
//
// and while it is made the toe is at Z_t = Z_s - (l_1 + ... + l_j).
//
//   - Clear x: |Z_j - Z_c| >= x for every joint, below and above the cut.
//   - Last y: the piece that the cut passes keeps at least y below cut-off, that
//     is Z_c - Z_j >= y for every joint below cut-off. A joint at or above
//     cut-off goes with the cut and is not asked; a pile without a joint below
//     cut-off has nothing to fulfil.
//   - Bars l_p: no joint with Z_c <= Z_j < Z_c + l_p, where the bars that are
//     left standing would end in it.
//   - NoJoint: no joint in one of these strata, their boundaries included.
//   - NoStop: no splice with the toe in one of these strata, boundaries included.
//   - Stagger s: |Z_j - Z_n| >= s for every joint and every joint level Z_n of
//     the neighbouring piles.
//
// How many joints there may be stands in [Terms], the roles of pieces in
// [Piece]. Sources: common practice; see the entries segment.joint.* of
// calc/basis. Not covered: what a joint bears, and a toe that stops elsewhere
// than at the founding level (see [Shifted]).
type JointRules struct {
	Toe        quantity.Length   // Z_toe, founding level
	Cutoff     quantity.Length   // Z_c, needed for Clear, Last and Bars
	Clear      quantity.Length   // x
	Last       quantity.Length   // y
	Bars       quantity.Length   // l_p
	NoJoint    []Stratum         // named for joints
	SpliceAt   quantity.Length   // Z_s = platform level + splice height, needed for NoStop
	NoStop     []Stratum         // named for stops
	Neighbours []quantity.Length // Z_n
	Stagger    quantity.Length   // s
	Begun      bool              // the make-up goes on pieces that are in the ground, see [JointRules.Pressed]
}

// Pressed returns the rules for the rest of a pile of which pieces of so much
// length together [0.1 mm] are in the ground: what is left is made up for the
// need less that length, and pieces less those that are in. The joint on the
// piece in the ground is part of it and asked nothing. A starter has no place
// any more, a middle piece may come next. With the joint's level in place of the
// toe's, every level stays what it was:
//
//	Z_toe' = Z_toe + l, Z_s' = Z_s - l
func (r JointRules) Pressed(length int64) JointRules {
	r.Toe, r.SpliceAt, r.Begun = r.Toe+Metres(length), r.SpliceAt-Metres(length), true
	return r
}

// Stratum is a layer of the ground between two levels, both part of it.
type Stratum struct{ Top, Bottom quantity.Length }

// How near heights must be to count as equal, in steps. Levels that are stated
// in whole tenths of a millimetre do not feel either.
const (
	// levelSlack is for a distance that is just kept: 0.1 nanometre. It swallows
	// the last bits of a difference of levels, and no proof of package working
	// tells so little apart.
	levelSlack = 1e-6
	// boundary is for lying at a level: 0.01 millimetre, more than those proofs
	// take as equal within 10 km of the datum.
	boundary = 0.1
)

// ban is a range of heights above the toe, ends included, where no joint may
// lie [0.1 mm].
type ban struct{ from, to int64 }

// bans returns where no joint may lie, in rising order, none touching another.
// A distance that is kept exactly is kept.
func (r JointRules) bans() ([]ban, error) {
	if err := r.check(); err != nil {
		return nil, err
	}
	// Heights above the toe in tenths, not rounded: up and down say where the
	// whole tenths begin that lie at or beyond them.
	above := func(level quantity.Length) float64 { return float64((level - r.Toe) * stepsPerMetre) }
	up := func(x float64) int64 { return int64(math.Ceil(x - levelSlack)) }
	down := func(x float64) int64 { return int64(math.Floor(x + levelSlack)) }

	var list []ban
	between := func(from, to float64) { list = append(list, ban{down(from) + 1, up(to) - 1}) } // ends left out
	inside := func(from, to float64) {                                                         // ends included
		list = append(list, ban{up(from - boundary), down(to + boundary)})
	}
	if r.Clear > 0 {
		between(above(r.Cutoff-r.Clear), above(r.Cutoff+r.Clear))
	}
	if r.Last > 0 {
		between(above(r.Cutoff-r.Last), above(r.Cutoff)-boundary)
	}
	if r.Bars > 0 {
		list = append(list, ban{up(above(r.Cutoff) - boundary), up(above(r.Cutoff+r.Bars)) - 1})
	}
	for _, s := range r.NoJoint {
		inside(above(s.Bottom), above(s.Top))
	}
	for _, s := range r.NoStop {
		inside(float64((r.SpliceAt-s.Top)*stepsPerMetre), float64((r.SpliceAt-s.Bottom)*stepsPerMetre))
	}
	if r.Stagger > 0 {
		for _, level := range r.Neighbours {
			between(above(level-r.Stagger), above(level+r.Stagger))
		}
	}
	return merged(list), nil
}

func merged(list []ban) []ban {
	list = slices.DeleteFunc(list, func(b ban) bool { return b.to < b.from })
	sort.Slice(list, func(i, j int) bool { return list[i].from < list[j].from })
	whole := list[:0]
	for _, b := range list {
		if n := len(whole); n > 0 && b.from <= whole[n-1].to+1 {
			whole[n-1].to = max(whole[n-1].to, b.to)
			continue
		}
		whole = append(whole, b)
	}
	return whole
}

// banned says whether a height lies in one of the ranges.
func banned(list []ban, height int64) bool {
	for _, b := range list {
		if height <= b.to {
			return height >= b.from
		}
	}
	return false
}

func (r JointRules) check() error {
	list := []level{{"Z_toe", r.Toe, true}, {"Z_c", r.Cutoff, true}, {"Z_s", r.SpliceAt, true},
		{"x", r.Clear, false}, {"y", r.Last, false}, {"l_p", r.Bars, false}, {"s", r.Stagger, false}}
	for _, strata := range [][]Stratum{r.NoJoint, r.NoStop} {
		for _, s := range strata {
			list = append(list, level{"Z_1", s.Top, true}, level{"Z_2", s.Bottom, true})
		}
	}
	for _, n := range r.Neighbours {
		list = append(list, level{"Z_n", n, true})
	}
	if err := levels(list...); err != nil {
		return err
	}
	for _, strata := range [][]Stratum{r.NoJoint, r.NoStop} {
		for _, s := range strata {
			if s.Top < s.Bottom {
				return &InputError{Code: "segment.stratum", Line: -1, Value: float64(s.Top), Limit: float64(s.Bottom)}
			}
		}
	}
	return nil
}
