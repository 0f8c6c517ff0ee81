package desk

import (
	"slices"
	"strings"

	"gaugewright/calc/assess"
	"gaugewright/calc/basis"
	"gaugewright/calc/demand"
	"gaugewright/calc/document"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/words"
)

// presetOf is the figure of calc/basis that counts while nothing is typed at a
// place of a criterion; "" for none.
func (f *file) presetOf(path string) string {
	names, _ := document.Split(path)
	if len(names) < 4 || names[1] != "criteria" {
		return ""
	}
	c, _ := f.job().Criterion(names[2])
	switch place := strings.Join(names[3:], "/"); {
	case place == "reduction/tested":
		return figureOf("reduction.tested." + f.root.At(c.Path+"/reduction/test").Text())
	case place == "xi1":
		xi1, _ := demand.CorrelationFigures(len(f.partIDs(c.Path + "/tests")))
		return xi1
	case place == "xi2":
		_, xi2 := demand.CorrelationFigures(len(f.partIDs(c.Path + "/tests")))
		return xi2
	case strings.HasPrefix(place, "reduction/weights/"):
		return "risk.weight." + names[5]
	case names[3] == "combinations" && len(names) == 6 && names[5] == "factor":
		return c.SetFigure(names[4])
	}
	return ""
}

// sourceOf is the figure or formula of calc/basis that stands behind a field of
// a criterion; "" for none.
func (f *file) sourceOf(key, path string) string {
	names, _ := document.Split(path)
	if len(names) < 4 || names[1] != "criteria" {
		return ""
	}
	c, _ := f.job().Criterion(names[2])
	for _, p := range basis.Packages() {
		for _, part := range p.Parts {
			if p.ID == c.Package && path == c.Path+"/"+part.Field {
				return part.Figure
			}
		}
	}
	if figure := f.presetOf(path); figure != "" {
		return figure
	}
	if strings.HasPrefix(key, "criteria.reduction.ratings.") {
		return "demand.risk"
	}
	switch key {
	case "criteria.factor":
		return "factor.single"
	case "criteria.reduction.basic":
		return "demand.reduction"
	case "criteria.reduction.risk":
		return "demand.risk.row"
	case "criteria.reduction.share":
		return "reduction.benefit." + f.root.At(c.Path+"/reduction/test").Text()
	case "criteria.pileKind":
		return "tests.pressed"
	case "criteria.combinations.factor":
		return "demand.tests"
	case "criteria.stiff":
		return "demand.stiff"
	case "criteria.resistanceFactor":
		if figure := figureOf("resistance." + f.root.At(c.Path+"/resistanceTest").Text()); figure != "" {
			return figure
		}
		return "demand.resistance"
	case "criteria.dragFactor":
		return "demand.ground"
	case "criteria.setUp.ratio":
		return "setUp.high"
	case "criteria.perimeter":
		return "demand.shaft"
	}
	return ""
}

// figureOf is an id of calc/basis, or "" where there is none such.
func figureOf(id string) string {
	if _, ok := basis.Find(id); !ok {
		return ""
	}
	return id
}

func markSays(e basis.Entry) string { return words.Say("mark." + string(rune(e.Mark))) }

// basisOf writes what stands behind a field, and its mark; nil for none. It opens
// what was stated, with its source below, or else the source.
func (f *file) basisOf(key, path string) *document.Node {
	e, ok := basis.Find(f.sourceOf(key, path))
	if !ok {
		return nil
	}
	code, value := "source.says", f.localText(e.Value)
	switch {
	case e.Formula:
		code, value = "source.formula", ""
	case e.ID == f.presetOf(path):
		code = "source.counts"
	}
	says := words.Say(code, value, e.Document, e.Clause)
	if e.ID == "factor.single" {
		says = words.Say("basis.factor")
	}
	open := "basis:" + e.ID
	if f.root.At(path).Text() != "" {
		open = path
	}
	return newObject().with("says", text(says)).with("mark", text(markSays(e))).with("open", text(open)).Node
}

// besideSource is the borrowed figure or formula behind a stated value: not what
// the value is from, but what it can be held against. Null for none.
func (f *file) besideSource(key, path string) *document.Node {
	e, ok := basis.Find(f.sourceOf(key, path))
	if !ok {
		return document.NewNull()
	}
	code := "leaf.beside"
	if e.Formula {
		code = "leaf.besideFormula"
	}
	n := source(e)
	n.Set("title", text(words.Say(code, f.localText(e.Value))))
	return n
}

