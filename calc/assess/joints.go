package assess

import (
	"math"
	"strconv"

	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/segment"
	"gaugewright/calc/working"
)

// jointing is where the joints of a pile may lie, with the places of what the
// rules were stated in.
type jointing struct {
	rules     segment.JointRules
	maxPieces int
	stated    job.Joints
	splices   bool                        // Z_s is known
	spliceAt  working.Of[quantity.Length] // Z_s
	// noJoint and noStop are the strata of the rules, in their order.
	noJoint, noStop []job.Stratum
}

// jointing gathers the rules of joints: of the criterion, of the bars that are
// left standing, and of the strata. ok is false while a rule lacks a level.
func (w *judge) jointing(toe job.Given[quantity.Length]) (jt jointing, ok bool) {
	s, b, p := &w.answer.Segments, w.book, w.pile
	jt = jointing{maxPieces: segment.DefaultPieces}
	if w.hasCrit {
		jt.stated = w.criterion.Joints()
	}
	jt.rules = segment.JointRules{Toe: toe.V, Cutoff: p.Cutoff.V, Clear: jt.stated.Clear.V, Last: jt.stated.Last.V, Bars: w.pileType.Bars.V}
	if jt.stated.HasMost {
		jt.maxPieces = min(segment.MostPieces, jt.stated.Most+1)
	}
	if jt.splices = w.hasRig && w.rig.SpliceHeight.Known() && p.Platform.Known(); jt.splices {
		jt.spliceAt = working.Put(b, segment.SpliceLevelRule, "spliceLevel", p.Platform.V+w.rig.SpliceHeight.V, p.Platform.In(b), w.rig.SpliceHeight.In(b))
		jt.rules.SpliceAt = jt.spliceAt.V
	}
	for _, stratum := range w.strata() {
		if !stratum.Top.Known() || !stratum.Bottom.Known() {
			continue
		}
		layer := segment.Stratum{Top: stratum.Top.V, Bottom: stratum.Bottom.V}
		if stratum.NoJoint {
			jt.rules.NoJoint, jt.noJoint = append(jt.rules.NoJoint, layer), append(jt.noJoint, stratum)
		}
		if stratum.NoStop {
			jt.rules.NoStop, jt.noStop = append(jt.rules.NoStop, layer), append(jt.noStop, stratum)
		}
	}
	if len(jt.rules.NoStop) > 0 && !jt.splices {
		if s.Needs = append(s.Needs, "field.rigs.spliceHeight"); !p.Platform.Known() {
			s.Needs = append(s.Needs, "field.piles.platform")
		}
		return jt, false
	}
	return jt, true
}

// strata are those of the job, read once.
func (j *Job) strata() []job.Stratum {
	if j.layers == nil {
		j.layers = append([]job.Stratum{}, j.Strata()...)
	}
	return j.layers
}

// makeupKey names what a make-up hangs on, so that equal piles share it.
type makeupKey struct {
	need      int64
	pileType  string
	maxPieces int
	rules     string
}

// key writes the rules with their levels from the toe up; where nothing is
// ruled it is blank, whatever the levels are.
func (jt jointing) key() string {
	r := jt.rules
	if r.Clear == 0 && r.Last == 0 && r.Bars == 0 && len(r.NoJoint) == 0 && len(r.NoStop) == 0 {
		return ""
	}
	var b []byte
	put := func(values ...quantity.Length) {
		for _, v := range values {
			b = append(strconv.AppendUint(b, math.Float64bits(float64(v)), 36), ' ')
		}
	}
	put(r.Cutoff-r.Toe, r.Clear, r.Last, r.Bars)
	for _, s := range r.NoJoint {
		put(s.Top-r.Toe, s.Bottom-r.Toe)
	}
	for _, s := range r.NoStop {
		b = append(b, '|')
		put(r.SpliceAt-s.Top, r.SpliceAt-s.Bottom)
	}
	return string(b)
}

