package desk

import (
	"slices"
	"strings"
	"unicode/utf8"

	"gaugewright/calc/document"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/words"
)

// place names a field with the thing it belongs to: "C14: Cut-off level".
func (f *file) place(path string) string {
	label := path
	names, _ := document.Split(path)
	if field, ok := job.FieldAt(path); ok {
		label = words.Say(field.Key())
	} else if key := "field." + strings.Join(kinds(names), "."); words.Has(key) {
		label = words.Say(key)
	}
	if len(names) < 4 {
		return label
	}
	name, _ := f.thingName(names[1], names[2])
	return words.Say("place", name, label)
}

// thingName is what people call a thing: its name, mark, serial or number. It
// is not ok where there is no such thing. A circuit is looked for in all rigs.
func (f *file) thingName(collection, id string) (name string, ok bool) {
	now := f.root.Get("now")
	thing := now.Get(collection).Get(id)
	if collection == "circuits" {
		for _, r := range now.Get("rigs").Members() {
			if c := r.Get("circuits").Get(id); c != nil {
				thing = c
			}
		}
	}
	key := map[string]string{"piles": "mark", "gauges": "serial", "certificates": "number"}[collection]
	if key == "" {
		key = "name"
	}
	return named(thing.Get(key).Text()), thing != nil
}

// kinds are the names of a path below "now" without the ids of things.
func kinds(names []string) []string {
	var list []string
	pattern := ""
	for _, name := range names[min(1, len(names)):] {
		if job.IsCollection(pattern) {
			pattern += "/*"
			continue
		}
		pattern += "/" + name
		list = append(list, name)
	}
	return list
}

// valueSays writes a value of the tree for people.
func (f *file) valueSays(path string, n *document.Node) string {
	says := ""
	switch n.Kind() {
	case document.Text:
		says = f.textSays(path, n.Text())
	case document.List, document.Map:
		says = short(f.partsSay(path, n))
	case document.Number:
		says = n.Raw()
	case document.Bool:
		says = words.Say("choice.no")
		if n.Bool() {
			says = words.Say("choice.yes")
		}
	}
	if says == "" {
		return words.Say("leaf.blank")
	}
	return says
}

func (f *file) textSays(path, stated string) string {
	field, _ := job.FieldAt(path)
	switch field.Kind {
	case job.Reference:
		if name, ok := f.thingName(field.To, stated); ok {
			return name
		}
	case job.Choice:
		if stated != "" {
			return words.Say("choice." + stated)
		}
	case job.Quantity:
		if slices.Contains(field.Other, stated) {
			return words.Say("choice." + stated)
		}
		if s, err := quantity.ParseStated(stated, field.Dim); err == nil {
			return localised(s, f.job().Sign())
		}
	}
	return stated
}

// partsSay writes the parts of a list or map one after the other, no more of
// them than are shown.
func (f *file) partsSay(path string, n *document.Node) string {
	said := ""
	for i := range n.Len() {
		if i > 0 {
			said += words.Say("value.next")
		}
		if len(said) > utf8.UTFMax*mostSaid {
			break
		}
		said += f.partSays(path, n, i)
	}
	return said
}

func (f *file) partSays(path string, n *document.Node, i int) string {
	if n.Kind() == document.Map {
		name, value := n.Member(i)
		return words.Say("place", name, f.valueSays(document.Join(path, name), value))
	}
	at, item := path+"/"+itoa(i), n.Item(i)
	if _, ok := job.FieldAt(at + "/bore"); ok && item.Kind() == document.Map {
		return f.cylindersSay(at, item)
	}
	return f.valueSays(at, item)
}

// cylindersSay writes a group of cylinders: "4 x bore 200 mm, rod 140 mm, bore
// side".
func (f *file) cylindersSay(path string, group *document.Node) string {
	var parts []string
	part := func(name, code string) {
		if n := group.Get(name); n.Text() != "" {
			parts = append(parts, words.Say(code, f.valueSays(path+"/"+name, n)))
		}
	}
	part("bore", "value.bore")
	part("rod", "value.rod")
	part("side", "value.side")
	says := strings.Join(parts, words.Say("value.and"))
	if says == "" {
		says = words.Say("leaf.blank")
	}
	if number := group.Get("number").Text(); number != "" {
		return words.Say("value.times", number, says)
	}
	return says
}

// mostSaid is how many characters of a list or map are shown.
const mostSaid = 120

func short(s string) string { return shortTo(s, mostSaid) }

func shortTo(s string, most int) string {
	if r := []rune(s); len(r) > most {
		return string(r[:most-1]) + "…"
	}
	return s
}
