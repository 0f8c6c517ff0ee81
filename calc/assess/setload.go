package assess

import (
	"gaugewright/calc/demand"
	"gaugewright/calc/pile"
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
	ground, more, err := w.criterion.Ground(w.loads, w.perimeter, b)
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
	w.factors(scheme, ground, r)
	w.scope(scheme, ground, r)
	return r.SetLoad, true, false
}

// perimeter is that of the section along which layers hold the pile; zero where
// the section does not tell it. Of an H section it does not: soil between the
// flanges may go down with the pile or not. Nor does a tapered pile: each layer
// has a perimeter of its own.
func (w *judge) perimeter() (around working.Of[quantity.Length]) {
	t, b := w.pileType, w.book
	if !t.Width.Known() || t.OtherShape || t.Tip.Known() {
		return around
	}
	switch t.Shape {
	case "square":
		if s, err := pile.Square(t.Width.V); err == nil {
			around = working.Put(b, pile.SquareSurfaceRule, "section.perimeter", s.Surface, t.Width.In(b))
		}
	case "round", "timber", "spun", "tube":
		if s, err := pile.Circle(t.Width.V); err == nil {
			around = working.Put(b, pile.RoundSurfaceRule, "section.perimeter", s.Surface, t.Width.In(b))
		}
	}
	return around
}

// Factor is a factor that the set load was worked out with, by what it is
// called: a key of calc/words.
type Factor struct {
	Key string
	working.Of[quantity.Ratio]
}

// factors lists what the demand was multiplied or divided by, for who asks who
// says so: with places only.
func (w *judge) factors(s demand.Scheme, g demand.Ground, r demand.Result) {
	if !w.book.On() {
		return
	}
	add := func(key string, v working.Of[quantity.Ratio]) {
		if v.V != 0 {
			w.answer.Factors = append(w.answer.Factors, Factor{key, v})
		}
	}
	switch s := s.(type) {
	case demand.Single:
		add("factor", s.Factor)
	case demand.Reduction:
		add("reduction", r.Factor)
	case demand.ResistanceFactor:
		add("resistanceFactor", r.Factor)
	case demand.Tests:
		add("correlationMean", s.Xi1)
		add("correlationLeast", s.Xi2)
		add("combinationFactor", s.Combinations[r.Governs].Factor)
	}
	add("dragFactor", g.DragFactor)
	add("setUpRatio", r.SetUp)
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
