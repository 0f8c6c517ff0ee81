package job

import (
	"strings"

	"gaugewright/calc/document"
	"gaugewright/calc/quantity"
)

// Kind says what a field holds.
type Kind byte

// The kinds of fields. All are texts in the file.
const (
	Quantity  Kind = 'q' // a stated quantity, "900 kN"
	Words     Kind = 'w' // free text of one line
	Choice    Kind = 'c' // one of Choices
	Reference Kind = 'r' // the id of a thing in the collection To
	Count     Kind = 'n' // a whole number
)

// The texts that may stand in place of a quantity. Blank is the absence of
// the field; the four are four different things.
const (
	NotKnown      = "not known"
	NotApplicable = "not applicable"
)

// Field describes one place in "now" that a person fills in.
type Field struct {
	// Pattern is the JSON pointer below "/now" with "*" for an id and "#" for a
	// place in a list: "/piles/*/workingLoad".
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
}

// Name returns the last name of the pattern, under which calc/words holds the
// label: "field." and the pattern without ids.
func (f Field) Key() string {
	var parts []string
	for _, p := range strings.Split(f.Pattern, "/") {
		if p != "" && p != "*" && p != "#" {
			parts = append(parts, p)
		}
	}
	return "field." + strings.Join(parts, ".")
}

const anyLevel = 12000 // m, above and below any ground on earth

func length(pattern string, min, max float64, other ...string) Field {
	return Field{Pattern: pattern, Kind: Quantity, Dim: quantity.Lengths, Unit: "m", Min: min, Max: max, Other: other}
}

func size(pattern string, max float64) Field {
	return Field{Pattern: pattern, Kind: Quantity, Dim: quantity.Lengths, Unit: "mm", Min: 0, MinOpen: true, Max: max}
}

func pressure(pattern string) Field {
	return Field{Pattern: pattern, Kind: Quantity, Dim: quantity.Pressures, Unit: "MPa", Min: 0, MinOpen: true, Max: 200000}
}

func force(pattern string, open bool) Field {
	return Field{Pattern: pattern, Kind: Quantity, Dim: quantity.Forces, Unit: "kN", Min: 0, MinOpen: open, Max: 100000}
}

func ratio(pattern, unit string, min, max float64, open bool) Field {
	return Field{Pattern: pattern, Kind: Quantity, Dim: quantity.Dimensionless, Unit: unit, Min: min, Max: max, MinOpen: open}
}

func words(pattern string) Field { return Field{Pattern: pattern, Kind: Words} }

func reference(pattern, to string) Field { return Field{Pattern: pattern, Kind: Reference, To: to} }

func choice(pattern string, choices ...string) Field {
	return Field{Pattern: pattern, Kind: Choice, Choices: choices}
}

func waiver(at string) []Field {
	return []Field{words(at + "/by"), words(at + "/role"), words(at + "/on"), words(at + "/why")}
}

// fields is schema 1 of "now". The order is the order of the forms.
var fields = build()

