package assess

import (
	"math"
	"strconv"

	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/rig"
	"gaugewright/calc/window"
	"gaugewright/calc/working"
)

// standing is what the reaction hangs on.
type standing struct {
	share   working.In
	inMass  bool
	placed  bool // the geometry of feet, weight and pile is entered
	at      rig.Place
	inputs  []working.In // s, M, m, g and, where placed, a, x_g, x_p; W where it is not in the mass
	onHead  working.In
	needs   []string
	problem *Note
}

// standing gathers masses and places. Either all of the geometry is entered or
// none of it; the pile then is taken under the centre of mass.
func (w *judge) standing() (s standing) {
	need := func(known bool, key string) {
		if !known {
			s.needs = append(s.needs, key)
		}
	}
	r, c, b := w.rig, w.circuit, w.book
	need(r.Mass.Known(), "field.rigs.mass")
	need(r.Ballast.Known(), "field.rigs.ballast")
	need(w.hasCircuit && c.OnHead.Known(), "field.rigs.circuits.onHead")
	need(w.hasCircuit && c.OnHeadInMass != "", "field.rigs.circuits.onHeadInMass")
	s.placed = r.HalfSpacing.Known() || r.MassCentre.Known() || c.At.Known()
	if s.placed {
		need(r.HalfSpacing.Known(), "field.rigs.halfSpacing")
		need(r.MassCentre.Known(), "field.rigs.massCentre")
		need(c.At.Known(), "field.rigs.circuits.at")
	}
	if len(s.needs) > 0 {
		return s
	}
	s.inMass = c.OnHeadInMass == "yes"
	s.share = orFigure(b, r.Share, "reaction.share")
	s.inputs = []working.In{s.share, r.Mass.In(b), r.Ballast.In(b), figure("gravity")}
	if s.placed {
		s.at = rig.Place{Half: r.HalfSpacing.V, Mass: r.MassCentre.V, Pile: c.At.V}
		s.inputs = append(s.inputs, r.HalfSpacing.In(b), r.MassCentre.In(b), c.At.In(b))
		if !s.at.Stands() {
			s.problem = &Note{Code: "rig.placeProblem"}
		}
	}
	s.onHead = c.OnHead.In(b)
	if !s.inMass {
		s.inputs = append(s.inputs, s.onHead)
	}
	return s
}

// reactionLimit is what the rig can press against: its weight, by the foot that
// unloads first where the places are entered, and the stated limit of a side or
// corner.
func (w *judge) reactionLimit() Limit {
	l := Limit{Kind: window.Reaction}
	if !w.hasRig {
		l.Needs = []string{"field.piles.rig"}
		return l
	}
	if w.rig.ReactionWaived {
		l.State, l.Waiver = window.Waived, w.rig.Waiver
		return l
	}
	s := w.standing()
	l.Needs, l.Problem = s.needs, s.problem
	var ofPlace job.Given[quantity.Force]
	key := ""
	switch w.circuit.Place {
	case "side":
		ofPlace, key = w.rig.SideLimit, "field.rigs.sideLimit"
	case "corner":
		ofPlace, key = w.rig.CornerLimit, "field.rigs.cornerLimit"
	}
	if key != "" && !ofPlace.Known() {
		l.Needs = append(l.Needs, key)
	}
	if len(l.Needs) > 0 || l.Problem != nil {
		return l
	}
	b, r, c := w.book, w.rig, w.circuit
	var names []string
	var loads []working.Of[quantity.Force]
	add := func(name string, of working.Of[quantity.Force]) {
		names, loads = append(names, name), append(loads, of)
		l.Parts = append(l.Parts, Part{Key: "symbol.reactionOf." + name, Value: w.force(of)})
	}
	if s.placed {
		share := quantity.Ratio(s.share.V)
		add("F_near", working.Put(b, rig.NearFootRule(s.inMass), "reaction.near", rig.NearFoot(share, r.Mass.V, r.Ballast.V, c.OnHead.V, s.inMass, s.at), s.inputs...))
		if s.at.Pile < s.at.Half {
			add("F_far", working.Put(b, rig.FarFootRule(s.inMass), "reaction.far", rig.FarFoot(share, r.Mass.V, r.Ballast.V, c.OnHead.V, s.inMass, s.at), s.inputs...))
		}
	} else {
		l.Notes = append(l.Notes, Note{Code: "note.centred"})
		add("F_centred", working.Put(b, rig.ReactionRule(s.inMass), "limit.reaction",
			rig.Reaction(quantity.Ratio(s.share.V), r.Mass.V, r.Ballast.V, c.OnHead.V, s.inMass), s.inputs...))
	}
	if key != "" {
		add("F_place", ofPlace.Of(b))
		l.Parts[len(l.Parts)-1].Value = stated(ofPlace)
	}
	least := 0
	var inputs []working.In
	for i, of := range loads {
		if of.V < loads[least].V {
			least = i
		}
		inputs = append(inputs, of.In())
	}
	l.State, l.Value = window.Entered, l.Parts[least].Value
	l.Parts[least].Least = true
	if len(loads) == 1 {
		l.Parts = nil
		return l
	}
	l.Value = w.force(working.Put(b, rig.LeastReactionRule(names...), "limit.reaction.least", loads[least].V, inputs...))
	return l
}

