package desk

import (
	"strings"

	"gaugewright/calc/document"
	"gaugewright/calc/history"
	"gaugewright/calc/job"
	"gaugewright/calc/words"
)

// enter changes the document. The kinds of entries ("do"):
//
//	type    path, typed: the text of a box
//	choose  path, value: one of the choices, or the id of a thing
//	package path, id: fills a preset of factor and hold into a criterion
//	sign    sign: the job's answer about its comma
//	take    parcel, rig, circuit, type, pile: copies things in and points the pile at them
//	keep    parcel: copies things in
//	add     what, path, ids: a new thing, blank
//	copy    path, ids: a pile once more, without its mark
//	waive   path, by, role, on, why: a limit waived by a named person
//	unwaive path
//	strike  path, why: strikes a thing out
//	survey  pile, typed, ids: the level of a head as measured, a record
//	zero    gauge, typed, name, ids: what a gauge shows without pressure, a record
//	compareGauges  gauge, other, typed, typedOther, name, ids: two gauges on one
//	        circuit at the same moment, a record
//	release name, role, ids: a person releases the surveyed piles to cut
//	title   title: names the job
//	use     trial: takes over a trial, as one entry
//	undo    of: {sitting, s}: takes an entry back, by an entry
//	join    with bytes: another copy of the job
//	import  text or bytes, ids and more: the piles of a table, as one entry; see importing
//
// An entry that would turn the outcome of piles already pressed is asked about;
// see outcome.go. A "show" in the request brings a view back with the answer.
func (f *file) enter(r *document.Node, data []byte) *document.Node {
	if f.readOnly {
		return refusal("desk.readOnly")
	}
	f.preview, f.renewed = nil, ""
	unread := f.root.Get("unread").Clone()
	answer := f.entry(r, data)
	if f.question != nil {
		answer = f.asking(r, answer, unread)
	}
	if f.renewed != "" {
		answer.Set("renewed", text(f.renewed))
	}
	if view := r.Get("show"); view != nil && answer.Get("ok").Bool() {
		seen, _ := f.show(view, nil)
		answer.Set("view", seen)
	}
	return answer
}

// entry makes the entry that a request asks for.
func (f *file) entry(r *document.Node, data []byte) (answer *document.Node) {
	switch do := r.Get("do").Text(); do {
	case "type":
		answer = f.typed(r, r.Get("path").Text(), r.Get("typed").Text())
	case "choose":
		answer = f.choose(r)
	case "package":
		answer = f.takePackage(r, r.Get("path").Text(), r.Get("id").Text())
	case "sign":
		answer = f.sign(r)
	case "take", "keep":
		answer = f.take(r)
	case "add":
		answer = f.add(r)
	case "copy":
		answer = f.copyPile(r)
	case "waive", "unwaive":
		answer = f.waive(r, do == "waive")
	case "strike":
		answer = f.strike(r)
	case "survey":
		answer = f.survey(r)
	case "zero":
		answer = f.zero(r)
	case "compareGauges":
		answer = f.compareGauges(r)
	case "release":
		answer = f.release(r)
	case "title":
		answer = f.put(r, "/now/title", strings.TrimSpace(r.Get("title").Text()), false)
	case "use":
		answer = f.use(r)
	case "undo":
		answer = f.undo(r)
	case "join":
		answer = f.join(data)
	case "import":
		answer = f.importPiles(r, data)
	default:
		return refusal("desk.do", do)
	}
	return answer
}

// change makes one entry of a patch of "now", unless it is asked about. An answer
// to that question is an entry of its own.
func (f *file) change(r, patch *document.Node, fold bool) {
	patch, why := f.guard(r, patch)
	if patch == nil {
		return
	}
	fold = fold && r.Get("correction") == nil && r.Get("renew") == nil
	s := r.Get("sitting")
	history.Enter(f.root, history.Sitting{ID: s.Get("id").Text(), Who: s.Get("who").Text(), Device: s.Get("device").Text(), On: moment(s.Get("on").Text())},
		history.Change{At: moment(r.Get("at").Text()), Patch: patch, Why: why, Fold: fold})
	f.changed(patch)
}

// moment lets a time of the host pass where it is a moment in UTC, as the file
// asks for; anything else would make a file that nobody can open again.
func moment(at string) string {
	if job.IsInstant(at) {
		return at
	}
	return ""
}

// put enters a text at a path; blank is the empty text. What stands there
// already is not entered again, unless it is one of two values between which
// nobody has chosen yet.
func (f *file) put(r *document.Node, path, value string, fold bool) *document.Node {
	if f.root.At(path).Text() == value && !f.contested(path) {
		return okay().Node
	}
	patch, ok := f.job().Patch(path, text(value))
	if !ok {
		return refusal("desk.path", path)
	}
	f.change(r, patch, fold)
	return okay().Node
}

