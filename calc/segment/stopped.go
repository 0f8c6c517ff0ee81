package segment

import (
	"slices"
	"sort"
)

// Stop is a rule without which there would be a make-up, and the best one then.
//
// The codes of the rules:
//
//	segment.stopped.clear     distance of joints from cut-off
//	segment.stopped.last      what stays below cut-off in the last piece
//	segment.stopped.bars      no joint in the bars that are left standing
//	segment.stopped.noJoint   no joint in a stratum; Stratum is its number
//	segment.stopped.noStop    no splice with the toe in a stratum; Stratum is its number
//	segment.stopped.stagger   distance of joints from those of neighbouring piles
//	segment.stopped.most      the limit on pieces, where it is below [DefaultPieces]
//	segment.stopped.roles     the places of the pieces
//	segment.stopped.several   no single rule: without all of them there is a make-up
type Stop struct {
	Rule    string
	Stratum int // in the list of strata of the rule, from 0; -1: all of them together, or none is meant
	Makeup  Makeup
}

// stops finds out which rule leaves no make-up, by leaving each away in turn.
// Every single rule that does is listed, the one whose make-up is cheapest
// first. Where only several together do, the make-up without any is given.
func (r JointRules) stops(need int64, stock []Piece, terms Terms) error {
	e := fault("segment.stopped.several")
	try := func(rule string, stratum int, without JointRules, stock []Piece, by Terms) bool {
		t, err := without.task(need, stock, by)
		if err != nil {
			return false
		}
		t.terms = terms
		m, err := t.solve(stock, by)
		if err == nil {
			e.Stops = append(e.Stops, Stop{rule, stratum, m})
		}
		return err == nil
	}
	strata := func(rule string, list []Stratum, without func([]Stratum) JointRules) {
		any := false
		for i := range list {
			any = try(rule, i, without(slices.Delete(slices.Clone(list), i, i+1)), stock, terms) || any
		}
		if !any && len(list) > 1 {
			try(rule, -1, without(nil), stock, terms)
		}
	}
	without := r
	if r.Clear > 0 {
		without.Clear = 0
		try("segment.stopped.clear", -1, without, stock, terms)
	}
	if without = r; r.Last > 0 {
		without.Last = 0
		try("segment.stopped.last", -1, without, stock, terms)
	}
	if without = r; r.Bars > 0 {
		without.Bars = 0
		try("segment.stopped.bars", -1, without, stock, terms)
	}
	strata("segment.stopped.noJoint", r.NoJoint, func(list []Stratum) JointRules {
		w := r
		w.NoJoint = list
		return w
	})
	strata("segment.stopped.noStop", r.NoStop, func(list []Stratum) JointRules {
		w := r
		w.NoStop = list
		return w
	})
	if without = r; r.Stagger > 0 && len(r.Neighbours) > 0 {
		without.Stagger = 0
		try("segment.stopped.stagger", -1, without, stock, terms)
	}
	more := Terms{JointPrice: terms.JointPrice, MaxPieces: max(terms.MaxPieces, DefaultPieces)}
	if more.MaxPieces > terms.MaxPieces {
		try("segment.stopped.most", -1, r, stock, more)
	}
	anywhere, roles := slices.Clone(stock), false
	for i := range anywhere {
		roles = roles || anywhere[i].Role != Anywhere
		anywhere[i].Role = Anywhere
	}
	if roles {
		try("segment.stopped.roles", -1, r, anywhere, terms)
	}
	if len(e.Stops) == 0 {
		try("segment.stopped.several", -1, JointRules{}, anywhere, more)
	}
	sort.SliceStable(e.Stops, func(i, j int) bool { return e.Stops[i].Makeup.Cost < e.Stops[j].Makeup.Cost })
	if len(e.Stops) > 0 {
		first := e.Stops[0]
		e.Code, e.Line = first.Rule, first.Stratum
		e.Value, e.Limit = float64(Metres(first.Makeup.Total)), float64(Metres(first.Makeup.OffCut))
	}
	return e
}
