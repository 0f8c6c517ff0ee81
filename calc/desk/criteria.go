package desk

import (
	"strings"

	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/job"
	"gaugewright/calc/words"
)

// mostMarks is how many marks a line of the criteria sheet names.
const mostMarks = 12

// pressing is what piles have in common that are pressed by one set of
// criteria: type, rig, circuit and criterion.
type pressing struct{ pileType, rig, circuit, criterion string }

// showCriteria is the sheet that hangs out before the first pile: a part, and on
// paper a page, for each pile type and rig, with the reading of every load, what
// it must never exceed, how the set is held, and a line to sign on.
func (f *file) showCriteria() *document.Node {
	var order []pressing
	piles := map[pressing][]job.Pile{}
	for _, id := range f.pilesInOrder() {
		p, _ := f.judge().Job.Pile(id)
		key := pressing{p.Type, p.Rig, p.Circuit, p.Criterion}
		if piles[key] == nil {
			order = append(order, key)
		}
		piles[key] = append(piles[key], p)
	}
	groups := document.NewList()
	for _, key := range order[:min(len(order), mostRows)] {
		groups.Append(f.criteriaPart(piles[key]))
	}
	return f.sheet("criteria").with("lead", texts([]string{words.Say("criteria.lead")})).with("groups", groups).Node
}

func (f *file) criteriaPart(piles []job.Pile) *document.Node {
	first := piles[0]
	var order []reached
	alike := map[reached][]job.Pile{}
	for _, p := range piles {
		a, _ := f.judge().Pile(p.ID, nil)
		key := f.reached(p, a)
		if alike[key] == nil {
			order = append(order, key)
		}
		alike[key] = append(alike[key], p)
	}
	var lines []*document.Node
	for _, key := range order[:min(len(order), mostRows)] {
		lines = append(lines, f.loadLine(alike[key]))
	}
	fact := func(code, says string) {
		if says != "" {
			lines = append(lines, f.line(words.Say(code), nil, says))
		}
	}
	j := f.job()
	if c, ok := j.Criterion(first.Criterion); ok {
		fact("field.criteria.basis", c.Basis)
		if c.FoundingRule != "" {
			fact("field.criteria.foundingRule", words.Say("choice."+c.FoundingRule))
		}
	}
	a, _ := f.answer(first.ID)
	lines = append(append(lines, f.factorLines(a)...), f.creditLine(first.Criterion)...)
	fact("card.hold", f.hold(first))
	if rig, ok := j.Rig(first.Rig); ok {
		if rig.Ballast.Known() {
			fact("card.ballast", localised(rig.Ballast.Stated, j.Sign()))
		}
		c, _ := rig.Circuit(first.Circuit)
		if g, ok := j.Gauge(c.Gauge); ok {
			fact("card.gauge", named(g.Serial))
		}
	}
	for _, by := range f.gaugedBy(a) {
		fact("card."+by.code, by.says)
	}
	fact("criteria.signed", words.Say("criteria.line"))
	title := strings.Join([]string{named(f.typeSays(first)), named(f.rigSays(first)), named(f.root.Get("now").Get("criteria").Get(first.Criterion).Get("name").Text())}, ", ")
	n := newGroup(title, "", cautions(), lines...)
	n.Set("page", yes(true))
	if path := "/now/criteria/" + document.Escape(first.Criterion); f.lostEntered(path) {
		n.Set("sketch", f.groundSketch(path))
	}
	return n
}

// reached is the set reading of a pile, blank where there is none, and what is
// said beside it. Piles share a line only where all of it is the same.
type reached struct{ set, says string }

func (f *file) reached(p job.Pile, a assess.Answer) reached {
	if a.State != assess.Open {
		return reached{"", f.big(a)}
	}
	says := words.Say("criteria.setLoad", f.textOf(a.SetLoad), f.textOf(a.Never))
	if load := f.loads(p); load != "" {
		says = words.Say("criteria.load", load, says)
	}
	return reached{f.textOf(a.Set), says}
}

// loads are what the scheme of a pile starts from, as stated.
func (f *file) loads(p job.Pile) string {
	c, _ := f.job().Criterion(p.Criterion)
	stated, _ := f.job().Loads(p.ID)
	label, load := words.Say("need.field.piles.workingLoad"), stated.Working
	switch c.Scheme {
	case "strength reduction", "resistance factor":
		label, load = words.Say("need.field.piles.designAction"), stated.Design
	case "static tests":
		return ""
	}
	return label + " " + localised(load.Stated, f.job().Sign())
}

// loadLine is the reading of piles that share it.
func (f *file) loadLine(piles []job.Pile) *document.Node {
	a, _ := f.answer(piles[0].ID)
	var marks []string
	for _, p := range piles[:min(len(piles), mostMarks)] {
		marks = append(marks, f.marked(p.ID, p.Mark))
	}
	label := strings.Join(marks, ", ")
	if more := len(piles) - len(marks); more > 0 {
		label = words.Say("criteria.more", label, itoa(more))
	}
	return f.line(label, whenOpen(a, a.Set), f.reached(piles[0], a).says)
}
