package history

import "gaugewright/calc/document"

// Origin says who stated a value, when, on what device and why.
type Origin struct {
	Ref
	Who, Device, At, Why string
	Value                *document.Node
}

// Choice is a field for which entries that have not seen one another state
// different values.
type Choice struct {
	Path    string // below "now": "/piles/p14/cutoff"
	Options []Origin
}

// Fold returns the tree that all entries give, taken in the order of the log.
// Where a choice is open there stands the option that comes last in that order;
// it must not be computed with.
func (l *Log) Fold() *document.Node {
	now := document.NewMap()
	l.each(0, func(_ position, e *document.Node) { document.MergePatch(now, e.Get("patch")) })
	return now
}

// Choices returns the open choices of the log, in the order in which their
// fields were first stated where it matters.
func (l *Log) Choices() []Choice {
	from := l.settled()
	sights := l.sights(from)
	type field struct {
		path string
		last []candidate // entries of the field that no other of it has seen
	}
	fields := map[string]*field{}
	var order []*field
	l.each(from, func(at position, e *document.Node) {
		leaves("", e.Get("patch"), func(path string, value *document.Node) {
			f := fields[path]
			if f == nil {
				f = &field{path: path}
				fields[path] = f
				order = append(order, f)
			}
			kept := f.last[:0]
			for _, c := range f.last {
				if !sights.has(at, c.at) {
					kept = append(kept, c)
				}
			}
			f.last = append(kept, candidate{at, value})
		})
	})
	var choices []Choice
	for _, f := range order {
		if agree(f.last) {
			continue
		}
		c := Choice{Path: f.path}
		for _, option := range f.last {
			c.Options = append(c.Options, l.origin(option.at, option.value))
		}
		choices = append(choices, c)
	}
	return choices
}

type candidate struct {
	at    position
	value *document.Node
}

func agree(list []candidate) bool {
	for _, c := range list[1:] {
		if !c.value.Equal(list[0].value) {
			return false
		}
	}
	return true
}

func (l *Log) origin(at position, value *document.Node) Origin {
	r := l.sittings[at.sitting]
	e := r.entries[at.s]
	return Origin{
		Ref: Ref{r.id, at.s}, Who: r.node.Get("who").Text(), Device: r.node.Get("device").Text(),
		At: e.Get("at").Text(), Why: e.Get("why").Text(), Value: value,
	}
}

// Trace returns every entry that stated the field at a path below "now" or
// anything below it, in the order of the log.
func (l *Log) Trace(path string) []Origin {
	var list []Origin
	l.each(0, func(at position, e *document.Node) {
		if value := e.Get("patch").At(path); value != nil {
			list = append(list, l.origin(at, value))
		}
	})
	return list
}

// LastOf returns the origin of the present value at a path below "now". ok is
// false where no entry states it: the value came with the file.
func LastOf(root *document.Node, path string) (o Origin, ok bool) {
	trace := Read(root).Trace(path)
	if len(trace) == 0 {
		return Origin{}, false
	}
	return trace[len(trace)-1], true
}

// Reconcile holds "now" against the fold of all entries. Where they differ,
// somebody changed "now" without an entry: the difference becomes an entry of
// a sitting by [UnknownHand], so that nothing stands there without a history.
// The sitting's id is made from the difference: two copies changed by hand in
// the same way agree. It reports whether there was a difference; the log is
// stale then.
func (l *Log) Reconcile() bool {
	root := l.root
	folded, now := l.Fold(), root.Get("now")
	if now.Kind() != document.Map || folded.Equal(now) {
		return false
	}
	patch := difference(folded, now)
	s := Sitting{ID: "hand-" + document.Digest(patch)[:24], Who: UnknownHand}
	if root.Get("sittings").Get(s.ID) != nil { // the same change undone by hand and made again
		s.ID += "-" + document.Digest(folded)[:8]
	}
	root.Set("now", folded)
	Enter(root, s, Change{Patch: patch})
	return true
}

// difference returns the patch that makes b of a. What a has and b does not
// have is made blank: a patch holds no null.
func difference(a, b *document.Node) *document.Node {
	patch := document.NewMap()
	for name, value := range b.Members() {
		before := a.Get(name)
		if value.Kind() == document.Map && before.Kind() == document.Map {
			if inner := difference(before, value); inner.Len() > 0 {
				patch.Set(name, inner)
			}
			continue
		}
		if !value.Equal(before) {
			patch.Set(name, value.Clone())
		}
	}
	for name, before := range a.Members() {
		if b.Get(name) == nil {
			patch.Set(name, blanked(before))
		}
	}
	return patch
}

// blanked makes every text of a value blank; a list becomes an empty list, and
// a map is struck out.
func blanked(n *document.Node) *document.Node {
	switch n.Kind() {
	case document.Map:
		return struckOut(UnknownHand)
	case document.List:
		return document.NewList()
	}
	return document.NewText("")
}
