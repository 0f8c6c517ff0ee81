package desk

import (
	"slices"
	"strconv"
	"strings"

	"gaugewright/calc/basis"
	"gaugewright/calc/document"
	"gaugewright/calc/job"
	"gaugewright/calc/words"
)

// criterionForm asks for the scheme first and then for what that scheme needs,
// and no more.
func (f *file) criterionForm(path, id string) form {
	c, _ := f.job().Criterion(id)
	made := form{title: words.Say("thing.criterion"), name: c.Name}
	add := func(title string, names ...string) *section {
		made.sections = append(made.sections, section{title: words.Say("thing." + title), paths: below(path, names...)})
		return &made.sections[len(made.sections)-1]
	}
	load, hold := add("load", "name", "scheme"), []string{"package", "hold/time", "hold/movement", "hold/repeats", "hold/basis"}
	credit := false
	switch c.Scheme {
	case "strength reduction":
		var names, weights []string
		names, weights, credit = f.reductionFields(path)
		load.paths = append(load.paths, below(path, append(names, "basis")...)...)
		if len(weights) > 0 {
			add("riskWeights", weights...)
		}
	case "static tests":
		credit = true
		load.paths = append(load.paths, below(path, "xi1", "xi2", "stiff", "pileKind", "basis")...)
		f.parts(&made, path, "test", "tests", "name", "resistance", "setLoad", "on", "kind")
		f.parts(&made, path, "combination", "combinations", "name", "set", "factor")
	case "resistance factor":
		test := f.root.At(path + "/resistanceTest").Text()
		credit = test != "" && test != "none"
		load.paths = append(load.paths, below(path, "resistanceFactor", "resistanceTest", "basis")...)
	default:
		load.paths = append(load.paths, below(path, "package", "factor", "basis")...)
		hold = hold[1:]
	}
	if credit {
		add("credit", "credit/by", "credit/why", "credit/on")
	}
	add("hold", hold...)
	ground := []string{"drag", "dragFactor", "dugAway", "settling", "setUp/ratio"}
	if up := f.root.At(path + "/setUp/ratio").Text(); up != "" {
		ground = append(ground, "setUp/wholePile", "setUp/longTerm", "setUp/test", "setUp/by", "setUp/on")
	}
	if len(f.partIDs(path+"/layers")) > 0 {
		ground = append(ground, "perimeter")
	}
	add("lost", ground...).sketch = f.groundSketch(path)
	f.parts(&made, path, "layer", "layers", "name", "zone", "thickness", "resistance")
	add("toe", "foundingRule", "leastLoad")
	add("joints", "joints/clear", "joints/last", "joints/most", "joints/stagger")
	return made
}

// reductionFields are those of a strength reduction: a basic factor that is
// typed goes before an average rating, and that before the ratings with their
// weights.
func (f *file) reductionFields(path string) (names, weights []string, credit bool) {
	said := func(name string) bool { return f.root.At(path+"/reduction/"+name).Text() != "" }
	names = []string{"reduction/basic"}
	if !said("basic") {
		names = append(names, "reduction/redundancy", "reduction/risk")
		if !said("risk") {
			for _, key := range basis.RiskKeys {
				names, weights = append(names, "reduction/ratings/"+key), append(weights, "reduction/weights/"+key)
			}
		}
	}
	names = append(names, "reduction/test")
	if said("test") && f.root.At(path+"/reduction/test").Text() != "none" {
		names, credit = append(names, "reduction/share", "reduction/tested"), true
	}
	return names, weights, credit
}

// parts adds a section for each part of a kind, in the order in which they were
// added, with the way to strike it out, and the way to add one.
func (f *file) parts(made *form, path, what, collection string, names ...string) {
	for i, id := range f.partIDs(path + "/" + collection) {
		at := document.Join(path+"/"+collection, id)
		made.sections = append(made.sections, section{title: words.Say("thing."+what, itoa(i+1)), paths: below(at, names...),
			links: []thing{{at, words.Say("thing.part", words.Say("thing."+what, itoa(i+1)))}}})
	}
	last := &made.sections[len(made.sections)-1]
	last.adds = append(last.adds, addition{what, path})
}

