package desk

import (
	"bytes"
	"strings"

	"gaugewright/calc/document"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/table"
	"gaugewright/calc/words"
)

// showImport answers what a table would become. Nothing is changed. The
// members:
//
//	encoding, encodingSays  how the bytes were taken; a sentence where that is to
//	              be checked
//	separator, separators[] {separator, label, says}: to choose from, with the
//	              first row as each parts it where two fit equally
//	header        line of the headers, 0 for none
//	columns[]     column, header, field ("" where not read), label, unit, needsUnit,
//	              units[], sample[]
//	fields[]      field, label: what a column may be
//	choices[]     field, label, chosen, choices[]: what may be chosen for all rows
//	problems[]    sentences; while there is one, no row is read
//	questions[]   kind (separator, unit, sign), column, line, says, offers[] {value,
//	              label}: the answer goes into the argument of that kind
//	counts        rows, new, changed, unchanged, refused, skipped
//	ids           how many ids the entry needs
//	says          the counts in a sentence
//	refusals[]    the first rows that are refused, as in rows
//	rows[]        a page ("from", "count") of all rows, or of those in the state
//	              "only": line, mark, state, stateSays, cells[] {column, says,
//	              problem}, changes[] {label, before, after}, problems[],
//	              warnings[]
//	rowCount      how many rows there are to be paged through
func (f *file) showImport(r *document.Node, data []byte) *document.Node {
	m, refused := f.previewed(r, data)
	if refused != nil {
		return refused
	}
	o := okay().with("encoding", text(string(m.table.Encoding))).with("encodingSays", text(""))
	if m.table.Encoding == table.Windows1252 {
		o = o.with("encodingSays", text(words.Say("import.windows")))
	}
	line := 0
	if len(m.table.Offered) == 0 && m.header >= 0 {
		line = m.table.Rows[m.header].Line
	}
	problems := []string{}
	for _, p := range m.problems {
		problems = append(problems, p.says())
	}
	o = o.with("separator", text(separatorText(m.table.Separator))).with("separators", m.separators()).with("header", whole(line)).
		with("columns", m.columnNodes()).with("fields", m.fieldNodes()).with("choices", m.choiceNodes()).
		with("problems", texts(problems)).with("questions", m.questions())
	counts := newObject().with("rows", whole(len(m.rows)))
	for _, state := range rowStates {
		counts = counts.with(state, whole(m.count[state]))
	}
	o = o.with("counts", counts.with("skipped", whole(m.skipped)).Node).with("ids", whole(m.count[rowNew])).
		with("says", text(words.Say("import.says", itoa(m.count[rowNew]), itoa(m.count[rowChanged]), itoa(m.count[rowUnchanged]), itoa(m.count[rowRefused]))))
	refusals := document.NewList()
	for i := range m.rows {
		if m.rows[i].state == rowRefused && refusals.Len() < mostPreviewed {
			refusals.Append(m.rowNode(&m.rows[i]))
		}
	}
	chosen := m.chosenRows(r.Get("only").Text())
	from, last := pageOf(r, len(chosen))
	rows := document.NewList()
	for _, row := range chosen[from:min(last, from+mostPreviewed)] {
		rows.Append(m.rowNode(row))
	}
	return o.with("refusals", refusals).with("rows", rows).with("from", whole(from)).with("rowCount", whole(len(chosen))).Node
}

// preview is the last table that was read for a preview. Its pages are asked for
// one after the other, and 20,000 rows are not read anew for each.
type preview struct {
	args string
	data []byte
	read *importing
}

// previewed is the reading of the table of a request, which may be the last one.
func (f *file) previewed(r *document.Node, data []byte) (*importing, *document.Node) {
	key := newObject()
	for _, name := range []string{"text", "separator", "header", "columns", "units", "sign", "defaults"} {
		if value := r.Get(name); value != nil {
			key = key.with(name, value)
		}
	}
	args := key.Compact()
	if f.preview != nil && f.preview.args == args && bytes.Equal(f.preview.data, data) {
		return f.preview.read, nil
	}
	f.preview = nil
	m, refused := f.importing(r, data)
	if refused == nil {
		f.preview = &preview{args, data, m}
	}
	return m, refused
}

// mostPreviewed is how many rows one answer shows: with all their cells they
// keep the message to the page below 64 kB.
const mostPreviewed = 20

func (m *importing) chosenRows(state string) []*importRow {
	var list []*importRow
	for i := range m.rows {
		if state == "" || m.rows[i].state == state {
			list = append(list, &m.rows[i])
		}
	}
	return list
}

func separatorText(s table.Separator) string {
	if s == table.None {
		return ""
	}
	return string(rune(s))
}

var separatorNames = map[table.Separator]string{table.Semicolon: "semicolon", table.Tab: "tab", table.Comma: "comma", table.Bar: "bar"}

func (m *importing) separators() *document.Node {
	list := document.NewList()
	for _, s := range table.Separators {
		label, says := words.Say("separator."+separatorNames[s]), ""
		for _, o := range m.table.Offered {
			if o.Separator == s {
				says = parted(o)
			}
		}
		list.Append(newObject().with("separator", text(separatorText(s))).with("label", text(label)).with("says", text(says)).Node)
	}
	return list
}

