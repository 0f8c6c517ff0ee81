package desk

import (
	"slices"
	"strconv"
	"strings"

	"gaugewright/calc/document"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/table"
	"gaugewright/calc/words"
)

// A table of piles comes in by a view that changes nothing and an entry with
// the same arguments:
//
//	text       the table as it was pasted; or the bytes of the request
//	separator  ";", "\t", "," or "|" where the text fits several
//	header     the line of the headers, 0 for none; looked for where it is absent
//	columns    what a column is: {"0": "mark", "3": ""}, by its number from 0; ""
//	           is not read. The rest is known by its header, or not read
//	units      the unit of a column that says none: {"1": "kN"}
//	sign       the decimal sign of this table, "." or ","
//	defaults   one choice for all rows: {"type": id, "rig": id, "circuit": id,
//	           "criterion": id, "group": id}. It fills what neither the row nor
//	           the pile says, and never stands in for what either says
//
// A row becomes a new pile, or changes the pile that has its mark; a blank cell
// changes nothing, because blank is not zero. A row with anything that cannot be
// taken as it stands is refused as a whole, with its line and the reason.

// importing is one reading of a table as piles.
type importing struct {
	f        *file
	table    table.Table
	sign     quantity.DecimalSign // as the request says
	defaults map[string]string
	fields   []pileField
	header   int // index of the row of the headers; -1 for none
	data     []table.Row
	columns  []column
	mark     bool           // a column holds the marks
	read     []int          // the columns that are read
	slot     map[string]int // field to its place among them
	names    map[string]*nameBook
	problems []*problem // while there is one, no row is read
	asked    *cell      // the first number that can be read in two ways
	askedAt  int        // its line
	askedIn  int        // its column
	rows     []importRow
	count    map[string]int // of rows by their state
	skipped  int            // rows with nothing in a column that is read
	contests map[string]bool
}

// importing reads the table of a request. What is refused is no table, or no
// request that makes sense.
func (f *file) importing(r *document.Node, data []byte) (*importing, *document.Node) {
	if len(data) == 0 {
		data = []byte(r.Get("text").Text())
	}
	separator, sign := r.Get("separator").Text(), r.Get("sign").Text()
	if len(separator) > 1 || separator != "" && !slices.Contains(table.Separators[:], table.Separator(separator[0])) {
		return nil, refusal("typed.choice", separator, "; , |")
	}
	if sign != "" && sign != "." && sign != "," {
		return nil, refusal("typed.choice", sign, "., ,")
	}
	m := &importing{f: f, fields: pileFields(), names: map[string]*nameBook{}, count: map[string]int{}, defaults: map[string]string{}}
	chosen := table.None
	if separator != "" {
		chosen = table.Separator(separator[0])
	}
	if sign != "" {
		m.sign = quantity.DecimalSign(sign[0])
	}
	read, complaints := table.Read(data, chosen)
	if !complaints.None() {
		return nil, complaintsInto(newObject().with("ok", yes(false)).with("code", text("desk.file")), complaints).Node
	}
	m.table = read
	if len(read.Offered) > 0 {
		m.problems = append(m.problems, &problem{code: "import.separator", found: itoa(len(read.Offered))})
		return m, nil
	}
	if refused := m.choose(r); refused != nil {
		return nil, refused
	}
	if m.mapColumns(r); len(m.problems) == 0 {
		m.readRows()
	}
	return m, nil
}

// choose checks what the request says of columns, units and choices for all
// rows, and takes the choices.
func (m *importing) choose(r *document.Node) *document.Node {
	for _, name := range []string{"columns", "units"} {
		for key, value := range r.Get(name).Members() {
			i, err := strconv.Atoi(key)
			if err != nil || i < 0 || i >= m.table.Width || name == "columns" && value.Text() != "" && m.fieldAt(value.Text()) < 0 {
				return refusal("desk.path", name+" "+key+" "+value.Text())
			}
		}
	}
	for name, value := range r.Get("defaults").Members() {
		i := m.fieldAt(name)
		if i < 0 || m.fields[i].Kind != job.Reference {
			return refusal("desk.path", "defaults "+name)
		}
		id := value.Text()
		if id == "" {
			continue
		}
		if name == "circuit" {
			if m.f.rigOf(id) == "" {
				return refusal("desk.missing", id)
			}
		} else if thing := m.f.now(m.fields[i].To).Get(id); thing == nil || struckOut(thing) {
			return refusal("desk.missing", id)
		}
		m.defaults[name] = id
	}
	return nil
}

