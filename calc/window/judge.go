package window

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Kind names a required limit.
type Kind string

// The four limits without which no never-exceed reading is known.
const (
	CircuitPressure Kind = "circuit"
	Pile            Kind = "pile"
	Reaction        Kind = "reaction"
	Gauge           Kind = "gauge"
)

// Limits that count where they are entered.
const (
	FreeLength Kind = "freeLength"
	Grip       Kind = "grip"
)

// Kinds lists the required limits in the order in which they are shown.
var Kinds = []Kind{CircuitPressure, Pile, Reaction, Gauge}

// State says how a limit stands.
type State byte

// A limit is missing, entered, or waived by a named person. Unchecked is a
// limit that is not required and not entered.
const (
	Missing State = iota
	Entered
	Waived
	Unchecked
)

// Limit is one limit with its own reading.
type Limit struct {
	Kind    Kind
	State   State
	Exact   quantity.Pressure // the reading before rounding [kPa]
	Reading quantity.Pressure // rounded down to a division [kPa]
}

// Verdict is what the limits say together.
type Verdict struct {
	// Missing lists the limits that are neither entered nor waived. While there
	// is one, no never-exceed reading is known: it is not taken from the rest.
	Missing []Kind
	// Never is the never-exceed reading [kPa] and Governs the index of the limit
	// that gives it; Governs is -1 when none is known, also when all limits are
	// waived.
	Never   quantity.Pressure
	Governs int
	// Open says that a set reading was given and does not exceed Never.
	Open bool
	// Rounding says that the window is closed by the gauge division alone: the
	// exact set reading does not exceed the exact limit.
	Rounding bool
}

// Judge compares a set reading with the limits. exactSet is the set reading
// before rounding, set the rounded one; hasSet is false while it is not known.
// Of equal readings the limit that stands first governs.
func Judge(exactSet, set quantity.Pressure, hasSet bool, limits []Limit) Verdict {
	v := Verdict{Governs: -1}
	for i, l := range limits {
		switch {
		case l.State == Missing:
			v.Missing = append(v.Missing, l.Kind)
		case l.State == Entered && (v.Governs < 0 || l.Reading < limits[v.Governs].Reading):
			v.Governs = i
		}
	}
	if len(v.Missing) > 0 || v.Governs < 0 {
		v.Governs = -1
		return v
	}
	v.Never = limits[v.Governs].Reading
	if !hasSet {
		return v
	}
	v.Open = set <= v.Never
	if !v.Open {
		v.Rounding = true
		for _, l := range limits {
			v.Rounding = v.Rounding && (l.State != Entered || exactSet <= l.Exact)
		}
	}
	return v
}

// NeverRule is the formula of the never-exceed reading: the smallest of the
// readings of the limits that are entered, p_circuit and so on.
func NeverRule(limits []Limit) working.Rule {
	r := working.Rule{Key: "window.never", Symbol: "p_never", Dim: quantity.Pressures, Decimals: 3, Basis: "window.never"}
	for _, l := range limits {
		if l.State != Entered {
			continue
		}
		if r.Formula != "" {
			r.Formula += ", "
		}
		r.Formula += "p_" + string(l.Kind)
		r.Inputs = append(r.Inputs, working.Symbol{Name: "p_" + string(l.Kind), Dim: quantity.Pressures, Key: "limitReading." + string(l.Kind)})
	}
	r.Formula = "min(" + r.Formula + ")"
	return r
}
