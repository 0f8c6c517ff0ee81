package desk

import (
	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/quantity"
	"gaugewright/calc/words"
	"gaugewright/calc/working"
)

// showConvert reads the gauge of a pile both ways. "reading" and "load" are
// texts as typed; each is answered beside its own box, and nothing is entered.
func (f *file) showConvert(r *document.Node) *document.Node {
	pile := r.Get("pile").Text()
	j := f.job()
	if pile == "" {
		if list := j.Piles(); len(list) > 0 {
			pile = list[0]
		}
	}
	p, ok := j.Pile(pile)
	if !ok {
		return refusal("desk.missing", pile)
	}
	pressure, force := quantity.Must("MPa"), quantity.Must("kN")
	if rig, ok := j.Rig(p.Rig); ok {
		if c, ok := rig.Circuit(p.Circuit); ok {
			if g, ok := j.Gauge(c.Gauge); ok && g.Division.Known() {
				pressure = g.Division.Stated.Unit
			}
		}
	}
	if p.WorkingLoad.Known() {
		force = p.WorkingLoad.Stated.Unit
	}
	return okay().with("pile", text(pile)).with("mark", text(named(p.Mark))).with("rig", text(f.rigSays(p))).
		with("reading", f.converted(pile, r.Get("reading").Text(), pressure)).with("load", f.converted(pile, r.Get("load").Text(), force)).Node
}

// converted answers one box: what was understood, or why nothing was, and the
// two values on the other side of the gauge.
func (f *file) converted(pile, typed string, unit quantity.Unit) *document.Node {
	units := []string{}
	for _, u := range quantity.Units(unit.Dim) {
		units = append(units, u.Symbol)
	}
	o := newObject().with("unit", text(unit.Symbol)).with("units", texts(units)).with("typed", text(typed)).with("echo", text(""))
	q, given, err := quantity.ReadTyped(typed, unit.Dim, unit, f.job().Sign())
	if err == nil && given && q.Value < 0 {
		err = &quantity.TextError{Code: "typed.range", Found: typed, Allowed: "0 " + unit.Symbol}
	}
	if err != nil {
		return o.with("problem", problemNode(f.textProblem(err))).Node
	}
	if !given {
		return o.Node
	}
	c, _ := f.judge().Convert(pile, q, working.NewBook(""))
	says := ""
	if len(c.Needs) > 0 {
		says = words.Say("big.incomplete", needs(c.Needs))
	}
	return o.with("echo", text(localised(q, f.job().Sign()))).with("says", text(says)).with("lines", f.conversionLines(c)).with("notes", texts(words.Notes(c.Notes))).Node
}

// conversionLines are what a reading or a load amounts to: one load where the
// jacks are calibrated, else the least and the most; how far it may be off, and
// what follows from that.
func (f *file) conversionLines(c assess.Conversion) *document.Node {
	list := document.NewList()
	least, most := "least", c.Most
	if c.Least != nil && most != nil && c.Least.Ref == most.Ref {
		least, most = "load", nil
	}
	for _, m := range []struct {
		id string
		n  *assess.Number
	}{{least, c.Least}, {"most", most}, {"movingLeast", c.MovingLeast}, {"movingMost", c.MovingMost}, {"uncertainty", c.Uncertainty}, {"short", c.Short},
		{"passed", c.Passed}, {"reach", c.Reach}, {"within", c.Within}} {
		if m.n != nil {
			line := f.line(words.Say("convert."+m.id), m.n, "")
			line.Set("id", text(m.id))
			list.Append(line)
		}
	}
	return list
}

// conversionStep opens a number of a conversion or of a cabin card.
func (f *file) conversionStep(ref string) (*document.Node, bool) {
	pile, q, ok := assess.ConversionAt(ref)
	if !ok {
		return nil, false
	}
	book := working.NewBook("")
	f.judge().Convert(pile, q, book)
	step := book.Find(ref)
	if step == nil {
		return nil, false
	}
	return f.step(step, assess.Answer{}, book), true
}

// showCard is the page that hangs in the cabin: every reading that may be seen
// with the load it means. There is none while the window is not open.
func (f *file) showCard(r *document.Node) *document.Node {
	id := r.Get("pile").Text()
	a, ok := f.answer(id)
	if !ok {
		return refusal("desk.missing", id)
	}
	j := f.job()
	p, _ := j.Pile(id)
	o := okay().with("title", text(j.Title())).with("mark", text(named(a.Mark))).with("state", text(string(a.State))).with("big", text(f.big(a)))
	facts := document.NewList()
	fact := func(code, says string) {
		if says != "" {
			facts.Append(newObject().with("label", text(words.Say("card."+code))).with("says", text(says)).Node)
		}
	}
	fact("rig", f.rigSays(p))
	if rig, ok := j.Rig(p.Rig); ok {
		if c, ok := rig.Circuit(p.Circuit); ok {
			fact("cylinders", f.circuitSays(c))
			if g, ok := j.Gauge(c.Gauge); ok {
				fact("gauge", named(g.Serial))
			}
		}
		if rig.Ballast.Known() {
			fact("ballast", localised(rig.Ballast.Stated, j.Sign()))
		}
	}
	fact("type", f.typeSays(p))
	if a.SetLoad != nil {
		fact("setLoad", f.textOf(a.SetLoad))
	}
	for _, by := range f.gaugedBy(a) {
		fact(by.code, by.says)
	}
	for _, l := range a.Limits {
		if l.PitchingReading != nil {
			fact("pitching", words.Say("card.notAbove", f.textOf(l.PitchingReading)))
		}
	}
	fact("hold", f.hold(p))
	byJacks, doubtful := a.Certificate != nil && a.Certificate.Jacks, a.Uncertainty != nil
	columns := []string{words.Say("card.reading"), words.Say("card.load")}
	if !byJacks {
		columns = []string{words.Say("card.reading"), words.Say("card.least"), words.Say("card.most")}
	}
	if doubtful {
		columns = append(columns, words.Say("card.doubt"))
	}
	rows := document.NewList()
	for _, row := range f.judge().Card(a, nil).Rows {
		mark := ""
		switch {
		case row.Set && row.Never:
			mark = words.Say("card.setAndNever")
		case row.Set:
			mark = words.Say("card.set")
		case row.Never:
			mark = words.Say("card.never")
		}
		place := id + "/at/" + row.Reading.Text(quantity.Point) + "/"
		row.Least.Ref, row.Most.Ref = place+"least", place+"most"
		cells := document.NewList(f.says(row.Reading), f.says(row.Least))
		if !byJacks {
			cells.Append(f.says(row.Most))
		}
		if doubtful && row.Uncertainty != nil {
			row.Uncertainty.Ref = place + "uncertainty"
			cells.Append(f.says(row.Uncertainty))
		}
		rows.Append(newObject().with("cells", cells).
			with("set", yes(row.Set)).with("never", yes(row.Never)).with("mark", text(mark)).Node)
	}
	voids := document.NewList()
	for _, code := range []string{"card.void.circuit", "card.void.gauge", "card.void.ballast", "card.void.pile", "card.void.repair"} {
		voids.Append(text(words.Say(code)))
	}
	return o.with("facts", facts).with("columns", texts(columns)).with("rows", rows).with("voids", voids).with("reasons", texts(words.Notes(a.Reasons))).
		with("notes", texts(words.Notes(a.Notes))).with("cautions", texts(cautions())).Node
}
