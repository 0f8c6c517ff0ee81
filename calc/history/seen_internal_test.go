package history

import (
	"math/rand"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/document"
)

// randomSittings makes sittings that list one another at random, so that there
// are cycles, gaps and counts beyond the end.
func randomSittings(rnd *rand.Rand) *document.Node {
	sittings := document.NewMap()
	n := 2 + rnd.Intn(7)
	for i := range n {
		entries := document.NewList()
		for s := range rnd.Intn(3) {
			patch := document.NewMap()
			patch.Set("f"+strconv.Itoa(rnd.Intn(2)), document.NewText(strconv.Itoa(rnd.Intn(3))))
			e := document.NewMap()
			e.Set("s", document.NewInt(s))
			e.Set("patch", patch)
			entries.Append(e)
		}
		seen := document.NewMap()
		for k := range n {
			if order := rnd.Intn(12); k < i && order < 5 || order == 11 {
				seen.Set("s"+strconv.Itoa(k), document.NewInt(rnd.Intn(4)))
			}
		}
		sitting := document.NewMap()
		sitting.Set("seen", seen)
		sitting.Set("entries", entries)
		sittings.Set("s"+strconv.Itoa(i), sitting)
	}
	root := document.NewMap()
	root.Set("sittings", sittings)
	return root
}

// counted is how many entries of one sitting another has seen, by looking at
// every list on every way.
func counted(root *document.Node, who, whom string) int {
	most, done := 0, map[string]bool{}
	var look func(id string)
	look = func(id string) {
		done[id] = true
		for other, n := range root.Get("sittings").Get(id).Get("seen").Members() {
			count, _ := n.Int()
			if other == id {
				continue // a list is of the others
			}
			if other == whom {
				most = max(most, count)
			}
			if count > 0 && !done[other] {
				look(other)
			}
		}
	}
	look(who)
	return most
}

func TestSightsAgreeWithEveryWayThroughTheLists(t *testing.T) {
	cycles, settled := 0, 0
	for seed := range int64(3000) {
		root := randomSittings(rand.New(rand.NewSource(seed)))
		l := Read(root)
		if l.ordered < len(l.sittings) {
			cycles++
		}
		has := func(a, b position) bool {
			if a.sitting == b.sitting {
				return a.s > b.s
			}
			return counted(root, l.sittings[a.sitting].id, l.sittings[b.sitting].id) > b.s
		}
		for _, from := range []int{0, l.settled()} {
			sights := l.sights(from)
			l.each(from, func(a position, _ *document.Node) {
				l.each(from, func(b position, _ *document.Node) {
					require.Equal(t, has(a, b), sights.has(a, b), "seed %d: %v %v of %s", seed, a, b, root.Compact())
				})
			})
		}
		// Of two entries of which one is settled, the other has seen it or was
		// seen by it.
		from := l.settled()
		settled += from
		l.each(0, func(a position, _ *document.Node) {
			l.each(0, func(b position, _ *document.Node) {
				if b.sitting < from && b != a && b.sitting <= a.sitting {
					require.True(t, has(a, b) || has(b, a), "seed %d: %v %v of %s", seed, a, b, root.Compact())
				}
			})
		})
	}
	assert.Greater(t, cycles, 300)
	assert.Greater(t, settled, 1000)
}

// A job that is opened again and again lists the last sitting only, and two
// after the union of two copies.
func TestListsStayShort(t *testing.T) {
	enter := func(root *document.Node, id string) {
		patch := document.NewMap()
		patch.Set("a", document.NewText(id))
		Enter(root, Sitting{ID: id}, Change{Patch: patch})
	}
	root := document.NewMap()
	root.Set("now", document.NewMap())
	for i := range 40 {
		enter(root, "s"+strconv.Itoa(100+i))
	}
	other := root.Clone()
	for i := range 5 {
		enter(root, "t"+strconv.Itoa(100+i))
		enter(other, "u"+strconv.Itoa(100+i))
	}
	enter(other, "u104") // once more in the same sitting
	both, damage := Union(root, other)
	require.Empty(t, damage)
	enter(both, "a")
	seen := func(id string) string { return both.Get("sittings").Get(id).Get("seen").Compact() }
	assert.Equal(t, `{}`, seen("s100"))
	assert.Equal(t, `{"s138":1}`, seen("s139"))
	assert.Equal(t, `{"s139":1}`, seen("t100"))
	assert.Equal(t, `{"u103":1}`, seen("u104"))
	assert.Equal(t, `{"t104":1,"u104":2}`, seen("a"))
	assert.Empty(t, Read(both).Choices())
}
