package job

import (
	"strings"

	"gaugewright/calc/quantity"
)

// Kind says what a field holds.
type Kind byte

// The kinds of fields. In the file all are texts, but for Lines, which is a
// list of texts, and for the last four, which stand outside "now".
const (
	Quantity  Kind = 'q' // a stated quantity, "900 kN"
	Words     Kind = 'w' // free text of one line
	Choice    Kind = 'c' // one of Choices
	Reference Kind = 'r' // the id of a thing in the collection To
	Count     Kind = 'n' // a whole number
	Date      Kind = 'd' // a day, "2026-11-03" (ISO 8601)
	Instant   Kind = 'i' // a moment in UTC, "2026-11-03T14:20:00Z" (ISO 8601)
	Columns   Kind = 'o' // what the columns of the lines beside it hold, "MPa kN"
	Lines     Kind = 'l' // a list of lines of numbers under declared columns, "5.0 627"

	Digest Kind = 'x' // SHA-256, 64 hexadecimal digits
	Number Kind = 'k' // a whole number of JSON, from 0
	Patch  Kind = 'p' // a merge patch of "now"
	Any    Kind = 'a' // any value, or any list or map
)

// The texts that may stand in place of a quantity. Blank is the absence of
// the field; the four are four different things.
const (
	NotKnown      = "not known"
	NotApplicable = "not applicable"
)

// Field describes one place that a person or a host fills in.
type Field struct {
	// Pattern is the JSON pointer below the root of its table ("/now" for the
	// fields that [Fields] lists), with "*" for an id and "#" for a place in a
	// list: "/piles/*/workingLoad".
	Pattern string
	Kind    Kind
	Dim     quantity.Dimension
	Unit    string // suggested beside an empty box
	// Min and Max bound a quantity (in the coherent unit) or a count. MinOpen
	// says that Min itself is not allowed.
	Min, Max float64
	MinOpen  bool
	Choices  []string
	To       string
	// Other allows "not known" or "not applicable" in place of a quantity.
	Other []string
	// Columns are those that may be declared, and those of the lines of a field
	// of the kind Lines, which are declared by its neighbour Under.
	Columns []ColumnRule
	Under   string
	// Needed says that the place must be there wherever the thing is.
	Needed bool
	// List and Map say of Any what it must be.
	List, Map bool
}

// Key returns the code under which calc/words holds the label: "field." and
// the pattern without ids.
func (f Field) Key() string {
	var parts []string
	for _, p := range strings.Split(f.Pattern, "/") {
		if p != "" && p != "*" && p != "#" {
			parts = append(parts, p)
		}
	}
	return "field." + strings.Join(parts, ".")
}

// fields is schema 1 of "now". The order is the order of the forms.
var fields = join(
	jobFields, rigFields, circuitFields, gaugeFields, certificateFields, stockFields, typeFields, criterionFields,
	groupFields, stratumFields, pileFields,
	// Waivers of limits stand last in their forms.
	waiver("/rigs/*/waived/reaction"), waiver("/rigs/*/waived/grip"), waiver("/rigs/*/waived/ground"),
	waiver("/rigs/*/circuits/*/waived/circuit"), waiver("/gauges/*/waived/gauge"),
	waiver("/pileTypes/*/waived/pile"), waiver("/pileTypes/*/waived/freeLength"),
)

func join(tables ...[]Field) []Field {
	var list []Field
	for _, t := range tables {
		list = append(list, t...)
	}
	return list
}

// Fields returns the fields of "now", in the order of the forms.
func Fields() []Field { return append([]Field(nil), fields...) }

// FieldAt returns the field that describes the place at a JSON pointer of the
// file, such as "/now/piles/p14/workingLoad".
func FieldAt(path string) (Field, bool) {
	rest, ok := strings.CutPrefix(path, "/now/")
	s := nowShape
	for ok && s != nil {
		name, more, found := strings.Cut(rest, "/")
		s = s.step(name)
		if !found {
			break
		}
		rest = more
	}
	if !ok || s == nil || s.field == nil {
		return Field{}, false
	}
	return *s.field, true
}

// IsCollection says whether a pattern ("/rigs/*/circuits") names a map whose
// members are things under ids.
func IsCollection(pattern string) bool {
	s := nowShape.find(pattern)
	return s != nil && s.each != nil
}
