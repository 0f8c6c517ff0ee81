package desk

import (
	"slices"
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
	other.takeUpPending()
	return f.unite(other)
}

// unite makes the union of both copies of the document.
func (f *file) unite(other *file) *document.Node {
	if mine, theirs := f.job().ID(), other.job().ID(); mine != theirs {
		return refusal("desk.otherJob", named(f.job().Title()), named(other.job().Title()))
	}
	if f.readOnly || other.readOnly {
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
	f.judged, f.levels, f.order, f.orderMade, f.pressed = nil, nil, nil, nil, nil
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
		n.Append(difference(d, f, f))
	}
	return n
}

// difference writes a field in which two files differ, in the names of either.
func difference(d history.Difference, before, after *file) *document.Node {
	path, place := "/now"+d.Path, before
	if d.Before == nil {
		place = after
	}
	return newObject().with("path", text(path)).with("label", text(place.place(path))).
		with("before", text(before.valueSays(path, d.Before))).with("after", text(after.valueSays(path, d.After))).Node
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
	if path != "/now" && !strings.HasPrefix(path, "/now/") {
		return refusal("desk.path", path)
	}
	from, _ := r.Get("from").Int()
	count, ok := r.Get("count").Int()
	if !ok || count > mostListed {
		count = mostListed
	}
	trace := history.Read(f.root).Trace(path[len("/now"):])
	slices.Reverse(trace)
	from = min(max(0, from), len(trace))
	shown := trace[from:min(len(trace), from+max(0, count))]
	return okay().with("path", text(path)).with("label", text(f.place(path))).with("count", whole(len(trace))).
		with("rows", f.historyRows(path, shown, mostFields)).Node
}

// mostFields is how many fields of one entry an answer names.
const mostFields = 12

func (f *file) historyRows(path string, list []history.Origin, most int) *document.Node {
	rows := document.NewList()
	for _, o := range list {
		fields := document.NewList()
		eachField(path, o.Value, func(at string, v *document.Node) {
			if fields.Len() < most {
				fields.Append(newObject().with("label", text(f.place(at))).with("says", text(f.valueSays(at, v))).Node)
			}
		})
		rows.Append(f.origin(path, o).with("fields", fields).Node)
	}
	return rows
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
	differences := f.between(r.Get("from").Text(), r.Get("to").Text())
	return okay().with("differences", f.differences(differences)).with("count", whole(len(differences))).Node
}

func (f *file) between(from, to string) []history.Difference {
	l, after := history.Read(f.root), f.root.Get("now")
	if to != "" {
		after = l.Until(to)
	}
	return history.Compare(l.Until(from), after)
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
