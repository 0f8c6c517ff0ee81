package desk

import (
	"strings"

	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/words"
	"gaugewright/calc/working"
)

// mostRows is how many rows of a list one answer holds: it keeps a message to
// the page below 64 kB.
const mostRows = 60

// showPiles lists piles by their marks, a page at a time: all, those whose
// mark contains "find", or those in a "state". Looking for a state judges every
// pile of the job.
func (f *file) showPiles(r *document.Node) *document.Node {
	j := f.job()
	all := f.pilesInOrder()
	ids := f.chosenPiles(all, r.Get("find").Text(), assess.State(r.Get("state").Text()))
	from, last := pageOf(r, len(ids))
	rows := document.NewList()
	for _, id := range ids[from:last] {
		a, _ := f.answer(id)
		p, _ := j.Pile(id)
		o := newObject().with("id", text(id)).with("mark", text(f.marked(id, a.Mark))).with("type", text(f.typeSays(p))).with("rig", text(f.rigSays(p))).
			with("state", text(string(a.State))).with("stateSays", text(words.Say("state."+string(a.State)))).
			with("set", f.says(whenOpen(a, a.Set))).with("never", f.says(a.Never)).
			with("segments", text(f.pieces(a.Segments.Pieces))).with("total", f.says(a.Segments.Total)).with("segmentsSay", text(f.segmentsSay(a.Segments))).
			with("headState", text(a.Head.State)).with("cutSays", text(f.headSays(a.Head))).with("cut", f.says(a.Head.Cut)).with("surveyed", yes(a.Head.Surveyed))
		rows.Append(o.Node)
	}
	return okay().with("title", text(j.Title())).with("all", whole(len(all))).with("count", whole(len(ids))).with("from", whole(from)).with("rows", rows).Node
}

func (f *file) chosenPiles(ids []string, find string, state assess.State) []string {
	if find = strings.ToLower(strings.TrimSpace(find)); find == "" && state == "" {
		return ids
	}
	now := f.root.Get("now").Get("piles")
	chosen := []string{}
	for _, id := range ids {
		if find != "" && !strings.Contains(strings.ToLower(now.Get(id).Get("mark").Text()), find) {
			continue
		}
		if state != "" {
			if is, _ := f.judge().State(id); is != state {
				continue
			}
		}
		chosen = append(chosen, id)
	}
	return chosen
}

// pageOf is the part of a list of n that a request asks for: from, count.
func pageOf(r *document.Node, n int) (from, last int) {
	from, _ = r.Get("from").Int()
	count, ok := r.Get("count").Int()
	if !ok || count > mostRows {
		count = mostRows
	}
	from = max(0, min(from, n))
	return from, min(n, from+max(0, count))
}

// segmentsSay says why there is no make-up; blank where there is one.
func (f *file) segmentsSay(s assess.Segments) string {
	switch {
	case len(s.Needs) > 0:
		return words.Say("segments.needs", needs(s.Needs))
	case len(s.Pieces) == 0 && len(s.Notes) > 0:
		return words.Note(s.Notes[0])
	}
	return ""
}

// headSays is the instruction for the head in words.
func (f *file) headSays(h assess.Head) string {
	if len(h.Needs) > 0 {
		return words.Say("head.needs", needs(h.Needs))
	}
	if h.State == "" {
		return ""
	}
	var args []string
	switch h.State {
	case "to cut":
		args = []string{f.textOf(h.Cut), f.textOf(h.Saw)}
	case "bars short":
		args = []string{f.textOf(h.Short)}
	case "build up":
		if h.BuildUp == nil {
			return words.Say("head.build up.unknown")
		}
		args = []string{f.textOf(h.BuildUp)}
	}
	if expected := "head.expected." + h.State; !h.Surveyed && words.Has(expected) {
		return words.Say(expected, args...)
	}
	return words.Say("head."+h.State, args...)
}

// ground writes the pressures under the feet, each with what it is compared
// with.
func (f *file) ground(a assess.Answer, line func(string, *assess.Number, string) *document.Node) (says string, lines []*document.Node) {
	if len(a.GroundNeeds) > 0 {
		return words.Say("ground.needs", needs(a.GroundNeeds)), nil
	}
	p, _ := f.job().Pile(a.ID)
	kind := f.root.Get("now").Get("rigs").Get(p.Rig).Get("bearing").Get("kind").Text()
	for _, g := range a.Ground {
		said := ""
		switch {
		case g.Problem != nil:
			said = words.Note(*g.Problem)
		case g.Use != nil && kind != "":
			said = words.Say("ground.use", f.textOf(g.Use), f.textOf(g.Allowed), words.Say("choice."+kind))
		case g.Use != nil:
			said = words.Say("ground.useBlank", f.textOf(g.Use), f.textOf(g.Allowed))
		}
		if g.Largest {
			says = words.Say("ground.largest", f.textOf(g.Pressure))
		}
		lines = append(lines, line("ground."+g.Case, g.Pressure, said))
	}
	return says, lines
}

