package desk

import (
	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/job"
	"gaugewright/calc/words"
)

// Assess reads a job file and returns the answers of all its piles as JSON, as
// of a day, YYYY-MM-DD, by which certificates hold.
// The fields, by name; a number is {"says", "unit", "rounded", "open"} as
// everywhere, and null where it is not known:
//
//	format          "gaugewright answer"
//	job, title      as in the file
//	day             the day by which certificates hold
//	piles[]         one answer a pile, in the natural order of the marks
//	  pile, mark    id and mark
//	  state         incomplete | limit missing | closed | open | refused
//	  needs[]       what is not entered yet, as words
//	  setLoad       load that must be reached
//	  setReading    rounded up to a division; given in every state where it can
//	                be computed, so look at state before using it
//	  loadAtSet     load at the set reading with the low efficiency
//	  mostAtSet     the same with the high efficiency
//	  uncertainty   of the load at the set reading, 95 %; null where not known
//	  certificate   number of the certificate it goes by, "" for none
//	  neverExceed   rounded down to a division; null while a limit is missing
//	  governs       kind of the limit that gives neverExceed, "" for none
//	  limits[]      kind, state (entered | waived | missing), value, reading, use
//	  ballast       to be added where the reaction alone closes the window
//	  reasons[], ways[], notes[]   sentences
//	  segments      need, total, offCut, cost, joints, pieces[] {count, length, name},
//	                fewestJoints and leastOffCut {pieces, joints, total, offCut} where they differ,
//	                needs[], notes[]
//	  head          state (to cut | at saw level | bars short | build up | ""), surveyed, level,
//	                saw, cut, above, short, buildUp, needs[], notes[]
//
// Where the file is bad, the complaints come back instead, one sentence each.
func Assess(data []byte, day string) (answer []byte, complaints []string) {
	f, complaints := readWhole(data)
	if complaints != nil {
		return nil, complaints
	}
	f.on(day)
	piles := document.NewList()
	for _, id := range f.job().Piles() {
		a, _ := f.answer(id)
		piles.Append(f.whole(a))
	}
	return newObject().with("format", text("gaugewright answer")).with("job", text(f.job().ID())).
		with("title", text(f.job().Title())).with("day", text(day)).with("piles", piles).Stable(), nil
}

// Format reads a job file and returns it in the layout of files.
func Format(data []byte) (out []byte, complaints []string) {
	f, complaints := readWhole(data)
	if complaints != nil {
		return nil, complaints
	}
	return f.root.Stable(), nil
}

// Labels returns the labels of the page as JSON: those that it brings along, or
// the late ones that it asks a running core for.
func Labels(late bool) []byte {
	o := newObject()
	keys, labels := words.Labels(late)
	for _, k := range keys {
		o = o.with(k, text(labels[k]))
	}
	return o.Stable()
}

func readWhole(data []byte) (*file, []string) {
	root, found := document.Read(data)
	if found.None() {
		job.Migrate(root)
		found = job.Check(root)
	}
	if found.None() {
		f := &file{root: root}
		f.readHistory()
		return f, nil
	}
	return nil, complaintsSay(found)
}

// complaintsSay writes complaints for a shell, one sentence each with its place.
func complaintsSay(found document.Complaints) []string {
	var list []string
	for _, c := range found.List {
		says := words.Say(c.Code, c.Found, c.Allowed, c.Example)
		switch {
		case c.Line > 0 && c.Path != "":
			says = words.Say("place", words.Say("complaint.at", itoa(c.Line), c.Path), says)
		case c.Line > 0:
			says = words.Say("place", words.Say("complaint.line", itoa(c.Line)), says)
		case c.Path != "":
			says = words.Say("place", words.Say("complaint.where", c.Path), says)
		}
		list = append(list, says)
	}
	if more := found.Count - len(list); more > 0 {
		list = append(list, words.Say("complaint.more", itoa(more)))
	}
	return list
}

func (f *file) whole(a assess.Answer) *document.Node {
	governs := ""
	limits := document.NewList()
	for i, l := range a.Limits {
		if i == a.Governs {
			governs = string(l.Kind)
		}
		limits.Append(newObject().with("kind", text(string(l.Kind))).with("state", text(limitStates[l.State])).with("value", f.says(l.Value)).
			with("reading", f.says(l.Reading)).with("use", f.says(l.Use)).Node)
	}
	said := func(keys []string) *document.Node {
		list := []string{}
		for _, k := range keys {
			list = append(list, words.Say("need."+k))
		}
		return texts(list)
	}
	pieces := func(list []assess.Piece) *document.Node {
		n := document.NewList()
		for _, p := range list {
			n.Append(newObject().with("count", whole(p.Count)).with("length", f.says(p.Length)).with("name", text(p.Name)).Node)
		}
		return n
	}
	alternative := func(m *assess.Alternative) *document.Node {
		if m == nil {
			return document.NewNull()
		}
		return newObject().with("pieces", pieces(m.Pieces)).with("joints", whole(m.Joints)).with("total", f.says(m.Total)).with("offCut", f.says(m.OffCut)).Node
	}
	s, h := a.Segments, a.Head
	segments := newObject().with("need", f.says(s.Need)).with("total", f.says(s.Total)).with("offCut", f.says(s.OffCut)).with("cost", f.says(s.Cost)).
		with("joints", whole(s.Joints)).with("pieces", pieces(s.Pieces)).with("fewestJoints", alternative(s.Fewest)).with("leastOffCut", alternative(s.Least)).
		with("needs", said(s.Needs)).with("notes", texts(words.Notes(s.Notes)))
	head := newObject().with("state", text(h.State)).with("surveyed", yes(h.Surveyed)).with("level", f.says(h.Level)).with("saw", f.says(h.Saw)).
		with("cut", f.says(h.Cut)).with("above", f.says(h.Above)).with("short", f.says(h.Short)).with("buildUp", f.says(h.BuildUp)).
		with("needs", said(h.Needs)).with("notes", texts(words.Notes(h.Notes)))
	return newObject().with("pile", text(a.ID)).with("mark", text(a.Mark)).with("state", text(string(a.State))).with("needs", said(a.Needs)).
		with("setLoad", f.says(a.SetLoad)).with("setReading", f.says(a.Set)).with("loadAtSet", f.says(a.LoadAtSet)).with("mostAtSet", f.says(a.Most)).
		with("uncertainty", f.says(a.Uncertainty)).with("certificate", text(certificateOf(a))).with("neverExceed", f.says(a.Never)).with("governs", text(governs)).with("limits", limits).with("ballast", f.says(a.Ballast)).
		with("reasons", texts(words.Notes(a.Reasons))).with("ways", texts(words.Notes(a.Ways))).with("notes", texts(words.Notes(a.Notes))).
		with("segments", segments.Node).with("head", head.Node).Node
}

func certificateOf(a assess.Answer) string {
	if a.Certificate == nil {
		return ""
	}
	return a.Certificate.Number
}
