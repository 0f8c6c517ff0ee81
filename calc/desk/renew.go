package desk

import (
	"slices"
	"strings"

	"gaugewright/calc/document"
	"gaugewright/calc/words"
)

// renewable are the collections whose things are copied for the piles to come.
var renewable = []string{"rigs", "gauges", "certificates", "pileTypes", "criteria"}

// renewal makes of a patch that edits things another one, which leaves them as
// they are: copies with the edit stand beside them, under new ids, and piles not
// pressed yet point at the copies.
//
// A pile points at a gauge or a certificate only by its circuit, which keeps
// those of the piles pressed. So the copy of a gauge takes along the rigs that
// have it and the certificates made with it, a certificate its rig or, of a gauge
// alone, that gauge, and a rig the certificates of its circuits. A certificate
// that holds for a number of piles is not copied, for the number would begin
// anew: there is no renewal then, nor of a pile's own value, nor of a thing with an
// open choice. Stock of a pile type goes with the copy: it is for the piles to
// come.
type renewal struct {
	f      *file
	things [][2]string       // collection and id
	copies map[string]string // to the new id, of "rigs/r" and "rigs/r/circuits/c"
	never  bool              // something of it cannot be copied
	ids    int               // new ones that are needed
	moves  int               // piles that go with the copies
}

// renewal returns nil where there is none of a patch.
func (f *file) renewal(patch *document.Node) *renewal {
	m := &renewal{f: f, copies: map[string]string{}}
	for name, things := range patch.Members() {
		m.never = m.never || !slices.Contains(renewable, name)
		for id, edit := range things.Members() {
			m.never = m.never || edit.Get("struck") != nil
			m.take(name, id)
			if name == "certificates" {
				m.follow(edit)
			}
		}
	}
	for _, c := range f.choices {
		names, _ := document.Split(c.Path)
		_, copied := m.copies[strings.Join(names[:min(2, len(names))], "/")]
		m.never = m.never || copied
	}
	if len(m.things) == 0 || m.never {
		return nil
	}
	for id, p := range f.now("piles").Members() {
		if m.points(id, p).Len() > 0 {
			m.moves++
		}
	}
	return m
}

// take takes a thing in, and what must be copied with it.
func (m *renewal) take(collection, id string) {
	thing, key := m.f.now(collection).Get(id), collection+"/"+id
	if _, there := m.copies[key]; there || thing == nil || struckOut(thing) {
		return
	}
	m.copies[key] = ""
	m.things = append(m.things, [2]string{collection, id})
	m.ids++
	switch collection {
	case "gauges":
		for rig, r := range m.f.now("rigs").Members() {
			for _, c := range r.Get("circuits").Members() {
				if c.Get("gauge").Text() == id {
					m.take("rigs", rig)
				}
			}
		}
		m.takeCertificates("gauge", id)
	case "rigs":
		for c := range thing.Get("circuits").Members() {
			m.copies[key+"/circuits/"+c] = ""
			m.ids++
		}
		m.takeCertificates("rig", id)
	case "certificates":
		m.never = m.never || thing.Get("validPiles").Text() != ""
		m.follow(thing)
	}
}

func (m *renewal) takeCertificates(by, id string) {
	for certificate, c := range m.f.now("certificates").Members() {
		if c.Get(by).Text() == id {
			m.take("certificates", certificate)
		}
	}
}

// follow takes in what a certificate is of.
func (m *renewal) follow(certificate *document.Node) {
	m.take("rigs", certificate.Get("rig").Text())
	if certificate.Get("kind").Text() == "gauge" {
		m.take("gauges", certificate.Get("gauge").Text())
	}
}

// points is the patch of a pile that is not pressed: to the copies of what it
// names.
func (m *renewal) points(id string, p *document.Node) *document.Node {
	patch := document.NewMap()
	if _, pressed := m.f.pressedPiles()[id]; pressed {
		return patch
	}
	m.point(patch, "type", "pileTypes/"+p.Get("type").Text())
	m.point(patch, "criterion", "criteria/"+p.Get("criterion").Text())
	m.pointBoth(patch, p)
	return patch
}

