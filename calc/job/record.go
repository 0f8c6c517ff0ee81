package job

import (
	"gaugewright/calc/document"
	"gaugewright/calc/quantity"
)

// HeadLevel is the pile head as surveyed after pressing.
type HeadLevel struct {
	Level Given[quantity.Length]
}

// HeadLevels returns the last surveyed head level of every pile that has one.
// A record of this kind is
//
//	{ "kind": "level", "of": "head", "pile": <id>,
//	  "parts": { <sitting>: { "from": <moment>, "columns": "s m", "lines": ["0 11.35"] } } }
//
// It only grows: the last line of the latest part counts, over all records of
// the pile; of two of one moment, that of the later id.
func (j Job) HeadLevels() map[string]HeadLevel {
	levels, when := map[string]HeadLevel{}, map[string]string{}
	for _, record := range j.Records("level") {
		if record.node.Get("of").Text() != "head" {
			continue
		}
		pile := record.node.Get("pile").Text()
		for _, p := range record.Parts() {
			if p.From < when[pile] {
				continue
			}
			for i := p.Len() - 1; i >= 0; i-- {
				if level := Measured[quantity.Length](p.Line(i), "level"); level.Known() {
					levels[pile], when[pile] = HeadLevel{level}, p.From
					break
				}
			}
		}
	}
	return levels
}

// records checks the records. Kinds that this version does not know are kept.
func (c *checker) records(all *document.Node) {
	if all.Kind() != document.Map {
		c.add("job.kind", kindName(all), "a map", "")
		return
	}
	for id, record := range all.Members() {
		c.steps = append(c.steps, id)
		c.record(record)
		c.steps = c.steps[:len(c.steps)-1]
	}
}

func (c *checker) record(n *document.Node) {
	if n.Kind() != document.Map {
		c.add("job.kind", kindName(n), "a map", "")
		return
	}
	kind := kindOf(n.Get("kind").Text())
	if kind == nil {
		c.members(n, recordShape)
		return
	}
	c.members(n, kind.shape)
	parts := n.Get("parts")
	if parts == nil {
		return
	}
	c.below("parts", func() {
		if parts.Kind() != document.Map {
			c.add("job.kind", kindName(parts), "a map", "")
		}
		for sitting, part := range parts.Members() {
			c.steps = append(c.steps, sitting)
			c.mapOnly(part, partShape)
			c.readings(part, kind)
			c.events(part.Get("events"), kind)
			c.steps = c.steps[:len(c.steps)-1]
		}
	})
}

// readings checks the lines of a part under its columns.
func (c *checker) readings(part *document.Node, kind *recordKind) {
	declaration, lines := part.Get("columns"), part.Get("lines")
	if declaration == nil && lines == nil {
		return
	}
	columns, ok := c.declared(declaration, kind.columns)
	if !ok {
		if declaration == nil || declaration.Kind() == document.Text {
			c.addAt("columns", "job.record", short(declaration), columnsAllowed(kind.columns), columnsExample(kind.columns))
		}
		return
	}
	if lines.Kind() != document.List {
		return // said already
	}
	for i := range lines.Len() {
		if item := lines.Item(i); !lineFits(item.Text(), columns) {
			c.below("lines", func() {
				c.addAt(itoa(i), "job.record", short(item), linesAllowed(columns), lineExample(columns))
			})
		}
	}
}

// events checks what happened. Events that this version does not know are
// kept.
func (c *checker) events(list *document.Node, kind *recordKind) {
	if list.Kind() != document.List {
		return // said already
	}
	c.steps = append(c.steps, "events", "")
	for i := range list.Len() {
		c.steps[len(c.steps)-1] = itoa(i)
		e := list.Item(i)
		s := kind.happens[e.Get("is").Text()]
		if s == nil {
			s = eventShape
		}
		c.mapOnly(e, s)
	}
	c.steps = c.steps[:len(c.steps)-2]
}
