package desk

import (
	"strings"

	"gaugewright/calc/document"
	"gaugewright/calc/history"
	"gaugewright/calc/job"
	"gaugewright/calc/words"
)

// mostListed is how many differences one answer names; it keeps a message to
// the page below 64 kB. How many there are is always said.
const mostListed = 100

// join takes another copy of the job in: the union of both. The answer says
// what came, which choices are open, what is damaged and what has become
// impossible; nothing of it refuses the union. The host begins a new sitting
// afterwards.
func (f *file) join(data []byte) *document.Node {
	other, refused := opened(newObject().Node, "", data)
	if refused != nil {
		return refused
	}
	if mine, theirs := f.job().ID(), other.job().ID(); mine != theirs {
		return refusal("desk.otherJob", named(f.job().Title()), named(other.job().Title()))
	}
	if other.readOnly {
		return refusal("desk.readOnly")
	}
	before, entries := f.root.Get("now"), history.Count(f.root)
	lines := recordLines(f.root)
	union, _ := history.Union(f.root, other.root)
	if complaints := document.Check(union); !complaints.None() {
		return complaintsInto(newObject().with("ok", yes(false)).with("code", text("desk.file")), complaints).Node
	}
	f.root = union
	f.readHistory()
	f.judged, f.levels, f.order = nil, nil, nil
	differences := history.Compare(before, union.Get("now"))
	return okay().with("entries", whole(history.Count(union)-entries)).with("lines", whole(recordLines(union)-lines)).
		with("differences", f.differences(differences)).with("differenceCount", whole(len(differences))).
		with("choices", whole(len(f.choices))).with("damage", texts(f.harm)).with("problems", texts(f.problems())).Node
}

func recordLines(root *document.Node) int {
	n := 0
	for _, record := range root.Get("records").Members() {
		for _, part := range record.Get("parts").Members() {
			n += part.Get("lines").Len() + part.Get("events").Len()
		}
	}
	return n
}

// differences writes fields in which two states differ.
func (f *file) differences(list []history.Difference) *document.Node {
	n := document.NewList()
	for _, d := range list[:min(len(list), mostListed)] {
		n.Append(newObject().with("path", text("/now"+d.Path)).with("label", text(f.place("/now"+d.Path))).
			with("before", text(f.valueSays("/now"+d.Path, d.Before))).with("after", text(f.valueSays("/now"+d.Path, d.After))).Node)
	}
	return n
}

// place names a field with the thing it belongs to: "C14: Cut-off level".
func (f *file) place(path string) string {
	label := path
	names, _ := document.Split(path)
	if field, ok := job.FieldAt(path); ok {
		label = words.Say(field.Key())
	} else if key := "field." + strings.Join(kinds(names), "."); words.Has(key) {
		label = words.Say(key)
	}
	if len(names) < 4 {
		return label
	}
	key := map[string]string{"piles": "mark", "gauges": "serial"}[names[1]]
	if key == "" {
		key = "name"
	}
	return words.Say("place", named(f.root.At("/now/"+names[1]+"/"+document.Escape(names[2])+"/"+key).Text()), label)
}

// kinds are the names of a path below "now" without the ids of things.
func kinds(names []string) []string {
	var list []string
	pattern := ""
	for _, name := range names[min(1, len(names)):] {
		if job.IsCollection(pattern) {
			pattern += "/*"
			continue
		}
		pattern += "/" + name
		list = append(list, name)
	}
	return list
}

// valueSays writes a value of the tree for people.
func (f *file) valueSays(path string, n *document.Node) string {
	field, ok := job.FieldAt(path)
	switch {
	case n == nil || n.Kind() == document.Text && n.Text() == "":
		return words.Say("leaf.blank")
	case !ok || n.Kind() != document.Text:
		return short(n.Compact())
	case field.Kind == job.Reference:
		for _, t := range f.things(field.To) {
			if t.id == n.Text() {
				return t.name
			}
		}
	case field.Kind == job.Choice:
		return words.Say("choice." + n.Text())
	}
	return n.Text()
}

