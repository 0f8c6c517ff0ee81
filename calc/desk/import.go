package desk

import (
	"slices"
	"strconv"

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
