// Package basis holds every figure and every formula that the product borrows,
// with where it comes from: the value, the document, its edition, the clause,
// and a mark that says how far the source was seen.
//
// An entry is a preset: the screen names its basis and its mark beside it, and
// a person may enter another value. It never claims compliance with anything.
package basis

import "gaugewright/calc/quantity"

// Mark says how the source of an entry is known.
type Mark byte

// The five marks.
const (
	Seen       Mark = 'S' // read in a published copy
	SecondHand Mark = 's' // read only as quoted by others
	Memory     Mark = 'M' // recalled; the screen says "check against your copy"
	Practice   Mark = 'P' // common practice, no source
	Own        Mark = 'O' // our own choice
)

// Entry is one borrowed figure or formula.
type Entry struct {
	ID string
	// Value is the figure in the grammar of stated quantities, "0.90" or
	// "1.0 m"; for a formula it is the formula's text in symbols.
	Value string
	// Dim is the dimension of a figure; formulas are marked by Formula.
	Dim     quantity.Dimension
	Formula bool
	// Document, Edition and Clause say where to look. Where there is no
	// document they say so in words.
	Document, Edition, Clause string
	Mark                      Mark
}

// Find returns the entry with this id.
func Find(id string) (Entry, bool) {
	for i := range entries {
		if entries[i].ID == id {
			return entries[i], true
		}
	}
	return sectionEntry(id)
}

// All returns every entry, in the order of this package's tables, without the
// figures of [Sections].
func All() []Entry { return append([]Entry(nil), entries...) }

// Figure returns the number of a figure in its coherent unit. An unknown id,
// or the id of a formula, is a programming error and panics.
func Figure(id string) float64 {
	e, ok := Find(id)
	if !ok || e.Formula {
		panic("basis: no figure " + id)
	}
	s, err := quantity.ParseStated(e.Value, e.Dim)
	if err != nil {
		panic("basis: " + id + " is not a stated quantity")
	}
	return s.Value
}

const (
	none     = "none"
	practice = "common practice, no source"
	own      = "our own choice"
	statics  = "elementary statics"
	geometry = "elementary geometry"
)
