package desk

import (
	"strings"
	"unicode"

	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/table"
	"gaugewright/calc/words"
)

// The states of a row.
const (
	rowNew       = "new"       // a pile that the job does not have
	rowChanged   = "changed"   // a pile that the job has otherwise
	rowUnchanged = "unchanged" // a pile that the job has just so
	rowRefused   = "refused"
)

var rowStates = []string{rowNew, rowChanged, rowUnchanged, rowRefused}

// importRow is a row of the table as a pile.
type importRow struct {
	line     int
	mark     string
	cells    []*cell // of the columns that are read, in their order
	pile     string  // id of the pile with this mark, "" for none
	state    string
	changes  []change
	problems []placed
	warnings []string
}

// placed is a problem with the column it is in, -1 for the row.
type placed struct {
	column int
	*problem
}

func (r *importRow) refuse(column int, p *problem) {
	r.problems = append(r.problems, placed{column, p})
}

// change is a field of a pile that a row states otherwise than the job does.
type change struct{ name, stored string }

// cell is what a text of a column was read as. One cell serves all rows with
// the same text in a column.
type cell struct {
	typed   string // one line of it
	stored  string // what the file will hold, "" for nothing
	number  quantity.Stated
	comma   bool // a decimal comma stands in it
	problem *problem
}

// contests are the paths of the fields between whose values nobody has chosen.
func (f *file) contests() map[string]bool {
	paths := map[string]bool{}
	for _, c := range f.choices {
		paths["/now"+c.Path] = true
	}
	return paths
}

// readRows reads every row and says what becomes of it.
func (m *importing) readRows() {
	m.contests = m.f.contests()
	m.slot = map[string]int{}
	for i := range m.columns {
		if c := &m.columns[i]; c.field != nil {
			m.slot[c.name] = len(m.read)
			m.read = append(m.read, i)
		}
	}
	m.rows = make([]importRow, 0, len(m.data))
	for _, row := range m.data {
		made := importRow{line: row.Line, cells: make([]*cell, len(m.read))}
		blank := true
		for k, i := range m.read {
			made.cells[k] = m.cell(i, row.Cell(i), row.Line)
			blank = blank && made.cells[k].typed == ""
		}
		if blank {
			m.skipped++
			continue
		}
		m.rows = append(m.rows, made)
	}
	m.doubt()
	marks := m.marks()
	for i := range m.rows {
		m.judge(&m.rows[i], marks)
		m.count[m.rows[i].state]++
	}
}

// cell reads a text of a column.
func (m *importing) cell(column int, raw string, line int) *cell {
	c := &m.columns[column]
	if known := c.read[raw]; known != nil {
		return known
	}
	made := &cell{typed: oneLine(table.Plain(raw))}
	c.read[raw] = made
	if made.typed == "" {
		return made
	}
	switch c.field.Kind {
	case job.Words:
		if made.stored = made.typed; len(made.typed) > mostWords {
			made.refuse(&problem{code: "typed.range", found: short(made.typed), allowed: itoa(mostWords)})
		}
	case job.Quantity:
		m.quantity(c, made, line)
	case job.Reference:
		if c.field.To != "circuits" { // a circuit is looked for in the rig of the row
			made.stored, made.problem = m.book(c.field.To, "").find(made.typed)
		}
	case job.Choice:
		made.stored = choiceOf(c.field, made.typed)
	default:
		made.stored = made.typed
	}
	if made.problem != nil || made.stored == "" {
		return made
	}
	if te := c.field.Problem(made.stored); te != nil {
		made.refuse(fieldProblem(te, made.typed))
	}
	return made
}

func (c *cell) refuse(p *problem) { c.stored, c.problem = "", p }

func choiceOf(field *job.Field, typed string) string {
	for _, choice := range field.Choices {
		if strings.EqualFold(typed, choice) || strings.EqualFold(typed, words.Say("choice."+choice)) {
			return choice
		}
	}
	return typed
}

// quantity reads a number. The unit is the one typed in the cell, or that of
// the column; there is no other. Of a number that the table's decimal sign
// would turn into another one, nothing is taken until a person says the sign.
func (m *importing) quantity(c *column, made *cell, line int) {
	own := unitTyped(made.typed)
	if !own && c.unit == nil {
		if c.lacks == nil {
			c.lacks, c.line = made, line
		}
		made.problem = &problem{code: "import.noUnit"}
		return
	}
	unit := quantity.Unit{}
	if c.unit != nil {
		unit = *c.unit
	}
	s, ok, err := quantity.ReadTyped(made.typed, c.field.Dim, unit, m.sign)
	if err != nil {
		made.problem = m.numberProblem(err)
		return
	}
	if ok {
		made.stored, made.number, made.comma = s.Text(), s, strings.Contains(made.typed, ",")
	}
}

// unitTyped says whether a text holds more than a number.
func unitTyped(text string) bool {
	return strings.ContainsFunc(text, func(r rune) bool { return unicode.IsLetter(r) || strings.ContainsRune(`%"°`, r) })
}

// numberProblem says why a text is no quantity, with what it may have meant.
func (m *importing) numberProblem(err error) *problem {
	te, ok := err.(*quantity.TextError)
	if !ok {
		return &problem{code: "typed.number"}
	}
	if te.Code == "typed.separator" || te.Code == "typed.mixed" {
		return &problem{code: "import.two", found: te.Found, allowed: strings.Join(te.Offers, words.Say("desk.between"))}
	}
	return &problem{code: te.Code, found: te.Found, allowed: te.Allowed, example: te.Example}
}

// doubt looks for the first number that can be read in two ways while nobody
// has said what the decimal sign of the table is. What the job says of its own
// comma settles nothing: the table was made elsewhere. "1,200" is such a number
// always; "1.200" is one where the job or another number of the table has a
// decimal comma.
func (m *importing) doubt() {
	if m.sign != quantity.NotAsked {
		return
	}
	commas := m.f.job().Sign() == quantity.Comma
	for _, i := range m.read {
		for _, c := range m.columns[i].read {
			commas = commas || c.comma
		}
	}
	for _, i := range m.read {
		c := &m.columns[i]
		if c.field.Kind != job.Quantity || !commas {
			continue
		}
		for _, made := range c.read {
			if made.stored == "" || !strings.Contains(made.typed, ".") {
				continue
			}
			if _, _, err := quantity.ReadTyped(made.typed, c.field.Dim, quantity.Units(c.field.Dim)[0], quantity.Comma); err != nil {
				made.refuse(m.numberProblem(err))
			}
		}
	}
	for r := range m.rows {
		for k, made := range m.rows[r].cells {
			if made.problem != nil && made.problem.code == "import.two" && m.eitherSign(m.read[k], made) {
				m.asked, m.askedAt, m.askedIn = made, m.rows[r].line, m.read[k]
				return
			}
		}
	}
}

// eitherSign says whether saying the decimal sign would settle a number.
func (m *importing) eitherSign(column int, made *cell) bool {
	d := m.columns[column].field.Dim
	for _, sign := range []quantity.DecimalSign{quantity.Comma, quantity.Point} {
		if _, _, err := quantity.ReadTyped(made.typed, d, quantity.Units(d)[0], sign); err == nil {
			return true
		}
	}
	return false
}
