// Package published compares what the code computes with what somebody else
// printed, and can write every comparison down for the test report
// (`make report`). Tests alone import it; nothing of it is in the product.
//
// A check takes the expected value as the text that stands in the source, so
// that the digits which were printed say how close the result has to be:
//
//	var table = published.Source{Document: "EN 1993-1-1:2005", Place: "Table 6.1", Mark: basis.SecondHand}
//	published.Check(t, table, "alpha of curve a", "0.21", got, published.Printed)
//
// Invented cases and laws that must hold for random input are no checks of this
// kind; they prove nothing about a source and stay with plain assertions.
package published

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"gaugewright/calc/basis"
)

// Source says where an expected value stands and how far that was seen.
type Source struct {
	Document string     // title and edition
	Place    string     // table, clause, page, example
	Mark     basis.Mark // of the glossary; none where [Worked]
	worked   bool
}

// At returns the source at another place of the same document.
func (s Source) At(place string) Source {
	s.Place = place
	return s
}

// Worked is the source of a value that was worked out apart from the code, by
// hand or by another program. The report lists such values in a part of their
// own: they check the arithmetic, not what a document says.
func Worked(topic string) Source { return Source{Document: topic, worked: true} }

// Tolerance says how far a result may lie from the expected value.
type Tolerance struct {
	exact          bool
	absolute, part float64
	why            string
}

// Printed allows half a unit of the last digit of the expected text.
var Printed = Tolerance{}

// Exact allows no difference at all.
var Exact = Tolerance{exact: true}

// Within allows an absolute difference, in the unit of the expected text. Where
// that is more than the printed digits justify, it must say why.
func Within(absolute float64, why string) Tolerance { return Tolerance{absolute: absolute, why: why} }

// Part allows a part of the expected value, and else is like [Within].
func Part(part float64, why string) Tolerance { return Tolerance{part: part, why: why} }

// A hair above half a unit, for values that lie halfway and are not exact in
// binary.
const half = 0.5 + 1e-6

// limit is the difference that is allowed from want, of which the last printed
// digit is worth unit.
func (tol Tolerance) limit(want, unit float64) float64 {
	switch {
	case tol.exact:
		return 0
	case tol.absolute > 0:
		return tol.absolute
	case tol.part > 0:
		return tol.part * math.Abs(want)
	}
	return half * unit
}

// Read returns the number that a printed text stands for, and what one unit of
// its last digit is worth. Spaces between the digits are left out, as in
// "4.448 222 E+03".
func Read(text string) (value, unit float64, err error) {
	text = strings.ReplaceAll(text, " ", "")
	value, err = strconv.ParseFloat(text, 64)
	if err != nil {
		return 0, 0, err
	}
	mantissa, exponent, _ := strings.Cut(strings.ToLower(text), "e")
	power := 0
	if exponent != "" {
		if power, err = strconv.Atoi(exponent); err != nil {
			return 0, 0, err
		}
	}
	_, decimals, _ := strings.Cut(mantissa, ".")
	return value, math.Pow10(power - len(decimals)), nil
}

// Check compares a result with the printed text of its expected value, fails
// the test where they differ by more than the tolerance, and writes the
// comparison down if the report asks for it.
func Check(t testing.TB, s Source, what, want string, got float64, tol Tolerance) {
	t.Helper()
	value, unit, err := Read(want)
	if err != nil {
		t.Fatalf("%s: the expected value %q is no number", what, want)
	}
	limit := tol.limit(value, unit)
	if limit > half*unit && tol.why == "" {
		t.Errorf("%s: the tolerance %v is more than half of the last digit of %s; say why", what, limit, want)
	}
	difference := got - value
	ok := math.Abs(difference) <= limit // not for NaN
	if !ok {
		t.Errorf("%s, %s, %s: want %s, got %v, which is off by %.3g; allowed %.3g", s.Document, s.Place, what, want, got, difference, limit)
	}
	l := s.line(what, want, ok)
	l.Number, l.Got, l.Difference, l.Tolerance = true, like(want, got), difference, limit
	if limit > half*unit {
		l.Why = tol.why
	}
	if value != 0 {
		l.Relative = math.Abs(difference / value)
	}
	l.LastDigits = math.Abs(difference) / unit
	l.record(t)
}

// CheckText compares a text with the one that stands in the source.
func CheckText(t testing.TB, s Source, what, want, got string) {
	t.Helper()
	if want != got {
		t.Errorf("%s, %s, %s: want %q, got %q", s.Document, s.Place, what, want, got)
	}
	l := s.line(what, short(want), want == got)
	l.Got = short(got)
	l.record(t)
}

// like prints a number with three digits more than the text beside it.
func like(want string, got float64) string {
	mantissa, _, exponent := strings.Cut(strings.ToLower(strings.ReplaceAll(want, " ", "")), "e")
	_, decimals, _ := strings.Cut(mantissa, ".")
	format := byte('f')
	if exponent {
		format = 'e'
	}
	return strconv.FormatFloat(got, format, len(decimals)+3, 64)
}

// short makes a text fit a column of the report.
func short(text string) string {
	const most = 44
	if q := strconv.QuoteToASCII(text); q != `"`+text+`"` {
		text = q
	}
	if len(text) > most {
		text = text[:most-3] + "..."
	}
	return text
}
