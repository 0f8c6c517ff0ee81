package document

import (
	"math/rand"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// nested wraps a value in that many lists.
func nested(levels int, inner *Node) *Node {
	for range levels {
		inner = NewList(inner)
	}
	return inner
}

func TestCheck(t *testing.T) {
	n := mustRead(t, `{"a":{"depth":1},"b":[{"k":1}]}`)
	require.True(t, Check(n).None())
	n.At("/a").Set("Depth", NewInt(2))
	n.At("/b/0").Set("\u212a", NewInt(2)) // Kelvin sign
	assert.Equal(t, Complaints{Count: 2, List: []Complaint{
		{Code: CodeCase, Path: "/a/Depth", Found: "Depth", Allowed: "depth"},
		{Code: CodeCase, Path: "/b/0/\u212a", Found: "\u212a", Allowed: "k"},
	}}, Check(n))

	assert.True(t, Check(nested(MaxDepth, NewInt(1))).None())
	got := Check(nested(MaxDepth+1, NewInt(1)))
	require.Len(t, got.List, 1)
	assert.Equal(t, Complaint{Code: CodeDepth, Path: strings.Repeat("/0", MaxDepth), Found: "33", Allowed: "32"}, got.List[0])
}

func TestCheckPatch(t *testing.T) {
	target := mustRead(t, `{"piles":{"p1":{"mark":"C1","depth":"1 m"}}}`)
	for patch, path := range map[string]string{
		`{"piles":{"p1":{"Mark":"C2"}}}`: "/piles/p1/Mark",
		`{"Piles":{}}`:                   "/Piles",
		`{"piles":{"P1":{"mark":"x"}}}`:  "/piles/P1",
	} {
		got := CheckPatch(target, mustRead(t, patch), 0)
		require.Equal(t, 1, got.Count, patch)
		assert.Equal(t, CodeCase, got.List[0].Code)
		assert.Equal(t, path, got.List[0].Path)
	}
	for _, patch := range []string{
		`{"piles":{"p1":{"mark":"C2","new":1}}}`, `{"piles":{"p2":{"Mark":"C2"}}}`, `{"piles":{"p1":{"mark":null,"Mark":1}}}`, `5`, `{"PILES":null}`,
	} {
		tree, complaints := ReadText(patch)
		if tree == nil { // a name removed and given anew in other letters cannot be read, only built
			require.Equal(t, CodeCase, complaints.List[0].Code)
			inner := NewMap()
			inner.Set("mark", NewNull())
			inner.Set("Mark", NewInt(1))
			tree = mustRead(t, `{"piles":{}}`)
			tree.Get("piles").Set("p1", inner)
		}
		assert.True(t, CheckPatch(target, tree, 0).None(), patch)
	}
	assert.Equal(t, CodeDepth, CheckPatch(target, mustRead(t, `{"a":{}}`), MaxDepth-1).List[0].Code)
	assert.True(t, CheckPatch(target, mustRead(t, `{"a":1}`), MaxDepth-1).None())
	assert.Equal(t, CodeDepth, CheckPatch(target, mustRead(t, `{"a":[[]]}`), MaxDepth-2).List[0].Code)
}

// What the checks let pass can be read again, what they stop cannot.
func TestChecksAgreeWithReading(t *testing.T) {
	rnd := rand.New(rand.NewSource(6))
	names := []string{"a", "A", "b", "k", "K", "\u212a", "s", "\u017f", "ß", "c", "d", "e", "f", "g"}
	var tree func(depth int) *Node
	tree = func(depth int) *Node {
		if depth == 0 {
			return NewInt(1)
		}
		n := NewMap()
		for range 1 + rnd.Intn(3) {
			n.Set(names[rnd.Intn(len(names))], tree(depth-1-rnd.Intn(depth)))
		}
		return n
	}
	outcomes := map[bool]int{}
	for range 3000 {
		n := tree(4)
		_, read := Read(n.Stable())
		require.Equal(t, read.Count, Check(n).Count, n.Compact())
		outcomes[read.None()]++

		patch := tree(3)
		if !Check(n).None() || !Check(patch).None() {
			continue
		}
		fits := CheckPatch(n, patch, 0).None()
		_, read = Read(MergePatch(n, patch).Stable())
		require.Equal(t, read.None(), fits, "%s + %s", n.Compact(), patch.Compact())
		outcomes[fits]++
	}
	require.Greater(t, outcomes[true], 100)
	require.Greater(t, outcomes[false], 100)
}