func (m *importing) fieldAt(name string) int {
	return slices.IndexFunc(m.fields, func(f pileField) bool { return f.name == name })
}

// now is a collection of the job.
func (f *file) now(collection string) *document.Node { return f.root.Get("now").Get(collection) }

func struckOut(thing *document.Node) bool { return thing.Get("struck").Get("why").Text() != "" }

// rigOf is the rig that a circuit belongs to, "" for none.
func (f *file) rigOf(circuit string) string {
	for id, rig := range f.now("rigs").Members() {
		if rig.Get("circuits").Get(circuit) != nil && !struckOut(rig) {
			return id
		}
	}
	return ""
}

// mapColumns finds the headers and says what each column is.
func (m *importing) mapColumns(r *document.Node) {
	known := columnWords(m.fields)
	m.header = headerRow(m.table.Rows, m.fields, known)
	if at := r.Get("header"); at != nil {
		line, _ := at.Int()
		m.header = slices.IndexFunc(m.table.Rows, func(row table.Row) bool { return row.Line == line })
	}
	var headers table.Row
	if m.header >= 0 {
		headers = m.table.Rows[m.header]
	}
	m.data = m.table.Rows[m.header+1:]
	m.columns = make([]column, m.table.Width)
	said := make([]string, m.table.Width) // what the headers say of units
	for i := range m.columns {
		c := &m.columns[i]
		c.header, c.read = headerText(headers.Cell(i)), map[string]*cell{}
		field, unit, ok := recognise(c.header, m.fields, known)
		said[i] = unit
		if to := r.Get("columns").Get(strconv.Itoa(i)); to != nil {
			c.stated = true
			if field, ok = m.fieldAt(to.Text()), to.Text() != ""; !ok {
				continue
			}
		}
		if ok {
			c.field, c.name = &m.fields[field].Field, m.fields[field].name
		}
	}
	m.settle()
	for i := range m.columns {
		m.columns[i].takeUnit(said[i])
	}
	if m.header >= 0 && len(m.data) > 0 && unitsRow(m.data[0], m.columns) {
		for i := range m.columns {
			if c := &m.columns[i]; c.unit == nil && c.doubt == nil && c.field != nil && c.field.Kind == job.Quantity {
				c.unit, c.doubt = unitOfWord(headerText(m.data[0].Cell(i)), c.field.Dim)
			}
		}
		m.data = m.data[1:]
	}
	for key, value := range r.Get("units").Members() {
		i, _ := strconv.Atoi(key)
		c := &m.columns[i]
		if c.field == nil || c.field.Kind != job.Quantity {
			continue
		}
		if u, ok := quantity.Find(value.Text()); ok && u.Dim == c.field.Dim {
			c.unit, c.doubt = &u, nil
		}
	}
}

// settle lets a column that a person named take its field from one that was
// only known by its header; two that are left for one field are a problem.
func (m *importing) settle() {
	of := map[string][]int{}
	for i, c := range m.columns {
		if c.field != nil {
			of[c.name] = append(of[c.name], i)
		}
	}
	for _, f := range m.fields {
		list := of[f.name]
		if stated := slices.DeleteFunc(slices.Clone(list), func(i int) bool { return !m.columns[i].stated }); len(stated) > 0 && len(stated) < len(list) {
			for _, i := range list {
				if !m.columns[i].stated {
					m.columns[i].field, m.columns[i].name = nil, ""
				}
			}
			list = stated
		}
		m.mark = m.mark || f.name == "mark" && len(list) > 0
		if len(list) > 1 {
			names := make([]string, len(list))
			for k, i := range list {
				names[k] = m.columnSays(i)
			}
			m.problems = append(m.problems, &problem{code: "import.twice", found: words.Say(f.Key()), allowed: words.List(names)})
		}
	}
	if !m.mark {
		m.problems = append(m.problems, &problem{code: "import.noMark"})
	}
}