// partIDs lists the parts of a collection that are not struck out, oldest first.
func (f *file) partIDs(path string) []string {
	var list []string
	for id, part := range f.root.At(path).Members() {
		if part.Get("struck") == nil {
			list = append(list, id)
		}
	}
	slices.Sort(list)
	return list
}

// criterionParts are the collections of parts of a criterion, by what is added.
var criterionParts = map[string]string{"test": "tests", "combination": "combinations", "layer": "layers"}

// partForm is the form of one such part by itself, where it is struck out.
func (f *file) partForm(path, collection string) (form, bool) {
	for what, name := range criterionParts {
		if name == collection && f.root.At(path) != nil {
			title := words.Say("thing."+what, "")
			return form{title: strings.TrimSpace(title), name: f.root.At(path + "/name").Text(),
				sections: []section{{title: words.Say("thing.names"), paths: below(path, "name")}}}, true
		}
	}
	return form{}, false
}

// loadSection asks a pile for what the scheme of its criterion needs of it.
func (f *file) loadSection(p job.Pile) section {
	c, known := f.job().Criterion(p.Criterion)
	s := section{title: words.Say("thing.load")}
	if known {
		s.links = []thing{{c.Path, words.Say("thing.criterion") + ": " + named(c.Name)}}
	}
	switch c.Scheme {
	case "strength reduction", "resistance factor":
		s.paths = below(p.Path, "designAction")
	case "static tests":
		for _, id := range c.Combinations() {
			s.paths = append(s.paths, p.Path+"/actions/"+document.Escape(id)+"/load")
		}
	}
	s.paths = append(s.paths, p.Path+"/workingLoad")
	for _, name := range []string{"drag", "dugAway", "settling"} {
		asked := f.root.At(c.Path+"/"+name).Text() != "" || f.root.At(p.Path+"/"+name).Text() != ""
		if name == "drag" {
			asked = asked || f.root.At(c.Path+"/dragFactor").Text() != ""
		} else {
			asked = asked || len(f.partIDs(c.Path+"/layers")) > 0
		}
		if known && asked {
			s.paths = append(s.paths, p.Path+"/"+name)
		}
	}
	return s
}

// isCombination says that a path leads to the action of a combination that the
// pile's criterion has.
func (f *file) isCombination(names []string) bool {
	if len(names) != 6 || names[1] != "piles" || names[3] != "actions" {
		return false
	}
	p, _ := f.job().Pile(names[2])
	c, ok := f.job().Criterion(p.Criterion)
	return ok && slices.Contains(c.Combinations(), names[4])
}

// combinationLabel names the action of a combination by it.
func (f *file) combinationLabel(path string) string {
	names, _ := document.Split(path)
	p, _ := f.job().Pile(names[2])
	c, _ := f.job().Criterion(p.Criterion)
	return words.Say("field.piles.actions.load") + ": " + named(c.CombinationName(names[4]))
}

// optionSays names a choice; a set of factors with what it is for the kind of
// pile that the criterion states.
func (f *file) optionSays(field job.Field, path, choice string) string {
	says := words.Say("choice." + choice)
	if field.Pattern != "/criteria/*/combinations/*/set" {
		return says
	}
	names, _ := document.Split(path)
	e, ok := basis.Find(basis.SetFigure(f.root.At("/now/criteria/"+document.Escape(names[2])+"/pileKind").Text(), choice))
	if !ok {
		return says
	}
	return words.Say("choice.set", says, f.localText(e.Value), markSays(e))
}

