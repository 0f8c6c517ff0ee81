package desk

import (
	"slices"
	"strings"

	"gaugewright/calc/basis"
	"gaugewright/calc/document"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/words"
)

// field writes one box of a form.
func (f *file) field(path string) *document.Node {
	field, ok := job.FieldAt(path)
	if !ok {
		return document.NewNull()
	}
	key := strings.TrimPrefix(field.Key(), "field.")
	kinds := map[job.Kind]string{job.Quantity: "quantity", job.Words: "text", job.Choice: "choice", job.Reference: "reference", job.Count: "count",
		job.Date: "text", job.Instant: "text", job.Columns: "text", job.Lines: "lines"}
	label, kind := words.Say(field.Key()), kinds[field.Kind]
	switch key {
	case "criteria.package":
		kind = "choice"
	case "piles.actions.load":
		label = f.combinationLabel(path)
	}
	o := newObject().with("path", text(path)).with("label", text(label)).with("kind", text(kind))
	stored := f.root.At(path).Text()
	typed, unit, echo, state := stored, "", stored, "given"
	sign := f.job().Sign()
	if field.Kind == job.Quantity {
		unit = f.unitOf(field, path).Symbol
		if s, err := quantity.ParseStated(stored, field.Dim); err == nil {
			typed, echo = quantity.Localise(s.Digits, sign), localised(s, sign)
		}
		units := []string{}
		for _, u := range quantity.Units(field.Dim) {
			units = append(units, u.Symbol)
		}
		o = o.with("units", texts(units))
	}
	if f.contested(path) {
		o = o.with("contested", yes(true))
	}
	if field.Kind == job.Lines && f.root.At(path).Len() > 0 {
		stored, typed, echo = "lines", f.pointsTyped(path), words.Say("points.count", itoa(f.root.At(path).Len()))
	}
	switch stored {
	case "":
		state = "blank"
	case job.NotKnown, job.NotApplicable:
		state = stored
		echo = words.Say("choice." + stored)
		typed = echo
	}
	if raw := f.root.Get("unread").Get(path); raw != nil {
		typed, echo, state = raw.Text(), "", "unread"
		if _, p := f.read(field, path, typed); p != nil {
			o = o.with("problem", problemNode(p))
		} else {
			o = o.with("problem", problemNode(&problem{code: "typed.again"}))
		}
	}
	others := document.NewList()
	for _, other := range field.Other {
		others.Append(newObject().with("value", text(other)).with("label", text(words.Say("choice."+other))).Node)
	}
	o = o.with("typed", text(typed)).with("unit", text(unit)).with("echo", text(echo)).with("state", text(state)).
		with("minus", yes(field.Kind == job.Quantity && field.Min < 0)).with("others", others)
	if list := f.options(field, path); list != nil {
		o = o.with("choices", list)
	}
	if says := f.tabledSays(path); says != "" && stored == "" {
		o = o.with("hint", text(words.Say("hint.tabled", says)))
	} else if words.Has("hint." + key) {
		o = o.with("hint", text(words.Say("hint."+key)))
	}
	if key == "criteria.package" {
		names, _ := document.Split(path)
		if warned := f.mixed(names[2]); len(warned) > 0 {
			o = o.with("hint", text(strings.Join(warned, " ")))
		}
	}
	if names := []string{"criteria.name", "rigs.name", "pileTypes.name"}; slices.Contains(names, key) {
		if says := f.pressedSays(path); says != "" {
			o = o.with("hint", text(says))
		}
	}
	if b := f.basisOf(key, path); b != nil {
		o = o.with("basis", b)
	}
	return o.Node
}

// options lists what a choice or reference may be; nil for other fields.
func (f *file) options(field job.Field, path string) *document.Node {
	j := f.job()
	list := document.NewList()
	add := func(value, label string) {
		list.Append(newObject().with("value", text(value)).with("label", text(label)).Node)
	}
	switch {
	case field.Pattern == "/criteria/*/package":
		packages(f.root.At(path).Text(), add)
	case field.Kind == job.Choice:
		for _, c := range field.Choices {
			if f.offers(path, c) {
				add(c, f.optionSays(field, path, c))
			}
		}
	case field.Kind != job.Reference:
		return nil
	case field.To == "circuits":
		// The circuits of the rig that the same thing names beside them.
		r, ok := j.Rig(f.root.At(path[:strings.LastIndexByte(path, '/')] + "/rig").Text())
		if !ok {
			return list
		}
		for _, id := range r.Circuits() {
			c, _ := r.Circuit(id)
			add(id, named(c.Name))
		}
	default:
		for _, thing := range f.things(field.To) {
			add(thing.id, thing.name)
		}
	}
	return list
}

type thing struct{ id, name string }