// heavier says how much more ballast lets the rig press the load at the set
// reading, in whole pieces where the pieces are entered: only where that
// ballast may be carried, and where every foot stands with it.
func (w *judge) heavier(l Limit, most working.In) {
	a, sign, b := w.answer, w.Sign(), w.book
	s := w.standing()
	for _, p := range l.Parts {
		if p.Least && p.Key == "symbol.reactionOf.F_place" {
			a.Ways = append(a.Ways, Note{Code: "way.place"})
			return
		}
	}
	t := quantity.Must("t")
	load, share := quantity.Force(most.V), quantity.Ratio(s.share.V)
	// way notes ballast that is enough; false where the rig may not carry it.
	way := func(dm working.Of[quantity.Mass], code string, args ...string) bool {
		if limit := w.rig.BallastMost; limit.Known() && w.rig.Ballast.V+dm.V > limit.V*(1+1e-9) {
			return false
		}
		a.Ballast = number(dm, t)
		a.Ways = append(a.Ways, Note{code, append([]string{a.Ballast.Text(sign)}, args...)})
		return true
	}
	tooMuch := func() {
		a.Ways = append(a.Ways, Note{"way.ballastMost", []string{stated(w.rig.BallastMost).Text(sign)}})
	}
	if !s.placed {
		step, code, args := figure("ballast.step"), "way.reaction", []string(nil)
		if piece, n, tried := w.piecesCentred(load, quantity.Force(l.Value.V), share); n > 0 {
			step, code, args = piece.Mass.In(b), "way.reactionPiecesCentred", []string{strconv.Itoa(n), piece.Name}
		} else if tried {
			a.Ways = append(a.Ways, Note{Code: "way.noPieces"})
			return
		}
		dm := working.Put(b, rig.BallastRule, "ballast", rig.BallastFor(load, quantity.Force(l.Value.V), share, quantity.Mass(step.V)),
			most, working.In{V: l.Value.V, Ref: l.Value.Ref}, s.share, figure("gravity"), step)
		if !way(dm, code, args...) {
			tooMuch()
		}
		return
	}
	best, n := -1, 0
	pieces := w.rig.Pieces()
	tried := false
	for i, piece := range pieces {
		if !piece.Mass.Known() || !piece.At.Known() {
			continue
		}
		tried = true
		k := w.piecesFor(s, load, piece)
		if k > 0 && (best < 0 || quantity.Mass(k)*piece.Mass.V < quantity.Mass(n)*pieces[best].Mass.V) {
			best, n = i, k
		}
	}
	switch {
	case best >= 0:
		piece := pieces[best]
		whole := working.Put(b, rig.WholePiecesRule, "ballast", quantity.Mass(n)*piece.Mass.V, working.In{V: float64(n), Ref: "search:"}, piece.Mass.In(b))
		for _, sign := range []string{"+", "-"} {
			inputs := append(append([]working.In(nil), s.inputs[:7]...), whole.In(), piece.At.In(b), most)
			if !s.inMass {
				inputs = append(inputs, s.onHead)
			}
			working.Prove(b, rig.FeetHold(sign, s.inMass), "ballast.feet"+sign, whole.Ref, inputs...)
		}
		if !way(whole, "way.reactionPieces", strconv.Itoa(n), piece.Name) {
			tooMuch()
		}
	case tried:
		a.Ways = append(a.Ways, Note{Code: "way.noPieces"})
	default:
		a.Ways = append(a.Ways, Note{Code: "way.piecesUnknown"})
	}
}