// packages are the presets as choices, each with where it comes from; a name
// of a person's own stays one of them.
func packages(stored string, add func(value, label string)) {
	own := stored != ""
	for _, p := range basis.Packages() {
		e, _ := basis.Find(p.Parts[0].Figure)
		add(p.ID, words.Say("package.says", words.Say("package."+p.ID), e.Document, words.Say("mark."+string(rune(e.Mark)))))
		own = own && p.ID != stored
	}
	if own {
		add(stored, stored)
	}
}

// takePackage fills what a preset has into a criterion, as one entry. What the
// preset does not have stays; a mixture is warned about.
func (f *file) takePackage(r *document.Node, path, id string) *document.Node {
	at := slices.IndexFunc(basis.Packages(), func(p basis.Package) bool { return p.ID == id })
	if names, ok := document.Split(path); !ok || len(names) != 3 || names[1] != "criteria" || at < 0 || f.root.At(path) == nil {
		return refusal("desk.missing", id)
	}
	patch := document.NewMap()
	set := func(name, value string) {
		f.forget(path + "/" + name)
		if p, ok := f.job().Patch(path+"/"+name, text(value)); ok {
			document.MergePatch(patch, p)
		}
	}
	set("package", id)
	for _, part := range basis.Packages()[at].Parts {
		e, _ := basis.Find(part.Figure)
		source := e.Document
		if e.Edition != "none" {
			source += ", " + e.Edition
		}
		set(part.Field, e.Value)
		if part.Field == "factor" {
			set("basis", source)
		} else {
			set("hold/basis", source)
		}
	}
	if !f.holds(patch) {
		f.change(r, patch, false)
	}
	return okay().Node
}

// mixed warns of parts of a criterion that come from different places.
func (f *file) mixed(id string) []string {
	c, ok := f.job().Criterion(id)
	if !ok {
		return nil
	}
	var list []string
	for _, part := range c.Mixed() {
		if part.Field == "factor" && c.Scheme != "" && c.Scheme != "single factor" {
			continue
		}
		path := c.Path + "/" + part.Field
		field, _ := job.FieldAt(path)
		label, value := words.Say(field.Key()), f.localText(f.root.At(path).Text())
		if e, ok := basis.Find(part.Figure); ok {
			list = append(list, words.Say("note.mixedPart", label, value, words.Say("package."+c.Package), f.localText(e.Value)))
		} else {
			list = append(list, words.Say("note.mixedOutside", label, value, words.Say("package."+c.Package)))
		}
	}
	if c.MixedBasis() {
		list = append(list, words.Say("note.mixedBasis", c.Basis, c.HoldBasis))
	}
	return list
}

// schemeRows are the rows of load and factor of a sizing. Of a single factor they
// are boxes; another scheme is named and opens in its form.
func (f *file) schemeRows(p job.Pile) []*document.Node {
	c, _ := f.job().Criterion(p.Criterion)
	row := func(id, label string) object { return newObject().with("id", text(id)).with("label", text(label)) }
	working, factor := p.Path+"/workingLoad", "/now/criteria/"+p.Criterion+"/factor"
	if c.Scheme == "" || c.Scheme == "single factor" {
		return []*document.Node{row("load", words.Say("field.piles.workingLoad")).with("field", f.field(working)).Node,
			row("factor", words.Say("row.factor")).with("field", f.field(factor)).Node}
	}
	load := row("load", words.Say("field.piles.designAction"))
	if c.Scheme == "static tests" {
		loads, _ := f.job().Loads(p.ID)
		known, all := 0, c.Combinations()
		for _, id := range all {
			if loads.Action(id).Known() {
				known++
			}
		}
		load = load.with("path", text(p.Path)).with("says", text(words.Say("row.combinations", strconv.Itoa(known), strconv.Itoa(len(all)))))
	} else {
		load = load.with("field", f.field(p.Path+"/designAction"))
	}
	return []*document.Node{load.Node, row("factor", words.Say("field.criteria.scheme")).with("path", text(c.Path)).with("says", text(words.Say("choice."+c.Scheme))).Node}
}
