package document

import (
	"iter"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"
	"unsafe"
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
	// data is the first byte of what a text, number or word says, or the
	// *content of a map or list; nodes with the same content are one map or
	// list, wherever they stand. With size beside it instead of a string and a
	// pointer a node takes 16 bytes and not 32: a file of 20 MB has 740,000.
	data unsafe.Pointer
	size uint32
	kind Kind
}

// leaf makes a node of any kind but a map or list.
func leaf(kind Kind, says string) Node {
	mustBe(uint64(len(says)) <= math.MaxUint32, "text too long")
	return Node{unsafe.Pointer(unsafe.StringData(says)), uint32(len(says)), kind}
}

// branch makes a map or list.
func branch(kind Kind, c *content) Node { return Node{data: unsafe.Pointer(c), kind: kind} }

// says returns the decoded text, the digits, or the word true, false or null.
// n is no map and no list.
func (n *Node) says() string { return unsafe.String((*byte)(n.data), n.size) }

// content returns what a map or list holds, and nil for every other node.
func (n *Node) content() *content {
	if n == nil || n.kind < List {
		return nil
	}
	return (*content)(n.data)
}

// content is what a map or list holds. Its nodes stand in one piece, which
// spares a pointer and an allocation for each; whoever holds the address of one
// must find it unchanged, so a node is never written over: see [Node.Set].
type content struct {
	nodes []Node
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
	if t := n.content().table; t != nil {
		return t.names
	}
	return nil
}

// fewMembers is the room that a map gets with its first member: an answer is made
// of thousands of small maps.
const fewMembers = 4

// ownTable returns a table that may be changed, with room for one more name.
func (c *content) ownTable() *table {
	switch t := c.table; {
	case t == nil:
		c.table = &table{names: make([]string, 0, fewMembers)}
		c.nodes = make([]Node, 0, fewMembers)
	case t.shared:
		names := make([]string, len(t.names), len(t.names)+1)
		copy(names, t.names)
		c.table = &table{names: names}
	}
	return c.table
}

// NewMap returns an empty map.
func NewMap() *Node { return newNode(branch(Map, &content{})) }

// NewList returns a list of the given items. It panics on an item that is
// Absent.
func NewList(items ...*Node) *Node {
	nodes := make([]Node, len(items))
	for i, item := range items {
		mustBe(item.Kind() != Absent, "NewList: no item")
		nodes[i] = *item
	}
	return newNode(branch(List, &content{nodes: nodes}))
}

// NewText returns a text. Bytes that are not UTF-8 become U+FFFD, because no
// file could hold them.
func NewText(s string) *Node { return newNode(leaf(Text, validText(s))) }

// NewNumber returns a number with these digits. It panics where they are not
// a JSON number; ask [ValidNumber] first about text from outside.
func NewNumber(rawDigits string) *Node {
	mustBe(ValidNumber(rawDigits), "NewNumber: not a number")
	return newNode(leaf(Number, rawDigits))
}

// NewInt returns a whole number.
func NewInt(n int) *Node { return newNode(leaf(Number, strconv.Itoa(n))) }

// NewBool returns true or false.
func NewBool(b bool) *Node { return newNode(leaf(Bool, strconv.FormatBool(b))) }

// NewNull returns null.
func NewNull() *Node { return newNode(leaf(Null, "null")) }

func newNode(n Node) *Node { return &n }

// Kind says what the node is.
func (n *Node) Kind() Kind {
	if n == nil {
		return Absent
	}
	return n.kind
}

// Text returns the decoded text, or "" where the node is not a text.
func (n *Node) Text() string {
	if n.Kind() != Text {
		return ""
	}
	return n.says()
}

// Raw returns the digits of a number as they were written, or "" where the
// node is not a number.
func (n *Node) Raw() string {
	if n.Kind() != Number {
		return ""
	}
	return n.says()
}

// Bool reports whether the node is true.
func (n *Node) Bool() bool { return n.Kind() == Bool && n.says() == "true" }

// Int returns a whole number. It is not ok where the node is no number, is
// written with a point or an exponent, or does not fit an int.
func (n *Node) Int() (value int, ok bool) {
	if n.Kind() != Number {
		return 0, false
	}
	value, err := strconv.Atoi(n.says())
	if err != nil {
		return 0, false
	}
	return value, true
}

// Len returns the number of members of a map or items of a list, else 0.
func (n *Node) Len() int {
	if c := n.content(); c != nil {
		return len(c.nodes)
	}
	return 0
}

// Item returns the i-th item of a list or the i-th value of a map, counted
// from 0, or nil where there is none.
func (n *Node) Item(i int) *Node {
	if i < 0 || i >= n.Len() {
		return nil
	}
	return &n.content().nodes[i]
}