func (f *file) showPile(r *document.Node) *document.Node {
	id := r.Get("pile").Text()
	a, ok := f.judge().Whole(id, working.NewBook(""))
	if !ok {
		return refusal("desk.missing", id)
	}
	p, _ := f.judge().Job.Pile(id) // the judge's view: what is contested is not shown as known
	o := okay().with("pile", text(id)).with("mark", text(f.marked(id, a.Mark))).with("type", text(f.typeSays(p))).with("rig", text(f.rigSays(p)))
	o = f.readings(o, a).with("holdSays", text(f.hold(p)))

	line := func(code string, n *assess.Number, says string) *document.Node {
		return f.line(words.Say("line."+code), n, says)
	}
	group := func(code, says string, notes []assess.Note, lines ...*document.Node) *document.Node {
		return newGroup(words.Say("group."+code), says, words.Notes(notes), lines...)
	}
	s, h := a.Segments, a.Head
	setLine := "set"
	if a.State != assess.Open {
		setLine = "setNeeded"
	}
	loadAtSet := [2]*document.Node{line("loadAtSet", a.LoadAtSet, ""), line("mostAtSet", a.Most, "")}
	if a.Certificate != nil && a.Certificate.Jacks {
		loadAtSet = [2]*document.Node{line("loadThere", a.LoadAtSet, ""), line("mostAtSet", nil, "")}
	}
	loads := append(append(f.loadLines(p), f.factorLines(a)...), f.creditLine(p.Criterion)...)
	var unknown []assess.Note
	if len(a.UncertaintyNeeds) > 0 {
		unknown = []assess.Note{{Code: "doubt.unknown", Args: []string{needs(a.UncertaintyNeeds)}}}
	}
	reading := group("reading", "", unknown, append(loads,
		line("setLoad", a.SetLoad, ""), line(setLine, a.Set, ""), loadAtSet[0], loadAtSet[1],
		line("uncertainty", a.Uncertainty, ""), line("plainSet", a.PlainSet, ""), line("plainNever", a.PlainNever, ""),
		line("never", a.Never, ""), line("relief", a.Never, ""), line("area", a.Area, ""))...)
	segments := []*document.Node{line("pieces", nil, f.pieces(s.Pieces)), line("need", s.Need, ""), line("total", s.Total, ""), line("offCut", s.OffCut, ""), line("cost", s.Cost, "")}
	if s.Heaviest != nil {
		segments = append(segments, line("heaviest", s.Heaviest, ""))
	}
	if s.Fewest != nil {
		segments = append(segments, line("fewest", s.Fewest.OffCut, f.pieces(s.Fewest.Pieces)))
	}
	if s.Least != nil {
		segments = append(segments, line("least", s.Least.OffCut, f.pieces(s.Least.Pieces)))
	}
	segments = append(segments, f.toeLines(p)...)
	for i, j := range s.Laid {
		says := ""
		if j.Stop != nil {
			says = words.Say("line.jointStop", f.textOf(j.Stop))
		}
		segments = append(segments, f.line(words.Say("line.joint", itoa(i+1)), j.Level, says))
	}
	segments = append(segments, line("stickUp", s.StickUp, ""), line("decide", s.Decide, ""), line("toeLeft", s.ToeLeft, ""))
	for _, shift := range s.Shifts {
		segments = append(segments, f.shiftLine(shift))
	}
	level := "headExpected"
	if h.Surveyed {
		level = "headSurveyed"
	}
	head := []*document.Node{line(level, h.Level, ""), line("saw", h.Saw, ""), line("cut", h.Cut, ""), line("above", h.Above, ""),
		line("short", h.Short, ""), line("buildUp", h.BuildUp, "")}
	says, ground := f.ground(a, line)
	groups := document.NewList(reading, group("segments", f.segmentsSay(s), s.Notes, segments...), group("head", f.headSays(h), h.Notes, head...), group("ground", says, nil, ground...))
	return o.with("headState", text(h.State)).with("headSays", text(f.headSays(h))).with("groups", groups).
		with("survey", f.surveyBox(id)).with("drawing", f.drawing(p, a)).with("fieldsPath", text(p.Path)).Node
}

// line is a labelled number, or sentence, or both.
func (f *file) line(label string, n *assess.Number, says string) *document.Node {
	return newObject().with("label", text(label)).with("value", f.says(n)).with("says", text(says)).Node
}

// toeLines are the stated levels of the toe, where they are more than the
// founding level.
func (f *file) toeLines(p job.Pile) []*document.Node {
	var lines []*document.Node
	for _, level := range []struct {
		code string
		at   job.Given[quantity.Length]
	}{{"toe", p.ExpectedToe}, {"least toe", p.LeastToe}} {
		if level.at.Known() {
			lines = append(lines, f.line(words.Say("line."+level.code), f.given(level.at.Path(), true, float64(level.at.V), level.at.Stated), ""))
		}
	}
	return lines
}

// shiftLine says what a toe that ends higher or deeper would take.
func (f *file) shiftLine(s assess.Shift) *document.Node {
	code, by := "line.shiftDeeper", *s.By
	if by.V < 0 {
		code, by.V = "line.shiftHigher", -by.V
	}
	says := f.pieces(s.Pieces)
	if s.Problem != nil {
		says = words.Note(*s.Problem)
	}
	return f.line(words.Say(code, f.textOf(&by)), s.OffCut, says)
}
