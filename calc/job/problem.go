package job

import (
	"strconv"
	"strings"

	"gaugewright/calc/quantity"
)

// Problem says what is wrong with a text as the stored value of a field, nil
// when nothing is. Codes as for [Check].
func (f Field) Problem(text string) *quantity.TextError {
	if text == "" {
		return nil // made blank by a person
	}
	ok := true
	switch f.Kind {
	case Quantity:
		return f.quantityProblem(text)
	case Choice:
		ok = has(f.Choices, text)
	case Count:
		v, err := strconv.Atoi(text)
		if err == nil && strconv.Itoa(v) == text && !f.within(float64(v)) {
			return &quantity.TextError{Code: "job.range", Found: text, Allowed: f.allowed()}
		}
		ok = err == nil && strconv.Itoa(v) == text
	case Date:
		ok = isDate(text)
	case Instant:
		ok = IsInstant(text)
	case Columns:
		_, ok = ParseColumns(text, f.Columns)
	case Digest:
		ok = isDigest(text)
	case Lines, Number, Patch, Any:
		ok = false // no text can stand there
	}
	if ok {
		return nil
	}
	code := map[Kind]string{Choice: "job.choice", Count: "job.count", Date: "job.date", Instant: "job.date", Columns: "job.record", Digest: "job.digest"}[f.Kind]
	if code == "" {
		code = "job.kind"
	}
	return &quantity.TextError{Code: code, Found: text, Allowed: f.allowed(), Example: f.example()}
}

func (f Field) quantityProblem(text string) *quantity.TextError {
	if has(f.Other, text) {
		return nil
	}
	s, err := quantity.ParseStated(text, f.Dim)
	if err != nil {
		te := err.(*quantity.TextError)
		return &quantity.TextError{Code: "job.quantity", Found: text, Allowed: te.Allowed, Example: te.Example}
	}
	if !f.within(s.Value) {
		return &quantity.TextError{Code: "job.range", Found: text, Allowed: f.Range(s.Unit)}
	}
	return nil
}

func has(list []string, text string) bool {
	for _, one := range list {
		if one == text {
			return true
		}
	}
	return false
}

// allowed writes what may stand in the field.
func (f Field) allowed() string {
	switch f.Kind {
	case Quantity:
		return "a quantity"
	case Choice:
		return strings.Join(f.Choices, ", ")
	case Reference:
		return "the id of a thing in " + f.To
	case Count:
		return f.Range(quantity.Must(""))
	case Date:
		return "a day of the calendar, year-month-day"
	case Instant:
		return "a moment in UTC, with Z at its end"
	case Columns:
		return columnsAllowed(f.Columns)
	case Lines:
		return "a list of lines"
	case Digest:
		return "64 hexadecimal digits"
	case Number:
		return "a whole number from 0"
	case Patch:
		return "a map"
	case Any:
		switch {
		case f.List:
			return "a list"
		case f.Map:
			return "a map"
		}
		return "a value"
	}
	return "a text that is not blank"
}

func (f Field) example() string {
	switch f.Kind {
	case Count:
		return "4"
	case Date:
		return "2026-11-03"
	case Instant:
		return "2026-11-03T14:20:00Z"
	case Columns:
		return columnsExample(f.Columns)
	}
	return ""
}

func (f Field) within(v float64) bool {
	return v <= f.Max && (v > f.Min || v == f.Min && !f.MinOpen)
}

// Range writes what the field allows, in a unit.
func (f Field) Range(u quantity.Unit) string {
	write := func(v float64) string {
		text := strconv.FormatFloat(u.From(v), 'g', 6, 64)
		if u.Symbol != "" && u.Symbol != "%" {
			return text + " " + u.Symbol
		}
		return text + u.Symbol
	}
	from := "from "
	if f.MinOpen {
		from = "more than "
	}
	return from + write(f.Min) + ", at most " + write(f.Max)
}

// isDate says whether a text is a day of the calendar (ISO 8601, years 0001 to
// 9999).
func isDate(text string) bool {
	if len(text) < 10 || text[4] != '-' || text[7] != '-' {
		return false
	}
	year, a := digits(text[0:4])
	month, b := digits(text[5:7])
	day, c := digits(text[8:])
	if !a || !b || !c || len(text) != 10 || year < 1 || month < 1 || month > 12 || day < 1 {
		return false
	}
	days := [...]int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}[month-1]
	if month == 2 && year%4 == 0 && (year%100 != 0 || year%400 == 0) {
		days = 29
	}
	return day <= days
}

// Day is the day of a moment, "2026-11-03" of "2026-11-03T14:20:00Z".
func Day(instant string) string {
	day, _, _ := strings.Cut(instant, "T")
	return day
}

// IsInstant says whether a text is a moment in UTC, with up to three decimals
// of a second: "2026-11-03T14:20:00.250Z".
func IsInstant(text string) bool {
	if len(text) < 20 || text[10] != 'T' || text[13] != ':' || text[16] != ':' || text[len(text)-1] != 'Z' || !isDate(text[:10]) {
		return false
	}
	hour, a := digits(text[11:13])
	minute, b := digits(text[14:16])
	second, c := digits(text[17:19])
	if !a || !b || !c || hour > 23 || minute > 59 || second > 59 {
		return false
	}
	rest := text[19 : len(text)-1]
	if rest == "" {
		return true
	}
	_, ok := digits(rest[1:])
	return rest[0] == '.' && ok && len(rest) <= 4
}

func digits(text string) (v int, ok bool) {
	for i := 0; i < len(text); i++ {
		if !digit(text[i]) {
			return 0, false
		}
		v = v*10 + int(text[i]-'0')
	}
	return v, text != ""
}

func isDigest(text string) bool {
	for i := 0; i < len(text); i++ {
		if c := text[i]; !digit(c) && (c < 'a' || c > 'f') {
			return false
		}
	}
	return len(text) == 64
}
