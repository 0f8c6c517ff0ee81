package desk

import (
	"gaugewright/calc/document"
	"gaugewright/calc/job"
	"gaugewright/calc/words"
)

// survey records the level of a pile head as it was measured. It is a record:
// a later survey of the same pile counts before it and does not change it. The
// text is read as a level of the pile is; one that cannot be read is refused, and
// stays in its box.
func (f *file) survey(r *document.Node) *document.Node {
	pile := r.Get("pile").Text()
	if !f.job().Has("piles", pile) {
		return refusal("desk.missing", pile)
	}
	path := document.Join("/now/piles", pile) + "/cutoff"
	level, refused := f.measured(path, r.Get("typed").Text(), "survey.blank")
	if refused != nil {
		return refused
	}
	field, _ := job.FieldAt(path)
	if te := field.Problem(level.Text()); te != nil {
		p := fieldProblem(te, r.Get("typed").Text())
		return refusal(p.code, p.found, p.allowed, p.example)
	}
	return f.record(r, [][2]string{{"kind", "level"}, {"of", "head"}, {"pile", pile}}, "s "+level.Unit.Symbol, "0 "+level.Digits)
}

// surveyBox is where a surveyed head is typed.
func (f *file) surveyBox(pile string) *document.Node {
	return box("survey", "", "", words.Say("survey.act"), [][2]string{{"pile", pile}}, f.input("typed", words.Say("survey.label"), document.Join("/now/piles", pile)+"/cutoff"))
}
