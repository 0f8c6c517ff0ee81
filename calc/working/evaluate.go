package working

import (
	"errors"
	"math"
	"strconv"

	"gaugewright/calc/quantity"
)

// Measured is a number with its dimension, in the coherent unit.
type Measured struct {
	V   float64
	Dim quantity.Dimension
}

// Evaluate computes a formula text from the values of its symbols and follows
// the dimensions. It shares no arithmetic with the packages whose rules it
// checks: it rounds with a code of its own.
//
// Errors: a text that is no formula, an unknown symbol, quantities of
// different dimension added, compared or given to min, max, sum or a rounding,
// a power that is not a plain number, a root or power that has no dimension.
func Evaluate(formula string, values map[string]Measured) (Measured, error) {
	list, ok := tokens(formula)
	if !ok {
		return Measured{}, errors.New("working: a character outside the language in " + formula)
	}
	e := &evaluator{list: list, values: values}
	result := e.statement()
	if e.err == nil && e.at < len(e.list) {
		e.fail("something is left over at " + e.list[e.at].text)
	}
	if e.err != nil {
		return Measured{}, errors.New(e.err.Error() + " in " + formula)
	}
	return result, nil
}

type evaluator struct {
	list   []token
	at     int
	values map[string]Measured
	err    error
}

func (e *evaluator) fail(what string) Measured {
	if e.err == nil {
		e.err = errors.New("working: " + what)
	}
	return Measured{}
}

func (e *evaluator) peek() string {
	if e.at < len(e.list) {
		return e.list[e.at].text
	}
	return ""
}

func (e *evaluator) take(text string) bool {
	if e.peek() == text {
		e.at++
		return true
	}
	return false
}

// statement: comparison { "and" comparison }, or a plain formula.
func (e *evaluator) statement() Measured {
	v := e.comparison()
	for e.err == nil && e.take("and") {
		w := e.comparison()
		v = truth(v.V == 1 && w.V == 1)
	}
	return v
}

func (e *evaluator) comparison() Measured {
	left := e.sum()
	op := e.peek()
	switch op {
	case ">=", "<=", ">", "<", "=":
	default:
		return left
	}
	e.at++
	right := e.sum()
	if left.Dim != right.Dim {
		return e.fail("quantities of different dimension compared")
	}
	// A rounding takes a quotient within quantity.Slack of a whole number as
	// that number; the proof of a rounding must not be finer than the rounding.
	near := math.Abs(left.V-right.V) <= quantity.Slack*math.Max(math.Abs(left.V), math.Abs(right.V))
	switch op {
	case ">=":
		return truth(left.V > right.V || near)
	case "<=":
		return truth(left.V < right.V || near)
	case ">":
		return truth(left.V > right.V && !near)
	case "<":
		return truth(left.V < right.V && !near)
	}
	return truth(near)
}

func truth(b bool) Measured {
	if b {
		return Measured{V: 1}
	}
	return Measured{}
}

func (e *evaluator) sum() Measured {
	v := e.product()
	for e.err == nil {
		minus := false
		switch {
		case e.take("+"):
		case e.take("-"):
			minus = true
		default:
			return v
		}
		w := e.product()
		if v.Dim != w.Dim {
			return e.fail("quantities of different dimension added")
		}
		if minus {
			v.V -= w.V
		} else {
			v.V += w.V
		}
	}
	return v
}

func (e *evaluator) product() Measured {
	v := e.signed()
	for e.err == nil {
		switch {
		case e.take("*"):
			w := e.signed()
			v = Measured{v.V * w.V, v.Dim.Times(w.Dim)}
		case e.take("/"):
			w := e.signed()
			v = Measured{v.V / w.V, v.Dim.Over(w.Dim)}
		default:
			return v
		}
	}
	return v
}

func (e *evaluator) signed() Measured {
	if e.take("-") {
		v := e.signed()
		v.V = -v.V
		return v
	}
	return e.power()
}

