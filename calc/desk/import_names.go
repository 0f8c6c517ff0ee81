package desk

import (
	"slices"
	"strings"

	"gaugewright/calc/words"
)

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