// laid writes the pile from the toe up: its pieces, the level of each joint
// and the level of the toe while it is made, and proves every rule of them. Only
// what is opened is laid: a list never asks.
func (m makeup) laid(of segment.Makeup, toe working.Of[quantity.Length], jt jointing) {
	if !m.book.On() {
		return
	}
	s := &m.answer.Segments
	lengths := make([]working.In, len(of.Sequence))
	for i, line := range of.Sequence {
		lengths[i] = working.In{V: float64(segment.Metres(m.stock[line].Length)), Ref: m.lines[line].Length.In(m.book).Ref}
	}
	refs := map[string]string{"Z_c": m.pile.Cutoff.In(m.book).Ref, "x": jt.stated.Clear.Path(), "y": jt.stated.Last.Path(), "l_p": m.pileType.Bars.In(m.book).Ref}
	heights := of.Heights(m.stock)
	levels, stops := make([]working.Of[quantity.Length], len(heights)), make([]working.Of[quantity.Length], len(heights))
	for i, height := range heights {
		name := "joint." + strconv.Itoa(i+1)
		levels[i] = working.Put(m.book, segment.JointLevelRule(i+1), name, jt.rules.Level(height), append([]working.In{toe.In()}, lengths[:i+1]...)...)
		joint := Joint{Level: m.length(levels[i])}
		if jt.splices {
			stops[i] = working.Put(m.book, segment.StopToeRule(i+1), name+".stop", jt.rules.ToeAtStop(height), append([]working.In{jt.spliceAt.In()}, lengths[:i+1]...)...)
			joint.Stop = m.length(stops[i])
		}
		s.Laid = append(s.Laid, joint)
	}
	for n, c := range jt.rules.Checks(m.stock, of) {
		refs["Z_j"], refs["Z_t"] = levels[c.Joint].Ref, stops[c.Joint].Ref
		proves, layers := levels[c.Joint].Ref, jt.noJoint
		if c.Rule.Key == segment.NoStopRule.Key {
			proves, layers = stops[c.Joint].Ref, jt.noStop
		}
		if c.Rule.Key == segment.NoStopRule.Key || c.Rule.Key == segment.NoJointRule.Key {
			refs["Z_1"], refs["Z_2"] = layers[c.Of].Top.In(m.book).Ref, layers[c.Of].Bottom.In(m.book).Ref
		}
		inputs := make([]working.In, len(c.Inputs))
		for i, v := range c.Inputs {
			inputs[i] = working.In{V: v, Ref: refs[c.Rule.Inputs[i].Name]}
		}
		working.Prove(m.book, c.Rule, "joint.proof."+strconv.Itoa(n+1), proves, inputs...)
	}
}

// reach writes how high the head stands, and the level of the toe by which it
// must be decided between one more segment and the follower.
func (m makeup) reach(toe, total working.Of[quantity.Length], jt jointing) {
	s, b, p := &m.answer.Segments, m.book, m.pile
	if p.Platform.Known() {
		above := working.Put(b, segment.StickUpRule, "stickUp", segment.StickUp(toe.V, total.V, p.Platform.V), toe.In(), total.In(), p.Platform.In(b))
		most := p.StickUp
		if most.State == job.Blank && m.hasRig {
			most = m.rig.WalkOver
		}
		s.StickUp = m.length(above)
		if most.Known() && above.V > most.V+1e-9 {
			s.Notes = append(s.Notes, Note{"note.stickUp", []string{s.StickUp.Text(m.Sign()), stated(most).Text(m.Sign())}})
		}
	}
	if !jt.splices {
		return
	}
	if left := segment.ToeLeft(segment.DecideAt(jt.spliceAt.V, total.V), toe.V); left > 0 {
		decide := working.Put(b, segment.DecideRule, "decide", segment.DecideAt(jt.spliceAt.V, total.V), jt.spliceAt.In(), total.In())
		s.Decide = m.length(decide)
		s.ToeLeft = m.length(working.Put(b, segment.ToeLeftRule, "toeLeft", left, decide.In(), toe.In()))
		s.Notes = append(s.Notes, Note{"note.decide", []string{s.Decide.Text(m.Sign()), s.ToeLeft.Text(m.Sign())}})
	}
}

// shifted writes what other toe levels would take.
func (m makeup) shifted(need int64, jt jointing, terms segment.Terms) {
	if !m.whole {
		return
	}
	for _, shift := range jt.rules.Shifted(need, m.stock, terms) {
		by := strconv.FormatInt(shift.By, 10)
		made := Shift{By: &Number{V: float64(segment.Metres(shift.By)), Unit: quantity.Must("m"), Decimals: 1, Ref: "basis:segment.shift." + by}}
		if shift.Err != nil {
			note := m.faultNote(shift.Err)
			made.Problem = &note
			m.answer.Segments.Shifts = append(m.answer.Segments.Shifts, made)
			continue
		}
		moved := m
		moved.need = working.Put(m.book, segment.ShiftRule, "shift."+by+".need", segment.Metres(need+shift.By), m.need.In(), figure("segment.shift."+by))
		made.Alternative = *moved.alternative("shift."+by+".", shift.Makeup)
		m.answer.Segments.Shifts = append(m.answer.Segments.Shifts, made)
	}
}
