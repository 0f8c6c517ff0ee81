package table

// Separator is the sign that parts the cells of a row.
type Separator byte

// The separators that are looked for.
const (
	None      Separator = 0 // not given, or not there: every row is one cell
	Semicolon Separator = ';'
	Tab       Separator = '\t'
	Comma     Separator = ','
	Bar       Separator = '|'
)

// Separators lists them.
var Separators = [...]Separator{Semicolon, Tab, Comma, Bar}

// Offer is a separator that fits a text as well as another one does.
type Offer struct {
	Separator Separator
	Width     int      // number of cells of most rows
	First     []string // cells of the first row, to be shown
}

// fit is how a separator parts a text.
type fit struct {
	Offer
	rows    int // on which something stands
	parted  int // rows of more than one cell
	regular int // rows with the most common number of cells, above one
	loose   bool
	fault   *fault
}

// parts says that at least half of the rows that were read have more than one
// cell.
func (f fit) parts() bool { return f.parted > 0 && 2*f.parted >= f.rows }

// partsAsMuch and beats compare shares of the rows that were read, which are
// fewer where a fault ended the reading.
func (f fit) partsAsMuch(as fit) bool { return f.parted*as.rows >= as.parted*f.rows }

// beats says that a separator parts no smaller share of the rows than another,
// no less regularly, and one of both better.
func (f fit) beats(other fit) bool {
	regular, theirs := f.regular*other.rows, other.regular*f.rows
	return f.partsAsMuch(other) && regular >= theirs && (regular > theirs || !other.partsAsMuch(f))
}

// choose looks for the separator of a text by parting all of it with each. One
// is chosen where it beats every other; else those that nothing beats are
// offered. A comma that stands between two digits wherever it stands outside
// quotation marks may be a decimal sign; it gives way to a separator that parts
// as many rows, because that one can be nothing else. A separator that parts the
// rows up to a fault stands with the others: where it is chosen, the fault is
// blamed.
//
// The rule is our own choice: a table written by a program has as many cells in
// every row, and a sign that happens to stand in cells does so irregularly.
func choose(text string, line int) (chosen Separator, offered []Offer, blame *fault) {
	var parting []fit
	farthest := -1
	for _, sep := range Separators {
		f, reached := measure(text, line, sep)
		switch {
		case f.fault == nil && f.rows == 0:
			return None, nil, &fault{code: CodeEmpty}
		case f.parts():
			parting = append(parting, f)
		case f.fault != nil && reached > farthest:
			farthest, blame = reached, f.fault
		}
	}
	parting = without(parting, func(f, other fit) bool { return f.Separator == Comma && !f.loose && other.partsAsMuch(f) })
	best := without(parting, func(f, other fit) bool { return other.beats(f) })
	switch len(best) {
	case 0:
		// Either no sign parts the text, or each ends in a fault: with the right
		// one, that comes latest.
		return None, nil, blame
	case 1:
		return best[0].Separator, nil, best[0].fault
	}
	for _, f := range best {
		offered = append(offered, f.Offer)
	}
	return None, offered, nil
}

// without drops those that give way to any other.
func without(list []fit, gives func(f, other fit) bool) []fit {
	var kept []fit
	for i, f := range list {
		way := false
		for k, other := range list {
			way = way || k != i && gives(f, other)
		}
		if !way {
			kept = append(kept, f)
		}
	}
	return kept
}

// measure parts a text with a separator; reached is how far it came.
func measure(text string, line int, sep Separator) (f fit, reached int) {
	f.Separator = sep
	var widths [MaxColumns + 1]int
	s := &scanner{text: text, sep: byte(sep), line: line, wary: true}
	f.fault = each(s, func(_ int, cells []string) {
		if f.rows++; f.rows == 1 {
			f.First = append([]string(nil), cells...)
		}
		if len(cells) > 1 {
			f.parted++
		}
		widths[len(cells)]++
	})
	f.loose = s.loose
	for width := 2; width < len(widths); width++ {
		if widths[width] > 0 && widths[width] >= f.regular {
			f.regular, f.Width = widths[width], width
		}
	}
	return f, s.pos
}
