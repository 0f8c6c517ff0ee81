package working

import (
	"math"
	"strconv"
	"strings"

	"gaugewright/calc/quantity"
)

// Printed is a step as it stands on paper. Numbers are in coherent units, with
// so many digits that a pocket calculator fed with them gives the printed
// result to its last place.
type Printed struct {
	Formula string   // in symbols
	Values  string   // the same with numbers and units
	Inputs  []string // the number of each input, without unit
	Result  string   // the number of the result, without unit
	Unit    string   // of the result
}

// fewest is how many significant digits an input is printed with where that is
// enough; every digit of a shorter number is printed anyway.
const fewest = 6

// Print sets a step on paper with the job's decimal sign.
func (s *Step) Print(sign quantity.DecimalSign) Printed {
	result := quantity.Print(s.Value, s.Rule.Decimals, quantity.Point)
	var inputs []string
	for digits := fewest; digits <= 17; digits++ {
		inputs = s.digits(digits)
		if s.agrees(inputs, result) {
			break
		}
	}
	unit := s.Rule.Dim.Coherent()
	if s.Rule.Statement {
		unit = ""
	}
	for i := range inputs {
		inputs[i] = quantity.Localise(inputs[i], sign)
	}
	return Printed{
		Formula: s.Rule.Formula, Values: s.substituted(inputs), Inputs: inputs,
		Result: quantity.Localise(result, sign), Unit: unit,
	}
}

func (s *Step) digits(significant int) []string {
	list := make([]string, len(s.Inputs))
	for i, in := range s.Inputs {
		shortest := strconv.FormatFloat(in.V, 'f', -1, 64)
		if len(strings.Trim(strings.Replace(shortest, ".", "", 1), "-0")) <= significant {
			list[i] = shortest
			continue
		}
		decimals := significant - 1 - int(math.Floor(math.Log10(math.Abs(in.V))))
		list[i] = strconv.FormatFloat(in.V, 'f', max(0, decimals), 64)
	}
	return list
}

// agrees says whether the printed inputs give the printed result.
func (s *Step) agrees(inputs []string, result string) bool {
	values := make(map[string]Measured, len(inputs))
	for i, text := range inputs {
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			return false
		}
		values[s.Rule.Inputs[i].Name] = Measured{v, s.Rule.Inputs[i].Dim}
	}
	m, err := Evaluate(s.Rule.Formula, values)
	return err == nil && quantity.Print(m.V, s.Rule.Decimals, quantity.Point) == result
}

// substituted writes the formula with the printed numbers and their units in
// place of the symbols. A negative number gets parentheses.
func (s *Step) substituted(inputs []string) string {
	list, _ := tokens(s.Rule.Formula)
	var b strings.Builder
	previous := ""
	for _, t := range list {
		text := t.text
		if t.kind == name {
			for i, symbol := range s.Rule.Inputs {
				if symbol.Name != t.text {
					continue
				}
				text = inputs[i]
				if unit := symbol.Dim.Coherent(); unit != "" {
					text += " " + unit
				}
				if strings.HasPrefix(text, "-") {
					text = "(" + text + ")"
				}
			}
		}
		if spaced(t, previous) {
			b.WriteByte(' ')
		}
		b.WriteString(text)
		if t.kind == operator && strings.Contains("+ - * / >= <= > < = ,", t.text) && previous != "" && previous != "(" {
			b.WriteByte(' ')
		}
		if t.text == "and" {
			b.WriteByte(' ')
		}
		previous = t.text
	}
	return b.String()
}

// spaced says whether a space stands before the token.
func spaced(t token, previous string) bool {
	if t.text == "and" {
		return true
	}
	return t.kind == operator && previous != "" && previous != "(" && strings.Contains("+ - * / >= <= > < =", t.text)
}
