package job

import "gaugewright/calc/quantity"

// The makers of fields, one for each sort of thing that is stated. Ranges are
// wide: they catch a wrong unit and a lost decimal point, not a bold design.

const (
	anyLevel  = 12000  // m, above and below any ground on earth
	anyPlace  = 2e7    // m, half around the earth
	mostForce = 100000 // kN
	mostOil   = 200000 // kPa
)

func length(pattern string, min, max float64, other ...string) Field {
	return Field{Pattern: pattern, Kind: Quantity, Dim: quantity.Lengths, Unit: "m", Min: min, Max: max, Other: other}
}

// level is a level on the job's datum.
func level(pattern string) Field { return length(pattern, -anyLevel, anyLevel) }

// size is a length of a section or a cylinder, shown in mm; max in m.
func size(pattern string, max float64) Field {
	return Field{Pattern: pattern, Kind: Quantity, Dim: quantity.Lengths, Unit: "mm", MinOpen: true, Max: max}
}

// movement is a length shown in mm that may be zero; max in m.
func movement(pattern string, max float64) Field {
	return Field{Pattern: pattern, Kind: Quantity, Dim: quantity.Lengths, Unit: "mm", Max: max}
}

func area(pattern string) Field {
	return Field{Pattern: pattern, Kind: Quantity, Dim: quantity.Areas, Unit: "cm2", MinOpen: true, Max: 25}
}

// pressure is a pressure of oil or a strength.
func pressure(pattern string) Field {
	return Field{Pattern: pattern, Kind: Quantity, Dim: quantity.Pressures, Unit: "MPa", MinOpen: true, Max: mostOil}
}

// pressureFromZero may be zero: a return pressure, a prestress.
func pressureFromZero(pattern string) Field {
	f := pressure(pattern)
	f.MinOpen = false
	return f
}

// strength is a strength of steel, which may be above any pressure of oil.
func strength(pattern string) Field {
	f := pressure(pattern)
	f.Max = 2e6
	return f
}

// stiffness is a modulus of elasticity.
func stiffness(pattern string) Field {
	f := pressure(pattern)
	f.Max = 3e8
	return f
}

// bearing is a pressure on the ground.
func bearing(pattern string) Field {
	return Field{Pattern: pattern, Kind: Quantity, Dim: quantity.Pressures, Unit: "kPa", MinOpen: true, Max: 20000}
}

func force(pattern string, open bool) Field {
	return Field{Pattern: pattern, Kind: Quantity, Dim: quantity.Forces, Unit: "kN", MinOpen: open, Max: mostForce}
}

// moment may have either sign.
func moment(pattern string) Field {
	return Field{Pattern: pattern, Kind: Quantity, Dim: quantity.Moments, Unit: "kNm", Min: -1e7, Max: 1e7}
}

func mass(pattern string, open bool) Field {
	return Field{Pattern: pattern, Kind: Quantity, Dim: quantity.Masses, Unit: "t", MinOpen: open, Max: 10000}
}

func duration(pattern, unit string, open bool, max float64) Field {
	return Field{Pattern: pattern, Kind: Quantity, Dim: quantity.Times, Unit: unit, MinOpen: open, Max: max}
}

func ratio(pattern, unit string, min, max float64, open bool) Field {
	return Field{Pattern: pattern, Kind: Quantity, Dim: quantity.Dimensionless, Unit: unit, Min: min, Max: max, MinOpen: open}
}

// celsius is a temperature in degrees Celsius, a plain number.
func celsius(pattern string) Field { return ratio(pattern, "", -60, 100, false) }

func words(pattern string) Field { return Field{Pattern: pattern, Kind: Words} }

func date(pattern string) Field { return Field{Pattern: pattern, Kind: Date} }

func instant(pattern string) Field { return Field{Pattern: pattern, Kind: Instant} }

func reference(pattern, to string) Field { return Field{Pattern: pattern, Kind: Reference, To: to} }

func counted(pattern string, min, max float64) Field {
	return Field{Pattern: pattern, Kind: Count, Min: min, Max: max}
}

func choice(pattern string, choices ...string) Field {
	return Field{Pattern: pattern, Kind: Choice, Choices: choices}
}

func yesNo(pattern string) Field { return choice(pattern, "yes", "no") }

func number(pattern string) Field { return Field{Pattern: pattern, Kind: Number} }

// needed makes a field one that must be there.
func needed(f Field) Field {
	f.Needed = true
	return f
}

// waiver is who waived a limit, and why.
func waiver(at string) []Field {
	return []Field{words(at + "/by"), words(at + "/role"), words(at + "/on"), words(at + "/why")}
}

// struck is how a thing is struck out: it stays in the file.
func struck(at string) []Field {
	return []Field{words(at + "/struck/why"), words(at + "/struck/by"), date(at + "/struck/on")}
}
