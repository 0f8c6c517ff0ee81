package pile

import "strconv"

// InputError says which number cannot be used and what is allowed.
//
// The codes:
//
//	pile.notFinite      not a number, or without bound
//	pile.notPositive    zero or negative where only more than zero makes sense
//	pile.negative       negative where zero is allowed
//	pile.wallTooThick   twice the wall is more than the outer diameter
type InputError struct {
	Code    string
	Symbol  string  // the symbol as in the rule: "t"
	Value   float64 // what was given, in the coherent unit
	Limit   float64 // the bound that was crossed, in the same unit
	Example string  // a value that would do, with its unit
}

// Error gives an English sentence for logs and tests; screens word the code.
func (e *InputError) Error() string {
	given := e.Symbol + " = " + strconv.FormatFloat(e.Value, 'g', -1, 64)
	switch e.Code {
	case "pile.notFinite":
		return given + " is not a finite number; for example " + e.Example
	case "pile.negative":
		return given + " is negative, at least 0 is allowed; for example " + e.Example
	case "pile.wallTooThick":
		return given + " is more than half the outer diameter, at most " +
			strconv.FormatFloat(e.Limit, 'g', -1, 64) + " is allowed; for example " + e.Example
	}
	return given + " must be more than 0; for example " + e.Example
}

// positive refuses what is not a finite number above zero.
func positive(symbol string, v float64, example string) error {
	if v-v != 0 { // NaN and the infinities
		return &InputError{Code: "pile.notFinite", Symbol: symbol, Value: v, Example: example}
	}
	if v <= 0 {
		return &InputError{Code: "pile.notPositive", Symbol: symbol, Value: v, Example: example}
	}
	return nil
}
