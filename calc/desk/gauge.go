package desk

import (
	"strings"

	"gaugewright/calc/document"
	"gaugewright/calc/history"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/words"
	"gaugewright/calc/working"
)

// record adds a record of what happened, with one line of numbers under
// columns: the host's ids and time go into it.
func (f *file) record(r *document.Node, members [][2]string, columns, line string) *document.Node {
	id, at := r.Get("ids").Item(0).Text(), moment(r.Get("at").Text())
	if id == "" || at == "" {
		return refusal("desk.ids")
	}
	s := r.Get("sitting")
	part := newObject().with("from", text(at)).with("columns", text(columns)).with("lines", document.NewList(text(line)))
	parts := document.NewMap()
	parts.Set(s.Get("id").Text(), part.Node)
	record := newObject()
	for _, m := range members {
		if m[1] != "" {
			record = record.with(m[0], text(m[1]))
		}
	}
	record = record.with("parts", parts)
	history.Begin(f.root, history.Sitting{ID: s.Get("id").Text(), Who: s.Get("who").Text(), Device: s.Get("device").Text(), On: moment(s.Get("on").Text())})
	records := f.root.Get("records")
	if records.Kind() != document.Map {
		records = document.NewMap()
		f.root.Set("records", records)
	}
	records.Set(id, record.Node)
	f.judged, f.levels, f.orderMade = nil, nil, nil
	return okay().Node
}

// measured reads the text of a box that goes into a record: a value of a
// field's kind. A text that cannot be read, or none, is refused and stays in its
// box.
func (f *file) measured(path, typed, blank string) (s quantity.Stated, refused *document.Node) {
	field, _ := job.FieldAt(path)
	s, given, err := quantity.ReadTyped(typed, field.Dim, f.unitOf(field, path), f.job().Sign())
	if err != nil {
		p := f.textProblem(err)
		return s, refusal(p.code, p.found, p.allowed, p.example)
	}
	if !given {
		return s, refusal(blank)
	}
	return s, nil
}

// zero records what a gauge shows without pressure; it may be below zero.
func (f *file) zero(r *document.Node) *document.Node {
	gauge := r.Get("gauge").Text()
	g, ok := f.job().Gauge(gauge)
	if !ok {
		return refusal("desk.missing", gauge)
	}
	s, refused := f.measured(g.Path+"/division", r.Get("typed").Text(), "zero.blank")
	if refused != nil {
		return refused
	}
	if g.FullScale.Known() && (s.Value > float64(g.FullScale.V)/4 || s.Value < -float64(g.FullScale.V)/4) {
		return refusal("zero.far", localised(s, f.job().Sign()))
	}
	return f.record(r, [][2]string{{"kind", "zero"}, {"gauge", gauge}, {"by", strings.TrimSpace(r.Get("name").Text())}}, "s "+s.Unit.Symbol, "0 "+s.Digits)
}

// compareGauges records two gauges on one circuit at the same moment.
func (f *file) compareGauges(r *document.Node) *document.Node {
	gauge, other := r.Get("gauge").Text(), r.Get("other").Text()
	g, ok := f.job().Gauge(gauge)
	if !ok {
		return refusal("desk.missing", gauge)
	}
	h, ok := f.job().Gauge(other)
	if !ok || other == gauge {
		return refusal("compareGauges.other")
	}
	here, refused := f.measured(g.Path+"/division", r.Get("typed").Text(), "compareGauges.blank")
	if refused != nil {
		return refused
	}
	there, refused := f.measured(h.Path+"/division", r.Get("typedOther").Text(), "compareGauges.blank")
	switch {
	case refused != nil:
		return refused
	case here.Value < 0 || there.Value < 0:
		return refusal("compareGauges.blank")
	}
	return f.record(r, [][2]string{{"kind", "comparison"}, {"gauge", gauge}, {"other", other}, {"by", strings.TrimSpace(r.Get("name").Text())}},
		"s "+here.Unit.Symbol+" "+there.Unit.Symbol, "0 "+here.Digits+" "+there.Digits)
}

