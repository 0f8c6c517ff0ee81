package calibration

import (
	"strings"

	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Of is a number with the place of its working.
type Of = working.Of[float64]

// Sheet writes steps into a book and hands each the inputs that its formula
// names: whatever was put or made known on the sheet before, the latest of a
// name. So a rule is no more than its formula, and the page stays small.
type Sheet struct {
	book  *working.Book
	keys  [][2]string
	known []known
}

type known struct {
	working.Symbol
	in working.In
}

// NewSheet returns a sheet of a book, nil for none. keys are the symbols that
// its formulas use with the keys of their names; a symbol with a number behind
// it, x7, has the key of x.
func NewSheet(book *working.Book, keys [][2]string) *Sheet { return &Sheet{book: book, keys: keys} }

// Know gives a symbol a value. A symbol without a key is a programming error
// and panics.
func (s *Sheet) Know(symbol string, d quantity.Dimension, in working.In) {
	plain := strings.TrimRight(symbol, "0123456789")
	key := ""
	for _, k := range s.keys {
		if k[0] == symbol || k[0] == plain && key == "" {
			key = k[1]
		}
	}
	if key == "" {
		panic("calibration: no name for " + symbol)
	}
	s.known = append(s.known, known{working.Symbol{Name: symbol, Dim: d, Key: key}, in})
}

// Put makes a step of a rule without inputs, which are found by the symbols of
// its formula, and makes its symbol known.
func (s *Sheet) Put(id string, r working.Rule, v float64) Of {
	if !s.book.On() {
		return Of{V: v}
	}
	ins := s.inputs(&r)
	of := working.Put(s.book, r, id, v, ins...)
	s.Know(r.Symbol, r.Dim, of.In())
	return of
}

// Prove makes a statement that belongs to a step; its inputs are found in the
// same way.
func (s *Sheet) Prove(id, of string, r working.Rule) {
	if s.book.On() {
		ins := s.inputs(&r)
		working.Prove(s.book, r, id, of, ins...)
	}
}

// inputs are the latest values of the symbols of the rule's formula. One that
// is not known is a programming error and panics.
func (s *Sheet) inputs(r *working.Rule) (ins []working.In) {
	for _, name := range working.Symbols(r.Formula) {
		i := len(s.known) - 1
		for i >= 0 && s.known[i].Name != name {
			i--
		}
		if i < 0 {
			panic("calibration: " + r.Key + ": nothing known of " + name)
		}
		r.Inputs = append(r.Inputs, s.known[i].Symbol)
		ins = append(ins, s.known[i].in)
	}
	return ins
}
