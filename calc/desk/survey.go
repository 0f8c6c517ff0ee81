package desk

import (
	"strings"

	"gaugewright/calc/document"
	"gaugewright/calc/history"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/words"
)

// survey records the level of a pile head as it was measured. It is a record:
// a later survey of the same pile counts before it and does not change it. The
// text is read as a level of the pile is; one that cannot be read is refused, and
// stays in its box.
func (f *file) survey(r *document.Node) *document.Node {
	pile, id, at := r.Get("pile").Text(), r.Get("ids").Item(0).Text(), moment(r.Get("at").Text())
	if !f.job().Has("piles", pile) {
		return refusal("desk.missing", pile)
	}
	if id == "" || at == "" {
		return refusal("desk.ids")
	}
	path := document.Join("/now/piles", pile) + "/cutoff"
	field, _ := job.FieldAt(path)
	level, typed, err := quantity.ReadTyped(r.Get("typed").Text(), field.Dim, f.unitOf(field, path), f.job().Sign())
	if err != nil {
		p := f.textProblem(err)
		return refusal(p.code, p.found, p.allowed, p.example)
	}
	if !typed {
		return refusal("survey.blank")
	}
	if te := field.Problem(level.Text()); te != nil {
		p := fieldProblem(te, r.Get("typed").Text())
		return refusal(p.code, p.found, p.allowed, p.example)
	}
	digits, unit, _ := strings.Cut(level.Text(), " ")
	s := r.Get("sitting")
	part := newObject().with("from", text(at)).with("columns", text("s "+unit)).with("lines", document.NewList(text("0 "+digits)))
	parts := document.NewMap()
	parts.Set(s.Get("id").Text(), part.Node)
	record := newObject().with("kind", text("level")).with("of", text("head")).with("pile", text(pile)).with("parts", parts)
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

// surveyBox is where a surveyed head is typed.
func (f *file) surveyBox(pile string) *document.Node {
	path := document.Join("/now/piles", pile) + "/cutoff"
	field, _ := job.FieldAt(path)
	return newObject().with("label", text(words.Say("survey.label"))).with("unit", text(f.unitOf(field, path).Symbol)).
		with("act", text(words.Say("survey.act"))).Node
}
