// Package history keeps who stated what and when, and puts copies of a file
// together. It knows no pile.
//
// # Sittings and entries
//
// A sitting is one opening of one copy of a file: an id, who, on which device,
// since when, how many entries of every other sitting this copy had ("seen";
// what follows from the rest is left out), and its entries in order. Every open
// and every union begins a new one. An entry is a merge patch (RFC 7396) of "now"
// with its inverse "was", the time, and a reason where one was given. Nothing is
// deleted: a patch holds no null, and a field made blank is the empty text. An
// entry that has left the device is never rewritten.
//
// # Order
//
// One entry has seen another when it stands later in the same sitting, or when
// its sitting began with the other in the copy: "seen" counts it there, or in a
// sitting of which something was seen, and so on. That is all the order there
// is; clocks play no part. [Log.Fold] takes the entries sitting by sitting, in an
// order that agrees with it and is the same everywhere ([Log]).
//
// # Choices
//
// A field is a path whose value is not a map: a text, or a list as a whole. Of
// the entries of a field, those count that no other entry of it has seen. Where
// they agree the value is clean; where they do not, the field is an open
// [Choice]: nobody is guessed to be right. An entry made after a union has seen
// both and settles it.
//
// # Damage
//
// What should not happen is said in words and kept: an entry missing, two
// entries under one number, a sitting that saw more than there is, sittings
// that each saw the other. See [Damage].
package history

import "gaugewright/calc/document"

// Sitting says who is entering, on what device.
type Sitting struct {
	ID     string
	Who    string // may be blank: not named
	Device string
	On     string // when the sitting began, ISO 8601
}

// UnknownHand is the name of whoever changed "now" without an entry.
const UnknownHand = "unknown hand"

// Change is one entry about to be made.
type Change struct {
	At    string         // when, ISO 8601
	Patch *document.Node // of "now"
	Why   string         // may be blank
	// Fold says that the change is a key press: where the last entry of the
	// sitting changed the same single value, it is rewritten. The host stops
	// folding by a new sitting once an entry has left the device. An entry with a
	// reason stays as it is.
	Fold bool
}

// Enter applies a change to root's "now" and writes it into the sitting, which
// is made where it is new. root must hold a map "now".
func Enter(root *document.Node, s Sitting, c Change) {
	entries := sitting(root, s).Get("entries")
	now := root.Get("now")
	was := document.Inverse(now, c.Patch)
	if last := entries.Item(entries.Len() - 1); c.Fold && last != nil && last.Get("why") == nil {
		path, value := leaf(c.Patch)
		if before, _ := leaf(last.Get("patch")); value != nil && before == path {
			document.MergePatch(now, c.Patch)
			last.Set("at", document.NewText(c.At))
			last.Set("patch", c.Patch)
			return
		}
	}
	document.MergePatch(now, c.Patch)
	entry := document.NewMap()
	entry.Set("s", document.NewInt(entries.Len()))
	entry.Set("at", document.NewText(c.At))
	entry.Set("patch", c.Patch)
	entry.Set("was", was)
	if c.Why != "" {
		entry.Set("why", document.NewText(c.Why))
	}
	entries.Append(entry)
}

// sitting finds or makes the sitting in the file.
func sitting(root *document.Node, s Sitting) *document.Node {
	all := root.Get("sittings")
	if all.Kind() != document.Map {
		all = document.NewMap()
		root.Set("sittings", all)
	}
	if known := all.Get(s.ID); known != nil {
		return known
	}
	made := document.NewMap()
	made.Set("who", document.NewText(s.Who))
	made.Set("device", document.NewText(s.Device))
	made.Set("on", document.NewText(s.On))
	made.Set("seen", listed(root))
	made.Set("entries", document.NewList())
	last, _ := all.Member(all.Len() - 1)
	all.Set(s.ID, made)
	if s.ID < last { // sittings stand by id, as a union writes them
		root.Set("sittings", byName(all))
	}
	return made
}

func byName(m *document.Node) *document.Node {
	out := document.NewMap()
	for _, name := range bothNames(m, nil) {
		out.Set(name, m.Get(name))
	}
	return out
}

// leaf returns the path and value of a patch that changes a single text, or a
// nil value.
func leaf(patch *document.Node) (path string, value *document.Node) {
	for patch.Kind() == document.Map {
		if patch.Len() != 1 {
			return "", nil
		}
		name, inner := patch.Member(0)
		path, patch = document.Join(path, name), inner
	}
	if patch.Kind() != document.Text {
		return "", nil
	}
	return path, patch
}

// Count returns how many entries the file holds.
func Count(root *document.Node) int {
	n := 0
	for _, s := range root.Get("sittings").Members() {
		n += s.Get("entries").Len()
	}
	return n
}

// Lacking returns how many entries of another file this one does not have.
func Lacking(root, other *document.Node) int {
	n := 0
	for id, s := range other.Get("sittings").Members() {
		have := map[int]bool{}
		for _, e := range root.Get("sittings").Get(id).Get("entries").Items() {
			number, _ := e.Get("s").Int()
			have[number] = true
		}
		for _, e := range s.Get("entries").Items() {
			if number, _ := e.Get("s").Int(); !have[number] {
				n++
			}
		}
	}
	return n
}
