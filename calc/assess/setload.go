package assess

import (
	"gaugewright/calc/demand"
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// lacks are the errors of calc/demand that say that something is still to be
// entered, with the key of its field.
var lacks = map[string]string{
	"demand.credit.by":   "field.criteria.credit.by",
	"demand.credit.why":  "field.criteria.credit.why",
	"demand.setUp.test":  "field.criteria.setUp.test",
	"demand.setUp.by":    "field.criteria.setUp.by",
	"demand.setUp.on":    "field.criteria.setUp.on",
	"demand.setUp.which": "field.criteria.setUp.wholePile",
	"demand.tests.some":  "field.criteria.tests.setLoad",
}

// setLoad works out the set load by the scheme of the criterion on its ground.
// What is not entered stands in the needs; what cannot be used is a reason, and
// refused says that the pile then has no reading at all.
func (w *judge) setLoad() (load working.Of[quantity.Force], ok, refused bool) {
	a, b := w.answer, w.book
	w.loads, _ = w.Loads(w.pile.ID)
	scheme, needs := w.criterion.Demand(w.loads, b)
	ground, more, err := w.criterion.Ground(w.loads, working.Of[quantity.Length]{}, b)
	a.Needs = append(append(a.Needs, needs...), more...)
	if err == nil && len(a.Needs) > 0 {
		return load, false, false
	}
	var r demand.Result
	if err == nil {
		r, err = demand.Compute(b, scheme, ground)
	}
	if err != nil {
		return load, false, w.unusable(err)
	}
	a.SetLoad = w.force(r.SetLoad)
	w.scope(scheme, ground, r)
	return r.SetLoad, true, false
}

// unusable gives the reason why there is no set load; refused is false where
// something is only still to be entered.
func (w *judge) unusable(err error) (refused bool) {
	e, ok := err.(*demand.InputError)
	if !ok {
		return true
	}
	w.answer.Reasons = append(w.answer.Reasons, Note{e.Code, e.Args(w.Sign())})
	key, lacking := lacks[e.Code]
	if lacking {
		w.need(key)
	}
	return !lacking
}

// scope adds what bounds the set load. That a set says nothing of a group is
// said of piles that stand in one.
func (w *judge) scope(s demand.Scheme, g demand.Ground, r demand.Result) {
	b, p := w.book, demand.Pile{}
	if w.pile.WorkingLoad.Known() {
		p.WorkingLoad = w.pile.WorkingLoad.Of(b)
	}
	if toe := w.pile.Toe(); toe.Known() && w.pile.Platform.Known() && toe.V < w.pile.Platform.V {
		p.Embedded = working.Put(b, demand.EmbeddedRule, "embedded", w.pile.Platform.V-toe.V, w.pile.Platform.In(b), toe.In(b))
	}
	if w.pileType.Width.Known() {
		p.Width = w.pileType.Width.Of(b)
	}
	for _, n := range demand.Notes(b, s, g, r, p) {
		if n.Code == "note.noGroup" && w.pile.Group == "" {
			continue
		}
		note := Note{Code: n.Code}
		for _, v := range n.Values {
			note.Args = append(note.Args, w.noted(v).Text(w.Sign()))
		}
		w.answer.Notes = append(w.answer.Notes, note)
	}
}

// noted shows a value of a note in the unit of its dimension.
func (w *judge) noted(v demand.Value) *Number {
	unit := quantity.Must("")
	switch v.Dim {
	case quantity.Forces:
		unit = w.forceUnit()
	case quantity.Lengths:
		unit = w.lengthUnit()
	}
	return number(working.Of[float64]{V: v.V, Ref: v.Ref}, unit)
}
