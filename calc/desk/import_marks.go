package desk

import "strings"

// mangled says whether a mark looks like something that a spreadsheet made of
// one: "1-3" becomes "1-Mar" or "2026-03-01", "1E5" becomes "1.00E+05", and a
// text that was taken for a formula becomes "#NAME?". It is a hint for a
// warning, never a reason to refuse. Common practice, no source.
func mangled(mark string) bool {
	return failed(mark) || exponent(mark) || date(mark)
}

// failed says whether a text is an error that a spreadsheet shows in a cell:
// "#NAME?", "#REF!", "#N/A", or "####" for a column that is too narrow.
func failed(s string) bool {
	return strings.HasPrefix(s, "#") && (strings.HasSuffix(s, "!") || strings.HasSuffix(s, "?") || s == "#N/A" || strings.Trim(s, "#") == "")
}

// exponent says whether a text is a number with one digit before the point and
// an exponent: "1,00E+05".
func exponent(s string) bool {
	mantissa, power, ok := strings.Cut(strings.ToUpper(s), "E+")
	if !ok || mantissa == "" || !onlyDigits(power) || len(power) < 2 {
		return false
	}
	return onlyDigits(mantissa) && len(mantissa) == 1 || len(mantissa) > 2 && onlyDigits(mantissa[:1]+mantissa[2:]) && strings.IndexByte(".,", mantissa[1]) >= 0
}

// date says whether a text is a day, a day and a month, or a month and a year.
func date(s string) bool {
	s = strings.TrimSuffix(s, " 00:00:00")
	parts := strings.FieldsFunc(s, func(r rune) bool { return strings.ContainsRune("-./ ", r) })
	months, numbers := 0, 0
	for _, p := range parts {
		switch {
		case monthNames[strings.ToLower(p)]:
			months++
		case onlyDigits(p) && (len(p) <= 2 || len(p) == 4):
			numbers++
		default:
			return false
		}
	}
	if months == 1 {
		return numbers == 1 || numbers == 2
	}
	if months > 0 || numbers != 3 {
		return false
	}
	// Three numbers are a day only with a year in full, or parted by points or
	// strokes: 1-2-3 is a mark.
	return len(parts[0]) == 4 || len(parts[2]) == 4 || len(parts[2]) == 2 && strings.ContainsAny(s, "./")
}

// monthNames are the short names of months as spreadsheets write them in
// English, German, French, Spanish and Italian.
var monthNames = func() map[string]bool {
	names := map[string]bool{}
	for _, name := range strings.Fields("jan feb mar apr may jun jul aug sep sept oct nov dec mär mrz mai okt dez janv févr mars avr juin juil août déc ene abr ago dic gen mag giu lug set ott") {
		names[name] = true
	}
	return names
}()

func onlyDigits(s string) bool {
	for i := range len(s) {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return s != ""
}
