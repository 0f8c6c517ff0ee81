package desk

import (
	"strings"
	"unicode"

	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/table"
	"gaugewright/calc/words"
)

// column is one column of a table that is to become piles.
type column struct {
	header string
	field  *job.Field // nil where the column is not read
	name   string     // of the field below the pile, "workingLoad"
	stated bool       // a person said what the column is, or that it is not read
	unit   *quantity.Unit
	doubt  *problem // why what the header says of the unit is not taken
	read   map[string]*cell
	lacks  *cell // the first cell that has no unit
	line   int   // its line
}

// pileField is a field that a column may fill.
type pileField struct {
	job.Field
	name string
}

// pileFields lists the fields that stand in a pile itself, in the order of the
// forms.
func pileFields() []pileField {
	var list []pileField
	for _, f := range job.Fields() {
		if name, ok := strings.CutPrefix(f.Pattern, "/piles/*/"); ok && !strings.Contains(name, "/") {
			list = append(list, pileField{f, name})
		}
	}
	return list
}

// columnWords are the words by which the fields are known, written as [plain]
// writes a header.
func columnWords(fields []pileField) map[string]int {
	known := map[string]int{}
	for i, f := range fields {
		key := strings.TrimPrefix(f.Key(), "field.")
		for _, word := range append(strings.Split(words.Say("header."+key), ";"), words.Say(f.Key())) {
			known[plain(word)] = i
		}
	}
	return known
}

// token is a word of a header, and where it ends.
type token struct {
	word string
	end  int
}

// tokens parts a text into its runs of letters and digits, in lower case.
func tokens(text string) []token {
	var list []token
	begin := -1
	for i, r := range text + " " {
		letter := unicode.IsLetter(r) || unicode.IsDigit(r)
		switch {
		case letter && begin < 0:
			begin = i
		case !letter && begin >= 0:
			list = append(list, token{strings.ToLower(text[begin:i]), i})
			begin = -1
		}
	}
	return list
}

// plain writes a header without capitals and signs: "Cut-off level" is "cut off
// level".
func plain(text string) string { return join(tokens(text)) }

func join(list []token) string {
	var parts []string
	for _, t := range list {
		parts = append(parts, t.word)
	}
	return strings.Join(parts, " ")
}

// recognise finds the field that a header names, and the unit that stands behind
// its words: "Load, kN", "Load in kN", "Toe level m AOD". What stands in brackets
// does not count: "Working load (SLS) [kN]".
func recognise(header string, fields []pileField, known map[string]int) (field int, unit string, ok bool) {
	if i, ok := known[plain(header)]; ok {
		return i, "", true
	}
	label, _ := brackets(header)
	list := tokens(label)
	for n := len(list); n > 0; n-- {
		i, found := known[join(list[:n])]
		if !found {
			continue
		}
		rest := strings.Trim(label[list[n-1].end:], " ,;:/.-")
		switch {
		case rest == "":
			return i, "", true
		case fields[i].Kind != job.Quantity:
		default:
			if word, ok := unitWord(rest, fields[i].Dim); ok {
				return i, word, true
			}
		}
	}
	return 0, "", false
}

// brackets parts a header from what stands in brackets.
func brackets(header string) (label string, inside []string) {
	for {
		open := strings.IndexAny(header, "[(")
		if open < 0 {
			return label + header, inside
		}
		length := strings.IndexAny(header[open:], "])")
		if length < 0 {
			return label + header, inside
		}
		label += header[:open] + " "
		inside = append(inside, strings.TrimSpace(header[open+1:open+length]))
		header = header[open+length+1:]
	}
}

// unitWord takes the end of a header for a unit: "kN", "in kN", "m AOD". What
// may stand for several units is one too, to be asked about.
func unitWord(rest string, d quantity.Dimension) (word string, ok bool) {
	parts := strings.Fields(rest)
	if len(parts) > 1 && strings.EqualFold(parts[0], "in") {
		parts = parts[1:]
	}
	if len(parts) == 0 || len(parts) > 2 {
		return "", false
	}
	unit, doubt := unitOfWord(parts[0], d)
	return parts[0], unit != nil || doubt != nil
}

// unitOfWord is the unit that a word of a header means, or why it may not be
// taken for one: "t" for a force. Both are nil where it is no unit at all.
func unitOfWord(word string, d quantity.Dimension) (*quantity.Unit, *problem) {
	word = strings.Trim(strings.TrimSpace(word), "[]()")
	if word == "" {
		return nil, nil
	}
	if word == plainNumber && d == quantity.Dimensionless {
		none := quantity.Must("")
		return &none, nil
	}
	s, _, err := quantity.ReadTyped("1 "+word, d, quantity.Unit{}, quantity.NotAsked)
	if err == nil {
		return &s.Unit, nil
	}
	te, ok := err.(*quantity.TextError)
	if !ok || te.Code != "typed.ton" && te.Code != "typed.dimension" {
		return nil, nil
	}
	return nil, &problem{code: te.Code, found: te.Found, allowed: te.Allowed, example: te.Example}
}

// takeUnit looks for the unit of a column in what its header says of it, in
// brackets, and in the last word of a header that only a person understood.
func (c *column) takeUnit(said string) {
	if c.field == nil || c.field.Kind != job.Quantity {
		return
	}
	candidates := []string{said}
	_, inside := brackets(c.header)
	for _, one := range inside {
		first, _, _ := strings.Cut(one, " ")
		candidates = append(candidates, one, first)
	}
	for _, word := range candidates {
		unit, doubt := unitOfWord(word, c.field.Dim)
		if unit != nil {
			c.unit, c.doubt = unit, nil
			return
		}
		if c.doubt == nil {
			c.doubt = doubt
		}
	}
	if parts := strings.FieldsFunc(c.header, func(r rune) bool { return strings.ContainsRune(" ,;", r) }); c.stated && c.doubt == nil && len(parts) > 1 {
		c.unit, _ = unitOfWord(parts[len(parts)-1], c.field.Dim)
	}
}

// mostHeaders is how many rows from the top are looked through for the headers:
// a title and a few lines of a letter head may stand above them.
const mostHeaders = 20

// headerRow finds the row in which most columns are known by their words; -1
// where there is none.
func headerRow(rows []table.Row, fields []pileField, known map[string]int) int {
	at, most := -1, 0
	for i, row := range rows[:min(len(rows), mostHeaders)] {
		hits := 0
		for k := range row.Cells {
			if _, _, ok := recognise(headerText(row.Cell(k)), fields, known); ok {
				hits++
			}
		}
		if hits > most {
			at, most = i, hits
		}
	}
	return at
}

// headerText is the text of a header: its line ends are spaces.
func headerText(cell string) string { return oneLine(table.Plain(cell)) }

// oneLine writes a text on one line, without spaces around it and with single
// ones in it.
func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }

// unitsRow says whether a row below the headers holds their units: every cell
// of it that is not blank stands in the column of a quantity and is a unit.
func unitsRow(row table.Row, columns []column) bool {
	found := false
	for i := range row.Cells {
		text := headerText(row.Cell(i))
		if text == "" {
			continue
		}
		c := columns[i]
		if c.field == nil {
			if unit, doubt := unitOfWord(text, quantity.Lengths); unit == nil && doubt == nil {
				return false
			}
			continue
		}
		if c.field.Kind != job.Quantity {
			return false
		}
		if unit, doubt := unitOfWord(text, c.field.Dim); unit == nil && doubt == nil {
			return false
		}
		found = true
	}
	return found
}
