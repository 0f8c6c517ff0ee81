package document

import (
	"math/rand"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestKindsAndValues(t *testing.T) {
	cases := []struct {
		node *Node
		kind Kind
		text string
		raw  string
		yes  bool
		len  int
	}{
		{nil, Absent, "", "", false, 0},
		{&Node{}, Absent, "", "", false, 0},
		{NewNull(), Null, "", "", false, 0},
		{NewBool(true), Bool, "", "", true, 0},
		{NewBool(false), Bool, "", "", false, 0},
		{NewNumber("-1.50"), Number, "", "-1.50", false, 0},
		{NewInt(-12), Number, "", "-12", false, 0},
		{NewText("true"), Text, "true", "", false, 0},
		{NewText(""), Text, "", "", false, 0},
		{NewList(NewInt(1), NewInt(2)), List, "", "", false, 2},
		{NewMap(), Map, "", "", false, 0},
	}
	for i, c := range cases {
		assert.Equal(t, c.kind, c.node.Kind(), i)
		assert.Equal(t, c.text, c.node.Text(), i)
		assert.Equal(t, c.raw, c.node.Raw(), i)
		assert.Equal(t, c.yes, c.node.Bool(), i)
		assert.Equal(t, c.len, c.node.Len(), i)
		assert.True(t, c.node.Equal(c.node.Clone()), i)
		for j, d := range cases {
			same := i == j || c.kind == Absent && d.kind == Absent
			assert.Equal(t, same, c.node.Equal(d.node), "%d %d", i, j)
		}
	}
}

func TestNilNodeIsEmpty(t *testing.T) {
	var n *Node
	assert.Equal(t, "", n.Get("a").Get("b").Text())
	assert.Nil(t, n.Item(0))
	assert.Nil(t, n.At("/a/0"))
	assert.Nil(t, n.Clone())
	assert.Equal(t, 0, n.Depth())
	for range n.Members() {
		t.Error("a member of nil")
	}
	for range n.Items() {
		t.Error("an item of nil")
	}
	name, value := n.Member(0)
	assert.Equal(t, "", name)
	assert.Nil(t, value)
}

func TestInt(t *testing.T) {
	for raw, want := range map[string]int{"0": 0, "-0": 0, "17": 17, "-9007199254740993": -9007199254740993} {
		got, ok := NewNumber(raw).Int()
		assert.True(t, ok, raw)
		assert.Equal(t, want, got, raw)
	}
	for _, n := range []*Node{nil, NewNumber("1.0"), NewNumber("1e2"), NewNumber("99999999999999999999"), NewText("1"), NewBool(true)} {
		_, ok := n.Int()
		assert.False(t, ok, n.Compact())
	}
}

// Every way to a member is compared with a plain Go map and a slice of names,
// on both sides of the size at which an index is built.
func TestSetGetRemoveLikeAMap(t *testing.T) {
	rnd := rand.New(rand.NewSource(1))
	for round := range 50 {
		n, model, order := NewMap(), map[string]int{}, []string{}
		for step := range 200 {
			name := strconv.Itoa(rnd.Intn(30 + round))
			switch rnd.Intn(4) {
			case 0:
				n.Remove(name)
				delete(model, name)
				for i, s := range order {
					if s == name {
						order = append(order[:i], order[i+1:]...)
						break
					}
				}
			default:
				if _, ok := model[name]; !ok {
					order = append(order, name)
				}
				model[name] = step
				n.Set(name, NewInt(step))
			}
			require.Equal(t, len(model), n.Len())
			asked := strconv.Itoa(rnd.Intn(30 + round))
			want, ok := model[asked]
			require.Equal(t, ok, n.Get(asked) != nil)
			if ok {
				got, _ := n.Get(asked).Int()
				require.Equal(t, want, got)
			}
		}
		i := 0
		for name, value := range n.Members() {
			require.Equal(t, order[i], name)
			byPlace, same := n.Member(i)
			require.Equal(t, name, byPlace)
			require.Same(t, value, same)
			require.Same(t, value, n.Item(i))
			i++
		}
		require.Equal(t, len(order), i)
	}
}

func TestReplacedValueStaysAsItWas(t *testing.T) {
	n := mustRead(t, `{"a":{"b":1}}`)
	old := n.Get("a")
	n.Set("a", NewInt(2))
	assert.Equal(t, `{"b":1}`, old.Compact())
}

// Slices of a tree are cut from one piece: growing one must not reach into
// the next.
func TestGrowingOneDoesNotTouchItsNeighbour(t *testing.T) {
	n := mustRead(t, `{"a":["1"],"b":["2"],"c":{"x":"3"},"d":{"y":"4"}}`)
	n.Get("a").Append(NewText("new"))
	n.Get("c").Set("z", NewText("new"))
	assert.Equal(t, `{"a":["1","new"],"b":["2"],"c":{"x":"3","z":"new"},"d":{"y":"4"}}`, n.Compact())
}

func TestCloneSharesNothingThatChanges(t *testing.T) {
	n := mustRead(t, `{"a":{"b":[1,{"c":2}]}}`)
	c := n.Clone()
	c.Get("a").Get("b").Append(NewInt(3))
	c.At("/a/b/1").Set("c", NewInt(4))
	c.Set("d", NewInt(5))
	assert.Equal(t, `{"a":{"b":[1,{"c":2}]}}`, n.Compact())
	assert.Equal(t, `{"a":{"b":[1,{"c":4},3]},"d":5}`, c.Compact())
}

// Maps with the same names share them until one changes.
func TestSharedNames(t *testing.T) {
	n := mustRead(t, `[{"a":1,"b":2},{"a":3,"b":4},{"a":5,"b":6}]`)
	require.Same(t, n.Item(0).content().table, n.Item(2).content().table)
	n.Item(0).Set("c", NewInt(7))
	n.Item(1).Remove("a")
	n.Item(1).Set("d", NewInt(8))
	assert.Equal(t, `[{"a":1,"b":2,"c":7},{"b":4,"d":8},{"a":5,"b":6}]`, n.Compact())

	large := NewMap()
	for i := range 3 * indexFrom {
		large.Set(strconv.Itoa(i), NewInt(i))
	}
	copied := large.Clone()
	copied.Remove("5")
	copied.Set("new", NewInt(1))
	large.Remove(strconv.Itoa(3*indexFrom - 1))
	assert.Nil(t, large.Get("new"))
	assert.Equal(t, "6", large.Get("6").Raw())
	assert.Equal(t, "5", large.Get("5").Raw())
	assert.Equal(t, "6", copied.Get("6").Raw())
	assert.Equal(t, "50", copied.Get("50").Raw())
	assert.Nil(t, copied.Get("5"))
	assert.Nil(t, large.Get("50"))
}

func TestEqual(t *testing.T) {
	same := [][2]string{
		{`{"a":1,"b":[1,2]}`, `{"b":[1,2],"a":1}`},
		{`"\u0041"`, `"A"`},
	}
	for _, c := range same {
		assert.True(t, mustRead(t, c[0]).Equal(mustRead(t, c[1])), c)
	}
	different := [][2]string{
		{`1`, `1.0`}, {`[1,2]`, `[2,1]`}, {`{"a":1}`, `{"b":1}`}, {`{"a":1}`, `{"a":2}`}, {`{"a":1}`, `{"a":1,"b":1}`},
		{`"1"`, `1`}, {`null`, `false`}, {`{}`, `[]`}, {`"true"`, `true`}, {`{"a":null}`, `{}`},
	}
	for _, c := range different {
		assert.False(t, mustRead(t, c[0]).Equal(mustRead(t, c[1])), c)
		assert.False(t, mustRead(t, c[1]).Equal(mustRead(t, c[0])), c)
	}
}

func TestDepth(t *testing.T) {
	for text, want := range map[string]int{`1`: 0, `"[["`: 0, `{}`: 1, `[]`: 1, `[1]`: 1, `{"a":[{}],"b":[]}`: 3} {
		assert.Equal(t, want, mustRead(t, text).Depth(), text)
	}
}

func TestTextThatIsNotUTF8IsMendedNotKept(t *testing.T) {
	n := NewMap()
	n.Set("na\xffme", NewText("a\xffb"))
	back := mustRead(t, n.Compact())
	assert.Equal(t, "a\uFFFDb", back.Get("na\uFFFDme").Text())
}

func TestMistakesOfProgramsPanic(t *testing.T) {
	for name, f := range map[string]func(){
		"number":       func() { NewNumber("01") },
		"empty number": func() { NewNumber("") },
		"list of nil":  func() { NewList(nil) },
		"set on list":  func() { NewList().Set("a", NewInt(1)) },
		"set nil":      func() { NewMap().Set("a", nil) },
		"append nil":   func() { NewList().Append(nil) },
		"append text":  func() { NewText("").Append(NewInt(1)) },
		"remove":       func() { NewList().Remove("a") },
	} {
		assert.Panics(t, f, name)
	}
}
