package working

import "strings"

// token is one piece of a formula text.
type token struct {
	text string
	kind tokenKind
}

type tokenKind uint8

const (
	operator tokenKind = iota // + - * / ^ ( ) , and the comparisons
	number
	name // a symbol, a function, pi, "and"
)

// tokens parts a formula into its pieces, and reports the first character that
// belongs to none.
func tokens(formula string) ([]token, bool) {
	var list []token
	for i := 0; i < len(formula); {
		c := formula[i]
		switch {
		case c == ' ':
			i++
		case isDigit(c) || c == '.':
			j := i
			for j < len(formula) && (isDigit(formula[j]) || formula[j] == '.') {
				j++
			}
			list = append(list, token{formula[i:j], number})
			i = j
		case isLetter(c):
			j := i
			for j < len(formula) && (isLetter(formula[j]) || isDigit(formula[j])) {
				j++
			}
			list = append(list, token{formula[i:j], name})
			i = j
		case (c == '>' || c == '<') && i+1 < len(formula) && formula[i+1] == '=':
			list = append(list, token{formula[i : i+2], operator})
			i += 2
		case strings.IndexByte("+-*/^(),<>=", c) >= 0:
			list = append(list, token{formula[i : i+1], operator})
			i++
		default:
			return list, false
		}
	}
	return list, true
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

func isLetter(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c == '_'
}

// functions are the names that a formula may call, with the least number of
// arguments.
var functions = map[string]int{
	"sqrt": 1, "abs": 1, "min": 1, "max": 1, "sum": 1, "roundup": 2, "rounddown": 2, "if": 3,
}

// Symbols returns the symbols that a formula uses, each once, in order of
// appearance.
func Symbols(formula string) []string {
	list, _ := tokens(formula)
	var found []string
	for _, t := range list {
		if t.kind != name || t.text == "pi" || t.text == "and" || functions[t.text] > 0 {
			continue
		}
		seen := false
		for _, f := range found {
			seen = seen || f == t.text
		}
		if !seen {
			found = append(found, t.text)
		}
	}
	return found
}

// Bare says whether a formula is a single symbol or number: such a step would
// explain nothing.
func Bare(formula string) bool {
	list, ok := tokens(formula)
	return ok && len(list) <= 1
}
