package document

import (
	"iter"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Kind says what a [Node] is.
type Kind uint8

// The kinds. Absent is the kind of a nil node: a member that is not there is
// not the same as a member that is null.
const (
	Absent Kind = iota
	Null
	Bool
	Number
	Text
	List
	Map
)

// indexFrom is the number of members from which a map keeps an index of its
// names, built when one is first looked up.
const indexFrom = 17

// Node is one value of a tree. All reading methods may be called on a nil
// node, which is Absent and empty, so that n.Get("a").Get("b").Text() is safe.
// The zero Node is Absent too and of no use.
type Node struct {
	// token says kind and content in one string, which keeps a node at 24
	// bytes: `"` and the decoded text; the digits of a number; "true",
	// "false", "null"; "{" or "[" with the content in kids.
	token string
	kids  *kids
}

// kids is the content of a map or list.
type kids struct {
	nodes []*Node
	table *table // nil in a list and in an empty map
}

// table holds the names of a map. Maps with the same names in the same order
// may share one, which then never changes: who wants to change it makes his own.
type table struct {
	names  []string
	index  map[string]int32 // built when a name is first looked up
	shared bool
}

// names returns the names of a map, in order.
func (n *Node) names() []string {
	if n.kids.table == nil {
		return nil
	}
	return n.kids.table.names
}

// ownTable returns a table that may be changed, with room for one more name.
func (k *kids) ownTable() *table {
	switch t := k.table; {
	case t == nil:
		k.table = &table{}
	case t.shared:
		names := make([]string, len(t.names), len(t.names)+1)
		copy(names, t.names)
		k.table = &table{names: names}
	}
	return k.table
}

// NewMap returns an empty map.
func NewMap() *Node { return &Node{token: "{", kids: &kids{}} }

// NewList returns a list of the given items. It panics on a nil item.
func NewList(items ...*Node) *Node {
	for _, item := range items {
		mustBe(item != nil, "NewList: nil item")
	}
	return &Node{token: "[", kids: &kids{nodes: slices.Clone(items)}}
}

// NewText returns a text. Bytes that are not UTF-8 become U+FFFD, because no
// file could hold them.
func NewText(s string) *Node { return &Node{token: `"` + validText(s)} }

// NewNumber returns a number with these digits. It panics where they are not
// a JSON number; ask [ValidNumber] first about text from outside.
func NewNumber(rawDigits string) *Node {
	mustBe(ValidNumber(rawDigits), "NewNumber: not a number")
	return &Node{token: rawDigits}
}

// NewInt returns a whole number.
func NewInt(n int) *Node { return &Node{token: strconv.Itoa(n)} }

// NewBool returns true or false.
func NewBool(b bool) *Node {
	if b {
		return &Node{token: "true"}
	}
	return &Node{token: "false"}
}

// NewNull returns null.
func NewNull() *Node { return &Node{token: "null"} }

// Kind says what the node is.
func (n *Node) Kind() Kind {
	if n == nil || n.token == "" {
		return Absent
	}
	switch n.token[0] {
	case '"':
		return Text
	case '{':
		return Map
	case '[':
		return List
	case 't', 'f':
		return Bool
	case 'n':
		return Null
	}
	return Number
}

// Text returns the decoded text, or "" where the node is not a text.
func (n *Node) Text() string {
	if n.Kind() != Text {
		return ""
	}
	return n.token[1:]
}

// Raw returns the digits of a number as they were written, or "" where the
// node is not a number.
func (n *Node) Raw() string {
	if n.Kind() != Number {
		return ""
	}
	return n.token
}

// Bool reports whether the node is true.
func (n *Node) Bool() bool { return n != nil && n.token == "true" }

// Int returns a whole number. It is not ok where the node is no number, is
// written with a point or an exponent, or does not fit an int.
func (n *Node) Int() (value int, ok bool) {
	if n.Kind() != Number {
		return 0, false
	}
	value, err := strconv.Atoi(n.token)
	if err != nil {
		return 0, false
	}
	return value, true
}

// Len returns the number of members of a map or items of a list, else 0.
func (n *Node) Len() int {
	if n == nil || n.kids == nil {
		return 0
	}
	return len(n.kids.nodes)
}

// Item returns the i-th item of a list or the i-th value of a map, counted
// from 0, or nil where there is none.
func (n *Node) Item(i int) *Node {
	if i < 0 || i >= n.Len() {
		return nil
	}
	return n.kids.nodes[i]
}

// Member returns name and value of the i-th member of a map, counted from 0,
// or "" and nil where there is none.
func (n *Node) Member(i int) (name string, value *Node) {
	if n.Kind() != Map || i < 0 || i >= n.Len() {
		return "", nil
	}
	return n.kids.table.names[i], n.kids.nodes[i]
}

// Members walks the members of a map in order. The map must not change
// meanwhile.
func (n *Node) Members() iter.Seq2[string, *Node] {
	return func(yield func(string, *Node) bool) {
		if n.Kind() != Map {
			return
		}
		for i, name := range n.names() {
			if !yield(name, n.kids.nodes[i]) {
				return
			}
		}
	}
}

// Items walks the items of a list in order. The list must not change
// meanwhile.
func (n *Node) Items() iter.Seq2[int, *Node] {
	return func(yield func(int, *Node) bool) {
		if n.Kind() != List {
			return
		}
		for i, item := range n.kids.nodes {
			if !yield(i, item) {
				return
			}
		}
	}
}

// Get returns the member of that name, or nil where there is none.
func (n *Node) Get(name string) *Node {
	if i := n.find(name); i >= 0 {
		return n.kids.nodes[i]
	}
	return nil
}

// find returns the position of a name in a map, or -1.
func (n *Node) find(name string) int {
	if n.Kind() != Map {
		return -1
	}
	t := n.kids.table
	if t == nil {
		return -1
	}
	if len(t.names) < indexFrom {
		return slices.Index(t.names, name)
	}
	if t.index == nil {
		t.index = make(map[string]int32, len(t.names))
		for i, s := range t.names {
			t.index[s] = int32(i)
		}
	}
	if i, ok := t.index[name]; ok {
		return int(i)
	}
	return -1
}

// Set puts a member into a map: in its place where the name is there, else at
// the end. The value itself goes in, not a copy. It panics where n is not a
// map or the value is nil. Set does not look for names that differ in case
// only; see [Check].
func (n *Node) Set(name string, value *Node) {
	mustBe(n.Kind() == Map, "Set: not a map")
	mustBe(value.Kind() != Absent, "Set: no value")
	name = validText(name)
	k := n.kids
	if i := n.find(name); i >= 0 {
		k.nodes[i] = value
		return
	}
	t := k.ownTable()
	if t.index != nil {
		t.index[name] = int32(len(t.names))
	}
	t.names = append(t.names, name)
	k.nodes = append(k.nodes, value)
}

// Remove takes a member out of a map, where there is one. It panics where n
// is not a map.
func (n *Node) Remove(name string) {
	mustBe(n.Kind() == Map, "Remove: not a map")
	i := n.find(name)
	if i < 0 {
		return
	}
	k := n.kids
	t := k.ownTable()
	if i == len(t.names)-1 {
		delete(t.index, name)
	} else {
		t.index = nil // the positions behind it change
	}
	t.names = slices.Delete(t.names, i, i+1)
	k.nodes = slices.Delete(k.nodes, i, i+1)
}

// Append puts an item at the end of a list. The item itself goes in, not a
// copy. It panics where n is not a list or the item is nil.
func (n *Node) Append(item *Node) {
	mustBe(n.Kind() == List, "Append: not a list")
	mustBe(item.Kind() != Absent, "Append: no item")
	n.kids.nodes = append(n.kids.nodes, item)
}

// Clone returns a copy that shares no map and no list with n. Values that
// cannot change are shared.
func (n *Node) Clone() *Node {
	if n == nil || n.kids == nil {
		return n
	}
	k := &kids{nodes: make([]*Node, len(n.kids.nodes)), table: n.kids.table}
	if k.table != nil {
		k.table.shared = true
	}
	for i, node := range n.kids.nodes {
		k.nodes[i] = node.Clone()
	}
	return &Node{token: n.token, kids: k}
}

// Equal reports whether two trees say the same: maps in any order of members,
// lists in the same order, numbers by their digits (1 and 1.0 differ).
func (n *Node) Equal(other *Node) bool {
	if n == other {
		return true
	}
	kind := n.Kind()
	if kind != other.Kind() || n.Len() != other.Len() {
		return false
	}
	switch kind {
	case Absent:
		return true
	case List:
		return slices.EqualFunc(n.kids.nodes, other.kids.nodes, (*Node).Equal)
	case Map:
		for i, name := range n.names() {
			if j := other.find(name); j < 0 || !n.kids.nodes[i].Equal(other.kids.nodes[j]) {
				return false
			}
		}
		return true
	}
	return n.token == other.token
}

// Depth returns the number of levels of maps and lists: 0 for a text, 1 for
// {} and for { "a": 1 }.
func (n *Node) Depth() int {
	if n == nil || n.kids == nil {
		return 0
	}
	deepest := 0
	for _, node := range n.kids.nodes {
		deepest = max(deepest, node.Depth())
	}
	return deepest + 1
}

// validText returns s with bytes that are not UTF-8 replaced.
func validText(s string) string {
	if utf8.ValidString(s) {
		return s
	}
	return strings.ToValidUTF8(s, "\uFFFD")
}

// mustBe panics on a mistake of the calling program, never on one of a file.
func mustBe(ok bool, mistake string) {
	if !ok {
		panic("document: " + mistake)
	}
}