func (f *file) contested(path string) bool {
	for _, c := range f.choices {
		if "/now"+c.Path == path {
			return true
		}
	}
	return false
}

// owned says whether the thing that a field belongs to is there: a patch must
// not make a thing out of nothing.
func (f *file) owned(path string) bool {
	names, ok := document.Split(path)
	if !ok {
		return false
	}
	if f.isCombination(names) {
		names = names[:4] // an action appears with its first value
	}
	at := ""
	pattern := ""
	for _, name := range names[:max(0, len(names)-1)] {
		at = document.Join(at, name)
		if job.IsCollection(pattern) && f.root.At(at) == nil {
			return false
		}
		switch {
		case at == "/now":
			continue
		case job.IsCollection(pattern):
			pattern += "/*"
		default:
			pattern += "/" + name
		}
	}
	return true
}

// choose enters one of a field's choices.
func (f *file) choose(r *document.Node) *document.Node {
	path, value := r.Get("path").Text(), r.Get("value").Text()
	field, ok := job.FieldAt(path)
	if !ok || !f.owned(path) {
		return refusal("desk.path", path)
	}
	if problem := field.Problem(value); problem != nil {
		return refusal("typed.choice", problem.Found, problem.Allowed)
	}
	if field.Kind == job.Reference && value != "" && field.To != "circuits" && !f.job().Has(field.To, value) {
		return refusal("desk.missing", value)
	}
	if criterion, ok := strings.CutSuffix(path, "/package"); ok && value != "" {
		return f.takePackage(r, criterion, value)
	}
	f.forget(path)
	return f.put(r, path, value, false)
}

// waive enters the waiver of a limit at a path such as
// "/now/pileTypes/p1/waived/pile", or takes it back.
func (f *file) waive(r *document.Node, on bool) *document.Node {
	path := r.Get("path").Text()
	if _, ok := job.FieldAt(path + "/by"); !ok || !f.owned(path+"/by") {
		return refusal("desk.path", path)
	}
	value := document.NewMap()
	for _, name := range []string{"by", "role", "on", "why"} {
		said := ""
		if on {
			said = strings.TrimSpace(r.Get(name).Text())
		}
		value.Set(name, text(said))
	}
	if on && (value.Get("by").Text() == "" || value.Get("why").Text() == "") {
		return refusal("desk.waiver")
	}
	patch, ok := f.job().Patch(path, value)
	if !ok {
		return refusal("desk.path", path)
	}
	f.change(r, patch, false)
	return okay().Node
}

// strike strikes a thing out; it stays in the file with the reason.
func (f *file) strike(r *document.Node) *document.Node {
	path := r.Get("path").Text()
	if f.root.At(path).Kind() != document.Map || !f.owned(path+"/struck") {
		return refusal("desk.missing", path)
	}
	struck := document.NewMap()
	struck.Set("why", text(r.Get("why").Text()))
	patch, ok := f.job().Patch(path+"/struck", struck)
	if !ok {
		return refusal("desk.path", path)
	}
	f.change(r, patch, false)
	return okay().Node
}

// parcelCollections are the things that travel between jobs.
var parcelCollections = []string{"rigs", "gauges", "certificates", "pileTypes"}

// take copies the things of a parcel into the job and, where the request names
// a rig, a circuit or a type, points the pile at them.
func (f *file) take(r *document.Node) *document.Node {
	parcel := r.Get("parcel")
	patch := document.NewMap()
	trial := job.Empty("parcel")
	for _, name := range parcelCollections {
		if things := parcel.Get(name); things.Kind() == document.Map && things.Len() > 0 {
			patch.Set(name, things.Clone())
			trial.Get("now").Set(name, things.Clone())
		}
	}
	if complaints := job.Check(trial); !complaints.None() || !document.CheckPatch(f.root.Get("now"), patch, 1).None() {
		return refusal("desk.parcel")
	}
	if pile := r.Get("pile").Text(); pile != "" {
		if !f.job().Has("piles", pile) {
			return refusal("desk.missing", pile)
		}
		points := document.NewMap()
		for _, name := range []string{"rig", "circuit", "type"} {
			if id := r.Get(name).Text(); id != "" {
				points.Set(name, text(id))
			}
		}
		piles := document.NewMap()
		piles.Set(pile, points)
		patch.Set("piles", piles)
	}
	if patch.Len() > 0 && !f.holds(patch) {
		f.change(r, patch, false)
	}
	return okay().Node
}

// holds says whether "now" already says everything that a patch says.
func (f *file) holds(patch *document.Node) bool {
	now := f.root.Get("now")
	return document.MergePatch(now.Clone(), patch).Equal(now)
}

