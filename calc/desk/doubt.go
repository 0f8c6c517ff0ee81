package desk

import (
	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/quantity"
	"gaugewright/calc/words"
)

// doubtLine is the line about the doubt in the load at the set reading: "± 18 kN
// at 95 %, certificate K-118, 9 days left". Without a number it says what is
// missing.
func (f *file) doubtLine(a assess.Answer) *document.Node {
	if a.Set == nil && a.Certificate == nil {
		return document.NewNull()
	}
	says, known := "", false
	switch {
	case a.Uncertainty != nil && a.State == assess.Open:
		whole := *a.Uncertainty
		whole.Decimals = max(0, whole.Decimals-1)
		says, known = words.Say("doubt.level", f.textOf(&whole)), true
	case a.Certificate == nil:
		return document.NewNull() // "not calibrated" stands there, as large as can be
	case len(a.UncertaintyNeeds) > 0:
		says = words.Say("doubt.needs")
	case a.UncertaintyFault != nil:
		says = words.Say("doubt.notKnown")
	}
	join := func(more string) {
		if says != "" {
			says += words.Say("doubt.and")
		}
		says += more
	}
	if u := a.Certificate; u != nil {
		join(words.Say("doubt.certificate", named(u.Number)))
		if u.HasLeft {
			join(f.daysLeft(u.Left))
		}
	}
	if a.EfficiencyShare != nil && known {
		join(words.Say("doubt.efficiency", f.textOf(a.EfficiencyShare)))
	}
	if says == "" {
		return document.NewNull()
	}
	return newObject().with("says", text(says)).with("pile", text(a.ID)).Node
}

// said is a fact of a card or sheet.
type said struct{ code, says string }

// gaugedBy says by what the loads of a pile are read off the gauge: the
// certificate with its end, the efficiencies where jacks are not calibrated, and
// how far the load at the set may be off.
func (f *file) gaugedBy(a assess.Answer) (list []said) {
	head := words.Say("efficiency.head")
	if u := a.Certificate; u != nil {
		says := named(u.Number)
		if u.HasLeft {
			says = words.Say("card.certificateDay", says, u.LastDay, f.daysLeft(u.Left))
		}
		if u.Piles > 0 {
			says = words.Say("card.certificatePiles", says, itoa(u.Piles))
		}
		list, head = append(list, said{"certificate", says}), words.Say("efficiency.jacks")
	}
	if a.Low != nil {
		list = append(list, said{"efficiency", head + ", " + words.Say("efficiency.two", f.textOf(a.Low), f.textOf(a.High))})
	}
	if a.Uncertainty != nil {
		list = append(list, said{"uncertainty", words.Say("doubt.within", f.textOf(a.Uncertainty))})
	}
	return list
}

func (f *file) daysLeft(n int) string {
	if n == 1 {
		return words.Say("doubt.day")
	}
	return words.Say("doubt.days", itoa(n))
}

// showDoubt is the budget of the load at the set reading of a pile: each doubt
// with its distribution and what it brings, its share, and what would be left
// without it.
func (f *file) showDoubt(r *document.Node) *document.Node {
	id := r.Get("of").Text()
	d, ok := f.judge().Doubts(id, nil)
	if !ok {
		return refusal("desk.missing", id)
	}
	a, _ := f.answer(id)
	say := words.Say
	o := f.sheet("doubt").with("over", text(words.Say("doubt.of", named(a.Mark))))
	switch {
	case len(a.UncertaintyNeeds) > 0:
		return o.with("lead", texts([]string{say("doubt.unknown", needs(a.UncertaintyNeeds))})).with("groups", f.doubtLinks(a)).Node
	case a.UncertaintyFault != nil:
		return o.with("lead", texts([]string{words.Note(*a.UncertaintyFault)})).with("groups", f.doubtLinks(a)).Node
	case len(d.Rows) == 0:
		return o.with("lead", texts([]string{say("doubt.noReading")})).with("groups", f.doubtLinks(a)).Node
	}
	lines := []*document.Node{f.line(say("line.uncertainty"), d.U, ""), f.line(say("line.setAt"), a.Set, ""), f.line(say("line.coverageFactor"), d.K, say("doubt.freedom", f.freedom(d.Freedom)))}
	if d.Low != nil {
		lines = append(lines, f.line(say("line.exact"), d.Exact, say("doubt.limits", f.textOf(d.Low), f.textOf(d.High))))
	} else if d.LimitsFault != nil {
		lines = append(lines, f.line(say("line.exact"), d.Exact, words.Note(*d.LimitsFault)))
	}
	lines = append(lines, f.line(say("line.chanceShort"), d.Short, say("doubt.oneSided")), f.line(say("line.chancePassed"), d.Passed, ""))
	groups := document.NewList(newGroup(say("group.whole"), "", nil, lines...))
	var rows []*document.Node
	for _, row := range d.Rows {
		line := f.line(say("term."+row.Key), row.Contribution, say("doubt.row", say("spread."+string(rune(row.Shape))), f.freedom(row.Freedom), f.textOf(row.Without)))
		line.Set("bar", fraction(row.Share.V))
		line.Set("barSays", text(f.textOf(row.Share)))
		rows = append(rows, line)
	}
	notes := []string{say("doubt.table"), say("doubt.notIn")}
	if a.EfficiencyShare != nil {
		notes = append(notes, say("doubt.guess", f.textOf(a.EfficiencyShare)))
	}
	groups.Append(newGroup(say("group.terms"), "", notes, rows...))
	for _, g := range f.doubtLinks(a).Items() {
		groups.Append(g)
	}
	return o.with("lead", texts([]string{say("doubt.lead")})).with("groups", groups).Node
}

// doubtLinks lead on to the certificate, and to where what is missing is
// entered.
func (f *file) doubtLinks(a assess.Answer) *document.Node {
	links := document.NewList()
	add := func(label, path, sheet, of string) {
		links.Append(newObject().with("label", text(label)).with("path", text(path)).with("sheet", text(sheet)).with("of", text(of)).Node)
	}
	if u := a.Certificate; u != nil {
		add(words.Say("doubt.openCertificate", named(u.Number)), "", "certificate", u.ID)
	}
	p, _ := f.job().Pile(a.ID)
	if r, ok := f.job().Rig(p.Rig); ok {
		if c, ok := r.Circuit(p.Circuit); ok {
			add(words.Say("thing.circuit")+": "+named(c.Name), c.Path, "", "")
			if g, ok := f.job().Gauge(c.Gauge); ok {
				add(words.Say("thing.gauge")+": "+named(g.Serial), g.Path, "", "")
				add(words.Say("sheet.gauge"), "", "gauge", g.ID)
			}
		}
	}
	group := newGroup("", "", nil)
	group.Set("links", links)
	return document.NewList(group)
}

// freedom writes degrees of freedom; infinite ones as a word.
func (f *file) freedom(n float64) string {
	if n > 1e8 {
		return words.Say("freedom.certain")
	}
	return quantity.Print(n, 1, f.job().Sign())
}
