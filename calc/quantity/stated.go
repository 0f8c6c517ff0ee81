package quantity

import (
	"strconv"
	"strings"
)

// Stated is a quantity as a job file holds it: digits exactly as typed, and
// the unit in which they were typed.
type Stated struct {
	Digits string // optional minus, digits, optional point and digits
	Unit   Unit
	Value  float64 // in the coherent unit
}

// MaxDigits is the largest number of digits that a stated number may have.
const MaxDigits = 18

// ParseStated reads the grammar of the job file: optional minus, digits,
// optional point and digits, one space, a unit of the closed list. A ratio has
// neither space nor unit; "%" is a unit like any other. The dimension must be
// d. The error is a [*TextError] with the code "stated.grammar",
// "stated.unit" or "stated.dimension".
func ParseStated(text string, d Dimension) (Stated, error) {
	digits, symbol, spaced := strings.Cut(text, " ")
	if !plainDecimal(digits) || (spaced && symbol == "") {
		return Stated{}, &TextError{Code: "stated.grammar", Found: text, Allowed: allowedUnits(d), Example: example(d)}
	}
	u, ok := Find(symbol)
	if !ok || (!spaced && d != Dimensionless) {
		return Stated{}, &TextError{Code: "stated.unit", Found: text, Allowed: allowedUnits(d), Example: example(d)}
	}
	if u.Dim != d {
		return Stated{}, &TextError{Code: "stated.dimension", Found: text, Allowed: allowedUnits(d), Example: example(d)}
	}
	v, err := strconv.ParseFloat(digits, 64)
	if err != nil {
		return Stated{}, &TextError{Code: "stated.grammar", Found: text, Allowed: allowedUnits(d), Example: example(d)}
	}
	if v == 0 {
		v = 0 // "-0" is zero
	}
	return Stated{Digits: digits, Unit: u, Value: u.Coherent(v)}, nil
}

// Text returns the stated form.
func (s Stated) Text() string {
	if s.Unit.Symbol == "" {
		return s.Digits
	}
	return s.Digits + " " + s.Unit.Symbol
}

// Decimals returns how many digits stand after the point.
func (s Stated) Decimals() int {
	if i := strings.IndexByte(s.Digits, '.'); i >= 0 {
		return len(s.Digits) - i - 1
	}
	return 0
}

func plainDecimal(s string) bool {
	s = strings.TrimPrefix(s, "-")
	whole, frac, point := strings.Cut(s, ".")
	return digitsOnly(whole) && (!point || digitsOnly(frac)) && len(whole)+len(frac) <= MaxDigits
}

func digitsOnly(s string) bool {
	for i := 0; i < len(s); i++ {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return s != ""
}

// allowedUnits lists the symbols of a dimension for a complaint.
func allowedUnits(d Dimension) string {
	var list []string
	for _, u := range Units(d) {
		if u.Symbol != "" {
			list = append(list, u.Symbol)
		}
	}
	return strings.Join(list, ", ")
}

func example(d Dimension) string {
	switch d {
	case Forces:
		return "900 kN"
	case Pressures:
		return "15.0 MPa"
	case Lengths:
		return "12.60 m"
	case Masses:
		return "180 t"
	case Times:
		return "30 s"
	case Dimensionless:
		return "2.0"
	}
	if list := Units(d); len(list) > 0 {
		return "1 " + list[0].Symbol
	}
	return "1"
}