func (e *evaluator) power() Measured {
	base := e.atom()
	if e.err != nil || !e.take("^") {
		return base
	}
	exponent := e.signed()
	if exponent.Dim != quantity.Dimensionless {
		return e.fail("a power must be a plain number")
	}
	n := math.Round(exponent.V)
	if base.Dim != quantity.Dimensionless && (n != exponent.V || math.Abs(n) > 8) {
		return e.fail("a quantity with a unit takes small whole powers only")
	}
	return Measured{math.Pow(base.V, exponent.V), base.Dim.Power(int8(math.Max(-8, math.Min(8, n))))}
}

func (e *evaluator) atom() Measured {
	if e.err != nil {
		return Measured{}
	}
	if e.take("(") {
		v := e.statement()
		if !e.take(")") {
			return e.fail("a parenthesis is not closed")
		}
		return v
	}
	if e.at >= len(e.list) {
		return e.fail("the formula ends too early")
	}
	t := e.list[e.at]
	e.at++
	switch {
	case t.kind == number:
		v, err := strconv.ParseFloat(t.text, 64)
		if err != nil {
			return e.fail("not a number: " + t.text)
		}
		return Measured{V: v}
	case t.kind == name && t.text == "pi":
		return Measured{V: math.Pi}
	case t.kind == name && functions[t.text] > 0:
		return e.call(t.text)
	case t.kind == name:
		if v, ok := e.values[t.text]; ok {
			return v
		}
		return e.fail("no value for " + t.text)
	}
	return e.fail("not expected here: " + t.text)
}

func (e *evaluator) call(function string) Measured {
	if !e.take("(") {
		return e.fail(function + " needs a parenthesis")
	}
	var args []Measured
	for e.err == nil {
		args = append(args, e.statement())
		if !e.take(",") {
			break
		}
	}
	if e.err == nil && !e.take(")") {
		e.fail("a parenthesis is not closed")
	}
	if e.err == nil && len(args) < functions[function] {
		e.fail(function + " needs more arguments")
	}
	if e.err != nil {
		return Measured{}
	}
	first := args[0]
	alike := args
	if function == "if" {
		alike = args[1:]
	}
	for _, a := range alike {
		if a.Dim != alike[0].Dim {
			return e.fail(function + " with quantities of different dimension")
		}
	}
	switch function {
	case "sqrt":
		root, ok := first.Dim.Root()
		if !ok {
			return e.fail("the root has no dimension")
		}
		return Measured{math.Sqrt(first.V), root}
	case "abs":
		return Measured{math.Abs(first.V), first.Dim}
	case "if":
		if first.V == 1 {
			return args[1]
		}
		return args[2]
	case "roundup", "rounddown":
		n := math.Floor(first.V / args[1].V)
		rest := first.V/args[1].V - n // 0 <= rest < 1
		switch {
		case rest > 1-quantity.Slack:
			n++
		case rest > quantity.Slack && function == "roundup":
			n++
		}
		return Measured{n * args[1].V, first.Dim}
	}
	v := first.V
	for _, a := range args[1:] {
		switch function {
		case "min":
			v = math.Min(v, a.V)
		case "max":
			v = math.Max(v, a.V)
		case "sum":
			v += a.V
		}
	}
	return Measured{v, first.Dim}
}

// Check evaluates a step from its inputs and returns the relative difference
// to its value. A statement that is not true differs by one.
func (s *Step) Check() (difference float64, err error) {
	m, err := Evaluate(s.Rule.Formula, s.values())
	if err != nil {
		return 0, err
	}
	want := s.Rule.Dim
	if s.Rule.Statement {
		want = quantity.Dimensionless
	}
	if m.Dim != want {
		return 0, errors.New("working: " + s.ID + " gives " + m.Dim.Coherent() + ", not " + want.Coherent())
	}
	scale := math.Max(math.Abs(m.V), math.Abs(s.Value))
	if scale == 0 {
		return 0, nil
	}
	return math.Abs(m.V-s.Value) / scale, nil
}

func (s *Step) values() map[string]Measured {
	values := make(map[string]Measured, len(s.Inputs))
	for i, in := range s.Inputs {
		values[s.Rule.Inputs[i].Name] = Measured{in.V, s.Rule.Inputs[i].Dim}
	}
	return values
}
