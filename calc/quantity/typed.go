package quantity

import "strings"

// TextError says what is wrong with a text that should be a quantity. The
// sentence for people is made from it by calc/words.
type TextError struct {
	Code    string   // such as "typed.ton"; the key of the sentence
	Found   string   // what stood there
	Allowed string   // what may stand there
	Example string   // a text that would be read
	Offers  []string // texts one of which the person may have meant
}

func (e *TextError) Error() string { return e.Code + ": " + e.Found }

// DecimalSign is the job's answer to "is the comma in 1,200 a decimal sign?".
type DecimalSign byte

// The three answers. With NotAsked a text like "1,200" is asked about.
const (
	NotAsked DecimalSign = 0
	Point    DecimalSign = '.'
	Comma    DecimalSign = ','
)

// ReadTyped reads what a person typed into a box for a quantity of dimension
// d. Where no unit was typed, unit is taken: it is the unit printed beside the
// box. A blank text gives ok false and no error: blank is not zero.
//
// The result keeps every digit; only signs that look alike (the minus signs
// and spaces of Unicode) and the decimal comma are rewritten.
//
// The error is a [*TextError] with one of the codes
//
//	typed.number      not a number: letters, two signs, an exponent
//	typed.separator   one to three digits, a comma and three digits, and the
//	                  job has not said what its comma means: Offers holds both
//	typed.mixed       point and comma, or several of one: Offers holds both
//	typed.ton         "ton" and its like: three forces and three masses
//	typed.unit        no unit of the closed list
//	typed.dimension   a unit of another kind of quantity
func ReadTyped(text string, d Dimension, unit Unit, sign DecimalSign) (s Stated, ok bool, err error) {
	clean := tidy(text)
	if clean == "" {
		return Stated{}, false, nil
	}
	number, word := splitUnit(clean)
	if number == "" {
		return Stated{}, false, &TextError{Code: "typed.number", Found: clean, Allowed: allowedUnits(d), Example: example(d)}
	}
	if word != "" {
		if lower := strings.ToLower(word); ambiguousTon[lower] || (d == Forces && massWord[lower]) {
			return Stated{}, false, tonError(number, word, d)
		}
		u, other, found := spell(word, d)
		switch {
		case other:
			return Stated{}, false, &TextError{Code: "typed.dimension", Found: word, Allowed: allowedUnits(d), Example: example(d)}
		case !found:
			return Stated{}, false, &TextError{Code: "typed.unit", Found: word, Allowed: allowedUnits(d), Example: example(d)}
		}
		unit = u
	}
	digits, terr := decimal(number, unit.Symbol, sign)
	if terr != nil {
		if terr.Example == "" {
			terr.Example = example(d)
		}
		return Stated{}, false, terr
	}
	stated := Stated{Digits: digits, Unit: unit}
	s, err = ParseStated(stated.Text(), d)
	if err != nil {
		return Stated{}, false, &TextError{Code: "typed.number", Found: clean, Allowed: allowedUnits(d), Example: example(d)}
	}
	return s, true, nil
}

// tidy rewrites the look-alikes of minus and space, and trims.
func tidy(text string) string {
	var b strings.Builder
	for _, r := range text {
		switch r {
		case '\u2212', '\u2013', '\u2010', '\u2011', '\ufe63':
			b.WriteByte('-')
		case '\u00a0', '\u202f', '\u2009', '\u2007', '\t', '\n', '\r':
			b.WriteByte(' ')
		default:
			b.WriteRune(r)
		}
	}
	return strings.TrimSpace(b.String())
}

// splitUnit parts "120 tf" or "120tf" into number and unit word.
func splitUnit(clean string) (number, word string) {
	end := 0
	for end < len(clean) && strings.IndexByte("0123456789.,-+ '", clean[end]) >= 0 {
		end++
	}
	return strings.TrimSpace(clean[:end]), strings.TrimSpace(clean[end:])
}

// decimal turns the number part into plain digits with a point.
func decimal(number, unit string, sign DecimalSign) (string, *TextError) {
	minus := ""
	rest := number
	if strings.HasPrefix(rest, "-") {
		minus, rest = "-", strings.TrimSpace(rest[1:])
	}
	points, commas := strings.Count(rest, "."), strings.Count(rest, ",")
	if strings.ContainsAny(rest, "-+'") || !strings.ContainsAny(rest, "0123456789") {
		return "", &TextError{Code: "typed.number", Found: number}
	}
	if strings.Contains(rest, " ") {
		return "", &TextError{Code: "typed.number", Found: number, Example: minus + strings.ReplaceAll(rest, " ", "")}
	}
	withUnit := func(digits string) string {
		if unit == "" {
			return minus + digits
		}
		return minus + digits + " " + unit
	}
	switch {
	case points+commas == 0:
		return minus + rest, nil
	case points+commas > 1:
		return "", &TextError{Code: "typed.mixed", Found: number, Offers: mixedOffers(rest, withUnit)}
	}
	i := strings.IndexAny(rest, ".,")
	whole, frac, comma := rest[:i], rest[i+1:], rest[i] == ','
	grouped := len(whole) >= 1 && len(whole) <= 3 && len(frac) == 3 && strings.Trim(whole, "0") != ""
	switch {
	case grouped && comma && sign == NotAsked:
		return "", &TextError{Code: "typed.separator", Found: number,
			Offers: []string{withUnit(whole + "." + frac), withUnit(whole + frac)}}
	case grouped && comma && sign == Point:
		return minus + whole + frac, nil
	case grouped && !comma && sign == Comma:
		return "", &TextError{Code: "typed.mixed", Found: number,
			Offers: []string{withUnit(whole + "." + strings.TrimRight(frac, "0")), withUnit(whole + frac)}}
	}
	if whole == "" {
		whole = "0"
	}
	if frac == "" {
		return minus + whole, nil
	}
	return minus + whole + "." + frac, nil
}

// mixedOffers gives the two meanings of a text with several separators, where
// each is one: the last sign as the decimal sign, or all of them as grouping.
func mixedOffers(rest string, withUnit func(string) string) []string {
	last := strings.LastIndexAny(rest, ".,")
	drop := strings.NewReplacer(".", "", ",", "")
	whole, frac := drop.Replace(rest[:last]), rest[last+1:]
	if whole == "" || frac == "" {
		return nil
	}
	if strings.Count(rest, rest[last:last+1]) > 1 {
		return []string{withUnit(whole + frac)}
	}
	first := strings.IndexAny(rest, ".,")
	offers := []string{withUnit(whole + "." + frac)}
	if short := rest[first+1 : last]; len(short) == 3 && len(frac) == 3 {
		return append(offers, withUnit(whole+frac))
	}
	if head, tail := rest[:first], drop.Replace(rest[first+1:]); head != "" {
		offers = append(offers, withUnit(head+"."+tail))
	}
	return offers
}

// tonError offers the units that "ton" may mean, where the number itself is
// readable.
func tonError(number, word string, d Dimension) *TextError {
	e := &TextError{Code: "typed.ton", Found: word, Allowed: allowedUnits(d), Example: example(d)}
	symbols := []string{"tf", "tonf-US", "tonf-UK"}
	switch d {
	case Masses:
		symbols = []string{"t", "ton-US", "ton-UK"}
	case Forces:
	default:
		return &TextError{Code: "typed.dimension", Found: word, Allowed: allowedUnits(d), Example: example(d)}
	}
	for _, s := range symbols {
		e.Offers = append(e.Offers, number+" "+s)
	}
	return e
}