// things lists a collection by name.
func (f *file) things(collection string) []thing {
	j := f.job()
	var list []thing
	add := func(id, name string) { list = append(list, thing{id, named(name)}) }
	switch collection {
	case "rigs":
		for _, id := range j.Rigs() {
			r, _ := j.Rig(id)
			add(id, r.Name)
		}
	case "gauges":
		for _, id := range j.Gauges() {
			g, _ := j.Gauge(id)
			add(id, g.Serial)
		}
	case "pileTypes":
		for _, id := range j.PileTypes() {
			p, _ := j.PileType(id)
			add(id, p.Name)
		}
	case "criteria":
		for _, id := range j.Criteria() {
			c, _ := j.Criterion(id)
			add(id, c.Name)
		}
	case "certificates":
		for _, id := range j.Certificates() {
			c, _ := j.Certificate(id)
			add(id, c.Number)
		}
	case "groups":
		for _, id := range j.Groups() {
			add(id, j.GroupName(id))
		}
	}
	return list
}

// section is a part of a form.
type section struct {
	title  string
	paths  []string
	links  []thing // id is the path of another form
	sheets []sheetLink
	adds   []addition
	// sketch is drawn beside the questions; nil for none.
	sketch *document.Node
}

// sheetLink leads to a sheet about a thing.
type sheetLink struct{ label, view, of string }

type addition struct{ what, path string }

// form describes the form of a thing by the collection it stands in.
type form struct {
	title, name string
	sections    []section
	limit       string // that can be waived here, "" for none
}

func (f *file) showForm(r *document.Node) *document.Node {
	path := r.Get("path").Text()
	made, ok := f.formAt(path)
	if !ok {
		return refusal("desk.missing", path)
	}
	list := document.NewList()
	for _, s := range made.sections {
		fields, links, adds := document.NewList(), document.NewList(), document.NewList()
		for _, p := range s.paths {
			fields.Append(f.field(p))
		}
		for _, l := range s.links {
			links.Append(newObject().with("label", text(l.name)).with("path", text(l.id)).Node)
		}
		for _, l := range s.sheets {
			links.Append(newObject().with("label", text(l.label)).with("path", text("")).with("sheet", text(l.view)).with("of", text(l.of)).Node)
		}
		for _, a := range s.adds {
			adds.Append(newObject().with("label", text(words.Say("add."+a.what))).with("what", text(a.what)).with("path", text(a.path)).Node)
		}
		one := newObject().with("title", text(s.title)).with("fields", fields).with("links", links).with("adds", adds)
		if s.sketch != nil {
			one = one.with("sketch", s.sketch)
		}
		list.Append(one.Node)
	}
	o := okay().with("path", text(path)).with("title", text(made.title)).with("name", text(named(made.name))).with("sections", list).with("readOnly", yes(f.readOnly))
	names, _ := document.Split(path)
	whole := len(names) == 3 || len(names) == 5 && names[1] == "criteria"
	o = o.with("copy", yes(whole && names[1] == "piles")).with("strike", yes(whole))
	if made.limit == "" {
		return o.with("waiver", document.NewNull()).Node
	}
	at := path + "/waived/" + made.limit
	fields := document.NewList()
	for _, name := range []string{"by", "role", "on", "why"} {
		fields.Append(f.field(at + "/" + name))
	}
	return o.with("waiver", newObject().with("limit", text(made.limit)).with("label", text(words.Say("limit."+made.limit))).with("path", text(at)).
		with("active", yes(f.root.At(at+"/by").Text() != "")).with("fields", fields).with("says", text(words.Say("waiver.says"))).Node).Node
}

func below(path string, names ...string) []string {
	list := make([]string, len(names))
	for i, n := range names {
		list[i] = path + "/" + n
	}
	return list
}