// columnSays names a column as people see it.
func (m *importing) columnSays(i int) string {
	if header := m.columns[i].header; header != "" {
		return "“" + brief(header) + "”"
	}
	return words.Say("import.column", itoa(i+1))
}

// showImport answers what a table would become. Nothing is changed. The
// members:
//
//	encoding, encodingSays  how the bytes were taken; a sentence where that is to
//	              be checked, and then the whole "text", to ask with from then on
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
	m, refused := f.importing(r, data)
	if refused != nil {
		return refused
	}
	o := okay().with("encoding", text(string(m.table.Encoding))).with("encodingSays", text(""))
	if m.table.Encoding == table.Windows1252 {
		o = o.with("encodingSays", text(words.Say("import.windows")))
	}
	if m.table.Encoding != table.UTF8 {
		o = o.with("text", text(m.table.Text))
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

// importPiles takes the rows of a table that are not refused, as one entry. The
// ids of the request are those of the new piles, in the order of the rows. The
// answer counts as the view does, and lists the first rows that were refused.
func (f *file) importPiles(r *document.Node, data []byte) *document.Node {
	m, refused := f.importing(r, data)
	switch {
	case refused != nil:
		return refused
	case len(m.problems) > 0:
		p := m.problems[0]
		return refusal(p.code, p.found, p.allowed)
	case m.count[rowNew]+m.count[rowChanged]+m.count[rowUnchanged] == 0:
		return refusal("import.nobody")
	}
	piles, ok := m.patch(r.Get("ids"))
	if !ok {
		return refusal("desk.ids")
	}
	patch := document.NewMap()
	patch.Set("piles", piles)
	if !document.Check(patch).None() || !document.CheckPatch(f.root.Get("now"), patch, 1).None() {
		return refusal("desk.ids")
	}
	if piles.Len() > 0 {
		f.forgetAll(piles)
		f.change(r, patch, false)
	}
	o := okay()
	for _, state := range rowStates {
		o = o.with(state, whole(m.count[state]))
	}
	refusals := document.NewList()
	for _, row := range m.chosenRows(rowRefused) {
		if refusals.Len() < mostPreviewed {
			refusals.Append(m.rowNode(row))
		}
	}
	return o.with("skipped", whole(m.skipped)).with("refusals", refusals).
		with("says", text(words.Say("import.says", itoa(m.count[rowNew]), itoa(m.count[rowChanged]), itoa(m.count[rowUnchanged]), itoa(m.count[rowRefused])))).Node
}

// forgetAll drops the texts that could not be read where a patch of the piles
// states a value.
func (f *file) forgetAll(piles *document.Node) {
	if f.root.Get("unread") == nil {
		return
	}
	for id, p := range piles.Members() {
		for name := range p.Members() {
			f.forget(document.Join("/now/piles", id) + "/" + name)
		}
	}
}

// patch makes the merge patch of the piles. It is not ok where the ids are too
// few, blank, twice there or those of other piles.
func (m *importing) patch(ids *document.Node) (*document.Node, bool) {
	piles := document.NewMap()
	next := 0
	for i := range m.rows {
		row := &m.rows[i]
		if row.state != rowNew && row.state != rowChanged {
			continue
		}
		id := row.pile
		if row.state == rowNew {
			id = ids.Item(next).Text()
			next++
			if id == "" || piles.Get(id) != nil || m.f.now("piles").Get(id) != nil {
				return nil, false
			}
		}
		pile := document.NewMap()
		for _, c := range row.changes {
			pile.Set(c.name, text(c.stored))
		}
		piles.Set(id, pile)
	}
	return piles, true
}
