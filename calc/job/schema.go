package job

import (
	"strings"

	"gaugewright/calc/document"
	"gaugewright/calc/quantity"
)

// SchemaID names the published JSON Schema of schema 1.
const SchemaID = "urn:gaugewright:job:1"

// FileSchema returns the JSON Schema (draft 2020-12) of a job file, made from
// the same tables that [Check] walks. It says what a text may look like; what it
// cannot say is in FORMAT.md beside the examples: upper bounds, days of the
// calendar, that a reference leads somewhere, and that a line has as many
// numbers as its record has columns. Whatever it refuses, Check refuses at the
// same place. A file for a newer reader is outside it.
func FileSchema() *document.Node {
	w := &schemaWriter{defs: object()}
	properties := object(
		"format", object("const", text(Format)),
		"schema", object("type", text("integer"), "minimum", document.NewInt(1)),
		"minReader", object("type", text("integer"), "minimum", document.NewInt(1)),
		"job", object("type", text("string"), "minLength", document.NewInt(1)),
		"now", ref("now"),
		"records", object("type", text("object"), "additionalProperties", ref("record")),
	)
	for name, value := range w.shape(outsideShape).Get("properties").Members() {
		properties.Set(name, value)
	}
	w.stating = true
	w.defs.Set("now", w.shape(nowShape))
	w.stating = false
	w.defs.Set("kept", object("not", object("type", text("null")), "additionalProperties", ref("kept")))
	w.records()
	return object(
		"$schema", text("https://json-schema.org/draft/2020-12/schema"),
		"$id", text(SchemaID),
		"title", text("Gaugewright job, schema 1"),
		"type", text("object"),
		"required", texts("format", "schema", "minReader", "job", "now"),
		"properties", properties,
		"$defs", w.defs,
	)
}

type schemaWriter struct {
	defs    *document.Node
	stating bool // below "now": names that are not known hold no null
}

func (w *schemaWriter) shape(s *shape) *document.Node {
	switch {
	case s.field != nil:
		return w.field(s.field)
	case s.item != nil:
		return object("type", text("array"), "items", w.shape(s.item))
	case s.each != nil:
		return object("type", text("object"), "propertyNames", object("minLength", document.NewInt(1)), "additionalProperties", w.shape(s.each))
	}
	n := object("type", text("object"))
	if s.needed != nil {
		n.Set("required", texts(s.needed...))
	}
	properties := object()
	for _, name := range s.order {
		properties.Set(name, w.shape(s.names[name]))
	}
	n.Set("properties", properties)
	if w.stating {
		n.Set("additionalProperties", ref("kept"))
	}
	return n
}

func (w *schemaWriter) field(f *Field) *document.Node {
	switch f.Kind {
	case Quantity:
		return w.quantity(f)
	case Choice:
		choices := f.Choices
		if !f.Needed {
			choices = append([]string{""}, choices...)
		}
		return object("enum", texts(choices...))
	case Count:
		digits := "0|[1-9][0-9]*"
		if f.Min >= 1 {
			digits = "[1-9][0-9]*"
		}
		n := pattern(blankOr(digits, f.Needed))
		n.Set("description", text(f.Range(quantity.Must(""))))
		return n
	case Date:
		return w.shared("date", pattern(blankOr(datePattern, false)))
	case Instant:
		return w.shared(map[bool]string{false: "instant", true: "instantNeeded"}[f.Needed], pattern(blankOr(datePattern+timePattern, f.Needed)))
	case Digest:
		return pattern(blankOr("[0-9a-f]{64}", f.Needed))
	case Columns:
		return pattern(blankOr(columnsPattern(f.Columns), false))
	case Lines:
		return object("type", texts("array", "string"), "maxLength", document.NewInt(0), "items", pattern("^"+linePattern(f.Columns)+"$"))
	case Number:
		return object("type", text("integer"), "minimum", document.NewInt(0))
	case Patch:
		return ref("now")
	case Any:
		switch {
		case f.List:
			return object("type", text("array"))
		case f.Map:
			return object("type", text("object"))
		}
		return object()
	}
	n := object("type", text("string"))
	if f.Needed {
		n.Set("minLength", document.NewInt(1))
	}
	if f.Kind == Reference {
		n.Set("description", text("id of a thing in "+f.To))
	}
	return n
}

// quantity writes a stated quantity. Its units and its sign are shared, its
// range is told in words.
func (w *schemaWriter) quantity(f *Field) *document.Node {
	name := dimensionNames[f.Dim]
	digits := zeroOrMore
	switch {
	case f.Min < 0:
		name, digits = name+"Signed", anyNumber
	case f.MinOpen && f.Min == 0:
		name, digits = name+"AboveZero", aboveZero
	}
	var symbols []string
	for _, u := range quantity.Units(f.Dim) {
		if u.Symbol != "" {
			symbols = append(symbols, u.Symbol)
		}
	}
	units := " (" + strings.Join(symbols, "|") + ")"
	if f.Dim == quantity.Dimensionless {
		units = "(" + units + ")?"
	}
	n := w.shared(name, pattern(blankOr("("+digits+")"+units, false)))
	if f.Other != nil {
		n = object("anyOf", document.NewList(n, object("enum", texts(f.Other...))))
	}
	n.Set("description", text(f.Range(quantity.Must(f.Unit))))
	return n
}

