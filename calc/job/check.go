package job

import "gaugewright/calc/document"

// Check reads a tree as a job file and lists what is wrong, part by part of
// the file, the first [document.MaxComplaints] of them. A file with a complaint
// is refused as a whole and its bytes are kept by whoever holds them.
//
// What an entry once stated is held to the same rules as what stands now,
// because the union of copies may bring it back; only its references are not
// followed. What is wrong with the order of the history is damage, not a
// complaint: see package history.
//
// Codes: job.format, job.schema, job.id, job.kind (a value of the wrong kind
// of JSON, or none), job.quantity (its grammar, unit or dimension), job.range,
// job.choice, job.reference, job.count, job.date, job.digest, job.record (the
// columns or a line of a record or certificate).
func Check(root *document.Node) document.Complaints {
	c := &checker{job: View(root)}
	if root.Kind() != document.Map {
		c.add("job.format", kindName(root), "a map with \"format\": \""+Format+"\"", "")
		return c.found
	}
	if f := root.Get("format"); f.Text() != Format {
		c.addAt("format", "job.format", short(f), "\""+Format+"\"", "")
		return c.found
	}
	for _, name := range []string{"schema", "minReader"} {
		if v, ok := root.Get(name).Int(); !ok || v < 1 {
			c.addAt(name, "job.schema", short(root.Get(name)), "a whole number from 1", "1")
		}
	}
	if root.Get("job").Text() == "" {
		c.addAt("job", "job.id", short(root.Get("job")), "the job's id, a text", "")
	}
	now := root.Get("now")
	if now.Kind() != document.Map {
		c.addAt("now", "job.kind", kindName(now), "a map", "")
		return c.found
	}
	if ReadOnly(root) {
		return c.found
	}
	c.below("now", func() {
		c.stating = true
		c.members(now, nowShape)
		c.stating = false
	})
	if records := root.Get("records"); records != nil {
		c.below("records", func() { c.records(records) })
	}
	c.members(root, outsideShape)
	return c.found
}

// ReadOnly says that the file asks for a newer reader than this one: it may be
// looked at and saved, not edited.
func ReadOnly(root *document.Node) bool {
	v, ok := root.Get("minReader").Int()
	return ok && v > Schema
}

// checker walks a tree beside its shape. The names of the way down are kept in
// steps; a path is made only for a complaint.
type checker struct {
	job     Job
	found   document.Complaints
	steps   []string
	stating bool // below "now" or a patch: no null
	past    bool // in a patch: references are not followed
	columns map[declaration][]Column
}

func (c *checker) path() string {
	path := ""
	for _, s := range c.steps {
		path = document.Join(path, s)
	}
	return path
}

func (c *checker) add(code, found, allowed, example string) {
	c.found.Count++
	if len(c.found.List) < document.MaxComplaints {
		c.found.List = append(c.found.List, document.Complaint{Code: code, Path: c.path(), Found: found, Allowed: allowed, Example: example})
	}
}

// addAt is add for the member name of the place.
func (c *checker) addAt(name, code, found, allowed, example string) {
	c.steps = append(c.steps, name)
	c.add(code, found, allowed, example)
	c.steps = c.steps[:len(c.steps)-1]
}

// below visits the member name of the place.
func (c *checker) below(name string, visit func()) {
	c.steps = append(c.steps, name)
	visit()
	c.steps = c.steps[:len(c.steps)-1]
}

// members checks the members of a map.
func (c *checker) members(n *document.Node, s *shape) {
	for name, child := range n.Members() {
		c.steps = append(c.steps, name)
		if s.each != nil && name == "" {
			c.add("job.id", "\"\"", "an id, a text that is not blank", "")
		}
		c.value(child, s.member(name), n)
		c.steps = c.steps[:len(c.steps)-1]
	}
	for _, name := range s.needed {
		if n.Get(name) == nil {
			c.addAt(name, "job.kind", "nothing", s.names[name].field.allowed(), "")
		}
	}
}

// value checks a value beside its shape; a nil shape is a name of another
// version: kept, not used.
func (c *checker) value(n *document.Node, s *shape, parent *document.Node) {
	switch {
	case s == nil:
		c.kept(n)
	case s.field != nil:
		c.field(s.field, n, parent)
	case s.item != nil:
		if n.Kind() != document.List {
			c.add("job.kind", kindName(n), "a list", "")
			return
		}
		for i, item := range n.Items() {
			c.steps = append(c.steps, itoa(i))
			c.mapOnly(item, s.item)
			c.steps = c.steps[:len(c.steps)-1]
		}
	default:
		c.mapOnly(n, s)
	}
}

