package head

import (
	"strconv"

	"gaugewright/calc/quantity"
)

// Slack is how near two levels must be to be taken as one: a millionth of a
// millimetre [m]. Our own choice; it swallows the last bits of a difference of
// levels and nothing that a person can state. It decides the [State] only;
// lengths are given as they come out.
const Slack quantity.Length = 1e-9

// Optional is a length that may not be known. The zero value is not known; a
// length that is known to be zero is Known(0).
type Optional struct {
	V     quantity.Length
	Known bool
}

// Known returns a length that is known.
func Known(v quantity.Length) Optional { return Optional{v, true} }

// Input is what a cut-off is computed from.
type Input struct {
	Cutoff     quantity.Length // Z_c: cut-off level [m]
	Head       Optional        // Z_h: level of the head after pressing [m]
	Projection Optional        // l_p: bars above cut-off [m], >= 0; Known(0) for spun piles and wherever none stand up
	Lap        Optional        // l_0: lap length of the bars of a build-up [m], >= 0
	Platform   Optional        // Z_p: platform level [m]
}

// State says what is to be done with a head.
type State uint8

// The states. In NotKnown the head was not surveyed, or the bar projection is
// not known and the head is not below cut-off.
const (
	NotKnown   State = iota
	ToCut            // c > l_p: saw, and keep the off-cut
	AtSawLevel       // c = l_p: nothing to saw, break down to cut-off
	BarsShort        // 0 <= c < l_p: enough concrete, bars short
	BuildUp          // c < 0: the head is below cut-off
)

// String names the state for logs and tests; screens word it.
func (s State) String() string {
	return [...]string{"not known", "to cut", "at saw level", "bars short", "build up"}[s]
}

// Result is what the crew needs. A length that does not apply in the state, or
// hangs on something not known, is not known.
type Result struct {
	State State
	Above Optional // c: head above cut-off [m], negative below
	// SawLevel is the level of the saw cut [m]; it needs no surveyed head.
	SawLevel Optional
	// SawAbovePlatform is the height of the saw cut above the platform [m],
	// negative below it: what a crew can measure from.
	SawAbovePlatform Optional
	// FromHead is the length to cut, measured down from the head [m]; in the
	// states ToCut and AtSawLevel.
	FromHead Optional
	OffCut   Optional // length of the off-cut to keep [m], 0 where nothing is sawn
	Short    Optional // by how much the bars are short [m]; in BarsShort
	// BreakTo is the level to which a low head is broken back to free its bars
	// for the lap, and Height what is then built up to cut-off [m]; in BuildUp
	// with the lap known.
	BreakTo Optional
	Height  Optional
	// LapMissing is true in BuildUp when the lap is not known: the height of
	// the build-up is then not computed.
	LapMissing bool
}

// Compute returns what is to be done with a pile head.
//
//	c = Z_h - Z_c
//	saw level = Z_c + l_p, above the platform Z_c + l_p - Z_p
//	c > l_p:        to cut, from the head c - l_p, off-cut max(0, c - l_p)
//	c = l_p:        at saw level
//	0 <= c < l_p:   bars short by l_p - c
//	c < 0:          broken back to Z_h - l_0, built up by -c + l_0
//
// Equality is taken with [Slack]. What an input that is not known leaves open
// is not computed: without the lap there is no build-up height, and the result
// says so; without the projection no saw level, without the platform no height
// above it. Levels may have any sign and must be finite; l_p and l_0 are at
// least zero; else the error is an [*InputError]. Source: geometry; sawing at
// the bar projection and breaking back by the lap are common practice, no
// source. A lap that reaches below the pile's own bars is not noticed.
func Compute(in Input) (Result, error) {
	for _, o := range []struct {
		symbol  string
		v       Optional
		length  bool
		example string
	}{
		{"Z_c", Known(in.Cutoff), false, "11.20 m"}, {"Z_h", in.Head, false, "12.35 m"}, {"l_p", in.Projection, true, "0.60 m"},
		{"l_0", in.Lap, true, "0.80 m"}, {"Z_p", in.Platform, false, "12.60 m"},
	} {
		v := float64(o.v.V)
		switch {
		case !o.v.Known:
		case v-v != 0: // NaN and the infinities
			return Result{}, &InputError{Code: "head.notFinite", Symbol: o.symbol, Value: v, Example: o.example}
		case v < 0 && o.length:
			return Result{}, &InputError{Code: "head.negative", Symbol: o.symbol, Value: v, Example: o.example}
		}
	}

	var r Result
	bars := in.Projection
	if bars.Known {
		r.SawLevel = Known(in.Cutoff + bars.V)
		if in.Platform.Known {
			r.SawAbovePlatform = Known(in.Cutoff + bars.V - in.Platform.V)
		}
	}
	if !in.Head.Known {
		return r, nil
	}
	c := in.Head.V - in.Cutoff
	r.Above = Known(c)
	if bars.Known {
		r.OffCut = Known(max(c, bars.V) - bars.V)
	}
	switch {
	case c < -Slack:
		r.State = BuildUp
		r.LapMissing = !in.Lap.Known
		if in.Lap.Known {
			r.BreakTo = Known(in.Head.V - in.Lap.V)
			r.Height = Known(-c + in.Lap.V)
		}
	case !bars.Known:
		r.State = NotKnown
	case c > bars.V+Slack:
		r.State = ToCut
		r.FromHead = Known(c - bars.V)
	case c >= bars.V-Slack:
		r.State = AtSawLevel
		r.FromHead = Known(c - bars.V)
	default:
		r.State = BarsShort
		r.Short = Known(bars.V - c)
	}
	return r, nil
}

// InputError says which number cannot be used. The codes are "head.notFinite",
// and "head.negative" for a length below zero.
type InputError struct {
	Code    string
	Symbol  string  // as in the rule: "l_p"
	Value   float64 // what was given [m]
	Example string  // a value that would do, with its unit
}

// Error gives an English sentence for logs and tests; screens word the code.
func (e *InputError) Error() string {
	if e.Code == "head.negative" {
		return e.Symbol + " = " + strconv.FormatFloat(e.Value, 'f', -1, 64) +
			" m is negative, at least 0 m is allowed; for example " + e.Example
	}
	return e.Symbol + " is not a finite number; for example " + e.Example
}