// reasonOf is what a person entered as the reason for a stated value, "" for
// none; asked says that the job has a place for it.
func (f *file) reasonOf(key, path string) (says string, asked bool) {
	names, _ := document.Split(path)
	if len(names) < 4 {
		return "", false
	}
	thing := f.root.Get("now").Get(names[1]).Get(names[2])
	at := func(path string) string { return thing.At(path).Text() }
	switch {
	case strings.HasPrefix(key, "criteria.hold."):
		return at("/hold/basis"), true
	case key == "criteria.setUp.ratio":
		return evidence("reason.setUp", at("/setUp/test"), at("/setUp/by"), at("/setUp/on")), true
	case key == "criteria.reduction.share", key == "criteria.reduction.tested", strings.HasPrefix(key, "criteria.tests."):
		return evidence("reason.credit", at("/credit/by"), at("/credit/why"), at("/credit/on")), true
	case slices.Contains(reasoned, key), strings.HasPrefix(key, "criteria.reduction."):
		return at("/basis"), true
	case key == "pileTypes.pressingLimit":
		return at("/pressingLimitBasis"), true
	case strings.HasPrefix(key, "rigs.circuits.efficiency."):
		return thing.Get("circuits").Get(names[4]).Get("efficiency").Get("basis").Text(), true
	}
	return "", false
}

// reasoned are the fields of a criterion that its basis stands for.
var reasoned = []string{"criteria.factor", "criteria.resistanceFactor", "criteria.xi1", "criteria.xi2", "criteria.combinations.factor",
	"criteria.dragFactor", "criteria.drag", "criteria.dugAway", "criteria.settling"}

// evidence says what is entered of what, who and when; "" where nothing is.
func evidence(code string, parts ...string) string {
	if strings.Join(parts, "") == "" {
		return ""
	}
	for i, p := range parts {
		if p == "" {
			parts[i] = words.Say("leaf.blank")
		}
	}
	return words.Say(code, parts...)
}

// whoSays is where a number is from in a few words: the basis that a person
// entered, or that there is none, or the borrowed figure with its mark.
func (f *file) whoSays(ref string) string {
	if id, ok := strings.CutPrefix(ref, "basis:"); ok {
		e, _ := basis.Find(id)
		return words.Say("source.brief", e.Document, markSays(e))
	}
	field, ok := job.FieldAt(ref)
	if !ok {
		return ""
	}
	says, asked := f.reasonOf(strings.TrimPrefix(field.Key(), "field."), ref)
	switch {
	case says != "":
		return words.Say("reason.says", says)
	case asked:
		return words.Say("reason.none")
	}
	return ""
}

// factorLines are the factors that the set load of a pile was worked out with,
// each with who says so; each opens.
func (f *file) factorLines(a assess.Answer) []*document.Node {
	var lines []*document.Node
	for _, factor := range a.Factors {
		n := &assess.Number{V: float64(factor.V), Unit: quantity.Must(""), Decimals: 4, Ref: factor.Ref}
		digits := f.root.At(factor.Ref).Text()
		if id, ok := strings.CutPrefix(factor.Ref, "basis:"); ok {
			e, _ := basis.Find(id)
			digits = e.Value
		}
		if s, err := quantity.ParseStated(digits, quantity.Dimensionless); err == nil {
			n.Unit, n.Decimals = s.Unit, s.Decimals()
		}
		says := f.whoSays(factor.Ref)
		if says == "" {
			says = f.whoSays("basis:" + stepBasis[factor.Key])
		}
		lines = append(lines, f.line(words.Say("line."+factor.Key), n, says))
	}
	return lines
}

// creditLine says who gave credit for tests and why; nil where nobody did.
func (f *file) creditLine(criterion string) []*document.Node {
	c, _ := f.job().Criterion(criterion)
	says := evidence("reason.credit", c.Credit.By, c.Credit.Why, c.CreditOn)
	if c.Scheme == "" || c.Scheme == "single factor" || says == "" {
		return nil
	}
	return []*document.Node{f.line(words.Say("thing.credit"), nil, says)}
}

// stepBasis is where the formula of a factor that is worked out stands.
var stepBasis = map[string]string{"reduction": "demand.tested", "setUpRatio": "demand.ownSetUp"}

// loadLines are the loads that the scheme of a pile starts from.
func (f *file) loadLines(p job.Pile) []*document.Node {
	c, _ := f.job().Criterion(p.Criterion)
	loads, _ := f.job().Loads(p.ID)
	line := func(label string, g job.Given[quantity.Force]) *document.Node {
		return f.line(label, f.given(g.Path(), g.Known(), float64(g.V), g.Stated), "")
	}
	lines := []*document.Node{line(words.Say("line.workingLoad"), loads.Working)}
	switch c.Scheme {
	case "strength reduction", "resistance factor":
		lines = append(lines, line(words.Say("field.piles.designAction"), loads.Design))
	case "static tests":
		for _, id := range c.Combinations() {
			action := loads.Action(id)
			lines = append(lines, line(f.combinationLabel(action.Path()), action))
		}
	}
	return lines
}