// pointBoth points at the copies of a rig and of its circuit.
func (m *renewal) pointBoth(n, of *document.Node) {
	rig := "rigs/" + of.Get("rig").Text()
	m.point(n, "circuit", rig+"/circuits/"+of.Get("circuit").Text())
	m.point(n, "rig", rig)
}

// point sets a reference to the copy of what it names, where there is one.
func (m *renewal) point(n *document.Node, name, key string) {
	if id, copied := m.copies[key]; copied {
		n.Set(name, text(id))
	}
}

// patch is the patch under the new ids; ok is false where they do not fit.
func (m *renewal) patch(edit, ids *document.Node, day string) (patch *document.Node, ok bool) {
	next, used := 0, map[string]bool{}
	fits := ids.Len() >= m.ids
	fresh := func(key string) {
		id := ids.Item(next).Text()
		fits = fits && id != "" && !used[id]
		m.copies[key], used[id] = id, true
		next++
	}
	for _, t := range m.things {
		key := t[0] + "/" + t[1]
		fresh(key)
		fits = fits && m.f.now(t[0]).Get(m.copies[key]) == nil
		if t[0] == "rigs" {
			for c := range m.f.now("rigs").Get(t[1]).Get("circuits").Members() {
				fresh(key + "/circuits/" + c)
			}
		}
	}
	if !fits {
		return nil, false
	}
	patch = document.NewMap()
	add := func(collection, id string, thing *document.Node) {
		if patch.Get(collection) == nil {
			patch.Set(collection, document.NewMap())
		}
		patch.Get(collection).Set(id, thing)
	}
	for _, t := range m.things {
		change := edit.Get(t[0]).Get(t[1])
		thing := m.f.now(t[0]).Get(t[1]).Clone()
		if change != nil {
			document.MergePatch(thing, change)
		}
		if (t[0] == "rigs" || t[0] == "pileTypes" || t[0] == "criteria") && change.Get("name") == nil && day != "" {
			thing.Set("name", text(strings.TrimSpace(words.Say("outcome.copy", thing.Get("name").Text(), day))))
		}
		add(t[0], m.copies[t[0]+"/"+t[1]], m.redirected(t[0], t[1], thing))
	}
	for collection, things := range edit.Members() {
		for id, thing := range things.Members() {
			if m.f.now(collection).Get(id) == nil {
				add(collection, id, m.redirected(collection, id, thing.Clone()))
			}
		}
	}
	for id, p := range m.f.now("piles").Members() {
		if points := m.points(id, p); points.Len() > 0 {
			add("piles", id, points)
		}
	}
	for id, s := range m.f.now("stock").Members() {
		to := document.NewMap()
		if m.point(to, "type", "pileTypes/"+s.Get("type").Text()); to.Len() > 0 {
			add("stock", id, to)
		}
	}
	return patch, document.Check(patch).None() && document.CheckPatch(m.f.root.Get("now"), patch, 1).None()
}

// redirected lets a copy name copies where there are some.
func (m *renewal) redirected(collection, id string, thing *document.Node) *document.Node {
	switch collection {
	case "rigs":
		circuits := document.NewMap()
		for c, circuit := range thing.Get("circuits").Members() {
			m.point(circuit, "gauge", "gauges/"+circuit.Get("gauge").Text())
			if other, copied := m.copies["rigs/"+id+"/circuits/"+c]; copied {
				c = other
			}
			circuits.Set(c, circuit)
		}
		thing.Set("circuits", circuits)
	case "certificates":
		m.pointBoth(thing, thing)
		m.point(thing, "gauge", "gauges/"+thing.Get("gauge").Text())
	}
	return thing
}

// place is the form of the copy of what stands at a path; of the first thing
// copied where it is none of them.
func (m *renewal) place(path string) string {
	names, _ := document.Split(path)
	if len(names) < 3 || m.copies[names[1]+"/"+names[2]] == "" {
		names = []string{"now", m.things[0][0], m.things[0][1]}
	}
	key := names[1] + "/" + names[2]
	at := document.Join("/now/"+names[1], m.copies[key])
	if len(names) > 4 && m.copies[key+"/circuits/"+names[4]] != "" {
		at = document.Join(at+"/circuits", m.copies[key+"/circuits/"+names[4]])
	}
	return at
}