func (c *checker) mapOnly(n *document.Node, s *shape) {
	if n.Kind() != document.Map {
		c.add("job.kind", kindName(n), "a map", "")
		return
	}
	c.members(n, s)
}

// kept looks at what this version does not know. A merge patch cannot hold
// null, so nothing below "now" may be null.
func (c *checker) kept(n *document.Node) {
	if !c.stating {
		return
	}
	if n.Kind() == document.Null {
		c.add("job.kind", "null", "any other value; what is not stated is left out", "")
	}
	for name, child := range n.Members() {
		c.steps = append(c.steps, name)
		c.kept(child)
		c.steps = c.steps[:len(c.steps)-1]
	}
}

func (c *checker) field(f *Field, n, parent *document.Node) {
	switch f.Kind {
	case Lines:
		c.lines(f, n, parent)
		return
	case Number:
		if v, ok := n.Int(); !ok || v < 0 {
			c.add("job.count", short(n), "a whole number from 0", "1")
		}
		return
	case Patch:
		if n.Kind() != document.Map {
			c.add("job.kind", kindName(n), "a map", "")
			return
		}
		c.stating, c.past = true, true
		c.members(n, nowShape)
		c.stating, c.past = false, false
		return
	case Any:
		if f.List && n.Kind() != document.List || f.Map && n.Kind() != document.Map {
			c.add("job.kind", kindName(n), f.allowed(), "")
		}
		return
	}
	if n.Kind() != document.Text {
		c.add("job.kind", kindName(n), "a text", "")
		return
	}
	text := n.Text()
	if text == "" {
		if f.Needed {
			c.add("job.kind", "a blank text", f.allowed(), "")
		}
		return
	}
	if problem := f.Problem(text); problem != nil {
		c.add(problem.Code, short(n), problem.Allowed, problem.Example)
		return
	}
	if f.Kind == Reference && !c.past && !c.leads(f.To, text) {
		c.add("job.reference", short(n), f.allowed(), "")
	}
}

// leads says whether an id names something. Circuits belong to rigs, and
// [Problems] looks at them.
func (c *checker) leads(to, id string) bool {
	switch to {
	case "circuits":
		return true
	case "records", "remarks":
		return c.job.Root.Get(to).Get(id) != nil
	}
	return c.job.Has(to, id)
}

// lines checks the lines of a certificate under the columns that it declares.
// Where it declares none, and in a patch that leaves them as they were, only
// the writing of the numbers is looked at.
func (c *checker) lines(f *Field, n, parent *document.Node) {
	if n.Kind() == document.Text && n.Text() == "" {
		return // made blank by a person
	}
	if n.Kind() != document.List {
		c.add("job.kind", kindName(n), "a list", "")
		return
	}
	columns, ok := c.declared(parent.Get(f.Under), f.Columns)
	for i, item := range n.Items() {
		switch text := item.Text(); {
		case item.Kind() != document.Text:
			c.addAt(itoa(i), "job.kind", kindName(item), "a text", "")
		case ok && !lineFits(text, columns) || !ok && !lineFits(text, anyPair):
			if !ok {
				columns = anyPair
			}
			c.addAt(itoa(i), "job.record", short(item), linesAllowed(columns), lineExample(columns))
		}
	}
}

// anyPair are two columns of numbers of unknown meaning.
var anyPair = []Column{{ColumnRule: ColumnRule{Name: "reading"}, most: 1<<63 - 1}, {ColumnRule: ColumnRule{Name: "reference"}, most: 1<<63 - 1}}

// declared reads a declaration of columns. The same few stand in thousands of
// records, so each is read once.
func (c *checker) declared(n *document.Node, rules []ColumnRule) ([]Column, bool) {
	if n.Kind() != document.Text {
		return nil, false
	}
	key := declaration{&rules[0], n.Text()}
	columns, known := c.columns[key]
	if !known {
		columns, _ = ParseColumns(n.Text(), rules)
		if c.columns == nil {
			c.columns = map[declaration][]Column{}
		}
		c.columns[key] = columns
	}
	return columns, columns != nil
}

type declaration struct {
	rules *ColumnRule
	text  string
}

func kindName(n *document.Node) string {
	if n == nil {
		return "nothing"
	}
	switch n.Kind() {
	case document.Null:
		return "null"
	case document.Bool:
		return "true or false"
	case document.Number:
		return "the number " + n.Raw()
	case document.Text:
		return "the text " + short(n)
	case document.List:
		return "a list"
	case document.Map:
		return "a map"
	}
	return "nothing"
}

// short writes a value for a complaint, at most 40 characters.
func short(n *document.Node) string {
	if n == nil {
		return "nothing"
	}
	text := n.Compact()
	if r := []rune(text); len(r) > 40 {
		return string(r[:39]) + "…"
	}
	return text
}