func short(s string) string {
	if r := []rune(s); len(r) > 120 {
		return string(r[:119]) + "…"
	}
	return s
}

// showChoices lists the open choices: who states what, when, on what device.
func (f *file) showChoices() *document.Node {
	list := document.NewList()
	for _, c := range f.choices[:min(len(f.choices), mostListed)] {
		path := "/now" + c.Path
		field, known := job.FieldAt(path)
		options := document.NewList()
		for _, o := range c.Options {
			options.Append(f.origin(path, o).with("value", text(o.Value.Text())).Node)
		}
		list.Append(newObject().with("path", text(path)).with("label", text(f.place(path))).
			with("simple", yes(known && field.Kind != 0)).with("options", options).Node)
	}
	return okay().with("choices", list).with("count", whole(len(f.choices))).Node
}

func (f *file) origin(path string, o history.Origin) object {
	who := o.Who
	if who == "" {
		who = words.Say("who.unnamed")
	}
	return newObject().with("says", text(f.valueSays(path, o.Value))).with("who", text(who)).with("device", text(o.Device)).
		with("at", text(o.At)).with("why", text(o.Why)).with("sitting", text(o.Sitting)).with("s", whole(o.S))
}

// showHistory lists who stated what at a path and below, the latest first:
// from, count.
func (f *file) showHistory(r *document.Node) *document.Node {
	path := r.Get("path").Text()
	if path == "" {
		path = "/now"
	}
	if len(path) < 4 || path[:4] != "/now" {
		return refusal("desk.path", path)
	}
	trace := history.Read(f.root).Trace(path[4:])
	from, _ := r.Get("from").Int()
	count, ok := r.Get("count").Int()
	if !ok || count > mostListed {
		count = mostListed
	}
	rows := document.NewList()
	for i := max(0, from); i < len(trace) && i < from+count; i++ {
		o := trace[len(trace)-1-i]
		row := f.origin(path, o)
		fields := document.NewList()
		eachField(path, o.Value, func(at string, v *document.Node) {
			if fields.Len() < 12 {
				fields.Append(newObject().with("label", text(f.place(at))).with("says", text(f.valueSays(at, v))).Node)
			}
		})
		rows.Append(row.with("fields", fields).Node)
	}
	return okay().with("path", text(path)).with("label", text(f.place(path))).with("count", whole(len(trace))).with("rows", rows).Node
}

func eachField(path string, n *document.Node, visit func(path string, v *document.Node)) {
	if n.Kind() != document.Map {
		visit(path, n)
		return
	}
	for name, child := range n.Members() {
		eachField(document.Join(path, name), child, visit)
	}
}

// showCompare lists the fields that differ between the states at two times,
// "from" and "to"; a blank "to" is the present.
func (f *file) showCompare(r *document.Node) *document.Node {
	l := history.Read(f.root)
	to := f.root.Get("now")
	if t := r.Get("to").Text(); t != "" {
		to = l.Until(t)
	}
	differences := history.Compare(l.Until(r.Get("from").Text()), to)
	return okay().with("differences", f.differences(differences)).with("count", whole(len(differences))).Node
}

// isThing says whether a path below "now" is a member of a collection.
func isThing(path string) bool {
	names, _ := document.Split(path)
	pattern := ""
	for i, name := range names {
		collection := job.IsCollection(pattern)
		if i == len(names)-1 {
			return collection
		}
		if collection {
			name = "*"
		}
		pattern += "/" + name
	}
	return false
}

// undo takes an entry back by an entry of its own.
func (f *file) undo(r *document.Node) *document.Node {
	of := r.Get("of")
	s, ok := of.Get("s").Int()
	if !ok {
		return refusal("desk.missing", of.Compact())
	}
	patch := history.Read(f.root).Undo(history.Ref{Sitting: of.Get("sitting").Text(), S: s}, isThing)
	if patch == nil {
		return refusal("desk.nothingToUndo")
	}
	f.change(r, patch, false)
	return okay().Node
}
