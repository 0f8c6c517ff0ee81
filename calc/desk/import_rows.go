package desk

import (
	"cmp"
	"slices"
	"strings"
	"unicode"

	"gaugewright/calc/document"
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

// nameBook finds the things of a collection by what people call them.
type nameBook struct {
	list   []thing
	exact  map[string][]string // name to ids
	folded map[string][]string // the same without capitals
}

// book is the names of a collection; of circuits, those of a rig.
func (m *importing) book(collection, rig string) *nameBook {
	key := collection
	things := m.f.now(collection)
	if collection == "circuits" {
		key += "/" + rig
		things = m.f.now("rigs").Get(rig).Get("circuits")
	}
	if known := m.names[key]; known != nil {
		return known
	}
	b := &nameBook{exact: map[string][]string{}, folded: map[string][]string{}}
	for id, thing := range things.Members() {
		if !struckOut(thing) {
			b.add(id, oneLine(thing.Get("name").Text()))
		}
	}
	m.names[key] = b
	return b
}

func (b *nameBook) has(id string) bool {
	return slices.ContainsFunc(b.list, func(t thing) bool { return t.id == id })
}

func (b *nameBook) add(id, name string) {
	b.list = append(b.list, thing{id, name})
	if name != "" {
		lower := strings.ToLower(name)
		b.exact[name], b.folded[lower] = append(b.exact[name], id), append(b.folded[lower], id)
	}
}

// find finds the id of a name, or says what there is.
func (b *nameBook) find(name string) (string, *problem) {
	ids := b.exact[name]
	if len(ids) == 0 {
		ids = b.folded[strings.ToLower(name)]
	}
	switch {
	case len(ids) == 1:
		return ids[0], nil
	case len(ids) > 1:
		return "", &problem{code: "import.named", found: short(name)}
	case len(b.list) == 0:
		return "", &problem{code: "import.unknownNone", found: short(name)}
	}
	return "", &problem{code: "import.unknown", found: short(name), allowed: b.says()}
}

// says lists the names, the first of them where there are many.
func (b *nameBook) says() string {
	const most = 12
	var list []string
	for _, t := range b.list[:min(len(b.list), most)] {
		list = append(list, named(t.name))
	}
	if more := len(b.list) - most; more > 0 {
		list = append(list, words.Say("import.more", itoa(more)))
	}
	return strings.Join(list, ", ")
}

// rowNode writes a row for the preview.
func (m *importing) rowNode(row *importRow) *document.Node {
	cells, changes := document.NewList(), document.NewList()
	for k, i := range m.read {
		c, cell := &m.columns[i], row.cells[k]
		o := newObject().with("column", whole(i))
		if cell.problem != nil {
			cells.Append(o.with("says", text(short(cell.typed))).with("problem", text(cell.problem.says())).Node)
			continue
		}
		says := cell.typed
		if cell.stored != "" {
			says = m.f.textSays("/now/piles/x/"+c.name, cell.stored)
		}
		cells.Append(o.with("says", text(short(says))).Node)
	}
	pile := m.f.now("piles").Get(row.pile)
	if row.state == rowChanged {
		for _, c := range row.changes {
			path := "/now/piles/x/" + c.name
			changes.Append(newObject().with("label", text(words.Say(m.fields[m.fieldAt(c.name)].Key()))).
				with("before", text(m.f.valueSays(path, pile.Get(c.name)))).with("after", text(m.f.valueSays(path, text(c.stored)))).Node)
		}
	}
	problems := []string{}
	for _, p := range row.problems {
		says := p.says()
		if p.column >= 0 {
			says = words.Say("place", words.Say(m.columns[p.column].field.Key()), says)
		}
		problems = append(problems, says)
	}
	return newObject().with("line", whole(row.line)).with("mark", text(short(row.mark))).with("state", text(row.state)).
		with("stateSays", text(words.Say("import."+row.state))).with("cells", cells).with("changes", changes).
		with("problems", texts(problems)).with("warnings", texts(row.warnings)).Node
}
