package document

import "testing"

// FuzzPatch holds the laws of patches on any two readable texts: a patch and
// its inverse lead back, a patch changes nothing twice, and a result that the
// check lets pass is a file that can be read again.
func FuzzPatch(f *testing.F) {
	for _, pair := range [][2]string{
		{`{"a":"b"}`, `{"a":"c"}`}, {`{"a":{"b":"c"}}`, `{"a":{"b":"d","e":null}}`}, {`{"a":[1,2]}`, `{"a":[3]}`},
		{`{"piles":{"p":{"mark":"C1"}}}`, `{"piles":{"p":{"cutoff":"1.0 m"},"q":{}}}`}, {`[]`, `{"a":1}`}, {`{}`, `{"a":{"bb":{"ccc":null}}}`},
	} {
		f.Add([]byte(pair[0]), []byte(pair[1]))
	}
	f.Fuzz(func(t *testing.T, x, y []byte) {
		target, c := Read(x)
		patch, d := Read(y)
		if !c.None() || !d.None() || holdsNull(target) {
			return
		}
		start := target.Clone()
		refused := !CheckPatch(target, patch, 0).None()
		was := Inverse(target, patch)
		once := MergePatch(target.Clone(), patch)
		if twice := MergePatch(once.Clone(), patch); !twice.Equal(once) {
			t.Fatalf("a patch taken twice changes again: %s %s", x, y)
		}
		if target.Kind() == Map && patch.Kind() == Map {
			if back := MergePatch(once.Clone(), was); !back.Equal(start) {
				t.Fatalf("the inverse does not lead back: %s %s: %s", x, y, back.Compact())
			}
		}
		if !target.Equal(start) {
			t.Fatalf("looking for the inverse changed the target: %s", x)
		}
		if again, e := Read(once.Stable()); !refused && Check(once).None() && (!e.None() || !again.Equal(once)) {
			t.Fatalf("the result cannot be read again: %s", once.Compact())
		}
	})
}

// holdsNull says whether a map of the tree holds null, which a merge patch
// cannot express.
func holdsNull(n *Node) bool {
	for _, v := range n.Members() {
		if v.Kind() == Null || holdsNull(v) {
			return true
		}
	}
	for _, v := range n.Items() {
		if holdsNull(v) {
			return true
		}
	}
	return false
}
