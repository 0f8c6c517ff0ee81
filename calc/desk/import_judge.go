package desk

import (
	"cmp"
	"strings"

	"gaugewright/calc/document"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/words"
)

// marks of the table and of the job.
type marks struct {
	lines  map[string][]int  // of the table
	piles  map[string]string // of the job, to their ids; "" for several
	folded map[string]string // without capitals, to the marks of the job
}

func (m *importing) marks() marks {
	k := marks{lines: make(map[string][]int, len(m.rows)), piles: map[string]string{}, folded: map[string]string{}}
	for i := range m.rows {
		row := &m.rows[i]
		row.mark = m.cellOf(row, "mark").stored
		k.lines[row.mark] = append(k.lines[row.mark], row.line)
	}
	for id, pile := range m.f.now("piles").Members() {
		mark := oneLine(pile.Get("mark").Text())
		if mark == "" || struckOut(pile) {
			continue
		}
		if _, twice := k.piles[mark]; twice {
			id = ""
		}
		k.piles[mark], k.folded[strings.ToLower(mark)] = id, mark
	}
	return k
}

// judge says what becomes of a row.
func (m *importing) judge(row *importRow, marks marks) {
	for k, c := range row.cells {
		if c.problem != nil {
			row.refuse(m.read[k], c.problem)
		}
	}
	id, there := marks.piles[row.mark]
	switch {
	case row.mark == "":
		if m.cellOf(row, "mark").problem == nil {
			row.refuse(-1, &problem{code: "import.noMarkHere"})
		}
	case len(marks.lines[row.mark]) > 1:
		row.refuse(-1, &problem{code: "import.sameMark", found: row.mark, allowed: linesSay(marks.lines[row.mark])})
	case there && id == "":
		row.refuse(-1, &problem{code: "import.jobMark", found: row.mark})
	default:
		row.pile = id
	}
	if row.mark != "" && !there {
		if near := marks.folded[strings.ToLower(row.mark)]; near != "" {
			row.warnings = append(row.warnings, words.Say("import.near", row.mark, near))
		}
		if mangled(row.mark) {
			row.warnings = append(row.warnings, words.Say("import.mangled", row.mark))
		}
	}
	pile := m.f.now("piles").Get(row.pile)
	m.changes(row, pile)
	m.levels(row, pile)
	switch {
	case len(row.problems) > 0:
		row.state, row.changes = rowRefused, nil
	case pile == nil:
		row.state = rowNew
	case len(row.changes) > 0:
		row.state = rowChanged
	default:
		row.state = rowUnchanged
	}
}

// linesSay lists lines, the first of them where there are many.
func linesSay(lines []int) string {
	const most = 5
	var list []string
	for _, n := range lines[:min(len(lines), most)] {
		list = append(list, itoa(n))
	}
	if more := len(lines) - most; more > 0 {
		list = append(list, words.Say("import.more", itoa(more)))
	}
	return strings.Join(list, ", ")
}

// changes finds what a row states otherwise than its pile, and what is chosen
// for all rows where neither says anything.
func (m *importing) changes(row *importRow, pile *document.Node) {
	state := func(f *pileField, stored string) {
		if !same(f, stored, pile.Get(f.name).Text()) || m.contested(row.pile, f.name) {
			row.changes = append(row.changes, change{f.name, stored})
		}
	}
	for i := range m.fields {
		f := &m.fields[i]
		if f.name == "circuit" {
			if circuit := m.circuit(row, pile); circuit != "" {
				state(f, circuit)
			}
			continue
		}
		stored := m.stated(row, f.name)
		if stored == "" && pile.Get(f.name).Text() == "" {
			stored = m.defaults[f.name]
		}
		if stored != "" {
			state(f, stored)
		}
	}
}

func (m *importing) contested(pile, field string) bool {
	return len(m.contests) > 0 && m.contests[document.Join("/now/piles", pile)+"/"+field]
}

// cellOf is the cell of a row that fills a field; nil where no column does.
func (m *importing) cellOf(row *importRow, name string) *cell {
	if k, ok := m.slot[name]; ok {
		return row.cells[k]
	}
	return nil
}

// stated is what a row says of a field, "" for nothing.
func (m *importing) stated(row *importRow, name string) string {
	if c := m.cellOf(row, name); c != nil {
		return c.stored
	}
	return ""
}

// same says whether a field would hold the same as it does: the same text but
// for its spaces, or the same quantity written otherwise.
func same(f *pileField, stored, held string) bool {
	switch {
	case f.Kind == job.Words:
		return stored == oneLine(held)
	case stored == held || held == "" || f.Kind != job.Quantity:
		return stored == held
	}
	a, errA := quantity.ParseStated(stored, f.Dim)
	b, errB := quantity.ParseStated(held, f.Dim)
	return errA == nil && errB == nil && a.Value == b.Value
}

// circuit finds the circuit of a row: the one it names, which must belong to
// its rig; else the one that the pile has, the one chosen for all rows, or the
// only one there is. It is blank where the pile keeps what it has.
func (m *importing) circuit(row *importRow, pile *document.Node) string {
	held, heldRig := pile.Get("circuit").Text(), pile.Get("rig").Text()
	rig := cmp.Or(m.stated(row, "rig"), heldRig, m.defaults["rig"])
	book := m.book("circuits", rig)
	if c := m.cellOf(row, "circuit"); c != nil && c.typed != "" {
		id, p := book.find(c.typed)
		if rig == "" {
			p = &problem{code: "import.noRig"}
		}
		if p != nil {
			row.refuse(m.read[m.slot["circuit"]], p)
		}
		return id
	}
	chosen := m.defaults["circuit"]
	switch {
	case rig == "" || book.has(held):
		return ""
	case book.has(chosen):
		return chosen
	case len(book.list) == 1:
		return book.list[0].id
	case held != "" && rig != heldRig:
		row.refuse(-1, &problem{code: "import.otherRig", found: book.says()})
	}
	return ""
}

// levels refuses a pile that stands on its head. Levels of which the row states
// neither are not held against it.
func (m *importing) levels(row *importRow, pile *document.Node) {
	for _, rule := range []struct{ code, lower, upper string }{
		{"import.founding", "founding", "platform"}, {"import.cutoff", "founding", "cutoff"},
	} {
		if m.stated(row, rule.lower) == "" && m.stated(row, rule.upper) == "" {
			continue
		}
		low, ok := m.level(row, pile, rule.lower)
		high, both := m.level(row, pile, rule.upper)
		if !ok || !both || low.Value < high.Value {
			continue
		}
		p := &problem{code: rule.code, found: m.localised(low), allowed: m.localised(high)}
		row.refuse(-1, p)
	}
}

// level is what a level of the pile would be.
func (m *importing) level(row *importRow, pile *document.Node, name string) (quantity.Stated, bool) {
	if c := m.cellOf(row, name); c != nil && c.stored != "" {
		return c.number, true
	}
	s, err := quantity.ParseStated(pile.Get(name).Text(), quantity.Lengths)
	return s, err == nil
}

func (m *importing) localised(s quantity.Stated) string { return localised(s, m.f.job().Sign()) }
