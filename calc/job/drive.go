package job

import (
	"sort"
	"strings"

	"gaugewright/calc/document"
	"gaugewright/calc/quantity"
)

// Record is one record: what happened to a pile or a gauge, as it was written
// down. It is a view of the tree and holds nothing of its own.
type Record struct {
	ID, Path, Kind string
	node           *document.Node
	// The same few declarations of columns stand in thousands of records, so
	// those that were listed together share what was read of them; nil: none do.
	columns map[declaration][]Column
}

func recordView(id string, n *document.Node) Record {
	return Record{ID: id, Path: document.Join("/records", id), Kind: n.Get("kind").Text(), node: n}
}

// Records lists the records of a kind ("drive", "hold", "level", "position",
// "zero", "comparison") that are not struck out, by id.
func (j Job) Records(kind string) []Record {
	var list []Record
	columns := map[declaration][]Column{}
	for id, n := range j.Root.Get("records").Members() {
		if n.Get("kind").Text() == kind && !struckOut(n) {
			r := recordView(id, n)
			r.columns = columns
			list = append(list, r)
		}
	}
	sort.Slice(list, func(a, b int) bool { return list[a].ID < list[b].ID })
	return list
}

// RecordsOf lists the records of a kind that name a pile (or, for the kinds
// "zero" and "comparison", a gauge), by id.
func (j Job) RecordsOf(kind, id string) []Record {
	var list []Record
	for _, r := range j.Records(kind) {
		if r.Text("pile") == id || r.Text("gauge") == id {
			list = append(list, r)
		}
	}
	return list
}

// Text returns a member of the record such as "pile", "of" or "reference",
// blank where it is not stated.
func (r Record) Text(name string) string { return r.node.Get(name).Text() }

// Parts lists what each sitting added, in the order in which they began, ties
// by their ids.
func (r Record) Parts() []Part {
	var list []Part
	for id, n := range r.node.Get("parts").Members() {
		list = append(list, r.part(id, n))
	}
	sort.Slice(list, func(a, b int) bool {
		if list[a].From != list[b].From {
			return list[a].From < list[b].From
		}
		return list[a].ID < list[b].ID
	})
	return list
}

func (r Record) part(id string, n *document.Node) Part {
	p := Part{ID: id, From: n.Get("from").Text(), lines: n.Get("lines"), events: n.Get("events")}
	if r.Path != "" {
		p.Path = document.Join(r.Path+"/parts", id)
	}
	p.Sitting, _, _ = strings.Cut(id, ".")
	if kind := kindOf(r.Kind); kind != nil {
		p.Columns = r.declared(n.Get("columns").Text(), kind.columns)
	}
	return p
}

func (r Record) declared(text string, rules []ColumnRule) []Column {
	key := declaration{&rules[0], text}
	columns, known := r.columns[key]
	if !known {
		if columns, _ = ParseColumns(text, rules); r.columns != nil {
			r.columns[key] = columns
		}
	}
	return columns
}

// Part is what one sitting added to a record.
type Part struct {
	ID, Path string
	Sitting  string   // the id without a number behind it
	From     string   // moment from which the seconds are counted, ISO 8601
	Columns  []Column // nil where there are none
	lines    *document.Node
	events   *document.Node
}

// Len returns the number of lines.
func (p Part) Len() int { return p.lines.Len() }

// Line returns the i-th line, counted from 0.
func (p Part) Line(i int) Line {
	return Line{Text: p.lines.Item(i).Text(), part: p, index: i}
}

// Line is one reading as written down.
type Line struct {
	Text  string
	part  Part
	index int
}

// Path returns the JSON pointer of the line.
func (l Line) Path() string { return l.part.Path + "/lines/" + itoa(l.index) }

// Word returns what stands in a column by its name, and the column. ok is
// false where the column was not declared or not read.
func (l Line) Word(column string) (word string, c Column, ok bool) {
	rest := l.Text
	for _, c := range l.part.Columns {
		word, more, _ := strings.Cut(rest, " ")
		if c.Name == column {
			return word, c, word != "" && word != NotRead
		}
		rest = more
	}
	return "", Column{}, false
}

// At returns the seconds since the part began.
func (l Line) At() (s int, ok bool) {
	word, _, ok := l.Word("at")
	if !ok {
		return 0, false
	}
	return digits(word)
}

// Flag returns a column of "y" or "n"; ok is false where it was not read.
func (l Line) Flag(column string) (yes, ok bool) {
	word, _, ok := l.Word(column)
	return word == "y", ok && (word == "y" || word == "n")
}

// Measured returns a column as a quantity. Its place is the line.
func Measured[T ~float64](l Line, column string) Given[T] {
	g := Given[T]{owner: l.part.Path + "/lines", name: itoa(l.index)}
	word, c, ok := l.Word(column)
	if !ok || c.Flag {
		return g
	}
	if c.Unit.Symbol != "" {
		word += " " + c.Unit.Symbol
	}
	s, err := quantity.ParseStated(word, c.Dim)
	if err != nil {
		g.State = Bad
		return g
	}
	g.State, g.Stated, g.V = IsGiven, s, T(s.Value)
	return g
}

// Events lists what happened, as written down.
func (p Part) Events() []Event {
	var list []Event
	for i, n := range p.events.Items() {
		s, _ := n.Get("s").Int()
		e := Event{S: s, Is: n.Get("is").Text(), node: n}
		if p.Path != "" {
			e.Path = p.Path + "/events/" + itoa(i)
		}
		list = append(list, e)
	}
	return list
}

// Event is something that happened: a set-up, a segment pitched, a stop.
type Event struct {
	S    int    // seconds since the part began
	Is   string // "set-up", "segment", "splice start", ...
	Path string
	node *document.Node
}

// Text returns a member of the event such as "mark", "rig" or "why".
func (e Event) Text(name string) string { return e.node.Get(name).Text() }

// Stated returns a member of the event as a quantity.
func Stated[T ~float64](e Event, name string, d quantity.Dimension) Given[T] {
	return given[T](e.node.Get(name), e.Path, name, d)
}
