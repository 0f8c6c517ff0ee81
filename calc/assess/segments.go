package assess

import (
	"errors"

	"gaugewright/calc/basis"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/segment"
	"gaugewright/calc/working"
)

// segments makes the pile up from the stock.
func (w *judge) segments() {
	s, b := &w.answer.Segments, w.book
	need, ok := w.neededLength()
	if !ok {
		return
	}
	tenths, err := segment.NeedTenths(need.V)
	if err != nil {
		w.segmentFault(err)
		return
	}
	stepped := working.Put(b, segment.NeedStepsRule, "need.steps", segment.Metres(tenths), need.In(), figure("segment.slack"), figure("segment.step"))
	s.Need = w.length(stepped)

	price, priceIn := w.jointPrice()
	yard := w.yard(w.pile.Type)
	pieces, lines := yard.pieces, yard.lines
	if len(pieces) == 0 {
		s.Needs = append(s.Needs, "field.stock.length")
		return
	}
	toe := w.pile.Toe()
	jt, ok := w.jointing(toe)
	if !ok {
		return
	}
	terms := segment.Terms{JointPrice: price, MaxPieces: jt.maxPieces}
	key := makeupKey{tenths, w.pile.Type, jt.maxPieces, jt.key()}
	choices, known := w.makeups[key]
	if !known {
		choices, err = jt.rules.Alternatives(tenths, pieces, terms)
		if err != nil {
			w.segmentFault(err)
			return
		}
		w.makeups[key] = choices
	}
	m := makeup{w, pieces, lines, stepped}
	best := choices.Best
	total, offCut := m.lengths("", best)
	s.Total, s.OffCut = w.length(total), w.length(offCut)
	s.Cost = w.length(working.Put(b, segment.CostRule(len(best.Used()), false), "cost", segment.Metres(best.Cost),
		append([]working.In{total.In(), stepped.In(), priceIn}, m.counts(best)...)...))
	s.Pieces, s.Joints = m.pieces(best), best.Pieces-1
	w.heaviest(best, pieces, lines)
	if differs(choices.FewestJoints, best) {
		s.Fewest = m.alternative("fewest.", choices.FewestJoints)
	}
	if differs(choices.LeastOffCut, best) && differs(choices.LeastOffCut, choices.FewestJoints) {
		s.Least = m.alternative("least.", choices.LeastOffCut)
	}
	if float64(s.Joints) > basis.Figure("segment.joints") {
		most, _ := basis.Find("segment.joints")
		s.Notes = append(s.Notes, Note{"note.joints", []string{most.Value}})
	}
	if b.On() {
		s.Notes = append(s.Notes, Note{Code: "note.cheapest"})
	}
	m.laid(best, toe.Of(b), jt)
	m.reach(toe.Of(b), total, jt)
	m.shifted(tenths, jt, terms)
	w.leastToe(toe)
}

// leastToe warns of a toe level that is not as deep as the least one.
func (w *judge) leastToe(toe job.Given[quantity.Length]) {
	if least := w.pile.LeastToe; least.Known() && toe.V > least.V {
		w.answer.Segments.Notes = append(w.answer.Segments.Notes, Note{"note.leastToe", []string{stated(toe).Text(w.Sign()), stated(least).Text(w.Sign())}})
	}
}

// stock is the yard's lengths in the terms of package segment, line by line.
type stock struct {
	pieces []segment.Piece
	lines  []job.Stock
}

// roles are the places of pieces, as the job names them.
var roles = map[string]segment.Role{"starter": segment.Starter, "middle": segment.Middle, "top": segment.Top}

// yard returns the lines of stock that piles of a type may take: its own, and
// those of no type.
func (j *Job) yard(pileType string) stock {
	s, known := j.yards[pileType]
	if known {
		return s
	}
	for _, line := range j.stock {
		if !line.Length.Known() || line.Type != "" && line.Type != pileType {
			continue
		}
		length, err := segment.PieceTenths(line.Length.V)
		if err != nil {
			continue
		}
		count := segment.Unlimited
		if line.HasCount {
			count = line.Count
		}
		s.pieces, s.lines = append(s.pieces, segment.Piece{Length: length, Count: count, Role: roles[line.Role]}), append(s.lines, line)
	}
	j.yards[pileType] = s
	return s
}

// differs says whether another make-up was found (its search may have given
// up) and takes other pieces.
func differs(other, than segment.Makeup) bool {
	return other.Pieces > 0 && !(than.Pieces > 0 && other.Same(than))
}

// makeup writes the make-ups of one pile.
type makeup struct {
	*judge
	stock []segment.Piece
	lines []job.Stock
	need  working.Of[quantity.Length]
}

// found is the place of a number of pieces, which a search gave.
func (m makeup) found(n int) working.In {
	if m.book.On() {
		return working.In{V: float64(n), Ref: "search:"}
	}
	return working.In{V: float64(n)}
}

func (m makeup) counts(of segment.Makeup) []working.In {
	var list []working.In
	for _, i := range of.Used() {
		list = append(list, m.found(of.Counts[i]))
	}
	return list
}

