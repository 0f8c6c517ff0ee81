package job

import (
	"strconv"

	"gaugewright/calc/document"
	"gaugewright/calc/quantity"
)

// Check reads a tree as a job file and lists what is wrong, by position in the
// tree, the first [document.MaxComplaints] of them. A file with a complaint is
// refused as a whole and its bytes are kept by whoever holds them.
//
// Codes: job.format, job.schema, job.id, job.kind (a value of the wrong kind
// of JSON), job.quantity (its grammar, unit or dimension), job.range,
// job.choice, job.reference, job.count, job.record.
func Check(root *document.Node) document.Complaints {
	c := &checker{job: View(root)}
	if root.Kind() != document.Map {
		c.add("job.format", "", kindName(root), "a map with \"format\": \""+Format+"\"", "")
		return c.found
	}
	if f := root.Get("format"); f.Text() != Format {
		c.add("job.format", "/format", short(f), "\""+Format+"\"", "")
		return c.found
	}
	if v, ok := root.Get("schema").Int(); !ok || v < 1 {
		c.add("job.schema", "/schema", short(root.Get("schema")), "a whole number from 1", "1")
	}
	if v, ok := root.Get("minReader").Int(); !ok || v < 1 {
		c.add("job.schema", "/minReader", short(root.Get("minReader")), "a whole number from 1", "1")
	}
	if root.Get("job").Text() == "" {
		c.add("job.id", "/job", short(root.Get("job")), "the job's id, a text", "")
	}
	now := root.Get("now")
	if now.Kind() != document.Map {
		c.add("job.kind", "/now", kindName(now), "a map", "")
		return c.found
	}
	if ReadOnly(root) {
		return c.found
	}
	c.walk(now, place{"", "/now"})
	c.records()
	return c.found
}

// Problems lists what is well-formed but impossible together: a rod thicker
// than its bore, efficiencies in the wrong order, a circuit of another rig.
// Copies that are each right can be so after a union, so a file with a problem
// opens; what hangs on it is not computed until it is mended.
//
// Codes: job.rod, job.efficiency, job.circuit.
func Problems(root *document.Node) document.Complaints {
	c := &checker{job: View(root)}
	c.crossChecks()
	return c.found
}

// ReadOnly says that the file asks for a newer reader than this one: it may be
// looked at and saved, not edited.
func ReadOnly(root *document.Node) bool {
	v, ok := root.Get("minReader").Int()
	return ok && v > Schema
}

type checker struct {
	job   Job
	found document.Complaints
}

func (c *checker) add(code, path, found, allowed, example string) {
	c.found.Count++
	if len(c.found.List) < document.MaxComplaints {
		c.found.List = append(c.found.List, document.Complaint{Code: code, Path: path, Found: found, Allowed: allowed, Example: example})
	}
}

// known tells, for each pattern, whether fields lie below it.
var known = func() map[string]*Field {
	m := map[string]*Field{}
	for i, f := range fields {
		for k := range f.Pattern {
			if k > 0 && f.Pattern[k] == '/' {
				if _, there := m[f.Pattern[:k]]; !there {
					m[f.Pattern[:k]] = nil
				}
			}
		}
		m[f.Pattern] = &fields[i]
	}
	return m
}()

func (c *checker) walk(n *document.Node, at place) {
	for name, child := range n.Members() {
		next := at.child(name)
		field, isKnown := known[next.pattern]
		if !isKnown {
			continue // a name of another version: kept, not used
		}
		if field != nil {
			c.field(*field, child, next.path)
			continue
		}
		if _, isList := known[next.pattern+"/#"]; isList {
			if child.Kind() != document.List {
				c.add("job.kind", next.path, kindName(child), "a list", "")
				continue
			}
			for i := range child.Len() {
				item := next.item(i)
				if child.Item(i).Kind() != document.Map {
					c.add("job.kind", item.path, kindName(child.Item(i)), "a map", "")
					continue
				}
				c.walk(child.Item(i), item)
			}
			continue
		}
		if child.Kind() != document.Map {
			c.add("job.kind", next.path, kindName(child), "a map", "")
			continue
		}
		c.walk(child, next)
	}
}