func (f *file) formAt(path string) (form, bool) {
	names, ok := document.Split(path)
	if !ok || len(names) == 0 || names[0] != "now" {
		return form{}, false
	}
	say := words.Say
	j := f.job()
	switch {
	case len(names) == 1:
		links := []thing{{"/now/stock", say("thing.stock")}, {"/now/strata", say("thing.strata")}}
		for _, c := range []struct{ collection, word string }{{"rigs", "rig"}, {"pileTypes", "type"}, {"criteria", "criterion"}, {"certificates", "certificate"}, {"groups", "pileGroup"}} {
			for _, t := range f.things(c.collection) {
				links = append(links, thing{"/now/" + c.collection + "/" + document.Escape(t.id), say("thing."+c.word) + ": " + t.name})
			}
		}
		return form{title: say("thing.job"), name: j.Title(), sections: []section{
			{title: say("thing.names"), paths: below(path, "title", "datum", "decimalSign", "jointPrice", "guard"), links: links,
				adds: []addition{{"pile", ""}, {"rig", ""}, {"type", ""}, {"criterion", ""}, {"pileGroup", ""}}},
		}}, true
	case len(names) == 2 && names[1] == "stock":
		return f.stockForm(), true
	case len(names) == 2 && names[1] == "strata":
		return f.strataForm(), true
	case len(names) == 5 && names[1] == "rigs" && names[3] == "circuits":
		return f.circuitForm(path, names[2], names[4])
	case len(names) == 5 && names[1] == "criteria":
		return f.partForm(path, names[3])
	case len(names) != 3 || f.root.At(path) == nil:
		return form{}, false
	}
	switch names[1] {
	case "rigs":
		return f.rigForm(path, names[2])
	case "gauges":
		g, _ := j.Gauge(names[2])
		return form{title: say("thing.gauge"), name: g.Serial, limit: "gauge", sections: []section{
			{title: say("thing.dial"), paths: below(path, "serial", "fullScale", "division", "class", "share", "zeroError", "celsius")},
			f.certificatesOf("", "", names[2], path),
		}}, true
	case "certificates":
		return f.certificateForm(path, names[2]), true
	case "pileTypes":
		p, _ := j.PileType(names[2])
		return form{title: say("thing.type"), name: p.Name, limit: "pile", sections: []section{
			{title: say("thing.section"), paths: below(path, sectionFields(p)...)},
			{title: say("thing.strength"), paths: below(path, strengthFields(p)...)},
			{title: say("thing.free"), paths: below(path, freeFields(p)...)},
			{title: say("thing.parts"), paths: below(path, "splice/kind", "splice/class", "splice/capacity", "followerCapacity", "gripLimit")},
			{title: say("thing.headDetails"), paths: below(path, "bars", "lap")},
		}}, true
	case "criteria":
		return f.criterionForm(path, names[2]), true
	case "piles":
		p, _ := j.Pile(names[2])
		return form{title: say("thing.pile"), name: p.Mark, sections: []section{
			{title: say("thing.names"), paths: below(path, "mark", "type", "rig", "circuit", "criterion")},
			f.loadSection(p),
			{title: say("thing.levels"), paths: below(path, "platform", "founding", "expectedToe", "leastToe", "cutoff", "stickUp")},
			{title: say("thing.place"), paths: below(path, "group", "east", "north", "rake"), adds: []addition{{"pileGroup", ""}}},
			{title: say("thing.ground"), paths: below(path, "softDepth", "preBored", "follower", "note")},
		}}, true
	case "groups":
		return form{title: say("thing.pileGroup"), name: j.GroupName(names[2]), sections: []section{
			{title: say("thing.names"), paths: below(path, "name")},
		}}, true
	}
	return form{}, false
}

// offers says whether a choice makes sense at a path: sections of a table are
// offered for the shape that is stated.
func (f *file) offers(path, choice string) bool {
	if at, ok := strings.CutSuffix(path, "/section"); ok {
		s, tabled := basis.FindSection(choice)
		shape := f.root.At(at + "/shape").Text()
		return !tabled || shape == "" || shape == s.Shape
	}
	return true
}

// tabledSays is the measure of a tabled section that counts while none is typed
// at the path, "" for every other path.
func (f *file) tabledSays(path string) string {
	names, _ := document.Split(path)
	if len(names) != 4 || names[1] != "pileTypes" {
		return ""
	}
	p, _ := f.job().PileType(names[2])
	s, ok := basis.FindSection(p.Section)
	if !ok || p.OtherShape || s.Figure(names[3]) == "" {
		return ""
	}
	figure, _ := basis.Find(s.Figure(names[3]))
	return f.localText(figure.Value)
}

// sectionFields are the measures that a shape has.
func sectionFields(p job.PileType) []string {
	list := []string{"name", "shape", "section"}
	switch p.Shape {
	case "H":
		list = append(list, "depth", "width", "web", "flange")
	case "spun", "tube":
		list = append(list, "width", "wall")
	case "timber":
		list = append(list, "width", "tip")
	case "":
	default:
		list = append(list, "width")
	}
	return append(list, "area", "gyration")
}

// strengthFields are what the chosen rule needs; the maker's stated load
// counts beside every rule.
func strengthFields(p job.PileType) []string {
	list := []string{"pressingLimit", "pressingLimitBasis", "drivingLimit"}
	switch p.Rule {
	case "while pressing", "0.8 fck with prestress":
		list = append(list, "concrete/prestress", "concrete/strength")
		if p.Concrete.Strength.Known() {
			return append(list, "concrete/specimen")
		}
		return append(list, "concrete/class", "concrete/age", "concrete/hardening")
	case "0.8 fy", "0.9 fy":
		return append(list, "steel/grade", "steel/yield")
	case "0.8 timber":
		return append(list, "timber/class", "timber/strength")
	}
	return list
}