// piecesCentred is the least ballast in whole pieces of one kind for a load
// under the centre of mass; n is 0 where no kind has enough pieces, tried says
// whether there are any of a known mass.
func (w *judge) piecesCentred(load, limit quantity.Force, share quantity.Ratio) (best job.Piece, n int, tried bool) {
	least := quantity.Mass(math.Inf(1))
	for _, piece := range w.rig.Pieces() {
		if !piece.Mass.Known() {
			continue
		}
		tried = true
		dm := rig.BallastFor(load, limit, share, piece.Mass.V)
		number := int(math.Round(float64(dm / piece.Mass.V)))
		if dm < least && (!piece.HasCount || number <= piece.Count) {
			best, n, least = piece, number, dm
		}
	}
	return best, n, tried
}

// mostPieces bounds the pieces of one kind that are tried.
const mostPieces = 1000

// piecesFor is the least number of pieces of one kind with which both feet
// allow the load; 0 where no number that is there does. Kinds are not mixed.
func (w *judge) piecesFor(s standing, load quantity.Force, piece job.Piece) int {
	most := mostPieces
	if piece.HasCount {
		most = min(most, piece.Count)
	}
	for n := 1; n <= most; n++ {
		if w.stands(s, load, quantity.Mass(n)*piece.Mass.V, piece.At.V) {
			return n
		}
	}
	return 0
}

// stands says whether both feet allow the load with more ballast at x.
func (w *judge) stands(s standing, load quantity.Force, more quantity.Mass, x quantity.Length) bool {
	before := w.rig.Mass.V + w.rig.Ballast.V
	moved := s.at
	moved.Mass = quantity.Length((float64(before)*float64(s.at.Mass) + float64(more)*float64(x)) / float64(before+more))
	share, ballast, onHead := quantity.Ratio(s.share.V), w.rig.Ballast.V+more, w.circuit.OnHead.V
	const slack = 1e-9
	return moved.Stands() && rig.NearFoot(share, w.rig.Mass.V, ballast, onHead, s.inMass, moved) >= load-slack &&
		rig.FarFoot(share, w.rig.Mass.V, ballast, onHead, s.inMass, moved) >= load-slack
}

// gripLimit is what friction of the grip carries, where it is entered. A hollow
// pile is gripped within what its maker allows.
func (w *judge) gripLimit() Limit {
	l := Limit{Kind: window.Grip, State: window.Unchecked}
	if !w.hasRig {
		return l
	}
	g, b := w.rig.Grip, w.book
	if w.rig.GripWaived {
		l.State, l.Waiver = window.Waived, w.rig.GripWaiver
		return l
	}
	need := func(known bool, key string) {
		if !known {
			l.Needs = append(l.Needs, key)
		}
	}
	need(g.Mu.Known(), "field.rigs.grip.mu")
	need(g.HasFaces, "field.rigs.grip.faces")
	need(g.Force.Known(), "field.rigs.grip.force")
	hollow := w.pileType.Shape == "spun" || w.pileType.Shape == "tube"
	if hollow {
		need(w.pileType.GripLimit.Known(), "field.pileTypes.gripLimit")
	}
	if len(l.Needs) > 0 {
		return l
	}
	if limit := w.pileType.GripLimit; limit.Known() && g.Force.V > limit.V {
		l.Problem = &Note{"rig.gripAbove", []string{stated(g.Force).Text(w.Sign()), stated(limit).Text(w.Sign())}}
		return l
	}
	if g.Width.Known() && g.Height.Known() && g.FacePressure.Known() {
		p := working.Put(b, rig.FacePressureRule, "grip.face", rig.FacePressure(g.Force.V, g.Width.V, g.Height.V), g.Force.In(b), g.Width.In(b), g.Height.In(b))
		shown := &Number{V: float64(p.V), Unit: g.FacePressure.Stated.Unit, Decimals: 2, Ref: p.Ref}
		if p.V > g.FacePressure.V {
			l.Problem = &Note{"rig.faceAbove", []string{shown.Text(w.Sign()), stated(g.FacePressure).Text(w.Sign())}}
			return l
		}
		l.Parts = []Part{{"symbol.facePressure", shown, false}}
	}
	of := working.Put(b, rig.GripRule, "limit.grip", rig.Grip(g.Mu.V, g.Faces, g.Force.V),
		g.Mu.In(b), working.In{V: float64(g.Faces), Ref: g.FacesPath}, g.Force.In(b))
	l.State, l.Value = window.Entered, w.force(of)
	return l
}