// showGauge is what was checked of a gauge, with the boxes for the next check.
func (f *file) showGauge(r *document.Node) *document.Node {
	id := r.Get("of").Text()
	s, ok := f.judge().GaugeSheet(id, working.NewPlaces(""))
	if !ok {
		return refusal("desk.missing", id)
	}
	say := words.Say
	var zeros []*document.Node
	for _, z := range s.Zeros {
		verdict := "zero.unknown"
		if z.Known {
			verdict = map[bool]string{true: "zero.within", false: "zero.beyond"}[z.Within]
		}
		zeros = append(zeros, f.line(momentSays(z.On, z.By), z.Reading, say(verdict)))
	}
	var notes []string
	if s.OneOnly != "" {
		notes = append(notes, say("zero.once", s.OneOnly))
	}
	zeroSays := ""
	if len(zeros) == 0 {
		zeroSays = say("zero.none")
	}
	var compared []*document.Node
	for _, c := range s.Comparisons {
		says := say("compareGauges.row", f.textOf(c.Here), f.textOf(c.There), named(c.Other))
		switch {
		case len(c.Needs) > 0:
			says += " " + say("compareGauges.needs", needs(c.Needs))
		case c.Agree:
			says += " " + say("compareGauges.agree")
		default:
			says += " " + say("compareGauges.stop")
		}
		compared = append(compared, f.line(momentSays(c.On, c.By), c.E, says))
	}
	groups := document.NewList(newGroup(say("group.zeros"), zeroSays, notes, zeros...))
	boxes := document.NewList(box("zero", say("zero.title"), say("zero.says"), say("record.act"), [][2]string{{"gauge", id}},
		f.input("typed", say("zero.reading"), s.Path+"/division"), plainInput("name", say("sign.name"))))
	if others := f.otherGauges(id); len(others) > 0 {
		groups.Append(quiet(newGroup(say("group.comparisons"), "", []string{say("compareGauges.says")}, compared...)))
		which := plainInput("other", say("compareGauges.which"))
		which.Set("choices", document.NewList(others...))
		boxes.Append(box("compareGauges", say("compareGauges.title"), "", say("record.act"), [][2]string{{"gauge", id}}, which,
			f.input("typed", say("compareGauges.here"), s.Path+"/division"), plainInput("typedOther", say("compareGauges.there")), plainInput("name", say("sign.name"))))
	}
	return f.sheet("gauge").with("over", text(say("sheet.gauge"))).with("title", text(named(s.Serial))).with("lead", texts([]string{say("zero.lead")})).
		with("groups", groups).with("boxes", boxes).Node
}

// otherGauges are the other gauges of the job, as choices, each with the unit in
// which it is read.
func (f *file) otherGauges(id string) (list []*document.Node) {
	for _, g := range f.things("gauges") {
		if g.id == id {
			continue
		}
		path := "/now/gauges/" + document.Escape(g.id) + "/division"
		field, _ := job.FieldAt(path)
		list = append(list, newObject().with("value", text(g.id)).with("label", text(words.Say("compareGauges.named", g.name, f.unitOf(field, path).Symbol))).Node)
	}
	return list
}

func momentSays(on, by string) string {
	on = strings.Replace(strings.TrimSuffix(on, "Z"), "T", " ", 1)
	if len(on) > 16 {
		on = on[:16]
	}
	if by == "" {
		return words.Say("moment.says", on)
	}
	return words.Say("moment.by", on, by)
}

// box is a form whose text goes into a record, or signs something, at once.
func box(do, title, says, act string, args [][2]string, inputs ...*document.Node) *document.Node {
	fixed := document.NewMap()
	for _, a := range args {
		fixed.Set(a[0], text(a[1]))
	}
	return newObject().with("do", text(do)).with("title", text(title)).with("says", text(says)).with("act", text(act)).with("args", fixed).
		with("inputs", document.NewList(inputs...)).Node
}

// input is a box of a number that is read as the field at a path is.
func (f *file) input(name, label, path string) *document.Node {
	field, _ := job.FieldAt(path)
	return newObject().with("name", text(name)).with("label", text(label)).with("unit", text(f.unitOf(field, path).Symbol)).Node
}

func plainInput(name, label string) *document.Node {
	return newObject().with("name", text(name)).with("label", text(label)).with("unit", text("")).Node
}