// freeFields are what buckling needs.
func freeFields(p job.PileType) []string {
	list := []string{"stiffness", "buckling/lengthFactor", "buckling/pitchingFactor"}
	if p.Shape == "H" || p.Shape == "tube" || p.Material == "steel" {
		list = append(list, "buckling/curve")
	}
	return list
}

func (f *file) rigForm(path, id string) (form, bool) {
	r, ok := f.job().Rig(id)
	if !ok {
		return form{}, false
	}
	var links []thing
	for _, c := range r.Circuits() {
		circuit, _ := r.Circuit(c)
		links = append(links, thing{circuit.Path, words.Say("thing.circuit") + ": " + named(circuit.Name)})
	}
	made := form{title: words.Say("thing.rig"), name: r.Name, limit: "reaction", sections: []section{
		{title: words.Say("thing.names"), paths: below(path, "name"), links: links, adds: []addition{{"circuit", path}}},
		{title: words.Say("thing.reaction"), paths: below(path, "mass", "ballast", "ballastMost", "reactionShare"), adds: []addition{{"piece", path}}},
		{title: words.Say("thing.feet"), paths: below(path, "halfSpacing", "massCentre", "sideLimit", "cornerLimit")},
		{title: words.Say("thing.bearing"), paths: below(path, "bodyTravel", "feet/long/number", "feet/long/length", "feet/long/width",
			"feet/short/number", "feet/short/length", "feet/short/width", "bearing/kind", "bearing/travelling", "bearing/pressing", "bearing/suddenLoss")},
		{title: words.Say("thing.levels"), paths: below(path, "gripHeight", "followerTravel", "spliceHeight", "walkOver")},
		{title: words.Say("thing.grip"), paths: below(path, "grip/mu", "grip/faces", "grip/force", "grip/width", "grip/height", "grip/facePressure", "grip/offAxis")},
	}}
	for i, p := range r.Pieces() {
		made.sections = append(made.sections, section{title: words.Say("thing.piece", itoa(i+1)), paths: below(p.Path, "name", "mass", "count", "at")})
	}
	return made, true
}

func (f *file) circuitForm(path, rig, id string) (form, bool) {
	r, ok := f.job().Rig(rig)
	if !ok {
		return form{}, false
	}
	c, ok := r.Circuit(id)
	if !ok {
		return form{}, false
	}
	made := form{title: words.Say("thing.circuit"), name: c.Name, limit: "circuit", sections: []section{{title: words.Say("thing.names"), paths: below(path, "name", "place", "at")}}}
	for i, g := range c.Groups {
		s := section{title: words.Say("thing.group", itoa(i+1)), paths: below(g.Path, "number", "bore", "side")}
		if g.Side != "bore" && g.Side != "" || c.ReturnPressure.Known() {
			s.paths = append(s.paths, g.Path+"/rod")
		}
		made.sections = append(made.sections, s)
	}
	made.sections[len(made.sections)-1].adds = []addition{{"group", path}}
	weights := section{title: words.Say("thing.weights"), paths: below(path, "maxPressure", "reliefValve", "returnPressure", "stroke", "onHead", "onHeadUncertainty", "onHeadInMass")}
	eta := section{title: words.Say("thing.efficiency"), paths: below(path, "loadBy", "efficiency/low", "efficiency/high", "efficiency/basis")}
	gauge := section{title: words.Say("thing.gauge"), paths: below(path, "gauge")}
	if g, ok := f.job().Gauge(c.Gauge); ok {
		gauge.links = []thing{{g.Path, words.Say("thing.gauge") + ": " + named(g.Serial)}}
	}
	made.sections = append(made.sections, weights, eta, f.certificatesOf(rig, id, c.Gauge, path), gauge)
	return made, true
}

func (f *file) stockForm() form {
	var lines []string
	for _, s := range f.job().Stock() {
		lines = append(lines, s.Path)
	}
	return listForm("stock", "thing.line", lines, "name", "length", "count", "type", "role", "pressingLimit")
}

func (f *file) strataForm() form {
	var layers []string
	for _, s := range f.job().Strata() {
		layers = append(layers, s.Path)
	}
	return listForm("strata", "thing.stratum", layers, "name", "top", "bottom", "noJoint", "noStop")
}

// listForm is the form of all things of a collection below one another, each with
// the same fields.
func listForm(collection, title string, paths []string, fields ...string) form {
	made := form{title: words.Say("thing." + collection), name: words.Say("thing." + collection)}
	for i, p := range paths {
		made.sections = append(made.sections, section{title: words.Say(title, itoa(i+1)), paths: below(p, fields...)})
	}
	if len(made.sections) == 0 {
		made.sections = []section{{title: words.Say("thing." + collection)}}
	}
	made.sections[len(made.sections)-1].adds = []addition{{collection, ""}}
	return made
}