func (c *checker) field(f Field, n *document.Node, path string) {
	if n.Kind() != document.Text {
		c.add("job.kind", path, kindName(n), "a text", "")
		return
	}
	if problem := f.Problem(n.Text()); problem != nil {
		c.add(problem.Code, path, short(n), problem.Allowed, problem.Example)
		return
	}
	if f.Kind == Reference && n.Text() != "" && f.To != "circuits" && !c.job.Has(f.To, n.Text()) {
		c.add("job.reference", path, short(n), "the id of a thing in "+f.To, "")
	}
}

// Problem says what is wrong with a text as the stored value of a field, nil
// when nothing is. Codes as for [Check].
func (f Field) Problem(text string) *quantity.TextError {
	if text == "" {
		return nil // made blank by a person
	}
	switch f.Kind {
	case Quantity:
		for _, o := range f.Other {
			if text == o {
				return nil
			}
		}
		s, err := quantity.ParseStated(text, f.Dim)
		if err != nil {
			te := err.(*quantity.TextError)
			return &quantity.TextError{Code: "job.quantity", Found: text, Allowed: te.Allowed, Example: te.Example}
		}
		if !f.within(s.Value) {
			return &quantity.TextError{Code: "job.range", Found: text, Allowed: f.Range(s.Unit)}
		}
	case Choice:
		for _, o := range f.Choices {
			if text == o {
				return nil
			}
		}
		allowed := ""
		for i, o := range f.Choices {
			if i > 0 {
				allowed += ", "
			}
			allowed += o
		}
		return &quantity.TextError{Code: "job.choice", Found: text, Allowed: allowed}
	case Count:
		v, err := strconv.Atoi(text)
		if err != nil || strconv.Itoa(v) != text {
			return &quantity.TextError{Code: "job.count", Found: text, Allowed: f.Range(quantity.Must("")), Example: "4"}
		}
		if !f.within(float64(v)) {
			return &quantity.TextError{Code: "job.range", Found: text, Allowed: f.Range(quantity.Must(""))}
		}
	}
	return nil
}

func (f Field) within(v float64) bool {
	return v <= f.Max && (v > f.Min || v == f.Min && !f.MinOpen)
}

// Range writes what the field allows, in a unit.
func (f Field) Range(u quantity.Unit) string {
	write := func(v float64) string {
		text := strconv.FormatFloat(u.From(v), 'g', 6, 64)
		if u.Symbol != "" && u.Symbol != "%" {
			return text + " " + u.Symbol
		}
		return text + u.Symbol
	}
	from := "from "
	if f.MinOpen {
		from = "more than "
	}
	return from + write(f.Min) + ", at most " + write(f.Max)
}

// crossChecks looks at what single fields cannot tell.
func (c *checker) crossChecks() {
	for _, id := range c.job.Rigs() {
		r, _ := c.job.Rig(id)
		for _, cid := range r.Circuits() {
			circuit, _ := r.Circuit(cid)
			for _, g := range circuit.Groups {
				if g.Bore.Known() && g.Rod.Known() && g.Rod.V >= g.Bore.V {
					c.add("job.rod", g.Rod.Path(), g.Rod.Stated.Text(), "thinner than the bore, "+g.Bore.Stated.Text(), "")
				}
			}
			if circuit.Low.Known() && circuit.High.Known() && circuit.Low.V > circuit.High.V {
				c.add("job.efficiency", circuit.Low.Path(), circuit.Low.Stated.Text(), "at most the efficiency for limits, "+circuit.High.Stated.Text(), "")
			}
		}
	}
	piles := c.job.now.Get("piles")
	for id, n := range piles.Members() {
		circuit := n.Get("circuit").Text()
		if circuit == "" {
			continue
		}
		r, ok := c.job.Rig(n.Get("rig").Text())
		if ok {
			_, ok = r.Circuit(circuit)
		}
		if !ok {
			c.add("job.circuit", document.Join("/now/piles", id)+"/circuit", n.Get("mark").Text(), "a circuit of the pile's rig", "")
		}
	}
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