// Member returns name and value of the i-th member of a map, counted from 0,
// or "" and nil where there is none.
func (n *Node) Member(i int) (name string, value *Node) {
	if n.Kind() != Map || i < 0 || i >= n.Len() {
		return "", nil
	}
	c := n.content()
	return c.table.names[i], &c.nodes[i]
}

// Members walks the members of a map in order. The map must not change
// meanwhile.
func (n *Node) Members() iter.Seq2[string, *Node] {
	return func(yield func(string, *Node) bool) {
		if n.Kind() != Map {
			return
		}
		c := n.content()
		for i, name := range n.names() {
			if !yield(name, &c.nodes[i]) {
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
		nodes := n.content().nodes
		for i := range nodes {
			if !yield(i, &nodes[i]) {
				return
			}
		}
	}
}

// Get returns the member of that name, or nil where there is none.
func (n *Node) Get(name string) *Node {
	if i := n.find(name); i >= 0 {
		return &n.content().nodes[i]
	}
	return nil
}

// find returns the position of a name in a map, or -1.
func (n *Node) find(name string) int {
	if n.Kind() != Map {
		return -1
	}
	t := n.content().table
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
// the end. A map or list goes in itself, not a copy: what is changed in value
// afterwards is changed below n. A node that stood there stays as it is for
// whoever holds it. Set panics where n is not a map or the value is Absent. It
// does not look for names that differ in case only; see [Check].
func (n *Node) Set(name string, value *Node) {
	mustBe(n.Kind() == Map, "Set: not a map")
	mustBe(value.Kind() != Absent, "Set: no value")
	name = validText(name)
	c := n.content()
	if i := n.find(name); i >= 0 {
		c.nodes = slices.Clone(c.nodes)
		c.nodes[i] = *value
		return
	}
	t := c.ownTable()
	if t.index != nil {
		t.index[name] = int32(len(t.names))
	}
	t.names = append(t.names, name)
	c.nodes = append(c.nodes, *value)
}

// Remove takes a member out of a map, where there is one. It panics where n
// is not a map.
func (n *Node) Remove(name string) {
	mustBe(n.Kind() == Map, "Remove: not a map")
	i := n.find(name)
	if i < 0 {
		return
	}
	c := n.content()
	t := c.ownTable()
	if i == len(t.names)-1 {
		delete(t.index, name)
	} else {
		t.index = nil // the positions behind it change
	}
	t.names = slices.Delete(t.names, i, i+1)
	c.nodes = slices.Concat(c.nodes[:i], c.nodes[i+1:])
}

// Append puts an item at the end of a list; a map or list goes in itself, not
// a copy. It panics where n is not a list or the item is Absent.
func (n *Node) Append(item *Node) {
	mustBe(n.Kind() == List, "Append: not a list")
	mustBe(item.Kind() != Absent, "Append: no item")
	c := n.content()
	c.nodes = append(c.nodes, *item)
}

// Clone returns a copy that shares no map and no list with n. Values that
// cannot change are shared.
func (n *Node) Clone() *Node {
	if n.content() == nil {
		return n
	}
	return newNode(n.clone())
}

func (n *Node) clone() Node {
	c := n.content()
	if c == nil {
		return *n
	}
	if c.table != nil {
		c.table.shared = true
	}
	nodes := make([]Node, len(c.nodes))
	for i := range nodes {
		nodes[i] = c.nodes[i].clone()
	}
	return branch(n.kind, &content{nodes, c.table})
}

// Equal reports whether two trees say the same: maps in any order of members,
// lists in the same order, numbers by their digits (1 and 1.0 differ).
func (n *Node) Equal(other *Node) bool {
	if n == other {
		return true
	}
	switch kind := n.Kind(); {
	case kind != other.Kind() || n.Len() != other.Len():
		return false
	case kind == Absent:
		return true
	case kind < List:
		return n.says() == other.says()
	}
	mine, theirs := n.content(), other.content()
	for i := range mine.nodes {
		j := i
		if mine.table != nil { // as a rule the order is the same
			if name := mine.table.names[i]; theirs.table.names[i] != name {
				j = other.find(name)
			}
		}
		if j < 0 || !mine.nodes[i].Equal(&theirs.nodes[j]) {
			return false
		}
	}
	return true
}

// Depth returns the number of levels of maps and lists: 0 for a text, 1 for
// {} and for { "a": 1 }.
func (n *Node) Depth() int {
	c := n.content()
	if c == nil {
		return 0
	}
	deepest := 0
	for i := range c.nodes {
		deepest = max(deepest, c.nodes[i].Depth())
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
