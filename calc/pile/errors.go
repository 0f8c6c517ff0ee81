package pile

import (
	"strconv"

	"gaugewright/calc/quantity"
)

// InputError says what cannot be used and what is allowed. Screens word the
// code with [InputError.Args].
//
// The codes:
//
//	pile.notFinite        not a number, or without bound
//	pile.notPositive      zero or negative where only more than zero makes sense
//	pile.negative         negative where zero is allowed
//	pile.above            more than Limit
//	pile.below            less than Limit
//	pile.wallTooThick     twice the wall is more than the outer diameter
//	pile.webTooThick      the web is thicker than the flanges are wide
//	pile.flangeTooThick   both flanges are more than the depth
//	pile.gyrationTooLarge the radius of gyration is more than half the width
//	pile.classHalf        a concrete class with one number: cube or cylinder?
//	pile.classUnknown     not a concrete class of the list
//	pile.hardeningUnknown not one of slow, normal, rapid
//	pile.gradeUnknown     not a steel grade of the list
//	pile.timberUnknown    not a timber class of the list
//	pile.curveUnknown     not a buckling curve of the list
//	pile.tooYoung         concrete of this age has no computed strength
//	pile.prestressTooHigh the prestress leaves nothing for pressing
//	pile.sectionShape     the tabled section is of another shape than stated
//	pile.noLimits         an empty list has no weakest limit
type InputError struct {
	Code   string
	Symbol string             // the symbol as in the rule: "t"
	Value  float64            // what was given, in the coherent unit
	Limit  float64            // the bound that was crossed, in the same unit
	Dim    quantity.Dimension // of both
	// Text is what was given where it is a text, and Allowed what would do.
	Text, Allowed string
	Example       string // a value that would do, with its unit
}

// Error says it for logs and tests.
func (e *InputError) Error() string {
	args := e.Args(quantity.Point)
	return e.Code + ": " + args[0] + "; allowed " + args[1] + "; for example " + args[2]
}

// Args are the arguments of the sentence of the code: what was given, what is
// allowed, and an example. Numbers stand in the unit that a box of their kind
// suggests.
func (e *InputError) Args(sign quantity.DecimalSign) []string {
	given, allowed := e.Text, e.Allowed
	if given == "" && e.Symbol != "" {
		given = e.Symbol + " = " + e.print(e.Value, sign)
	}
	if allowed == "" {
		allowed = e.print(e.Limit, sign)
	}
	return []string{given, allowed, quantity.Localise(e.Example, sign)}
}

// print writes a number to six significant digits.
func (e *InputError) print(v float64, sign quantity.DecimalSign) string {
	unit := e.Dim.Coherent()
	if units := quantity.Units(e.Dim); len(units) > 0 {
		unit, v = units[0].Symbol, units[0].From(v)
	}
	short, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 6, 64), 64)
	text := quantity.Localise(quantity.Digits(short), sign)
	if unit != "" {
		text += " " + unit
	}
	return text
}

// number is an input on its way through its checks.
type number struct {
	symbol  string
	v       float64
	dim     quantity.Dimension
	example string
}

func (n number) fault(code string, limit float64) error {
	return &InputError{Code: code, Symbol: n.symbol, Value: n.v, Limit: limit, Dim: n.dim, Example: n.example}
}

// finite refuses what is not a number, and the infinities.
func (n number) finite() error {
	if n.v-n.v != 0 {
		return n.fault("pile.notFinite", 0)
	}
	return nil
}

// positive refuses what is not a finite number above zero.
func (n number) positive() error {
	if err := n.finite(); err != nil {
		return err
	}
	if n.v <= 0 {
		return n.fault("pile.notPositive", 0)
	}
	return nil
}

// fromZero refuses what is not a finite number from zero up.
func (n number) fromZero() error {
	if err := n.finite(); err != nil {
		return err
	}
	if n.v < 0 {
		return n.fault("pile.negative", 0)
	}
	return nil
}

// within refuses what is not a finite number from low to high.
func (n number) within(low, high float64) error {
	if err := n.finite(); err != nil {
		return err
	}
	if n.v < low {
		return n.fault("pile.below", low)
	}
	if n.v > high {
		return n.fault("pile.above", high)
	}
	return nil
}

// share refuses what is not a part above zero, at most the whole.
func (n number) share() error {
	if err := n.positive(); err != nil {
		return err
	}
	if n.v > 1 {
		return n.fault("pile.above", 1)
	}
	return nil
}

// first returns the first error of a list of checks.
func first(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

func length(symbol string, v quantity.Length, example string) number {
	return number{symbol, float64(v), quantity.Lengths, example}
}

func area(v quantity.Area) number {
	return number{"A", float64(v), quantity.Areas, "0.1225 m2"}
}

func stress(symbol string, v quantity.Pressure, example string) number {
	return number{symbol, float64(v), quantity.Pressures, example}
}

func force(symbol string, v quantity.Force) number {
	return number{symbol, float64(v), quantity.Forces, "1800 kN"}
}

func ratio(symbol string, v quantity.Ratio, example string) number {
	return number{symbol, float64(v), quantity.Dimensionless, example}
}
