package assess

import "gaugewright/calc/job"

// raking refuses a pile that is not to stand plumb: reading, make-up and head
// hold along a vertical axis only. A rake that was typed but cannot be read, or
// of which there are two values, leaves the pile incomplete: it is not zero.
func (w *judge) raking() bool {
	a, rake := w.answer, w.pile.Rake
	switch {
	case rake.Known() && rake.V == 0:
		return false
	case rake.Known():
		note := Note{"reason.rake", []string{stated(rake).Text(w.Sign())}}
		a.State, a.Reasons = Refused, append(a.Reasons, note)
		a.Segments.Notes = append(a.Segments.Notes, note)
	case rake.State != job.Blank || w.Unread(rake.Path()):
		a.State = Incomplete
		w.need("field.piles.rake")
		a.Segments.Needs = append(a.Segments.Needs, "field.piles.rake")
	default:
		return false
	}
	return true
}

// State judges the readings of a pile and nothing else, which is what a plan of
// thousands of piles shows. It is the state that [Job.Pile] gives.
func (j *Job) State(pile string) (s State, ok bool) {
	p, ok := j.Job.Pile(pile)
	if !ok {
		return "", false
	}
	a := Answer{ID: pile, Governs: -1}
	w := &judge{Job: j, pile: p, answer: &a}
	w.gather()
	if !w.raking() {
		w.reading()
	}
	return a.State, true
}