// shared keeps a schema under a name and returns a reference to it.
func (w *schemaWriter) shared(name string, n *document.Node) *document.Node {
	w.defs.Set(name, n)
	return ref(name)
}

// records writes the kinds of records and their events.
func (w *schemaWriter) records() {
	record := w.shape(recordShape)
	kinds := document.NewList()
	for i := range recordKinds {
		k := &recordKinds[i]
		name := k.kind + "Record"
		kinds.Append(when("kind", k.kind, ref(name)))
		event := w.shape(eventShape)
		happens := document.NewList()
		for _, e := range k.events {
			happens.Append(when("is", e.is, w.shape(k.happens[e.is])))
		}
		event.Set("allOf", happens)
		part := w.shape(partShape)
		part.Set("dependentRequired", object("lines", texts("columns")))
		inPart := part.Get("properties")
		inPart.Set("columns", pattern("^"+columnsPattern(k.columns)+"$"))
		inPart.Set("lines", object("type", text("array"), "items", pattern("^"+linePattern(k.columns)+"$")))
		inPart.Set("events", object("type", text("array"), "items", event))
		made := w.shape(k.shape)
		made.Get("properties").Set("parts", object("type", text("object"), "additionalProperties", part))
		w.defs.Set(name, made)
	}
	record.Set("allOf", kinds)
	w.defs.Set("record", record)
}

// when applies a schema where a member says so.
func when(name, value string, then *document.Node) *document.Node {
	condition := object("properties", object(name, object("const", text(value))), "required", texts(name))
	return object("if", condition, "then", then)
}

// The patterns are plain regular expressions without look-around, so that any
// validator takes them.
const (
	anyNumber   = `-?[0-9]+(\.[0-9]+)?`
	zeroOrMore  = `[0-9]+(\.[0-9]+)?|-0+(\.0+)?`
	aboveZero   = `0*[1-9][0-9]*(\.[0-9]+)?|0+\.0*[1-9][0-9]*`
	datePattern = `[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])`
	timePattern = `T([01][0-9]|2[0-3]):[0-5][0-9]:[0-5][0-9](\.[0-9]{1,3})?Z`
)

var dimensionNames = map[quantity.Dimension]string{
	quantity.Dimensionless: "ratio", quantity.Lengths: "length", quantity.Areas: "area", quantity.Masses: "mass", quantity.Times: "time",
	quantity.Forces: "force", quantity.Pressures: "pressure", quantity.Moments: "moment", quantity.LineMasses: "lineMass",
}

func blankOr(pattern string, needed bool) string {
	if needed {
		return "^(" + pattern + ")$"
	}
	return "^(" + pattern + ")?$"
}

// columnsPattern is the first column of the rules and at least one other.
func columnsPattern(rules []ColumnRule) string {
	one := func(r ColumnRule) string {
		var units []string
		for _, u := range quantity.Units(r.Dim) {
			if u.Symbol != "" && (!r.Whole || u.Symbol == "s") {
				units = append(units, u.Symbol)
			}
		}
		if r.Flag {
			units = []string{flagUnit}
		}
		name := r.Name + "="
		if !r.Named && !r.Flag {
			name = "(" + name + ")?"
		}
		return name + "(" + strings.Join(units, "|") + ")"
	}
	var rest []string
	for _, r := range rules[1:] {
		rest = append(rest, one(r))
	}
	return one(rules[0]) + "( (" + strings.Join(rest, "|") + "))+"
}

// linePattern is a line under any columns of the rules.
func linePattern(rules []ColumnRule) string {
	number, flag := `[0-9]+(\.[0-9]+)?`, ""
	for _, r := range rules[1:] {
		if r.Signed {
			number = anyNumber
		}
		if r.Flag {
			flag = "|y|n"
		}
	}
	first := `[0-9]+(\.[0-9]+)?`
	if rules[0].Whole {
		first = "[0-9]{1,9}"
	}
	return first + "( (" + number + "|-" + flag + "))+"
}

func text(s string) *document.Node { return document.NewText(s) }

func texts(list ...string) *document.Node {
	n := document.NewList()
	for _, s := range list {
		n.Append(text(s))
	}
	return n
}

func ref(name string) *document.Node { return object("$ref", text("#/$defs/"+name)) }

func pattern(p string) *document.Node { return object("type", text("string"), "pattern", text(p)) }

// object makes a map of names and nodes in turn.
func object(members ...any) *document.Node {
	n := document.NewMap()
	for i := 0; i < len(members); i += 2 {
		n.Set(members[i].(string), members[i+1].(*document.Node))
	}
	return n
}