func parted(o table.Offer) string {
	cells := make([]string, len(o.First))
	for i, c := range o.First {
		cells[i] = oneLine(c)
	}
	return words.Say("import.parted", words.Say("separator."+separatorNames[o.Separator]), itoa(o.Width), short(strings.Join(cells, words.Say("import.cell"))))
}

// mostSamples is how many texts of a column are shown beside its header.
const mostSamples = 2

// brief cuts a text for a list that may have 200 columns.
func brief(s string) string { return shortTo(s, 32) }

func (m *importing) columnNodes() *document.Node {
	list := document.NewList()
	for i := range m.columns {
		c := &m.columns[i]
		o := newObject().with("column", whole(i)).with("header", text(brief(c.header))).with("field", text(c.name)).with("label", text(""))
		unit, units := "", []string{}
		if c.field != nil {
			o = o.with("label", text(words.Say(c.field.Key())))
			if c.field.Kind == job.Quantity {
				for _, u := range quantity.Units(c.field.Dim) {
					units = append(units, u.Symbol)
				}
			}
		}
		if c.unit != nil {
			unit = c.unit.Symbol
		}
		sample := []string{}
		for _, row := range m.data {
			if cell := headerText(row.Cell(i)); cell != "" {
				if sample = append(sample, brief(cell)); len(sample) == mostSamples {
					break
				}
			}
		}
		list.Append(o.with("unit", text(unit)).with("needsUnit", yes(c.lacks != nil)).with("units", texts(units)).with("sample", texts(sample)).Node)
	}
	return list
}

func (m *importing) fieldNodes() *document.Node {
	list := document.NewList()
	for _, f := range m.fields {
		list.Append(newObject().with("field", text(f.name)).with("label", text(words.Say(f.Key()))).Node)
	}
	return list
}

// choiceNodes lists the references that may be chosen for all rows.
func (m *importing) choiceNodes() *document.Node {
	list := document.NewList()
	for _, f := range m.fields {
		if f.Kind != job.Reference {
			continue
		}
		choices := document.NewList()
		for _, t := range m.book(f.To, m.defaults["rig"]).list {
			choices.Append(newObject().with("value", text(t.id)).with("label", text(named(t.name))).Node)
		}
		list.Append(newObject().with("field", text(f.name)).with("label", text(words.Say(f.Key()))).with("chosen", text(m.defaults[f.name])).
			with("choices", choices).Node)
	}
	return list
}

// questions lists what a person must say before every row can be read.
func (m *importing) questions() *document.Node {
	list := document.NewList()
	ask := func(kind string, column, line int, says string, offers *document.Node) {
		list.Append(newObject().with("kind", text(kind)).with("column", whole(column)).with("line", whole(line)).with("says", text(says)).with("offers", offers).Node)
	}
	if len(m.table.Offered) > 0 {
		offers := document.NewList()
		for _, o := range m.table.Offered {
			offers.Append(newObject().with("value", text(separatorText(o.Separator))).with("label", text(parted(o))).Node)
		}
		ask("separator", -1, 0, m.problems[0].says(), offers)
	}
	for i := range m.columns {
		c := &m.columns[i]
		if c.lacks == nil {
			continue
		}
		says := words.Say("import.unit", m.columnSays(i), "“"+short(c.lacks.typed)+"”", itoa(c.line))
		if c.doubt != nil {
			says = c.doubt.says()
		}
		offers := document.NewList()
		for _, u := range quantity.Units(c.field.Dim) {
			label := words.Say(u.Name)
			if u.Symbol != "" {
				label = words.Say("place", u.Symbol, label)
			}
			offers.Append(newObject().with("value", text(u.Symbol)).with("label", text(label)).Node)
		}
		ask("unit", i, c.line, says, offers)
	}
	if m.asked != nil {
		offers := document.NewList()
		for _, sign := range []quantity.DecimalSign{quantity.Comma, quantity.Point} {
			offers.Append(newObject().with("value", text(string(rune(sign)))).with("label", text(m.meaning(sign))).Node)
		}
		ask("sign", m.askedIn, m.askedAt, words.Say("import.signAsk", short(m.asked.typed), itoa(m.askedAt)), offers)
	}
	return list
}

// meaning says what the number that is asked about is with a decimal sign.
func (m *importing) meaning(sign quantity.DecimalSign) string {
	code := map[quantity.DecimalSign]string{quantity.Comma: "import.comma", quantity.Point: "import.point"}[sign]
	c := &m.columns[m.askedIn]
	unit := quantity.Units(c.field.Dim)[0]
	if c.unit != nil {
		unit = *c.unit
	}
	s, ok, err := quantity.ReadTyped(m.asked.typed, c.field.Dim, unit, sign)
	if err != nil || !ok {
		return words.Say(code+"Not", short(m.asked.typed))
	}
	if strings.Contains(s.Digits, ".") {
		s.Digits = strings.TrimRight(strings.TrimRight(s.Digits, "0"), ".")
	}
	return words.Say(code, localised(s, sign))
}

func (p *problem) says() string { return words.Say(p.code, p.found, p.allowed, p.example) }

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