// lengths puts total and off-cut of a make-up into the book.
func (m makeup) lengths(prefix string, of segment.Makeup) (total, offCut working.Of[quantity.Length]) {
	var sum []working.In
	used := of.Used()
	for _, i := range used {
		length := working.In{V: float64(segment.Metres(m.stock[i].Length)), Ref: m.lines[i].Length.In(m.book).Ref}
		sum = append(sum, m.found(of.Counts[i]), length)
	}
	total = working.Put(m.book, segment.TotalRule(len(used)), prefix+"total", segment.Metres(of.Total), sum...)
	working.Prove(m.book, segment.ReachesRule, prefix+"total.proof", total.Ref, total.In(), m.need.In())
	offCut = working.Put(m.book, segment.OffCutRule, prefix+"offCut", segment.Metres(of.OffCut), total.In(), m.need.In())
	return total, offCut
}

func (m makeup) pieces(of segment.Makeup) []Piece {
	var list []Piece
	for _, i := range of.Used() {
		list = append(list, Piece{Count: of.Counts[i], Length: stated(m.lines[i].Length), Name: m.lines[i].Name})
	}
	return list
}

func (m makeup) alternative(prefix string, of segment.Makeup) *Alternative {
	total, offCut := m.lengths(prefix, of)
	return &Alternative{Pieces: m.pieces(of), Joints: of.Pieces - 1, Total: m.length(total), OffCut: m.length(offCut)}
}

func (w *judge) jointPrice() (tenths int64, in working.In) {
	if p := w.JointPrice(); p.Known() {
		if tenths, err := segment.PieceTenths(p.V); err == nil {
			return tenths, working.In{V: float64(segment.Metres(tenths)), Ref: p.In(w.book).Ref}
		}
	}
	return segment.DefaultJoint, figure("segment.joint")
}

// neededLength returns the least length of the pile: from the founding level
// to where its head must stand.
func (w *judge) neededLength() (need working.Of[quantity.Length], ok bool) {
	s, b, p := &w.answer.Segments, w.book, w.pile
	ask := func(known bool, key string) {
		if !known {
			s.Needs = append(s.Needs, key)
		}
	}
	ask(p.Cutoff.Known(), "field.piles.cutoff")
	toe := p.Toe()
	ask(toe.Known(), "field.piles.founding")
	ask(w.hasType, "field.piles.type")
	ask(!w.hasType || w.pileType.Bars.Known(), "field.pileTypes.bars")
	ask(w.hasRig, "field.piles.rig")
	grip := w.hasRig && w.rig.GripHeight.State != job.IsNotApplicable
	ask(!grip || w.rig.GripHeight.Known(), "field.rigs.gripHeight")
	ask(!grip || p.Platform.Known(), "field.piles.platform")
	if len(s.Needs) > 0 {
		return need, false
	}
	disorder := func(code string, upper, lower job.Given[quantity.Length]) bool {
		if !upper.Known() || upper.V > lower.V {
			return false
		}
		args := []string{stated(upper).Text(w.Sign()), stated(lower).Text(w.Sign())}
		if code == "note.toeAbovePlatform" {
			args[0], args[1] = args[1], args[0]
		}
		s.Notes = append(s.Notes, Note{code, args})
		return true
	}
	if disorder("note.cutoffBelowToe", p.Cutoff, toe) || disorder("note.toeAbovePlatform", p.Platform, toe) {
		return need, false
	}
	follower := grip && w.rig.FollowerTravel.Known()
	platform, height, travel := p.Platform.V, w.rig.GripHeight.V, w.rig.FollowerTravel.V
	inputs := []working.In{p.Cutoff.In(b), w.pileType.Bars.In(b)}
	if grip {
		inputs = append(inputs, p.Platform.In(b), w.rig.GripHeight.In(b))
	} else {
		platform, height = p.Cutoff.V, 0 // the rig asks for nothing: the cap alone counts
	}
	if follower {
		inputs = append(inputs, w.rig.FollowerTravel.In(b))
	} else {
		travel = 0
	}
	level, err := segment.HeadAtSet(p.Cutoff.V, w.pileType.Bars.V, platform, height, travel)
	if err != nil {
		w.segmentFault(err)
		return need, false
	}
	head := working.Put(b, segment.HeadAtSetRuleFor(grip, follower), "headAtSet", level, inputs...)
	length, err := segment.Need(level, toe.V)
	if err != nil {
		w.segmentFault(err)
		return need, false
	}
	return working.Put(b, segment.NeedRule, "need", length, head.In(), toe.In(b)), true
}

func (w *judge) segmentFault(err error) {
	w.answer.Segments.Notes = append(w.answer.Segments.Notes, w.faultNote(err))
}

// faultNote words an error of calc/segment.
func (w *judge) faultNote(err error) Note {
	var e *segment.InputError
	if !errors.As(err, &e) {
		return Note{Code: "segment.effort", Args: []string{"", ""}}
	}
	u, sign := w.lengthUnit(), w.Sign()
	write := func(metres float64) string {
		n := Number{V: metres, Unit: u, Decimals: decimals[u.Symbol]}
		return n.Text(sign)
	}
	note := Note{Code: e.Code}
	switch e.Code {
	case "segment.tooManyPieces":
		note.Args = []string{quantity.Print(e.Value, 0, sign), quantity.Print(e.Limit, 0, sign)}
	default:
		note.Args = []string{write(e.Value), write(e.Limit)}
	}
	return note
}
