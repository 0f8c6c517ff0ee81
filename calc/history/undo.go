package history

import (
	"strings"

	"gaugewright/calc/document"
)

// Undo returns the patch that takes an entry back, or nil where there is
// nothing left to take back. Only fields whose present value is still that
// entry's are touched. A field that was not there before is made blank; a thing
// that the entry made is struck out, because nothing is deleted. thing says
// which paths below "now" are things ("/piles/p14"). The patch is to be entered
// like any other change.
func (l *Log) Undo(ref Ref, thing func(path string) bool) *document.Node {
	i, ok := l.index[ref.Sitting]
	if !ok || ref.S < 0 || ref.S >= len(l.sittings[i].entries) || l.sittings[i].entries[ref.S] == nil {
		return nil
	}
	e := l.sittings[i].entries[ref.S]
	patch := undone("", e.Get("patch"), e.Get("was"), l.root.Get("now"), thing)
	if patch.Len() == 0 {
		return nil
	}
	return patch
}

func undone(path string, patch, was, now *document.Node, thing func(string) bool) *document.Node {
	back := document.NewMap()
	for name, value := range patch.Members() {
		at := document.Join(path, name)
		before, present := was.Get(name), now.Get(name)
		if before.Kind() == document.Null {
			before = nil
		}
		switch {
		case value.Kind() == document.Map && before == nil && thing(at):
			if present.Get("struck").Get("why").Text() == "" {
				back.Set(name, struckOut("undone"))
			}
		case value.Kind() == document.Map:
			if inner := undone(at, value, before, present, thing); inner.Len() > 0 {
				back.Set(name, inner)
			}
		case !present.Equal(value): // changed since
		case before == nil:
			if blank := blanked(value); !blank.Equal(value) {
				back.Set(name, blank)
			}
		case !before.Equal(value):
			back.Set(name, before.Clone())
		}
	}
	return back
}

func struckOut(why string) *document.Node {
	struck := document.NewMap()
	struck.Set("why", document.NewText(why))
	m := document.NewMap()
	m.Set("struck", struck)
	return m
}

// Difference is a field that two states of "now" do not share.
type Difference struct {
	Path          string         // below "now"
	Before, After *document.Node // nil where it is not stated
}

// Compare lists the fields in which two trees differ, in the order of the
// first and then of the second.
func Compare(a, b *document.Node) []Difference {
	var list []Difference
	compare("", a, b, &list)
	return list
}

func compare(path string, a, b *document.Node, list *[]Difference) {
	if a.Kind() == document.Map || b.Kind() == document.Map {
		for name, x := range a.Members() {
			compare(document.Join(path, name), x, b.Get(name), list)
		}
		for name, y := range b.Members() {
			if a.Get(name) == nil {
				compare(document.Join(path, name), nil, y, list)
			}
		}
		if a.Kind() == document.Map && (b == nil || b.Kind() == document.Map) || a == nil {
			return
		}
	}
	if !a.Equal(b) {
		*list = append(*list, Difference{path, a, b})
	}
}

// Until returns the tree that the entries up to a time give, by the clocks of
// the devices that made them. Moments and days of ISO 8601 in UTC are compared
// as text, without the Z, so that parts of a second come after the second.
func (l *Log) Until(time string) *document.Node {
	now := document.NewMap()
	time = strings.TrimSuffix(time, "Z")
	l.each(0, func(_ position, e *document.Node) {
		if strings.TrimSuffix(e.Get("at").Text(), "Z") <= time {
			document.MergePatch(now, e.Get("patch"))
		}
	})
	return now
}