func build() []Field {
	list := []Field{
		words("/title"), words("/datum"), choice("/decimalSign", ".", ","),
		length("/jointPrice", 0, 100),

		words("/rigs/*/name"),
		{Pattern: "/rigs/*/mass", Kind: Quantity, Dim: quantity.Masses, Unit: "t", MinOpen: true, Max: 10000},
		{Pattern: "/rigs/*/ballast", Kind: Quantity, Dim: quantity.Masses, Unit: "t", Max: 10000},
		ratio("/rigs/*/reactionShare", "", 0, 1, true),
		length("/rigs/*/gripHeight", 0, 50, NotKnown, NotApplicable),
		length("/rigs/*/followerTravel", 0, 50, NotApplicable),
		words("/rigs/*/circuits/*/name"),
		{Pattern: "/rigs/*/circuits/*/groups/#/number", Kind: Count, Min: 1, Max: 64},
		size("/rigs/*/circuits/*/groups/#/bore", 2),
		size("/rigs/*/circuits/*/groups/#/rod", 2),
		choice("/rigs/*/circuits/*/groups/#/side", "bore", "rod", "joined"),
		pressure("/rigs/*/circuits/*/maxPressure"),
		force("/rigs/*/circuits/*/onHead", false),
		choice("/rigs/*/circuits/*/onHeadInMass", "yes", "no"),
		ratio("/rigs/*/circuits/*/efficiency/low", "", 0, 1, true),
		ratio("/rigs/*/circuits/*/efficiency/high", "", 0, 1, true),
		words("/rigs/*/circuits/*/efficiency/basis"),
		reference("/rigs/*/circuits/*/gauge", "gauges"),

		words("/gauges/*/serial"),
		pressure("/gauges/*/fullScale"),
		pressure("/gauges/*/division"),
		ratio("/gauges/*/class", "%", 0, 0.2, true),
		ratio("/gauges/*/share", "%", 0, 1, true),

		words("/stock/*/name"),
		{Pattern: "/stock/*/length", Kind: Quantity, Dim: quantity.Lengths, Unit: "m", MinOpen: true, Max: 60},
		{Pattern: "/stock/*/count", Kind: Count, Min: 0, Max: 100000},

		words("/pileTypes/*/name"),
		choice("/pileTypes/*/shape", "square", "round", "spun", "tube"),
		size("/pileTypes/*/width", 5),
		size("/pileTypes/*/wall", 1),
		force("/pileTypes/*/pressingLimit", true),
		words("/pileTypes/*/pressingLimitBasis"),
		{Pattern: "/pileTypes/*/bars", Kind: Quantity, Dim: quantity.Lengths, Unit: "m", Max: 10},
		{Pattern: "/pileTypes/*/lap", Kind: Quantity, Dim: quantity.Lengths, Unit: "m", Max: 10},

		words("/criteria/*/name"),
		choice("/criteria/*/scheme", "single factor"),
		ratio("/criteria/*/factor", "", 1, 10, false),
		words("/criteria/*/basis"),
		{Pattern: "/criteria/*/hold/time", Kind: Quantity, Dim: quantity.Times, Unit: "s", MinOpen: true, Max: 86400},

		words("/piles/*/mark"),
		reference("/piles/*/type", "pileTypes"), reference("/piles/*/rig", "rigs"),
		reference("/piles/*/circuit", "circuits"), reference("/piles/*/criterion", "criteria"),
		force("/piles/*/workingLoad", true),
		length("/piles/*/platform", -anyLevel, anyLevel),
		length("/piles/*/founding", -anyLevel, anyLevel),
		length("/piles/*/cutoff", -anyLevel, anyLevel),
		words("/piles/*/struck/why"),
	}
	for _, at := range []string{
		"/rigs/*/waived/reaction", "/rigs/*/circuits/*/waived/circuit", "/gauges/*/waived/gauge", "/pileTypes/*/waived/pile",
	} {
		list = append(list, waiver(at)...)
	}
	return list
}

// Fields returns the fields of schema 1, in the order of the forms.
func Fields() []Field { return append([]Field(nil), fields...) }

// FieldAt returns the field that describes the place at a JSON pointer of the
// file, such as "/now/piles/p14/workingLoad".
func FieldAt(path string) (Field, bool) {
	rest, ok := strings.CutPrefix(path, "/now")
	if !ok {
		return Field{}, false
	}
	names := strings.Split(rest, "/")
	for _, f := range fields {
		if matches(strings.Split(f.Pattern, "/"), names) {
			return f, true
		}
	}
	return Field{}, false
}

func matches(pattern, names []string) bool {
	if len(pattern) != len(names) {
		return false
	}
	for i, p := range pattern {
		switch {
		case p == "*" && names[i] != "":
		case p == "#" && whole(names[i]):
		case p != names[i]:
			return false
		}
	}
	return true
}

func whole(s string) bool {
	for i := 0; i < len(s); i++ {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return s != "" && len(s) <= 6
}

// patternOf rewrites a path of the tree to a pattern step by step; used while
// checking a file.
type place struct {
	pattern string
	path    string
}

func (p place) child(name string) place {
	step := name
	if IsCollection(p.pattern) {
		step = "*"
	}
	return place{p.pattern + "/" + step, document.Join(p.path, name)}
}

func (p place) item(i int) place {
	return place{p.pattern + "/#", p.path + "/" + itoa(i)}
}

// collections are the maps whose members are things under ids.
var collections = map[string]bool{
	"/rigs": true, "/rigs/*/circuits": true, "/gauges": true, "/stock": true, "/pileTypes": true,
	"/criteria": true, "/piles": true,
}

// IsCollection says whether a pattern ("/rigs/*/circuits") names a map whose
// members are things under ids.
func IsCollection(pattern string) bool { return collections[pattern] }
