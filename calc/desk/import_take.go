package desk

import (
	"gaugewright/calc/document"
	"gaugewright/calc/words"
)

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
