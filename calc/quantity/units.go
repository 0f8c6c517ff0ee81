package quantity

import "strings"

// Unit is one entry of the closed list. Its factor to the coherent unit is
// num/den, where both are whole numbers that a float64 holds exactly, so a
// conversion costs at most two roundings (relative error below 2^-52).
type Unit struct {
	Symbol   string
	Dim      Dimension
	num, den float64
	// Name is the key under which calc/words holds the unit's full name.
	Name string
}

// The factors below are exact by definition: g_n = 9.80665 m/s2,
// lb = 0.45359237 kg, in = 25.4 mm (NIST SP 811:2008, appendix B;
// international yard and pound, 1959).
var units = []Unit{
	{"kN", Forces, 1, 1, "unit.kN"},
	{"MN", Forces, 1000, 1, "unit.MN"},
	{"tf", Forces, 980665, 100000, "unit.tf"},
	{"tonf-US", Forces, 8896443230521, 1e12, "unit.tonf-US"},
	{"tonf-UK", Forces, 62275102613647, 6250000000000, "unit.tonf-UK"},
	{"kip", Forces, 8896443230521, 2e12, "unit.kip"},

	{"MPa", Pressures, 1000, 1, "unit.MPa"},
	{"bar", Pressures, 100, 1, "unit.bar"},
	{"kgf/cm2", Pressures, 196133, 2000, "unit.kgf/cm2"},
	{"psi", Pressures, 8896443230521, 1290320000000, "unit.psi"},
	{"kPa", Pressures, 1, 1, "unit.kPa"},

	{"m", Lengths, 1, 1, "unit.m"},
	{"mm", Lengths, 1, 1000, "unit.mm"},
	{"ft", Lengths, 3048, 10000, "unit.ft"},
	{"in", Lengths, 254, 10000, "unit.in"},

	{"t", Masses, 1, 1, "unit.t"},
	{"kg", Masses, 1, 1000, "unit.kg"},
	{"lb", Masses, 45359237, 1e11, "unit.lb"},
	{"ton-US", Masses, 90718474, 1e8, "unit.ton-US"},
	{"ton-UK", Masses, 10160469088, 1e10, "unit.ton-UK"},

	{"s", Times, 1, 1, "unit.s"},
	{"min", Times, 60, 1, "unit.min"},
	{"h", Times, 3600, 1, "unit.h"},

	{"m2", Areas, 1, 1, "unit.m2"},
	{"cm2", Areas, 1, 1e4, "unit.cm2"},
	{"mm2", Areas, 1, 1e6, "unit.mm2"},

	{"kNm", Moments, 1, 1, "unit.kNm"},
	{"MNm", Moments, 1000, 1, "unit.MNm"},
	{"tfm", Moments, 980665, 100000, "unit.tfm"},
	{"kip-ft", Moments, 3389544870828501, 2500000000000000, "unit.kip-ft"},

	{"t/m", LineMasses, 1, 1, "unit.t/m"},
	{"kg/m", LineMasses, 1, 1000, "unit.kg/m"},

	{"t/m3", Densities, 1, 1, "unit.t/m3"},

	{"", Dimensionless, 1, 1, "unit.ratio"},
	{"%", Dimensionless, 1, 100, "unit.percent"},
}

// Units returns the units of a dimension in the order in which a chooser
// offers them. The first is the one that an empty box suggests.
func Units(d Dimension) []Unit {
	var list []Unit
	for _, u := range units {
		if u.Dim == d {
			list = append(list, u)
		}
	}
	return list
}

// Find returns the unit with exactly this symbol.
func Find(symbol string) (Unit, bool) {
	for _, u := range units {
		if u.Symbol == symbol {
			return u, true
		}
	}
	return Unit{}, false
}

// Must is [Find] for symbols written in the product's own code; an unknown
// symbol there is a programming error and panics.
func Must(symbol string) Unit {
	u, ok := Find(symbol)
	if !ok {
		panic("quantity: no unit " + symbol)
	}
	return u
}

// Coherent converts x in the unit to the coherent unit of its dimension.
func (u Unit) Coherent(x float64) float64 { return float64(x*u.num) / u.den }

// From converts x in the coherent unit to this unit.
func (u Unit) From(x float64) float64 { return float64(x*u.den) / u.num }

// Factor returns the unit's size in the coherent unit as num/den, both whole.
func (u Unit) Factor() (num, den float64) { return u.num, u.den }

// spoken lists other ways in which people write a unit of the closed list.
// Each means exactly one unit: nothing here is a guess.
var spoken = map[string]string{
	"kgf/cm²": "kgf/cm2", "kg/cm2": "kgf/cm2", "kg/cm²": "kgf/cm2",
	"n/mm2": "MPa", "n/mm²": "MPa",
	"m²": "m2", "cm²": "cm2", "mm²": "mm2",
	"tonf(us)": "tonf-US", "tonf(uk)": "tonf-UK",
	"metre": "m", "metres": "m", "meter": "m", "meters": "m",
	"tonne": "t", "tonnes": "t", "kips": "kip", "bars": "bar", "foot": "ft", "feet": "ft", "inch": "in", "inches": "in",
}

// Coherent returns the coherent unit of any dimension, for numbers that have no
// unit of their own in the list.
func Coherent(d Dimension) Unit { return Unit{Symbol: d.Coherent(), Dim: d, num: 1, den: 1} }

// ambiguousTon are words that stand for three forces and three masses. They
// are never read. massWord are masses that people write for the force of
// their weight; where a force is asked they are not read either.
var (
	ambiguousTon = map[string]bool{"ton": true, "tons": true, "tonf": true, "tn": true}
	massWord     = map[string]bool{"t": true, "tonne": true, "tonnes": true}
)

// spell finds the unit of dimension d that a person means by word. Upper and
// lower case are told apart only where two units differ by nothing else.
func spell(word string, d Dimension) (u Unit, other bool, ok bool) {
	exact, found := Find(word)
	if found && exact.Symbol != "" {
		return exact, exact.Dim != d, exact.Dim == d
	}
	lower := strings.ToLower(word)
	if symbol, known := spoken[lower]; known {
		u = Must(symbol)
		return u, u.Dim != d, u.Dim == d
	}
	for _, u := range units {
		if u.Symbol != "" && strings.ToLower(u.Symbol) == lower && u.Dim == d {
			return u, false, true
		}
	}
	for _, u := range units {
		if u.Symbol != "" && strings.ToLower(u.Symbol) == lower {
			return u, true, false
		}
	}
	return Unit{}, false, false
}