// add makes a new thing, blank. The ids of the request are used in order.
func (f *file) add(r *document.Node) *document.Node {
	what, path := r.Get("what").Text(), r.Get("path").Text()
	ids := r.Get("ids")
	id := func(i int) string { return ids.Item(i).Text() }
	needs := map[string]int{"rig": 3, "circuit": 2, "group": 0}
	count, special := needs[what]
	if !special {
		count = 1
	}
	if ids.Len() < count {
		return refusal("desk.ids")
	}
	patch, added := document.NewMap(), ""
	blank := document.NewMap
	set := func(path string, value *document.Node) {
		if p, ok := f.job().Patch(path, value); ok {
			document.MergePatch(patch, p)
		}
	}
	circuit := func(gauge string) *document.Node {
		c := blank()
		c.Set("groups", document.NewList(blank()))
		c.Set("gauge", text(gauge))
		return c
	}
	switch what {
	case "rig":
		added = "/now/rigs/" + id(0)
		r := blank()
		r.Set("circuits", blank())
		r.Get("circuits").Set(id(1), circuit(id(2)))
		set(added, r)
		set("/now/gauges/"+id(2), blank())
	case "circuit":
		if f.root.At(path).Kind() != document.Map {
			return refusal("desk.missing", path)
		}
		added = path + "/circuits/" + id(0)
		set(added, circuit(id(1)))
		set("/now/gauges/"+id(1), blank())
	case "piece":
		if _, ok := job.FieldAt(path + "/pieces/x/mass"); !ok || f.root.At(path).Kind() != document.Map {
			return refusal("desk.missing", path)
		}
		added = path
		set(path+"/pieces/"+document.Escape(id(0)), blank())
	case "group":
		groups := f.root.At(path + "/groups")
		list := document.NewList()
		for _, g := range groups.Items() {
			list.Append(g.Clone())
		}
		list.Append(blank())
		if _, ok := job.FieldAt(path + "/groups/0/bore"); !ok || !f.owned(path+"/groups") {
			return refusal("desk.path", path)
		}
		added = path
		set(path+"/groups", list)
	case "test", "combination", "layer":
		collection := criterionParts[what]
		if _, ok := job.FieldAt(path + "/" + collection + "/x/name"); !ok || f.root.At(path).Kind() != document.Map {
			return refusal("desk.missing", path)
		}
		added = path
		set(document.Join(path+"/"+collection, id(0)), blank())
	case "certificate":
		added = "/now/certificates/" + id(0)
		thing, by, ok := f.newCertificate(path)
		if !ok {
			return refusal("desk.path", path)
		}
		set(added, thing)
		if by != "" {
			set(by, text("certificate"))
		}
	case "gauge", "type", "pile", "stock", "strata", "criterion", "pileGroup":
		collection := map[string]string{"pileGroup": "groups", "strata": "strata", "gauge": "gauges", "type": "pileTypes", "pile": "piles", "stock": "stock", "criterion": "criteria"}[what]
		added = "/now/" + collection + "/" + id(0)
		set(added, blank())
		if what == "stock" || what == "strata" {
			added = "/now/" + collection // all of them are one form
		}
	default:
		return refusal("desk.do", what)
	}
	f.change(r, patch, false)
	return okay().with("added", text(added)).Node
}

// copyPile makes a new pile that says all that another one says, but for its
// mark and its place.
func (f *file) copyPile(r *document.Node) *document.Node {
	path, id := r.Get("path").Text(), r.Get("ids").Item(0).Text()
	names, ok := document.Split(path)
	if !ok || len(names) != 3 || names[1] != "piles" || f.root.At(path).Kind() != document.Map {
		return refusal("desk.missing", path)
	}
	if id == "" {
		return refusal("desk.ids")
	}
	pile := f.root.At(path).Clone()
	for _, own := range []string{"mark", "east", "north", "struck"} {
		pile.Remove(own)
	}
	added := "/now/piles/" + document.Escape(id)
	patch, ok := f.job().Patch(added, pile)
	if !ok {
		return refusal("desk.path", path)
	}
	f.change(r, patch, false)
	return okay().with("added", text(added)).Node
}

// offers writes the ways out of a text that has several meanings.
type offer struct{ label, typed, sign string }

func offersNode(list []offer) *document.Node {
	n := document.NewList()
	for _, o := range list {
		one := newObject().with("label", text(o.label)).with("typed", text(o.typed))
		if o.sign != "" {
			one = one.with("decimalSign", text(o.sign))
		}
		n.Append(one.Node)
	}
	return n
}

func problemNode(p *problem) *document.Node {
	return newObject().with("code", text(p.code)).with("says", text(words.Say(p.code, p.found, p.allowed, p.example))).
		with("offers", offersNode(p.offers)).Node
}
